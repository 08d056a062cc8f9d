"""The trade's symbols of a chart, drawn one by one.

Symbols: oval, chain; dot, slip stitch; cross, sc (UK dc); a stem with a bar, hdc (htr); with one stroke across, dc (tr); with
two, tr (dtr); stems that meet, stitches worked together; a ring on the stem, a cluster, popcorn, puff or bobble; a foot, a
raised stitch; a small ring alone, a picot.
"""

from collections.abc import Iterator, Sequence
from math import atan2, cos, hypot, pi, sin

from logbook.craft.drawing.drawing import Line, Marker, Point, Polygon, Role, Shape
from logbook.craft.rows.places import HEIGHTS, PICOT, Place, plain

FOOT_GAP = 0.15
"""Between a stitch and what it stands on, in stitch widths."""


def height(place: Place) -> float:
    """How high a stitch stands, in stitch widths."""
    if place.kind in ("sl st", PICOT):
        return 0.2
    return {1: 0.8, 2: 1.3}.get(HEIGHTS.get(plain(place.kind), 3), 1.2 + 0.6 * _strokes(place))


def _strokes(place: Place) -> int:
    return max(HEIGHTS.get(plain(place.kind), 3) - 2, 0)


class Pen:
    """Draws symbols; ``size`` is a stitch width on the drawing, ``left`` and ``bottom`` where (0, 0) lies; from the other side
    what lies at x is drawn at ``mirrored`` − x.
    """

    def __init__(self, size: float, left: float, bottom: float, mirrored: float | None = None) -> None:
        self.size = size
        self.left = left
        self.bottom = bottom
        self._mirrored = mirrored

    def put(self, point: Point) -> Point:
        x = point[0] if self._mirrored is None else self._mirrored - point[0]
        return self.left + x * self.size, self.bottom - point[1] * self.size

    def oval(self, at: Point, role: Role, turned: float = 0.0, upright: bool = False) -> Iterator[Shape]:
        """A chain; ``turned`` by an angle, counted from flat, as in an arc."""
        x, y = self.put(at)
        wide, tall = (0.1, 0.2) if upright else (0.22, 0.12)
        turned = -turned if self._mirrored is None else turned  # the sheet's y runs downwards
        corners = []
        for step in range(16):
            across, up = wide * self.size * cos(step * pi / 8), tall * self.size * sin(step * pi / 8)
            corners.append((x + across * cos(turned) - up * sin(turned), y + across * sin(turned) + up * cos(turned)))
        yield Polygon(tuple(corners), None, role)

    def ring(self, at: Point, across: float, role: Role) -> Marker:
        x, y = self.put(at)
        return Marker(x, y, "circle", role, across * self.size, hollow=True)

    def column(self, foot: Point, top: Point, count: int, role: Role) -> Iterator[Shape]:
        """The chains that a row begins with: as many ovals, one above the other."""
        across, up = top[0] - foot[0], top[1] - foot[1] - FOOT_GAP
        for step in range(count):
            share = (step + 0.5) / count
            at = (foot[0] + across * share, foot[1] + FOOT_GAP + up * share)
            yield from self.oval(at, role, -atan2(across, up), upright=True)

    def stitch(self, place: Place, feet: Sequence[Point], top: Point, role: Role) -> Iterator[Shape]:
        kind = plain(place.kind)
        if kind == "sl st":
            x, y = self.put(top)
            yield Marker(x, y, "circle", role, 0.25 * self.size)
            return
        if kind == "sc" and len(feet) == 1:
            middle = ((feet[0][0] + top[0]) / 2, feet[0][1] + 0.55)
            yield from self._cross(middle, role)
            return
        for foot in feet:
            yield from self._stem((foot[0], foot[1] + FOOT_GAP), top, _strokes(place), role)
        if kind != "sc":
            yield self._bar(top, 0.25, role)
        if place.kind in ("cl", "pc", "puff", "bobble"):
            yield self.ring(((feet[0][0] + top[0]) / 2, (feet[0][1] + top[1]) / 2), 0.5, role)
        if place.kind[:2] in ("fp", "bp"):
            side = 0.25 if place.kind[0] == "f" else -0.25
            foot = (feet[0][0], feet[0][1] + FOOT_GAP)
            yield Line((self.put(foot), self.put((foot[0] + side, foot[1] - FOOT_GAP))), role)

    def _cross(self, middle: Point, role: Role) -> Iterator[Shape]:
        x, y = middle
        yield Line((self.put((x - 0.2, y)), self.put((x + 0.2, y))), role)
        yield Line((self.put((x, y - 0.2)), self.put((x, y + 0.2))), role)

    def _stem(self, foot: Point, top: Point, strokes: int, role: Role) -> Iterator[Shape]:
        yield Line((self.put(foot), self.put(top)), role)
        long = hypot(top[0] - foot[0], top[1] - foot[1]) or 1.0
        across, up = (top[0] - foot[0]) / long, (top[1] - foot[1]) / long
        for stroke in range(strokes):
            away = min(0.5 + 0.25 * stroke, 0.8) * long
            x, y = top[0] - across * (long - away), top[1] - up * (long - away)
            yield Line((self.put((x - 0.16, y - 0.08)), self.put((x + 0.16, y + 0.08))), role)

    def _bar(self, middle: Point, half: float, role: Role) -> Line:
        return Line((self.put((middle[0] - half, middle[1])), self.put((middle[0] + half, middle[1]))), role)
