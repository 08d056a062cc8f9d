"""A panel drawn to scale with its measures, its repeats ticked along the edge and its marks, and beside it the panels joined."""

from collections.abc import Iterator

from logbook.craft.drawing.drawing import Draw, Drawing, Line, Marker, Point, Rect, Shape, Text, tick_step
from logbook.craft.drawing.measured import measured_across, measured_up
from logbook.craft.pieces.joined_drawing import Frame, JoinedPanels, around, frame_of
from logbook.craft.pieces.marks import Mark, Neck
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import Units, show_length

_LETTER = 0.42
"""Of a plain letter on the average, in line heights."""
_SIDE_BY_SIDE = 30
"""From this many line heights of width on, the joined panels stand beside the panel, else beneath it."""


def panel_drawing(plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers, units: Units = Units.CM) -> Draw:
    """Draws the piece for any width and text size; lengths are said in ``units``."""
    return lambda width, line: _sheet(plan, gauges, numbers, units, width, line)


def panel_alone(plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers, units: Units = Units.CM) -> Draw:
    """The same; but where the joined panels would lie beneath the panel, they are left to ``joined_beneath``."""
    return lambda width, line: _sheet(plan, gauges, numbers, units, width, line, beneath=False)


def joined_beneath(plan: PiecePlan, numbers: PieceNumbers, units: Units = Units.CM) -> Draw:
    """The joined panels, where ``panel_alone`` has no room for them beside the panel; else a drawing of no height."""

    def draw(width: float, line: float) -> Drawing:
        if width >= _SIDE_BY_SIDE * line:
            return Drawing(width, 0.0, line, ())
        joined = _joined(plan, numbers, units, width, line)
        return Drawing(width, joined.bottom, line, tuple(joined.shapes()))

    return draw


def _sheet(
    plan: PiecePlan,
    gauges: PieceGauges,
    numbers: PieceNumbers,
    units: Units,
    width: float,
    line: float,
    *,
    beneath: bool = True,
) -> Drawing:
    beside = width >= _SIDE_BY_SIDE * line
    room = width * 0.58 if beside else width
    panel = _Panel(plan, gauges, numbers, units, frame_of(numbers, room, line), line)
    shapes = list(panel.shapes())
    if not (beside or beneath):
        return Drawing(width, panel.bottom, line, tuple(shapes))
    if beside:
        left = room + line
        frame = frame_of(numbers, width - left, line, around(plan), margin=1.2).moved(left, 0.0)
        joined = JoinedPanels(plan, numbers, units, frame, width - left, line)
    else:
        joined = _joined(plan, numbers, units, width, line, panel.bottom + 0.6 * line)
    shapes += joined.shapes()
    return Drawing(width, max(panel.bottom, joined.bottom), line, tuple(shapes))


def _joined(plan: PiecePlan, numbers: PieceNumbers, units: Units, width: float, line: float, top: float = 0.0) -> JoinedPanels:
    """As low as stands well beneath a panel."""
    frame = frame_of(numbers, width, line, around(plan), margin=1.2, most=10)
    return JoinedPanels(plan, numbers, units, frame.moved(0.0, top), width, line)


class _Panel:
    """One panel, lying flat."""

    def __init__(
        self, plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers, units: Units, frame: Frame, line: float
    ) -> None:
        self._plan, self._gauges, self._numbers, self._units = plan, gauges, numbers, units
        self._f, self._line = frame, line
        self.bottom = frame.bottom + 3.4 * line

    def shapes(self) -> Iterator[Shape]:
        f, line = self._f, self._line
        yield Text(f.middle, 0.6 * line, "the whole round" if self._plan.in_round else "one panel", "muted")
        yield Rect(f.x, f.y, f.width, f.height, "page", "ink")
        yield from self._edgings()
        yield from self._ticks()
        yield from self._way()
        yield from self._neck()
        yield from self._heights()
        yield from measured_across(f.x, f.right, f.bottom + 1.0 * line, self._said(self._numbers.width.mm), line)
        if self._numbers.length is not None:
            yield from measured_up(f.y, f.bottom, f.right + 2.9 * line, self._said(self._numbers.length.mm), line)

    def _said(self, mm: float) -> str:
        return show_length(mm, self._units)

    def _edgings(self) -> Iterator[Shape]:
        """What is worked on afterwards, and the edge stitches."""
        f, plan, scale = self._f, self._plan, self._f.scale
        side, top, foot = (mm * scale for mm in (plan.side_edging_mm, plan.top_edging_mm, plan.bottom_edging_mm))
        for x, y, width, height in (
            (f.x, f.y, side, f.height),
            (f.right - side, f.y, side, f.height),
            (f.x, f.y, f.width, top),
            (f.x, f.bottom - foot, f.width, foot),
        ):
            if width > 0 and height > 0:
                yield Rect(x, y, width, height, "band", "line")
        edges = self._edges_mm() * scale
        if edges and plan.sideways:
            for y in (f.y + top + edges, f.bottom - foot - edges):
                yield Line(((f.x, y), (f.right, y)), "muted", dashed=True)
        elif edges:
            for x in (f.x + side + edges, f.right - side - edges):
                yield Line(((x, f.y), (x, f.bottom)), "muted", dashed=True)

    def _edges_mm(self) -> float:
        edge = self._gauges.edge
        return self._numbers.edge_stitches * edge.stitch_mm if edge else 0.0

    def _ticks(self) -> Iterator[Shape]:
        """Each repeat (of plain stitches: as many as can be told apart) along the edge that the chain makes."""
        f, plan, line = self._f, self._plan, self._line
        repeat = self._gauges.pitch(Direction.STITCHES) * (self._gauges.pattern.multiple or 1) * f.scale
        ends = ((plan.bottom_edging_mm if plan.sideways else plan.side_edging_mm) + self._edges_mm()) * f.scale
        step = tick_step(repeat, 0.5 * line)
        long = 0.45 * line
        for k in range(0, int(self._numbers.repeats) + 1, step):
            along = ends + k * repeat
            if plan.sideways:
                y = f.bottom - along
                yield Line(((f.x, y), (f.x + long, y)), "accent")
            else:
                x = f.x + along
                yield Line(((x, f.bottom), (x, f.bottom - long)), "accent")
        if plan.sideways:
            yield Line(((f.x, f.y), (f.x, f.bottom)), "accent", 3)
        else:
            yield Line(((f.x, f.bottom), (f.right, f.bottom)), "accent", 3)
        each = self._gauges.pattern.multiple or 1
        unit = counted(step, "repeat" if each > 1 else "stitch").removeprefix("1 ")
        yield Text(f.middle, self.bottom - 0.7 * line, f"each tick: {unit}", "muted")

    def _way(self) -> Iterator[Shape]:
        """How it is worked: how many rows, where they go, and the chain they begin at; clear of the marks' lines."""
        f, line = self._f, self._line
        top, bottom = self._between()
        rows = "rounds" if self._plan.in_round else "rows"
        words = rows if self._numbers.rows is None else f"{self._numbers.rows} {rows}"
        middle = (top + bottom) / 2
        reach = 0.0 if self._plan.sideways else min(1.5 * line, (bottom - top) / 2 - 1.5 * line)
        if self._plan.sideways:
            yield from _pointed((f.x + f.width * 0.3, middle), (f.x + f.width * 0.7, middle), line)
        elif reach > 0.3 * line:
            yield from _pointed((f.middle, middle + reach), (f.middle, middle - reach), line)
        if bottom - top > 2 * line:
            if self._numbers.rows is not None or self._plan.sideways or reach > 0.3 * line:  # else the word would name nothing
                yield from self._inside(words, f.middle, middle - max(reach, 0) - 0.7 * line)
            yield from self._inside(f"chain {self._numbers.chain}", f.middle, middle + max(reach, 0) + 0.7 * line)

    def _between(self) -> tuple[float, float]:
        """The room between the line of the armhole, or the top, and that of the slit, or the bottom."""
        f, armhole, slit = self._f, self._numbers.armhole, self._numbers.slit
        top = f.y if armhole is None else f.y + (armhole.true_mm + self._plan.shoulder_seam_mm) * f.scale
        return top, f.bottom - (0.0 if slit is None else slit.true_mm * f.scale)

    def _inside(self, words: str, x: float, y: float) -> Iterator[Shape]:
        if len(words) * _LETTER * self._line <= self._f.width:
            yield Text(x, y, words, "ink")

    def _neck(self) -> Iterator[Shape]:
        """The neck as a gap between two shoulders, measured above; how many stitches or rows each of them is."""
        neck = self._numbers.neck
        if neck is None:
            return
        f, line, half = self._f, self._line, neck.begins.true_mm * self._f.scale / 2
        left, right = f.middle - half, f.middle + half
        yield Line(((f.x, f.y), (left, f.y)), "ink", 3)
        yield Line(((right, f.y), (f.right, f.y)), "ink", 3)
        yield Line(((left, f.y), (right, f.y)), "surface", 3)
        yield Line(((left, f.y), (right, f.y)), "ink", dashed=True)
        for x in (left, right):
            yield Marker(x, f.y, "triangle", "series1", 0.5 * line)
        above = f.y - 1.5 * line
        yield Line(((left, above), (right, above)), "measure", arrows=True)
        yield Text(f.middle, above - 0.65 * line, f"neck {self._said(neck.begins.true_mm)}", "ink")
        yield from self._shoulders(neck, left, right, f.y - 0.75 * line)

    def _shoulders(self, neck: Neck, left: float, right: float, y: float) -> Iterator[Shape]:
        shoulder = str(neck.shoulder)
        middle = f"{neck.units} {'sts' if neck.begins.direction is Direction.STITCHES else 'rows'}"
        for words, from_x, to_x in ((shoulder, self._f.x, left), (middle, left, right), (shoulder, right, self._f.right)):
            if len(words) * _LETTER * self._line <= to_x - from_x:
                yield Text((from_x + to_x) / 2, y, words, "muted")

    def _heights(self) -> Iterator[Shape]:
        """Armhole and slit: their depth on the right, the row or stitch of the mark on the left."""
        f = self._f
        armhole, slit = self._numbers.armhole, self._numbers.slit
        top, bottom = self._between()
        if armhole is not None:
            yield from self._height(armhole, top, f.y, top)
        if slit is not None:
            yield from self._height(slit, bottom, bottom, f.bottom)

    def _height(self, mark: Mark, y: float, top: float, bottom: float) -> Iterator[Shape]:
        f, line = self._f, self._line
        for x in (f.x, f.right):
            yield Marker(x, y, "circle", "series2", 0.5 * line)
        yield Line(((f.x, y), (f.right, y)), "series2", dashed=True)
        yield Text(f.x - 0.5 * line, y, f"{mark.direction.one} {mark.at}", "ink", "e")
        aside, words = f.right + 0.8 * line, self._said(mark.true_mm)
        half = len(words) * _LETTER * line / 2
        # Longer words than the measure reach beyond the panel, not over those of the other mark.
        middle = min((top + bottom) / 2, bottom - half) if y == bottom else max((top + bottom) / 2, top + half)
        yield Line(((aside, top), (aside, bottom)), "measure", arrows=True)
        yield Text(aside + 0.7 * line, middle, words, "ink", "center", "plain", True)


def _pointed(tail: Point, tip: Point, line: float) -> Iterator[Shape]:
    """An arrow that points one way."""
    yield Line((tail, tip), "muted", 2)
    back = 0.35 * line
    if tail[0] == tip[0]:
        yield Line(((tip[0] - back, tip[1] + back), tip, (tip[0] + back, tip[1] + back)), "muted", 2)
    else:
        yield Line(((tip[0] - back, tip[1] - back), tip, (tip[0] - back, tip[1] + back)), "muted", 2)
