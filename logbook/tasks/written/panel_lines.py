"""The lines of a panel or a half front: marks, armholes, neck.

Where armholes that are left out and the shaping of the neck may run into one another, a table tells the count after every row
that changes it.
"""

from collections.abc import Callable, Iterator, Sequence

from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import DOWN, HALF_FRONT, SIDEWAYS
from logbook.craft.words.counting import listed
from logbook.craft.words.printed_sizes import alike
from logbook.tasks.written.parts import PatternTable
from logbook.tasks.written.piece_in_sizes import NONE, PieceInSizes, begin, is_mirrored, shaping_of, spread_lines


def panel_lines(of: PieceInSizes) -> Iterator[str | PatternTable]:
    """The lines of a panel or half front."""
    yield from begin(of)
    shaped = any(piece.left for piece in of.pieces)
    if not shaped:
        yield f"Work {of.all(lambda piece: piece.rows)} {of.row}s."
    if is_mirrored(of.one) and shaped:
        yield f"On the first {of.one.name} the front edge is at the beginning of right-side rows, on the second at their end."
    yield from _sideways_marks(of) if of.one.planned.worked == SIDEWAYS else _marks(of, late=False)
    together = _run_together(of.pieces)
    yield from _insets(of, together)
    yield from _neck(of, together)
    if together:
        yield "Armhole and neck go on at the same time, so that after these rows there are:"
    elif _is_spread(of.pieces):
        yield "Stitches after each row that is shaped:"
    if together or _is_spread(of.pieces):
        yield _counts(of)
    if shaped:
        yield f"{of.all(lambda piece: piece.rows)} {of.row}s in all."
    yield "Fasten off."


def _marks(of: PieceInSizes, *, late: bool) -> Iterator[str]:
    """Armholes and slits that are only marked, in the order of their rows; ``late``: those that lie in the neck."""
    one, down = of.one, of.one.planned.worked == DOWN
    slits = [_slit(piece, piece.rows) for piece in of.pieces]
    slit = []
    if any(slits) and not late:
        place = alike(piece.rows - slit if down else slit for piece, slit in zip(of.pieces, slits, strict=True))
        slit = [f"Place a marker at the end of row {place} for the side slit; below it the sides stay open."]
    armhole = []
    rows = [_mark(piece, down=down) for piece in of.pieces]
    after = [_comes_after(piece, row) for piece, row in zip(of.pieces, rows, strict=True)]
    if any(rows) and late in after:
        only = [name for name, here in zip(of.names, after, strict=True) if here is late]
        place = alike(NONE if row is None else row for row, here in zip(rows, after, strict=True) if here is late)
        edge = "the side edge" if one.planned.shape == HALF_FRONT else "both edges" if "side" in one.edges else "both sides"
        which = f"Size {only[0]}: place" if len(only) == 1 else f"Sizes {listed(only)}: place"
        begun = "Place" if len(only) == len(of.pieces) else which
        meanwhile = ", while the neck is shaped" if late else ""
        armhole = [f"{begun} a marker at {edge} at the end of {of.row} {place} for the armhole{meanwhile}."]
    yield from (*armhole, *slit) if down else (*slit, *armhole)


def _mark(piece: ShapedPiece, *, down: bool) -> int | None:
    """The row at whose end the armhole is marked; None where it is left out, or there is none."""
    if "armhole" not in piece.edges or _first_row(piece, "armhole"):
        return None
    deep = piece.edges["armhole"].count
    return deep if down else piece.rows - deep


def _comes_after(piece: ShapedPiece, row: int | None) -> bool:
    """Whether that row lies in the neck, so that it is told after the neck is begun."""
    neck = _first_row(piece, "neck")
    return row is not None and neck is not None and row >= neck


def _of_edge(piece: ShapedPiece, name: str, number: Callable[[int], int]) -> int | str:
    """A number of an edge's count; a dash in a size that has no such edge."""
    return number(piece.edges[name].count) if name in piece.edges else NONE


def _slit(piece: ShapedPiece, units: int) -> int:
    """What of an edge of so many rows or stitches is neither side nor armhole."""
    deep = piece.edges["armhole"].count if "armhole" in piece.edges else 0
    return units - deep - piece.edges["side"].count if "side" in piece.edges else 0


def _sideways_marks(of: PieceInSizes) -> Iterator[str]:
    """Armhole and slit counted in stitches of the first and last row, the neck in rows."""
    if any("armhole" in piece.edges for piece in of.pieces):
        under = of.all(lambda piece: _of_edge(piece, "armhole", lambda deep: piece.foundation - deep))
        deep = of.all(lambda piece: _of_edge(piece, "armhole", lambda deep: deep))
        yield f"In the first and the last row place a marker {under} sts from the lower edge: the {deep} above are the armhole."
    slits = [_slit(piece, piece.foundation) for piece in of.pieces]
    if any(slits):
        yield f"The lowest {alike(slits)} sts of these rows stay open for the side slit."
    if any("shoulder" in piece.edges for piece in of.pieces):
        first = of.all(lambda piece: _of_edge(piece, "shoulder", lambda rows: rows))
        last = of.all(lambda piece: _of_edge(piece, "shoulder", lambda rows: rows + piece.edges["neck"].count))
        yield f"At the upper edge place markers at the end of rows {first} and {last}: between them is the neck."


def _first_row(piece: ShapedPiece, wanted: str) -> int | None:
    return next((row for place, row, _ in piece.left if place == wanted), None)


def _run_together(pieces: Sequence[ShapedPiece]) -> bool:
    """Whether in any size the neck begins before the armhole, or in the same row."""
    rows = [(_first_row(piece, "armhole"), _first_row(piece, "neck")) for piece in pieces]
    return any(armhole is not None and neck is not None and neck <= armhole for armhole, neck in rows)


def _is_spread(pieces: Sequence[ShapedPiece]) -> bool:
    """Whether the neck is shaped otherwise than in rows that follow one another."""
    shapings = [shaping for piece in pieces if (shaping := shaping_of(piece, "neck")) is not None]
    return any(list(one.at) != list(range(one.first + 1, one.first + 1 + len(one.at))) for one in shapings)


def _insets(of: PieceInSizes, together: bool) -> Iterator[str]:
    if not any(_first_row(piece, "armhole") for piece in of.pieces):
        return
    where = "at the side edge" if of.one.planned.shape == HALF_FRONT else "at each edge"
    found = [next((left for left in piece.left if left[0] == "armhole"), None) for piece in of.pieces]
    counts = alike(0 if left is None else left[2] for left in found)
    rows = of.all(lambda piece: _of_edge(piece, "armhole", lambda deep: piece.rows - deep + 1))
    after = of.all(lambda piece: _of_edge(piece, "armhole", lambda deep: piece.counts[piece.rows - deep]))
    behind = "" if together else f": {after} sts"
    yield f"Row {rows}: leave {counts} sts unworked {where} for the armhole{behind}."


def _neck(of: PieceInSizes, together: bool) -> Iterator[str | PatternTable]:
    neck = [next(((row, count) for place, row, count in piece.left if place == "neck"), None) for piece in of.pieces]
    shoulders = of.all(lambda piece: _of_edge(piece, "shoulder", lambda count: count))
    if not any(neck):
        if "shoulder" in of.one.edges and of.one.planned.worked != SIDEWAYS:
            between = of.all(lambda piece: _of_edge(piece, "neck", lambda count: count))
            yield f"Shoulders of {shoulders} sts on each side; the {between} sts between are the neck."
        return
    sides = 1 if of.one.planned.shape == HALF_FRONT else 2
    rows = alike(place[0] if place else NONE for place in neck)
    if not together:
        yield f"Work even to the end of row {alike(place[0] - 1 if place else NONE for place in neck)}."
    begun = alike(
        _with_neck_begun(piece, place[0]) // sides if place else NONE for piece, place in zip(of.pieces, neck, strict=True)
    )
    yield from _parting(rows, [place[1] if place else 0 for place in neck], "" if together else begun, sides)
    yield from _marks(of, late=True)
    yield from _neck_decreases(of)
    which = "the" if sides == 1 else "each"
    last = of.all(lambda piece: piece.rows)
    even = any(_even_behind(piece) for piece in of.pieces)
    begun = f"Work even to the end of row {last}" if even else f"Row {last} is the last"
    yield f"{begun}: {shoulders} sts for {which} shoulder."
    if sides == 2:
        place = "in the next st after the middle ones" if all(place and place[1] for place in neck) else "at the middle"
        yield f"Work the second side to match: join the yarn {place}, and begin with row {rows}."


def _even_behind(piece: ShapedPiece) -> bool:
    """Whether there are rows behind the last that shapes the neck."""
    shaping = shaping_of(piece, "neck")
    begun = _first_row(piece, "neck")
    return max([*(shaping.at if shaping else ()), begun or 0]) < piece.rows


def _with_neck_begun(piece: ShapedPiece, row: int) -> int:
    """The stitches of the row that begins the neck, before what it decreases itself."""
    shaping = shaping_of(piece, "neck")
    return piece.counts[row - 1] + (shaping.at.count(row) * shaping.edges if shaping else 0)


def _parting(rows: str, gone: Sequence[int], begun: str, sides: int) -> Iterator[str]:
    """The row that leaves stitches for the neck, or parts the work for a V."""
    left = alike(gone)
    if sides == 1:
        if any(gone):
            yield f"Row {rows}: leave {left} sts unworked at the front edge for the neck" + (f": {begun} sts." if begun else ".")
        else:
            yield f"Row {rows} is the first row of the neck" + (f": {begun} sts before it is shaped." if begun else ".")
        return
    what = f"leave the middle {left} sts unworked for the neck" if any(gone) else "divide the work at the middle for the neck"
    yield f"Row {rows}: {what}; from here each side is worked by itself" + (f": {begun} sts on each side." if begun else ".")


def _neck_decreases(of: PieceInSizes) -> Iterator[str | PatternTable]:
    shapings = [shaping_of(piece, "neck") for piece in of.pieces]
    if not any(shapings):
        return
    if not _is_spread(of.pieces):
        times = [len(shaping.at) if shaping else 0 for shaping in shapings]
        if set(times) == {1}:
            yield "Decrease 1 st at the neck edge in the next row."
        else:
            yield f"Decrease 1 st at the neck edge in each of the next {alike(times)} rows."
        return
    counting = "counting the first row of the neck as row 1"
    yield from spread_lines("Decrease 1 st at the neck edge", counting, of, shapings)


def _counts(of: PieceInSizes) -> PatternTable:
    """The count after every row that changes it, in all sizes; after a neck has parted the work that of each side."""
    changed = [[level for level in piece.levels if level.row > 0 and _changes(piece, level.row)] for piece in of.pieces]
    rows = []
    for number in range(max(len(own) for own in changed)):
        here = [own[number] if number < len(own) else None for own in changed]
        sts = alike(
            NONE if level is None else _on_a_side(piece, level.row, level.stitches)
            for piece, level in zip(of.pieces, here, strict=True)
        )
        rows.append((f"row {alike(NONE if level is None else level.row for level in here)}", f"{sts} sts"))
    side = "" if of.one.planned.shape == HALF_FRONT else ", on each side once the neck is begun"
    return PatternTable(("in row", f"after it{side}"), tuple(rows))


def _changes(piece: ShapedPiece, row: int) -> bool:
    return piece.counts[row - 1] != (piece.counts[row - 2] if row > 1 else piece.foundation)


def _on_a_side(piece: ShapedPiece, row: int, stitches: int) -> int:
    begun = _first_row(piece, "neck")
    parted = piece.planned.shape != HALF_FRONT and begun is not None and row >= begun
    return stitches // 2 if parted else stitches
