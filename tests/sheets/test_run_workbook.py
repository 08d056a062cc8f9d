from dataclasses import replace
from io import BytesIO

import openpyxl
import pytest

from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.pattern_lines import Written, pattern_parts
from logbook.craft.sizes.size_run import SizeRun
from logbook.errors import RefusedError
from logbook.sheets.run_workbook import SHEETS, write_run_workbook
from tests.support.size_runs import PLAN, written

Rows = list[tuple[object, ...]]


def sheets(told: Written, notes: tuple[str, ...] = ()) -> dict[str, Rows]:
    stream = BytesIO()
    write_run_workbook(stream, told, SizeRun(tuple(told.sizes), None, ()), notes, "1 June 2026")
    book = openpyxl.load_workbook(stream, data_only=True)
    return {sheet.title: list(sheet.iter_rows(values_only=True)) for sheet in book}


def row(rows: Rows, label: str) -> tuple[object, ...]:
    return next(cells[1:] for cells in rows if cells[0] == label)


def test_values_come_first() -> None:
    told = written()
    found = sheets(told, ("A and B come out the same.",))
    assert tuple(found) == SHEETS
    numbers = found["Sizes"]
    assert row(numbers, "size")[:4] == ("A", "B", "C", "D")
    assert row(numbers, "chain")[:4] == (68, 68, 80, 86)
    assert row(numbers, "rows")[:4] == (62, 62, 62, 62)
    assert row(numbers, "width of a panel")[0] == pytest.approx(42.63636)
    assert row(numbers, "armhole begins after row")[:4] == (40, 40, 40, 40)
    assert row(numbers, "same as")[:3] == ("B", "A", None)
    assert numbers[-1][0] == "A and B come out the same."


def test_the_measures_of_the_drawing_add_up() -> None:
    rows = sheets(written())["Drawing"]
    for unit in ("cm", "in"):
        width, neck, shoulder = (row(rows, f"{what}, {unit}")[0] for what in ("width", "neck", "each shoulder"))
        assert width == pytest.approx(neck + 2 * shoulder)  # type: ignore[operator]
        length, below, depth = (row(rows, f"{what}, {unit}")[0] for what in ("length", "hem to armhole", "armhole depth"))
        assert length == pytest.approx(below + depth)  # type: ignore[operator]
    assert row(rows, "width, in")[0] == pytest.approx(16.786, abs=0.001)


def test_the_lines_are_those_of_the_pattern() -> None:
    told = written()
    assert [cells[0] for cells in sheets(told)["Lines"] if cells[0]] == [
        line for part in pattern_parts(told) for line in (part.heading, *part.lines)
    ]


def test_the_formulas_carry_what_the_program_said() -> None:
    told = written(replace(PLAN, edge_stitches=1, side_edging_mm=10))
    table = sheets(told)["Try it"][17:]
    assert [cells[0] for cells in table] == ["A", "B", "C", "D"]
    for cells, size in zip(table, told.sizes, strict=True):
        assert cells[4:6] == (size.piece.stitches, size.piece.chain)
        assert cells[6] == pytest.approx(size.piece.width.mm / 10)
        assert cells[7] == pytest.approx(size.piece.width.difference_mm / 10)


def test_names_are_text_whatever_they_look_like() -> None:
    told = written(
        replace(PLAN, name="=1+1 & more"), sizes=(SizePlan(name="=A1", body_mm=900), SizePlan(name="007", body_mm=990))
    )
    assert row(sheets(told)["Sizes"], "size")[:2] == ("=A1", "007")


def test_a_name_no_sheet_can_hold_is_refused() -> None:
    with pytest.raises(RefusedError, match=r"U\+0001"):
        sheets(written(sizes=(SizePlan(name="\x01", body_mm=900),)))
