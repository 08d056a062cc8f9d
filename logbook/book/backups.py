"""Backups of a logbook, kept under its own uid and in the order they were made, whatever the clock said.

Each has a number in its name: the logbook's counter, or one more than that of the newest if it is not above that (so it is after
an older state was restored). The last ten are kept, one a day of the last seven days there is one of, one a week of nine weeks,
one a month of thirteen months: by days that were, not by age, for a clock that was wrong once must not make all others old.
"""

import os
import re
import sqlite3
import time
from collections.abc import Sequence
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from logbook.book.checking import check_whole
from logbook.book.connection import connect
from logbook.book.copying import PART, verified_copy
from logbook.book.kept_twice import require_kept_alike, set_right
from logbook.book.opening import look
from logbook.book.schema import STEPS
from logbook.book.trouble import DamagedError, InUseError, as_sentences
from logbook.disk import private_folder, write_in_place
from logbook.errors import RefusedError

SUFFIX = ".logbook"
_PLACE = "of.txt"
KEPT_LAST = 10
KEPT_BY = (("%Y-%m-%d", 7), ("%G-%V", 9), ("%Y-%m", 13))
"""Of each day, week and month the newest is kept, and of how many of those."""
_NAME = re.compile(r"(?:(\d{10})-)?(\d{8}T\d{6}\.\d{3})Z")
"""Those of the first schema have no number."""


class NoBackupError(RefusedError):
    """The place for backups did not take one; the logbook itself is as it was, and can be written to."""


@dataclass(frozen=True, slots=True)
class Backup:
    """One kept backup: where it lies, when it was made (UTC), and how many swatches it holds (None: it can't be read)."""

    path: Path
    made: datetime
    swatches: int | None


def make(connection: sqlite3.Connection, path: Path, folder: Path, now: str, *, again: bool = False) -> Path:
    """Makes and verifies a backup in ``folder`` of the logbook at ``path``, then prunes. ``now`` is ISO text in UTC.

    ``connection`` is one of its own, outside any transaction. If the newest backup holds this very state, that is it, unless
    ``again``. Raises RefusedError if none can be made, DamagedError if that is because the logbook is damaged; then nothing was
    pruned.
    """
    try:
        private_folder(folder)
    except OSError as error:
        raise NoBackupError(f"The backup folder {folder} can't be made ({error.strerror}).") from error
    newest = _numbered(folder)[:1]
    state = state_of(connection)
    if newest and not again and _state_in(newest[0][1]) == state:
        return newest[0][1]
    made = datetime.fromisoformat(now)
    target = _free_name(folder, max(state[0], newest[0][0] + 1 if newest else 0), made)
    try:
        verified_copy(connection, path, target)
        if place_of(folder) != path:
            write_in_place(folder / _PLACE, os.fsencode(path))
    except (DamagedError, InUseError):
        raise
    except (RefusedError, OSError) as error:
        raise NoBackupError(f"No backup of {path.name} could be made: {error}") from error
    prune(folder, target)
    return target


def state_of(connection: sqlite3.Connection) -> tuple[int, bytes]:
    """The counter and the digest, that tell this state of the logbook from any other; of the first schema, which had no digest,
    the number of the last action."""
    if connection.execute("PRAGMA user_version").fetchone()[0] < 2:
        return int(connection.execute("SELECT coalesce(max(position), 0) FROM action").fetchone()[0]), b""
    counter, digest = connection.execute("SELECT counter, digest FROM logbook").fetchone()
    return int(counter), bytes(digest)


def is_of_now(connection: sqlite3.Connection, folder: Path) -> bool:
    """Whether the newest backup in ``folder`` holds the very state of the logbook."""
    newest = _numbered(folder)[:1]
    return bool(newest) and _state_in(newest[0][1]) == state_of(connection)


def place_of(folder: Path) -> Path | None:
    """Where the logbook lay whose backups are in ``folder``, when the newest was made: a damaged one can't say its uid."""
    try:
        return Path(os.fsdecode((folder / _PLACE).read_bytes()))
    except OSError:
        return None


def kept(folder: Path) -> list[tuple[Path, datetime]]:
    """The backups in ``folder``, the last made first."""
    return [(path, made) for _, path, made in _numbered(folder)]


def _numbered(folder: Path) -> list[tuple[int, Path, datetime]]:
    """The number, path and time of each backup, the last made first; those without a number come before, by their counter."""
    if not folder.is_dir():
        return []
    found = []
    for path in folder.iterdir():
        name = _NAME.match(path.name)
        if name and path.suffix == SUFFIX:
            with suppress(ValueError):  # no date of the calendar: another's file
                made = datetime.strptime(name[2] + "+0000", "%Y%m%dT%H%M%S.%f%z")
                counter = int(name[1]) if name[1] else (_state_in(path) or (0,))[0]
                found.append((bool(name[1]), counter, made, path))
    return [(counter, path, made) for _, counter, made, path in sorted(found, reverse=True)]


def listed(folder: Path) -> list[Backup]:
    """The backups in ``folder`` with what each holds, the last made first."""
    return [Backup(path, made, _swatches(path)) for path, made in kept(folder)]


def prune(folder: Path, just_made: Path) -> None:
    """Removes what need not be kept, never the one just made; and what killed programs left half made goes after a day."""
    yesterday = time.time() - 24 * 3600
    half_made = [path for path in folder.glob(f".*{PART}*") if path.stat().st_mtime < yesterday]
    for path in (*half_made, *to_remove(kept(folder))):
        if path != just_made:
            with suppress(OSError):  # one more kept does no harm
                path.unlink()


def to_remove(found: Sequence[tuple[Path, datetime]]) -> list[Path]:
    """Which of ``found`` (the last made first) need not be kept."""
    wanted = {path for path, _ in found[:KEPT_LAST]}
    for period, most in KEPT_BY:
        seen: set[str] = set()
        for path, made in found:
            if made.strftime(period) not in seen and len(seen) < most:
                seen.add(made.strftime(period))
                wanted.add(path)
    return [path for path, _ in found if path not in wanted]


def restore(backup: Path, target: Path) -> list[str]:
    """Writes the logbook in ``backup`` to the new file ``target``. Raises RefusedError; neither file is ever overwritten.

    What is damaged in it and kept twice is set right: a sentence for each is returned. Raises DamagedError if that is not enough.
    """
    seen = look(backup)
    if seen.hot:
        raise RefusedError(f"{backup.name} was left in the middle of a write: open it as a logbook first, then save a copy.")
    return set_right_as(backup, target)


def set_right_as(path: Path, target: Path) -> list[str]:
    """The same of a logbook that may be open here, for without a look at its bytes."""
    said: list[str] = []

    def mend(copy: sqlite3.Connection) -> None:
        said.extend(set_right(copy))
        require_kept_alike(copy)

    with as_sentences(path), closing(connect(path, "ro")) as connection:
        step = connection.execute("PRAGMA user_version").fetchone()[0]
        check_whole(connection, path, step)
        verified_copy(connection, path, target, mend if step == len(STEPS) else None)
    return said


def _swatches(path: Path) -> int | None:
    """Without a look at its bytes: a backup might be open as a logbook just now."""
    try:
        with as_sentences(path), closing(connect(path, "ro")) as connection:
            return int(connection.execute("SELECT count(*) FROM swatch").fetchone()[0])
    except (RefusedError, sqlite3.OperationalError):
        return None


def _state_in(path: Path) -> tuple[int, bytes] | None:
    """The state a backup holds; None if it can't be read."""
    try:
        with as_sentences(path), closing(connect(path, "ro")) as connection:
            return state_of(connection)
    except (RefusedError, sqlite3.OperationalError, TypeError):
        return None


def _free_name(folder: Path, number: int, made: datetime) -> Path:
    stamp = made.strftime("%Y%m%dT%H%M%S.") + f"{made.microsecond // 1000:03d}Z"
    return folder / f"{number:010d}-{stamp}{SUFFIX}"
