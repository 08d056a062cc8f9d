"""The sheet "Starting chain", to take along: a swatch by its tag and a width in, the chain out, wherever a spreadsheet opens.

Formulas only: no macro, no array formula, no function younger than 2010, no text that hangs on a country's settings. A tag is
looked up by ``EXACT``, since ``MATCH`` takes ``*`` and ``?`` for wildcards and capitals for small letters.
"""

import math
from typing import Any

from logbook.craft.gauges.drift import HandsDrift
from logbook.craft.gauges.washing import Washing
from logbook.craft.pieces.options import Option
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.fields import exact
from logbook.craft.words.lengths import MM_PER_INCH
from logbook.sheets.book_writer import BookWriter, SheetWriter
from logbook.sheets.cells import EIGHTHS, TENTHS, WHOLE, CellLook, Content, Formula, Role
from logbook.sheets.chain_cells import (
    BODY,
    CLOSING,
    COLUMNS,
    DRIFT,
    EASE,
    EXTRA,
    EXTRA_USED,
    FIRST_OPTION,
    IN_REPEAT,
    LENGTH,
    LINE,
    MULTIPLE,
    MULTIPLE_USED,
    PANELS,
    PLUS,
    PLUS_USED,
    REACH,
    REPEATS,
    ROW_BEFORE,
    ROW_DRIFT,
    ROW_MM,
    ROW_OPTION,
    ROW_SURE,
    ROWS,
    ROWS_REACH,
    ROWS_TARGET,
    SET_UP,
    STITCH_BEFORE,
    STITCH_MM,
    STITCH_SURE,
    SWATCH,
    TARGET,
    UNITS,
    WIDTH,
    WIDTH_CM,
    of_line,
    or_blank,
    section,
)
from logbook.sheets.chain_start import ChainStart, SwatchToBegin, start_of
from logbook.sheets.chain_workings import ChainWorkings
from logbook.sheets.gauges_sheet import TOP, GaugeLine, measured_words

NAME = "Starting chain"


def write_chain_sheet(book: BookWriter, swatches: int, first: SwatchToBegin, drift: HandsDrift, assumptions: Assumptions) -> None:
    """The whole sheet of so many ``swatches``; it begins with the newest that was washed and measured."""
    sheet = book.sheet(NAME, COLUMNS)
    begin = first.line
    with_ = start_of(begin, drift)
    last = max(swatches, 1) + TOP
    _inputs(sheet, begin, last)
    _answers(sheet, begin, with_, last)
    ChainWorkings(sheet, with_, assumptions, last).write(first.row)
    _choices(sheet.raw, last)


def _inputs(sheet: SheetWriter, begin: GaugeLine | None, last: int) -> None:
    swatch = begin.swatch if begin else None
    sheet.head("Starting chain", "Shaded cells with a border are yours to fill in; everything else follows at once.")
    section(sheet, "The swatch")
    _input(
        sheet,
        "swatch, by its tag",
        swatch.tag if swatch else None,
        "choose from the list, or leave it empty and fill in below",
    )
    name, pattern, hook, state = (of_line(column, last) for column in ("yarn", "stitch pattern", "hook mm", "measured"))
    described = f'{name}&", "&{pattern}&", "&{hook}&" mm hook; "&{state}'
    said = "" if begin is None else _described(begin)
    sheet.add(("", Formula(f'IF({LINE}=0,"",{described})', said)), CellLook(Role.NOTE))
    _input(sheet, "repeats measured", None, "only where no swatch is chosen: how many whole repeats (plain stitch: stitches)")
    _input(sheet, "they reach", None, "in cm or inches, as chosen below")
    _input(sheet, "stitches in a repeat", None, "empty: as the swatch has it; without a swatch 1")
    _input(sheet, "plus", None, "empty: as the swatch has it; without a swatch 0")
    _input(sheet, "extra chains", None, "for the turning chain; empty: as the swatch has it")
    _input(sheet, "rows measured", None, "only where no swatch is chosen")
    _input(sheet, "they reach", None, "in cm or inches")
    sheet.skip()
    section(sheet, "What is wanted")
    _input(sheet, "cm or in", "cm", "for all that is typed here")
    _input(sheet, "finished width of a piece", WIDTH_CM, "or leave it empty and give the body measure")
    _input(sheet, "body, all round", None, "where no width is typed")
    _input(sheet, "ease, all round", None, "more than the body; with a minus, less")
    _input(sheet, "panels round the body", None, "empty: 2")
    _input(sheet, "finished length", None, "for the rows; empty: none")
    sheet.skip()


def _input(sheet: SheetWriter, label: str, content: Content, note: str) -> None:
    sheet.add(
        (label, content, note),
        (CellLook(Role.LABEL), CellLook(Role.INPUT, "General", right=True), CellLook(Role.NOTE)),
        height=17,
    )


def _answers(sheet: SheetWriter, begin: GaugeLine | None, with_: ChainStart, last: int) -> None:
    options = with_.options(WIDTH_CM * 10)
    best = options[1]
    section(sheet, "The chain")
    answer = Formula(f'IF(B{FIRST_OPTION + 1}="","",B{FIRST_OPTION + 1})', "" if best is None else or_blank(best.chain))
    sheet.add(("Chain", answer), CellLook(Role.ANSWER, WHOLE), height=23)
    sheet.add((Formula(_trouble_formula(last), _trouble(begin)),), CellLook(Role.TROUBLE))
    _headings(sheet, "", "chain", "base stitches", "repeats", "width")
    for place, (label, away) in enumerate((("one repeat fewer", -1), ("nearest", 0), ("one repeat more", 1))):
        row = FIRST_OPTION + place
        repeats = f"$D${FIRST_OPTION + 1}{away:+d}" if away else _NEAREST_REPEATS
        option = options[place]
        there = f"{repeats}<1" if away else f"OR({STITCH_MM}<=0,{TARGET}<=0)"
        if away:
            there = f'IF($D${FIRST_OPTION + 1}="",TRUE,{there})'
        first = (
            Formula(
                f'IF(OR(D{row}="",{EXTRA_USED}=""),"",C{row}+{EXTRA_USED})', "" if option is None else or_blank(option.chain)
            ),
            Formula(f'IF(D{row}="","",{MULTIPLE_USED}*D{row}+{PLUS_USED})', "" if option is None else option.count),
            Formula(f'IF({there},"",{repeats})', "" if option is None else option.repeats),
        )
        side = _Measures(row, "D", "C", STITCH_MM, STITCH_SURE, STITCH_BEFORE, TARGET, DRIFT)
        sheet.add((label, *first, *side.cells(option)), [CellLook(Role.LABEL), *_NUMBER_LOOKS])
    sheet.skip()
    section(sheet, "The rows")
    sheet.paragraph("For a finished length, if one is typed above.")
    _headings(sheet, "", "rows", "", "repeats", "length")
    rows = (
        Formula(f'IF(D{ROW_OPTION}="","",C{ROW_OPTION})', ""),
        Formula(f'IF(D{ROW_OPTION}="","",{IN_REPEAT}*D{ROW_OPTION}+{SET_UP}+{CLOSING})', ""),
        Formula(f'IF(OR({ROW_MM}<=0,{ROWS_TARGET}<=0),"",{_NEAREST_GROUPS})', ""),
    )
    side = _Measures(ROW_OPTION, "D", "C", ROW_MM, ROW_SURE, ROW_BEFORE, ROWS_TARGET, ROW_DRIFT)
    hidden = CellLook(Role.NOTE, ";;;")
    looks = [CellLook(Role.LABEL), *_NUMBER_LOOKS]
    looks[2] = hidden
    sheet.add(("nearest", *rows, *side.cells(None)), looks)
    sheet.skip()


_FORMATS = (WHOLE, WHOLE, WHOLE, TENTHS, EIGHTHS, "+0.0;-0.0;0.0", TENTHS, TENTHS, TENTHS)
_NUMBER_LOOKS = [CellLook(numbers=form, right=True) for form in _FORMATS]
_NEAREST_REPEATS = f"MAX(1,ROUNDUP(ROUND(({TARGET}/{STITCH_MM}-{PLUS_USED})/{MULTIPLE_USED},9)-0.5,0))"
_NEAREST_GROUPS = f"MAX(1,ROUNDUP(ROUND(({ROWS_TARGET}/{ROW_MM}-{SET_UP}-{CLOSING})/{IN_REPEAT},9)-0.5,0))"


def _headings(sheet: SheetWriter, first: str, total: str, count: str, groups: str, size: str) -> None:
    names = (
        first, total, count, groups, f"{size}, cm", f"{size}, in", "difference, cm", "give or take: swatch, cm",
        "a whole piece, cm", "before washing, cm",
    )  # fmt: skip
    sheet.add(names, CellLook(Role.HEADING, right=True, wraps=True), height=47)


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
_NO_CHAIN = "Which stitch do the rows begin with? Type the extra chains for its turning chain above."
_UNKNOWN = "Washing is unknown: these are sizes before washing, without a give or take."


def _trouble_formula(last: int) -> str:
    """What is missing, or must not be overlooked."""
    no_chain = f'IF({EXTRA_USED}="","{_NO_CHAIN}","")'
    unknown = f'IF({LINE}=0,FALSE,RIGHT({of_line("measured", last)},7)="unknown")'
    return (
        f'IF(AND({SWATCH}<>"",{LINE}=0),"No swatch has that tag: choose it from the list.",'
        f'IF({STITCH_MM}<=0,"{_NONE}",IF({TARGET}<=0,"Type a width, or a body measure.",IF({unknown},"{_UNKNOWN}",{no_chain}))))'
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
