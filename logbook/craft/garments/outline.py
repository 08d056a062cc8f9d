"""The outline of a piece in mm, with its steps, and where its edges lie: for drawing, to any scale.

x runs across, y up the body from the lowest point. What is worked in the round lies flat, so half as wide; what is worked
downward has its foundation at the top; a piece worked sideways lies as it is worn.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import DOWN, FROM_TOP, HALF_FRONT, SIDEWAYS, YOKES

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Outline:
    """A closed line, the edges on it by name (each a line or two), and the height of every level."""

    points: tuple[Point, ...]
    edges: Mapping[str, tuple[tuple[Point, ...], ...]]
    upside_down: bool
    turned: bool

    @property
    def width(self) -> float:
        """From side to side, in mm."""
        return max(x for x, _ in self.points) - min(x for x, _ in self.points)

    @property
    def height(self) -> float:
        """From the lowest to the highest point, in mm."""
        return max(y for _, y in self.points) - min(y for _, y in self.points)


def outline(piece: ShapedPiece) -> Outline:
    """The outline of a piece."""
    right, left = list(_side(piece, 1)), list(_side(piece, -1))
    neck_right, neck_left = list(_neck(piece, 1)), list(_neck(piece, -1))
    top = piece.rows * piece.row_mm
    inner = _below(left, neck_right[0][1]) if piece.planned.shape == HALF_FRONT and neck_right else left
    points = [*right, *reversed(neck_right), *neck_left, *reversed(inner)]
    edges = dict(_edges(piece, right, left, neck_right, neck_left, top))
    down = piece.planned.worked == DOWN or piece.planned.shape in FROM_TOP or piece.on is not None
    turned = piece.planned.worked == SIDEWAYS

    def placed(line: Sequence[Point]) -> tuple[Point, ...]:
        if down:
            return tuple((x, top - y) for x, y in line)
        return tuple((y, -x) for x, y in line) if turned else tuple(line)

    return Outline(placed(points), {name: tuple(placed(line) for line in lines) for name, lines in edges.items()}, down, turned)


def _across(piece: ShapedPiece) -> float:
    """How wide a stitch lies: half where the round lies flat."""
    return piece.stitch_mm / (2 if piece.in_round else 1)


def _neck_counts(piece: ShapedPiece) -> list[int]:
    """How many stitches of neck are gone in each row (row 0 first)."""
    gone = [0] * (piece.rows + 1)
    for place, row, count in piece.left:
        if place == "neck":
            gone[row] += count
    for shaping in piece.shapings:
        if shaping.place == "neck":
            for row in shaping.at:
                gone[row] += shaping.edges
    for row in range(1, piece.rows + 1):
        gone[row] += gone[row - 1]
    return gone


def _side(piece: ShapedPiece, sign: int) -> Iterator[Point]:
    """The outer edge from the foundation up, at the right (1) or left (−1), with its steps."""
    neck, p, q = _neck_counts(piece), _across(piece), piece.row_mm
    half_front = piece.planned.shape == HALF_FRONT
    base = piece.foundation * p / 2
    every = (piece.foundation, *piece.counts)
    before: float | None = None
    for row in range(1, piece.rows + 1):
        whole = piece.widths[row] / piece.stitch_mm * p + neck[row] * p
        x = (whole - base if sign > 0 else base) if half_front else whole / 2
        if x != before:
            if before is not None:
                yield (sign * before, (row - 1) * q)
            yield (sign * x, (row - 1) * q)
            before = x
    if before is not None and every:
        yield (sign * before, piece.rows * q)


def _neck(piece: ShapedPiece, sign: int) -> Iterator[Point]:
    """The edge of the neck from its middle up; of a half front the left one lies on the front edge."""
    neck, p, q = _neck_counts(piece), _across(piece), piece.row_mm
    if not neck[-1] or (piece.planned.shape == HALF_FRONT and sign < 0):
        return
    base = piece.foundation * p / 2
    before = 0
    for row in range(1, piece.rows + 1):
        if neck[row] != before:
            for count in (before, neck[row]):
                x = count * p - base if piece.planned.shape == HALF_FRONT else sign * count * p / 2
                yield (x, (row - 1) * q)
            before = neck[row]
    yield (before * p - base if piece.planned.shape == HALF_FRONT else sign * before * p / 2, piece.rows * q)


def _edges(
    piece: ShapedPiece, right: list[Point], left: list[Point], neck_right: list[Point], neck_left: list[Point], top: float
) -> Iterator[tuple[str, tuple[tuple[Point, ...], ...]]]:
    half, q = piece.planned.shape == HALF_FRONT, piece.row_mm
    yield "start", ((left[0], right[0]),)
    if piece.planned.shape in YOKES:
        yield from _parted(piece, left[-1], right[-1])
    else:
        yield "end", ((right[-1], neck_right[-1] if neck_right else left[-1]),)
    deep = piece.edges.get("armhole")
    armhole = top - deep.count * q if deep is not None and deep.measure == "armhole" else top
    if "side" in piece.edges:
        sides = (_below(right, armhole),) if half else (_below(right, armhole), _below(left, armhole))
        yield "side", sides
        yield "right side", sides[:1]
        yield "left side", sides[-1:]
    if armhole < top:
        yield "armhole", ((_above(right, armhole),) if half else (_above(right, armhole), _above(left, armhole)))
    if neck_right:
        shoulder = (neck_right[-1], right[-1])
        yield "shoulder", ((shoulder,) if half else (shoulder, (neck_left[-1], left[-1])))
        yield "neck", ((tuple(neck_right),) if half else ((*reversed(neck_left), *neck_right),))
    if half:
        yield "front", (_below(left, neck_right[0][1] if neck_right else top),)


def _parted(piece: ShapedPiece, left: Point, right: Point) -> Iterator[tuple[str, tuple[tuple[Point, ...], ...]]]:
    """The last round of a yoke that lies flat: half of a sleeve at each side, the body between them."""
    sleeve, y = (piece.parts["arm"] - piece.parts["underarm"]) * piece.stitch_mm / 2, left[1]
    a, b = (left[0] + sleeve, y), (right[0] - sleeve, y)
    yield "end", ((b, a),)
    yield "armhole", ((left, a), (b, right))


def _below(line: list[Point], y: float) -> tuple[Point, ...]:
    under = [point for point in line if point[1] <= y + 1e-9]
    return (*under, (under[-1][0], y)) if under else ()


def _above(line: list[Point], y: float) -> tuple[Point, ...]:
    over = [point for point in line if point[1] > y + 1e-9]
    at = next((x for x, height in reversed(line) if height <= y + 1e-9), line[-1][0])
    return ((at, y), *over)
