"""The menu entry of a Linux desktop: written, replaced, removed without a trace."""

import configparser
import os
import shlex
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import pytest

from logbook.errors import RefusedError
from logbook.tasks.desktop_menu import KIND, add_to_menu, exec_line, remove_from_menu, started_with

pytestmark = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="by the standards of a Linux desktop")


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    (tmp_path / "data").mkdir()
    return tmp_path / "data"


def test_what_is_written_says_how_the_program_is_started(home: Path) -> None:
    written = add_to_menu(["/opt/my tools/python", "logbook.pyz"])
    entry = configparser.ConfigParser(interpolation=None)
    entry.read(home / "applications" / "swatch-gauge-logbook.desktop")
    said = entry["Desktop Entry"]
    assert shlex.split(said["Exec"]) == ["/opt/my tools/python", "logbook.pyz", "%f"]
    assert said["MimeType"] == f"{KIND};"
    kinds = ElementTree.parse(home / "mime/packages/swatch-gauge-logbook.xml").getroot()
    assert [kind.get("type") for kind in kinds] == [KIND]
    assert {path.relative_to(home).parts[0] for path in written} == {"applications", "icons", "mime"}
    assert all(path.is_file() for path in written)


def test_added_twice_it_is_there_once_and_removed_without_a_trace(home: Path) -> None:
    assert add_to_menu(["one"]) == add_to_menu(["two"])
    assert "two" in (home / "applications" / "swatch-gauge-logbook.desktop").read_text()
    assert len(remove_from_menu()) == 5
    assert list(home.iterdir()) == []
    assert remove_from_menu() == []


def test_what_others_keep_there_stays(home: Path) -> None:
    kept = [
        home / "applications" / "other.desktop",
        home / "mime/packages/other.xml",
        home / "icons/hicolor/48x48/apps/other.png",
    ]
    for path in kept:
        path.parent.mkdir(parents=True)
        path.write_text("<mime-info xmlns='http://www.freedesktop.org/standards/shared-mime-info'/>")
    add_to_menu(["logbook"])
    remove_from_menu()
    assert all(path.is_file() for path in kept)


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="to the superuser every folder can be written")
def test_a_folder_that_cannot_be_written_to(home: Path) -> None:
    home.chmod(0o500)
    with pytest.raises(RefusedError, match="Nothing was added"):
        add_to_menu(["logbook"])


def test_a_file_in_the_place_of_a_folder_leaves_nothing_half_done(home: Path) -> None:
    (home / "applications").write_text("no folder")
    with pytest.raises(RefusedError, match="Nothing was added"):
        add_to_menu(["logbook"])
    assert [path.name for path in home.iterdir()] == ["applications"]


def test_words_are_quoted_as_the_standard_has_it_and_only_where_they_must_be() -> None:
    assert exec_line(["/usr/bin/python3", "/a b/ö.pyz"]) == '/usr/bin/python3 "/a b/ö.pyz"'
    assert exec_line(["/a b/c", "50%", 'say "$1"', "back\\slash"]) == r'"/a b/c" 50%% "say \\"\\$1\\"" "back\\\\slash"'


def test_how_it_was_started(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    assert started_with() == [sys.executable, "-P", "-m", "logbook"]
    found = subprocess.run([*started_with(), "--version"], cwd=tmp_path, capture_output=True, text=True, check=True)
    assert found.stdout.startswith("logbook ")
    monkeypatch.setattr(sys, "argv", [str(tmp_path / "logbook.pyz")])
    assert started_with() == [sys.executable, str(tmp_path / "logbook.pyz")]
    monkeypatch.setattr(sys, "frozen", True, raising=False)
    assert started_with() == [sys.executable]


def test_elsewhere_it_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "win32")
    with pytest.raises(RefusedError, match="Linux desktop"):
        add_to_menu(["logbook"])
