"""The n-th write fails, in short; ``python -m tests.faults.full`` tries every way of failing. And files that may not grow."""

import errno
import os
import signal
import tempfile
from collections.abc import Callable
from pathlib import Path

import pytest

from logbook.book.logbook import Logbook, open_logbook
from logbook.errors import RefusedError
from logbook.tasks.exporting import export
from tests.faults import full
from tests.support.books import held, put_worked, small_book
from tests.support.children import in_child
from tests.support.shim import needs_the_shim


@pytest.mark.long
@needs_the_shim
@pytest.mark.parametrize(("work", "least"), [("save", 60), ("import", 150), ("back up", 40), ("save a copy", 50)])
def test_every_write_may_fail(work: str, least: int) -> None:
    result = full.run((work,), every_way=False)
    assert result.refused > least, "if no write was refused, this shows nothing"
    assert result.wrong == []


@needs_the_shim
def test_a_failure_taken_for_success_would_show() -> None:
    assert full.run(("edit",), every_way=False, weakness="silent").wrong


# A limit on the size of files, which SQLite meets as an error of the disk ------------------------------------------------

resource = pytest.importorskip("resource", reason="limits as on Unix")


def limited(work: Callable[[Callable[[int], None]], None]) -> None:
    """Runs ``work`` in a child with a function that sets how large a file may grow."""

    def under_limits() -> None:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        hard = resource.getrlimit(resource.RLIMIT_FSIZE)[1]
        work(lambda size: resource.setrlimit(resource.RLIMIT_FSIZE, (hard if size < 0 else size, hard)))

    in_child(under_limits)


def log(book: Logbook, number: int) -> None:
    with book.writing("log") as writing:
        put_worked(writing, number, notes="x" * 3000)


def fill(book: Logbook, number: int, states: list[object]) -> None:
    while True:
        states.append(held(book))
        log(book, number + len(states))


def test_a_logbook_that_may_not_grow(tmp_path: Path) -> None:
    path = tmp_path / "a.logbook"
    small_book(path).close()

    def work(limit: Callable[[int], None]) -> None:
        with open_logbook(path) as book:
            for pages in range(12):
                limit(path.stat().st_size + pages * 4096)
                states: list[object] = []
                with pytest.raises(RefusedError, match=r"The disk is full|check that its disk is connected"):
                    fill(book, 1000 * (pages + 1), states)
                assert held(book) == states[-1]
                limit(-1)
                log(book, 1000 * (pages + 1) + 999)

    limited(work)
    with open_logbook(path) as book:
        assert len([row for row in held(book)["swatch"] if row[1].endswith("999")]) == 12


@pytest.mark.parametrize("suffix", [".csv", ".xlsx"])
def test_an_export_that_does_not_fit(
    tmp_path: Path, tmp_path_factory: pytest.TempPathFactory, suffix: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path_factory.mktemp("scraps")))  # where openpyxl leaves some
    target = tmp_path / f"log{suffix}"
    with small_book(tmp_path / "a.logbook", 20) as book:
        export(book, target)
        whole = target.stat().st_size
        target.write_bytes(b"the old one")
        there = sorted(tmp_path.iterdir())
        less = 64 if suffix == ".xlsx" else 1  # the hour that is packed in a workbook makes it some bytes more or less

        def work(limit: Callable[[int], None]) -> None:
            for size in {*range(0, whole, whole // 25), whole - less}:
                limit(size)
                with pytest.raises(RefusedError):
                    export(book, target)
                limit(-1)
                assert target.read_bytes() == b"the old one"
                assert sorted(tmp_path.iterdir()) == there
            export(book, target)

        limited(work)
    assert abs(target.stat().st_size - whole) < 200


@pytest.mark.parametrize("suffix", [".csv", ".xlsx"])
@pytest.mark.parametrize("call", ["fsync", "replace"])
def test_an_export_whose_end_fails(tmp_path: Path, suffix: str, call: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Writing the file is in the test before; this refuses what makes it durable and gives it its name."""
    target = tmp_path / f"log{suffix}"
    target.write_bytes(b"the old one")
    with small_book(tmp_path / "a.logbook", 3) as book:
        there = sorted(tmp_path.iterdir())

        def refuse(*_: object) -> None:
            raise OSError(errno.EIO, "Input/output error")

        monkeypatch.setattr(os, call, refuse)
        with pytest.raises(RefusedError):
            export(book, target)
        monkeypatch.undo()
        assert target.read_bytes() == b"the old one"
        assert sorted(tmp_path.iterdir()) == there
