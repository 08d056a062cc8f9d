"""Nearest gauge: what have I that gives about so many repeats and rows, or about what the swatch in hand gives?"""

from dataclasses import dataclass

from logbook.craft.gauges.nearest_gauge import FARTHEST, WantedGauge, gauge_like
from logbook.craft.gauges.over_length import counted_in_a_column
from logbook.craft.gauges.washing import Washing
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import Counted, read_readings
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.counting import counted
from logbook.craft.words.hooks import show_hook
from logbook.craft.words.lengths import Units
from logbook.craft.words.numbers import fixed, grouped, show_percent
from logbook.errors import RefusedError, UnreadableError
from logbook.tasks.at_home import name_key
from logbook.tasks.nearest import LookedThrough, NearSwatch, nearest_of

MOST = 100
"""So many are listed; the rest is farther off still."""
EXAMPLE = "2.6 repeats and 9 rows in 10 cm"
EXAMPLE_INCHES = "2.6 repeats and 9 rows in 4 in"
_MARKS = {Washing.MEASURED: "", Washing.BORROWED: " *", Washing.UNKNOWN: " **"}
_MARKS_MEAN = {
    Washing.BORROWED: "* not washed yet: its washing is taken from other swatches of the yarn.",
    Washing.UNKNOWN: "** not washed yet, and no swatch of its yarn was: the gauge is as worked.",
}
_ATTRIBUTES = {Counted.REPEATS: "repeat_mm", Counted.STITCHES: "stitch_mm", Counted.ROWS: "row_mm"}


@dataclass(frozen=True, slots=True)
class NearLine:
    """A swatch in the list: its uid, its cells (off, tag, yarn, stitch pattern, hook, stitches, rows) and what they sort by."""

    uid: str
    cells: tuple[str, ...]
    sort_keys: tuple[str | float | None, ...]


@dataclass(frozen=True, slots=True)
class NearAnswer:
    """The nearest first; ``says`` is what was looked for and how many there are, ``error`` what is wrong with the text."""

    lines: tuple[NearLine, ...] = ()
    says: str = ""
    error: str = ""


class NearestGauge:
    """Looks among ``found``; while nothing is typed, for what is like the swatch ``in_hand``, itself left out."""

    def __init__(self, among: LookedThrough, in_hand: Swatch, assumed: Assumptions, units: Units) -> None:
        self._among, self._in_hand, self._assumed, self._units = among, in_hand, assumed, units

    def answer(self, text: str, condition: Condition) -> NearAnswer:
        """The swatches nearest to what is typed, in gauges measured in ``condition``."""
        if text.strip():
            try:
                wanted = read_wanted(text, self._units)
            except UnreadableError as error:
                return NearAnswer(error=str(error))
            return self._near(wanted, "the gauge you typed", condition)
        try:
            wanted = gauge_like(self._in_hand, condition, self._assumed)
        except RefusedError as error:
            return NearAnswer(says=f"{error} Type what you are looking for.")
        return self._near(wanted, self._in_hand.tag or "the swatch shown", condition, self._in_hand.uid)

    def _near(self, wanted: WantedGauge, what: str, condition: Condition, but: str = "") -> NearAnswer:
        near = nearest_of(self._among, wanted, condition, but)
        if not near:
            looked = len(self._among.found) - any(one.swatch.uid == but for one in self._among.found)
            return NearAnswer(
                says=f"Looked through {counted(looked, 'swatch')}: none that was measured {condition.words} comes "
                f"within {show_percent(FARTHEST)} of it."
            )
        nearest = f", the {MOST} nearest" if len(near) > MOST else ""
        swatches = "1 swatch" if len(near) == 1 else f"{grouped(len(near))} swatches"
        says = f"{swatches} {condition.words}{nearest}; nearest to {what} first."
        marked = {one.washing for one in near[:MOST]}
        says = " ".join([says, *(words for washing, words in _MARKS_MEAN.items() if washing in marked)])
        return NearAnswer(tuple(self._line(one, condition) for one in near[:MOST]), says)

    def _line(self, near: NearSwatch, condition: Condition) -> NearLine:
        swatch = near.found.swatch
        stitch, row = (near.gauges.get((condition, direction)) for direction in Direction)
        multiple = swatch.per_repeat(Direction.STITCHES)
        yarn, pattern = swatch.yarn.name if swatch.yarn else "", swatch.pattern.name if swatch.pattern else ""
        cells = (
            f"{fixed(near.off * 100, 1)} %",
            f"{swatch.tag}{_MARKS[near.washing]}",
            yarn,
            pattern,
            "" if swatch.hook_mm is None else show_hook(swatch.hook_mm),
            counted_in_a_column(stitch.pitch_mm, Direction.STITCHES, multiple, self._units) if stitch else "",
            counted_in_a_column(row.pitch_mm, Direction.ROWS, None, self._units) if row else "",
        )
        sizes = (stitch.pitch_mm if stitch else None, row.pitch_mm if row else None)
        names = (name_key(swatch.tag), name_key(yarn) if yarn else None, name_key(pattern) if pattern else None)
        return NearLine(swatch.uid, cells, (near.off, *names, swatch.hook_mm, *sizes))


def read_wanted(text: str, units: Units) -> WantedGauge:
    """``2.6 repeats and 9 rows in 10 cm``, or each by itself, parted by ``;``. Raises UnreadableError."""
    example = EXAMPLE if units is Units.CM else EXAMPLE_INCHES
    asked: dict[str, float] = {}
    for reading in read_readings(text, units=units):
        attribute = _ATTRIBUTES.get(reading.counted)
        if attribute is None or attribute in asked:
            raise UnreadableError(f"Ask for repeats or stitches and for rows, each once, like “{example}”.")
        asked[attribute] = reading.unit_mm
    if not asked:
        raise UnreadableError(f"Type the gauge you are looking for, like “{example}”.")
    return WantedGauge(**asked)
