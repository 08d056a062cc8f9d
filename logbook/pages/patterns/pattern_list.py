"""The list of stitch patterns: its lines as shown and sorted, and which of them a look-up leaves."""

from dataclasses import dataclass

from logbook.craft.words.counting import counted
from logbook.pages.patterns.wording import in_short
from logbook.pages.session import Session
from logbook.tasks.at_home import name_key
from logbook.tasks.browsing import matching_patterns, pattern_list, pattern_uses


@dataclass(frozen=True, slots=True)
class PatternLine:
    """A stitch pattern as a line: its multiple in short, and how many swatches use it."""

    uid: str
    name: str
    multiple: int | None
    in_short: str
    swatches: int


class PatternList:
    """All stitch patterns of the logbook, by name."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self.lines: list[PatternLine] = []
        self.reload()

    def reload(self) -> None:
        """Takes the lines from the logbook again."""
        self._patterns = sorted(pattern_list(self._session.book), key=lambda pattern: name_key(pattern.name))
        uses = pattern_uses(self._session.book)
        self.lines = [PatternLine(p.uid, p.name, p.multiple, in_short(p), uses.get(p.uid, 0)) for p in self._patterns]

    def find(self, words: str) -> tuple[list[str] | None, str]:
        """The uids of the patterns in which all the words are found (None: nothing is asked for), and how many that is."""
        whole = counted(len(self.lines), "stitch pattern")
        if not words.strip():
            return None, whole
        uids = matching_patterns(self._patterns, words)
        return uids, f"{len(uids)} of {whole}"


def cells(line: PatternLine) -> tuple[str, ...]:
    """A line as shown: all in two lines of text, then name, multiple, swatches."""
    parts = (line.in_short, counted(line.swatches, "swatch"))
    return (f"{line.name}\n{' · '.join(part for part in parts if part)}", line.name, line.in_short, str(line.swatches))


def sort_keys(line: PatternLine) -> tuple[str | int | None, ...]:
    """What each cell is sorted by; None stands for an empty one."""
    name = name_key(line.name)
    return (name, name, line.multiple, line.swatches)
