"""The list of planned pieces: its lines as shown and sorted, and which of them a look-up leaves."""

from dataclasses import dataclass

from logbook.craft.words.numbers import grouped
from logbook.pages.session import Session
from logbook.tasks.at_home import name_key
from logbook.tasks.browsing import swatch_lines
from logbook.tasks.pieces import matching_pieces, planned_pieces


@dataclass(frozen=True, slots=True)
class ListedPiece:
    """A planned piece as a line: its name, the tag, stitch pattern and yarn of its swatch."""

    uid: str
    name: str
    tag: str
    stitch: str
    yarn: str


class PieceList:
    """All planned pieces of the logbook, by name."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self.lines: list[ListedPiece] = []
        self.reload()

    def reload(self) -> None:
        """Takes the lines from the logbook again."""
        book = self._session.book
        swatches = {line.uid: line for line in swatch_lines(book)}
        self.lines = [
            ListedPiece(piece.uid, piece.name, swatch.tag, swatch.stitch, swatch.yarn)
            for piece in sorted(planned_pieces(book), key=lambda piece: name_key(piece.name))
            if (swatch := swatches[piece.swatch])
        ]

    def find(self, words: str) -> tuple[list[str] | None, str]:
        """The uids of the pieces in which every word is found (None: nothing is asked for), and how many that are in words."""
        whole = len(self.lines)
        if not words.strip():
            return None, _pieces(whole)
        known = {line.uid for line in self.lines}
        uids = [uid for uid in matching_pieces(self._session.book, words) if uid in known]
        return uids, f"{len(uids)} of {_pieces(whole)}"


def cells(line: ListedPiece) -> tuple[str, ...]:
    """A line as shown: all in two lines of text, then name, swatch, stitch pattern, yarn."""
    return (f"{line.name}\n{line.tag} · {line.stitch or line.yarn}", line.name, line.tag, line.stitch, line.yarn)


def sort_keys(line: ListedPiece) -> tuple[str | None, ...]:
    """What each cell is sorted by; None stands for an empty one."""
    folded = [name_key(text) if text else None for text in (line.name, line.tag, line.stitch, line.yarn)]
    return (folded[0], *folded)


def _pieces(count: int) -> str:
    return "1 piece" if count == 1 else f"{grouped(count)} pieces"
