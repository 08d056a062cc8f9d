"""What was really made: begun from a piece or on its own, saved, deleted, found."""

from dataclasses import replace
from datetime import date

from logbook.book import pieces as kept
from logbook.book.logbook import Logbook
from logbook.book.search import Filters, matching
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.options import Option
from logbook.craft.pieces.piece import PieceNumbers
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.counting import counted
from logbook.errors import RefusedError
from logbook.tasks.pieces import PieceAnswer


def made_from(piece: PlannedPiece, answer: PieceAnswer, size: str = "", hook_mm: float | None = None) -> MadePiece:
    """A made piece begun today from a saved plan, in one of its sizes: all as planned, nothing measured yet."""
    begun = MadePiece(
        name=f"{piece.name}, {size}" if size else piece.name,
        piece=piece.uid,
        swatch=piece.swatch,
        size=size,
        date=date.today().isoformat(),
        chain=answer.numbers.chain,
        rows=answer.numbers.rows,
        hook_mm=hook_mm,
    )
    return predicted(begun, answer)


def predicted(made: MadePiece, answer: PieceAnswer) -> MadePiece:
    """The same with the sizes, yarn and time that the swatch alone, without what the hand taught, predicts for the chains and
    rows really worked (None: as planned): what it then measures and uses teaches the hand's own.
    """
    numbers, plan, length = answer.numbers, answer.plan, answer.numbers.length
    stitches = 0 if made.chain is None else made.chain - numbers.chain
    rows = 0 if made.rows is None or numbers.rows is None else made.rows - numbers.rows
    side, up = 2 * plan.side_edging_mm, plan.top_edging_mm + plan.bottom_edging_mm
    across, along = (Direction.ROWS, Direction.STITCHES) if plan.sideways else (Direction.STITCHES, Direction.ROWS)
    more = {Direction.STITCHES: stitches, Direction.ROWS: rows}
    share = _share_worked(numbers, stitches, rows)
    drift, growth = answer.gauges.drift, numbers.growth
    return replace(
        made,
        predicted_grams=None if numbers.yarn is None else numbers.yarn.grams / drift.grams.factor * share,
        predicted_minutes=None if numbers.time is None else numbers.time.minutes / drift.minutes.factor * share,
        predicted_growth_mm=growth.mm if growth is not None and growth.near and growth.mm > 0 else None,
        predicted_width_mm=_by_the_swatch(numbers.width, side, more[across], across, answer.gauges),
        predicted_length_mm=None if length is None else _by_the_swatch(length, up, more[along], along, answer.gauges),
    )


def _share_worked(numbers: PieceNumbers, stitches: int, rows: int) -> float:
    """How much of the cloth that was planned was worked, with so many more stitches and rows."""
    planned = numbers.stitches * (numbers.rows or 1)
    return max(numbers.stitches + stitches, 0) * max((numbers.rows or 1) + rows, 0) / planned


def _by_the_swatch(told: Option, edgings_mm: float, more: int, direction: Direction, gauges: PieceGauges) -> float:
    """A size told, with so many more stitches or rows, as it is without the lean; edgings were not reckoned by the gauge."""
    worked = told.mm - edgings_mm + (more * gauges.pitch(direction) if more else 0.0)
    return edgings_mm + worked / gauges.drift.of(direction).factor


def save_made_piece(book: Logbook, made: MadePiece) -> str:
    """Saves a made piece, new (no uid) or known, and returns its uid. Raises RefusedError, in one sentence."""
    with book.writing(f"{'change' if made.uid else 'log'} made piece {made.name}") as writing:
        return kept.put_made_piece(writing, made)


def delete_made_piece(book: Logbook, made: MadePiece) -> None:
    """Deletes a made piece; undo brings it back."""
    with book.writing(f"delete made piece {made.name}") as writing:
        kept.remove_made_piece(writing, made.uid)


def made_piece_called(book: Logbook, name: str) -> MadePiece:
    """The made piece of that name. Raises RefusedError if there is none, or more than one."""
    with book.reading() as connection:
        alike = [made for made in kept.made_pieces(connection).values() if made.name == name.strip()]
    if not alike:
        raise RefusedError(f"There is no made piece called “{name.strip()}”: look its name up in the list of made pieces.")
    if len(alike) > 1:
        raise RefusedError(f"{counted(len(alike), 'made piece')} are called “{name.strip()}”: give one another name first.")
    return alike[0]


def find_made(book: Logbook, filters: Filters) -> list[MadePiece]:
    """The made pieces in which every word is found, the newest first; where more than words is asked, of swatches like that."""
    others = replace(filters, words="")
    with book.reading() as connection:
        swatches = None if others == Filters() else set(matching(connection, others))
        words = set(kept.matching_pieces(connection, filters.words))
        made = kept.made_pieces(connection).values()
    return [one for one in made if one.uid in words and (swatches is None or one.swatch in swatches)]
