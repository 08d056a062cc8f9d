"""Kill −9 in each phase of a backup that runs in steps beside the saving: while pages are copied, while the copy is verified,
while it gets its name, while older ones are pruned.

A child backs up again and again in one thread, saves now and then in another, and says what it has saved and which phase begins.
It is killed at a random moment of a phase, each by turns. The logbook must hold all that was saved; every file that has a
backup's name must be whole and hold a state that was, and ten such must be there; and the next backup must come out whole.

    python -m tests.faults.kill_backups --count 400
    python -m tests.faults.kill_backups --count 40 --weakness in-place     (written under its own name)
"""

import random
import shutil
import statistics
import sys
import time
from collections import defaultdict
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from logbook.book import backups
from logbook.book.logbook import open_logbook
from tests.faults import victim
from tests.faults.kill import Result, command, count_bad_backups, forking, judge, last_said, started
from tests.faults.work import plain, quick_folder
from tests.support.books import put_worked, small_book

PHASES = victim.PHASES
BIG = 40
"""So many swatches with long notes make a logbook that is copied in several steps."""


@dataclass(slots=True)
class _Trial:
    """What every child begins with, and what the logbook holds after each of its saves; how long each phase took so far."""

    folder: Path
    start: Path
    uid: str
    states: list[Any]
    weakness: str
    seconds: defaultdict[str, list[float]] = field(default_factory=lambda: defaultdict(list))

    def place(self, name: str) -> Path:
        """A folder with the logbook and eleven backups of it, so that each further one prunes."""
        place = self.folder / name
        kept = place / "backups" / self.uid
        kept.mkdir(parents=True)
        shutil.copyfile(self.start, place / "a.logbook")
        for minute in range(backups.KEPT_LAST + 1):
            (kept / f"{1:010d}-20260531T10{minute:02d}00.000Z.logbook").hardlink_to(self.start)
        return place


def run(count: int, weakness: str = "", seed: int = 0) -> Result:
    """Kills ``count`` children. A weakness is tried till it shows."""
    chance = random.Random(seed)
    result = Result()
    with quick_folder() as folder:
        trial = _begun(folder, weakness)
        for number in range(count):
            phases = PHASES[:2] if weakness else PHASES  # it names nothing
            _kill_one(trial, f"{number}", phases[number % len(phases)], chance, result)
            if weakness and result.bad_backups:
                break
    return result


def _begun(folder: Path, weakness: str) -> _Trial:
    start, same = folder / "start.logbook", folder / "same.logbook"
    with small_book(start, 3) as book, book.writing("much") as writing:
        for number in range(BIG):
            put_worked(writing, 100 + number, notes=f"{number} " + "x" * 30_000)
    shutil.copyfile(start, same)
    with open_logbook(same) as book:
        states = [plain(book.connection)]
        for number in range(victim.MOST_SAVES):
            victim.save(book, number)
            states.append(plain(book.connection))
        return _Trial(folder, start, book.uid, states, weakness)


def _kill_one(trial: _Trial, name: str, wanted: str, chance: random.Random, result: Result) -> None:
    """Kills a child in the first, second or third ``wanted`` phase that it comes to."""
    context = forking(victim)
    place = trial.place(name)
    child, said = started(context, victim.back_up_and_save, (place / "a.logbook", place / "backups"), trial.weakness)
    passes, saved, phase, begun = chance.choice((1, 1, 2, 3)), 0, "", 0.0
    while passes or not trial.seconds[wanted]:
        what = said.recv()
        if isinstance(what, int):
            saved = what
            continue
        now = time.perf_counter()
        trial.seconds[phase].append(now - begun)
        phase, begun = what, now
        passes -= passes > 0 and what == wanted
    _wait(chance.random() * statistics.median(trial.seconds[wanted]))
    for what in last_said(child, said):
        saved, phase = (what, phase) if isinstance(what, int) else (saved, what)
    result.kills += 1
    result.during[phase] += 1
    judge(place / "a.logbook", trial.states[saved : saved + 2], result)
    _judge_backups(place, trial, result)
    shutil.rmtree(place)


def _wait(seconds: float) -> None:
    """Without giving the processor away: the phases that matter most are shorter than a process sleeps."""
    end = time.perf_counter() + seconds
    while time.perf_counter() < end:
        pass


def _judge_backups(place: Path, trial: _Trial, result: Result) -> None:
    bad = count_bad_backups(place / "backups", trial.states, trial.start)
    with open_logbook(place / "a.logbook", place / "backups") as book:
        path = book.back_up(again=True)
        assert path is not None
        bad += count_bad_backups(place / "backups", [*trial.states, plain(book.connection)], trial.start)
    kept = backups.kept(path.parent)
    result.bad_backups += bad + (len(kept) < backups.KEPT_LAST) + (kept[0][0] != path)


if __name__ == "__main__":
    sys.exit(command(run, __doc__, 400, ("in-place",), ("lost", "corrupt", "bad_backups")))
