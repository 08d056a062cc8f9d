"""What the sheet "Starting chain" begins with: the newest swatch that was washed and measured, and its chains."""

from dataclasses import dataclass

from logbook.craft.gauges.drift import HandsDrift
from logbook.craft.gauges.washing import Washing
from logbook.craft.pieces.options import Option, Pitch, recommended
from logbook.craft.pieces.starting_chain import ChainRule, starting_chains
from logbook.sheets.gauges_sheet import GaugeLine


class SwatchToBegin:
    """The swatch that the sheet begins with: its ``row`` among the gauges (0: none) and its ``line``."""

    def __init__(self) -> None:
        self.row = 0
        self.line: GaugeLine | None = None
        self._best = (False, 0)

    def look_at(self, row: int, line: GaugeLine) -> None:
        """Takes it if it is washed, measured and brings its chains, or nothing better was seen; of those alike the first."""
        if line.stitches is None:
            return
        pattern = line.swatch.pattern
        whole = line.stitches.washing is Washing.MEASURED and pattern is not None and pattern.extra() is not None
        if self.line is None or (whole, -row) > self._best:
            self.row, self.line, self._best = row, line, (whole, -row)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainStart:
    """What the sheet begins with: mm per stitch and row (0: not known), give or take (None: not known), counts."""

    stitch_mm: float = 0.0
    row_mm: float = 0.0
    stitch_sure: float | None = None
    row_sure: float | None = None
    stitch_before_mm: float = 0.0
    row_before_mm: float = 0.0
    multiple: int = 1
    plus: int = 0
    extra: int | None = None
    set_up: int = 0
    in_repeat: int = 1
    closing: int = 0
    drift: float = 0.0
    row_drift: float = 0.0

    def options(self, width_mm: float) -> list[Option | None]:
        """The chain a repeat narrower than the one for a width, that one, and a repeat wider; None where there is none."""
        if self.stitch_mm <= 0:
            return [None, None, None]
        pitch = Pitch(
            mm=self.stitch_mm,
            gauge_give_or_take=self.stitch_sure,
            drift_give_or_take=self.drift,
            before_washing_mm=self.stitch_before_mm or None,
        )
        rule = ChainRule(multiple=self.multiple, plus=self.plus, extra_chains=self.extra)
        found = starting_chains(width_mm, pitch, rule)
        by_repeats = {option.repeats: option for option in found}
        best = recommended(found).repeats
        return [by_repeats.get(best + away) for away in (-1, 0, 1)]


def start_of(line: GaugeLine | None, known: HandsDrift) -> ChainStart:
    """The numbers of a line of the gauges, with the drift of the hand that worked it."""
    drift = known.of(line.swatch.worked_by if line else "")
    if line is None:
        return ChainStart(drift=drift.stitches.give_or_take, row_drift=drift.rows.give_or_take)
    pattern = line.swatch.pattern
    stitches = line.stitches and line.stitches.times(drift.stitches.factor)
    rows = line.rows and line.rows.times(drift.rows.factor)
    return ChainStart(
        stitch_mm=stitches.pitch_mm if stitches else 0.0,
        row_mm=rows.pitch_mm if rows else 0.0,
        stitch_sure=stitches.give_or_take if stitches else None,
        row_sure=rows.give_or_take if rows else None,
        stitch_before_mm=(stitches.before_washing_mm if stitches else None) or 0.0,
        row_before_mm=(rows.before_washing_mm if rows else None) or 0.0,
        multiple=(pattern.multiple if pattern else None) or 1,
        plus=(pattern.plus if pattern else None) or 0,
        extra=pattern.extra() if pattern else None,
        set_up=(pattern.set_up_rows if pattern else None) or 0,
        in_repeat=(pattern.rows_in_repeat if pattern else None) or 1,
        closing=(pattern.closing_rows if pattern else None) or 0,
        drift=drift.stitches.give_or_take,
        row_drift=drift.rows.give_or_take,
    )
