"""The program as a shell starts it: a process of its own, its exit code, its two streams."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from logbook import __version__

ROOT = Path(__file__).parents[2]


def start(*arguments: str | Path, **surroundings: str) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(
        [sys.executable, "-m", "logbook", *map(str, arguments)],
        cwd=ROOT, env=os.environ | surroundings, capture_output=True, encoding="utf-8", check=False,
    )  # fmt: skip


def test_an_answer() -> None:
    asked = ("chain", "--gauge", "4 repeats = 15.1 cm", "--multiple", "6", "--stitch", "sc", "--body", "92", "--ease", "-6 %")
    ran = start(*asked, "--json")
    assert (ran.returncode, ran.stderr) == (0, "")
    assert json.loads(ran.stdout)["target_mm"] == pytest.approx(432.4)


@pytest.mark.parametrize(
    ("arguments", "code", "named"),
    [
        (["chain", "--gauge", "20 sts = 10 cm", "--width", "wide"], 2, "“wide”"),
        (["find", "--book", "no such.logbook"], 1, "no such.logbook"),
    ],
)
def test_one_line_on_standard_error(arguments: list[str], code: int, named: str) -> None:
    ran = start(*arguments)
    assert (ran.returncode, ran.stdout) == (code, "")
    assert ran.stderr.startswith("logbook: ")
    assert named in ran.stderr
    assert ran.stderr.count("\n") == 1
    assert "usage" not in ran.stderr.lower()


def test_the_signs_get_through_a_plain_terminal() -> None:
    ran = start(
        "chain",
        "--gauge",
        "20 sts = 10 cm",
        "--stitch",
        "sc",
        "--body",
        "92",
        "--ease",
        "−5cm",
        LC_ALL="C",
        PYTHONIOENCODING="ascii",
    )
    assert (ran.returncode, ran.stderr) == (0, "")
    assert "→" in ran.stdout
    assert "±" in ran.stdout


@pytest.mark.skipif(sys.platform != "linux", reason="names that are no text")
def test_a_name_that_is_no_text() -> None:
    ran = start("find", "--book", os.fsdecode(b"caf\xe9.logbook"))
    assert (ran.returncode, ran.stdout) == (1, "")
    assert "caf\\udce9.logbook" in ran.stderr


def test_version_and_help() -> None:
    assert start("--version").stdout == f"logbook {__version__}\n"
    assert "--ease" in start("chain", "--help").stdout


@pytest.mark.skipif(sys.platform != "linux", reason="names that are no text")
def test_a_name_that_is_no_text_is_spelled_out_in_an_answer(wardrobe: Path, tmp_path: Path) -> None:
    ran = start("export", tmp_path / os.fsdecode(b"caf\xe9.csv"), "--book", wardrobe)
    assert (ran.returncode, ran.stderr) == (0, "")
    assert "caf\\udce9.csv" in ran.stdout


@pytest.mark.skipif(os.name != "posix", reason="pipes and devices as on Unix")
class TestAnswersNobodyTakes:
    def test_the_reader_has_had_enough(self, wardrobe: Path) -> None:
        reading, writing = os.pipe()
        os.close(reading)
        command = [sys.executable, "-m", "logbook", "find", "--json", "--book", str(wardrobe)]
        ran = subprocess.run(command, cwd=ROOT, stdout=writing, stderr=subprocess.PIPE, text=True, check=False)
        os.close(writing)
        assert (ran.returncode, ran.stderr) == (1, "")

    @pytest.mark.skipif(not os.path.exists("/dev/full"), reason="no device that is always full")
    def test_the_disk_is_full(self) -> None:
        with open("/dev/full", "w") as full:
            command = [sys.executable, "-m", "logbook", "chain", "--gauge", "20 sts = 10 cm", "--stitch", "sc", "--width", "46"]
            ran = subprocess.run(command, cwd=ROOT, stdout=full, stderr=subprocess.PIPE, text=True, check=False)
        assert ran.returncode == 1
        assert ran.stderr.startswith("logbook: The answer could not be written out (No space left")
        assert ran.stderr.count("\n") == 1


@pytest.mark.skipif(sys.platform != "linux", reason="elsewhere there is always a screen")
@pytest.mark.parametrize("arguments", [[], ["--sample"]])
def test_without_a_screen_the_window_says_so_in_a_line(arguments: list[str], users_folder: Path) -> None:
    surroundings = {key: value for key, value in os.environ.items() if key not in ("DISPLAY", "WAYLAND_DISPLAY")}
    ran = subprocess.run(
        [sys.executable, "-m", "logbook", *arguments],
        cwd=ROOT, env=surroundings, capture_output=True, encoding="utf-8", check=False,
    )  # fmt: skip
    assert (ran.returncode, ran.stdout) == (1, "")
    assert ran.stderr.startswith("logbook: There is no screen")
    assert ran.stderr.count("\n") == 1
    assert not users_folder.exists()


def test_commands_need_neither_tkinter_nor_openpyxl() -> None:
    program = (
        "import sys; from logbook.commands.main import main; "
        "code = main(['chain', '--gauge', '20 sts = 10 cm', '--stitch', 'sc', '--width', '46']); "
        "sys.exit(code or bool({'tkinter', 'openpyxl'} & set(sys.modules)))"
    )
    assert subprocess.run([sys.executable, "-c", program], cwd=ROOT, stdout=subprocess.DEVNULL, check=False).returncode == 0
