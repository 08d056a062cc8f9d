"""Which hook: what the swatches of one yarn, stitch and hand say of the trade's hooks, and the hook for a wanted gauge."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from logbook.craft.gauges.over_length import counted_in_a_column, counted_over, over_length
from logbook.craft.gauges.which_hook import HookGauge, HookLine, HookTrial, hook_for, hook_line, hook_notes, hook_trials
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.words.hooks import hook_names, show_hook
from logbook.craft.words.lengths import Units, show_small
from logbook.craft.words.numbers import show_percent
from logbook.errors import RefusedError, UnreadableError
from logbook.pages.gauges.gauge_words import sure_words

NOT_KNOWN = "not known"


@dataclass(frozen=True, slots=True)
class HookCard:
    """What is shown. Without a ``line`` ``missing`` says why, and there is no table.

    ``cells`` are those of each hook: size, names, tried or not, its gauge, its width with give or take. ``answer`` says which
    hook gives the wanted gauge, ``place`` is its place in the table (else that of the first hook tried), ``wanted_mm`` the wanted
    pitch, ``error`` what is wrong with how it is typed.
    """

    trials: tuple[HookTrial, ...]
    multiple: int
    units: Units
    line: HookLine | None = None
    missing: str = ""
    cells: tuple[tuple[str, ...], ...] = ()
    notes: tuple[str, ...] = ()
    answer: str = ""
    place: int = 0
    wanted_mm: float | None = None
    error: str = ""


def hook_card(
    swatch: Swatch, others: Sequence[Swatch], condition: Condition, assumed: Assumptions, wanted: str, units: Units
) -> HookCard:
    """The card for ``swatch`` and those of ``others`` that are like it, in one condition; ``wanted`` is typed, "" for none."""
    multiple = swatch.per_repeat(Direction.STITCHES) or 1
    trials = hook_trials(swatch, others, condition, assumed)
    try:
        line = hook_line(trials)
    except RefusedError as refused:
        return HookCard(
            trials, multiple, units, missing=" ".join([str(refused), *_lone(swatch, trials, condition, assumed, units)])
        )
    error, answer, pitch = "", "", None
    try:
        pitch = _wanted_pitch(wanted, swatch.per_repeat(Direction.STITCHES), units) if wanted.strip() else None
    except UnreadableError as unreadable:
        error = str(unreadable)
    best = line.at(line.hooks[0])
    if pitch is not None:
        best = hook_for(line, pitch) or best
        answer = " ".join(_answer(line, pitch, multiple, units))
    return HookCard(
        trials,
        multiple,
        units,
        line=line,
        cells=tuple(_cells(gauge, multiple, units) for gauge in line.table()),
        notes=(*_coarse_note(swatch, condition, assumed), *hook_notes(line)),
        answer=answer,
        place=[gauge.hook_mm for gauge in line.table()].index(best.hook_mm),
        wanted_mm=pitch,
        error=error,
    )


def _lone(swatch: Swatch, trials: Sequence[HookTrial], condition: Condition, assumed: Assumptions, units: Units) -> Iterator[str]:
    """What is known all the same, where there is no line."""
    yield from _coarse_note(swatch, condition, assumed)
    mine = next((trial for trial in trials if trial.tag == swatch.tag), None)
    if mine is not None:
        gives = counted_over(mine.pitch_mm, Direction.STITCHES, swatch.per_repeat(Direction.STITCHES), units)
        yield f"With {show_hook(mine.hook_mm)} it gives {gives}, {sure_words(mine.give_or_take)}."


def _coarse_note(swatch: Swatch, condition: Condition, assumed: Assumptions) -> Iterator[str]:
    gauge = gauges_of(swatch, assumed).get((condition, Direction.STITCHES))
    if gauge is not None and gauge.too_coarse:
        yield f"{swatch.tag or 'This swatch'} was counted too coarsely to be used here: measure how far some whole repeats reach."


def _wanted_pitch(text: str, multiple: int | None, units: Units) -> float:
    readings = read_readings(text, Direction.STITCHES, units)
    if len(readings) != 1:
        raise UnreadableError("Type one gauge, like “2.6 repeats in 10 cm”.")
    if not readings[0].counted.whole_repeats:
        return readings[0].unit_mm
    if multiple is None:
        raise UnreadableError("The stitch pattern has no multiple: type the gauge in stitches, like “16 sts in 10 cm”.")
    return readings[0].unit_mm / multiple


def _answer(line: HookLine, pitch_mm: float, multiple: int, units: Units) -> Iterator[str]:
    """The hook for the wanted gauge, how sure that is, and which others may give it too."""
    best = hook_for(line, pitch_mm)
    if best is None:
        yield "None of these hooks is known well enough: measure the swatches at more places, or try more hooks."
        return
    gives = f"{counted_over(best.pitch_mm, Direction.STITCHES, multiple, units)}, give or take {show_percent(best.give_or_take)}"
    if _off(best, pitch_mm) > best.give_or_take:
        yield f"No hook tried gives that gauge. The nearest, {_named(best)}, gives {gives}: {_further(line, best, pitch_mm)}."
        return
    yield f"Try {_named(best)}: it should give {gives}."
    if not best.tried:
        yield "Nobody has tried it with this yarn and stitch yet: work a swatch before you trust it."
    beside = [
        show_hook(gauge.hook_mm)
        for gauge in line.table()
        if gauge.known and gauge is not best and gauge.hook_mm != best.hook_mm and _off(gauge, pitch_mm) <= gauge.give_or_take
    ]
    if beside:
        yield f"Within {'its' if len(beside) == 1 else 'their'} give or take, {' or '.join(beside)} may give it too."


def _further(line: HookLine, best: HookGauge, pitch_mm: float) -> str:
    if line.slope <= 0:
        return "try other hooks"
    return f"try a {'thicker' if pitch_mm > best.pitch_mm else 'thinner'} one"


def _off(gauge: HookGauge, pitch_mm: float) -> float:
    return abs(math.log(gauge.pitch_mm / pitch_mm))


def _named(gauge: HookGauge) -> str:
    names = hook_names(gauge.hook_mm)
    return f"{show_hook(gauge.hook_mm)} ({names})" if names else show_hook(gauge.hook_mm)


def _cells(gauge: HookGauge, multiple: int, units: Units) -> tuple[str, ...]:
    in_a_length = f"{counted_in_a_column(gauge.pitch_mm, Direction.STITCHES, multiple, units)} in {over_length(units)[1]}"
    known = in_a_length, _width(gauge, multiple, units)
    figures = known if gauge.known else (NOT_KNOWN, f"try {show_hook(gauge.hook_mm)}")
    return (show_hook(gauge.hook_mm), hook_names(gauge.hook_mm), "tried" if gauge.tried else "", *figures)


def _width(gauge: HookGauge, multiple: int, units: Units) -> str:
    whole = gauge.pitch_mm * multiple
    return f"{show_small(whole, units)} ± {show_small(whole * gauge.give_or_take, units)}"
