"""The lines of tapered panels and triangles."""

from collections.abc import Iterator, Sequence

from logbook.craft.garments.shaped_piece import Shaping
from logbook.craft.words.counting import counted, ordinal
from logbook.craft.words.printed_sizes import alike
from logbook.tasks.written.parts import PatternTable
from logbook.tasks.written.piece_in_sizes import NONE, PieceInSizes, begin, shaping_of, spread_lines


def taper_lines(of: PieceInSizes) -> Iterator[str | PatternTable]:
    """The lines of a tapered panel."""
    yield from begin(of)
    shapings = [shaping_of(piece, "edges") for piece in of.pieces]
    known = [shaping for shaping in shapings if shaping]
    if known:
        word = "Increase" if known[0].by > 0 else "Decrease"
        mixed = len({shaping.by > 0 for shaping in known}) > 1
        where = "at each edge, a stitch in from the edge,"
        if of.row == "round":
            where = "at the beginning and at the end of the round, a stitch in from where it begins,"
        doing = f"{'Increase or decrease' if mixed else word} 1 st {where}"
        yield from spread_lines(doing, "", of, shapings)
        yield _counts_after(of, shapings)
        yield f"{of.all(lambda piece: piece.counts[-1])} sts after the last {'change' if mixed else word.lower()}."
    multiple = of.pattern.multiple or 1
    if multiple > 1 and known:
        yield (
            f"Work new stitches plain; as soon as there are {multiple} of them at an edge, work them as a repeat. "
            "Where a repeat is no longer whole, work what is left of it plain."
        )
    even = [piece.parts.get("even", 0) for piece in of.pieces]
    if any(even):
        yield f"Work {alike(even)} {of.row}s even."
    yield f"{of.all(lambda piece: piece.rows)} {of.row}s in all. Fasten off."


def _counts_after(of: PieceInSizes, shapings: Sequence[Shaping | None]) -> PatternTable:
    """The row and the count of every shaping, in all sizes."""
    most = max(len(shaping.at) if shaping else 0 for shaping in shapings)
    rows = []
    for number in range(most):
        at = [shaping.at[number] if shaping and number < len(shaping.at) else None for shaping in shapings]
        sts = [NONE if row is None else piece.counts[row - 1] for piece, row in zip(of.pieces, at, strict=True)]
        place = alike(NONE if row is None else row for row in at)
        rows.append((ordinal(number + 1), f"{of.row} {place}", f"{alike(sts)} sts"))
    return PatternTable(("shaping", f"in {of.row}", "after it"), tuple(rows))


def triangle_lines(of: PieceInSizes) -> Iterator[str | PatternTable]:
    """The lines of a triangle."""
    yield from begin(of)
    more = of.one.shapings[0].by if of.one.shapings else 0
    each, odd = divmod(more, 2)
    how = f", {each} at each edge" if not odd else ", evenly spread"
    yield f"From row 2 on, increase {counted(more, 'st')} in every row{how}."
    longest = max(of.pieces, key=lambda piece: piece.rows)
    yield PatternTable(
        ("row", "sts"), tuple((f"row {row}", f"{longest.counts[row - 1]} sts") for row in range(10, longest.rows, 10))
    )
    yield f"{of.all(lambda piece: piece.rows)} rows in all: {of.all(lambda piece: piece.counts[-1])} sts in the last. Fasten off."
