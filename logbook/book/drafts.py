"""Drafts: what is typed in a window and not saved, kept in a file of that window's own until it is saved or thrown away.

    <logbook's uid>/<window>.json     what is typed, and what each field held when it was taken in hand
    <logbook's uid>/<window>.lock     locked while the window lives: what lies beside a lock that can be had was left behind

Only what was written before the end counts, however the window ends: a display that dies lets no program say goodbye.
"""

import json
from collections.abc import Mapping, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any, NamedTuple

from logbook.book.changes import new_uid
from logbook.disk import FileLock, private_folder, write_in_place

NEW = "new"
"""The record of a draft that no record of the logbook is in hand for."""
_VERSION = 1
_ENDING, _LOCK = ".json", ".lock"


class Draft(NamedTuple):
    """What is typed in one form. ``page`` says which form, ``record`` is a uid or NEW, ``name`` what the record is called,
    ``units`` are those that lengths without a unit are in; ``typed`` and ``opened`` have a text for every field."""

    page: str
    record: str
    name: str
    units: str
    typed: Mapping[str, str]
    opened: Mapping[str, str]

    @property
    def is_new(self) -> bool:
        """Whether no record of the logbook is in hand for it."""
        return self.record == NEW


class DraftFile:
    """The drafts of one living window; the file is there only while something is typed."""

    def __init__(self, folder: Path) -> None:
        self._folder, self._name = folder, new_uid()
        self._lock: FileLock | None = None

    def keep(self, drafts: Sequence[Draft]) -> None:
        """From now on these are what is kept. Raises OSError if they can't be; then what was kept is kept still."""
        if not drafts:
            self.close()
            return
        if self._lock is None:
            private_folder(self._folder)
            self._lock = FileLock(self._folder / (self._name + _LOCK))
        write_in_place(self._folder / (self._name + _ENDING), _content(drafts))

    def close(self, *, leave: bool = False) -> None:
        """Nothing is kept any more; with ``leave`` what is kept is left behind for the next window."""
        if self._lock is not None:
            if not leave:
                (self._folder / (self._name + _ENDING)).unlink(missing_ok=True)
            self._lock.release(remove=not leave)
            self._lock = None


class LeftBehind:
    """The drafts that a dead window left, in the hands of this process alone until it lets go of them."""

    def __init__(self, path: Path, lock: FileLock, drafts: Sequence[Draft]) -> None:
        self._path, self._lock = path, lock
        self.drafts = list(drafts)

    def drop(self, draft: Draft) -> None:
        """This one was taken up or thrown away. Raises OSError if that can't be written down."""
        left = [one for one in self.drafts if one is not draft]
        if left:
            write_in_place(self._path, _content(left))
        else:
            self._path.unlink(missing_ok=True)
        self.drafts = left

    def let_go(self) -> None:
        """What is left waits for the next window."""
        self._lock.release(remove=not self.drafts)


def left_behind(folder: Path) -> tuple[list[LeftBehind], list[Path]]:
    """What dead windows left in ``folder``, the oldest first; and the files there that can't be read, which stay as they are."""
    found, unreadable = [], []
    try:
        paths = sorted(folder.glob(f"*{_ENDING}"), key=lambda path: path.stat().st_mtime_ns)
    except OSError:
        return [], []
    for path in paths:
        try:
            lock = FileLock(path.with_suffix(_LOCK))
        except OSError:
            unreadable.append(path)
            continue
        if not lock.taken:
            continue
        try:
            found.append(LeftBehind(path, lock, _read(path)))
        except (OSError, ValueError, LookupError, TypeError, RecursionError):
            unreadable.extend([path] if path.exists() else [])
            lock.release(remove=not path.exists())
    for lone in folder.glob(f"*{_LOCK}"):
        if not lone.with_suffix(_ENDING).exists():
            with suppress(OSError):
                FileLock(lone).release(remove=True)
    return found, unreadable


def _content(drafts: Sequence[Draft]) -> bytes:
    said = [
        {
            "page": one.page,
            "record": one.record,
            "name": one.name,
            "units": one.units,
            "fields": {key: {"typed": text, "opened": one.opened[key]} for key, text in one.typed.items()},
        }
        for one in drafts
    ]
    return json.dumps({"version": _VERSION, "drafts": said}, indent=1).encode()


def _read(path: Path) -> list[Draft]:
    """Raises ValueError, LookupError or TypeError if it is not what ``_content`` writes."""
    found = json.loads(path.read_bytes())
    if found["version"] != _VERSION:
        raise ValueError
    return [_draft(one) for one in found["drafts"]]


def _draft(said: Any) -> Draft:
    fields = said["fields"]
    typed = {key: _text(field["typed"]) for key, field in fields.items()}
    opened = {key: _text(field["opened"]) for key, field in fields.items()}
    page, record, name, units = (_text(said[key]) for key in ("page", "record", "name", "units"))
    return Draft(page, record, name, units, typed, opened)


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise TypeError
    return value
