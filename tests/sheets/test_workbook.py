"""The workbook as others see it: openpyxl, and whoever cancels. (LibreOffice: ``test_recalculation.py``.)"""

import io
import subprocess
import sys
import tempfile
from dataclasses import replace
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from logbook.craft.swatches.fields import FieldKind
from logbook.craft.swatches.swatch import Swatch
from logbook.errors import RefusedError
from logbook.sheets import chain_cells, chain_sheet, readings_sheet
from logbook.sheets.atomic import write_whole
from logbook.sheets.columns import COLUMNS
from logbook.sheets.workbook import count_workbook_rows, write_workbook
from logbook.sheets.workbook_reading import read_workbook
from tests.support.logged import cells_of, log_of
from tests.support.swatches import awkward_swatches, full_swatch, plain_swatch


def written(swatches: list[Swatch]) -> io.BytesIO:
    stream = io.BytesIO()
    write_workbook(stream, log_of(swatches), "Swatches & more", "2026-05-31")
    stream.seek(0)
    return stream


@pytest.fixture(scope="module")
def book() -> Any:
    return openpyxl.load_workbook(written(awkward_swatches()))


def test_every_text_is_a_string_cell_and_every_number_a_number(book: Any) -> None:
    for row, swatch in zip(book["Swatches"].iter_rows(min_row=2), awkward_swatches(), strict=True):
        for cell, column, content in zip(row, COLUMNS, cells_of(swatch), strict=True):
            if content in (None, ""):
                assert cell.value is None
            elif column.field.kind is FieldKind.NUMBER:
                assert (cell.data_type, cell.value) == ("n", content)
            else:
                assert cell.data_type == "s", f"{column.name}: {cell.value}"


def test_the_log_is_set_up_to_be_read_and_printed(book: Any) -> None:
    log = book.worksheets[0]
    assert [cell.value for cell in log[1]] == [column.name for column in COLUMNS]
    assert log.freeze_panes == "C2"
    assert log.auto_filter.ref == f"A1:AY{len(awkward_swatches()) + 1}"
    assert (log.page_setup.orientation, log.page_setup.fitToHeight) == ("landscape", 0)
    assert log.sheet_properties.pageSetUpPr.fitToPage
    assert log.print_title_rows == "$1:$1"
    assert log.oddFooter.left.text == "Swatches && more · 2026-05-31"
    assert (log.oddFooter.center.text, log.oddFooter.right.text) == (None, "&A · page &P of &N")
    widths = {column.name: log.column_dimensions[cell.column_letter].width for column, cell in zip(COLUMNS, log[1], strict=True)}
    assert widths == {column.name: column.width for column in COLUMNS}
    notes = log.cell(2, [column.name for column in COLUMNS].index("notes") + 1)
    assert notes.alignment.wrap_text


def test_readings_one_a_row() -> None:
    heading, *rows = openpyxl.load_workbook(written(awkward_swatches()), data_only=True)["Readings"].iter_rows(values_only=True)
    assert heading[:3] == ("tag", "condition", "direction")
    full = full_swatch(1, "x")
    assert len(rows) == sum(len(swatch.readings) for swatch in awkward_swatches())
    shown = [row[3:8] for row in rows[: len(full.readings)]]
    assert shown[0] == ("4 repeats = 15.1 cm", 4, "repeats", 15.1, pytest.approx(151 / 24))
    assert shown[3] == ("2.75 row repeats in 10 cm", 2.75, "row repeats", 10, pytest.approx(100 / 11))
    assert rows[-1][7] is None, "without a multiple a repeat says nothing of a stitch"


@pytest.mark.parametrize("many", [3, 501])
def test_a_long_log_holds_the_same_in_plain_values(many: int) -> None:
    swatches = [*awkward_swatches(), *(plain_swatch(number) for number in range(100, 100 + many))]
    stream = written(swatches)
    for row, swatch in zip(read_workbook(stream.getvalue(), "log").rows[1:], swatches, strict=True):
        seen = [*row.cells, *[None] * (len(COLUMNS) - len(row.cells))]
        assert seen == [None if content == "" else content for content in cells_of(swatch)]
    gauges = openpyxl.load_workbook(stream, read_only=True)["Gauges"]
    rows = list(gauges.iter_rows(min_row=5, max_col=8, values_only=True))
    assert len(rows) == len(swatches)
    assert any(str(cell).startswith("=100/") for row in rows for cell in row) is (many == 3)


def test_the_first_sheets_stay_where_scripts_look_for_them_and_it_opens_at_the_calculator(book: Any) -> None:
    assert book.sheetnames[:3] == ["Swatches", "Readings", "Words and units"]
    assert book.active.title == "Starting chain"


def test_words_and_units(book: Any) -> None:
    rows = {row[0]: row for row in book["Words and units"].iter_rows(min_row=2, values_only=True)}
    assert set(rows) >= {column.name for column in COLUMNS}
    assert rows["ball grams"][2] == "g"
    assert rows["hung clip cm"][2] == "cm"
    assert "lace" in rows["yarn class 0"][1]


def test_rows_are_counted_off_the_file() -> None:
    assert count_workbook_rows(written(awkward_swatches())) == len(awkward_swatches())
    assert count_workbook_rows(written([])) == 0


@pytest.mark.parametrize(
    ("notes", "says"), [("x" * 32_768, "32,768 characters"), ("🧶" * 16_384, "32,768 characters"), ("\x1b", r"U\+001B")]
)
def test_text_no_sheet_can_hold_is_named_not_cut(notes: str, says: str) -> None:
    with pytest.raises(RefusedError, match=f"“T-7”, notes: .*{says}"):
        written([plain_swatch(), replace(plain_swatch(7), notes=notes)])


def test_the_longest_text_a_cell_holds() -> None:
    longest = "x" * 32_766 + "\n"
    book = openpyxl.load_workbook(written([replace(plain_swatch(), notes=longest)]))
    assert longest in {cell.value for cell in book.worksheets[0][2]}


class GivenUpError(Exception):
    pass


@pytest.mark.parametrize("stop", [0, 200, 300, 600, 800])
def test_cancelling_leaves_the_old_file_and_nothing_else(stop: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    target, scratch = tmp_path / "log.xlsx", tmp_path / "scratch"
    scratch.mkdir()
    target.write_bytes(b"old")
    monkeypatch.setattr(tempfile, "tempdir", str(scratch))
    swatches = [plain_swatch(number) for number in range(250)]
    told = []

    def progress(done: int, total: int) -> None:
        told.append((done, total))
        if done >= stop:
            raise GivenUpError

    with pytest.raises(GivenUpError):
        write_whole(target, lambda file: write_workbook(file, log_of(swatches), "", "", progress), lambda _: None)
    assert told[-1][0] >= stop
    assert told[-1][1] == 1000, "rows, readings, gauges and packing count"
    assert target.read_bytes() == b"old"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["log.xlsx", "scratch"]
    assert list(scratch.iterdir()) == []


def test_openpyxl_is_loaded_only_to_write() -> None:
    modules = "logbook.sheets.workbook, logbook.sheets.reading, logbook.sheets.swatch_rows"
    code = f"import sys, {modules}; sys.exit('openpyxl' in sys.modules)"
    subprocess.run([sys.executable, "-c", code], check=True, cwd=Path(__file__).parents[2])


def test_the_calculator_has_no_chain_where_the_chains_that_lift_the_first_stitch_are_not_known() -> None:
    known = full_swatch(1, "plain")
    assert known.pattern is not None
    bare = replace(known.pattern, extra_chains=None, first_stitch=None, skip_cover=None)
    for pattern, has_chain in ((known.pattern, True), (bare, False)):
        sheet = openpyxl.load_workbook(written([replace(known, pattern=pattern)]), data_only=True)[chain_sheet.NAME]
        chain = sheet[chain_cells.CHAIN].value
        assert isinstance(chain, int) is has_chain
        assert isinstance(sheet[f"B{chain_cells.FIRST_OPTION + 1}"].value, int) is has_chain
        assert sheet[f"C{chain_cells.FIRST_OPTION + 1}"].value > 0
        assert has_chain or "extra chains" in sheet["A25"].value


def test_readings_beyond_what_a_sheet_holds_go_on_in_another_and_it_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(readings_sheet, "_MOST", 40)
    swatches = [full_swatch(number, "many") for number in range(2)]
    read = openpyxl.load_workbook(written(swatches), read_only=True)
    assert read.sheetnames[:3] == ["Swatches", "Readings", "Words and units"]
    assert read.sheetnames[-1] == "Readings (2)"
    first, second = (list(read[name].iter_rows(min_row=2, max_col=4, values_only=True)) for name in ("Readings", "Readings (2)"))
    assert first[-1][0] == "The readings go on in the sheet “Readings (2)”."
    taken = [taken.reading.text for swatch in swatches for taken in swatch.readings]
    assert [row[3] for row in (*first[:-1], *second)] == taken
