"""The gauge as a written pattern states it: over 10 cm / 4 in, in repeats and stitches, with stitch, hook and condition.

The numbers are those of exactly 10 cm; 4 in is the trade's rounding of it.
"""

from logbook.craft.gauges.over_length import over_length
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.words.counting import counted
from logbook.craft.words.hooks import show_hook
from logbook.craft.words.lengths import Units
from logbook.craft.words.terms import Terms, gauge_word, translated
from logbook.errors import RefusedError

_OVER_MM, _ = over_length(Units.CM)
_STATES = {
    Condition.WORKED: "as worked, before washing",
    Condition.WASHED: "washed and laid flat",
    Condition.PINNED: "washed and pinned out",
}


def gauge_line(swatch: Swatch, condition: Condition, assumptions: Assumptions, terms: Terms) -> str:
    """``Gauge: 2.6 repeats (15.7 sts) and 9 rows = 10 cm / 4 in in shell stitch, 4.5 mm hook, washed and laid flat``.

    In UK terms it is called tension. Raises RefusedError if ``swatch`` has no gauge in that condition.
    """
    gauges = gauges_of(swatch, assumptions)
    parts = [
        words
        for words in (
            _across(gauges.get((condition, Direction.STITCHES)), swatch.per_repeat(Direction.STITCHES)),
            _up(gauges.get((condition, Direction.ROWS))),
        )
        if words
    ]
    if not parts:
        raise RefusedError(f"{swatch.tag or 'This swatch'} was not measured {condition.words}: there is no gauge to write down.")
    behind = [
        f"in {_stitch(swatch, terms)}" if swatch.pattern and swatch.pattern.name else "",
        f"{show_hook(swatch.hook_mm)} hook" if swatch.hook_mm is not None else "",
        _STATES.get(condition, condition.words),
    ]
    word = gauge_word(terms).capitalize()
    line = f"{word}: {' and '.join(parts)} = 10 cm / 4 in"
    return line + (" " if behind[0] else ", ") + ", ".join(words for words in behind if words)


def _across(gauge: Gauge | None, multiple: int | None) -> str:
    if gauge is None:
        return ""
    stitches = _OVER_MM / gauge.pitch_mm
    if multiple is None or multiple == 1:
        return counted(stitches, "st", 1)
    return f"{counted(stitches / multiple, 'repeat', 1)} ({counted(stitches, 'st', 1)})"


def _up(gauge: Gauge | None) -> str:
    return "" if gauge is None else counted(_OVER_MM / gauge.pitch_mm, "row", 1)


def _stitch(swatch: Swatch, terms: Terms) -> str:
    if swatch.pattern is None:
        return ""
    return translated(swatch.pattern.name, Terms(swatch.pattern.terms or Terms.US), terms)
