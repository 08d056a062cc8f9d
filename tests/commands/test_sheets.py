"""Sheets in and out from the command line."""

import os
import shutil
from pathlib import Path

import pytest

from logbook import sample
from logbook.tasks.keeping import new_book, usual_logbook
from tests.support.command_line import done, done_json, refused, run, sentence_of
from tests.support.faults import FAULTS
from tests.support.own_sheets import SHEETS
from tests.support.sheets import LEAST, read_rows, write_sheet

ROWS = len(read_rows(sample.folder() / sample.SWATCHES))


@pytest.fixture
def empty(tmp_path: Path) -> Path:
    with new_book(tmp_path / "empty.logbook") as book:
        return book.path


@pytest.fixture
def good(tmp_path: Path) -> Path:
    return write_sheet(tmp_path / "good.csv", {"tag": "A-1", **LEAST}, {"tag": "A-2", **LEAST})


@pytest.fixture
def half_good(tmp_path: Path) -> Path:
    return write_sheet(tmp_path / "half.csv", {"tag": "A-1", **LEAST}, {"tag": "A-2", **LEAST, "hook mm": "thin"})


def names_in(folder: Path) -> set[str]:
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*")}


class TestImport:
    def test_says_how_many(self, empty: Path, good: Path) -> None:
        assert done("import", good, "--book", empty) == "2 swatches added, 0 changed.\n"
        assert done("import", good, "--book", empty, "--good-rows-only").splitlines()[-1] == "0 swatches added, 0 changed."

    def test_json_has_the_promised_keys(self, empty: Path, good: Path) -> None:
        assert done_json("import", good, "--book", empty) == {"added": 2, "changed": 0, "problems": []}

    def test_one_of_each(self, empty: Path, tmp_path: Path) -> None:
        first = write_sheet(tmp_path / "first.csv", {"uid": "u1", "tag": "A-1", **LEAST})
        assert done("import", first, "--book", empty) == "1 swatch added, 0 changed.\n"
        edit = write_sheet(tmp_path / "edit.csv", {"uid": "u1", "colour": "rust"})
        assert done("import", edit, "--book", empty) == "0 swatches added, 1 changed.\n"
        assert done("import", edit, "--book", empty) == "0 swatches added, 0 changed.\n"


class TestFaultySheet:
    @pytest.mark.parametrize("new", [[], ["--new"]], ids=["into one that is there", "into a new one"])
    def test_every_problem_and_no_other(self, wardrobe: Path, new: list[str], tmp_path: Path) -> None:
        book = tmp_path / "new.logbook" if new else wardrobe
        before = wardrobe.read_bytes()
        ran = run("import", sample.folder() / sample.FAULTY, "--book", book, *new, "--json")
        assert ran.code == 1
        assert ran.json.keys() == {"added", "changed", "problems"}
        assert (ran.json["added"], ran.json["changed"]) == (0, 0)
        assert [(problem["row"], problem["column"]) for problem in ran.json["problems"]] == FAULTS
        assert all(problem.keys() == {"row", "column", "expected"} for problem in ran.json["problems"])
        assert all(problem["expected"] for problem in ran.json["problems"])
        assert f"{len(FAULTS)} problems in faulty.csv" in sentence_of(ran)
        assert wardrobe.read_bytes() == before
        assert not (tmp_path / "new.logbook").exists()

    def test_in_words(self, wardrobe: Path) -> None:
        ran = run("import", sample.folder() / sample.FAULTY, "--book", wardrobe)
        assert ran.code == 1
        lines = ran.out.splitlines()
        assert len(lines) == len(FAULTS)
        for line, (row, column) in zip(lines, FAULTS, strict=True):
            assert line.startswith(f"Row {row}, {column}: ")
            assert line.endswith(".")
        assert "nothing was imported" in sentence_of(ran)

    def test_the_good_rows_alone(self, empty: Path) -> None:
        bad = {row for row, _ in FAULTS if row > 1}
        faulty = sample.folder() / sample.FAULTY
        value = done_json("import", faulty, "--book", empty, "--good-rows-only")
        assert [(problem["row"], problem["column"]) for problem in value["problems"]] == FAULTS
        assert value["added"] == len(read_rows(faulty)) - len(bad) > 0
        assert len(done_json("find", "--book", empty)) == value["added"]


class TestNewLogbook:
    def test_is_made(self, tmp_path: Path, good: Path) -> None:
        book = tmp_path / "new.logbook"
        assert done("import", good, "--new", "--book", book) == "2 swatches added, 0 changed.\n"
        assert [one["tag"] for one in done_json("find", "--book", book)] == ["A-2", "A-1"]
        assert names_in(tmp_path) == {"new.logbook", "good.csv"}

    def test_the_usual_one_with_its_folder(self, good: Path) -> None:
        assert not usual_logbook().parent.exists()
        done("import", good, "--new")
        assert len(done_json("find")) == 2

    def test_never_goes_over_anything(self, wardrobe: Path, good: Path, tmp_path: Path) -> None:
        before = wardrobe.read_bytes()
        (tmp_path / "letter.txt").write_text("Dear Noémie")
        os.symlink(tmp_path / "nowhere", tmp_path / "link")
        said = {
            "wardrobe.logbook": "is there already",
            "letter.txt": "is there already",
            "link": "is there already",
            ".": "is a folder",
        }
        for name, words in said.items():
            assert words in refused(1, "import", good, "--new", "--book", tmp_path / name)
        assert wardrobe.read_bytes() == before
        assert (tmp_path / "letter.txt").read_text() == "Dear Noémie"

    @pytest.mark.parametrize("sheet", ["missing.csv", "half.csv", "book.logbook", "folder"])
    def test_leaves_nothing_when_refused(self, sheet: str, half_good: Path, sample_logbook: Path, tmp_path: Path) -> None:
        shutil.copy(sample_logbook, tmp_path / "book.logbook")
        (tmp_path / "folder").mkdir()
        before = names_in(tmp_path)
        ran = run("import", tmp_path / sheet, "--new", "--book", tmp_path / "new.logbook")
        assert ran.code == 1
        assert f"{sheet}" in sentence_of(ran)
        assert names_in(tmp_path) == before

    def test_in_a_folder_that_is_not_there(self, good: Path, tmp_path: Path) -> None:
        assert "no folder" in refused(1, "import", good, "--new", "--book", tmp_path / "none" / "new.logbook")
        assert not (tmp_path / "none").exists()

    def test_good_rows_only(self, half_good: Path, tmp_path: Path) -> None:
        book = tmp_path / "new.logbook"
        assert done("import", half_good, "--new", "--good-rows-only", "--book", book).endswith("\n1 swatch added, 0 changed.\n")
        assert [one["tag"] for one in done_json("find", "--book", book)] == ["A-1"]


class TestExport:
    @pytest.mark.parametrize("name", ["out.csv", "out.xlsx", "OUT.CSV"])
    def test_says_how_many_and_where(self, wardrobe: Path, tmp_path: Path, name: str) -> None:
        target = tmp_path / name
        assert done("export", target, "--book", wardrobe) == f"{ROWS} swatches written to {target}.\n"
        assert done_json("export", target, "--book", wardrobe) == {"rows": ROWS, "target": str(target)}
        assert done("import", target, "--book", wardrobe) == "0 swatches added, 0 changed.\n"

    def test_the_sample_comes_out_as_it_went_in(self, wardrobe: Path, tmp_path: Path) -> None:
        done("export", tmp_path / "out.csv", "--book", wardrobe)
        assert (tmp_path / "out.csv").read_bytes() == (sample.folder() / sample.SWATCHES).read_bytes()

    @pytest.mark.parametrize("name", ["out.ods", "out.txt", "out", ".csv"])
    def test_another_ending_is_wrong_from_the_arguments_alone(self, wardrobe: Path, tmp_path: Path, name: str) -> None:
        assert f"“{tmp_path / name}” must end in .xlsx or .csv" in refused(2, "export", tmp_path / name, "--book", wardrobe)
        assert not (tmp_path / name).exists()

    def test_never_over_a_logbook(self, wardrobe: Path, sample_logbook: Path, tmp_path: Path) -> None:
        other = Path(shutil.copy(sample_logbook, tmp_path / "other.csv"))
        own = wardrobe.rename(tmp_path / "own.csv")
        before = other.read_bytes(), own.read_bytes()
        assert "logbook" in refused(1, "export", other, "--book", own)
        assert "logbook" in refused(1, "export", own, "--book", own)
        assert (other.read_bytes(), own.read_bytes()) == before

    def test_into_a_folder_that_is_not_there(self, wardrobe: Path, tmp_path: Path) -> None:
        assert "none" in refused(1, "export", tmp_path / "none" / "out.csv", "--book", wardrobe)

    def test_over_a_folder(self, wardrobe: Path, tmp_path: Path) -> None:
        (tmp_path / "out.csv").mkdir()
        assert "“out.csv”" in refused(1, "export", tmp_path / "out.csv", "--book", wardrobe)

    def test_goes_over_an_older_sheet(self, wardrobe: Path, tmp_path: Path) -> None:
        (tmp_path / "out.csv").write_text("old")
        done("export", tmp_path / "out.csv", "--book", wardrobe)
        assert len(read_rows(tmp_path / "out.csv")) == ROWS


@pytest.mark.parametrize(
    ("arguments", "named"),
    [
        (["import"], "SHEET"),
        (["export"], "TARGET"),
        (["import", "a.csv", "b.csv"], "b.csv"),
        (["import", "a.csv", "--good"], "--good"),
        (["import", "a.csv", "--new=yes"], "--new"),
    ],
    ids=" ".join,
)
def test_arguments_that_are_wrong_alone(arguments: list[str], named: str) -> None:
    assert named in refused(2, *arguments)


def test_a_sheet_in_the_makers_own_words_is_shown_and_then_taken(tmp_path: Path) -> None:
    own = {one.name: one for one in SHEETS}["row four.xlsx"]
    own.write(tmp_path / "own.xlsx")
    book = tmp_path / "b.logbook"
    shown = done_json("import", str(tmp_path / "own.xlsx"), "--new", "--book", str(book), "--show", "--per", "10 cm")
    aside = [{"row": row, "why": "above the table"} for row in (1, 2)]
    assert shown["table"] == {"sheet": "Sheet1", "heading_row": 4, "set_aside": aside}
    assert shown["map"][:2] == [{"heading": "Label", "column": "tag"}, {"heading": "Made on", "column": "date"}]
    assert shown["map"][-1] == {"heading": "Washed?", "column": None}
    assert not book.exists()
    options = ("--new", "--book", str(book), "--per", "10 cm", "--map", "Washed? = notes")
    assert done_json("import", str(tmp_path / "own.xlsx"), *options) == {"added": 2, "changed": 0, "problems": []}
    assert [swatch["tag"] for swatch in done_json("find", "--book", str(book))] == ["r2", "r1"]
