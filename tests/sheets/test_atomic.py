import errno
import os
import resource
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import BinaryIO

import pytest

from logbook.errors import RefusedError
from logbook.sheets.atomic import write_text, write_whole

LOGBOOK = b"SQLite format 3\0" + b"swatches"


def accept(part: Path) -> None:
    assert part.read_bytes() == b"new"


def put(content: bytes) -> Callable[[BinaryIO], None]:
    def write(file: BinaryIO) -> None:
        file.write(content)

    return write


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_a_new_file_and_one_written_over(tmp_path: Path) -> None:
    target = tmp_path / "log.csv"
    write_whole(target, put(b"new"), accept)
    assert target.read_bytes() == b"new"
    target.write_bytes(b"old")
    target.chmod(0o640)
    write_whole(target, put(b"new"), accept)
    assert target.read_bytes() == b"new"
    assert target.stat().st_mode & 0o777 == 0o640
    assert names(tmp_path) == ["log.csv"]


def test_text(tmp_path: Path) -> None:
    write_text(tmp_path / "a.svg", "čaj\n")
    assert (tmp_path / "a.svg").read_bytes() == "čaj\n".encode()


@pytest.mark.parametrize("step", ["write", "verify"])
@pytest.mark.parametrize("error", [KeyboardInterrupt(), RefusedError("no"), ZeroDivisionError()])
def test_the_old_file_stands_whatever_goes_wrong(step: str, error: BaseException, tmp_path: Path) -> None:
    target = tmp_path / "log.csv"
    target.write_bytes(b"old")

    def fail(_: object) -> None:
        raise error

    def write(file: BinaryIO) -> None:
        file.write(b"half")
        if step == "write":
            raise error

    with pytest.raises(type(error)):
        write_whole(target, write, fail)
    assert target.read_bytes() == b"old"
    assert names(tmp_path) == ["log.csv"]


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EACCES, errno.EROFS, errno.EIO, errno.ENAMETOOLONG])
def test_what_the_system_refuses_is_one_sentence(number: int, tmp_path: Path) -> None:
    def write(file: BinaryIO) -> None:
        raise OSError(number, os.strerror(number))

    with pytest.raises(RefusedError, match=r"log\.csv.*[:.] ?.*\.$"):
        write_whole(tmp_path / "log.csv", write, accept)
    assert names(tmp_path) == []


def test_a_logbook_is_never_written_over(tmp_path: Path) -> None:
    book = tmp_path / "log.swatches"
    book.write_bytes(LOGBOOK)
    with pytest.raises(RefusedError, match="is a logbook"):
        write_whole(book, put(b"new"), accept)
    assert book.read_bytes() == LOGBOOK


@pytest.mark.parametrize("way", ["itself", "hard link", "link", "dots", "journal"])
def test_the_open_logbook_is_told_without_opening_it(way: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    book = tmp_path / "log.swatches"
    book.write_bytes(LOGBOOK)
    target = {
        "itself": book,
        "hard link": tmp_path / "other.csv",
        "link": tmp_path / "link.csv",
        "dots": tmp_path / "sub" / ".." / "log.swatches",
        "journal": tmp_path / "log.swatches-journal",
    }[way]
    (tmp_path / "sub").mkdir()
    if way == "hard link":
        os.link(book, target)
    if way == "link":
        target.symlink_to(book)

    def opened(*_: object, **__: object) -> None:
        raise AssertionError("a handle on the open logbook drops its locks")

    monkeypatch.setattr(Path, "open", opened)
    monkeypatch.setattr("builtins.open", opened)
    with pytest.raises(RefusedError, match="the logbook that is open"):
        write_whole(target, put(b"new"), accept, never=[tmp_path / "not there", book])


def test_a_link_keeps_pointing_where_it_did(tmp_path: Path) -> None:
    real, link = tmp_path / "real.csv", tmp_path / "link.csv"
    real.write_bytes(b"old")
    link.symlink_to(real)
    write_whole(link, put(b"new"), accept)
    assert link.is_symlink()
    assert real.read_bytes() == b"new"


def test_folders_that_are_not_there_and_targets_that_are_no_files(tmp_path: Path) -> None:
    with pytest.raises(RefusedError, match=r"folder .* is not there"):
        write_whole(tmp_path / "nowhere" / "log.csv", put(b"new"), accept)
    with pytest.raises(RefusedError, match="not an ordinary file"):
        write_whole(tmp_path, put(b"new"), accept)
    with pytest.raises(RefusedError):
        write_whole(tmp_path / ("x" * 300), put(b"new"), accept)
    with pytest.raises(RefusedError):
        write_whole(tmp_path / "a\0b", put(b"new"), accept)
    assert names(tmp_path) == []


_FULL = """
import resource, signal, sys
from pathlib import Path
from logbook.errors import RefusedError
from logbook.sheets.atomic import write_text
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))
try:
    write_text(Path(sys.argv[1]), "x" * 5000)
except RefusedError as error:
    print(error)
"""


@pytest.mark.skipif(not hasattr(resource, "RLIMIT_FSIZE"), reason="no limit on file sizes here")
def test_a_full_disk(tmp_path: Path) -> None:
    target = tmp_path / "log.svg"
    target.write_text("old")
    done = subprocess.run(
        [sys.executable, "-c", _FULL, str(target)], capture_output=True, text=True, check=True, cwd=Path(__file__).parents[2]
    )
    assert "no room left" in done.stdout
    assert target.read_text() == "old"
    assert names(tmp_path) == ["log.svg"]


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() != 0, reason="only root can become somebody else")
def test_a_folder_one_may_not_write_to(tmp_path: Path) -> None:
    for folder in (tmp_path, *tmp_path.parents[:3]):
        folder.chmod(0o755)
    target = tmp_path / "log.csv"
    target.write_bytes(b"old")
    child = os.fork()
    if child == 0:
        os.setuid(65534)
        try:
            write_whole(target, put(b"new"), accept)
        except RefusedError as error:
            os._exit(7 if "can't be written there" in str(error) else 8)
        os._exit(9)
    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 7
    assert target.read_bytes() == b"old"


def test_the_folder_is_synced_once_the_file_has_its_name(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without that a power cut takes the name back."""
    seen: list[tuple[Path, bytes]] = []
    target = tmp_path / "out.csv"
    monkeypatch.setattr("logbook.sheets.atomic.sync_folder", lambda folder: seen.append((folder, target.read_bytes())))
    write_text(target, "new")
    assert seen == [(tmp_path, b"new")]


def test_the_name_it_is_written_under_can_not_be_foretold(tmp_path: Path) -> None:
    """A link that somebody put there would be written through."""
    seen: list[Path] = []

    def note(part: Path) -> None:
        seen.append(part)

    for number in range(3):
        write_whole(tmp_path / "a.csv", put(f"{number}".encode()), note)
    assert len({part.name for part in seen}) == 3
    assert all(len(part.name.strip(".").removesuffix(".part")) >= 16 for part in seen)
