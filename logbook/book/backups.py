"""Backups of a logbook, kept under its own uid: the last ten, and one a month for a year."""

import os
import re
import sqlite3
import time
from collections.abc import Sequence
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path

from logbook.book.checking import check_whole
from logbook.book.connection import connect
from logbook.book.copying import PART, verified_copy
from logbook.book.opening import look
from logbook.book.trouble import DamagedError, InUseError, as_sentences
from logbook.errors import RefusedError

SUFFIX = ".logbook"
_PLACE = "of.txt"
KEPT_LAST = 10
KEPT_DAYS = 366
_STAMP = re.compile(r"(\d{8}T\d{6}\.\d{3})Z")


@dataclass(frozen=True, slots=True)
class Backup:
    """One kept backup: where it lies, when it was made (UTC), and how many swatches it holds (None: it can't be read)."""

    path: Path
    made: datetime
    swatches: int | None


def make(connection: sqlite3.Connection, path: Path, folder: Path, now: str) -> Path:
    """Makes and verifies a backup in ``folder`` of the logbook at ``path``, then prunes. ``now`` is ISO text in UTC.

    Raises RefusedError if it can't be made, DamagedError if that is because the logbook is damaged; then nothing was pruned.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise RefusedError(f"The backup folder {folder} can't be made ({error.strerror}), so nothing was written.") from error
    made = datetime.fromisoformat(now)
    target = _free_name(folder, made)
    try:
        verified_copy(connection, path, target)
        if place_of(folder) != path:
            (folder / _PLACE).write_bytes(os.fsencode(path))
    except (DamagedError, InUseError):
        raise
    except (RefusedError, OSError) as error:
        raise RefusedError(f"No backup of {path.name} could be made, so nothing was written: {error}") from error
    prune(folder, target)
    return target


def place_of(folder: Path) -> Path | None:
    """Where the logbook lay whose backups are in ``folder``, when the newest was made: a damaged one can't say its uid."""
    try:
        return Path(os.fsdecode((folder / _PLACE).read_bytes()))
    except OSError:
        return None


def kept(folder: Path) -> list[tuple[Path, datetime]]:
    """The backups in ``folder``, newest first."""
    if not folder.is_dir():
        return []
    found = []
    for path in folder.iterdir():
        stamp = _STAMP.match(path.name)
        if stamp and path.suffix == SUFFIX:
            with suppress(ValueError):  # no date of the calendar: another's file
                found.append((path, datetime.strptime(stamp[1] + "+0000", "%Y%m%dT%H%M%S.%f%z")))
    return sorted(found, key=lambda pair: (pair[1], pair[0].name), reverse=True)


def listed(folder: Path) -> list[Backup]:
    """The backups in ``folder`` with what each holds, newest first."""
    return [Backup(path, made, _swatches(path)) for path, made in kept(folder)]


def prune(folder: Path, just_made: Path) -> None:
    """Removes what need not be kept: beyond the last ten, all but the newest of each month of the last year. Never the one just
    made, whatever the clock said; and what killed programs left half made goes after a day."""
    yesterday = time.time() - 24 * 3600
    half_made = [path for path in folder.glob(f".*{PART}*") if path.stat().st_mtime < yesterday]
    for path in (*half_made, *to_remove(kept(folder))):
        if path != just_made:
            with suppress(OSError):  # one more kept does no harm
                path.unlink()


def to_remove(found: Sequence[tuple[Path, datetime]]) -> list[Path]:
    """Which of ``found`` (newest first) need not be kept."""
    if not found:
        return []
    newest = found[0][1]
    months: set[tuple[int, int]] = set()
    removable = []
    for place, (path, made) in enumerate(found):
        month = (made.year, made.month)
        monthly = month not in months and newest - made <= timedelta(days=KEPT_DAYS)
        months.add(month)
        if place >= KEPT_LAST and not monthly:
            removable.append(path)
    return removable


def restore(backup: Path, target: Path) -> None:
    """Writes the logbook in ``backup`` to the new file ``target``. Raises RefusedError; neither file is ever overwritten."""
    seen = look(backup)
    if seen.hot:
        raise RefusedError(f"{backup.name} was left in the middle of a write: open it as a logbook first, then save a copy.")
    with as_sentences(backup), closing(connect(backup, "ro")) as connection:
        check_whole(connection, backup, seen.step)
        verified_copy(connection, backup, target)


def _swatches(path: Path) -> int | None:
    """Without a look at its bytes: a backup might be open as a logbook just now."""
    try:
        with as_sentences(path), closing(connect(path, "ro")) as connection:
            return int(connection.execute("SELECT count(*) FROM swatch").fetchone()[0])
    except (RefusedError, sqlite3.OperationalError):
        return None


def _free_name(folder: Path, made: datetime) -> Path:
    stamp = made.strftime("%Y%m%dT%H%M%S.") + f"{made.microsecond // 1000:03d}Z"
    names = (f"{stamp}{'' if n == 0 else f'-{n}'}{SUFFIX}" for n in range(1000))
    return next(folder / name for name in names if not os.path.lexists(folder / name))
