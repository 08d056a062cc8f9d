"""A place in the words of a row, moved on as they are understood."""

from collections.abc import Collection

from logbook.craft.rows.instructions import Span
from logbook.craft.rows.word import NUMBER, ORDINAL, STITCH, TOGETHER, Word

LARGEST = 99_999  # no row works more than this in one place or one go
BREAKS = (",", ";", ".", ":")
CLOSING = {"(": ")", "[": "]", "{": "}"}


class NotUnderstoodError(Exception):
    """These words are not understood; caught where the row is read, and named there."""

    def __init__(self, span: Span, says: str = "") -> None:
        super().__init__(says)
        self.span = span
        self.says = says


class Cursor:
    """Walks through ``words``; ``at`` is the next one."""

    def __init__(self, words: tuple[Word, ...], after: int) -> None:
        self.words = words
        self.at = 0
        self._after = after

    @property
    def after(self) -> int:
        """Where the text goes on behind the words."""
        return self._after

    def more(self) -> bool:
        return self.at < len(self.words)

    def word(self, ahead: int = 0) -> Word:
        """The word so far ahead; past the end an empty one."""
        index = self.at + ahead
        return self.words[index] if 0 <= index < len(self.words) else Word("", self._after, self._after)

    def next_is(self, *texts: str, ahead: int = 0) -> bool:
        return self.word(ahead).text in texts

    def sort_is(self, sort: str, ahead: int = 0) -> bool:
        return self.word(ahead).sort == sort

    def accept(self, *texts: str) -> bool:
        """Steps over the next word if it is one of these."""
        if self.word().text in texts:
            self.at += 1
            return True
        return False

    def number(self, largest: int = LARGEST) -> int | None:
        """The number that comes next, None if none does. Refuses one that no row could hold."""
        word = self.word()
        if word.sort != NUMBER:
            return None
        if not 0 < word.value <= largest:
            raise NotUnderstoodError(Span(word.start, word.end), f"{word.value} is not a number that a row could hold")
        self.at += 1
        return word.value

    def ordinal(self) -> int | None:
        word = self.word()
        if word.sort != ORDINAL:
            return None
        self.at += 1
        return word.value

    def stitch(self) -> str | None:
        """The stitch that comes next (US abbreviation; ``dc3tog`` for one worked together)."""
        word = self.word()
        if word.sort not in (STITCH, TOGETHER):
            return None
        self.at += 1
        return word.text if word.sort == STITCH else f"{word.text}{word.value}tog"

    def span_from(self, start: int) -> Span:
        """From where the ``start``-th word begins to where the last one taken ends."""
        first = self.words[start] if start < len(self.words) else self.word()
        return Span(first.start, max(first.end, self.words[self.at - 1].end if self.at > start else first.end))

    def fail(self, says: str = "") -> NotUnderstoodError:
        word = self.word()
        return NotUnderstoodError(Span(word.start, word.end), says)

    def closing(self) -> int | None:
        """The index of the bracket that closes the one at ``at``, None if none does."""
        depth: list[str] = []
        for index in range(self.at, len(self.words)):
            text = self.words[index].text
            if text in CLOSING:
                depth.append(CLOSING[text])
            elif depth and text == depth[-1]:
                depth.pop()
                if not depth:
                    return index
        return None

    def inside(self, start: int, end: int) -> "Cursor":
        """A cursor over the words from ``start`` up to ``end``."""
        return Cursor(self.words[start:end], self.words[end].start if end < len(self.words) else self._after)

    def skip_clause(self, *more: str) -> None:
        """On to where the clause ends: at a break, a bracket, or the count behind a dash."""
        while self.more() and not self.next_is(*BREAKS, *CLOSING, *more):
            of_chain = self.next_is("ch", "t", "tch", "begch", ahead=-1) and self.word(-1).end == self.word().start
            if self.next_is("-", "=") and self.sort_is(NUMBER, 1) and not of_chain:
                return
            self.at += 1

    def skip_to(self, stops: Collection[str]) -> None:
        """On to the next of these words, or the end; what stands in brackets is passed over whole."""
        while self.more() and self.word().text not in stops:
            close = self.closing() if self.word().text in CLOSING else None
            self.at = self.at + 1 if close is None else close + 1
