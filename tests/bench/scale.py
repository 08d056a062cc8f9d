"""What each thing costs with many swatches, beside its floor of the same run: ``python -m tests.bench.scale``.

The logbooks hold the sample's swatches over and over, with their readings, each logged by an action of its own. ``--keep FOLDER``
keeps the files there and takes those that are there, as they are then. Times are of the processor, so that other work at the
same time disturbs little; those of a save and an undo are of the clock, for they wait for the disk. ``tests.bench.window``
has the window's.
"""

import argparse
import csv
import io
import resource
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import closing
from dataclasses import replace
from itertools import islice
from pathlib import Path
from typing import Any

from logbook.book.logbook import Logbook, new_logbook, open_logbook
from logbook.book.swatches import swatch_of_tag
from logbook.craft.gauges.nearest_gauge import WantedGauge
from logbook.sheets.csv_file import write_csv
from logbook.sheets.limits import RawSheet, Unusable, limits_of_export
from logbook.sheets.workbook_reading import read_first_and
from logbook.tasks.browsing import Filters, first_swatch_lines, matching_in_any_order, swatch_lines
from logbook.tasks.exporting import export
from logbook.tasks.find import find
from logbook.tasks.importing import carry_out, plan_import
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.nearest import nearest_to
from logbook.tasks.undoing import history, redo, undo
from tests.support.logged import Listed
from tests.support.many import built, sample_swatches, swatches_again

IMPORTED = 5_000


def processor() -> float:
    """The seconds of processor time that this process and those it ran have taken."""
    used = [resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    return sum(one.ru_utime + one.ru_stime for one in used)


def seconds(work: Callable[[], object], runs: int = 1, clock: Callable[[], float] = processor) -> float:
    """How long it takes, in the median of so many runs."""
    taken = []
    for _ in range(runs):
        begun = clock()
        work()
        taken.append(clock() - begun)
    return statistics.median(taken)


def show(what: str, took: float, floor: float, of: str) -> None:
    """One line of the table."""
    print(f"  {what:44}{took * 1000:>11,.1f} ms   {of:34}{floor * 1000:>10,.2f} ms{took / max(floor, 1e-6):>9.1f}", flush=True)


def command(*words: str) -> Callable[[], object]:
    """The program as it is called from a terminal."""
    run = [sys.executable, "-m", "logbook", *words]
    return lambda: subprocess.run(run, check=True, capture_output=True)


def from_the_terminal(path: Path, tag: str) -> None:
    """Look-ups, beside a program that only says its help."""
    floor = seconds(command("--help"), 3)
    book = ("--book", str(path))
    for what, words in (
        (f"find {tag}", ("find", tag)),
        ("chain --swatch", ("chain", "--swatch", tag, "--width", "46")),
        (f"compare {tag} N-000001", ("compare", tag, "N-000001")),
    ):
        show(what, seconds(command(*words, *book), 3), floor, "python that says its help")


def look_ups(book: Logbook, tag: str) -> None:
    """In one process, beside the bare statement."""
    bare = book.connection.execute

    def scan() -> object:
        return bare("SELECT swatch FROM swatch_words WHERE instr(folded, ?) > 0", (tag.lower(),)).fetchall()

    def all_rows() -> object:
        return bare("SELECT * FROM swatch LEFT JOIN swatch_gauges ON swatch = uid ORDER BY date DESC, tag").fetchall()

    floor = seconds(scan, 3)
    show("uids of a word that one swatch has", seconds(lambda: matching_in_any_order(book, Filters(words=tag)), 3), floor, "scan")
    show("find, one found", seconds(lambda: find(book, Filters(words=tag)), 3), floor, "scan")
    floor = seconds(all_rows)
    show("find, all found", seconds(lambda: find(book, Filters())), floor, "select of all rows")
    wanted = WantedGauge(stitch_mm=6.0, row_mm=7.0)
    show("nearest among all", seconds(lambda: nearest_to(book, wanted, Filters())), floor, "select of all rows")
    show("a screenful of the list", seconds(lambda: first_swatch_lines(book, 40), 3), floor, "select of all rows")
    show("all lines of the list", seconds(lambda: swatch_lines(book)), floor, "select of all rows")
    uid = swatch_of_tag(book.connection, tag).uid
    floor = seconds(lambda: bare("SELECT * FROM change WHERE record = ?", (uid,)).fetchall(), 3)
    show("history of a swatch", seconds(lambda: history(book, uid), 3), floor, "select of its own changes")


def writes(book: Logbook, tag: str) -> None:
    """Beside the commit of one row with the same settings."""
    one = swatch_of_tag(book.connection, tag)
    numbers = iter(range(1000))
    with closing(sqlite3.connect(book.path, isolation_level=None)) as bare:
        bare.execute("PRAGMA synchronous = EXTRA")
        bare.execute("CREATE TABLE IF NOT EXISTS bare (number INTEGER)")
        floor = seconds(lambda: bare.execute("INSERT INTO bare VALUES (?)", (next(numbers),)), 9, time.perf_counter)
        bare.execute("DROP TABLE bare")
    show(
        "saving a swatch",
        seconds(lambda: save_swatch(book, replace(one, colour=f"{next(numbers)}")), 9, time.perf_counter),
        floor,
        "commit of one row",
    )
    show("undo", seconds(lambda: undo(book), 9, time.perf_counter), floor, "commit of one row")
    show("redo", seconds(lambda: redo(book), 9, time.perf_counter), floor, "commit of one row")


def sheets(book: Logbook, folder: Path) -> None:
    """Exports, beside csv and openpyxl with the same cells: of the first sheet, and of all sheets."""
    from openpyxl import Workbook

    text, whole = folder / "all.csv", folder / "all.xlsx"
    took_csv = seconds(lambda: export(book, text))
    rows = list(csv.reader(io.StringIO(text.read_text("utf-8-sig"), newline="")))

    def bare_csv() -> None:
        with (folder / "bare.csv").open("w", newline="", encoding="utf-8") as file:
            csv.writer(file, quoting=csv.QUOTE_ALL).writerows(rows)

    show("export as CSV", took_csv, seconds(bare_csv), "csv alone")
    took = seconds(lambda: export(book, whole))
    content = whole.read_bytes()
    read = read_first_and(content, "all", lambda _: True, limits_of_export(len(content)))

    def bare_workbook(sheets: Sequence[RawSheet]) -> None:
        workbook = Workbook(write_only=True)
        for one in sheets:
            sheet = workbook.create_sheet()
            for row in one.rows:
                sheet.append([None if isinstance(cell, Unusable) else cell for cell in row.cells])
        workbook.save(folder / "bare.xlsx")

    show("export as a workbook", took, seconds(lambda: bare_workbook(read[:1])), "openpyxl alone, first sheet")
    show("the same", took, seconds(lambda: bare_workbook((read[0], *read[1]))), "openpyxl alone, all sheets")


def imports(book: Logbook, many: int, coming: Iterator[Any], folder: Path) -> None:
    """New swatches taken in, beside their rows inserted and nothing kept."""
    sheet = folder / "more.csv"
    new = list(islice(coming, many, many + IMPORTED))
    with sheet.open("wb") as stream:
        write_csv(stream, Listed(new))
    planned: list[Any] = []
    reading = seconds(lambda: planned.append(plan_import(book, sheet)))
    writing = seconds(lambda: carry_out(book, planned[0]))
    with closing(sqlite3.connect(book.path)) as source:
        tables = ("swatch", "reading")
        rows = {
            name: source.execute(f"SELECT * FROM {name} ORDER BY rowid DESC LIMIT {IMPORTED * 13}").fetchall() for name in tables
        }
    rows["swatch"] = rows["swatch"][:IMPORTED]
    wanted = {row[0] for row in rows["swatch"]}
    rows["reading"] = [row for row in rows["reading"] if row[1] in wanted]
    with new_logbook(folder / "bare.logbook") as bare:
        bare.connection.execute("PRAGMA foreign_keys = OFF")

        def inserts() -> None:
            bare.connection.execute("BEGIN")
            for name, some in rows.items():
                bare.connection.executemany(f"INSERT INTO {name} VALUES ({', '.join('?' * len(some[0]))})", some)
            bare.connection.execute("COMMIT")

        floor = seconds(inserts)
    show(f"import of {IMPORTED:,}: read and planned", reading, floor, "inserts of those rows")
    show(f"import of {IMPORTED:,}: written", writing, floor, "inserts of those rows")


def backup(book: Logbook, folder: Path) -> None:
    """One beside SQLite's own."""

    def bare() -> None:
        with closing(sqlite3.connect(folder / "backup.sqlite")) as copy:
            book.connection.backup(copy)

    show("a backup, verified", seconds(lambda: book.back_up(again=True)), seconds(bare), "SQLite's backup")


def main() -> None:
    """Prints a table for each size."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--swatches", type=int, nargs="*", default=[1_000, 10_000, 100_000])
    parser.add_argument("--keep", type=Path)
    chosen = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        originals = sample_swatches(Path(name))
        for many in chosen.swatches:
            folder = Path(name) / str(many)
            folder.mkdir()
            path = (chosen.keep or folder) / f"{many}.logbook"
            if not path.exists():
                took = seconds(lambda path=path, many=many: built(path, many, originals).close())  # type: ignore[misc]
                print(f"built in {took:.0f} s")
            print(f"{many:,} swatches, {path.stat().st_size / 1e6:,.0f} MB")
            begun = time.perf_counter()
            with open_logbook(path, folder / "backups") as book:
                print(f"  opened in {(time.perf_counter() - begun) * 1000:,.1f} ms")
                tag = f"N-{many // 2:06d}"
                from_the_terminal(path, tag)
                look_ups(book, tag)
                writes(book, tag)
                sheets(book, folder)
                backup(book, folder)
                imports(book, many, swatches_again(originals), folder)
                undo(book)
            print(f"  most memory so far {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:,.0f} MB")


if __name__ == "__main__":
    main()
