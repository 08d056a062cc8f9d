"""Straight panels and half fronts: today's panel, with a neck and armholes that are shaped where they have a depth.

N stitches of neck over D rows; the last full row is R − D, row R − D + 1 parts the work:

    square   it leaves the middle N
    round    it leaves C = max(the count of N's parity nearest N/2, N − 2(D − 1)), then one at each neck edge a row
    v        it leaves an odd middle stitch; ⌊N/2⌋ at each side, spread over D

A half front has one neck edge: C = max(N/2 rounded up, N − (D − 1)). An inset armhole leaves its stitches from row R − Dₐ + 1.
Length of the neck edge, n decreases a side: round C·p + 2(√((n·p)² + (n·q)²) + (D − 1 − n)·q).
"""

import math
from dataclasses import dataclass, replace

from logbook.craft.garments.making import Making, nearest_with_parity
from logbook.craft.garments.shaped_piece import Edge, ShapedPiece, Shaping, counts_from
from logbook.craft.garments.shapes import HALF_FRONT, ROUND, SIDEWAYS, UP
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_numbers import work_out
from logbook.craft.pieces.spread import off_line, spread
from logbook.craft.words.numbers import half_up
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True)
class ShapedNeck:
    """A neck: ``stitches`` wide over ``rows`` rows; ``leaves`` of them in its first row, the rest ``at`` each of its edges."""

    form: str
    stitches: int
    rows: int
    leaves: int
    at: tuple[int, ...]
    edges: int


def shaped_neck(form: str, exact: float, rows: int, stitches: int, edges: int) -> ShapedNeck:
    """The neck of a panel (2 edges) of ``stitches``, or of a half front (1 edge); ``exact`` stitches wide over ``rows`` rows."""
    n = nearest_with_parity(exact, stitches) if edges == 2 else half_up(exact)
    if form == "square":
        leaves = n
    elif form == "v":
        leaves = n % 2 if edges == 2 else 0
    else:
        half = nearest_with_parity(n / 2, n) if edges == 2 else half_up(n / 2)
        leaves = max(half, n - edges * (rows - 1))
    each = (n - leaves) // edges
    at = spread(each, rows) if form == "v" else tuple(range(2, 2 + each))
    return ShapedNeck(form, n, rows, leaves, at, edges)


def neck_edge_mm(neck: ShapedNeck, p: float, q: float) -> float:
    """How long the edge of a neck is."""
    n = len(neck.at)
    if neck.form == "square":
        return neck.stitches * p + neck.edges * neck.rows * q
    if neck.form == "v":
        return neck.leaves * p + neck.edges * math.hypot(n * p, neck.rows * q)
    return neck.leaves * p + neck.edges * (math.hypot(n * p, n * q) + (neck.rows - 1 - n) * q)


def panel(making: Making) -> ShapedPiece:
    """A straight panel or a half front. Raises RefusedError, naming the piece, if it can't be."""
    numbers = work_out(_plan(making), making.gauges)
    if making.on is not None:
        numbers = replace(numbers, stitches=making.first_stitches(numbers.stitches))
    rows = numbers.rows or 0
    if making.planned.worked == SIDEWAYS:
        return _straight(making, numbers, _sideways_edges(making, numbers))
    sides = 1 if making.planned.shape == HALF_FRONT else 2
    inset, deep = _inset(making, numbers)
    neck = _neck(making, numbers.stitches, rows, sides)
    if neck is None and not inset:
        return _straight(making, numbers, _edges(making, numbers, None, 0, deep))
    left = [] if not inset else [("armhole", rows - deep + 1, inset)]
    changes = [(row, -sides * count) for _, row, count in left]
    shapings: tuple[Shaping, ...] = ()
    if neck is not None:
        parted = rows - neck.rows
        changes += [(parted + 1, -neck.leaves), *((parted + row, -neck.edges) for row in neck.at)]
        left += [("neck", parted + 1, neck.leaves)]
        at = tuple(parted + row for row in neck.at)
        if at:
            shapings = (Shaping(place="neck", at=at, by=-1, edges=neck.edges, first=parted + 1, rows=neck.rows),)
    _require_shoulder(numbers.stitches - sides * inset - (neck.stitches if neck else 0), sides)
    return making.piece(
        numbers.stitches,
        counts_from(numbers.stitches, rows, changes),
        chain=None if making.on else numbers.chain,
        edges=_edges(making, numbers, neck, inset, deep),
        shapings=shapings,
        left=tuple(left),
        off_line_mm=off_line(neck.at, neck.rows) * making.p if neck and neck.form == "v" else 0.0,
    )


def _plan(making: Making) -> PiecePlan:
    planned, seam = making.planned, making.seams("shoulder")
    shaped = making.get("neck depth") is not None
    if (shaped or making.get("inset") is not None) and planned.worked != UP:
        what = "neck with a depth" if shaped else "armhole with an inset"
        raise RefusedError(f"A {what} is shaped in a panel worked up; leave it out, or work the panel up.")
    return PiecePlan(
        name=planned.name,
        width_mm=making.need("width") + making.across_mm,
        length_mm=making.need("length") + (0.0 if planned.worked == SIDEWAYS else making.seams("start", "end")),
        shoulder_seam_mm=seam,
        sideways=planned.worked == SIDEWAYS,
        in_round=planned.worked == ROUND,
        armhole_mm=making.get("armhole"),
        neck_mm=None if shaped or planned.shape == HALF_FRONT else making.get("neck width"),
        slit_mm=making.get("slit") or None,
        head_mm=None,
    )


def _straight(making: Making, numbers: PieceNumbers, edges: dict[str, Edge]) -> ShapedPiece:
    rows = numbers.rows or 0
    return making.piece(numbers.stitches, (numbers.stitches,) * rows, chain=None if making.on else numbers.chain, edges=edges)


def _inset(making: Making, numbers: PieceNumbers) -> tuple[int, int]:
    """Stitches of the inset at each side, and the rows of the armhole (0 without one); without an inset where today's mark is."""
    depth, inset, rows = making.get("armhole"), making.get("inset"), numbers.rows or 0
    if depth is None:
        if inset:
            raise RefusedError("An inset needs the depth of its armhole: give “armhole” too.")
        return 0, 0
    deep = half_up((depth + making.seams("shoulder")) / making.q)
    if not 0 < deep < rows:
        raise RefusedError("Its armhole must be at least a row deep and less deep than the piece is long.")
    stitches = half_up((inset or 0.0) / making.p)
    return stitches, rows - numbers.armhole.at if numbers.armhole and not stitches else deep


def _neck(making: Making, stitches: int, rows: int, edges: int) -> ShapedNeck | None:
    depth, width = making.get("neck depth"), making.get("neck width")
    if depth is None:
        if width is not None and making.planned.shape == HALF_FRONT:
            raise RefusedError("The neck of a half front needs its depth: give “neck depth” too.")
        return None
    if width is None:
        raise RefusedError("A neck with a depth needs its width: give “neck width” too.")
    deep = half_up((depth + making.seams("shoulder")) / making.q)
    if not 0 < deep < rows:
        raise RefusedError("Its neck must be at least a row deep and less deep than the piece is long.")
    neck = shaped_neck(making.planned.choice("neck"), width / making.p, deep, stitches, edges)
    if neck.stitches < 1:
        raise RefusedError("Its neck is less than a stitch wide: make it wider, or leave it out.")
    return neck


def _require_shoulder(left: int, sides: int) -> None:
    if left < sides:
        raise RefusedError(
            "Neck and insets leave no shoulder: make them narrower, or the piece wider (a stitch on each side must stay)."
        )


def _edges(making: Making, numbers: PieceNumbers, neck: ShapedNeck | None, inset: int, deep: int) -> dict[str, Edge]:
    """The edges of a panel worked up, down or in the round."""
    half, rows, stitches = making.planned.shape == HALF_FRONT, numbers.rows or 0, numbers.stitches
    sides = 1 if half else 2
    of_neck = neck.stitches if neck else numbers.neck.units if numbers.neck else 0
    top = stitches - sides * inset - (neck.stitches if neck else 0)
    slit = numbers.slit.at if numbers.slit else 0
    edges = {"start": making.along_stitches(stitches, "width"), "end": making.along_stitches(top, "width")}
    if making.planned.worked != ROUND:
        side = making.along_rows(rows - deep - slit, "length")
        edges |= {"side": side, "left side": side, "right side": side}
    if deep:
        edges["armhole"] = making.along_rows(deep, "armhole")
    if of_neck:
        edges["shoulder"] = making.along_stitches((stitches - sides * inset - of_neck) // sides, "neck width")
        mm = neck_edge_mm(neck, making.p, making.q) if neck else of_neck * making.p
        edges["neck"] = making.along_stitches(of_neck, "neck width", mm)
        if neck and neck.form == "v":
            edges["neck"] = making.along_rows(neck.leaves + sides * neck.rows, "neck width", mm)
        elif neck:
            edges["neck"] = replace(edges["neck"], count=neck.leaves + sides * neck.rows, mixed=True)
    if half:
        edges["front"] = making.along_rows(rows - (neck.rows if neck else 0), "length")
    return edges


def _sideways_edges(making: Making, numbers: PieceNumbers) -> dict[str, Edge]:
    """The edges of a panel whose chain runs up the body: sides and armholes lie along stitches, shoulders and neck along rows."""
    stitches = numbers.stitches
    under = numbers.armhole.at if numbers.armhole else stitches
    slit = numbers.slit.at if numbers.slit else 0
    side = making.along_stitches(under - slit, "length")
    foundation = making.along_stitches(stitches, "length")
    edges = {"start": foundation, "end": foundation, "side": side, "left side": side, "right side": side}
    if under < stitches:
        edges["armhole"] = making.along_stitches(stitches - under, "armhole")
    if numbers.neck:
        edges["shoulder"] = making.along_rows(numbers.neck.shoulder, "neck width")
        edges["neck"] = making.along_rows(numbers.neck.units, "neck width")
    return edges
