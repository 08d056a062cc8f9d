"""Damaged logbooks: whatever is in the file, a sentence or the very content it had, and never a byte changed by looking.

python -m tests.faults.damage --mutants 20000
python -m tests.faults.damage --weakness trusting     (records and kept changes are not compared)
"""

import argparse
import random
import sqlite3
import sys
import traceback
import uuid
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from itertools import chain, count
from pathlib import Path
from typing import Any
from unittest import mock

from logbook.book import thorough_check
from logbook.book.backups import restore
from logbook.book.changes import changes_of_record
from logbook.book.logbook import open_logbook
from logbook.book.pieces import made_pieces, matching_pieces, planned_pieces
from logbook.book.running_digest import reckon_anew
from logbook.book.search import Filters, matching
from logbook.book.swatches import swatches
from logbook.book.thorough_check import check_thoroughly
from logbook.book.undo import undo_state
from logbook.errors import RefusedError
from tests.faults.work import act, quick_folder
from tests.support.books import put_planned_and_made, records, small_book

PAGE = 4096


@dataclass(slots=True)
class Result:
    """How many files were opened; of those how many were refused and how many good; how many were set right; what went wrong."""

    files: int = 0
    refused: int = 0
    good: int = 0
    set_right: int = 0
    wrong: list[str] = field(default_factory=list)


def start(folder: Path) -> bytes:
    """The bytes of a logbook with some history, the same each time."""
    path = folder / "start.logbook"
    chance = random.Random(0)
    uids = (uuid.UUID(int=chance.getrandbits(128), version=4) for _ in count())
    with mock.patch("uuid.uuid4", side_effect=uids), small_book(path, 4) as book:
        for step in range(6):
            act(book, step)
        with book.writing("plan") as writing:
            put_planned_and_made(writing, swatches(writing.connection)[0].uid, 1)
        book.connection.execute("UPDATE action SET at = '2026-05-31T12:00:00.000+00:00'")
        reckon_anew(book.connection)
    return path.read_bytes()


def _flipped(data: bytearray, chance: random.Random) -> None:
    for _ in range(chance.choice((1, 1, 2, 4, 16, 64))):
        data[chance.randrange(len(data))] ^= 1 << chance.randrange(8)


def _other_bytes(data: bytearray, chance: random.Random) -> None:
    for _ in range(chance.choice((1, 2, 8))):
        data[chance.randrange(len(data))] = chance.choice((0, 0xFF, 0x7F, 0x80, chance.randrange(256)))


def _header(data: bytearray, chance: random.Random) -> None:
    data[chance.randrange(100)] = chance.randrange(256)


def _page_header(data: bytearray, chance: random.Random) -> None:
    """Where a page says what it is and where its cells are."""
    data[chance.randrange(len(data) // PAGE) * PAGE + chance.randrange(40)] = chance.randrange(256)


def _blank(data: bytearray, chance: random.Random) -> None:
    length = chance.choice((16, 512, PAGE))
    place = chance.randrange(len(data) - length)
    place -= place % length
    data[place : place + length] = bytes(length)


def _swapped(data: bytearray, chance: random.Random) -> None:
    one, other = (chance.randrange(len(data) // PAGE) * PAGE for _ in range(2))
    data[one : one + PAGE], data[other : other + PAGE] = data[other : other + PAGE], data[one : one + PAGE]


def _letter(data: bytearray, chance: random.Random) -> None:
    """A letter of a text changed: pages stay sound."""
    words = (
        b"washed", b"repeats", b"rows", b"do", b"swatch", b"null", b"stitch_pattern", b"vest", b"panels", b"CREATE",
        b"\xc3\x89tang",
    )  # fmt: skip
    word = chance.choice(words)
    place = data.find(word, chance.randrange(len(data)))
    if place >= 0:
        data[place + chance.randrange(len(word))] = chance.choice((ord("x"), ord('"'), 0xFF, 0))


WAYS: tuple[Callable[[bytearray, random.Random], None], ...] = (
    _flipped, _flipped, _other_bytes, _header, _page_header, _blank, _swapped, _letter,
)  # fmt: skip


def mutants(data: bytes, how_many: int, seed: int) -> Iterator[bytes]:
    """Damaged copies of a logbook."""
    chance = random.Random(seed)
    for number in range(how_many):
        changed = bytearray(data)
        WAYS[number % len(WAYS)](changed, chance)
        yield bytes(changed)


def truncations(data: bytes) -> Iterator[bytes]:
    """Every truncation at or near a page border, and in the header."""
    for border in range(0, len(data) + 1, PAGE):
        for size in (border - 512, border - 1, border, border + 1, border + 100):
            if 0 <= size < len(data):
                yield data[:size]
    yield from (data[:size] for size in (8, 15, 16, 18, 60, 99))


def content_of(connection: sqlite3.Connection) -> Any:
    """All records, all kept changes, and what is searched in."""
    changes = [connection.execute(f"SELECT * FROM {table} ORDER BY 1").fetchall() for table in ("action", "change")]
    return records(connection), changes


def try_file(folder: Path, data: bytes, number: int, result: Result, content: Any) -> None:
    """Opens a file, reads all there is, checks it, and notes what went wrong: called sound, it must hold the very ``content``."""
    path = folder / "a.logbook"
    path.write_bytes(data)
    result.files += 1
    good = _checked(path, number, result)
    _read_all(path, number, result)
    if path.read_bytes() != data and data[18:20] == b"\1\1":  # one in write-ahead mode is taken out of that by opening it
        result.wrong.append(f"{number}: its bytes were changed")
    if good and _content_in(path) != content:
        result.wrong.append(f"{number}: called sound with other content")
    if number % 10 == 0:
        _try_restore(path, number, result, content)
    for left in folder.iterdir():
        if left != path:
            result.wrong.append(f"{number}: {left.name} was left")
        left.unlink()


def _content_in(path: Path) -> Any:
    with open_logbook(path) as book:
        return content_of(book.connection)


@contextmanager
def _said(number: int, result: Result) -> Iterator[None]:
    """Every refusal is a sentence, and nothing else may be raised."""
    try:
        yield
    except RefusedError as error:
        if "\n" in str(error) or len(str(error)) > 400:
            result.wrong.append(f"{number}: no sentence: {error}")
    except Exception:
        result.wrong.append(f"{number}: {traceback.format_exc()}")


def _checked(path: Path, number: int, result: Result) -> bool:
    before = result.good
    with _said(number, result):
        open_logbook(path).close()
        check_thoroughly(path)
        result.good += 1
    result.refused += result.good == before
    return result.good > before


def _read_all(path: Path, number: int, result: Result) -> None:
    with _said(number, result), open_logbook(path) as book, book.reading() as connection:
        for one in swatches(connection):
            changes_of_record(connection, one.uid)
        undo_state(connection)
        matching(connection, Filters(words="moss s-", yarn="tang", stitch="shells"))
        planned_pieces(connection)
        made_pieces(connection)
        matching_pieces(connection, "vest moss")


def _try_restore(path: Path, number: int, result: Result, content: Any) -> None:
    """What is restored holds what was there before the damage, all of it, or it is refused."""
    target = path.with_name("restored.logbook")
    with _said(number, result):
        result.set_right += bool(restore(path, target))
        check_thoroughly(target)
        if _content_in(target) != content:
            result.wrong.append(f"{number}: restored with other content")
    target.unlink(missing_ok=True)


def run(how_many: int, weakness: str = "", seed: int = 0) -> Result:
    """Opens every truncation near a page border and ``how_many`` mutants. A weakness is tried till it shows."""
    result = Result()
    with quick_folder() as folder, _weakened(weakness):
        data = start(folder)
        content = _content_in(folder / "start.logbook")
        (folder / "start.logbook").unlink()
        for number, changed in enumerate(chain(truncations(data), mutants(data, how_many, seed))):
            try_file(folder, changed, number, result, content)
            if weakness and result.wrong:
                break
    return result


@contextmanager
def _weakened(weakness: str) -> Iterator[None]:
    """With ``trusting``, records and kept changes are not compared."""
    if weakness != "trusting":
        yield
        return
    with mock.patch.object(thorough_check, "require_kept_alike"):
        yield


def main(arguments: Sequence[str] | None = None) -> int:
    """Prints the counts; exit code 1 if anything went wrong."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--mutants", type=int, default=20_000)
    parser.add_argument("--weakness", choices=["", "trusting"], default="")
    parser.add_argument("--seed", type=int, default=0)
    chosen = parser.parse_args(arguments)
    result = run(chosen.mutants, chosen.weakness, chosen.seed)
    counts = f"{result.refused} refused, {result.good} good, {result.set_right} set right, {len(result.wrong)} wrong"
    print(f"{result.files} files: {counts}")
    for wrong in result.wrong[:5]:
        print(wrong)
    return 1 if result.wrong else 0


if __name__ == "__main__":
    sys.exit(main())
