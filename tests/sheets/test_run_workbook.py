from collections.abc import Sequence
from dataclasses import replace
from io import BytesIO

import openpyxl
import pytest

from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.pattern_lines import WrittenSizes, pattern_parts
from logbook.craft.sizes.published_run import PublishedRun, published_run
from logbook.craft.sizes.size_run import SizeRun
from logbook.errors import RefusedError
from logbook.sheets.run_workbook import SHEETS, write_run_workbook
from tests.support.size_runs import BUSTS, PLAN, SWATCH, written

Rows = list[tuple[object, ...]]


def workbook(
    told: WrittenSizes, said: tuple[str, ...] = (), plans: Sequence[SizePlan] = BUSTS, published: PublishedRun | None = None
) -> BytesIO:
    stream = BytesIO()
    write_run_workbook(stream, told, plans, SizeRun(tuple(told.sizes), None, ()), said, "1 June 2026", published)
    stream.seek(0)
    return stream


def sheets(
    told: WrittenSizes, said: tuple[str, ...] = (), plans: Sequence[SizePlan] = BUSTS, published: PublishedRun | None = None
) -> dict[str, Rows]:
    book = openpyxl.load_workbook(workbook(told, said, plans, published), data_only=True)
    return {sheet.title: list(sheet.iter_rows(values_only=True)) for sheet in book}


def row(rows: Rows, label: str) -> tuple[object, ...]:
    return next(cells[1:] for cells in rows if cells[0] == label)


def test_the_formulas_carry_what_the_program_said() -> None:
    told = written()
    found = sheets(told, ("A and B come out the same.",))
    assert tuple(found) == SHEETS
    numbers = found["Sizes"]
    assert row(numbers, "size")[:4] == ("A", "B", "C", "D")
    assert row(numbers, "chain")[:4] == (68, 68, 80, 86)
    assert row(numbers, "rows")[:4] == (62, 62, 62, 62)
    assert row(numbers, "width, cm")[0] == pytest.approx(42.63636)
    assert row(numbers, "armhole begins after row")[:4] == (40, 40, 40, 40)
    assert numbers[-1][0] == "A and B come out the same."


def test_the_names_of_the_sizes_are_printed_on_every_page() -> None:
    sheet = openpyxl.load_workbook(workbook(written()))["Sizes"]
    names = next(cells[0].row for cells in sheet.iter_rows() if cells[0].value == "size")
    assert sheet.print_title_rows == f"${names}:${names}"


def test_every_number_but_the_inputs_is_a_formula() -> None:
    book = openpyxl.load_workbook(workbook(written(replace(PLAN, edge_stitches=1, side_edging_mm=10))))
    cells = {r[0].value: r[1].value for r in book["Sizes"].iter_rows(min_row=4)}
    for label in (
        "chain",
        "base stitches",
        "repeats",
        "rows",
        "width, cm",
        "length, cm",
        "all round, cm",
        "the neck is wide, cm",
        "yarn, g",
    ):
        assert str(cells[label]).startswith("="), label


def test_hours_stand_there_where_the_time_of_the_swatch_is_known() -> None:
    assert not [cells for cells in sheets(written())["Sizes"] if cells[0] == "hours"]
    told = written(own=replace(SWATCH, minutes=60.0))
    hours = row(sheets(told)["Sizes"], "hours")
    assert hours[:4] == pytest.approx([size.piece.time.hours for size in told.sizes if size.piece.time])
    cells = {r[0].value: r[1].value for r in openpyxl.load_workbook(workbook(told))["Sizes"].iter_rows(min_row=4)}
    assert str(cells["hours"]).startswith("=")
    assert cells["100 stitches take, minutes"] == pytest.approx(100 * 60 / (24 * 20))


def test_what_was_published_stands_beside_it_and_what_differs_is_counted() -> None:
    told = written()
    published = published_run("2026-05-01", SWATCH, told.sizes, "Ch 68.")
    rows = sheets(told, published=published)["Sizes"]
    assert row(rows, "numbers that differ today")[:4] == (0, 0, 0, 0)
    longer = written(replace(PLAN, length_mm=600), sizes=BUSTS[:3])
    rows = sheets(longer, plans=BUSTS[:3], published=published)["Sizes"]
    assert row(rows, "As published on 2026-05-01, from swatch S1") is not None
    assert all(isinstance(count, int) and count > 0 for count in row(rows, "numbers that differ today")[:3])


BESIDE = {
    "chain": "chain", "base stitches": "base stitches", "rows": "rows", "width, cm": "width, cm", "length, cm": "length, cm",
    "all round, cm": "all round, cm", "slit": "slit ends after row", "armhole": "armhole begins after row", "yarn, g": "yarn, g",
    "balls": "balls, with the reserve",
}  # fmt: skip


def test_each_number_that_is_published_stands_there_as_the_sheet_makes_it() -> None:
    told = written(replace(PLAN, slit_mm=90))
    published = published_run("2026-05-01", SWATCH, told.sizes, "Ch 68.")
    rows = sheets(told, published=published)["Sizes"]
    top = [cells[0] for cells in rows].index("As published on 2026-05-01, from swatch S1")
    below = {str(cells[0]): cells[1:5] for cells in rows[top + 1 :]}
    assert below.pop("numbers that differ today") == (0, 0, 0, 0)
    assert below == {label: pytest.approx(row(rows, beside)[:4]) for label, beside in BESIDE.items()}


def test_the_drawing_is_a_chart_of_each_size_with_its_measures() -> None:
    book = openpyxl.load_workbook(workbook(written()))
    drawing = book["Drawing"]
    assert len(drawing._charts) == 4  # type: ignore[attr-defined]
    names = {cell.value for cell in drawing["A"]}
    assert sum('"neck "&FIXED(' in str(name) for name in names) == 4
    shown = openpyxl.load_workbook(workbook(written()), data_only=True)["Drawing"]
    assert "neck 23.5 cm, shoulders 9.5 cm" in {cell.value for cell in shown["A"]}


def test_the_lines_are_those_of_the_pattern() -> None:
    told = written()
    lines = [cells[0] for cells in sheets(told)["Lines"][3:] if cells[0]]
    assert lines == [line for part in pattern_parts(told) for line in (part.heading, *part.lines)]


def test_names_are_text_whatever_they_look_like() -> None:
    plans = (SizePlan(name="=A1", body_mm=900), SizePlan(name="007", body_mm=990))
    told = written(replace(PLAN, name="=1+1 & more"), sizes=plans)
    assert row(sheets(told, plans=plans)["Sizes"], "size")[:2] == ("=A1", "007")


def test_a_name_no_sheet_can_hold_is_refused() -> None:
    plans = (SizePlan(name="\x01", body_mm=900),)
    with pytest.raises(RefusedError, match=r"U\+0001"):
        sheets(written(sizes=plans), plans=plans)
