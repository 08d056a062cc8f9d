"""The sheet "Readings": one row a reading, and in a log of moderate size the parts of its gauge's give or take, live.

Each gauge (the readings of one swatch, condition and direction) has a number, by which the sheet "Gauges" sums what belongs to
it; so both sheets may be sorted and filtered. The formulas are those of ``craft/swatches/gauge.py``.
"""

import math
from collections.abc import Iterable, Iterator
from itertools import islice
from typing import NamedTuple

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import COARSE
from logbook.craft.swatches.swatch import Swatch, TakenReading, measuring
from logbook.sheets.book_writer import MOST_ROWS, BookWriter
from logbook.sheets.cells import HUNDREDTHS, PERCENT, WHOLE, Content, Formula, Heading

NAME = "Readings"
MOST_LIVE = 500
"""Swatches of a log whose gauges are formulas; above that they are values."""
_HEADINGS = (
    Heading("tag", 12), Heading("condition", 18), Heading("direction", 10), Heading("as typed", 30, wraps=True),
    Heading("number", 9, "0.##", right=True), Heading("counted", 11), Heading("length cm", 9, "0.0#", right=True),
    Heading("mm per stitch or row", 11, HUNDREDTHS, right=True), Heading("stitches or rows", 10, "0.##", right=True),
    Heading("read to (mm; or of a count)", 13, "0.0##", right=True),
)  # fmt: skip
_LIVE = (
    Heading("gauge no.", 8, WHOLE, right=True), Heading("share of its gauge", 9, PERCENT, right=True),
    Heading("off its gauge", 9, PERCENT, right=True), Heading("of its place", 9, "0.0E+00", right=True),
    Heading("of the tape", 9, "0.0E+00", right=True), Heading("of counting", 9, "0.0E+00", right=True),
    Heading("too coarse", 8, WHOLE, right=True),
)  # fmt: skip
Key = tuple[str, Condition, Direction]


class GaugeNumbers:
    """The number of each gauge, and the formulas that sum over its readings."""

    def __init__(self, swatches: Iterable[Swatch], assumptions: Assumptions) -> None:
        self.assumptions = assumptions
        self._numbers: dict[Key, int] = {}
        self.rows = 0
        for swatch in swatches:
            self.rows += len(swatch.readings)
            for taken in swatch.readings:
                if _known(swatch, taken):
                    self._numbers.setdefault((swatch.tag, taken.condition, taken.direction), len(self._numbers) + 1)

    def number(self, tag: str, condition: Condition, direction: Direction) -> int | None:
        """The number of a gauge; None without one."""
        return self._numbers.get((tag, condition, direction))

    def pitch(self, number: int) -> str:
        """mm per stitch or row."""
        return f"10*{self._sum(number, 'G')}/{self._sum(number, 'I')}"

    def give_or_take(self, number: int, borrowed: float = 0.0) -> str:
        """The relative half-width, "" where a count is too coarse; ``borrowed`` is what borrowing washing adds."""
        count = f"COUNTIF({self._column('K')},{number})"
        variation = f"{self.assumptions.variation!r}^2"
        scatter = f"{self._sum(number, 'N')}-{self._sum(number, 'M')}^2/{count}"
        shares = f"SUMPRODUCT(({self._column('K')}={number})*{self._column('L')}^2)"
        fabric = f"TINV(0.05,{count}+3)^2*(4*{variation}+{scatter})/({count}+3)*{shares}"
        tape = f"3*({self._sum(number, 'O')}+{self._sum(number, 'P')}^2)"
        lent = f"+{borrowed!r}^2" if borrowed else ""
        return f'IF({self._sum(number, "Q")}>0,"",SQRT({fabric}+{tape}{lent}))'

    def _column(self, letter: str) -> str:
        return f"{NAME}!${letter}$2:${letter}${self.rows + 1}"

    def _sum(self, number: int, letter: str) -> str:
        return f"SUMIF({self._column('K')},{number},{self._column(letter)})"


def write_readings(
    book: BookWriter, swatches: Iterable[Swatch], readings: int, numbers: GaugeNumbers | None, assumptions: Assumptions
) -> None:
    """The whole sheet of so many ``readings``, or as many sheets as they take, those behind the first behind all other sheets.

    With ``numbers`` it is live, with the columns that the gauges are summed from.
    """
    headings = _HEADINGS if numbers is None else (*_HEADINGS, *_LIVE)
    taken = ((swatch, *each) for swatch in swatches for each in zip(swatch.readings, _parts(swatch, assumptions), strict=True))
    rows = (_row(number, *one, numbers) for number, one in enumerate(taken, start=2))
    sheets = -(-readings // _MOST) or 1
    for place in range(1, sheets + 1):
        sheet = book.sheet(_named(place), headings, landscape=True, top=1, freeze=1, last=place > 1)
        some = min(_MOST, readings - _MOST * (place - 1))
        sheet.table(headings, islice(rows, some), some)
        if place < sheets:
            sheet.add((f"The readings go on in the sheet “{_named(place + 1)}”.",))


_MOST = MOST_ROWS - 2


def _named(place: int) -> str:
    return NAME if place == 1 else f"{NAME} ({place})"


def _known(swatch: Swatch, taken: TakenReading) -> bool:
    """Whether the gauge a reading belongs to can be worked out."""
    if not taken.reading.measures:
        return False
    if swatch.per_repeat(taken.direction) is not None:
        return True
    return not any(r.counted.whole_repeats for r in measuring(swatch, taken.condition, taken.direction))


class _Parts(NamedTuple):
    """Of a reading: how finely it was read, its share of its gauge, and how far it lies off it."""

    finest: float
    share: float
    off: float


def _row(row: int, swatch: Swatch, taken: TakenReading, parts: _Parts, numbers: GaugeNumbers | None) -> tuple[Content, ...]:
    reading, finest = taken.reading, parts.finest
    if not reading.measures:
        said = (swatch.tag, taken.condition.words, taken.direction.value, reading.text)
        return (*said, *[None] * (len(_HEADINGS) + (len(_LIVE) if numbers else 0) - len(said)))
    each = swatch.per_repeat(taken.direction) if reading.counted.whole_repeats else 1
    units = None if each is None else reading.number * each
    first: tuple[Content, ...] = (
        swatch.tag, taken.condition.words, taken.direction.value, reading.text, reading.number, reading.counted.value,
        reading.length_mm / 10,
    )  # fmt: skip
    pitch = None if units is None else reading.length_mm / units
    if numbers is None:
        return (*first, pitch, units, finest)
    number = numbers.number(swatch.tag, taken.condition, taken.direction)
    if pitch is None or units is None:
        return (*first, None, None, finest, *[None] * len(_LIVE))
    worked_out = (Formula(f"10*G{row}/I{row}", pitch), Formula(f"E{row}*{each}", units))
    if number is None:
        return (*first, *worked_out, finest, *[None] * len(_LIVE))
    last = numbers.rows + 1
    total = f"SUMIF($K$2:$K${last},K{row},${{0}}$2:${{0}}${last})"
    share, off = parts.share, parts.off
    count = reading.is_count
    span = 0.0 if count else (share * finest / math.sqrt(6) / reading.length_mm) ** 2
    counting = share * finest / math.sqrt(12) / reading.number if count else 0.0
    return (
        *first, *worked_out, finest, number,
        Formula(f"I{row}/{total.format('I')}", share),
        Formula(f"G{row}/I{row}/({total.format('G')}/{total.format('I')})-1", off),
        Formula(f"M{row}^2", off**2),
        0 if count else Formula(f"(L{row}*J{row}/SQRT(6)/G{row}/10)^2", span),
        Formula(f"L{row}*J{row}/SQRT(12)/E{row}", counting) if count else 0,
        Formula(f"IF(J{row}/E{row}>{COARSE},1,0)", int(finest / reading.number > COARSE)) if count else 0,
    )  # fmt: skip


def _parts(swatch: Swatch, assumptions: Assumptions) -> Iterator[_Parts]:
    """Of each reading in order."""
    of_gauge: dict[tuple[Condition, Direction], Iterator[_Parts]] = {}
    for taken in swatch.readings:
        key = (taken.condition, taken.direction)
        if not taken.reading.measures:
            yield _Parts(0.0, 0.0, 0.0)
            continue
        if key not in of_gauge:
            of_gauge[key] = _parts_of(swatch, *key, assumptions)
        yield next(of_gauge[key])


def _parts_of(swatch: Swatch, condition: Condition, direction: Direction, assumptions: Assumptions) -> Iterator[_Parts]:
    readings, each = measuring(swatch, condition, direction), swatch.per_repeat(direction) or 1
    units = [r.number * (each if r.counted.whole_repeats else 1) for r in readings]
    all_units, pitch = math.fsum(units), math.fsum(r.length_mm for r in readings) / math.fsum(units)
    for reading, own, finest in zip(readings, units, assumptions.finest(readings), strict=True):
        yield _Parts(finest, own / all_units, reading.length_mm / own / pitch - 1)
