"""Picture files beside the logbook, in ``NAME.pictures``: each called by what it holds, so that none is ever written over.

A picture is taken in without what tells where it was taken, so that nothing that is handed on tells it. Files and folder are
for the user's eyes alone. What is missing or broken is said where it is shown, and stops nothing else.
"""

import hashlib
import os
import sqlite3
import stat
from collections.abc import Callable, Sequence
from contextlib import suppress
from pathlib import Path

from logbook.book.picture_bytes import MOST_BYTES, NoPictureError, picture_of
from logbook.craft.swatches.picture_names import NAME, picture_names
from logbook.disk import private_folder, sync_folder, write_in_place
from logbook.errors import RefusedError

_COLUMNS = (("swatch", "pictures"), ("made_piece", "pictures"))


def folder_of(path: Path) -> Path:
    """Where the pictures of the logbook, or of the sheet, at ``path`` lie."""
    return path.with_name(f"{path.stem if path.suffix else path.name}.pictures")


def take_in(path: Path, source: Path) -> str:
    """Copies a picture file to those of the logbook at ``path``, and returns its name there. Raises RefusedError."""
    try:
        picture = picture_of(_bytes(source))
    except NoPictureError as error:
        raise RefusedError(f"“{source.name}” {error}.") from error
    except OSError as error:
        raise RefusedError(f"“{source.name}” could not be read ({error.strerror}): choose another file.") from error
    name = f"{hashlib.sha256(picture.content).hexdigest()}.{picture.kind}"
    folder = folder_of(path)
    if not _is_whole(folder / name, name):
        try:
            private_folder(folder)
            write_in_place(folder / name, picture.content)
        except OSError as error:
            said = f"“{source.name}” could not be kept in {folder} ({error.strerror})"
            raise RefusedError(f"{said}: check that there is room and that the folder may be written to.") from error
    return name


def content_of(path: Path, name: str) -> bytes:
    """The bytes of a picture of the logbook at ``path``. Raises RefusedError, in one sentence, if it is missing or broken."""
    file = folder_of(path) / name
    if not NAME.match(name):
        raise RefusedError("This is not the name of a picture: remove it, and add the picture again.")
    try:
        content = _bytes(file)
    except (OSError, NoPictureError) as error:
        raise RefusedError(f"The picture is missing: it should lie in {file.parent}.") from error
    if hashlib.sha256(content).hexdigest() != name[:64]:
        raise RefusedError("The picture is damaged: add it again, and it is whole again.")
    return content


def names_in(connection: sqlite3.Connection) -> list[str]:
    """Every picture that a record names, each once."""
    texts: list[str] = []
    for table, column in _COLUMNS:
        texts += [text for (text,) in connection.execute(f"SELECT {column} FROM {table} WHERE {column} != ''")]
    return list(dict.fromkeys(name for text in texts for name in picture_names(text)))


def bring_along(
    names: Sequence[str], source: Path, target: Path, progress: Callable[[int, int], None] | None = None
) -> list[str]:
    """Copies pictures from beside ``source`` to beside ``target``; the names of those that could not be. Those there stay.

    ``progress`` gets (done, total) and may raise to cancel.
    """
    left, brought = [], False
    folder, to = folder_of(source), folder_of(target)
    for number, name in enumerate(names):
        if progress is not None:
            progress(number, len(names))
        if not NAME.match(name) or folder == to:
            continue
        if _is_whole(to / name, name):
            continue
        try:
            content = _bytes(folder / name)
            if hashlib.sha256(content).hexdigest() != name[:64]:
                raise NoPictureError
            private_folder(to)
            _write(to / name, content)
            brought = True
        except (OSError, NoPictureError):
            left.append(name)
    if brought:
        _sync_all(to)
    return left


def _write(file: Path, content: bytes) -> None:
    """Whole or not at all; all that were brought along reach the disk together."""
    new = file.with_name(f".{file.name}.{os.getpid()}.new")
    try:
        with os.fdopen(os.open(new, os.O_WRONLY | os.O_CREAT | os.O_TRUNC | getattr(os, "O_BINARY", 0), 0o600), "wb") as opened:
            opened.write(content)
        os.replace(new, file)
    finally:
        new.unlink(missing_ok=True)


def _sync_all(folder: Path) -> None:
    if hasattr(os, "sync"):
        os.sync()
    with suppress(OSError):
        sync_folder(folder)


def _is_whole(file: Path, name: str) -> bool:
    with suppress(OSError, NoPictureError):
        return hashlib.sha256(_bytes(file)).hexdigest() == name[:64]
    return False


def _bytes(file: Path) -> bytes:
    """An ordinary file's bytes, as far as a picture may be large. Raises OSError, or NoPictureError for another thing."""
    handle = os.open(file, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    with os.fdopen(handle, "rb") as opened:
        found = os.fstat(opened.fileno())
        if not stat.S_ISREG(found.st_mode):
            raise NoPictureError("is not a file: choose a picture")
        if found.st_size > MOST_BYTES:
            raise NoPictureError(f"is larger than {MOST_BYTES // 1_000_000} MB: make it smaller")
        return opened.read(MOST_BYTES + 1)
