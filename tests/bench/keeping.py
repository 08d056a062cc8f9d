"""What keeping the logbook safe costs whoever waits: ``python -m tests.bench.keeping --swatches 10000``.

The first save after a start, with a backup due, beside a bare commit of the same run; two look-ups from the command line; a
backup and a thorough check, for which nobody waits. Seconds of the clock; the machine should be at rest.
"""

import argparse
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from pathlib import Path

from logbook.book.logbook import Logbook, new_logbook, open_logbook
from logbook.book.swatches import put_swatch, put_yarn, swatch_of_tag
from logbook.book.thorough_check import check_thoroughly
from logbook.craft.swatches.yarn import Yarn
from logbook.tasks.logging_swatches import save_swatch
from tests.support.books import put_worked


def timed(work: Callable[[], object]) -> float:
    """The milliseconds it took."""
    begun = time.perf_counter()
    work()
    return (time.perf_counter() - begun) * 1000


def built(path: Path, swatches: int) -> None:
    """A logbook of so many swatches, logged in steps of a hundred, each hundred of a yarn of its own."""
    with new_logbook(path) as book:
        for start in range(0, swatches, 100):
            with book.writing("log") as writing:
                yarn = Yarn(name=f"yarn {start}", ball_grams=50.0, ball_metres=120.0)
                yarn = replace(yarn, uid=put_yarn(writing, yarn))
                for number in range(start, min(start + 100, swatches)):
                    put_worked(writing, number + 1)
                    one = swatch_of_tag(writing.connection, f"S-{number + 1:02d}")
                    put_swatch(writing, replace(one, yarn=yarn))


def save(book: Logbook, colour: str) -> None:
    """One swatch saved as a form does."""
    one = swatch_of_tag(book.connection, "S-01")
    save_swatch(book, replace(one, colour=colour))


def bare_commit(path: Path, number: int) -> float:
    """One row changed, with the same settings and nothing else."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA synchronous = EXTRA")
        return timed(lambda: connection.execute("UPDATE swatch SET notes = ? WHERE rowid = 1", (f"{number}",)))


def command(*words: str) -> float:
    """The median of five runs."""
    run = [sys.executable, "-m", "logbook", *words]
    return statistics.median(timed(lambda: subprocess.run(run, check=True, capture_output=True)) for _ in range(5))


def main() -> None:
    """Prints one line for each."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--swatches", type=int, default=10_000)
    chosen = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        path, backups = Path(name) / "a.logbook", Path(name) / "backups"
        built(path, chosen.swatches)
        first = []
        for start in range(10):
            with open_logbook(path, backups) as book:
                first.append(timed(lambda book=book, start=start: save(book, f"{start}")))  # type: ignore[misc]
                backup = timed(book.back_up)
        bare = Path(name) / "bare.logbook"
        with closing(sqlite3.connect(path)) as source, closing(sqlite3.connect(bare)) as copy:
            source.backup(copy)
        floor = statistics.median(bare_commit(bare, number) for number in range(10))
        print(f"first save after a start: {statistics.median(first):.1f} ms in the median of ten, a bare commit {floor:.1f} ms")
        print(f"python that does nothing: {command('--help'):.0f} ms")
        print(f"find WORDS: {command('find', 'S-0000', '--book', str(path)):.0f} ms")
        print(f"chain --swatch: {command('chain', '--swatch', 'S-01', '--width', '46', '--book', str(path)):.0f} ms")
        print(f"a backup: {backup:.0f} ms; a thorough check: {timed(lambda: check_thoroughly(path)):.0f} ms")


if __name__ == "__main__":
    main()
