"""Harmful and broken workbooks: refused in one sentence or read right, in 200 MB, whatever is thrown in.

The 5 s are held by ``python -m tests.faults.workbooks``: a slow machine is no bug. A reader that spins is ended by the test run.
"""

from pathlib import Path

import pytest

from logbook.errors import RefusedError
from logbook.sheets.columns import COLUMNS
from logbook.sheets.limits import Limits, RawRow, RawSheet
from logbook.sheets.reading import is_export, read_sheet
from logbook.sheets.workbook_reading import read_workbook
from tests.faults.workbooks import MOST_MEGABYTES, bombs, heavy, judge_mutants, judged, read_in_a_child
from tests.support.workbook_parts import packed, parts_of, text_row, workbook

pytestmark = pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="memory is measured by /proc")


@pytest.mark.long
def test_every_bomb_is_refused_and_small(tmp_path: Path) -> None:
    result = read_in_a_child(bombs(), tmp_path)
    assert sorted(result["files"]) == sorted(path.name for path in tmp_path.iterdir()), "reading writes nothing"
    assert len(result["files"]) > 30
    for name, (outcome, _) in result["files"].items():
        assert outcome.startswith("refused: "), name
    assert result["megabytes"] <= MOST_MEGABYTES


def test_what_is_heavy_but_allowed_stays_small_too(tmp_path: Path) -> None:
    result = read_in_a_child(heavy(), tmp_path)
    assert result["files"]
    assert result["megabytes"] <= MOST_MEGABYTES


@pytest.mark.long
@pytest.mark.parametrize("seed", range(4))
def test_mutants_are_refused_or_read_right(seed: int) -> None:
    result = judge_mutants(500, seed)
    assert result["faults"] == []
    assert result["outcomes"]["refused"] > 100
    assert result["outcomes"]["right"] > 20


def test_the_judge_sees_a_reader_that_drops_a_row() -> None:
    def careless(content: bytes, name: str) -> RawSheet:
        sheet = read_workbook(content, name)
        return RawSheet(sheet.name, sheet.rows[:-1])

    assert judge_mutants(60, seed=7, read=careless)["faults"]


def test_the_judge_takes_a_formula_of_empty_text_as_either() -> None:
    rows = '<row><c t="str"><f>""</f><v></v></c><c t="str"><f>A1</f></c><c><v>5</v></c></row>'
    assert judged(workbook(rows))[0] == "right"
    assert judged(workbook(rows), lambda *_: RawSheet("x", (RawRow(1, ("made up", None, 5.0)),)))[0].startswith("differs")


def test_the_judge_sees_a_reader_that_lets_errors_through() -> None:
    def brittle(content: bytes, name: str) -> RawSheet:
        raise KeyError("xl/workbook.xml")

    with pytest.raises(KeyError):
        judge_mutants(1, seed=7, read=brittle)


def test_without_its_limit_the_reader_would_take_a_bomb(monkeypatch: pytest.MonkeyPatch) -> None:
    bomb = packed({**parts_of(text_row(1, "tag")), "xl/media/a.bin": bytes(51_000_000)})
    assert read_workbook(bomb, "x", Limits(inflated_bytes=100_000_000)).rows[0].cells == ("tag",)


def test_a_bomb_that_begins_as_an_export_of_the_log_is_held_to_its_size(tmp_path: Path) -> None:
    heading = text_row(1, *(column.name for column in COLUMNS))
    path = tmp_path / "bomb.xlsx"
    path.write_bytes(packed({**parts_of(heading), "xl/media/a.bin": bytes(120_000_000)}))
    assert is_export(path)
    with pytest.raises(RefusedError, match="unpacks to more than"):
        read_sheet(path)
