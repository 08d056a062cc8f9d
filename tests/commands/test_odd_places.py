"""Starts, files and names that hardly anybody has: each gets its sentence, or simply works."""

import json
import os
import sqlite3
import subprocess
import sys
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.keeping import open_book
from logbook.tasks.logging_swatches import save_swatch
from tests.support.command_line import done, done_json, refused, run
from tests.support.garments import uid_of

ROOT = Path(__file__).parents[2]
NO_TEXT = os.fsdecode(b"caf\xe9.logbook")
on_linux = pytest.mark.skipif(sys.platform != "linux", reason="names that are no text")
on_posix = pytest.mark.skipif(os.name != "posix", reason="pipes as on Unix")


def change(book: Path, statement: str, *values: object) -> None:
    """As a damaged disk or another program might."""
    with closing(sqlite3.connect(book)) as connection, connection:
        assert connection.execute(statement, values).rowcount == 1


def test_the_window_without_tkinter_says_what_to_install() -> None:
    program = "import sys; sys.modules['_tkinter'] = None; from logbook.commands.main import main; sys.exit(main([]))"
    ran = subprocess.run([sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stdout) == (1, "")
    assert ran.stderr.startswith("logbook: The window needs tkinter")
    assert "python3-tk" in ran.stderr
    assert ran.stderr.count("\n") == 1


class TestAReadingThatMeasuresNothing:
    @pytest.fixture
    def zero(self, wardrobe: Path) -> Path:
        change(wardrobe, "UPDATE reading SET number = 0 WHERE rowid = 1")
        return wardrobe

    def test_no_gauge_counts_it_and_everything_else_goes_on(self, zero: Path, tmp_path: Path) -> None:
        before = done_json("find", "--book", zero)
        assert len(before) > 40
        assert all(gauge["pitch_mm"] > 0 for one in before for gauge in one["gauges"])
        done("nearest", "--repeats", "2.5", "--over", "10 cm", "--book", zero)
        for name in ("log.csv", "log.xlsx"):
            done("export", tmp_path / name, "--book", zero)

    @pytest.mark.parametrize("deep", [(), ("--deep",)])
    def test_the_check_names_it(self, zero: Path, deep: tuple[str, ...]) -> None:
        found = json.loads(run("check", "--book", zero, "--json", *deep).out)
        assert found["ok"] is False
        (problem,) = found["problems"]
        assert "of swatch LC-01 is 0.0, but was kept as 18.0" in problem

    def test_the_check_names_it_where_it_was_never_another(self, wardrobe: Path) -> None:
        with open_book(wardrobe) as book:
            swatch = swatch_in_hand(book, uid_of(book, "LC-01"))
            assert swatch is not None
            first, *others = swatch.readings
            nothing = replace(first, reading=replace(first.reading, number=0.0))
            save_swatch(book, replace(swatch, readings=(nothing, *others)))
        (problem,) = json.loads(run("check", "--book", wardrobe, "--json").out)["problems"]
        assert problem.startswith("Swatch LC-01: ")
        assert "is kept as 0 over 115 mm, so no gauge counts it" in problem

    def test_a_length_without_end_too(self, wardrobe: Path) -> None:
        change(wardrobe, "UPDATE reading SET length_mm = 9e999 WHERE rowid = 2")
        assert done_json("find", "--book", wardrobe)
        assert "is inf, but was kept as 103.0" in run("check", "--book", wardrobe).err


@on_linux
def test_a_logbook_whose_name_is_no_text_works(wardrobe: Path, tmp_path: Path) -> None:
    book = wardrobe.rename(tmp_path / NO_TEXT)
    assert done_json("find", "shell", "--book", book)
    done("check", "--deep", "--book", book)
    made = Path(done_json("backup", "--book", book)["target"])
    restored = tmp_path / os.fsdecode(b"\xff.logbook")
    done("restore", made, "--to", restored)
    assert done_json("check", "--book", restored)["ok"]
    sheet = tmp_path / os.fsdecode(b"\xff.csv")
    done("export", sheet, "--book", book)
    assert done_json("import", sheet, "--book", restored)["problems"] == []


@pytest.mark.parametrize("place", ["/", ".", "..", "folder", ""])
def test_a_folder_is_no_name_for_a_new_logbook(
    wardrobe: Path, tmp_path: Path, place: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "folder").mkdir()
    monkeypatch.chdir(tmp_path)
    assert "is a folder" in refused(1, "restore", wardrobe, "--to", place)
    sheet = ROOT / "sample_data" / "swatches.csv"
    assert "is a folder" in refused(1, "import", sheet, "--new", "--book", place)
    assert "“.”" in refused(1, "import", "", "--book", wardrobe)


@on_posix
def test_a_pipe_is_not_waited_for(wardrobe: Path, tmp_path: Path, users_folder: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    commands = (
        ["rows", "--file", pipe],
        ["garment", pipe],
        ["import", pipe, "--book", wardrobe],
        ["find", "--book", pipe],
        ["sizes", "--sizes", pipe, "--swatch", "LC-02", "--ease", "5", "--length", "56", "--book", wardrobe],
        ["restore", pipe, "--to", tmp_path / "new.logbook"],
    )
    for command in commands:
        ran = subprocess.run(
            [sys.executable, "-m", "logbook", *map(str, command)],
            cwd=ROOT, capture_output=True, encoding="utf-8", check=False, timeout=30,
        )  # fmt: skip
        assert (ran.returncode, ran.stdout) == (1, ""), command
        assert "pipe" in ran.stderr
        assert ran.stderr.count("\n") == 1


class TestNoFolderOfTheUsers:
    @pytest.fixture(autouse=True)
    def no_home(self, monkeypatch: pytest.MonkeyPatch, users_folder: Path) -> None:
        def unknown() -> Path:
            raise RuntimeError("Could not determine home directory.")

        for name in ("HOME", "LOGBOOK_HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "APPDATA"):
            monkeypatch.delenv(name, raising=False)
        monkeypatch.setattr(Path, "home", unknown)

    @pytest.mark.parametrize("arguments", [["find"], ["check"], ["backup"], ["import", "x.csv"]])
    def test_what_needs_one_says_so(self, arguments: list[str]) -> None:
        assert "set HOME" in refused(1, *arguments)

    def test_what_needs_none_works(self) -> None:
        assert "Chain 93" in done("chain", "--gauge", "20 sts = 10 cm", "--extra-chains", "1", "--width", "46")

    def test_what_nobody_expected_is_still_written_down(self, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
        monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
        monkeypatch.setattr("logbook.commands.chain.chain_text", lambda *_: 1 / 0)
        ran = run("chain", "--gauge", "20 sts = 10 cm", "--extra-chains", "1", "--width", "46")
        assert (ran.code, ran.err.count("\n")) == (1, 1)
        (log,) = tmp_path.glob("*/errors.log")
        assert str(log) in ran.err


class TestWhatWouldSteerTheTerminal:
    STEERS = "moss\x9b31m\x1b[31m\x85\x7f"

    def test_from_the_logbook(self, wardrobe: Path) -> None:
        change(wardrobe, "UPDATE swatch SET colour = ? WHERE rowid = 1", self.STEERS)
        shown = done("find", "--book", wardrobe)
        assert "moss\\x9b31m\\x1b[31m\\x85\\x7f" in shown
        assert all(sign == "\n" or sign.isprintable() for sign in shown)

    def test_in_json_it_is_escaped_and_reads_back(self, wardrobe: Path) -> None:
        change(wardrobe, "UPDATE swatch SET colour = ? WHERE rowid = 1", self.STEERS)
        ran = run("find", "--book", wardrobe, "--json")
        assert self.STEERS in {one["colour"] for one in ran.json}
        assert all(sign == "\n" or sign.isprintable() for sign in ran.out)

    def test_from_a_name_that_is_refused(self) -> None:
        sentence = refused(1, "find", "--book", "x\x1b[31m\x9b.logbook")
        assert "x\\x1b[31m\\x9b.logbook" in sentence
