"""The same square of fabric in each state it was measured in, drawn side by side, the finished one dashed over the others."""

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from logbook.craft.drawing.drawing import Draw, Drawing, Line, Rect, Role, Shape, Text
from logbook.craft.gauges.over_length import over_length
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.words.lengths import Units, show_length
from logbook.pages.gauges.gauge_words import usual_condition

ROLES: dict[Condition, Role] = {Condition.WORKED: "series3", Condition.WASHED: "series1"}
"""The colour of an outline; every state has its words besides."""
TALLEST = 6.0
"""Lines of text that the largest square may be high."""


class SquareState(NamedTuple):
    """The square in one state: its width and height in mm, and those of a stitch and a row; None where it was not measured."""

    condition: Condition
    width_mm: float | None
    height_mm: float | None
    stitch_mm: float | None
    row_mm: float | None
    finished: bool


def states_of(swatch: Swatch, assumed: Assumptions, units: Units) -> tuple[SquareState, ...]:
    """As many stitches and rows as make 10 cm (or 4 in) square as finished, in each state; () where no state has both."""
    pitch = {place: gauge.pitch_mm for place, gauge in gauges_of(swatch, assumed).items()}
    base = usual_condition(gauges_of(swatch, assumed))
    across, up = (pitch.get((base, direction)) for direction in Direction)
    side, _ = over_length(units)
    found = []
    for condition in Condition:
        stitch, row = (pitch.get((condition, direction)) for direction in Direction)
        width = side * stitch / across if stitch and across else None
        height = side * row / up if row and up else None
        if width is not None or height is not None:
            found.append(SquareState(condition, width, height, stitch, row, condition is base))
    return tuple(found)


def compared_words(states: Sequence[SquareState], units: Units) -> str:
    """``10 × 10 cm washed, shown dashed``: what the dashed outline is."""
    base = next(state for state in states if state.finished)
    long = over_length(units)[1]
    size = f"{long.split()[0]} × {long} {short_words(base.condition)}"
    return f"{size}, shown dashed" if len(states) > 1 else size


def short_words(condition: Condition) -> str:
    """``washed`` for washed and laid flat."""
    return condition.words.partition(",")[0]


def same_square(states: Sequence[SquareState], units: Units) -> Draw:
    """Draws them to one scale, for any width and text size."""
    return lambda width, line: _Squares(states, units, width, line).drawing()


class _Squares:
    """As many in a row as there is room for."""

    def __init__(self, states: Sequence[SquareState], units: Units, width: float, line: float) -> None:
        self._states, self._units, self._width, self._line = states, units, width, line
        self._side, _ = over_length(units)
        self._in_row = max(1, min(len(states), int(width / (7.5 * line))))
        self._cell = width / self._in_row
        widest = max(state.width_mm or self._side for state in states)
        self._tallest = max(state.height_mm or self._side for state in states)
        self._scale = min(0.84 * self._cell / widest, TALLEST * line / self._tallest)

    def drawing(self) -> Drawing:
        high = self._tallest * self._scale + 2.6 * self._line
        rows = math.ceil(len(self._states) / self._in_row)
        shapes = [
            shape
            for place, state in enumerate(self._states)
            for shape in self._one(state, place % self._in_row * self._cell, place // self._in_row * high)
        ]
        return Drawing(self._width, rows * high, self._line, tuple(shapes))

    def _one(self, state: SquareState, left: float, top: float) -> Iterator[Shape]:
        middle, floor = left + self._cell / 2, top + self._tallest * self._scale + 0.1 * self._line
        wide, tall = ((one or self._side) * self._scale for one in (state.width_mm, state.height_mm))
        role = ROLES.get(state.condition, "series2")
        x = middle - wide / 2
        yield Rect(x, floor - tall, wide, tall, "band" if state.finished else "page", role)
        yield from self._counts(state, x, floor, wide, tall, role)
        if not state.finished:
            side = self._side * self._scale
            yield Rect(x, floor - side, side, side, None, "ink", dashed=True)
        yield Text(middle, floor + 0.75 * self._line, short_words(state.condition), "ink", "center", "bold")
        yield Text(middle, floor + 1.75 * self._line, self._size(state), "ink", "center")

    def _counts(self, state: SquareState, x: float, floor: float, wide: float, tall: float, role: Role) -> Iterator[Shape]:
        """A notch at the left edge for each row, and at the foot one for every fifth stitch."""
        notch = 0.45 * self._line
        for pitch, along, step in ((state.row_mm, tall, 1), (state.stitch_mm, wide, 5)):
            apart = (pitch or 0.0) * self._scale * step
            if apart < 0.2 * self._line:
                continue
            for place in range(1, int(along / apart) + 1):
                if step == 1:
                    yield Line(((x, floor - place * apart), (x + notch, floor - place * apart)), role)
                else:
                    yield Line(((x + place * apart, floor), (x + place * apart, floor - notch)), role)

    def _size(self, state: SquareState) -> str:
        """``10.2 × 10.5 cm``; a way that was not measured is a dash."""
        sizes = [show_length(one, self._units) if one is not None else "–" for one in (state.width_mm, state.height_mm)]
        unit = f" {self._units.value}"
        return " × ".join([sizes[0].removesuffix(unit) if sizes[1] != "–" else sizes[0], sizes[1]])
