"""Which logbook a window shows: a second start on the same logbook asks that window to come to the front.

    <of the logbook's path>.lock      locked while a window shows the logbook
    <of the logbook's path>.asked     there from a second start until the window has come

The second start and the window share only this folder, which works alike on every system.
"""

import hashlib
import os
import time
from contextlib import suppress
from pathlib import Path

from logbook.disk import FileLock, private_folder

LOOKS_S = 0.02
"""So often the second start looks whether the window has come."""


class ShownBook:
    """The logbook of one window, from now on until ``close``. Raises OSError if the folder can't be written to."""

    def __init__(self, folder: Path, book: Path) -> None:
        private_folder(folder)
        self._asked = _asked(folder, book)
        self._lock = FileLock(_lock(folder, book))
        if self._lock.taken:
            self._asked.unlink(missing_ok=True)  # what asked for a window that is gone

    def asked(self) -> bool:
        """Whether a second start has asked for the window since the last time; it is told that the window comes."""
        if not self._lock.taken or not self._asked.exists():
            return False
        with suppress(OSError):
            self._asked.unlink()
        return True

    def close(self) -> None:
        """The window shows it no more."""
        self._lock.release(remove=True)


def ask_for_window(folder: Path, book: Path, within_s: float) -> bool:
    """Whether a window that shows the logbook comes to the front; False if there is none, or none that answers in time."""
    try:
        if not _lock(folder, book).exists():
            return False
        lock = FileLock(_lock(folder, book))
        if lock.taken:
            lock.release(remove=True)  # left by one that died
            return False
        asked = _asked(folder, book)
        asked.touch(mode=0o600)
        until = time.monotonic() + within_s
        while asked.exists():
            if time.monotonic() > until:
                asked.unlink(missing_ok=True)
                return False
            time.sleep(LOOKS_S)
    except OSError:
        return False
    return True


def _lock(folder: Path, book: Path) -> Path:
    return folder / f"{_name(book)}.lock"


def _asked(folder: Path, book: Path) -> Path:
    return folder / f"{_name(book)}.asked"


def _name(book: Path) -> str:
    return hashlib.sha256(os.fsencode(os.path.realpath(book))).hexdigest()[:32]
