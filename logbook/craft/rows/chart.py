"""Rows as a chart of the trade's symbols, drawn flat as they lie on the chain, its right side towards the reader: rows worked on
that side are read from the right and numbered there, the others from the left. The first chains of a row stand upright where it
begins, in the place of the stitch that they count as or else beside the first one; those skipped at the hook do so too, and lie
no more in the foundation. The chains of a space lie in an arc, and a bracket below the chain holds one repeat.
"""

from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise
from math import atan2, pi, sin
from typing import NamedTuple

from logbook.craft.drawing.drawing import Drawing, Line, Point, Role, Shape, Text
from logbook.craft.rows.chart_symbols import Pen, height
from logbook.craft.rows.courses import Course, Courses
from logbook.craft.rows.instructions import NOTHING, WrittenRow
from logbook.craft.rows.laying import Laid, Ways, lay, opening_counts
from logbook.craft.rows.places import CHAIN, PICOT, Place, Row, chains, from_other_side
from logbook.errors import RefusedError

MOST_ROWS, MOST_CHAINS = 40, 120
MORE_REPEATS = 2  # than the least width has
WIDEST = 2.0  # a stitch, in line heights
ARC, HIGHEST_ARC = 0.16, 0.8  # how high the arc of a space is for each of its chains, and at most, in stitch widths
STITCH_GAP, CHAIN_GAP = 0.75, 0.5  # least way between the tops of a row's neighbours, in stitch widths


class RowsDrawing(NamedTuple):
    """The chart of a stitch pattern's rows for paper: the pattern's name, a sentence below the chart, the drawing."""

    name: str
    says: str
    drawing: Drawing


def chains_drawn(courses: Courses) -> int:
    """How many chains the chart of these rows stands on."""
    return courses.smallest + MORE_REPEATS * courses.multiple


def chart(courses: Courses, width: float, line: float) -> Drawing:
    """The rows on the least width and two repeats more, at most ``width`` wide.

    Raises RefusedError if they are worked into a ring, or are too many.
    """
    if courses.in_ring or not courses.rows:
        raise RefusedError("Only rows that are worked onto a starting chain can be drawn as a chart.")
    chain = chains_drawn(courses)
    if any(course.row.onto or course.row.and_onto for course in courses.rows):
        raise RefusedError("Rows that take up what an earlier row left unworked are not drawn as a chart.")
    if len(courses.rows) > MOST_ROWS or chain > MOST_CHAINS:
        raise RefusedError(f"A chart holds {MOST_ROWS} rows on {MOST_CHAINS} chains at most: draw fewer rows, or a part of them.")
    rows = list(_rows(courses, chain))
    flat = [(chain - 1.0 - index, 0.0) for index in range(_standing(courses.rows[0], courses.ways), chain)]
    points = [point for row in rows for point in (*row.tops, *(row.beside or ()))] + flat
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    high = max(y for _, y in points)
    size = min((width - 5 * line) / (right - left + 1), WIDEST * line)
    mirrored = chain - 1.0 if courses.wrong_side_first else None
    edge = left if mirrored is None else mirrored - right
    pen = Pen(size, 2.5 * line + size * (0.5 - edge), size * (high + 1.2), mirrored)
    shapes = [shape for point in flat for shape in pen.oval(point, "ink")]
    bracket = list(_bracket(courses, pen, chain, line))
    shapes += bracket
    for number, drawn in enumerate(rows):
        role: Role = "series2" if number % 2 else "series1"
        shapes += _row(pen, drawn, role)
        shapes.append(_number(pen, drawn, line, role))
    foot = size * (high + 2.2) + (1.6 * line if bracket else 0.0)
    return Drawing(min(width, size * (right - left + 1) + 5 * line), foot, line, tuple(shapes))


def _bracket(courses: Courses, pen: Pen, chain: int, line: float) -> Iterator[Shape]:
    """Below the chain, from where row 1 begins its repeat a second time, as far as a repeat goes."""
    marks = courses.rows[0].laid.marks
    if courses.multiple < 2 or not marks or not marks[0]:
        return
    first = chain - 1.0 - marks[0][min(1, len(marks[0]) - 1)].at
    last = first - courses.multiple + 1
    if last < 0:
        return
    (x0, y), (x1, _) = sorted((pen.put((first + 0.4, -0.5)), pen.put((last - 0.4, -0.5))))
    down = y + 0.4 * line
    yield Line(((x0, y), (x0, down), (x1, down), (x1, y)), "muted")
    yield Text((x0 + x1) / 2, down + 0.8 * line, f"repeat of {courses.multiple} ch", "muted")


class _DrawnRow(NamedTuple):
    """A row, what it makes, the tops it meets below, its own tops, in stitch widths: across from the left, and upwards.

    ``beside``: foot and top of its first chains where they count as nothing; None where they count.
    """

    row: WrittenRow
    laid: Laid
    below: Sequence[Point]
    tops: Sequence[Point]
    beside: tuple[Point, Point] | None


def _standing(first: Course, ways: Ways) -> int:
    """How many of the starting chains, from the hook, stand up at the beginning of row 1, as a stitch, a space or beside them."""
    opening, counts = first.row.opening, opening_counts(first.row, ways)
    if opening is None or not opening.at_hook or (counts.stitch and not counts.height):
        return 0
    return opening.chains - counts.over


def _beside(course: Course, ways: Ways, laid: Laid, below: Sequence[Point], tops: Sequence[Point]) -> tuple[Point, Point] | None:
    opening = course.row.opening
    if opening is None or not opening.chains or opening_counts(course.row, ways) != NOTHING or not tops or not laid.under[0]:
        return None
    way = -1.0 if below[0][0] > below[-1][0] else 1.0
    x = tops[0][0] - way * STITCH_GAP
    return (x, _feet(laid.under[0], below)[0][1]), (x, tops[0][1])


def _rows(courses: Courses, chain: int) -> Iterator[_DrawnRow]:
    places: Row = chains(chain)
    below: list[Point] = [(chain - 1.0 - index, 0.0) for index in range(chain)]
    for course, following in zip(courses.rows, [*courses.rows[1:], None], strict=True):
        laid = lay(course.row, places, courses.ways)
        tops = _tops(laid, below)
        yield _DrawnRow(course.row, laid, below, tops, _beside(course, courses.ways, laid, below, tops))
        places, below = laid.row, tops
        if course.row.turn_after or (following is not None and following.row.turn_before):
            places = from_other_side(places, course.row.joined)
            below = [below[0], *below[:0:-1]] if course.row.joined else below[::-1]


def _feet(under: Sequence[tuple[int, int]], below: Sequence[Point]) -> list[Point]:
    """Where a stitch stands: on a stitch, or in the middle of a space."""
    feet = []
    for start, end in under:
        spot = below[start : max(end, start + 1)]
        feet.append((sum(x for x, _ in spot) / len(spot), max(y for _, y in spot)))
    return feet


def _tops(laid: Laid, below: Sequence[Point]) -> list[Point]:
    """Each top above its foot, those of one foot spread out, chains between their neighbours, and none on top of another."""
    way = -1.0 if below[0][0] > below[-1][0] else 1.0
    wished: list[tuple[float, float] | None] = []
    for index, (place, under) in enumerate(zip(laid.row, laid.under, strict=True)):
        if place.kind == CHAIN or not under:
            wished.append(None)
            continue
        feet = _feet(under, below)
        alike = [at for at, other in enumerate(laid.under) if other == under and laid.row[at].kind != CHAIN]
        spread = (alike.index(index) - (len(alike) - 1) / 2) * STITCH_GAP if abs(alike[-1] - alike[0]) < 12 else 0.0
        x = sum(foot[0] for foot in feet) / len(feet) + way * spread
        wished.append((way * x, max(foot[1] for foot in feet) + height(place)))
    return _in_arcs([(way * x, y) for x, y in _apart(_filled(wished), laid.row)], laid.row)


def _in_arcs(tops: list[Point], row: Sequence[Place]) -> list[Point]:
    """Chains that span a space hang in an arc, higher the more they are; a single one, and a chain at an end, lies flat."""
    start = 0
    for is_chain, run in groupby(row, lambda place: place.kind == CHAIN):
        count = len(list(run))
        if is_chain and count > 1 and start > 0 and start + count < len(row):
            rise = min(ARC * count, HIGHEST_ARC)
            for index in range(count):
                x, y = tops[start + index]
                tops[start + index] = (x, y + rise * sin(pi * (index + 0.5) / count))
        start += count
    return tops


def _filled(wished: Sequence[tuple[float, float] | None]) -> list[tuple[float, float]]:
    """Places without a foot put evenly between their neighbours that have one."""
    known = [index for index, wish in enumerate(wished) if wish is not None]
    filled = []
    for index, wish in enumerate(wished):
        if wish is None:
            before = max((at for at in known if at < index), default=min(known))
            after = min((at for at in known if at > index), default=max(known))
            (x0, y0), (x1, y1) = wished[before] or (0.0, 0.0), wished[after] or (0.0, 0.0)
            share = (index - before) / (after - before) if after != before else 0.5
            wish = (x0 + (x1 - x0) * share, (y0 + y1) / 2)
        filled.append(wish)
    return filled


def _apart(wished: Sequence[tuple[float, float]], row: Sequence[Place]) -> list[tuple[float, float]]:
    """The nearest positions (least squares) in order and no closer than the gaps: neighbours that would overlap share a mean."""
    offsets = [0.0]
    for before, after in pairwise(row):
        offsets.append(offsets[-1] + (CHAIN_GAP if CHAIN in (before.kind, after.kind) else STITCH_GAP))
    blocks: list[list[float]] = []
    for (x, _), offset in zip(wished, offsets, strict=True):
        blocks.append([x - offset])
        while len(blocks) > 1 and _mean(blocks[-2]) > _mean(blocks[-1]):
            blocks[-2:] = [blocks[-2] + blocks[-1]]
    settled = [_mean(block) for block in blocks for _ in block]
    return [(x + offset, y) for x, offset, (_, y) in zip(settled, offsets, wished, strict=True)]


def _mean(numbers: Sequence[float]) -> float:
    return sum(numbers) / len(numbers)


def _row(pen: Pen, drawn: _DrawnRow, role: Role) -> Iterator[Shape]:
    row, laid, below, tops, beside = drawn
    if beside and row.opening is not None:
        yield from pen.column(beside[0], beside[1], row.opening.chains, role)
    for index, (place, under, top) in enumerate(zip(laid.row, laid.under, tops, strict=True)):
        if place.kind == CHAIN:
            before, after = tops[max(index - 1, 0)], tops[min(index + 1, len(tops) - 1)]
            is_between = laid.row[max(index - 1, 0)].kind == laid.row[min(index + 1, len(tops) - 1)].kind == CHAIN
            yield from pen.oval(top, role, _slope(before, after) if is_between else 0.0)
        elif place.turning:
            yield from pen.column(_feet(under, below)[0], top, place.turning, role)
        elif place.kind == PICOT:
            yield pen.ring(top, 0.35, role)
        else:
            yield from pen.stitch(place, _feet(under, below), top, role)


def _slope(before: Point, after: Point) -> float:
    """The angle of the way between two neighbours; 0 where they are one above the other."""
    across = after[0] - before[0]
    return atan2((after[1] - before[1]) * (1 if across > 0 else -1), abs(across)) if across else 0.0


def _number(pen: Pen, drawn: _DrawnRow, line: float, role: Role) -> Text:
    """The row's number where it begins."""
    row, tops = drawn.row, drawn.tops
    (x, y), (end, _) = pen.put(drawn.beside[1] if drawn.beside else tops[0]), pen.put(tops[-1])
    starts_right = x > end
    return Text(
        x + (1 if starts_right else -1) * (0.6 * pen.size + 0.2 * line), y, str(row.number), role, "w" if starts_right else "e"
    )
