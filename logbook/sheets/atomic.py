"""The one way a file is written out: whole, or not at all.

It is written under another name in the same folder, brought to the disk, opened again and checked, and only then takes the
target's place. Whatever goes wrong, the target is the old file or the whole new one.
"""

import errno
import os
import secrets
import stat
import zipfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from logbook.disk import sync_folder
from logbook.errors import RefusedError

_LOGBOOK_HEADER = b"SQLite format 3\0"
_BESIDE_A_LOGBOOK = ("-journal", "-wal", "-shm")


def write_whole(
    target: Path, write: Callable[[BinaryIO], None], verify: Callable[[Path], None], never: Sequence[Path] = ()
) -> None:
    """Writes ``target`` with ``write`` and lets ``verify`` look at the finished file before it takes the target's place.

    ``never`` are the logbooks open in this process: they are told by their identity, without opening them, since closing any
    handle on them would drop their locks. Raises RefusedError if the target is a logbook or can't be written; what ``write``
    and ``verify`` raise passes through. In every such case the old target stands and nothing is left beside it.
    """
    with _explained(target):
        place = _checked(target, never)
        part = place.with_name(f".{secrets.token_hex(8)}.part")
        try:
            with part.open("xb") as file:
                write(file)
                file.flush()
                os.fsync(file.fileno())
            verify(part)
            if place.exists():
                part.chmod(stat.S_IMODE(place.stat().st_mode))
            os.replace(part, place)
        finally:
            part.unlink(missing_ok=True)
        sync_folder(place.parent)


def write_text(target: Path, text: str, never: Sequence[Path] = ()) -> None:
    """Writes ``text`` as UTF-8, line ends as they are. Raises RefusedError as ``write_whole``."""
    content = text.encode("utf-8")

    def verify(part: Path) -> None:
        if part.read_bytes() != content:
            raise RefusedError(f"“{target.name}” did not reach the disk whole: try again, or choose another folder.")

    write_whole(target, lambda file: _write_all(file, content), verify, never)


def write_zip(target: Path, write: Callable[[BinaryIO], None], never: Sequence[Path] = ()) -> None:
    """Writes a workbook (or another zip file) whose every part must read back whole. Raises RefusedError as ``write_whole``."""

    def verify(part: Path) -> None:
        with zipfile.ZipFile(part) as parts:
            if parts.testzip() is not None:
                raise RefusedError(f"“{target.name}” did not reach the disk whole: try again, or choose another folder.")

    write_whole(target, write, verify, never)


def _write_all(file: BinaryIO, content: bytes) -> None:
    file.write(content)


def _checked(target: Path, never: Sequence[Path]) -> Path:
    """The real place behind links, if it may be written to."""
    place = target.resolve()
    for book in never:
        if _same(place, book) or any(_same(place, book.with_name(book.name + end)) for end in _BESIDE_A_LOGBOOK):
            raise RefusedError(f"“{target.name}” is the logbook that is open: choose another name.")
    if not place.exists():
        return place
    if not place.is_file():
        raise RefusedError(f"“{target.name}” is not an ordinary file: choose another name.")
    if not os.access(place, os.W_OK):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))
    with place.open("rb") as file:
        if file.read(len(_LOGBOOK_HEADER)) == _LOGBOOK_HEADER:
            raise RefusedError(f"“{target.name}” is a logbook: choose another name, so that nothing in it is lost.")
    return place


def _same(place: Path, other: Path) -> bool:
    if place.exists() and other.exists():
        return os.path.samefile(place, other)
    return place == other.resolve()


@contextmanager
def _explained(target: Path) -> Iterator[None]:
    """Turns what the system refuses into one sentence."""
    try:
        yield
    except (OSError, ValueError) as error:
        raise RefusedError(_sentence(target, error)) from error


def _sentence(target: Path, error: OSError | ValueError) -> str:
    number = error.errno if isinstance(error, OSError) else None
    if number in (errno.ENOSPC, errno.EDQUOT, errno.EFBIG):
        return f"There is no room left to write “{target.name}”: free some, or choose another folder."
    if number in (errno.EACCES, errno.EPERM, errno.EBUSY, errno.ETXTBSY):
        return (
            f"“{target.name}” can't be written there: if another program has it open, close it there; "
            "otherwise choose another name or folder."
        )
    if number == errno.EROFS:
        return f"“{target.name}” can't be written there: the folder is for reading only. Choose another."
    if number in (errno.ENOENT, errno.ENOTDIR):
        return f"The folder “{target.parent}” is not there: choose one that is."
    if number in (errno.ENAMETOOLONG, errno.EINVAL):
        return f"“{target.name[:40]}” can't be the name of a file here: choose another."
    reason = (error.strerror if isinstance(error, OSError) else None) or str(error)
    return f"“{target.name}” could not be written ({reason}): choose another name or folder."
