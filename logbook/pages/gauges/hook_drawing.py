"""Gauge against hook: the swatches as points with error bars, the fitted line with its give or take, the wanted gauge."""

import math
from collections.abc import Iterator, Sequence

from logbook.craft.drawing.drawing import Draw, Drawing, Line, Marker, Point, Polygon, Shape, Text
from logbook.craft.words.hooks import HOOKS
from logbook.craft.words.lengths import MM_PER_INCH, Units
from logbook.craft.words.numbers import fixed, show_number
from logbook.pages.gauges.hook_card import HookCard

STEPS = 40
HEIGHT = 11.0
"""In line heights."""


def hook_drawing(card: HookCard) -> Draw | None:
    """The drawing of a card; None where there is no swatch to draw."""
    return (lambda width, line: _Chart(card, width, line).drawing()) if card.trials else None


class _Chart:
    """Both scales are even in mm: hooks across, the width of a repeat (or stitch) upwards."""

    def __init__(self, card: HookCard, width: float, line: float) -> None:
        self._card, self._width, self._line = card, width, line
        self._left, self._right = 4.2 * line, width - 0.8 * line
        self._top, self._bottom = 0.8 * line, (HEIGHT - 2.6) * line
        tried = [trial.hook_mm for trial in card.trials]
        self._hooks = min(tried) * 0.85, max(tried) * 1.18
        sizes = list(self._sizes())
        spare = 0.08 * (max(sizes) - min(sizes))
        self._span = min(sizes) - spare, max(sizes) + spare

    def drawing(self) -> Drawing:
        shapes = [*self._fitted(), *self._axes(), *self._wanted(), *self._points()]
        return Drawing(self._width, HEIGHT * self._line, self._line, tuple(shapes))

    def _sizes(self) -> Iterator[float]:
        """Every size that must be in sight."""
        multiple = self._card.multiple
        for trial in self._card.trials:
            yield from (trial.pitch_mm * multiple * (1 + sign * trial.give_or_take) for sign in (-1, 1))
        if self._card.line is not None:
            for hook in self._hooks:
                at = self._card.line.at(hook)
                yield from (at.pitch_mm * multiple * math.exp(sign * min(at.give_or_take, 0.3)) for sign in (-1, 1))
        if self._card.wanted_mm is not None:
            yield self._card.wanted_mm * multiple

    def _x(self, hook_mm: float) -> float:
        least, most = self._hooks
        return self._left + (hook_mm - least) / (most - least) * (self._right - self._left)

    def _y(self, size_mm: float) -> float:
        least, most = self._span
        return self._bottom - (size_mm - least) / (most - least) * (self._bottom - self._top)

    def _axes(self) -> Iterator[Shape]:
        yield Line(((self._left, self._top), (self._left, self._bottom), (self._right, self._bottom)), "muted")
        for hook in self._marked_hooks():
            x = self._x(hook)
            yield Line(((x, self._bottom), (x, self._bottom + 0.3 * self._line)), "muted")
            yield Text(x, self._bottom + 0.8 * self._line, show_number(hook, 2), "muted")
        yield Text((self._left + self._right) / 2, self._bottom + 2.0 * self._line, "hook, mm", "muted")
        one = 10.0 if self._card.units is Units.CM else float(MM_PER_INCH)
        sizes, decimals = _round_steps(self._span[0] / one, self._span[1] / one, at_most=5)
        for size in sizes:
            y = self._y(size * one)
            yield Line(((self._left - 0.3 * self._line, y), (self._left, y)), "muted")
            yield Text(self._left - 0.5 * self._line, y, fixed(size, decimals), "muted", "e")
        unit = "repeat" if self._card.multiple > 1 else "stitch"
        yield Text(0.7 * self._line, (self._top + self._bottom) / 2, f"{self._card.units.value} a {unit}", "muted", turned=True)

    def _marked_hooks(self) -> Iterator[float]:
        """Hooks of the trade as far as their figures do not run into each other."""
        last = -math.inf
        for hook in sorted({hook.mm for hook in HOOKS}):
            if self._hooks[0] <= hook <= self._hooks[1] and self._x(hook) - last >= 2.4 * self._line:
                last = self._x(hook)
                yield hook

    def _fitted(self) -> Iterator[Shape]:
        """The band and the line; where the line is not known it is dashed, without a band."""
        if self._card.line is None:
            return
        least, most = self._hooks
        at = [self._card.line.at(least * (most / least) ** (step / STEPS)) for step in range(STEPS + 1)]
        multiple = self._card.multiple
        known = [gauge for gauge in at if gauge.known]
        if len(known) > 1:
            above: list[Point] = [(self._x(g.hook_mm), self._y(g.pitch_mm * multiple * math.exp(g.give_or_take))) for g in known]
            below: list[Point] = [
                (self._x(g.hook_mm), self._y(g.pitch_mm * multiple * math.exp(-g.give_or_take))) for g in reversed(known)
            ]
            yield Polygon((*above, *below), "band", None)
            yield Line(tuple((self._x(g.hook_mm), self._y(g.pitch_mm * multiple)) for g in known), "series1", 2)
        yield Line(tuple((self._x(g.hook_mm), self._y(g.pitch_mm * multiple)) for g in at), "series1", dashed=True)

    def _wanted(self) -> Iterator[Shape]:
        if self._card.wanted_mm is not None:
            y = self._y(self._card.wanted_mm * self._card.multiple)
            yield Line(((self._left, y), (self._right, y)), "measure", dashed=True)
            yield Text(self._right, y - 0.1 * self._line, "asked", "measure", "se")

    def _points(self) -> Iterator[Shape]:
        cap = 0.25 * self._line
        for place, trial in enumerate(self._card.trials):
            x, size = self._x(trial.hook_mm) + self._beside(place), trial.pitch_mm * self._card.multiple
            low, high = (self._y(size * (1 + sign * trial.give_or_take)) for sign in (-1, 1))
            yield Line(((x, low), (x, high)), "series2", 1.5)
            for y in (low, high):
                yield Line(((x - cap, y), (x + cap, y)), "series2", 1.5)
            yield Marker(x, self._y(size), "circle", "series2", 0.5 * self._line)

    def _beside(self, place: int) -> float:
        """Swatches of one hook stand a little apart, so that each can be seen."""
        hook = self._card.trials[place].hook_mm
        same = [other for other, trial in enumerate(self._card.trials) if trial.hook_mm == hook]
        return (same.index(place) - (len(same) - 1) / 2) * 0.6 * self._line


def _round_steps(least: float, most: float, at_most: int) -> tuple[Sequence[float], int]:
    """Round figures from ``least`` to ``most``, at most so many, and the decimals that all of them need."""
    rough = (most - least) / at_most
    scale = 10.0 ** math.floor(math.log10(rough))
    step = next(scale * factor for factor in (1, 2, 5, 10) if scale * factor >= rough)
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    return [step * n for n in range(math.ceil(least / step), math.floor(most / step) + 1)], decimals
