"""A garment drawn: one piece large with its counts, and all pieces side by side to one scale, joined edges told apart.

Each join has a colour and a letter, and a stroke across the edge where it ends within a side; a join that does not fit is drawn
thick and in the colour of troubles, with ✕ at its letter.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise
from math import dist

from logbook.craft.drawing.drawing import Draw, Drawing, Line, Polygon, Role, Shape, Text
from logbook.craft.drawing.measured import measured_across, measured_up
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.joins import Joined, JoinVerdict
from logbook.craft.garments.outline import Outline, Point, outline
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import TAPERED
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import Units, show_length

Shown = Callable[[float, Units], str]
_JOIN_ROLES: tuple[Role, ...] = ("series2", "series3", "series1")
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_GAP, _ALL_HIGH = 1.5, 15.0
"""Between two pieces, and how high all together may be, in line heights."""
_LETTER, _BOLD = 0.48, 0.55
"""A letter of a text, and of a bold one, in line heights."""
_ROW_NUMBERS = 3.4
"""What the numbers of rows, and *chain*, take at the left of the large piece, in line heights."""
_LEAST_OF_NAME = 6
"""Letters of a piece's name that are told in any case."""
_HIGHEST = 24.0
"""How high the large piece may be, in line heights."""


def without_faults(size: GarmentInSize) -> GarmentInSize:
    """The size as it is drawn for others: no join is marked as one that does not fit."""
    return replace(size, joins=tuple(replace(join, verdict=JoinVerdict.FITS) for join in size.joins))


@dataclass(frozen=True, slots=True)
class _Place:
    """An outline on the sheet: its left and lower corner, and what a mm is."""

    outline: Outline
    x: float
    y: float
    scale: float

    def at(self, point: Point) -> Point:
        left = min(x for x, _ in self.outline.points)
        low = min(y for _, y in self.outline.points)
        return (self.x + (point[0] - left) * self.scale, self.y - (point[1] - low) * self.scale)

    @property
    def right(self) -> float:
        return self.x + self.outline.width * self.scale

    @property
    def top(self) -> float:
        return self.y - self.outline.height * self.scale


def piece_drawing(
    size: GarmentInSize, name: str, units: Units = Units.CM, highest: float = _HIGHEST, show: Shown = show_length
) -> Draw:
    """The piece of that name large, with row numbers at the left, counts at the right, width and length; no higher than
    ``highest`` line heights. ``show``: how lengths are told.
    """
    return lambda width, line: _large(size, size.piece(name), lambda mm: show(mm, units), width, line, highest)


def pieces_drawing(size: GarmentInSize) -> Draw:
    """All pieces side by side to one scale, each with its name."""
    return lambda width, line: _all(size, width, line)


def garment_drawing(size: GarmentInSize, units: Units = Units.CM) -> Draw:
    """All pieces, then each large: for one page."""

    def draw(width: float, line: float) -> Drawing:
        shapes: list[Shape] = []
        down = 0.0
        for drawing in (
            _all(size, width, line),
            *(_large(size, piece, partial(show_length, units=units), width, line) for piece in size.pieces),
        ):
            shapes += [_moved(shape, down) for shape in drawing.shapes]
            down += drawing.height + line
        return Drawing(width, down, line, tuple(shapes))

    return draw


def _large(
    size: GarmentInSize, piece: ShapedPiece, show: Callable[[float], str], width: float, line: float, highest: float = _HIGHEST
) -> Drawing:
    shape = outline(piece)
    beside = max(3.2, 0.7 + _LETTER * max(len(f"{count} sts") for count in (piece.foundation, *piece.counts)))
    left, right = _ROW_NUMBERS * line, (beside + 1.8) * line
    room = width - left - right
    scale = min(room / shape.width, highest * line / shape.height)
    title = _title(piece, show, width / line)
    over = (3.8 if _two_widths(piece) else 2.2) + len(title) - 1
    place = _Place(shape, left + (room - shape.width * scale) / 2, (shape.height * scale) + over * line, scale)
    shapes: list[Shape] = [Text(width / 2, (0.7 + n) * line, words, "ink", "center", "bold") for n, words in enumerate(title)]
    shapes.append(Polygon(tuple(place.at(point) for point in shape.points), "page", "ink"))
    shapes += _joins(size, piece, place, line)
    shapes += _strokes(size, piece, place, 0.22 * line)
    shapes += _counts(piece, place, line)
    below = place.y + 1.1 * line
    shapes += _widths(piece, place, below, show, line)
    shapes += measured_up(place.top, place.y, place.right + beside * line, show(shape.height), line)
    return Drawing(width, below + 1.8 * line, line, tuple(shapes))


def _two_widths(piece: ShapedPiece) -> bool:
    """Whether it is wider at one end than at the other, and both are to be told."""
    return piece.planned.shape == TAPERED and piece.widths[0] != piece.widths[-1]


def _widths(piece: ShapedPiece, place: _Place, below: float, show: Callable[[float], str], line: float) -> Iterator[Shape]:
    """The width below the piece; of a taper that of its lower end, and that of the other above it."""
    if not _two_widths(piece):
        yield from measured_across(place.x, place.right, below, show(place.outline.width), line)
        return
    for edge in ("start", "end"):
        ((a, b),) = place.outline.edges[edge]
        low = (edge == "end") is place.outline.upside_down
        left, right = sorted((place.at(a)[0], place.at(b)[0]))
        yield from measured_across(left, right, below if low else place.top - 1.5 * line, show(abs(a[0] - b[0])), line)


def _title(piece: ShapedPiece, show: Callable[[float], str], wide: float) -> list[str]:
    """Its name and its measures: in one line of so many line heights if that has room for them, else each in its own, the name
    cut where it is longer than that."""
    alike = f" × {piece.planned.alike}:" if piece.planned.alike > 1 else ":"
    measures = _measures(piece, show)
    title = f"{piece.name}{alike} {measures}"
    if len(title) * _BOLD <= wide:
        return [title]
    return [_short(piece.name, wide - len(alike) * _BOLD, _BOLD) + alike, measures]


def _measures(piece: ShapedPiece, show: Callable[[float], str]) -> str:
    rows = counted(piece.rows, "round" if piece.in_round else "row")
    if piece.planned.shape == TAPERED:
        return f"{show(piece.widths[-1])} at the end, {rows}"
    return f"{show(max(piece.widths))} {'round' if piece.in_round else 'wide'}, {rows}"


def _counts(piece: ShapedPiece, place: _Place, line: float) -> Iterator[Shape]:
    """Row numbers outside at the left and counts inside at the right, at every change; where they would touch they thin out."""
    if place.outline.turned:
        yield Text(
            (place.x + place.right) / 2,
            (place.y + place.top) / 2,
            f"{piece.counts[-1]} sts, {counted(piece.rows, 'row')} →",
            "muted",
        )
        return
    levels = piece.levels
    shown: list[float] = []
    for number, level in sorted(enumerate(levels), key=lambda pair: pair[0] not in (0, len(levels) - 1)):
        height = level.row * piece.row_mm
        _, y = place.at((0, place.outline.height - height if place.outline.upside_down else height))
        end = number in (0, len(levels) - 1)
        if not end and any(abs(y - other) < 1.05 * line for other in shown):
            continue
        if end and any(abs(y - other) < 0.9 * line for other in shown):
            continue
        shown.append(y)
        yield Line(((place.x - 0.4 * line, y), (place.x, y)), "muted")
        yield Text(place.x - 0.6 * line, y, "chain" if level.row == 0 and piece.chain else str(level.row), "muted", "e")
        yield Text(place.right + 0.4 * line, y, f"{level.stitches} sts", "ink", "w")


def _joins(size: GarmentInSize, piece: ShapedPiece, place: _Place, line: float, *, small: bool = False) -> Iterator[Shape]:
    """Joined edges with their letters: inside, but of a ``small`` piece those at its top above it."""
    for number, join in enumerate(size.joins):
        edge = _joined_edge(join, piece)
        if edge is None:
            continue
        trouble = join.verdict is JoinVerdict.TROUBLE
        role: Role = "error" if trouble else _JOIN_ROLES[number % len(_JOIN_ROLES)]
        for points in place.outline.edges.get(edge, ()):
            on_sheet = [place.at(point) for point in points]
            if len(on_sheet) < 2:
                continue
            yield Line(tuple(on_sheet), role, 4.0 if trouble else 2.5)
            x, y, level = _middle(on_sheet)
            inward = 0.7 * line if x < (place.x + place.right) / 2 else -0.7 * line
            letter = _LETTERS[number % len(_LETTERS)] + ("✕" if trouble else "")
            above = small and y < place.top + 0.3 * line
            up = above or y > place.y - 0.3 * line
            beside = (x, y + (-0.65 if up else 0.7) * line) if level else (x + inward, y)
            yield Text(*beside, letter, role, "center", "bold")


def _joined_edge(join: Joined, piece: ShapedPiece) -> str | None:
    return join.planned.edge if join.planned.of == piece.name else join.planned.at if piece.name in join.planned.to else None


def _strokes(size: GarmentInSize, piece: ShapedPiece, place: _Place, far: float) -> Iterator[Line]:
    """A stroke across a side where an armhole or a joined edge ends within it, and nothing else shows that."""
    names = dict.fromkeys(("armhole", *filter(None, (_joined_edge(join, piece) for join in size.joins))))
    lines = [points for name in names for points in place.outline.edges.get(name, ()) if len(points) > 1]
    ends = [pair for points in lines for pair in ((points[0], points[1]), (points[-1], points[-2]))]
    within = {end: before for end, before in ends if all(dist(end, corner) > 1e-6 for corner in place.outline.points)}
    for end, before in within.items():
        x, y = place.at(end)
        level = abs(end[0] - before[0]) > abs(end[1] - before[1])
        yield Line(((x, y - far), (x, y + far)) if level else ((x - far, y), (x + far, y)), "ink")


def _middle(points: Sequence[Point]) -> tuple[float, float, bool]:
    """Where the middle of a line is, and whether the line is more level than steep."""
    left = sum(dist(a, b) for a, b in pairwise(points)) / 2
    level = abs(points[0][1] - points[-1][1]) < abs(points[0][0] - points[-1][0])
    for a, b in pairwise(points):
        length = dist(a, b)
        if length and length >= left:
            share = left / length
            return a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), level
        left -= length
    return *points[-1], level


def _all(size: GarmentInSize, width: float, line: float) -> Drawing:
    outlines = [(piece, outline(piece)) for piece in size.pieces]
    if not outlines:
        return Drawing(width, line, line, ())
    scale, rows = _wrapped(outlines, width, line)
    shapes: list[Shape] = []
    top = 0.0
    for row in rows:
        base = top + max(shape.height for _, shape in row) * scale + 1.3 * line
        x = (width - sum(shape.width for _, shape in row) * scale - _GAP * line * (len(row) - 1)) / 2
        for piece, shape in row:
            place = _Place(shape, x, base, scale)
            shapes.append(Polygon(tuple(place.at(point) for point in shape.points), "page", "ink"))
            shapes += _joins(size, piece, place, line, small=True)
            shapes += _strokes(size, piece, place, 0.22 * line)
            name = _short(piece.name, (place.right - place.x) / line + _GAP)
            half = len(name) * _LETTER * line / 2
            middle = min(max((place.x + place.right) / 2, half), max(half, width - half))
            shapes.append(Text(middle, base + 0.8 * line, name, "ink", "center"))
            x = place.right + _GAP * line
        top = base + 1.6 * line
    return Drawing(width, top, line, tuple(shapes))


def _short(name: str, wide: float, letter: float = _LETTER) -> str:
    """As much of a name as has room in so many line heights, a letter being so wide."""
    letters = max(_LEAST_OF_NAME, int(wide / letter))
    return name if len(name) <= letters else f"{name[: letters - 1].rstrip()}…"


_Row = list[tuple[ShapedPiece, Outline]]


def _wrapped(outlines: _Row, width: float, line: float) -> tuple[float, list[_Row]]:
    """The largest scale at which the pieces, side by side in as many rows as that takes, are no higher than they may be."""
    scale = min(line / 10, (width - _GAP * line) / max(shape.width for _, shape in outlines))
    while True:
        rows: list[_Row] = [[]]
        x = 0.0
        for one in outlines:
            wide = one[1].width * scale
            if rows[-1] and x + wide > width - _GAP * line:
                rows.append([])
                x = 0.0
            rows[-1].append(one)
            x += wide + _GAP * line
        high = sum(max(shape.height for _, shape in row) * scale + 2.9 * line for row in rows)
        if high <= _ALL_HIGH * line or scale < line / 500:
            return scale, rows
        scale *= 0.94


def _moved(shape: Shape, down: float) -> Shape:
    if isinstance(shape, Line | Polygon):
        return replace(shape, points=tuple((x, y + down) for x, y in shape.points))
    return replace(shape, y=shape.y + down)


def join_letters(size: GarmentInSize) -> Sequence[str]:
    """The letter of each join, in their order."""
    return [_LETTERS[number % len(_LETTERS)] for number in range(len(size.joins))]
