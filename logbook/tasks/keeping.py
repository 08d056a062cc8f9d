"""Keeping the logbook safe: open, check, back up, restore, copy."""

import os
from collections.abc import Callable, Iterator
from contextlib import closing, suppress
from dataclasses import dataclass, replace
from pathlib import Path

from logbook.book import backups, pictures
from logbook.book.backups import Backup, NoBackupError
from logbook.book.changes import Writing
from logbook.book.checking import check_whole
from logbook.book.connection import connect
from logbook.book.copying import beside_too
from logbook.book.logbook import (
    Logbook,
    ReplacedError,
    WrittenOverError,
    new_logbook,
    open_logbook,
)
from logbook.book.opening import look
from logbook.book.set_aside import set_aside
from logbook.book.swatches import swatches
from logbook.book.trouble import AlteredError, DamagedError, InUseError, as_sentences
from logbook.craft.swatches.readings import read_readings
from logbook.disk import private_folder
from logbook.errors import LogbookError, RefusedError
from logbook.settings import data_folder, load_settings

__all__ = [
    "AlteredError",
    "Backup",
    "DamagedError",
    "InUseError",
    "Logbook",
    "NoBackupError",
    "ReplacedError",
    "WrittenOverError",
    "set_aside",
]

SUFFIX = backups.SUFFIX


@dataclass(frozen=True, slots=True)
class CheckResult:
    """Whether all is well, how many swatches there are (None: can't be counted), a sentence for each problem, and what is to be
    heeded though all is well."""

    ok: bool
    swatches: int | None
    problems: tuple[str, ...]
    warning: str = ""


def backup_folder() -> Path:
    """Where the backups of all logbooks are kept: the folder the user chose, or the usual one."""
    chosen = load_settings()[0].backups
    return Path(chosen) if chosen else _usual_backup_folder()


def _usual_backup_folder() -> Path:
    return data_folder() / "backups"


def _backup_folders() -> set[Path]:
    """Where backups may lie: those made before another folder was chosen are where they were."""
    return {backup_folder(), _usual_backup_folder()}


def usual_logbook() -> Path:
    """The logbook used where none is chosen."""
    return data_folder() / f"swatches{SUFFIX}"


def open_book(path: Path) -> Logbook:
    """Opens a logbook with backups kept in the user's data folder; its pages and records are looked at by ``check``."""
    return open_logbook(path, backup_folder())


def new_book(path: Path, *, keep_backups: bool = True, fill: Callable[[Writing], None] | None = None) -> Logbook:
    """Makes a new, empty logbook; the usual one's folder is made with it."""
    if path == usual_logbook():
        try:
            private_folder(path.parent)
        except OSError as error:
            raise RefusedError(
                f"The folder {path.parent} can't be made ({error.strerror}): check that you may write there."
            ) from error
    return new_logbook(path, backup_folder() if keep_backups else None, fill=fill)


def check(path: Path, *, deep: bool = False) -> CheckResult:
    """Opens and checks a logbook; ``deep``: also every record, reading's text and backup. Damage is a result, not an error."""
    try:
        with open_book(path) as book:
            return check_book(book, deep=deep)
    except RefusedError as error:
        return CheckResult(False, None, (str(error),))


def check_thoroughly(path: Path, go_on: Callable[[], object] = lambda: None) -> int:
    """The slow check of a whole logbook, which may be open: how many swatches it holds. Raises DamagedError.

    ``go_on`` is called all the while; what it raises ends the check.
    """
    from logbook.book import thorough_check  # it reads every kind of record, and a window is to be there before that

    return thorough_check.check_thoroughly(path, go_on=go_on)


def check_book(book: Logbook, *, deep: bool = False) -> CheckResult:
    """Checks a logbook that is open."""
    problems: list[str] = []
    count: int | None = None
    try:
        count = check_thoroughly(book.path)
        problems.extend(_reading_problems(book, deep=deep))
        if deep:
            problems.extend(_backup_problems(backup_folder() / book.uid))
    except AlteredError as error:
        problems.extend([str(error)] if len(error.found) == 1 else [f"{book.path.name}: {one}." for one in error.found])
    except RefusedError as error:
        problems.append(str(error))
    return CheckResult(not problems, count, tuple(problems), book.warning)


def back_up(book: Logbook) -> Path:
    """Makes a backup now and says where it lies."""
    made = replace(book, backup_folder=backup_folder()).back_up(again=True)
    assert made is not None
    return made


def backups_of(book: Logbook) -> list[Backup]:
    """The backups of a logbook, newest first."""
    found = [one for folder in _backup_folders() for one in backups.listed(folder / book.uid)]
    return sorted(found, key=lambda one: one.path.name, reverse=True) if len(_backup_folders()) > 1 else found


def newest_good_backup(path: Path, uid: str = "") -> Backup | None:
    """The newest backup that can be restored, of the damaged logbook at ``path``: by its uid, or else by where it lay.

    ``uid`` is that of a logbook that is open, whose bytes may not be looked at; without it, it is looked for in them.
    """
    wanted = Path(os.path.realpath(path))
    own = [folder for folder in _folders() if folder.name == uid] if uid else _named_in(wanted)
    folders = {*own, *(folder for folder in _folders() if backups.place_of(folder) == wanted)}
    found = sorted((one for folder in folders for one in backups.listed(folder)), key=lambda one: one.made, reverse=True)
    return next((one for one in found if one.swatches is not None and not list(_problem_of(one.path))), None)


def others_backed_up() -> list[str]:
    """Where the logbooks lay that there are backups of."""
    return sorted(str(backups.place_of(folder) or folder) for folder in _folders() if backups.kept(folder))


def _named_in(path: Path) -> list[Path]:
    """The folders of backups whose name, a logbook's uid, stands in the bytes of the file."""
    try:
        content = path.read_bytes()
    except OSError:
        return []
    return [folder for folder in _folders() if folder.name.encode() in content]


def restored_name(path: Path) -> Path:
    """A free name beside ``path`` for what is restored of it."""
    return _free_name(path, "restored")


def damaged_name(path: Path) -> Path:
    """A free name beside ``path`` to set it aside under, damaged as it is."""
    return _free_name(path, "damaged")


def restore(backup: Path, target: Path) -> tuple[Path, list[str]]:
    """Restores a backup under a new name, nothing being overwritten; where it lies, and what was damaged and set right in it."""
    said = backups.restore(backup, target)
    lay = backups.place_of(backup.parent)
    if lay is not None:
        _pictures_along(lay, target)  # a backup only names them: they lie beside the logbook
    return Path(os.path.abspath(target)), said


def set_right_as(path: Path, target: Path) -> None:
    """Writes a logbook, which may be open, as the new file ``target``, with what is damaged in it set right from what it keeps
    twice. Raises DamagedError if that is not enough."""
    backups.set_right_as(path, target)
    _pictures_along(path, target)


def _pictures_along(source: Path, target: Path) -> None:
    """Those that are missing are said where they would be shown."""
    with open_logbook(target) as book, book.reading() as connection:
        names = pictures.names_in(connection)
    pictures.bring_along(names, source, target)


def _free_name(path: Path, word: str) -> Path:
    names = (path.with_name(f"{path.stem} {word}{'' if n == 1 else f' {n}'}{SUFFIX}") for n in range(1, 1000))
    return next(name for name in names if not any(os.path.lexists(one) for one in beside_too(name)))


def _folders() -> list[Path]:
    found: list[Path] = []
    for place in _backup_folders():
        with suppress(OSError):  # not there, or not to be read
            found += [folder for folder in place.iterdir() if folder.is_dir()]
    return found


def _reading_problems(book: Logbook, *, deep: bool) -> Iterator[str]:
    """Readings no gauge can count, and with ``deep`` those whose text says something else."""
    with book.reading() as connection:
        found = swatches(connection)
    for swatch in found:
        for taken in swatch.readings:
            if not taken.reading.measures:
                yield (
                    f"Swatch {swatch.tag}: “{taken.reading.text}” is kept as {taken.reading.number:g} over "
                    f"{taken.reading.length_mm:g} mm, so no gauge counts it: open that swatch, change something and save it."
                )
                continue
            if not deep:
                continue
            try:
                again = read_readings(taken.reading.text, taken.direction)
            except LogbookError as error:
                yield f"Swatch {swatch.tag}: {error}"
                continue
            if again != (taken.reading,):
                yield f"Swatch {swatch.tag}: “{taken.reading.text}” does not agree with the figures kept of it."


def _backup_problems(folder: Path) -> Iterator[str]:
    for path, _ in backups.kept(folder):
        yield from _problem_of(path)


def _problem_of(backup: Path) -> Iterator[str]:
    try:
        step = look(backup).step
        with as_sentences(backup), closing(connect(backup, "ro")) as connection:
            check_whole(connection, backup, step)
    except RefusedError as error:
        yield f"Backup: {error}"
