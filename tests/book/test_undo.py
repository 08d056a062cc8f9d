"""Undo and redo, also after reopening."""

import tempfile
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.book.logbook import Logbook, open_logbook
from logbook.book.swatches import put_swatch, swatches
from logbook.book.trouble import DamagedError
from logbook.book.undo import redo, undo, undo_state
from logbook.errors import RefusedError
from tests.support.books import edit, held, put_worked, small_book


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with small_book(tmp_path / "a.logbook", 0) as made:
        yield made


def test_all_the_way_back_and_forth_also_after_reopening(book: Logbook) -> None:
    states = [held(book)]
    for work in (
        lambda: log(book, 1),
        lambda: edit(book, "S-01", colour="rust", readings=()),
        lambda: log(book, 2, 3, 4),
        lambda: swap_tags(book, "S-01", "S-02"),
        lambda: edit(book, "S-04", yarn=None),
    ):
        work()
        states.append(held(book))
    book.close()
    for state in reversed(states[:-1]):
        with open_logbook(book.path) as again:
            undo(again)
            assert held(again) == state
    for state in states[1:]:
        with open_logbook(book.path) as again:
            redo(again)
            assert held(again) == state


def log(book: Logbook, *numbers: int) -> None:
    with book.writing(f"log {numbers}") as writing:
        for number in numbers:
            put_worked(writing, number)


def swap_tags(book: Logbook, one: str, other: str) -> None:
    with book.writing("swap") as writing:
        by_tag = {found.tag: found for found in swatches(writing.connection)}
        put_swatch(writing, replace(by_tag[one], tag="between"))
        put_swatch(writing, replace(by_tag[other], tag=one))
        put_swatch(writing, replace(by_tag[one], tag=other))


def test_what_can_be_undone_is_said(book: Logbook) -> None:
    with pytest.raises(RefusedError, match="nothing to undo"):
        undo(book)
    with pytest.raises(RefusedError, match="nothing to redo"):
        redo(book)
    log(book, 1)
    log(book, 2)
    assert undo(book).label == "log (2,)"
    state = undo_state(book.connection)
    assert [one.label for one in state.done] == ["log (1,)"]
    assert [one.label for one in state.undone] == ["log (2,)"]
    assert redo(book).label == "log (2,)"


def test_a_new_action_makes_what_was_undone_final(book: Logbook) -> None:
    log(book, 1)
    undo(book)
    log(book, 2)
    with pytest.raises(RefusedError, match="nothing to redo"):
        redo(book)
    undo(book)
    assert held(book)["swatch"] == []


def test_history_is_never_rewritten(book: Logbook) -> None:
    log(book, 1)
    undo(book)
    redo(book)
    kinds = book.connection.execute("SELECT kind FROM action ORDER BY position").fetchall()
    assert kinds == [("do",), ("undo",), ("redo",)]


def test_another_window_between_the_look_and_the_write(book: Logbook, monkeypatch: pytest.MonkeyPatch) -> None:
    log(book, 1)
    real = Logbook.writing

    def slow(self: Logbook, *rest: Any) -> Any:
        monkeypatch.setattr(Logbook, "writing", real)
        with open_logbook(book.path) as other:
            log(other, 2)
        return self.writing(*rest)

    monkeypatch.setattr(Logbook, "writing", slow)
    with pytest.raises(RefusedError, match="Another window has just changed"):
        undo(book)
    assert len(held(book)["swatch"]) == 2


def test_a_list_of_actions_that_does_not_hang_together(book: Logbook) -> None:
    log(book, 1)
    for kind in ("undo", "redo"):
        book.connection.execute("UPDATE action SET kind = ?, of = 'x'", (kind,))
        with pytest.raises(DamagedError, match="is broken at"):
            undo_state(book.connection)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.sampled_from(["do", "undo", "redo"]), max_size=40))
def test_what_is_next_is_what_replaying_all_actions_says(turns: list[str]) -> None:
    with tempfile.TemporaryDirectory() as folder, small_book(Path(folder) / "a.logbook", 0) as book:
        for number, kind in enumerate(turns):
            state = undo_state(book.connection)
            if kind == "do":
                edit_or_log(book, number)
                continue
            turn, there = (undo, state.done) if kind == "undo" else (redo, state.undone)
            if there:
                assert turn(book) == there[-1]
            else:
                with pytest.raises(RefusedError, match="nothing to"):
                    turn(book)


def edit_or_log(book: Logbook, number: int) -> None:
    with book.writing(f"colour {number}") as writing:
        put_worked(writing, 1, uid="the only one", colour=f"no. {number}")


def test_undo_reads_no_more_the_more_was_done(book: Logbook) -> None:
    def steps_of_an_undo() -> int:
        steps = [0]

        def count() -> None:
            steps[0] += 1

        book.connection.set_progress_handler(count, 100)
        undo(book)
        book.connection.set_progress_handler(None, 0)
        redo(book)
        return steps[0]

    log(book, 1)
    few = steps_of_an_undo()
    book.connection.execute(
        """WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 20000)
        INSERT INTO action (uid, at, label, kind, schema) SELECT 'a' || i, '2026', 'nothing', 'do', 2 FROM n"""
    )
    log(book, 2)
    assert steps_of_an_undo() <= few + 50  # of a hundred steps of SQLite each; to read 20,000 actions takes thousands


@pytest.mark.parametrize("turn", [undo, redo])
def test_turning_what_is_not_there_is_damage(book: Logbook, turn: Any) -> None:
    log(book, 1)
    undo(book)
    book.connection.execute("UPDATE action SET of = 'x' WHERE kind = 'undo'")
    with pytest.raises(DamagedError, match="is broken at"):
        turn(book)
