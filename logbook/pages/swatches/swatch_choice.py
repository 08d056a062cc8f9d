"""A swatch chosen by its tag, or by words: what is offered, what a tag stands for."""

from collections.abc import Iterable, Sequence

from logbook.craft.words.hooks import show_hook
from logbook.errors import RefusedError
from logbook.pages.session import Session
from logbook.tasks.browsing import SwatchLine, first_swatch_lines, lines_of, matching_swatches, owner_of_tag
from logbook.tasks.find import Filters

PART = " · "
"""Between a swatch's tag and what else is said of it in a list."""
MOST_OFFERED = 200


class SwatchChoice:
    """The swatches of the logbook, as fields of a form name them. What was looked up once is known until ``refresh``."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self.refresh()

    def refresh(self) -> None:
        """Takes the swatches from the logbook again."""
        self._lines: dict[str, SwatchLine | None] = {"": None}
        self._uids: dict[str, str] = {"": ""}
        self._looked_for: tuple[str, list[str]] = ("", [])

    def named(self, uid: str) -> str:
        """The tag of the swatch of that uid; "" if it is not there."""
        line = self._line(uid)
        return line.tag if line is not None else ""

    def uid(self, text: str) -> str:
        """The uid of the swatch typed by its tag, or by words that are found in it alone; "" for none."""
        tag = tag_of(text)
        if tag not in self._uids:
            self._uids[tag] = owner_of_tag(self._session.book, tag) or ""
        if self._uids[tag]:
            return self._uids[tag]
        found = self._found(text)
        return found[0] if len(found) == 1 else ""

    def tag(self, text: str) -> str:
        """The tag of the swatch typed, or the text itself where it is none that is known."""
        line = self.line(text)
        return line.tag if line else tag_of(text)

    def line(self, text: str) -> SwatchLine | None:
        """The swatch typed by its tag or by words; None for none that is known."""
        return self._line(self.uid(text))

    def _line(self, uid: str) -> SwatchLine | None:
        if uid not in self._lines:
            self._lines[uid] = next(iter(lines_of(self._session.book, [uid])), None)
        return self._lines[uid]

    def _found(self, text: str) -> list[str]:
        """The uids of the swatches in which all the words are found."""
        words = " ".join(text.split(PART)).strip()
        if words != self._looked_for[0]:
            try:
                found = matching_swatches(self._session.book, Filters(words=words))
            except RefusedError:
                found = []
            self._looked_for = (words, found)
        return self._looked_for[1] if words else []

    def words(self, text: str) -> str:
        """What the swatch typed is worked of: ``shell stitch, Limewalk Cotton, 4.5 mm``; its tag before, if that is not typed."""
        line = self.line(text)
        if line is None:
            return ""
        return ", ".join(_parts(line) if tag_of(text) == line.tag else (line.tag, *_parts(line)))

    def offered(self, text: str) -> list[str]:
        """Swatches in which all the words are found, newest first, each with its tag before the rest."""
        book = self._session.book
        uids = self._found(text)[:MOST_OFFERED]
        lines = _in_order(lines_of(book, uids), uids) if text.strip() else first_swatch_lines(book, MOST_OFFERED)
        return [PART.join((line.tag, *_parts(line))) for line in lines]

    def unknown(self, text: str) -> str:
        """A sentence for a text that stands for no swatch, or for several; "" for one that is there, or for none."""
        tag = tag_of(text)
        if not tag or self.uid(text):
            return ""
        if several := len(self._found(text)):
            return f"“{tag[:40]}” is found in {several} swatches: type more of it, or choose one from the list (Down opens it)."
        return f"There is no swatch “{tag[:40]}”: choose one from the list (Down opens it)."


def tag_of(text: str) -> str:
    """The tag that a line of the list begins with, or a text that is one."""
    return text.split(PART)[0].strip()


def _in_order(lines: Iterable[SwatchLine], uids: Sequence[str]) -> list[SwatchLine]:
    places = {uid: place for place, uid in enumerate(uids)}
    return sorted(lines, key=lambda line: places[line.uid])


def _parts(line: SwatchLine) -> tuple[str, ...]:
    hook = "" if line.hook_mm is None else show_hook(line.hook_mm)
    return tuple(part for part in (line.stitch, line.yarn, line.colour, hook) if part)
