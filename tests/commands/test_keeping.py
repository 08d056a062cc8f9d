"""Check, back up and restore from the command line."""

import os
import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from logbook.tasks.keeping import backup_folder
from tests.support.command_line import done, done_json, refused, run, sentence_of


def spoil(book: Path, statement: str) -> None:
    """Changes a record behind the logbook's back."""
    with closing(sqlite3.connect(book, isolation_level=None)) as connection:
        connection.execute(statement)


class TestCheck:
    @pytest.mark.parametrize("deep", [[], ["--deep"]])
    def test_a_sound_one(self, wardrobe: Path, deep: list[str]) -> None:
        before = wardrobe.read_bytes()
        assert done("check", "--book", wardrobe, *deep) == "wardrobe.logbook is sound: 43 swatches.\n"
        assert done_json("check", "--book", wardrobe, *deep) == {"ok": True, "swatches": 43, "problems": []}
        assert wardrobe.read_bytes() == before

    def test_one_problem_is_said_in_one_line(self, wardrobe: Path) -> None:
        spoil(wardrobe, "DELETE FROM yarn WHERE name = 'Owlbarn Alpaca'")
        sentence = refused(1, "check", "--book", wardrobe)
        assert "wardrobe.logbook is damaged" in sentence
        ran = run("check", "--book", wardrobe, "--json")
        assert ran.code == 1
        assert ran.json == {"ok": False, "swatches": None, "problems": [sentence]}
        assert sentence_of(ran) == sentence

    def test_several_are_listed(self, wardrobe: Path) -> None:
        spoil(
            wardrobe, "UPDATE reading SET length_mm = length_mm + 1 WHERE swatch = (SELECT uid FROM swatch WHERE tag = 'LC-02')"
        )
        ran = run("check", "--book", wardrobe, "--deep", "--json")
        problems = ran.json["problems"]
        assert (ran.code, ran.json["ok"], ran.json["swatches"]) == (1, False, None)
        assert len(problems) > 1
        assert all("LC-02" in problem for problem in problems)
        ran = run("check", "--book", wardrobe, "--deep")
        assert ran.out.splitlines() == problems
        assert sentence_of(ran) == f"wardrobe.logbook has {len(problems)} problems."

    def test_a_damaged_backup_is_found(self, wardrobe: Path) -> None:
        target = Path(done_json("backup", "--book", wardrobe)["target"])
        done("check", "--book", wardrobe, "--deep")
        with target.open("r+b") as file:
            file.truncate(target.stat().st_size - 100)
        done("check", "--book", wardrobe)
        assert target.name in refused(1, "check", "--book", wardrobe, "--deep")


@pytest.mark.skipif(os.name == "nt", reason="links as on Unix")
@pytest.mark.parametrize("arguments", [("check",), ("find", "LC-02", "--json"), ("backup",)], ids=lambda words: words[0])
def test_one_with_a_second_name_is_opened_and_that_is_said(wardrobe: Path, arguments: tuple[str, ...]) -> None:
    os.link(wardrobe, wardrobe.with_name("second.logbook"))
    ran = run(*arguments, "--book", wardrobe)
    assert ran.code == 0
    assert ran.out
    assert "wardrobe.logbook has more than one name on this disk: open it by one of them alone" in sentence_of(ran)


class TestBackup:
    def test_says_where_it_lies(self, wardrobe: Path) -> None:
        value = done_json("backup", "--book", wardrobe)
        assert value.keys() == {"target"}
        target = Path(value["target"])
        assert target.is_relative_to(backup_folder())
        said = done("backup", "--book", wardrobe)
        assert said.startswith("Backed up to ")
        second = Path(said.removeprefix("Backed up to ").removesuffix(".\n"))
        assert target != second
        assert target.is_file()
        assert second.is_file()

    def test_without_a_place_to_keep_it(self, wardrobe: Path) -> None:
        backup_folder().parent.mkdir(parents=True)
        backup_folder().write_text("in the way")
        assert "backups" in refused(1, "backup", "--book", wardrobe)


class TestRestore:
    def test_brings_everything_back_under_a_new_name(self, wardrobe: Path, tmp_path: Path) -> None:
        backup = done_json("backup", "--book", wardrobe)["target"]
        first, second = tmp_path / "first.logbook", tmp_path / "second.logbook"
        assert done("restore", backup, "--to", first) == f"Restored to {first}.\n"
        assert done_json("restore", backup, "--to", second) == {"target": str(second)}
        everything = done("find", "--json", "--book", wardrobe)
        assert done("find", "--json", "--book", first) == done("find", "--json", "--book", second) == everything

    def test_never_goes_over_anything(self, wardrobe: Path, tmp_path: Path) -> None:
        backup = done_json("backup", "--book", wardrobe)["target"]
        before = wardrobe.read_bytes()
        assert str(wardrobe) in refused(1, "restore", backup, "--to", wardrobe)
        assert wardrobe.read_bytes() == before
        (tmp_path / "free.logbook-journal").write_bytes(b"left over")
        assert "free.logbook-journal" in refused(1, "restore", backup, "--to", tmp_path / "free.logbook")
        assert not (tmp_path / "free.logbook").exists()

    def test_a_damaged_backup_is_refused(self, wardrobe: Path, tmp_path: Path) -> None:
        backup = Path(shutil.copy(wardrobe, tmp_path / "backup.logbook"))
        spoil(backup, "DELETE FROM yarn")
        assert "backup.logbook is damaged" in refused(1, "restore", backup, "--to", tmp_path / "new.logbook")
        assert not (tmp_path / "new.logbook").exists()

    def test_what_is_missing(self, wardrobe: Path, tmp_path: Path) -> None:
        assert "gone.logbook" in refused(1, "restore", tmp_path / "gone.logbook", "--to", tmp_path / "new.logbook")
        assert "none" in refused(1, "restore", wardrobe, "--to", tmp_path / "none" / "new.logbook")


@pytest.mark.parametrize(
    ("arguments", "named"),
    [
        (["restore", "a.logbook"], "--to"),
        (["restore", "--to", "b.logbook"], "BACKUP"),
        (["restore", "a.logbook", "--to"], "--to"),
        (["restore", "a.logbook", "--to", "b.logbook", "--book", "c.logbook"], "--book"),
        (["--book", "c.logbook", "restore", "a.logbook", "--to", "b.logbook"], "--book"),
        (["check", "--dee"], "--dee"),
        (["backup", "a.logbook"], "a.logbook"),
    ],
    ids=" ".join,
)
def test_arguments_that_are_wrong_alone(arguments: list[str], named: str) -> None:
    assert named in refused(2, *arguments)
