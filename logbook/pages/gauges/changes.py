"""How the fabric changes with its state: as figures, and the same square drawn in each."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from logbook.craft.drawing.drawing import Draw, Drawing, Rect, Shape, Text
from logbook.craft.gauges.condition_changes import ConditionChange, condition_changes
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.words.numbers import show_percent

NOTHING = "Measure the swatch in two states, say as worked and washed, and how it changes stands here."


@dataclass(frozen=True, slots=True)
class Square:
    """The same square in one state: how many times as wide and as high as in the first. None: not measured in that direction."""

    condition: Condition
    across: float | None
    up: float | None


@dataclass(frozen=True, slots=True)
class Changes:
    """The figures as lines, and the squares, the first the one that the others are compared with.

    ``missing`` says why there are none.
    """

    lines: tuple[str, ...] = ()
    squares: tuple[Square, ...] = ()
    missing: str = ""


def changes_of(swatch: Swatch, assumed: Assumptions) -> Changes:
    """From as worked to every other state, and from washed (else pinned) to those after it: the give in wear."""
    measured = {condition for condition, _ in gauges_of(swatch, assumed)}
    finished = [one for one in (Condition.WASHED, Condition.PINNED) if one in measured][:1]
    found = [
        change
        for since in (Condition.WORKED, *finished)
        for change in condition_changes(swatch, assumed, since)
        if _follows(since, change.condition)
    ]
    if not found:
        return Changes(missing=NOTHING)
    return Changes(tuple(_lines(found)), tuple(_squares(swatch, assumed)))


def _follows(since: Condition, condition: Condition) -> bool:
    """Whether a cloth goes from one state to the other; washing is not taken back by pinning or pulling."""
    return list(Condition).index(condition) > list(Condition).index(since)


def _lines(found: Sequence[ConditionChange]) -> Iterator[str]:
    """``Washed, laid flat, from as worked: stitches −1.6 % ± 3.4 % (may be none), rows −4.6 % ± 3.4 %.``"""
    states: dict[tuple[Condition, Condition], list[str]] = {}
    for change in found:
        states.setdefault((change.since, change.condition), []).append(_figure(change))
    for (since, condition), figures in states.items():
        words = condition.words
        yield f"{words[0].upper()}{words[1:]}, from {since.words}: {', '.join(figures)}."


def _figure(change: ConditionChange) -> str:
    amount = f"{change.direction.value} {_signed(change.change)}"
    if change.give_or_take is None:
        return f"{amount} (counted too coarsely to be sure)"
    maybe_none = " (may be none)" if abs(change.change) <= change.give_or_take else ""
    return f"{amount} ± {show_percent(change.give_or_take)}{maybe_none}"


def _signed(share: float) -> str:
    shown = show_percent(share)
    return shown if share <= 0 or shown == "0 %" else f"+{shown}"


def _squares(swatch: Swatch, assumed: Assumptions) -> Iterator[Square]:
    gauges = gauges_of(swatch, assumed)
    pitch = {place: gauge.pitch_mm for place, gauge in gauges.items()}
    base = next(one for one in (Condition.WORKED, Condition.WASHED, Condition.PINNED) if any(c is one for c, _ in gauges))
    for condition in dict.fromkeys((base, *Condition)):
        across, up = (_ratio(pitch, base, condition, direction) for direction in Direction)
        if across is not None or up is not None:
            yield Square(condition, across, up)


def _ratio(
    pitch: Mapping[tuple[Condition, Direction], float], base: Condition, condition: Condition, direction: Direction
) -> float | None:
    before, after = pitch.get((base, direction)), pitch.get((condition, direction))
    return after / before if before and after else None


def changes_drawing(squares: tuple[Square, ...]) -> Draw:
    """The squares side by side, each over the dashed outline of the first; true to scale."""
    return lambda width, line: _Squares(squares, width, line).drawing()


class _Squares:
    """As many in a row as there is room for; a side that was not measured is drawn as it was, and said."""

    def __init__(self, squares: tuple[Square, ...], width: float, line: float) -> None:
        self._squares, self._width, self._line = squares, width, line
        self._in_row = max(1, min(len(squares), int(width / (8.5 * line))))
        self._cell = width / self._in_row
        most = max(max(one.across or 1.0, one.up or 1.0) for one in squares)
        self._side = min(0.86 * self._cell, 6.5 * line) / most
        self._room = self._side * most

    def drawing(self) -> Drawing:
        row_height = self._room + 3.6 * self._line
        rows = math.ceil(len(self._squares) / self._in_row)
        shapes = [
            shape
            for place, square in enumerate(self._squares)
            for shape in self._one(square, place % self._in_row * self._cell, place // self._in_row * row_height)
        ]
        return Drawing(self._width, rows * row_height, self._line, tuple(shapes))

    def _one(self, square: Square, left: float, top: float) -> Iterator[Shape]:
        middle, floor = left + self._cell / 2, top + 0.3 * self._line + self._room
        across, up = (self._side * (ratio or 1.0) for ratio in (square.across, square.up))
        whole = square.across is not None and square.up is not None
        yield Rect(middle - across / 2, floor - up, across, up, "band", "accent", dashed=not whole)
        if square is not self._squares[0]:
            yield Rect(middle - self._side / 2, floor - self._side, self._side, self._side, None, "muted", dashed=True)
        for place, (words, style) in enumerate(self._words(square)):
            y = floor + (0.9 + place) * self._line
            yield Text(middle, y, words, "ink" if place == 0 else "muted", "center", "bold" if style else "plain")

    def _words(self, square: Square) -> Iterator[tuple[str, bool]]:
        yield square.condition.words, True
        if square is self._squares[0]:
            yield "compared with this", False
        else:
            yield f"stitches {_times(square.across)}", False
            yield f"rows {_times(square.up)}", False


def _times(ratio: float | None) -> str:
    return "not measured" if ratio is None else _signed(ratio - 1)
