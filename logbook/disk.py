"""What the disk is asked for beyond reading and writing: names that last, files written whole, locks that go with the process."""

import errno
import os
import sys
from pathlib import Path


def sync_folder(folder: Path) -> None:
    """Brings the names in the folder to the disk, where that can be done: on Windows folders can't be opened (names are durable
    there by themselves), and some network drives can't sync them. Raises OSError if it should have worked and did not.
    """
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    except OSError as error:
        if error.errno not in (errno.EINVAL, errno.ENOTSUP):
            raise
    finally:
        os.close(handle)


def private_folder(folder: Path) -> None:
    """Makes the folder, and those above it that are missing, durably and for the user's eyes alone; one that is there keeps its
    mode."""
    missing = [one for one in (folder, *folder.parents) if not one.exists()]
    for one in reversed(missing):
        one.mkdir(mode=0o700, exist_ok=True)
        sync_folder(one.parent)


def write_in_place(path: Path, content: bytes) -> None:
    """Writes the file whole or not at all, for the user's eyes alone, and durably; what was there before is replaced.

    Raises OSError if it can't be written; then what was there is there still.
    """
    new = path.with_name(f".{path.name}.{os.getpid()}.new")
    try:
        handle = os.open(new, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.replace(new, path)
    finally:
        new.unlink(missing_ok=True)
    sync_folder(path.parent)


class FileLock:
    """A lock on a file of its own that goes with the process, however that ends. ``taken``: false if another process has it.

    On a disk that knows no locks it is as if nobody else had it.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self._handle = os.open(path, os.O_RDWR | os.O_CREAT, 0o600)
        try:
            _lock(self._handle)
            self.taken = True
        except OSError as error:
            self.taken = error.errno not in (errno.EWOULDBLOCK, errno.EACCES, errno.EDEADLK)
            if not self.taken:
                os.close(self._handle)

    def release(self, *, remove: bool) -> None:
        """Gives the lock back; ``remove`` takes the file away too."""
        if self.taken:
            self.taken = False
            if remove and os.name != "nt":
                self.path.unlink(missing_ok=True)  # while it is still held, so that nobody else's goes
            os.close(self._handle)
            if remove and os.name == "nt":
                self.path.unlink(missing_ok=True)


def _lock(handle: int) -> None:
    if sys.platform == "win32":
        import msvcrt

        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
    else:
        import fcntl

        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
