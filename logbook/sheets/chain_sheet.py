"""The sheet "Starting chain", to take along: a swatch by its tag and a width in, the chain out, wherever a spreadsheet opens.

Formulas only: no macro, no array formula, no function younger than 2010, no text that hangs on a country's settings. A tag is
looked up by ``EXACT``, since ``MATCH`` takes ``*`` and ``?`` for wildcards and capitals for small letters.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from logbook.craft.gauges.drift import HandsDrift, drift_of
from logbook.craft.gauges.lending import Lending
from logbook.craft.gauges.washing import Washing
from logbook.craft.pieces.options import Option, Pitch, recommended
from logbook.craft.pieces.starting_chain import ChainRule, starting_chains
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.fields import exact
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.lengths import MM_PER_INCH
from logbook.sheets.book_writer import BookWriter, SheetWriter
from logbook.sheets.cells import EIGHTHS, PERCENT, TENTHS, WHOLE, Content, Formula, Look, Role
from logbook.sheets.gauges_sheet import LETTER, TOP, GaugeLine, gauge_line, measured_words, newest_first

NAME = "Starting chain"
_WIDTHS = (40, 10.5, 10.5, 10.5, 10.5, 10.5, 10.5, 11, 11, 11)
_WIDTH_CM = 46
SWATCH, REPEATS, REACH, MULTIPLE, PLUS, EXTRA, ROWS, ROWS_REACH = (f"B{row}" for row in (5, 7, 8, 9, 10, 11, 12, 13))
UNITS, WIDTH, BODY, EASE, PANELS, LENGTH = (f"B{row}" for row in range(16, 22))
CHAIN = "B24"
FIRST_OPTION, ROW_OPTION = 27, 34
_LINE, _MM, _STITCH, _STITCH_SURE, _STITCH_BEFORE, _M, _B, _T = (f"$B${row}" for row in range(38, 46))
_ROW, _ROW_SURE, _ROW_BEFORE, _SET_UP, _IN_REPEAT, _CLOSING = (f"$B${row}" for row in range(46, 52))
_DRIFT, _ROW_DRIFT, _VARIATION, _TAPE, _TARGET, _ROWS_TARGET = (f"$B${row}" for row in range(52, 58))
_LOOKED_THROUGH = 1_000
"""Swatches that are looked through for one to begin with."""


def write_chain_sheet(
    book: BookWriter, swatches: Sequence[Swatch], lending: Lending, drift: HandsDrift, assumptions: Assumptions
) -> None:
    """The whole sheet; it begins with the newest swatch that was washed and measured."""
    sheet = book.sheet(NAME, _WIDTHS)
    place, begin = _begin(swatches, lending)
    with_ = _reckoned(begin, drift)
    last = max(len(swatches), 1) + TOP
    _inputs(sheet, begin, last)
    _answers(sheet, begin, with_, last)
    _workings(sheet, place, with_, assumptions, last)
    _choices(sheet.raw, last)


def _begin(swatches: Sequence[Swatch], lending: Lending) -> tuple[int, GaugeLine | None]:
    """The swatch that the sheet begins with, and its row among the gauges (0: none)."""
    found: tuple[int, GaugeLine | None] = (0, None)
    for row, swatch in enumerate(newest_first(swatches)[:_LOOKED_THROUGH], start=TOP + 1):
        line = gauge_line(swatch, lending)
        if line.stitches is not None:
            found = found if found[0] else (row, line)
            if line.stitches.washing is Washing.MEASURED and swatch.pattern and swatch.pattern.extra() is not None:
                return row, line
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class _Reckoned:
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


def _reckoned(line: GaugeLine | None, known: HandsDrift) -> _Reckoned:
    drift = known.of(line.swatch.worked_by if line else "")
    if line is None:
        return _Reckoned(drift=drift.stitches.give_or_take, row_drift=drift.rows.give_or_take)
    pattern = line.swatch.pattern
    stitches = line.stitches and line.stitches.times(drift.stitches.factor)
    rows = line.rows and line.rows.times(drift.rows.factor)
    return _Reckoned(
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


def _inputs(sheet: SheetWriter, begin: GaugeLine | None, last: int) -> None:
    swatch = begin.swatch if begin else None
    sheet.head("Starting chain", "Shaded cells with a border are yours to fill in; everything else follows at once.")
    _section(sheet, "The swatch")
    _input(sheet, "swatch, by its tag", swatch.tag if swatch else None, "choose it from the list; or empty it and fill in below")
    name, pattern, hook, state = (_at(column, last) for column in ("yarn", "stitch pattern", "hook mm", "measured"))
    described = f'{name}&", "&{pattern}&", "&{hook}&" mm hook; "&{state}'
    said = "" if begin is None else _described(begin)
    sheet.add(("", Formula(f'IF({_LINE}=0,"",{described})', said)), Look(Role.NOTE))
    _input(sheet, "repeats measured", None, "only where no swatch is chosen: so many whole repeats (plain stitches: stitches)")
    _input(sheet, "they reach", None, "in cm or inches, as chosen below")
    _input(sheet, "stitches in a repeat", None, "empty: as the swatch has it; without a swatch 1")
    _input(sheet, "plus", None, "empty: as the swatch has it; without a swatch 0")
    _input(sheet, "extra chains", None, "those that lift the first stitch; empty: as the swatch has it")
    _input(sheet, "rows measured", None, "only where no swatch is chosen")
    _input(sheet, "they reach", None, "in cm or inches")
    sheet.skip()
    _section(sheet, "What is wanted")
    _input(sheet, "cm or in", "cm", "for all that is typed here")
    _input(sheet, "finished width of a piece", _WIDTH_CM, "or empty it and say the body")
    _input(sheet, "body, all round", None, "where no width is typed")
    _input(sheet, "ease, all round", None, "more than the body; with a minus less")
    _input(sheet, "panels round the body", None, "empty: 2")
    _input(sheet, "finished length", None, "for the rows; empty: none")
    sheet.skip()


def _section(sheet: SheetWriter, words: str) -> None:
    sheet.add((words, *[""] * (len(_WIDTHS) - 1)), Look(Role.SECTION), height=21)


def _input(sheet: SheetWriter, label: str, content: Content, note: str) -> None:
    sheet.add((label, content, note), (Look(Role.LABEL), Look(Role.INPUT, "General", right=True), Look(Role.NOTE)), height=17)


def _answers(sheet: SheetWriter, begin: GaugeLine | None, with_: _Reckoned, last: int) -> None:
    options = with_.options(_WIDTH_CM * 10)
    best = options[1]
    _section(sheet, "The chain")
    answer = Formula(f'IF(B{FIRST_OPTION + 1}="","",B{FIRST_OPTION + 1})', "" if best is None else _or_blank(best.chain))
    sheet.add(("Chain", answer), Look(Role.ANSWER, WHOLE), height=23)
    sheet.add((Formula(_trouble_formula(last), _trouble(begin)),), Look(Role.TROUBLE))
    _headings(sheet, "", "chain", "base stitches", "repeats", "width")
    for place, (label, away) in enumerate((("one repeat fewer", -1), ("nearest", 0), ("one repeat more", 1))):
        row = FIRST_OPTION + place
        repeats = f"$D${FIRST_OPTION + 1}{away:+d}" if away else _NEAREST_REPEATS
        option = options[place]
        there = f"{repeats}<1" if away else f"OR({_STITCH}<=0,{_TARGET}<=0)"
        if away:
            there = f'IF($D${FIRST_OPTION + 1}="",TRUE,{there})'
        first = (
            Formula(f'IF(OR(D{row}="",{_T}=""),"",C{row}+{_T})', "" if option is None else _or_blank(option.chain)),
            Formula(f'IF(D{row}="","",{_M}*D{row}+{_B})', "" if option is None else option.count),
            Formula(f'IF({there},"",{repeats})', "" if option is None else option.repeats),
        )
        side = _Measures(row, "D", "C", _STITCH, _STITCH_SURE, _STITCH_BEFORE, _TARGET, _DRIFT)
        sheet.add((label, *first, *side.cells(option)), [Look(Role.LABEL), *_NUMBER_LOOKS])
    sheet.skip()
    _section(sheet, "The rows")
    sheet.paragraph("For a finished length, if one is typed above.")
    _headings(sheet, "", "rows", "", "groups", "length")
    rows = (
        Formula(f'IF(D{ROW_OPTION}="","",C{ROW_OPTION})', ""),
        Formula(f'IF(D{ROW_OPTION}="","",{_IN_REPEAT}*D{ROW_OPTION}+{_SET_UP}+{_CLOSING})', ""),
        Formula(f'IF(OR({_ROW}<=0,{_ROWS_TARGET}<=0),"",{_NEAREST_GROUPS})', ""),
    )
    side = _Measures(ROW_OPTION, "D", "C", _ROW, _ROW_SURE, _ROW_BEFORE, _ROWS_TARGET, _ROW_DRIFT)
    hidden = Look(Role.NOTE, ";;;")
    looks = [Look(Role.LABEL), *_NUMBER_LOOKS]
    looks[2] = hidden
    sheet.add(("nearest", *rows, *side.cells(None)), looks)
    sheet.skip()


_FORMATS = (WHOLE, WHOLE, WHOLE, TENTHS, EIGHTHS, "+0.0;-0.0;0.0", TENTHS, TENTHS, TENTHS)
_NUMBER_LOOKS = [Look(numbers=form, right=True) for form in _FORMATS]
_NEAREST_REPEATS = f"MAX(1,ROUNDUP(ROUND(({_TARGET}/{_STITCH}-{_B})/{_M},9)-0.5,0))"
_NEAREST_GROUPS = f"MAX(1,ROUNDUP(ROUND(({_ROWS_TARGET}/{_ROW}-{_SET_UP}-{_CLOSING})/{_IN_REPEAT},9)-0.5,0))"


def _headings(sheet: SheetWriter, first: str, total: str, count: str, groups: str, size: str) -> None:
    names = (
        first, total, count, groups, f"{size}, cm", f"{size}, in", "off, cm", "give or take: swatch, cm",
        "a whole piece, cm", "before washing, cm",
    )  # fmt: skip
    sheet.add(names, Look(Role.HEADING, right=True, wraps=True), height=47)


class _Measures:
    """The cells of one option from its width on: cm, inches, how far off, give or take, before washing."""

    def __init__(self, row: int, there: str, count: str, pitch: str, sure: str, before: str, target: str, drift: str) -> None:
        self._mm, self._there = f"({count}{row}*{pitch})", f"{there}{row}"
        self._drift = drift
        self._count, self._sure, self._before, self._target = f"{count}{row}", sure, before, target

    def cells(self, option: Option | None) -> tuple[Content, ...]:
        """Each with what it comes to; "" where there is no such option."""
        mm, sure = self._mm, self._sure
        formulas = (
            f"{mm}/10",
            f"ROUND({mm}/25.4*8,0)/8",
            f"({mm}-{self._target})/10",
            f'IF({sure}="","",{sure}*{mm}/10)',
            f'IF({sure}="","",SQRT(({sure}*{mm})^2+({self._drift}*{mm})^2)/10)',
            f'IF({self._before}<=0,"",{self._count}*{self._before}/10)',
        )
        return tuple(map(self._cell, formulas, [None] * 6 if option is None else _measures_of(option)))

    def _cell(self, formula: str, value: float | None) -> Formula:
        return Formula(f'IF({self._there}="","",{formula})', "" if value is None else value)


def _measures_of(option: Option) -> list[float | None]:
    eighths = math.floor(option.mm / float(MM_PER_INCH) * 8 + 0.5)
    beside = (option.gauge_give_or_take_mm, option.give_or_take_mm, option.before_washing_mm)
    return [option.mm / 10, eighths / 8, option.difference_mm / 10, *(None if mm is None else mm / 10 for mm in beside)]


_NONE = "Choose a swatch, or say how far some whole repeats reach."
_NO_CHAIN = "Which stitch do the rows begin with? Say above how many extra chains lift it: then there is a chain."
_UNKNOWN = "Washing is unknown: these are sizes before washing, without a give or take."


def _trouble_formula(last: int) -> str:
    """What is missing, or must not be overlooked."""
    no_chain = f'IF({_T}="","{_NO_CHAIN}","")'
    unknown = f'IF({_LINE}=0,FALSE,RIGHT({_at("measured", last)},7)="unknown")'
    return (
        f'IF(AND({SWATCH}<>"",{_LINE}=0),"No swatch has that tag: choose it from the list.",'
        f'IF({_STITCH}<=0,"{_NONE}",IF({_TARGET}<=0,"Type a width, or a body measure.",IF({unknown},"{_UNKNOWN}",{no_chain}))))'
    )


def _trouble(begin: GaugeLine | None) -> str:
    if begin is None or begin.stitches is None:
        return _NONE
    if begin.stitches.washing is Washing.UNKNOWN:
        return _UNKNOWN
    return "" if begin.swatch.pattern and begin.swatch.pattern.extra() is not None else _NO_CHAIN


def _described(begin: GaugeLine) -> str:
    swatch = begin.swatch
    yarn, pattern = swatch.yarn.name if swatch.yarn else "", swatch.pattern.name if swatch.pattern else ""
    return f"{yarn}, {pattern}, {exact(swatch.hook_mm or 0)} mm hook; {measured_words(begin.stitches or begin.rows)}"


def _at(column: str, last: int) -> str:
    """What the line of the swatch says in a column of the gauges."""
    letter = LETTER[column]
    return f"INDEX(Gauges!${letter}$1:${letter}${last},{_LINE})"


def _workings(sheet: SheetWriter, place: int, with_: _Reckoned, assumptions: Assumptions, last: int) -> None:
    """What the answers are reckoned from, where anyone may follow it."""
    _section(sheet, "What it calculates with")
    sheet.skip()
    tags = f"Gauges!$A${TOP + 1}:$A${last}"
    by_hand = f'AND({SWATCH}="",ISNUMBER({REPEATS}),ISNUMBER({REACH}))'
    rows_by_hand = f'AND({SWATCH}="",ISNUMBER({ROWS}),ISNUMBER({ROWS_REACH}))'

    def at(column: str) -> str:
        return _at(column, last)

    def known(cell: str, column: str, otherwise: int) -> str:
        least = f"MAX({otherwise},{at(column)})"
        return f"IF(ISNUMBER({cell}),{cell},IF({_LINE}>0,{least},{otherwise}))"

    def span(reach: str, number: str, hand: str) -> str:
        sure = f"SQRT((TINV(0.05,4)*{_VARIATION})^2+3*({_TAPE}/SQRT(6)/({reach}*{_MM}))^2)"
        return f'IF({hand},IF({number}=INT({number}),{sure},""),"")'

    def sure(column: str, hand: str) -> str:
        return f'IF({_LINE}>0,IF(ISNUMBER({at(column)}),{at(column)},""),{hand})'

    _work(
        sheet, "line of the swatch in Gauges", f'IF({SWATCH}="",0,SUMPRODUCT(EXACT({tags},{SWATCH})*ROW({tags})))', place, WHOLE
    )
    _work(sheet, "mm in the unit chosen", f'IF({UNITS}="in",25.4,10)', 10, TENTHS)
    wider, longer = (f"*(1+N({at(f'a piece comes out {how} by')}))" for how in ("wider", "longer"))
    stitch = f"IF({_LINE}>0,N({at('mm per stitch')}){wider},IF({by_hand},{REACH}*{_MM}/{REPEATS}/{_M},0))"
    _work(sheet, "mm per stitch", stitch, with_.stitch_mm, "0.000")
    stitches_sure = sure("give or take, stitches", span(REACH, REPEATS, by_hand))
    _work(sheet, "give or take of it", stitches_sure, _or_blank(with_.stitch_sure), PERCENT)
    before = f"IF({_LINE}>0,N({at('mm per stitch before washing')}){wider},0)"
    _work(sheet, "mm per stitch before washing", before, with_.stitch_before_mm, "0.000")
    _work(sheet, "stitches in a repeat", known(MULTIPLE, "multiple", 1), with_.multiple, WHOLE)
    _work(sheet, "plus", known(PLUS, "plus", 0), with_.plus, WHOLE)
    extra = f'IF(ISNUMBER({EXTRA}),{EXTRA},IF({_LINE}=0,"",IF(ISNUMBER({at("extra chains")}),{at("extra chains")},"")))'
    _work(sheet, "extra chains", extra, _or_blank(with_.extra), WHOLE)
    row = f"IF({_LINE}>0,N({at('mm per row')}){longer},IF({rows_by_hand},{ROWS_REACH}*{_MM}/{ROWS},0))"
    _work(sheet, "mm per row", row, with_.row_mm, "0.000")
    rows_sure = sure("give or take, rows", span(ROWS_REACH, ROWS, rows_by_hand))
    _work(sheet, "give or take of it", rows_sure, _or_blank(with_.row_sure), PERCENT)
    before = f"IF({_LINE}>0,N({at('mm per row before washing')}){longer},0)"
    _work(sheet, "mm per row before washing", before, with_.row_before_mm, "0.000")
    for label, column, value, otherwise in (
        ("rows to set up", "set-up rows", with_.set_up, 0),
        ("rows in a repeat", "rows in repeat", with_.in_repeat, 1),
        ("rows to close", "closing rows", with_.closing, 0),
    ):
        _work(sheet, label, f"IF({_LINE}>0,MAX({otherwise},{at(column)}),{otherwise})", value, WHOLE)
    usual = drift_of(assumptions).give_or_take
    for along, reach in (("width", with_.drift), ("length", with_.row_drift)):
        strays = f"IF({_LINE}>0,{at(f'a piece strays in {along} by')},{usual!r})"
        _work(sheet, f"a whole piece strays in {along} by up to", strays, reach, PERCENT)
    _work(sheet, "a fabric differs by (before it is measured)", None, assumptions.variation, PERCENT)
    tape = f'IF({UNITS}="in",{assumptions.tape_inch_mm!r},{assumptions.tape_mm!r})'
    _work(sheet, "a tape is read to, mm", tape, assumptions.tape_mm, "0.0##")
    body = f"({BODY}+N({EASE}))*{_MM}/IF(ISNUMBER({PANELS}),{PANELS},2)"
    target = f"IF(ISNUMBER({WIDTH}),{WIDTH}*{_MM},IF(ISNUMBER({BODY}),{body},0))"
    _work(sheet, "width wanted, mm", target, _WIDTH_CM * 10, TENTHS)
    _work(sheet, "length wanted, mm", f"IF(ISNUMBER({LENGTH}),{LENGTH}*{_MM},0)", 0, TENTHS)


def _work(sheet: SheetWriter, label: str, formula: str | None, value: float | str, numbers: str) -> None:
    content: Content = value if formula is None else Formula(formula, value)
    look = Look(Role.INPUT if formula is None else Role.CELL, numbers, right=True)
    sheet.add((label, content), (Look(Role.LABEL), look))


def _or_blank(value: float | None) -> float | str:
    return "" if value is None else value


def _choices(raw: Any, last: int) -> None:
    """The list of tags, cm or in, and what each input wants to hear."""
    from openpyxl.worksheet.datavalidation import DataValidation

    tags = DataValidation("list", formula1=f"Gauges!$A${TOP + 1}:$A${last}", allow_blank=True)
    tags.promptTitle, tags.prompt = "Swatch", "Choose its tag from the list, or empty this cell and fill in the lines below."
    units = DataValidation("list", formula1='"cm,in"', allow_blank=False)
    sizes = DataValidation("decimal", operator="greaterThan", formula1="0", allow_blank=True)
    sizes.errorTitle, sizes.error = "A number above 0", "Type a number above 0, or leave the cell empty."
    counts = DataValidation("whole", operator="greaterThanOrEqual", formula1="0", allow_blank=True)
    counts.errorTitle, counts.error = "A whole number", "Type a whole number from 0, or leave the cell empty."
    ease = DataValidation("decimal", operator="between", formula1="-1000", formula2="1000", allow_blank=True)
    for rule, cells in (
        (tags, (SWATCH,)),
        (units, (UNITS,)),
        (sizes, (REPEATS, REACH, ROWS, ROWS_REACH, WIDTH, BODY, LENGTH)),
        (counts, (MULTIPLE, PLUS, EXTRA, PANELS)),
        (ease, (EASE,)),
    ):
        rule.showInputMessage = rule.showErrorMessage = True
        for cell in cells:
            rule.add(cell)
        raw.data_validations.append(rule)
