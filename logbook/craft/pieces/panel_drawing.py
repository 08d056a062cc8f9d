"""A panel drawn to scale with its measures, its repeats ticked along the edge and its marks, and beside it the panels joined."""

from collections.abc import Iterator
from dataclasses import dataclass

from logbook.craft.drawing.drawing import Draw, Drawing, Line, Marker, Point, Rect, Shape, Text, tick_step
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
_STRIP = 3.0
"""How high a panel is drawn whose length is not said, in line heights."""


def panel_drawing(plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers, units: Units = Units.CM) -> Draw:
    """Draws the piece for any width and text size; lengths are said in ``units``."""
    return lambda width, line: _sheet(plan, gauges, numbers, units, width, line)


def _sheet(plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers, units: Units, width: float, line: float) -> Drawing:
    beside = width >= _SIDE_BY_SIDE * line
    room = width * 0.58 if beside else width
    panel = _Panel(plan, gauges, numbers, units, _frame(numbers, room, line), line)
    shapes = list(panel.shapes())
    if beside:
        left, top = room + line, 0.0
        frame = _frame(numbers, width - left, line, _around(plan), margin=1.2)
    else:
        left, top = 0.0, panel.bottom + 0.6 * line
        frame = _frame(numbers, room, line, _around(plan), margin=1.2, most=10)
    joined = _Joined(plan, numbers, units, frame.moved(left, top), line)
    shapes += joined.shapes()
    return Drawing(width, max(panel.bottom, joined.bottom), line, tuple(shapes))


@dataclass(frozen=True, slots=True)
class _Frame:
    """Where a panel lies: its corner, its size, and how much a mm is."""

    x: float
    y: float
    width: float
    height: float
    scale: float

    def moved(self, right: float, down: float) -> "_Frame":
        return _Frame(self.x + right, self.y + down, self.width, self.height, self.scale)

    @property
    def right(self) -> float:
        return self.x + self.width

    @property
    def bottom(self) -> float:
        return self.y + self.height

    @property
    def middle(self) -> float:
        return self.x + self.width / 2


def _frame(numbers: PieceNumbers, room: float, line: float, panels: int = 1, margin: float = 4.6, most: float = 17) -> _Frame:
    """As large as fits between margins of so many line heights, and no higher than ``most`` line heights."""
    width, length = numbers.width.mm * panels, numbers.length.mm if numbers.length else None
    scale = max(room - 2 * margin * line, line) / width
    if length is not None:
        scale = min(scale, most * line / length)
    height = length * scale if length is not None else _STRIP * line
    return _Frame((room - width * scale) / 2, 4.0 * line, width * scale, height, scale)


def _around(plan: PiecePlan) -> int:
    """How many panels the joined drawing shows side by side: two lie on each other, and in the round there is one."""
    return 1 if plan.in_round or plan.panels <= 2 else plan.panels


class _Panel:
    """One panel, lying flat."""

    def __init__(
        self, plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers, units: Units, frame: _Frame, line: float
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
        below = f.bottom + 1.0 * line
        yield Line(((f.x, below), (f.right, below)), "measure", arrows=True)
        yield Text(f.middle, below + 0.7 * line, self._said(self._numbers.width.mm), "ink", "center", "bold")
        if self._numbers.length is not None:
            aside = f.right + 2.9 * line
            yield Line(((aside, f.y), (aside, f.bottom)), "measure", arrows=True)
            yield Text(
                aside + 0.7 * line, (f.y + f.bottom) / 2, self._said(self._numbers.length.mm), "ink", "center", "bold", True
            )

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
        yield Text(f.middle, self.bottom - 0.7 * line, f"a tick: {unit}", "muted")

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
        aside = f.right + 0.8 * line
        yield Line(((aside, top), (aside, bottom)), "measure", arrows=True)
        yield Text(aside + 0.7 * line, (top + bottom) / 2, self._said(mark.true_mm), "ink", "center", "plain", True)


class _Joined:
    """The panels as they are joined: two laid on each other, more side by side, or the one that is worked in the round."""

    def __init__(self, plan: PiecePlan, numbers: PieceNumbers, units: Units, frame: _Frame, line: float) -> None:
        self._plan, self._numbers, self._units, self._f, self._line = plan, numbers, units, frame, line
        self._said_below = self._words()
        self.bottom = frame.bottom + (0.6 + len(self._said_below)) * line

    def shapes(self) -> Iterator[Shape]:
        f, line = self._f, self._line
        title = "in the round" if self._plan.in_round else "joined" if self._plan.panels > 1 else "as worn"
        yield Text(f.middle, f.y - 2.8 * line, title, "muted")
        if self._plan.panels == 2 and not self._plan.in_round:
            back = 0.5 * line
            yield Rect(f.x + back, f.y - back, f.width, f.height, "band", "muted")
        yield Rect(f.x, f.y, f.width, f.height, "page", "ink")
        panels = _around(self._plan)
        for seam in range(panels + 1) if panels > 1 else (0, 1):
            yield from self._side(f.x + f.width * seam / panels)
        yield from self._shoulders()
        for place, words in enumerate(self._said_below):
            yield Text(f.middle, f.bottom + (0.8 + place) * line, words, "ink")

    def _side(self, x: float) -> Iterator[Shape]:
        """A side: sewn from slit to armhole, open beyond; in the round nothing is sewn."""
        f = self._f
        if self._plan.in_round:
            return
        armhole, slit = self._numbers.armhole, self._numbers.slit
        top = f.y if armhole is None else f.y + (armhole.true_mm + self._plan.shoulder_seam_mm) * f.scale
        foot = f.bottom - (slit.true_mm if slit else 0.0) * f.scale
        for y_from, y_to in ((f.y, top), (foot, f.bottom)):
            if y_to > y_from:
                yield Line(((x, y_from), (x, y_to)), "surface", 4)
                yield Line(((x, y_from), (x, y_to)), "series2", 2, dashed=True)
        if self._plan.panels > 1:
            yield Line(((x, top), (x, foot)), "accent", 4)

    def _shoulders(self) -> Iterator[Shape]:
        f, neck = self._f, self._numbers.neck
        if neck is None or self._plan.panels != 2 or self._plan.in_round:
            return
        half = neck.begins.true_mm * f.scale / 2
        yield Line(((f.x, f.y), (f.middle - half, f.y)), "accent", 4)
        yield Line(((f.middle + half, f.y), (f.right, f.y)), "accent", 4)
        yield Line(((f.middle - half, f.y), (f.middle + half, f.y)), "surface", 4)
        yield Line(((f.middle - half, f.y), (f.middle + half, f.y)), "series2", 2, dashed=True)

    def _words(self) -> tuple[str, ...]:
        fit, two = self._numbers.fit, self._plan.panels == 2 and not self._plan.in_round
        around = f"{show_length(fit.around_mm, self._units)} all round" if fit else ""
        neck, armhole = self._numbers.neck, self._numbers.armhole
        sewn = self._plan.panels > 1 and not self._plan.in_round
        said = (
            around,
            f"neck {show_length(2 * neck.begins.true_mm, self._units)} round" if neck and two else "",
            f"armhole {show_length(2 * armhole.true_mm, self._units)} round" if armhole and sewn else "",
            "thick: seam · dashed: opening" if sewn else "",
        )
        return tuple(words for words in said if words)


def _pointed(tail: Point, tip: Point, line: float) -> Iterator[Shape]:
    """An arrow that points one way."""
    yield Line((tail, tip), "muted", 2)
    back = 0.35 * line
    if tail[0] == tip[0]:
        yield Line(((tip[0] - back, tip[1] + back), tip, (tip[0] + back, tip[1] + back)), "muted", 2)
    else:
        yield Line(((tip[0] - back, tip[1] - back), tip, (tip[0] - back, tip[1] + back)), "muted", 2)
