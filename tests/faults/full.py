"""The n-th write fails, for every n: a full disk or an I/O error, once or from then on.

Each piece of work is done again and again on a fresh copy, and each time the next one of its writes, syncs, truncations and
deletions is refused. The work must say so in one sentence or be done whole; the logbook must then hold the state before it or
after it; and once there is room, the same open logbook must take the same work.

    python -m tests.faults.full
    python -m tests.faults.full --weakness silent     (a refused write is taken for a success)
"""

import argparse
import shutil
import sqlite3
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from unittest import mock

from logbook import sample
from logbook.book import backups
from logbook.book import logbook as module
from logbook.book.logbook import Logbook, open_logbook
from logbook.book.undo import redo, undo
from logbook.errors import RefusedError
from logbook.tasks.importing import import_into
from tests.faults.disk import FULL, IOERR_WRITE, Disk, shimmed
from tests.faults.work import plain, quick_folder
from tests.support.books import edit, put_worked, small_book

FOREVER = 10**9
WAYS = {
    "full once": (FULL, 1), "full": (FULL, FOREVER), "error once": (IOERR_WRITE, 1), "error": (IOERR_WRITE, FOREVER),
}  # fmt: skip


def _save(book: Logbook) -> None:
    with book.writing("log") as writing:
        put_worked(writing, 99, notes="x" * 5000)


def _import(book: Logbook) -> None:
    heading, *rows = (sample.folder() / sample.SWATCHES).read_bytes().split(b"\r\n")
    sheet = book.path.with_name("sheet.csv")
    sheet.write_bytes(b"\r\n".join((heading, *rows[:2])))
    book.connection.execute("PRAGMA cache_size = 20")  # so that some of it is written before the end
    import_into(book, sheet)


WORK: dict[str, Callable[[Logbook], object]] = {
    "save": _save,
    "edit": lambda book: edit(book, "S-01", notes="y" * 5000),
    "import": _import,
    "undo": undo,
    "redo": redo,
    "back up": lambda book: book.back_up(),
    "save a copy": lambda book: book.save_copy(book.path.with_name("copy.logbook")),
}


@dataclass(slots=True)
class Result:
    """How many requests were refused in how many tries; and what went wrong: how it was refused, and what was found."""

    tries: int = 0
    refused: int = 0
    wrong: list[str] = field(default_factory=list)


def run(works: Sequence[str] = tuple(WORK), *, every_way: bool = True, weakness: str = "") -> Result:
    """Refuses every request of every piece of work: in every way, or in one way each, by turns.

    A weakness is tried till it shows.
    """
    result = Result()
    with quick_folder() as folder, _weakened(weakness):
        for work in works:
            trial = _Trial(work, folder / work)
            for shift in range(len(WAYS) if every_way else 1):
                number = 1
                while trial.refuse(number, list(WAYS)[(number + shift) % len(WAYS)], result):
                    if weakness and result.wrong:
                        return result
                    number += 1
    return result


@contextmanager
def _weakened(weakness: str) -> Iterator[None]:
    if weakness != "silent":
        yield
        return

    @contextmanager
    def silent(bare: Any, *, writes: bool = True) -> Iterator[Any]:
        bare.execute("BEGIN IMMEDIATE" if writes else "BEGIN")
        yield bare
        with suppress(sqlite3.Error):
            bare.execute("COMMIT")
        if bare.in_transaction:
            bare.execute("ROLLBACK")

    with mock.patch.object(module, "transaction", silent):
        yield


class _Trial:
    """One piece of work, the logbook it starts from, and what that holds before and after."""

    def __init__(self, work: str, folder: Path) -> None:
        self.work = work
        self.folder = folder
        folder.mkdir()
        self.start = folder / "start.logbook"
        with small_book(self.start, 3) as book:
            undo(book)
            self.before = plain(book.connection)
        (folder / "undisturbed").mkdir()
        with self._opened(folder / "undisturbed") as book:
            WORK[work](book)
            self.after = plain(book.connection)

    def _opened(self, place: Path) -> Logbook:
        shutil.copyfile(self.start, place / "a.logbook")
        return open_logbook(place / "a.logbook", place / "backups")

    def refuse(self, number: int, way: str, result: Result) -> bool:
        """Refuses the ``number``-th request. Whether there was one."""
        place = self.folder / "place"
        place.mkdir()
        code, refusals = WAYS[way]
        disk = Disk(recording=False, code=code, refusals=refusals)
        with shimmed(disk), self._opened(place) as book:
            disk.asked, disk.refuse_from = 0, number
            said = _said(lambda: WORK[self.work](book))
            refused = disk.asked >= number
            disk.refuse_from = 0
            found = plain(book.connection)
            again = _said(lambda: WORK[self.work](book)) if said is not None and found == self.before else None
        wrong = [*self._wrong(said, found, again), *self._left_wrong(place)]
        result.tries += 1
        result.refused += refused
        result.wrong += [f"{self.work}, {way}, request {number}: {one}" for one in wrong]
        shutil.rmtree(place)
        return refused

    def _wrong(self, said: Exception | None, found: Any, again: Exception | None) -> Iterator[str]:
        if said is None and found != self.after:
            yield "called done, but it is not"
        if said is not None and not isinstance(said, RefusedError):
            yield f"no sentence: {said!r}"
        if found not in (self.before, self.after):
            yield "neither the state before nor the one after"
        if again is not None:
            yield f"not taken when there was room again: {again!r}"

    def _left_wrong(self, place: Path) -> Iterator[str]:
        with open_logbook(place / "a.logbook") as book:
            if plain(book.connection) != self.after:
                yield "at the end, not the state after"
        left = [one.name for one in (*place.rglob("*.part*"), *place.rglob("*-journal"))]
        if left:
            yield f"left {left}"
        for folder in (place / "backups").glob("*"):
            if any(one.swatches != len(self.before[0]) for one in backups.listed(folder)):
                yield "a backup that is not whole"


def _said(work: Callable[[], object]) -> Exception | None:
    try:
        work()
    except Exception as error:
        return error
    return None


def main(arguments: Sequence[str] | None = None) -> int:
    """Prints the counts; exit code 1 if anything went wrong."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--weakness", choices=["", "silent"], default="")
    chosen = parser.parse_args(arguments)
    result = run(every_way=not chosen.weakness, weakness=chosen.weakness)
    print(f"{result.refused} requests refused in {result.tries} tries: {len(result.wrong)} went wrong")
    for wrong in result.wrong[:20]:
        print(wrong)
    return 1 if result.wrong else 0


if __name__ == "__main__":
    sys.exit(main())
