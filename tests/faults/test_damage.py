"""Damaged logbooks, in short; ``python -m tests.faults.damage`` is the long form. And forty of them through the commands."""

import json
import subprocess
import sys
from itertools import islice
from pathlib import Path

import pytest

from logbook.commands.main import main
from tests.faults import damage

COMMANDS = (
    ["check"],
    ["check", "--deep", "--json"],
    ["find", "moss"],
    ["find", "--json"],
    ["chain", "--swatch", "S-01", "--width", "46cm"],
    ["export", "out.csv"],
    ["backup"],
)


@pytest.mark.long
def test_a_sentence_or_the_very_content() -> None:
    result = damage.run(500)
    assert result.files > 500
    assert min(result.refused, result.good) > 100, "both must have been met, or this shows little"
    assert result.wrong == []


def test_without_comparing_what_is_kept_twice_it_would_show() -> None:
    assert damage.run(1000, "trusting").wrong


def test_forty_through_the_commands(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.chdir(tmp_path)
    data = damage.start(tmp_path)
    path = tmp_path / "a.logbook"
    codes = set()
    files = [*islice(damage.mutants(data, 1000, 3), 0, 1000, 29), *islice(damage.truncations(data), 0, 60, 10)]
    assert len(files) >= 40
    for number, changed in enumerate(files):
        path.write_bytes(changed)
        command, *options = COMMANDS[number % len(COMMANDS)]
        code = main([command, *options, "--book", str(path)])
        shown = capsys.readouterr()
        assert code in (0, 1)
        assert (shown.err == "") == (code == 0) or "--json" in options
        assert shown.err.count("\n") <= 1
        if "--json" in options and shown.out:
            json.loads(shown.out)
        assert path.read_bytes() == changed or changed[18:20] != b"\1\1"
        codes.add(code)
        Path("out.csv").unlink(missing_ok=True)
    assert codes == {0, 1}


def test_as_a_program_of_its_own(tmp_path: Path) -> None:
    data = damage.start(tmp_path)
    path = tmp_path / "a.logbook"
    for changed in (data[:-1], data[:4096] + bytes(len(data) - 4096)):
        path.write_bytes(changed)
        done = subprocess.run(
            [sys.executable, "-m", "logbook", "check", "--book", str(path)], capture_output=True, text=True, check=False
        )
        assert done.returncode == 1
        assert done.stdout == ""
        assert done.stderr.startswith("logbook: a.logbook is damaged")
        assert done.stderr.count("\n") == 1
        assert path.read_bytes() == changed
