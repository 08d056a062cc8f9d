"""A power cut at any moment: no acknowledged change may be lost, and no file come out damaged.

A logbook is worked on while every write and sync is recorded. Then, for a random moment, a disk is put together as a power cut
could leave it: of what was not synced, any part may have reached it, in any order, down to sectors of 512 bytes; a name made or
taken away in the folder counts only once the folder was synced. That disk is opened, and must hold what had been acknowledged.

    python -m tests.faults.power --images 20000
    python -m tests.faults.power --images 2000 --weakness synchronous=OFF     (or synchronous=FULL, journal_mode=MEMORY)
"""

import argparse
import random
import shutil
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from unittest import mock

from logbook.book import connection as settings
from logbook.book.checking import check_whole
from logbook.book.copying import digest
from logbook.book.kept_twice import require_kept_alike
from logbook.book.logbook import open_logbook
from logbook.book.schema import STEPS as SCHEMA
from logbook.book.trouble import as_sentences
from logbook.errors import RefusedError
from tests.faults.disk import Disk, Event, shimmed
from tests.faults.work import CYCLE, act, quick_folder
from tests.support.books import small_book

NAME = "a.logbook"
SECTOR = 512
IMAGES_OF_ONE_RECORDING = 1000
STEPS = 12


@dataclass(slots=True)
class Result:
    """How many images lost an acknowledged change, or were damaged; ``rolled_back``: how many had a journal to take back."""

    images: int = 0
    lost: int = 0
    corrupt: int = 0
    rolled_back: int = 0


@dataclass(slots=True)
class _File:
    durable: bytes
    pending: list[Event] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Recording:
    """The logbook's bytes at the start, what was done to the disk, and the digest after each acknowledged step."""

    start: bytes
    events: Sequence[Event]
    states: Sequence[str]


def record(folder: Path, seed: int, weakness: str = "") -> Recording:
    """Works on a logbook in ``folder`` and records it."""
    path = folder / NAME
    small_book(path, 4).close()
    start = path.read_bytes()
    disk = Disk()
    with _weakened(weakness), shimmed(disk), open_logbook(path, folder / "backups") as book:
        if weakness.startswith("journal_mode"):
            book.connection.execute(f"PRAGMA {weakness}")
        few = seed % 2  # with few pages in memory, some are written before the action ends
        book.connection.execute(f"PRAGMA cache_size = {5 if few else 2000}")
        states = [digest(book.connection)]
        for step in range(STEPS):
            act(book, len(CYCLE) * seed + step)
            disk.note("acknowledged")
            states.append(digest(book.connection))
    return Recording(start, [event for event in disk.events if event.kind == "note" or event.name.startswith(NAME)], states)


@contextmanager
def _weakened(weakness: str) -> Iterator[None]:
    levels = {"synchronous=OFF": 0, "synchronous=NORMAL": 1, "synchronous=FULL": 2}
    with mock.patch.dict(settings._SETTINGS, {"synchronous": levels[weakness]} if weakness in levels else {}):
        yield


class _Cut:
    """What is on the disk, what is on its way there, and what a power cut would leave."""

    def __init__(self, start: bytes) -> None:
        first = _File(start)
        self.on_disk = {NAME: first}  # the names as they surely are on the disk
        self.seen = {NAME: first}  # as the program sees them
        self.names: list[tuple[str, _File | None]] = []  # what was done to names since the folder was synced

    def follow(self, event: Event) -> None:
        """Takes in what was done next."""
        if event.kind == "create":
            self.seen[event.name] = _File(b"")
            self.names.append((event.name, self.seen[event.name]))
        elif event.kind == "delete":
            del self.seen[event.name]
            self.names.append((event.name, None))
        elif event.kind in ("write", "truncate"):
            self.seen[event.name].pending.append(event)
        elif event.kind == "sync":
            file = self.seen[event.name]
            file.durable = _with(file.durable, file.pending)
            file.pending.clear()
        if event.durable:
            _name(self.on_disk, self.names)
            self.names.clear()

    def image(self, chance: random.Random) -> dict[str, bytes]:
        """The files of a disk that loses its power now."""
        share = chance.choice((0.0, 0.1, 0.5, 0.9, 1.0))
        torn = chance.random() < 0.5
        named = dict(self.on_disk)
        _name(named, [one for one in self.names if chance.random() < share])
        return {
            name: _with(file.durable, [part for event in file.pending for part in _parts(event, share, torn, chance)])
            for name, file in named.items()
        }


def _name(names: dict[str, _File], done: Sequence[tuple[str, _File | None]]) -> None:
    for name, file in done:
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
    changed = bytearray(content)
    for event in events:
        if event.kind == "truncate":
            del changed[event.offset :]
            changed.extend(bytes(event.offset - len(changed)))
        else:
            changed.extend(bytes(max(0, event.offset - len(changed))))
            changed[event.offset : event.offset + len(event.data)] = event.data
    return bytes(changed)


def run(images: int, weakness: str = "", seed: int = 0) -> Result:
    """Opens ``images`` images and counts what went wrong."""
    result = Result()
    while result.images < images:
        with quick_folder() as folder:
            (folder / "work").mkdir()
            recording = record(folder / "work", seed, weakness)
            _try_images(recording, min(IMAGES_OF_ONE_RECORDING, images - result.images), folder, result, random.Random(seed))
        seed += 1
    return result


def _try_images(recording: Recording, count: int, folder: Path, result: Result, chance: random.Random) -> None:
    events = recording.events
    turns = [place for place, event in enumerate(events) if event.kind != "write"]
    moments = Counter(
        chance.randrange(len(events)) if number % 2 else min(len(events) - 1, chance.choice(turns) + chance.randrange(2))
        for number in range(count)
    )
    cut = _Cut(recording.start)
    acknowledged = 0
    found: dict[int, str] = {}  # a disk that came up before is not opened again
    for moment, event in enumerate(events):
        cut.follow(event)
        acknowledged += event.kind == "note"
        for number in range(moments[moment]):
            image = cut.image(chance)
            same = hash((acknowledged, frozenset(image.items())))
            if same not in found:
                found[same] = _found(folder / f"{moment} {number}", image, recording.states[acknowledged : acknowledged + 2])
            result.images += 1
            result.rolled_back += f"{NAME}-journal" in image
            result.lost += found[same] == "lost"
            result.corrupt += found[same] == "corrupt"


def _found(place: Path, image: dict[str, bytes], expected: Sequence[str]) -> str:
    """What opening the image shows: ``sound``, ``lost`` or ``corrupt``."""
    place.mkdir()
    for name, data in image.items():
        (place / name).write_bytes(data)
    try:
        with open_logbook(place / NAME) as book, as_sentences(book.path):
            check_whole(book.connection, book.path, len(SCHEMA))
            require_kept_alike(book.connection)
            return "sound" if digest(book.connection) in expected else "lost"
    except RefusedError:
        return "corrupt"
    finally:
        shutil.rmtree(place)


def main(arguments: Sequence[str] | None = None) -> int:
    """Prints the counts; exit code 1 if anything was lost."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--images", type=int, default=20_000)
    parser.add_argument("--weakness", default="")
    parser.add_argument("--seed", type=int, default=0)
    chosen = parser.parse_args(arguments)
    result = run(chosen.images, chosen.weakness, chosen.seed)
    print(f"{result.images} power cuts, {result.rolled_back} with a journal left: {result.lost} lost, {result.corrupt} corrupt")
    return 1 if result.lost or result.corrupt else 0


if __name__ == "__main__":
    sys.exit(main())
