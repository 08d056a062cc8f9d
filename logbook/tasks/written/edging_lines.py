"""The lines of an edging, and where it lies."""

from collections.abc import Iterator

from logbook.craft.garments.shaped_piece import PickedUp, ShapedPiece
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.counting import counted, listed
from logbook.tasks.written.parts import PatternTable
from logbook.tasks.written.piece_in_sizes import PieceInSizes
from logbook.tasks.written.round_lines import stitches_until


def edging_lines(of: PieceInSizes) -> Iterator[str | PatternTable]:
    for number, edge in enumerate(of.one.picked):
        rates = {(piece.picked[number].rate, piece.picked[number].over) for piece in of.pieces}
        rate = f", {_rate(edge)}" if len({rate for rate, _ in rates}) == 1 else ""
        stitches = of.all(lambda piece, number=number: piece.picked[number].stitches)  # type: ignore[misc]
        yield f"Pick up {stitches} sts along the {edge.edge} of the {edge.piece}{rate}."
    yield f"Bring them to {of.all(lambda piece: piece.foundation)} sts in the first {of.row}."
    corners = of.one.parts.get("corners")
    if corners:
        by = of.one.parts["corner"]
        turn = (
            f"{by} sts more at each of the {corners} corners"
            if corners > 0
            else f"{by} sts fewer at each of the {-corners} corners"
        )
        yield f"In every round work {turn}."
        yield PatternTable(
            ("round", "sts"),
            tuple(
                (f"round {row}", f"{stitches_until(of, row, [piece.rows for piece in of.pieces])} sts")
                for row in range(1, max(piece.rows for piece in of.pieces) + 1)
            ),
        )
    yield f"{of.all(lambda piece: piece.rows)} {of.row}s in all. Fasten off."


def _rate(edge: PickedUp) -> str:
    """``3 sts to 4 rows``."""
    unit = "row" if edge.along is Direction.ROWS else "st"
    stitches, of = edge.rate
    return f"one in each {unit}" if stitches == of else f"{counted(stitches, 'st')} to {counted(of, unit)}"


def along_words(piece: ShapedPiece) -> str:
    """``the neck of the back and the neck of the front``."""
    return listed([f"the {edge.edge} of the {edge.piece}" for edge in piece.picked])
