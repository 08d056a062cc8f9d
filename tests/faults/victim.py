"""The children that are killed. A module of its own, so that a server process can have it ready and fork from there."""

import os
import random
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager, suppress
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any
from unittest import mock

from logbook.book import backups, connection, copying
from logbook.book.logbook import Logbook, open_logbook
from logbook.book.undo import undo
from logbook.errors import RefusedError
from logbook.tasks.merging import merge
from tests.faults.work import CYCLE, act, in_place
from tests.support.books import put_worked

STEPS = len(CYCLE) + 2
MOST_SAVES = 60
PHASES = ("copying", "verifying", "naming", "pruning")


def work(path: Path, backup_folder: Path, said: Connection, weakness: str) -> None:
    """Works until it is killed or done."""
    with _weakened(weakness), open_logbook(path, backup_folder) as book:
        book.connection.execute("PRAGMA cache_size = 20")
        said.send(0)
        for step in range(STEPS):
            if weakness == "early":
                said.send(step + 1)
            act(book, step)
            if weakness != "early":
                said.send(step + 1)


MERGES = 4
"""How often the child merges and undoes it, by turns."""


def merge_and_undo(path: Path, other: Path, backup_folder: Path, said: Connection, weakness: str) -> None:
    """Merges another logbook, undoes it, merges it again."""
    with _weakened(weakness), open_logbook(path, backup_folder) as book:
        book.connection.execute("PRAGMA cache_size = 20")
        for number in range(MERGES):
            said.send(number)
            if number % 2:
                undo(book)
            else:
                merge(book, other, "theirs")
        said.send(MERGES)


@contextmanager
def _weakened(weakness: str) -> Iterator[None]:
    @contextmanager
    def in_parts(bare: Any, *, writes: bool = True) -> Iterator[Any]:
        yield bare

    with mock.patch("logbook.book.logbook.transaction", in_parts if weakness == "parts" else connection.transaction):
        yield


def back_up_and_save(path: Path, backup_folder: Path, said: Connection, weakness: str) -> None:
    """Backs up in one thread until it is killed, saying each phase as it begins, and saves now and then in another."""
    lock = threading.Lock()

    def say(what: str | int) -> None:
        with lock:
            said.send(what)

    with open_logbook(path, backup_folder) as book, _phases_said(say), ExitStack() as stack:
        if weakness == "in-place":
            stack.enter_context(mock.patch.object(copying, "new_file", in_place))
        threading.Thread(target=_back_up, args=(path, backup_folder), daemon=True).start()
        chance = random.Random(os.getpid())
        for number in range(MOST_SAVES):
            time.sleep(chance.random() * 0.6)
            save(book, number)
            say(number + 1)
        threading.Event().wait()


def save(book: Logbook, number: int) -> None:
    """One of the saves beside the backups."""
    with book.writing(f"log {number}") as writing:
        put_worked(writing, 1000 + number, notes="x" * 300)


def _back_up(path: Path, backup_folder: Path) -> None:
    with open_logbook(path, backup_folder) as book:
        while True:
            with suppress(RefusedError):  # a save went before it too often
                book.back_up(again=True)


@contextmanager
def _phases_said(say: Callable[[str], None]) -> Iterator[None]:
    def saying(phase: str, work: Callable[..., Any]) -> Callable[..., Any]:
        def first_said(*arguments: Any) -> Any:
            say(phase)
            return work(*arguments)

        return first_said

    places = ((copying, "_copy"), (copying, "check_whole"), (copying, "_give_name"), (backups, "prune"))
    with ExitStack() as stack:
        for phase, (module, name) in zip(PHASES, places, strict=True):
            stack.enter_context(mock.patch.object(module, name, saying(phase, getattr(module, name))))
        yield
