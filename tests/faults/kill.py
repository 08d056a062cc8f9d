"""Kill −9 at any moment: no acknowledged change may be lost, and no half of one be there.

A child works on a logbook and says after each piece of work that it is done; it is killed at a random moment. What it left is
opened, and must be the state after the last acknowledged piece, or after the one that was being done.

    python -m tests.faults.kill --count 3000
    python -m tests.faults.kill --count 100 --weakness parts     (each statement by itself; or "early": said before it is done)
"""

import argparse
import multiprocessing
import random
import shutil
import sys
from collections import Counter
from collections.abc import Callable, Sequence
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path
from types import ModuleType
from typing import Any

from logbook.book import backups, connection
from logbook.book.checking import check_whole
from logbook.book.kept_twice import require_kept_alike
from logbook.book.logbook import open_logbook
from logbook.book.schema import STEPS
from logbook.book.trouble import as_sentences
from logbook.errors import RefusedError
from tests.faults import victim
from tests.faults.work import CYCLE, act, plain, quick_folder
from tests.support.books import edit, small_book


@dataclass(slots=True)
class Result:
    """How many were killed, and of those how many lost an acknowledged change or left half of one, were damaged, or left a
    backup that is not whole; ``during``: what the killed were doing."""

    kills: int = 0
    lost: int = 0
    corrupt: int = 0
    bad_backups: int = 0
    during: Counter[str] = field(default_factory=Counter)


def run(count: int, weakness: str = "", seed: int = 0) -> Result:
    """Kills ``count`` children. A weakness is tried till it shows."""
    chance = random.Random(seed)
    context = forking(victim)
    result = Result()
    with quick_folder() as folder:
        start = folder / "start.logbook"
        small_book(start, 4).close()
        states = _states(start, folder)
        for number in range(count):
            place = folder / f"{number}"
            place.mkdir()
            shutil.copyfile(start, place / "a.logbook")
            _kill_one(context, place, states, weakness, chance, result)
            shutil.rmtree(place)
            if weakness and result.lost:
                break
    return result


def _states(start: Path, folder: Path) -> list[Any]:
    """What the logbook holds after each step."""
    path = folder / "undisturbed.logbook"
    shutil.copyfile(start, path)
    with open_logbook(path, folder / "undisturbed") as book:
        states = [plain(book.connection)]
        for step in range(victim.STEPS):
            act(book, step)
            states.append(plain(book.connection))
    return states


def _kill_one(context: Any, place: Path, states: list[Any], weakness: str, chance: random.Random, result: Result) -> None:
    wanted = result.kills % victim.STEPS
    done = killed(context, victim.work, (place / "a.logbook", place / "backups"), weakness, wanted, chance)
    result.kills += 1
    result.during[CYCLE[done % len(CYCLE)] if done < victim.STEPS else "nothing any more"] += 1
    judge(place / "a.logbook", states[done : done + 2], result)
    result.bad_backups += count_bad_backups(place / "backups", states, place / "a.logbook")


def killed(
    context: Any, work: Callable[..., None], places: Sequence[Path], weakness: str, wanted: int, chance: random.Random
) -> int:
    """Runs ``work`` in a child and kills it at a moment after it has said ``wanted``; the number it said last."""
    child, said = started(context, work, places, weakness)
    while said.recv() < wanted:
        pass
    said.poll(chance.choice((0, 0.001, 0.01)) * chance.random())  # a moment within the next piece of work, or two
    return [wanted, *last_said(child, said)][-1]


def started(context: Any, work: Callable[..., None], places: Sequence[Path], weakness: str) -> tuple[Any, Any]:
    """A child that does ``work``, and the end of the pipe by which it says how far it is."""
    said, child_says = context.Pipe(duplex=False)
    child = context.Process(target=work, args=(*places, child_says, weakness))
    child.start()
    child_says.close()
    return child, said


def last_said(child: Any, said: Any) -> list[Any]:
    """Kills a child; what it had said by then and nobody had read yet."""
    child.kill()
    child.join()
    found = []
    try:
        while True:
            found.append(said.recv())
    except EOFError:
        said.close()
    child.close()
    return found


def forking(module: ModuleType) -> Any:
    """Where children come from: a server that has the module they need ready, if the system knows such."""
    context: Any = multiprocessing.get_context(
        "forkserver" if "forkserver" in multiprocessing.get_all_start_methods() else "spawn"
    )
    context.set_forkserver_preload([module.__name__])
    return context


def judge(path: Path, expected: list[Any], result: Result) -> None:
    """Opens what a kill left: whether it holds one of the states expected, is whole, and can be gone on with."""
    try:
        with open_logbook(path) as book:
            result.lost += plain(book.connection) not in expected
            check_whole(book.connection, book.path, len(STEPS))
            require_kept_alike(book.connection)
            edit(book, "S-01", notes="and on it goes")
    except RefusedError:
        result.corrupt += 1


def count_bad_backups(folder: Path, states: list[Any], start: Path) -> int:
    """How many files that have a backup's name are not whole, or hold no state that was; ``start`` and links to it are known."""
    found = [path for place in folder.glob("*") for path, _ in backups.kept(place) if not path.samefile(start)]
    return sum(not _is_whole(path, states) for path in found)


def _is_whole(backup: Path, states: list[Any]) -> bool:
    try:
        with as_sentences(backup), closing(connection.connect(backup, "ro")) as opened:
            check_whole(opened, backup, len(STEPS))
            require_kept_alike(opened)
            return plain(opened) in states
    except RefusedError:
        return False


def command(
    run: Callable[[int, str, int], Result], says: str | None, count: int, weaknesses: Sequence[str], counts: Sequence[str]
) -> int:
    """The command line of a harness that kills: prints the ``counts`` of its result; exit code 1 if one of them is not 0."""
    parser = argparse.ArgumentParser(description=says, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=count)
    parser.add_argument("--weakness", choices=["", *weaknesses], default="")
    parser.add_argument("--seed", type=int, default=0)
    chosen = parser.parse_args()
    result = run(chosen.count, chosen.weakness, chosen.seed)
    found = {name: getattr(result, name) for name in counts}
    shown = [f"{number} {name.replace('_', ' ')}" for name, number in found.items()]
    print(f"{result.kills} killed: {', '.join(shown)}")
    print("killed during:", ", ".join(f"{kind} {number}" for kind, number in result.during.most_common()))
    return 1 if any(found.values()) else 0


if __name__ == "__main__":
    sys.exit(command(run, __doc__, 3000, ("parts", "early"), ("lost", "corrupt", "bad_backups")))
