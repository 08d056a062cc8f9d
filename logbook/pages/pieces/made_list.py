"""The list of made pieces, and what is said of those that come from the piece in hand."""

from collections.abc import Sequence

from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.words.counting import counted
from logbook.craft.words.dates import date_words
from logbook.craft.words.lengths import Units, show_length
from logbook.pages.session import Session
from logbook.tasks.at_home import name_key
from logbook.tasks.made_words import beside_each_other
from logbook.tasks.pieces import made_pieces, matching_pieces


class MadeList:
    """All made pieces of the logbook, the newest first."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self.pieces: dict[str, MadePiece] = {}
        self.reload()

    def reload(self) -> None:
        """Takes them from the logbook again."""
        self.pieces = {made.uid: made for made in made_pieces(self._session.book)}

    def find(self, words: str) -> list[str] | None:
        """The uids of those in which every word is found; None: nothing is asked for."""
        if not words.strip():
            return None
        return [uid for uid in matching_pieces(self._session.book, words) if uid in self.pieces]

    def of(self, piece: str) -> Sequence[str]:
        """What was made of a planned piece, a sentence each: chain and rows, predicted beside measured, how it fits."""
        units = self._session.units
        return [_sentence(made, units) for made in self.pieces.values() if piece and made.piece == piece]


def cells(made: MadePiece, units: Units) -> tuple[str, ...]:
    """A line as shown: all in two lines of text, then name, date, chain, rows, measured width."""
    width = made.washed_width_mm or made.worked_width_mm
    return (
        f"{made.name}\nmade: {next(iter(_counts(made)), date_words(made.date))}",
        made.name,
        date_words(made.date),
        "–" if made.chain is None else str(made.chain),
        "–" if made.rows is None else str(made.rows),
        "–" if width is None else show_length(width, units),
    )


def sort_keys(made: MadePiece) -> tuple[str | float | None, ...]:
    """What each cell is sorted by; None stands for an empty one."""
    name, width = name_key(made.name), made.washed_width_mm or made.worked_width_mm
    return (name, name, made.date or None, made.chain, made.rows, width)


def _counts(made: MadePiece) -> list[str]:
    parts = (f"chain {made.chain}" if made.chain else "", counted(made.rows, "row") if made.rows else "")
    return [part for part in parts if part]


def _sentence(made: MadePiece, units: Units) -> str:
    said = ", ".join([date_words(made.date), *_counts(made)] if made.date else _counts(made))
    first = f"{made.name}: {said}." if said else f"{made.name}."
    fits = made.fits.strip()
    return " ".join(
        [first, *beside_each_other(made, units), fits if not fits or fits.endswith((".", "!", "?")) else f"{fits}."]
    ).strip()
