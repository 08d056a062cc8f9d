"""Two logbooks that were one, each changed in any way, brought together both ways: alike, nothing lost, all asked.

python -m tests.faults.merge --examples 1000 --steps 12
python -m tests.faults.merge --weakness unasked     (what both have otherwise is decided without a word)
"""

import shutil
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any
from unittest import mock

from hypothesis import HealthCheck, given
from hypothesis import strategies as st

from logbook.book.checking import check_whole
from logbook.book.logbook import Logbook, open_logbook
from logbook.book.schema import STEPS as STEPS_OF_SCHEMA
from logbook.book.tables import NAMES, PARTS
from logbook.tasks import merging
from logbook.tasks.merging import Point, Side, merge
from logbook.tasks.undoing import undo
from tests.faults.examples import command, same_each_time
from tests.faults.histories import History, Place, Rows, Step, histories, rows
from tests.support.folders import QUICK
from tests.support.garments import garment_book

OTHER: Mapping[Side, Side] = {"ours": "theirs", "theirs": "ours"}


@dataclass(slots=True)
class Wanted:
    """What must come of a first merge, worked out from the states alone.

    ``asked`` must be asked; ``perhaps`` may be: both sides came by the same state on their way, and were alike again in it;
    ``twice`` may be as well: a name that another record has, if that one stays.
    """

    asked: set[Point] = field(default_factory=set)
    perhaps: set[Place] = field(default_factory=set)
    twice: set[Point] = field(default_factory=set)
    result: dict[Place, Mapping[str, Any] | None] = field(default_factory=dict)


def wanted_of(base: Rows, ours: History, theirs: History, prefer: Side) -> Wanted:
    """By field: what one side changed is taken, what both changed otherwise is asked; ``prefer``: whose word goes then."""
    wanted, mine, yours = Wanted(), rows(ours.book), rows(theirs.book)
    for place in {**base, **mine, **yours}:
        was, a, b = (states.get(place) for states in (base, mine, yours))
        if a != b and any(state in theirs.been[place] for state in ours.been[place]):
            wanted.perhaps.add(place)
        elif a == b or b == was:
            wanted.result[place] = a
        elif a == was:
            wanted.result[place] = b
        elif a is None or b is None:
            wanted.asked.add((*place, ""))
            wanted.result[place] = a if prefer == "ours" else b
        else:
            assert was is not None, "a new record has a uid of its own"
            otherwise = [column for column in a if was[column] != a[column] != b[column] != was[column]]
            wanted.asked |= {(*place, column) for column in otherwise}
            preferred = a if prefer == "ours" else b
            wanted.result[place] = {
                column: preferred[column] if column in otherwise else a[column] if b[column] == was[column] else b[column]
                for column in a
            }
    _parts_of_deleted(wanted, base, mine, yours)
    for (table, uid), row in yours.items():
        holders = (
            {one for (other, one), there in mine.items() if other == table and there[NAMES[table]] == row[NAMES[table]]}
            if table in NAMES
            else set()
        )
        if holders - {uid}:
            may_be_deleted = any((table, one) in base for one in (*holders, uid))
            (wanted.twice if may_be_deleted else wanted.asked).add((table, uid, f"{NAMES[table]} twice"))
    return wanted


def _parts_of_deleted(wanted: Wanted, base: Rows, mine: Rows, yours: Rows) -> None:
    """Parts go where their whole goes, so they are not asked of by themselves; that one changed is a change of the whole."""
    for (part, uid), row in {**base, **mine, **yours}.items():
        if part not in PARTS:
            continue
        whole = (PARTS[part], row[PARTS[part]])
        if (whole in mine) != (whole in yours):
            there = mine if whole in mine else yours
            wanted.asked -= {point for point in wanted.asked if point[:2] == (part, uid)}
            if whole in base and there.get((part, uid)) != base.get((part, uid)):
                wanted.asked.add((*whole, ""))
    for (part, uid), row in {**base, **mine, **yours}.items():
        whole = (PARTS.get(part, ""), row.get(PARTS.get(part, "")))
        if whole in wanted.perhaps or (*whole, "") in wanted.asked:
            wanted.result.pop((part, uid), None)
            wanted.result.pop(whole, None)


def come_together(folder: Path, acts: Sequence[Sequence[Step]]) -> None:
    """One logbook in two hands: four histories, two of them after a first merge. Raises AssertionError for what went wrong."""
    with garment_book(folder / "ours.logbook") as ours:
        shutil.copy(ours.path, folder / "theirs.logbook")
        with open_logbook(folder / "theirs.logbook") as theirs:
            begun = rows(ours)
            mine, yours = History(ours, begun), History(theirs, begun)
            mine.act(acts[0], "a")
            yours.act(acts[1], "b")
            _first_time(begun, mine, yours)
            _both_ways(ours, theirs, "ours")
            History(ours, rows(ours)).act(acts[2], "c")
            History(theirs, rows(theirs)).act(acts[3], "d")
            _both_ways(ours, theirs, "theirs")
            answer = merge(theirs, ours.path)
            assert (answer.questions, rows(theirs)) == ((), rows(ours))


def but_for(column: str | None, row: Mapping[str, Any] | None) -> Mapping[str, Any] | None:
    """A record without the name it may have been given."""
    return row and {name: value for name, value in row.items() if name != column}


def _first_time(begun: Rows, mine: History, yours: History) -> None:
    """What is asked is what must be, no more; what is written is what either side did."""
    before = rows(mine.book)
    for prefer in OTHER:
        wanted = wanted_of(begun, mine, yours, prefer)
        answer = merge(mine.book, yours.book.path)
        asked = {question.point for question in answer.questions}
        assert wanted.asked <= asked, f"not asked: {wanted.asked - asked}; asked: {asked}"
        needless = {point for point in asked - wanted.asked - wanted.twice if point[:2] not in wanted.perhaps}
        assert not needless, needless
        if asked:
            assert (answer.written, rows(mine.book)) == (False, before)
            assert all(question.record and question.ours + question.theirs for question in answer.questions)
            answer = merge(mine.book, yours.book.path, prefer)
        after = rows(mine.book)
        renamed = {point[0]: NAMES[point[0]] for point in {*wanted.asked, *wanted.twice} if point[2].endswith("twice")}
        for place, row in wanted.result.items():
            still_used = row is None and place[0] in ("yarn", "stitch_pattern") and after.get(place) == begun.get(place)
            assert still_used or but_for(renamed.get(place[0]), after.get(place)) == but_for(renamed.get(place[0]), row), place
        if answer.written:
            undo(mine.book)
        assert rows(mine.book) == before


def _both_ways(ours: Logbook, theirs: Logbook, prefer: Side) -> None:
    """Each into the other, as the other was: alike; again: nothing more; undone: as before; then once more: as the first time."""
    before, aside = rows(ours), ours.path.with_name("before.logbook")
    shutil.copy(ours.path, aside)
    other = theirs.path.read_bytes()
    merge(ours, theirs.path, prefer)
    after = rows(ours)
    if after != before:
        undo(ours)
        assert rows(ours) == before
        merge(ours, theirs.path, prefer)
        assert rows(ours) == after
    again = merge(ours, theirs.path)
    assert (again.questions, again.written, rows(ours)) == ((), False, after)
    assert theirs.path.read_bytes() == other
    merge(theirs, aside, OTHER[prefer])
    there = rows(theirs)
    assert there == after, {place for place in {**after, **there} if after.get(place) != there.get(place)}
    for book in (ours, theirs):
        with book.reading() as connection:
            check_whole(connection, book.path, len(STEPS_OF_SCHEMA))


@contextmanager
def weakened(weakness: str) -> Iterator[None]:
    """With ``unasked``, what both have otherwise is decided without a word; with ``one-sided``, ours goes where both changed."""
    real = merging.plan_merge

    def unasked(*arguments: Any) -> Any:
        plan = real(*arguments)
        plan.conflicts.clear()
        return plan

    def one_sided(*arguments: Any) -> Any:
        plan = real(*arguments)
        plan.taken = [one if one.ours is None else replace(one, result=one.ours) for one in plan.taken]
        return plan

    known: dict[str, Callable[..., Any]] = {"": real, "unasked": unasked, "one-sided": one_sided}
    with mock.patch.object(merging, "plan_merge", known[weakness]):
        yield


def run(examples: int, steps: int, *, shrink: bool = True) -> None:
    """So many logbooks in two hands, the same each time; raises what goes wrong."""

    @same_each_time(examples, shrink=shrink, suppress_health_check=[HealthCheck.too_slow])
    @given(st.tuples(*[histories(steps)] * 4))
    def tried(acts: Sequence[Sequence[Step]]) -> None:
        with tempfile.TemporaryDirectory(dir=QUICK) as folder:
            come_together(Path(folder), acts)

    tried()


if __name__ == "__main__":
    went_well = "{examples} pairs, twice up to {steps} steps each: alike both ways, nothing lost, all asked"
    sys.exit(command(run, weakened, __doc__, (1000, 12), ("unasked", "one-sided"), went_well))
