"""What a power cut leaves: a disk put together from what was done to it.

Of what was not synced any part may have reached the disk, in any order, down to sectors of 512 bytes; a name made, changed or
taken away in a folder counts for sure only once that folder was synced.
"""

import os
import random
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from tests.faults.disk import Event

SECTOR = 512


@dataclass(slots=True)
class _File:
    durable: bytes = b""
    pending: list[Event] = field(default_factory=list)
    is_folder: bool = False


@dataclass(frozen=True, slots=True)
class _Naming:
    """Names given (or taken away: None) in one folder at one stroke."""

    folder: str
    names: Mapping[str, _File | None]


class Cut:
    """What is on the disk, what is on its way there, and what a power cut would leave."""

    def __init__(self, root: str, start: Mapping[str, bytes]) -> None:
        self._root = root
        self._on_disk = {name: _File(content) for name, content in start.items()}  # the names as they surely are on the disk
        for folder in {os.path.dirname(name) for name in start} - {root}:
            while folder != root:
                self._on_disk[folder] = _File(is_folder=True)
                folder = os.path.dirname(folder)
        self._seen = dict(self._on_disk)  # as the program sees them
        self._namings: list[_Naming] = []  # since their folders were synced

    def follow(self, event: Event) -> None:
        """Takes in what was done next."""
        name, seen = event.name, self._seen
        if event.kind in ("create", "folder"):
            self._name({name: _File(is_folder=event.kind == "folder")})
        elif event.kind == "delete":
            self._name({name: None})
        elif event.kind == "link":
            self._name({event.to: seen[name]})
        elif event.kind == "rename":
            self._name({name: None, event.to: seen[name]})
        elif event.kind in ("write", "truncate"):
            seen[name].pending.append(event)
        elif event.kind == "sync":
            seen[name].durable = _with(seen[name].durable, seen[name].pending)
            seen[name].pending.clear()
        if event.kind == "sync folder":
            self._sync(name)
        elif event.durable:
            self._sync(os.path.dirname(name))

    def image(self, chance: random.Random) -> dict[str, bytes]:
        """The files of a disk that loses its power now."""
        share = chance.choice((0.0, 0.1, 0.5, 0.9, 1.0))
        torn = chance.random() < 0.5
        named = dict(self._on_disk)
        for naming in self._namings:
            if chance.random() < share:
                _take(named, naming)
        return {
            name: _with(file.durable, [part for event in file.pending for part in _parts(event, share, torn, chance)])
            for name, file in named.items()
            if not file.is_folder and self._leads_to(named, os.path.dirname(name))
        }

    def whole(self) -> dict[str, bytes]:
        """The files as the program sees them."""
        return {name: _with(file.durable, file.pending) for name, file in self._seen.items() if not file.is_folder}

    def _name(self, names: Mapping[str, _File | None]) -> None:
        naming = _Naming(os.path.dirname(next(iter(names))), names)
        _take(self._seen, naming)
        self._namings.append(naming)

    def _sync(self, folder: str) -> None:
        for naming in self._namings:
            if naming.folder == folder:
                _take(self._on_disk, naming)
        self._namings = [naming for naming in self._namings if naming.folder != folder]

    def _leads_to(self, named: Mapping[str, _File], folder: str) -> bool:
        return folder == self._root or (folder in named and self._leads_to(named, os.path.dirname(folder)))


def _take(names: dict[str, _File], naming: _Naming) -> None:
    for name, file in naming.names.items():
        if file is None:
            names.pop(name, None)
        else:
            names[name] = file


def _parts(event: Event, share: float, torn: bool, chance: random.Random) -> Iterator[Event]:
    """The event as far as it reached the disk."""
    if not torn or event.kind != "write":
        if chance.random() < share:
            yield event
        return
    start = event.offset
    end = start + len(event.data)
    while start < end:
        stop = min(end, (start // SECTOR + 1) * SECTOR)
        if chance.random() < share:
            yield Event("write", event.name, start, event.data[start - event.offset : stop - event.offset])
        start = stop


def _with(content: bytes, events: Sequence[Event]) -> bytes:
    if not events:
        return content
    changed = bytearray(content)
    for event in events:
        if event.kind == "truncate":
            del changed[event.offset :]
            changed.extend(bytes(event.offset - len(changed)))
        else:
            changed.extend(bytes(max(0, event.offset - len(changed))))
            changed[event.offset : event.offset + len(event.data)] = event.data
    return bytes(changed)
