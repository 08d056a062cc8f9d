"""What the answers of the sheet "Starting chain" are worked out from, where anyone may follow it."""

from logbook.craft.gauges.drift import drift_of
from logbook.craft.swatches.assumptions import Assumptions
from logbook.sheets.book_writer import SheetWriter
from logbook.sheets.cells import PERCENT, TENTHS, WHOLE, CellLook, Content, Formula, Role
from logbook.sheets.chain_cells import (
    BODY,
    EASE,
    EXTRA,
    LENGTH,
    LINE,
    MULTIPLE,
    MULTIPLE_USED,
    PANELS,
    PLUS,
    REACH,
    REPEATS,
    ROWS,
    ROWS_REACH,
    SWATCH,
    TAPE,
    UNIT_MM,
    UNITS,
    VARIATION,
    WIDTH,
    WIDTH_CM,
    of_line,
    or_blank,
    section,
)
from logbook.sheets.chain_start import ChainStart
from logbook.sheets.gauges_sheet import TOP


class ChainWorkings:
    """Writes them in the order in which ``chain_cells.py`` says where they stand; ``last`` is the last row of the gauges."""

    def __init__(self, sheet: SheetWriter, start: ChainStart, assumptions: Assumptions, last: int) -> None:
        self._sheet, self._start, self._assumptions, self._last = sheet, start, assumptions, last

    def write(self, place: int) -> None:
        """All of them; ``place`` is the row of the swatch among the gauges (0: none)."""
        section(self._sheet, "What it calculates with")
        self._sheet.skip()
        tags = f"Gauges!$A${TOP + 1}:$A${self._last}"
        line = f'IF({SWATCH}="",0,SUMPRODUCT(EXACT({tags},{SWATCH})*ROW({tags})))'
        self._add("line of the swatch in Gauges", line, place, WHOLE)
        self._add("mm in the unit chosen", f'IF({UNITS}="in",25.4,10)', 10, TENTHS)
        self._stitches()
        self._rows()
        self._sure()
        self._wanted()

    def _stitches(self) -> None:
        start, by_hand = self._start, f'AND({SWATCH}="",ISNUMBER({REPEATS}),ISNUMBER({REACH}))'
        wider = f"*(1+N({self._at('a piece comes out wider by')}))"
        repeat = f"{REACH}*{UNIT_MM}/{REPEATS}/{MULTIPLE_USED}"
        stitch = f"IF({LINE}>0,N({self._at('mm per stitch')}){wider},IF({by_hand},{repeat},0))"
        self._add("mm per stitch", stitch, start.stitch_mm, "0.000")
        sure = self._give_or_take("give or take, stitches", REACH, REPEATS, by_hand)
        self._add("give or take of it", sure, or_blank(start.stitch_sure), PERCENT)
        before = f"IF({LINE}>0,N({self._at('mm per stitch before washing')}){wider},0)"
        self._add("mm per stitch before washing", before, start.stitch_before_mm, "0.000")
        self._add("stitches in a repeat", self._known(MULTIPLE, "multiple", 1), start.multiple, WHOLE)
        self._add("plus", self._known(PLUS, "plus", 0), start.plus, WHOLE)
        own = self._at("extra chains")
        extra = f'IF(ISNUMBER({EXTRA}),{EXTRA},IF({LINE}=0,"",IF(ISNUMBER({own}),{own},"")))'
        self._add("extra chains", extra, or_blank(start.extra), WHOLE)

    def _rows(self) -> None:
        start, by_hand = self._start, f'AND({SWATCH}="",ISNUMBER({ROWS}),ISNUMBER({ROWS_REACH}))'
        longer = f"*(1+N({self._at('a piece comes out longer by')}))"
        row = f"IF({LINE}>0,N({self._at('mm per row')}){longer},IF({by_hand},{ROWS_REACH}*{UNIT_MM}/{ROWS},0))"
        self._add("mm per row", row, start.row_mm, "0.000")
        sure = self._give_or_take("give or take, rows", ROWS_REACH, ROWS, by_hand)
        self._add("give or take of it", sure, or_blank(start.row_sure), PERCENT)
        before = f"IF({LINE}>0,N({self._at('mm per row before washing')}){longer},0)"
        self._add("mm per row before washing", before, start.row_before_mm, "0.000")
        for label, column, value, otherwise in (
            ("set-up rows", "set-up rows", start.set_up, 0),
            ("rows in a repeat", "rows in repeat", start.in_repeat, 1),
            ("closing rows", "closing rows", start.closing, 0),
        ):
            self._add(label, f"IF({LINE}>0,MAX({otherwise},{self._at(column)}),{otherwise})", value, WHOLE)

    def _sure(self) -> None:
        """How a piece strays from its swatch, and how sure a reading is."""
        assumed, usual = self._assumptions, drift_of(self._assumptions).give_or_take
        for along, reach in (("width", self._start.drift), ("length", self._start.row_drift)):
            strays = f"IF({LINE}>0,{self._at(f'a piece differs in {along} by')},{usual!r})"
            self._add(f"a whole piece differs in {along} by up to", strays, reach, PERCENT)
        self._add("a fabric differs by (before it is measured)", None, assumed.variation, PERCENT)
        tape = f'IF({UNITS}="in",{assumed.tape_inch_mm!r},{assumed.tape_mm!r})'
        self._add("a tape is read to, mm", tape, assumed.tape_mm, "0.0##")

    def _wanted(self) -> None:
        body = f"({BODY}+N({EASE}))*{UNIT_MM}/IF(ISNUMBER({PANELS}),{PANELS},2)"
        target = f"IF(ISNUMBER({WIDTH}),{WIDTH}*{UNIT_MM},IF(ISNUMBER({BODY}),{body},0))"
        self._add("width wanted, mm", target, WIDTH_CM * 10, TENTHS)
        self._add("length wanted, mm", f"IF(ISNUMBER({LENGTH}),{LENGTH}*{UNIT_MM},0)", 0, TENTHS)

    def _at(self, column: str) -> str:
        return of_line(column, self._last)

    def _known(self, cell: str, column: str, otherwise: int) -> str:
        """What is typed, else what the swatch has."""
        least = f"MAX({otherwise},{self._at(column)})"
        return f"IF(ISNUMBER({cell}),{cell},IF({LINE}>0,{least},{otherwise}))"

    def _give_or_take(self, column: str, reach: str, number: str, by_hand: str) -> str:
        """The swatch's, else that of one span read by hand; of a number that is not whole nothing is known."""
        span = f"SQRT((TINV(0.05,4)*{VARIATION})^2+3*({TAPE}/SQRT(6)/({reach}*{UNIT_MM}))^2)"
        own = f'IF({by_hand},IF({number}=INT({number}),{span},""),"")'
        return f'IF({LINE}>0,IF(ISNUMBER({self._at(column)}),{self._at(column)},""),{own})'

    def _add(self, label: str, formula: str | None, value: float | str, numbers: str) -> None:
        content: Content = value if formula is None else Formula(formula, value)
        look = CellLook(Role.INPUT if formula is None else Role.CELL, numbers, right=True)
        self._sheet.add((label, content), (CellLook(Role.LABEL), look))
