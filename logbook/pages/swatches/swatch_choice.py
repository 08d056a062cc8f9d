"""A swatch chosen by its tag, or by words: what is offered, what a tag stands for."""

from logbook.craft.words.hooks import show_hook
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

    def line(self, text: str) -> SwatchLine | None:
        """The swatch typed by its tag; None for none that is known."""
        return self.lines.get(self.uids.get(tag_of(text), ""))

    def words(self, text: str) -> str:
        """What the swatch typed is worked of: ``shell stitch, Limewalk Cotton, 4.5 mm``."""
        line = self.line(text)
        return ", ".join(_parts(line)) if line else ""

    def offered(self, text: str) -> list[str]:
        """Swatches in which all the words are found, newest first, each with its tag before the rest."""
        words = " ".join(text.split(PART))
        uids = matching_swatches(self._session.book, Filters(words=words))[:MOST_OFFERED] if words.strip() else self.lines
        return [PART.join((self.lines[uid].tag, *_parts(self.lines[uid]))) for uid in uids if uid in self.lines]

    def unknown(self, text: str) -> str:
        """A sentence for a tag that no swatch has; "" for one that is there, or for none."""
        tag = tag_of(text)
        if not tag or tag in self.uids:
            return ""
        return f"There is no swatch “{tag[:40]}”: choose one from the list, which Down opens."


def tag_of(text: str) -> str:
    """The tag that a line of the list begins with, or a text that is one."""
    return text.split(PART)[0].strip()


def _parts(line: SwatchLine) -> tuple[str, ...]:
    hook = "" if line.hook_mm is None else show_hook(line.hook_mm)
    return tuple(part for part in (line.stitch, line.yarn, line.colour, hook) if part)
