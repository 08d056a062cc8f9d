"""Kill −9 while one logbook is merged into another, or that is undone: as before or merged, and merged again it comes out alike.

python -m tests.faults.kill_merge --count 1000
python -m tests.faults.kill_merge --count 100 --weakness parts     (each statement by itself)
"""

import random
import shutil
import sys
from pathlib import Path
from typing import Any

from logbook.book.checking import check_whole
from logbook.book.kept_twice import require_kept_alike
from logbook.book.logbook import open_logbook
from logbook.book.schema import STEPS
from logbook.book.swatches import swatches
from logbook.book.undo import undo
from logbook.errors import RefusedError
from logbook.tasks.merging import merge
from tests.faults import victim
from tests.faults.kill import Result, command, forking, killed
from tests.faults.work import quick_folder
from tests.support.books import edit, held, put_worked, small_book

NEW = 40
DOING = ("merging", "undoing")


def run(count: int, weakness: str = "", seed: int = 0) -> Result:
    """Kills ``count`` children. A weakness is tried till it shows."""
    chance, context, result = random.Random(seed), forking(victim), Result()
    with quick_folder() as folder:
        ours, other = _pair(folder)
        before, merged = _states(ours, other, folder)
        for number in range(count):
            place = folder / f"{number}"
            place.mkdir()
            path = Path(shutil.copyfile(ours, place / "a.logbook"))
            wanted = number % victim.MERGES
            done = killed(context, victim.merge_and_undo, (path, other, place / "backups"), weakness, wanted, chance)
            result.kills += 1
            result.during[DOING[done % 2] if done < victim.MERGES else "nothing any more"] += 1
            _judge(path, other, (before, merged), {done % 2, (done + 1) % 2} if done < victim.MERGES else {0}, result)
            shutil.rmtree(place)
            if weakness and result.lost:
                break
    return result


def _pair(folder: Path) -> tuple[Path, Path]:
    """Two that were one: each changed what the other changed too, and what it did not; one has many new swatches."""
    ours, other = folder / "ours.logbook", folder / "other.logbook"
    small_book(ours, 6).close()
    shutil.copyfile(ours, other)
    with open_logbook(ours) as book:
        edit(book, "S-01", colour="blue", notes="ours")
        edit(book, "S-02", colour="blue")
    with open_logbook(other) as book:
        edit(book, "S-01", colour="red")
        edit(book, "S-03", notes="theirs " * 200, readings=())
        with book.writing("log many") as writing:
            for number in range(NEW):
                put_worked(writing, 100 + number, notes="x" * 500)
    return ours, other


def _states(ours: Path, other: Path, folder: Path) -> tuple[Any, Any]:
    with open_logbook(Path(shutil.copyfile(ours, folder / "undisturbed.logbook"))) as book:
        before = held(book)
        merge(book, other, "theirs")
        return before, held(book)


def _judge(path: Path, other: Path, states: tuple[Any, Any], expected: set[int], result: Result) -> None:
    try:
        with open_logbook(path) as book:
            result.lost += held(book) not in [states[number] for number in expected]
            check_whole(book.connection, book.path, len(STEPS))
            require_kept_alike(book.connection)
            merge(book, other, "theirs")
            result.lost += held(book) != states[1]
            while len(swatches(book.connection)) > len(states[0]["swatch"]):
                undo(book)
            result.lost += held(book) != states[0]
    except RefusedError:
        result.corrupt += 1


if __name__ == "__main__":
    sys.exit(command(run, __doc__, 1000, ("parts",), ("lost", "corrupt")))
