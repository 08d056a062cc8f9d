"""A starting chain drawn: the repeats ticked over the wanted width, and how far the piece may come out beside it."""

from collections.abc import Iterator

from logbook.craft.drawing.drawing import Anchor, Draw, Drawing, Line, Rect, Role, Shape, Text, tick_step
from logbook.craft.pieces.options import Option
from logbook.craft.words.lengths import Units, show_length
from logbook.tasks.chain import ChainAnswer

LEAST_GAP = 0.35
"""Ticks stand no closer than this, in line heights."""
LETTER = 0.55
"""About as wide is a letter, in line heights."""


def chain_drawing(answer: ChainAnswer, option: Option, units: Units) -> Draw:
    """Draws ``option`` of ``answer`` to scale, for any width and text size."""
    return lambda width, line: _Bar(answer, option, units, width, line).drawing()


class _Bar:
    """Places everything on one scale: mm of the piece from the left edge of the bar."""

    def __init__(self, answer: ChainAnswer, option: Option, units: Units, width: float, line: float) -> None:
        self._answer, self._option, self._units = answer, option, units
        self._width, self._line = width, line
        widest = max(answer.target_mm, option.mm + (option.give_or_take_mm or 0.0))
        self._left = 0.3 * line
        self._scale = (width - 2 * self._left) / widest

    def drawing(self) -> Drawing:
        top, bar, below = 1.5 * self._line, 1.3 * self._line, 0.35 * self._line
        shapes = list(self._bar(top, bar))
        y = top + bar + below
        for words, half, role in self._sure():
            beside = self._beside(words, half)
            if beside is None:  # in a line of its own
                shapes.append(Text(self._left, y + 0.5 * self._line, words, "ink", "w"))
                y += self._line
            shapes += self._reach(half, role, y)
            if beside is not None:
                shapes.append(Text(beside[0], y + 0.5 * self._line, words, "ink", beside[1]))
            y += 1.15 * self._line
        return Drawing(self._width, y, self._line, (*self._asked(y - 0.15 * self._line), *shapes, *self._count(top, bar)))

    def _x(self, mm: float) -> float:
        return self._left + mm * self._scale

    def _asked(self, bottom: float) -> Iterator[Shape]:
        """The wanted width as a measure above, and its line through everything."""
        x, y = self._x(self._answer.target_mm), 1.15 * self._line
        yield Text(self._left, 0.5 * self._line, f"asked: {show_length(self._answer.target_mm, self._units)}", "measure", "w")
        yield Line(((self._left, y), (x, y)), "measure", arrows=True)
        yield Line(((x, 0.4 * self._line), (x, bottom)), "measure", dashed=True)

    def _bar(self, top: float, height: float) -> Iterator[Shape]:
        """The piece with a tick at each repeat; what belongs to no repeat stays pale."""
        repeat = self._answer.repeat_mm
        fabric = self._option.count * self._answer.stitch_mm
        ends = (self._option.mm - fabric) / 2
        whole = int(self._option.repeats)
        first, last = self._x(ends), self._x(ends + whole * repeat)
        yield Rect(self._x(0), top, self._option.mm * self._scale, height, "page", "ink")
        yield Rect(first, top, last - first, height, "band", "ink")
        step = tick_step(repeat * self._scale, LEAST_GAP * self._line)
        for k in range(step, whole, step):
            x = self._x(ends + k * repeat)
            yield Line(((x, top), (x, top + height * (0.4 if step > 1 else 1))), "accent")

    def _count(self, top: float, height: float) -> Iterator[Shape]:
        words = show_length(self._option.mm, self._units)
        half = 0.32 * self._line * len(words)
        middle = min(max(self._x(self._option.mm / 2), half), self._width - half)
        yield Rect(middle - half, top + 0.15 * self._line, 2 * half, height - 0.3 * self._line, "surface", None)
        yield Text(middle, top + height / 2, words, "ink", "center", "bold")

    def _sure(self) -> Iterator[tuple[str, float, Role]]:
        swatch, piece = self._option.gauge_give_or_take_mm, self._option.give_or_take_mm
        if swatch is not None and piece is not None:
            yield f"swatch ± {show_length(swatch, self._units)}", swatch, "series2"
            yield f"whole piece ± {show_length(piece, self._units)}", piece, "series3"

    def _reach(self, half: float, role: Role, y: float) -> Iterator[Shape]:
        """From where to where the edge may come to lie."""
        left, right = self._ends(half)
        middle, cap = y + 0.5 * self._line, 0.3 * self._line
        yield Rect(left, middle - cap / 2, right - left, cap, "band", None)
        yield Line(((left, middle), (right, middle)), role, 2)
        for x in (left, right):
            yield Line(((x, middle - cap), (x, middle + cap)), role, 2)

    def _ends(self, half: float) -> tuple[float, float]:
        return self._x(self._option.mm - half), self._x(self._option.mm + half)

    def _beside(self, words: str, half: float) -> tuple[float, Anchor] | None:
        """Where what says how far it reaches begins or ends beside that; None: there is no room at either side."""
        left, right = self._ends(half)
        gap, wide = 0.4 * self._line, LETTER * self._line * len(words)
        if left - gap >= wide:
            return left - gap, "e"
        return (right + gap, "w") if right + gap + wide <= self._width else None
