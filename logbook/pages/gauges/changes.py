"""How the fabric changes with its state, as figures."""

from collections.abc import Iterator, Sequence

from logbook.craft.gauges.condition_changes import ConditionChange, condition_changes
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.words.numbers import show_change, show_percent


def changes_of(swatch: Swatch, assumed: Assumptions) -> tuple[str, ...]:
    """From as worked to every other state, and from washed (else pinned) to those after it: the give in wear. A line each."""
    measured = {condition for condition, _ in gauges_of(swatch, assumed)}
    finished = [one for one in (Condition.WASHED, Condition.PINNED) if one in measured][:1]
    found = [
        change
        for since in (Condition.WORKED, *finished)
        for change in condition_changes(swatch, assumed, since)
        if _follows(since, change.condition)
    ]
    return tuple(_lines(found))


def _follows(since: Condition, condition: Condition) -> bool:
    """Whether a cloth goes from one state to the other; washing is not taken back by pinning or pulling."""
    return list(Condition).index(condition) > list(Condition).index(since)


def _lines(found: Sequence[ConditionChange]) -> Iterator[str]:
    """``From as worked to washed, laid flat: stitches −1.6 % ± 3.4 % (may be none), rows −4.6 % ± 3.4 %.``"""
    states: dict[tuple[Condition, Condition], list[str]] = {}
    for change in found:
        states.setdefault((change.since, change.condition), []).append(_figure(change))
    for (since, condition), figures in states.items():
        yield f"From {since.words} to {condition.words}: {', '.join(figures)}."


def _figure(change: ConditionChange) -> str:
    amount = f"{change.direction.value} {show_change(change.change)}"
    if change.give_or_take is None:
        return f"{amount} (counted too coarsely to be sure)"
    maybe_none = " (may be none)" if abs(change.change) <= change.give_or_take else ""
    return f"{amount} ± {show_percent(change.give_or_take)}{maybe_none}"
