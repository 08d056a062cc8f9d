"""The sheet "Gauges": one line a swatch as a person reads it, the newest first; in a log of moderate size live formulas.

The columns behind the print area are what the sheet "Starting chain" reckons with: mm per stitch and row, multiple, plus, rows,
and what made pieces taught of the hand that worked the swatch.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from logbook.craft.gauges.drift import Drifts
from logbook.craft.gauges.lending import Lending, finished_condition
from logbook.craft.gauges.washing import FinishedGauge, Washing
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.swatch import Swatch
from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import HUNDREDTHS, PERCENT, TENTHS, WHOLE, Content, Formula, Heading, column_letters
from logbook.sheets.readings_sheet import MOST_LIVE, GaugeNumbers

NAME = "Gauges"
TOP = 4
"""The row of the headings."""
HEADINGS = (
    Heading("tag", 9), Heading("date", 10.5), Heading("yarn", 20, wraps=True), Heading("colour", 12, wraps=True),
    Heading("hook mm", 6.5, "0.0##", right=True), Heading("stitch pattern", 18, wraps=True), Heading("measured", 15, wraps=True),
    Heading("stitches in 10 cm", 8.5, TENTHS, right=True), Heading("rows in 10 cm", 8.5, TENTHS, right=True),
    Heading("stitches in 4 in", 8.5, TENTHS, right=True), Heading("rows in 4 in", 8.5, TENTHS, right=True),
    Heading("repeats in 10 cm", 8.5, HUNDREDTHS, right=True), Heading("give or take, stitches", 9, PERCENT, right=True),
    Heading("give or take, rows", 9, PERCENT, right=True), Heading("washing changes width", 9, "+0.0%;-0.0%;0.0%", right=True),
    Heading("washing changes length", 9, "+0.0%;-0.0%;0.0%", right=True), Heading("stretch sideways", 9, PERCENT, right=True),
    Heading("noted for", 30, wraps=True),
    Heading("mm per stitch", 9, "0.000", right=True), Heading("mm per row", 9, "0.000", right=True),
    Heading("mm per stitch before washing", 10, "0.000", right=True),
    Heading("mm per row before washing", 10, "0.000", right=True),
    Heading("multiple", 8, WHOLE, right=True), Heading("plus", 8, WHOLE, right=True),
    Heading("extra chains", 8, WHOLE, right=True),
    Heading("set-up rows", 8, WHOLE, right=True), Heading("rows in repeat", 8, WHOLE, right=True),
    Heading("closing rows", 8, WHOLE, right=True),
    Heading("a piece comes out wider by", 10, "+0.0%;-0.0%;0.0%", right=True),
    Heading("a piece comes out longer by", 10, "+0.0%;-0.0%;0.0%", right=True),
    Heading("a piece differs in width by", 10, PERCENT, right=True),
    Heading("a piece differs in length by", 10, PERCENT, right=True),
)  # fmt: skip
_PRINTED = 18
LETTER = {heading.name: column_letters(place) for place, heading in enumerate(HEADINGS, start=1)}
_LONGEST_NOTE = 160


@dataclass(frozen=True, slots=True)
class GaugeLine:
    """A swatch with its gauges as finished; None where nothing was measured."""

    swatch: Swatch
    stitches: FinishedGauge | None
    rows: FinishedGauge | None
    sideways_mm: float | None
    condition: Condition


def gauge_line(swatch: Swatch, lending: Lending) -> GaugeLine:
    """The line of one swatch."""
    gauges, condition = lending.gauges(swatch), finished_condition(swatch)
    pulled = gauges.get((Condition.SIDEWAYS, Direction.STITCHES))
    return GaugeLine(
        swatch,
        lending.finished(swatch, gauges, Direction.STITCHES, condition),
        lending.finished(swatch, gauges, Direction.ROWS, condition),
        pulled.pitch_mm if pulled else None,
        condition,
    )


def write_gauges(book: BookWriter, rows: Sequence[Sequence[Content]], *, live: bool) -> None:
    """The whole sheet of its rows, the newest first."""
    sheet = book.sheet(NAME, HEADINGS, landscape=True, top=TOP, freeze=1)
    said = "change one in the sheet Readings, and its gauge follows" if live else f"values, as there are more than {MOST_LIVE}"
    sheet.head("Gauges", f"One line for each swatch, the newest first; {said}. 4 in is taken as 10.16 cm.")
    sheet.table(HEADINGS, rows, len(rows))
    sheet.raw.print_area = f"A1:{column_letters(_PRINTED)}{max(sheet.row, TOP)}"


def gauge_row(row: int, line: GaugeLine, drift: Drifts, numbers: GaugeNumbers | None) -> tuple[Content, ...]:
    """One row of the sheet; ``numbers`` are those of the sheet of readings, None for values only."""
    swatch, stitches, rows = line.swatch, line.stitches, line.rows
    pattern = swatch.pattern
    multiple = pattern.multiple if pattern else None
    across, up = _Side(line, Direction.STITCHES, stitches, numbers), _Side(line, Direction.ROWS, rows, numbers)
    stitch, height = LETTER["mm per stitch"], LETTER["mm per row"]
    live = numbers is not None

    def over(mm: float, gauge: FinishedGauge | None, letter: str, units: int = 1) -> Content:
        if gauge is None:
            return None
        value = mm / gauge.pitch_mm / units
        return Formula(f"{mm:g}/{letter}{row}{'' if units == 1 else f'/{units}'}", value) if live else value

    def changed(gauge: FinishedGauge | None, letter: str, before: str) -> Content:
        if gauge is None or gauge.change is None:
            return None
        return Formula(f"{letter}{row}/{before}{row}-1", gauge.change) if live else gauge.change

    return (
        swatch.tag, swatch.date, swatch.yarn.name if swatch.yarn else "", swatch.colour, swatch.hook_mm,
        pattern.name if pattern else "", measured_words(stitches or rows),
        over(100, stitches, stitch), over(100, rows, height), over(101.6, stitches, stitch), over(101.6, rows, height),
        over(100, stitches, stitch, multiple) if multiple and multiple > 1 else None,
        across.give_or_take(), up.give_or_take(),
        changed(stitches, stitch, LETTER["mm per stitch before washing"]),
        changed(rows, height, LETTER["mm per row before washing"]),
        _stretch(row, line, numbers), _note(swatch),
        across.pitch(), up.pitch(), across.before(), up.before(),
        multiple, pattern.plus if pattern else None, pattern.extra() if pattern else None,
        *((pattern.set_up_rows, pattern.rows_in_repeat, pattern.closing_rows) if pattern else (None, None, None)),
        drift.stitches.factor - 1, drift.rows.factor - 1, drift.stitches.give_or_take, drift.rows.give_or_take,
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Side:
    """The cells of one direction."""

    line: GaugeLine
    direction: Direction
    gauge: FinishedGauge | None
    numbers: GaugeNumbers | None

    def pitch(self) -> Content:
        gauge = self.gauge
        if gauge is None or self.numbers is None:
            return gauge.pitch_mm if gauge else None
        formula = self.numbers.pitch(self._number())
        if gauge.washing is Washing.BORROWED:
            formula += f"*{1 + (gauge.change or 0.0)!r}"
        return Formula(formula, gauge.pitch_mm)

    def give_or_take(self) -> Content:
        gauge = self.gauge
        if gauge is None or gauge.washing is Washing.UNKNOWN:
            return None
        value = gauge.give_or_take
        if self.numbers is None:
            return value
        return Formula(self.numbers.give_or_take(self._number(), gauge.borrowed_part), "" if value is None else value)

    def before(self) -> Content:
        gauge = self.gauge
        if gauge is None or gauge.before_washing_mm is None or self.numbers is None:
            return gauge.before_washing_mm if gauge else None
        number = self.numbers.number(self.line.swatch.tag, Condition.WORKED, self.direction)
        return None if number is None else Formula(self.numbers.pitch(number), gauge.before_washing_mm)

    def _number(self) -> int:
        assert self.numbers is not None
        assert self.gauge is not None
        measured = self.gauge.washing is Washing.MEASURED
        number = self.numbers.number(self.line.swatch.tag, self.line.condition if measured else Condition.WORKED, self.direction)
        assert number is not None
        return number


def _stretch(row: int, line: GaugeLine, numbers: GaugeNumbers | None) -> Content:
    if line.sideways_mm is None or line.stitches is None:
        return None
    value = line.sideways_mm / line.stitches.pitch_mm - 1
    number = numbers.number(line.swatch.tag, Condition.SIDEWAYS, Direction.STITCHES) if numbers else None
    if numbers is None or number is None:
        return value
    return Formula(f"({numbers.pitch(number)})/{LETTER['mm per stitch']}{row}-1", value)


def measured_words(gauge: FinishedGauge | None) -> str:
    """In what state the line's gauge was measured."""
    if gauge is None:
        return "not measured"
    if gauge.washing is Washing.BORROWED:
        count = len(gauge.lenders)
        return f"as worked; washing from {count} {'swatch' if count == 1 else 'swatches'}"
    if gauge.washing is Washing.UNKNOWN:
        return "as worked; washing unknown"
    return gauge.condition.words


def _note(swatch: Swatch) -> str:
    plain = " ".join(swatch.notes.split())
    return plain if len(plain) <= _LONGEST_NOTE else plain[: _LONGEST_NOTE - 1].rstrip() + "…"
