"""The README's examples, run: every ``console`` block gives what it says; ``...`` stands for any lines, or any part of one."""

import os
import re
import shlex
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.support.command_line import run
from tests.support.sample_sheets import written_rows

ROOT = Path(__file__).parent.parent
BLOCK = re.compile(r"^```console\n(.*?)^```$", re.MULTILINE | re.DOTALL)
PROMPT = "$ logbook "


def examples(text: str) -> Iterator[tuple[str, str]]:
    """Each command line of the ``console`` blocks, and the output that is to follow."""
    for block in BLOCK.findall(text):
        commands = re.split(r"^(?=\$ )", block, flags=re.MULTILINE)
        assert not commands[0], f"output without a command: {commands[0]}"
        for command in commands[1:]:
            line, _, output = command.partition("\n")
            assert line.startswith(PROMPT), line
            yield line.removeprefix(PROMPT), output


def pattern_of(output: str) -> str:
    """A pattern for ``output``: a line of ``...`` alone is any number of lines, inside a line it is any characters."""
    lines = [
        r"(?:.*\n)*" if line == "..." else ".*".join(map(re.escape, line.split("..."))) + r"\n" for line in output.splitlines()
    ]
    return "".join(lines)


def test_every_example_gives_what_it_says(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copytree(ROOT / "sample_data", tmp_path / "sample_data")
    (tmp_path / "shells.txt").write_text(written_rows()["shell stitch"].replace("5 dc in next sc", "4 dc in next sc", 1), "utf-8")
    monkeypatch.chdir(tmp_path)
    found = list(examples((ROOT / "README.md").read_text("utf-8")))
    assert found, "the README has no example"
    for command, output in found:
        ran = run(*shlex.split(command))
        assert re.fullmatch(pattern_of(output), ran.out + ran.err), f"{command}\n{ran.out}{ran.err}"


@pytest.mark.parametrize(
    ("output", "fits", "differs"),
    [
        ("Chain 74: 46.5 cm (12 repeats).\n", "Chain 74: 46.5 cm (12 repeats).\n", "Chain 74: 46x5 cm (12 repeats).\n"),
        ("one\n...\nfour\n", "one\ntwo\nthree\nfour\n", "one\ntwo\nthree\n"),
        ("one ... three\n", "one two three\n", "one two\nthree\n"),
        ("one\n...\n", "one\n", "two\n"),
        ("", "", "a word\n"),
    ],
)
def test_the_comparison_can_fail(output: str, fits: str, differs: str) -> None:
    assert re.fullmatch(pattern_of(output), fits)
    assert not re.fullmatch(pattern_of(output), differs)


def test_every_picture_and_file_it_speaks_of_is_there() -> None:
    text = (ROOT / "README.md").read_text("utf-8")
    for target in re.findall(r"\]\(((?!https?:)[^)#]+)\)", text):
        assert os.path.exists(ROOT / target), target
