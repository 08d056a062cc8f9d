"""A power cut at any moment: no acknowledged change may be lost, and no file come out damaged.

A logbook is worked on, backed up, restored, copied and exported while every write and sync is recorded. Then, for a random
moment, a disk is put together as a power cut could leave it (``cut``). The logbook on it is opened, and must hold what had been
acknowledged. Every other file that has its name, a backup, an export, what was restored or set aside, must be as before the work
that was being done or as after it; nothing that is on both sides of it may be missing, nor a backup pruned before the next is
there.

    python -m tests.faults.power --images 20000
    python -m tests.faults.power --images 2000 --weakness synchronous=OFF     (or another of WEAKNESSES)
"""

import argparse
import os
import random
import shutil
import sys
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import ExitStack, closing, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from unittest import mock

from logbook.book import backups, copying
from logbook.book import connection as settings
from logbook.book.checking import check_whole
from logbook.book.copying import digest
from logbook.book.kept_twice import require_kept_alike
from logbook.book.logbook import Logbook, open_logbook
from logbook.book.schema import STEPS as SCHEMA
from logbook.book.set_aside import set_aside
from logbook.book.trouble import as_sentences
from logbook.errors import RefusedError
from logbook.tasks.exporting import export
from tests.faults.cut import Cut
from tests.faults.disk import Disk, Event, shimmed
from tests.faults.files import recorded
from tests.faults.work import CYCLE, act, in_place, quick_folder
from tests.support.books import small_book

NAME = "a.logbook"
BACKUPS = "backups"
WORN = "worn.logbook"
RESTORED = "restored.logbook"
IMAGES_OF_ONE_RECORDING = 1000
LEVELS = {"synchronous=OFF": 0, "synchronous=NORMAL": 1, "synchronous=FULL": 2}
LEFT_OUT = {"files-unsynced": "sync", "folders-unsynced": "sync folder"}
WEAKNESSES = ("", *LEVELS, "journal_mode=MEMORY", *LEFT_OUT, "in-place")
Files = Mapping[str, bytes]


def _restore(book: Logbook) -> None:
    assert book.backup_folder is not None
    backups.restore(backups.kept(book.backup_folder / book.uid)[0][0], book.path.with_name(RESTORED))


def _set_aside(book: Logbook) -> None:
    set_aside(*(book.path.with_name(name) for name in (WORN, f"damaged {WORN}", RESTORED)))


BESIDE: Sequence[tuple[str, Callable[[Logbook], object]]] = (
    ("export CSV", lambda book: export(book, book.path.with_name("all.csv"))),
    ("back up", lambda book: book.back_up()),
    ("export workbook", lambda book: export(book, book.path.with_name("all.xlsx"))),
    ("restore", _restore),
    ("save a copy", lambda book: book.save_copy(book.path.with_name("copy.logbook"))),
    ("set aside", _set_aside),
    ("export CSV again", lambda book: export(book, book.path.with_name("all.csv"))),
    ("export workbook again", lambda book: export(book, book.path.with_name("all.xlsx"))),
)
"""What is done between the pieces of work on the logbook itself, which are those of CYCLE."""


@dataclass(slots=True)
class Result:
    """How many images lost an acknowledged change or file, or held a damaged one; ``rolled_back``: how many had a journal to take
    back; ``beside``: how many were cut in each work that is not on the logbook itself."""

    images: int = 0
    lost: int = 0
    corrupt: int = 0
    rolled_back: int = 0
    beside: Counter[str] = field(default_factory=Counter)


@dataclass(frozen=True, slots=True)
class Recording:
    """What was done to the disk from ``start`` on, and after each acknowledged work the logbook's digest and the other files."""

    root: str
    start: Files
    events: Sequence[Event]
    states: Sequence[str]
    files: Sequence[Files]
    works: Sequence[str]


def record(folder: Path, seed: int, weakness: str = "") -> Recording:
    """Works on a logbook in ``folder``, an empty one, and records it."""
    path = folder / NAME
    _prepare(path, with_backups=seed % 2 == 0)
    root, start = str(folder), _files(folder)
    disk = Disk()
    works: list[str] = []
    with ExitStack() as stack:
        stack.enter_context(_weakened(weakness))
        stack.enter_context(shimmed(disk))
        stack.enter_context(recorded(disk, folder, LEFT_OUT.get(weakness, "")))
        book = stack.enter_context(open_logbook(path, folder / BACKUPS))
        if weakness.startswith("journal_mode"):
            book.connection.execute(f"PRAGMA {weakness}")
        few = seed % 2  # with few pages in memory, some are written before the action ends
        book.connection.execute(f"PRAGMA cache_size = {5 if few else 2000}")
        book.now = "2026-05-31T12:00:00.000+00:00".__str__
        states, files = [digest(book.connection)], [_named(start)]
        for step, (what, beside) in enumerate(BESIDE):
            number = len(CYCLE) * seed + step
            for name, work in (("", lambda number=number: act(book, number)), (what, lambda beside=beside: beside(book))):
                work()
                disk.note("acknowledged")
                works.append(name)
                states.append(digest(book.connection))
                files.append(_named(_files(folder)))
    if not weakness:
        _require_all_recorded(root, start, disk.events, _files(folder))
        _require_good_backups(folder, states)
    return Recording(root, start, disk.events, states, files, works)


def _prepare(path: Path, *, with_backups: bool) -> None:
    """A logbook, and a damaged one to be set aside; perhaps backups of an earlier hour, so that the next ones push some out."""
    with small_book(path, 4) as book:
        uid = book.uid
    place = path.parent / BACKUPS / uid
    for minute in range(11 if with_backups else 0):
        place.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, place / f"{4:010d}-20260531T10{minute:02d}00.000Z.logbook")
    worn = bytearray(path.read_bytes())
    worn[4096:8192] = bytes(4096)
    path.with_name(WORN).write_bytes(worn)
    path.with_name(f"{WORN}-journal").write_bytes(b"what a kill left")


def _files(folder: Path) -> Files:
    return {str(path): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def _named(files: Files) -> Files:
    """Those that count: not the logbook itself, which is opened, nor what is still being made."""
    return {
        name: content
        for name, content in files.items()
        if not os.path.basename(name).startswith(".") and os.path.basename(name) not in (NAME, f"{NAME}-journal")
    }


def _require_all_recorded(root: str, start: Files, events: Sequence[Event], found: Files) -> None:
    """What went past the records would not be tried."""
    cut = Cut(root, start)
    for event in events:
        if event.kind != "note":
            cut.follow(event)
    assert cut.whole() == found


def _require_good_backups(folder: Path, states: Sequence[str]) -> None:
    for place in (folder / BACKUPS).iterdir():
        for path, _ in backups.kept(place):
            with closing(settings.connect(path, "ro")) as connection:
                check_whole(connection, path, len(SCHEMA))
                assert digest(connection) in states


@contextmanager
def _weakened(weakness: str) -> Iterator[None]:
    with (
        mock.patch.dict(settings._SETTINGS, {"synchronous": LEVELS[weakness]} if weakness in LEVELS else {}),
        mock.patch.object(copying, "new_file", in_place if weakness == "in-place" else copying.new_file),
    ):
        yield


def run(images: int, weakness: str = "", seed: int = 0) -> Result:
    """Looks at ``images`` images and counts what went wrong."""
    result = Result()
    while result.images < images:
        with quick_folder() as folder:
            work = folder.resolve() / "work"
            work.mkdir()
            recording = record(work, seed, weakness)
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
    cut = Cut(recording.root, recording.start)
    book, journal = (os.path.join(recording.root, name) for name in (NAME, f"{NAME}-journal"))
    done = 0
    found: dict[int, str] = {}  # a logbook that came up before is not opened again
    for moment, event in enumerate(events):
        if event.kind == "note":
            done += 1
        else:
            cut.follow(event)
        for number in range(moments[moment]):
            image = cut.image(chance)
            same = hash((done, image.get(book), image.get(journal)))
            if same not in found:
                found[same] = _opened(folder / f"{moment} {number}", image, recording.states[done : done + 2])
            verdicts = {found[same], _beside(image, recording, done)}
            result.images += 1
            result.rolled_back += journal in image
            result.beside[recording.works[min(done, len(recording.works) - 1)]] += 1
            result.lost += "lost" in verdicts
            result.corrupt += "corrupt" in verdicts


def _opened(place: Path, image: Files, expected: Sequence[str]) -> str:
    """What opening the logbook shows: ``sound``, ``lost`` or ``corrupt``."""
    place.mkdir()
    for name, data in image.items():
        if os.path.basename(name).startswith(NAME):
            (place / os.path.basename(name)).write_bytes(data)
    try:
        with open_logbook(place / NAME) as book, as_sentences(book.path):
            check_whole(book.connection, book.path, len(SCHEMA))
            require_kept_alike(book.connection)
            return "sound" if digest(book.connection) in expected else "lost"
    except RefusedError:
        return "corrupt"
    finally:
        shutil.rmtree(place)


def _beside(image: Files, recording: Recording, done: int) -> str:
    """The same of the other files that have their names, beside how they were before and after the work that was cut."""
    before, after = recording.files[done], recording.files[min(done + 1, len(recording.works))]
    there = _named(image)
    for name, content in there.items():
        if content not in (before.get(name), after.get(name)) and not _pruned_before(name, content, recording.files[:done]):
            return "corrupt"
    both = {*before.values()} & {*after.values()}
    if before.keys() & after.keys() - there.keys() or not both <= {*there.values()}:
        return "lost"
    pruned = {name for name in before.keys() - after.keys() if _is_backup(name)}
    return "lost" if pruned - there.keys() and after.keys() - before.keys() - there.keys() else "sound"


def _pruned_before(name: str, content: bytes, earlier: Sequence[Files]) -> bool:
    """Whether it is a good backup that was pruned and is there again, which does no harm."""
    return _is_backup(name) and any(files.get(name) == content for files in earlier)


def _is_backup(name: str) -> bool:
    return BACKUPS in name.split(os.sep) and name.endswith(backups.SUFFIX)


def main(arguments: Sequence[str] | None = None) -> int:
    """Prints the counts; exit code 1 if anything was lost."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--images", type=int, default=20_000)
    parser.add_argument("--weakness", choices=WEAKNESSES, default="")
    parser.add_argument("--seed", type=int, default=0)
    chosen = parser.parse_args(arguments)
    result = run(chosen.images, chosen.weakness, chosen.seed)
    print(f"{result.images} power cuts, {result.rolled_back} with a journal left: {result.lost} lost, {result.corrupt} corrupt")
    print("beside the logbook:", ", ".join(f"{work} {number}" for work, number in result.beside.most_common() if work))
    return 1 if result.lost or result.corrupt else 0


if __name__ == "__main__":
    sys.exit(main())
