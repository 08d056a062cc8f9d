"""How sure a gauge is, in words, and which of a swatch's gauges is meant where nothing else is said."""

from collections.abc import Mapping

from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.words.numbers import show_percent

Gauges = Mapping[tuple[Condition, Direction], Gauge]
FINISHED_FIRST = (Condition.WASHED, Condition.PINNED, Condition.WORKED)


def usual_condition(gauges: Gauges) -> Condition:
    """The condition a gauge is spoken of in: washed, else pinned, else as worked, whichever was measured (else washed)."""
    measured = {condition for condition, _ in gauges}
    return next((condition for condition in FINISHED_FIRST if condition in measured), Condition.WASHED)


def sure_words(give_or_take: float | None) -> str:
    """``give or take 2.5 %``, or that a count is too coarse to say."""
    return "accuracy unknown, counted too coarsely" if give_or_take is None else f"give or take {show_percent(give_or_take)}"
