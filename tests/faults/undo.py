"""Undo under everything a maker may do, in any order: undo all gives the first state, redo all the last.

python -m tests.faults.undo --examples 300 --steps 50
python -m tests.faults.undo --weakness forgetful     (what was there before an edit is not kept)
"""

import shutil
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any
from unittest import mock

from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, precondition, rule, run_state_machine_as_test

from logbook.book.assumptions import assumptions, put_assumptions
from logbook.book.changes import Writing
from logbook.book.logbook import open_logbook
from logbook.book.pieces import made_pieces, planned_pieces, remove_made_piece, remove_piece
from logbook.book.swatches import (
    put_stitch_pattern,
    put_swatch,
    put_yarn,
    remove_stitch_pattern,
    remove_swatch,
    stitch_patterns,
    swatches,
)
from logbook.book.undo import redo, undo
from logbook.errors import RefusedError
from tests.faults.examples import command, same_each_time
from tests.support.books import held, put_planned_and_made, put_worked, small_book, taken
from tests.support.folders import QUICK

NUMBERS = st.integers(0, 8)
TEXTS = st.sampled_from(["", "Étang cotton", "=1+1", "007", "a\nb", "🧶 שלום", "\"'\\", "null", "x" * 500])
READINGS = st.lists(st.sampled_from(taken("4 repeats = 15.1 cm; 3 sts = 2 cm; 22 rows = 15 cm; 5 rows in 1 in")), max_size=3)


@contextmanager
def may_be_refused(*says: str) -> Iterator[None]:
    try:
        yield
    except RefusedError as error:
        if not any(one in str(error) for one in says):
            raise


class Undoing(RuleBasedStateMachine):
    """The logbook beside the list of its states, of which ``at`` is the one it is in."""

    @initialize()
    def begin(self) -> None:
        self.folder = Path(tempfile.mkdtemp(dir=QUICK))
        self.book = small_book(self.folder / "a.logbook", 1)
        undo(self.book)
        self.states: list[Any] = [held(self.book), self._redone()]
        self.at = 1

    def _redone(self) -> Any:
        redo(self.book)
        return held(self.book)

    def _done(self) -> None:
        """After an action: it is a new last state, if it changed anything."""
        now = held(self.book)
        if now != self.states[self.at]:
            self.states[self.at + 1 :] = [now]
            self.at += 1

    def _one(self, number: int) -> Any:
        found = swatches(self.book.connection)
        return found[number % len(found)] if found else None

    @rule(number=NUMBERS, notes=TEXTS)
    def log(self, number: int, notes: str) -> None:
        with may_be_refused("another swatch"), self.book.writing("log") as writing:
            put_worked(writing, number, notes=notes)
        self._done()

    @rule(number=NUMBERS, notes=TEXTS, readings=READINGS, grams=st.floats(0.1, 1e6))
    def edit(self, number: int, notes: str, readings: list[Any], grams: float) -> None:
        if one := self._one(number):
            with self.book.writing("edit") as writing:
                put_swatch(writing, replace(one, notes=notes, readings=tuple(readings), swatch_grams=grams))
        self._done()

    @rule(first=NUMBERS, notes=TEXTS)
    def take_in_many(self, first: int, notes: str) -> None:
        with self.book.writing("import") as writing:
            known = {one.tag: one for one in swatches(writing.connection)}
            for number in range(first, first + 5):
                if (one := known.get(f"S-{number:02d}")) is None:
                    put_worked(writing, number, notes=notes)
                else:
                    put_swatch(writing, replace(one, notes=notes))
        self._done()

    @rule(one=NUMBERS, other=NUMBERS)
    def swap_tags(self, one: int, other: int) -> None:
        first, second = self._one(one), self._one(other)
        if first and first.uid != second.uid:
            with self.book.writing("swap") as writing:
                put_swatch(writing, replace(first, tag="between"))
                put_swatch(writing, replace(second, tag=first.tag))
                put_swatch(writing, replace(first, tag=second.tag))
        self._done()

    @rule(number=NUMBERS, notes=TEXTS)
    def plan_and_make(self, number: int, notes: str) -> None:
        if one := self._one(number):
            with may_be_refused("another piece"), self.book.writing("plan") as writing:
                put_planned_and_made(writing, one.uid, number, notes)
        self._done()

    @rule(number=NUMBERS)
    def take_out_pieces(self, number: int) -> None:
        with self.book.writing("take out pieces") as writing:
            for made in made_pieces(writing.connection):
                remove_made_piece(writing, made)
            for piece in list(planned_pieces(writing.connection))[number:]:
                remove_piece(writing, piece)
        self._done()

    @rule(number=NUMBERS)
    def remove(self, number: int) -> None:
        if one := self._one(number):
            with may_be_refused("Pieces are worked out from it"), self.book.writing("remove") as writing:
                remove_swatch(writing, one.uid)
        self._done()

    @rule(number=NUMBERS, name=TEXTS)
    def rename_its_yarn_and_pattern(self, number: int, name: str) -> None:
        one = self._one(number)
        if one and one.yarn and one.pattern:
            with may_be_refused("another yarn", "needs a name"), self.book.writing("rename") as writing:
                put_yarn(writing, replace(one.yarn, name=name))
                put_stitch_pattern(writing, replace(one.pattern, notes=name))
        self._done()

    @rule()
    def take_out_patterns(self) -> None:
        with may_be_refused("still use it"), self.book.writing("remove patterns") as writing:
            for uid in stitch_patterns(writing.connection):
                remove_stitch_pattern(writing, uid)
        self._done()

    @rule(drift=st.floats(0.001, 0.5), most=st.integers(0, 9))
    def assume(self, drift: float, most: int) -> None:
        with self.book.writing("assume") as writing:
            put_assumptions(writing, replace(assumptions(writing.connection), drift=drift, most_edge_stitches=most))
        self._done()

    @rule()
    def undo(self) -> None:
        with may_be_refused("nothing to undo"):
            undo(self.book)
            self.at -= 1
        assert self.at >= 0
        assert held(self.book) == self.states[self.at]

    @precondition(lambda self: self.at + 1 < len(self.states))
    @rule()
    def redo(self) -> None:
        redo(self.book)
        self.at += 1
        assert held(self.book) == self.states[self.at]

    @rule()
    def reopen(self) -> None:
        self.book.close()
        self.book = open_logbook(self.folder / "a.logbook")
        assert held(self.book) == self.states[self.at]

    def teardown(self) -> None:
        if not hasattr(self, "at"):  # given up before it had begun
            return
        try:
            for _ in range(self.at + 1):
                self.undo()
            while self.at + 1 < len(self.states):
                self.redo()
        finally:
            self.book.close()
            shutil.rmtree(self.folder)


@contextmanager
def weakened(weakness: str) -> Iterator[None]:
    """With ``forgetful``, what was there before an edit is not kept."""
    real = Writing._keep

    def forgetful(self: Writing, table: str, uid: str, before: Any, after: Any, *change: str | None) -> None:
        if before is None or after is None:
            real(self, table, uid, before, after, *change)

    with mock.patch.object(Writing, "_keep", forgetful if weakness == "forgetful" else real):
        yield


def run(examples: int, steps: int, *, shrink: bool = True) -> None:
    """Runs the machine, the same way each time; raises what goes wrong, if wanted after looking for a shorter way to it."""
    how = same_each_time(examples, shrink=shrink, stateful_step_count=steps, report_multiple_bugs=False)
    run_state_machine_as_test(Undoing, settings=how)


if __name__ == "__main__":
    went_well = "{examples} runs of up to {steps} steps: every state came back"
    sys.exit(command(run, weakened, __doc__, (300, 50), ("forgetful",), went_well))
