"""The child that is killed. A module of its own, so that a server process can have it ready and fork from there."""

from collections.abc import Iterator
from contextlib import contextmanager
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any
from unittest import mock

from logbook.book import connection
from logbook.book.logbook import open_logbook
from tests.faults.work import CYCLE, act

STEPS = len(CYCLE) + 2


def work(path: Path, backup_folder: Path, said: Connection, weakness: str) -> None:
    """The child: works until it is killed or done."""
    with _weakened(weakness), open_logbook(path, backup_folder) as book:
        book.connection.execute("PRAGMA cache_size = 20")
        said.send(0)
        for step in range(STEPS):
            if weakness == "early":
                said.send(step + 1)
            act(book, step)
            if weakness != "early":
                said.send(step + 1)


@contextmanager
def _weakened(weakness: str) -> Iterator[None]:
    @contextmanager
    def in_parts(bare: Any, *, writes: bool = True) -> Iterator[Any]:
        yield bare

    with mock.patch("logbook.book.logbook.transaction", in_parts if weakness == "parts" else connection.transaction):
        yield
