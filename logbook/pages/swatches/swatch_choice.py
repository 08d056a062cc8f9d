"""A swatch chosen by its tag, or by words: what is offered, what a tag stands for."""

from logbook.craft.words.hooks import show_hook
from logbook.errors import RefusedError
from logbook.pages.session import Session
from logbook.tasks.browsing import SwatchLine, matching_swatches, swatch_lines
from logbook.tasks.find import Filters

PART = " · "
"""Between a swatch's tag and what else is said of it in a list."""
MOST_OFFERED = 200


class SwatchChoice:
    """The swatches of the logbook, as fields of a form name them."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self.refresh()

    def refresh(self) -> None:
        """Takes the swatches from the logbook again."""
        self.lines = {line.uid: line for line in swatch_lines(self._session.book)}
        self.uids = {line.tag: line.uid for line in self.lines.values()}
        self._looked_for: tuple[str, list[str]] = ("", [])

    def uid(self, text: str) -> str:
        """The uid of the swatch typed by its tag, or by words that are found in it alone; "" for none."""
        known = self.uids.get(tag_of(text))
        if known is not None:
            return known
        found = self._found(text)
        return found[0] if len(found) == 1 else ""

    def tag(self, text: str) -> str:
        """The tag of the swatch typed, or the text itself where it is none that is known."""
        line = self.line(text)
        return line.tag if line else tag_of(text)

    def line(self, text: str) -> SwatchLine | None:
        """The swatch typed by its tag or by words; None for none that is known."""
        return self.lines.get(self.uid(text))

    def _found(self, text: str) -> list[str]:
        """The uids of the swatches in which all the words are found."""
        words = " ".join(text.split(PART)).strip()
        if words != self._looked_for[0]:
            try:
                found = matching_swatches(self._session.book, Filters(words=words))
            except RefusedError:
                found = []
            self._looked_for = (words, [uid for uid in found if uid in self.lines])
        return self._looked_for[1] if words else []

    def words(self, text: str) -> str:
        """What the swatch typed is worked of: ``shell stitch, Limewalk Cotton, 4.5 mm``; its tag before, if that is not typed."""
        line = self.line(text)
        if line is None:
            return ""
        return ", ".join(_parts(line) if tag_of(text) == line.tag else (line.tag, *_parts(line)))

    def offered(self, text: str) -> list[str]:
        """Swatches in which all the words are found, newest first, each with its tag before the rest."""
        uids = self._found(text)[:MOST_OFFERED] if text.strip() else self.lines
        return [PART.join((self.lines[uid].tag, *_parts(self.lines[uid]))) for uid in uids]

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


def _parts(line: SwatchLine) -> tuple[str, ...]:
    hook = "" if line.hook_mm is None else show_hook(line.hook_mm)
    return tuple(part for part in (line.stitch, line.yarn, line.colour, hook) if part)
