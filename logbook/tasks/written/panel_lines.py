"""The lines of a panel or a half front: marks, armholes, neck."""

from collections.abc import Iterator

from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import DOWN, HALF_FRONT, SIDEWAYS
from logbook.craft.words.printed_sizes import alike
from logbook.tasks.written.parts import PatternTable
from logbook.tasks.written.piece_in_sizes import PieceInSizes, begin, shaping_of, spread_lines


def panel_lines(of: PieceInSizes) -> Iterator[str | PatternTable]:
    yield from begin(of)
    shaped = any(piece.left for piece in of.pieces)
    if not shaped:
        yield f"Work {of.all(lambda piece: piece.rows)} {of.row}s."
    yield from _marks(of)
    yield from _insets(of)
    yield from _neck(of)
    if shaped:
        yield f"{of.all(lambda piece: piece.rows)} {of.row}s in all."
    yield "Fasten off."


def _marks(of: PieceInSizes) -> Iterator[str]:
    """Armholes and slits that are only marked."""
    one = of.one
    if one.wish.worked == SIDEWAYS or "side" not in one.edges:
        return
    sides = one.edges["side"].count
    if "armhole" in one.edges and not any(place == "armhole" for place, _, _ in one.left):
        place = of.all(lambda piece: piece.rows - piece.edges["armhole"].count)
        edge = "the side edge" if one.wish.shape == HALF_FRONT else "both edges"
        if one.wish.worked == DOWN:
            place = of.all(lambda piece: piece.edges["armhole"].count)
        yield f"Place a marker at {edge} at the end of row {place} for the armhole."
    slits = [_slit(piece) for piece in of.pieces]
    if sides and any(slits):
        yield f"Place a marker at the end of row {alike(slits)} for the side slit; below it the sides stay open."


def _slit(piece: ShapedPiece) -> int:
    deep = piece.edges["armhole"].count if "armhole" in piece.edges else 0
    return piece.rows - deep - piece.edges["side"].count


def _insets(of: PieceInSizes) -> Iterator[str]:
    left = [next(((row, count) for place, row, count in piece.left if place == "armhole"), None) for piece in of.pieces]
    found = [place for place in left if place is not None]
    if len(found) < len(left) or not found:
        return
    edges = 1 if of.one.wish.shape == HALF_FRONT else 2
    where = "at the side edge" if edges == 1 else "at each edge"
    rows, counts = alike(row for row, _ in found), alike(count for _, count in found)
    after = alike(piece.foundation - edges * count for piece, (_, count) in zip(of.pieces, found, strict=True))
    yield f"Row {rows}: leave {counts} sts unworked {where} for the armhole: {after} sts."


def _neck(of: PieceInSizes) -> Iterator[str | PatternTable]:
    neck = [next(((row, count) for place, row, count in piece.left if place == "neck"), None) for piece in of.pieces]
    found = [place for place in neck if place is not None]
    if not found or len(found) < len(neck):
        if "shoulder" in of.one.edges and of.one.wish.worked != SIDEWAYS:
            shoulder = of.all(lambda piece: piece.edges["shoulder"].count)
            between = of.all(lambda piece: piece.edges["neck"].count)
            yield f"Shoulders of {shoulder} sts on each side; the {between} sts between are the neck."
        return
    half = of.one.wish.shape == HALF_FRONT
    yield f"Work even to the end of row {alike(row - 1 for row, _ in found)}."
    each = alike((piece.counts[row - 1]) // (1 if half else 2) for piece, (row, _) in zip(of.pieces, found, strict=True))
    rows, gone = alike(row for row, _ in found), alike(count for _, count in found)
    if half:
        what = (
            f"leave {gone} sts unworked at the front edge for the neck" if any(count for _, count in found) else "begin the neck"
        )
        yield f"Row {rows}: {what}: {each} sts."
    else:
        middle = (
            f"leave the middle {gone} sts unworked for the neck"
            if any(count for _, count in found)
            else "divide the work at the middle"
        )
        yield f"Row {rows}: {middle}; from here each side is worked by itself: {each} sts on each side."
    shoulders = of.all(lambda piece: piece.edges["shoulder"].count)
    yield from _neck_decreases(of)
    which = "the" if half else "each"
    yield f"Work even to the end of row {of.all(lambda piece: piece.rows)}: {shoulders} sts for {which} shoulder."


def _neck_decreases(of: PieceInSizes) -> Iterator[str | PatternTable]:
    shapings = [shaping_of(piece, "neck") for piece in of.pieces]
    if not any(shapings):
        return
    times = [len(shaping.at) if shaping else 0 for shaping in shapings]
    straight = all(
        shaping is None or list(shaping.at) == list(range(shaping.first + 1, shaping.first + 1 + len(shaping.at)))
        for shaping in shapings
    )
    if straight:
        rows = "row" if set(times) == {1} else "rows"
        yield f"Decrease 1 st at the neck edge in each of the next {alike(times)} {rows}."
        return
    yield from spread_lines("Decrease 1 st at the neck edge", "counted from the first row of the neck", of, shapings)
