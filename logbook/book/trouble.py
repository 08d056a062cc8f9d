"""What SQLite says, said as one sentence to the maker."""

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from logbook.errors import RefusedError


class DamagedError(RefusedError):
    """The file is a logbook whose pages or records are broken."""

    def __init__(self, how: str, name: str = "The logbook") -> None:
        short = " ".join(how.split())[:160]
        super().__init__(f"{name} is damaged ({short}): leave it as it is and restore the newest backup under a new name.")


class AlteredError(DamagedError):
    """Something in it is not as it was kept a second time: a copy of it can be set right. ``found`` has words for each."""

    def __init__(self, found: Sequence[str], name: str = "The logbook") -> None:
        super().__init__(found[0], name)
        self.found = tuple(found)
        said = str(self).partition("): leave")[0]
        self.args = (f"{said}): leave it as it is and restore it under a new name: it is repaired from what it keeps twice.",)


class OtherNameError(DamagedError):
    """It is not whole, perhaps only by this one of its names."""

    def __init__(self, name: str) -> None:
        super().__init__("", name)
        self.args = (
            f"{name} is not whole: it has another name on this disk, and may have been left in the middle of a write. Open it "
            "by its other name first; if that is damaged too, restore the newest backup under a new name.",
        )


class NewerError(RefusedError):
    """Something in it was written by a newer version of this program, which says more of it than this one knows."""

    def __init__(self, what: str, says: str) -> None:
        super().__init__(f"{what} was made by a newer version of this program (it says “{says[:40]}”): install that to open it.")


class InUseError(RefusedError):
    """Another window or program is writing; trying again may help."""


_LEFT_OPEN = (
    "{name} was left in the middle of a write, which can't be put right in this place: copy it and {name}-journal together to a "
    "folder of your own and open it there."
)
_NO_TEXT = "a text in it is not text any more"
_NOT_PERMITTED = "{name} may not be opened: ask for permission to its folder, or save a copy elsewhere."
NOT_WRITABLE = "{name} can't be written to here: save a copy in a folder of your own and go on with that."
_SENTENCES: dict[int, str] = {
    sqlite3.SQLITE_READONLY_ROLLBACK: _LEFT_OPEN,
    sqlite3.SQLITE_IOERR_DELETE: _LEFT_OPEN,  # of the journal, which ends a write
    sqlite3.SQLITE_READONLY: NOT_WRITABLE,
    sqlite3.SQLITE_FULL: (
        "The disk is full, so this could not be saved in {name}: make room and save again, or save a copy on another disk and go "
        "on with that."
    ),
    sqlite3.SQLITE_IOERR: "This could not be written to {name}: check that its disk is connected and has room, then save again.",
    sqlite3.SQLITE_CANTOPEN: "{name} can't be opened here: check that its folder is there and may be written to.",
    sqlite3.SQLITE_PERM: _NOT_PERMITTED,
    sqlite3.SQLITE_AUTH: _NOT_PERMITTED,
    sqlite3.SQLITE_CONSTRAINT: "This could not be saved in {name}, as it does not fit what is there: open it again and retry.",
}
_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED, sqlite3.SQLITE_PROTOCOL}
_DAMAGED = {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_FORMAT}


@contextmanager
def as_sentences(path: Path) -> Iterator[None]:
    """Turns what SQLite raises over the file at ``path`` into one sentence.

    Errors of our own making pass as they are, and so do those that only a mistake in this program can bring about.
    """
    try:
        yield
    except UnicodeDecodeError as error:
        raise DamagedError(_NO_TEXT, path.name) from error
    except UnicodeEncodeError as error:
        code = ord(error.object[error.start])
        raise RefusedError(f"The text holds the character U+{code:04X}, which can't be kept: delete it.") from error
    except sqlite3.Error as error:
        said = _sentence(error, path)
        if said is None:
            raise
        raise said from error


@contextmanager
def as_damage(what: str) -> Iterator[None]:
    """Turns a value that no record has into DamagedError: a sound file holds only what was written.

    Only ValueError and OverflowError say that; a LookupError or a TypeError is a slip of this program's own, and passes.
    """
    try:
        yield
    except (ValueError, OverflowError) as error:
        raise DamagedError(f"{what} can't be read: {error}") from error


def code_of(error: sqlite3.Error) -> int:
    """SQLite's extended code of the error; 0 where Python's own layer raised it, as over bytes that are no text."""
    return int(getattr(error, "sqlite_errorcode", 0))


def _sentence(error: sqlite3.Error, path: Path) -> RefusedError | None:
    code = code_of(error)
    if code & 0xFF in _BUSY:
        return InUseError(f"{path.name} is being written by another window or program: wait a moment and try again.")
    if "Could not decode" in str(error):
        return DamagedError(_NO_TEXT, path.name)
    if code & 0xFF in _DAMAGED or "unsupported file format" in str(error):  # of the second, the code says nothing
        return DamagedError(str(error), path.name)
    sentence = _SENTENCES.get(code) or _SENTENCES.get(code & 0xFF)
    return RefusedError(sentence.format(name=path.name)) if sentence else None
