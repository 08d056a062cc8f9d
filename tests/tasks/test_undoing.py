"""Undo and redo by task, and a record's history in words."""

from dataclasses import replace

import pytest

from logbook.craft.swatches.conditions import Condition
from logbook.errors import RefusedError
from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.keeping import Logbook, open_book
from logbook.tasks.logging_swatches import delete_swatches, save_swatch
from logbook.tasks.stitch_patterns import save_pattern
from logbook.tasks.undoing import HistoryLine, history, redo, undo
from tests.support.books import COTTON, SHELLS, held, swatch, taken


def test_everything_goes_back_and_forth_also_after_opening_again(book: Logbook) -> None:
    states = [held(book)]
    uid = save_swatch(book, swatch(yarn=COTTON, pattern=SHELLS))
    states.append(held(book))
    one = swatch_in_hand(book, uid)
    assert one is not None
    save_swatch(book, replace(one, colour="rust"))
    states.append(held(book))
    delete_swatches(book, [uid])
    states.append(held(book))
    book.close()
    with open_book(book.path) as again:
        for state in reversed(states[:-1]):
            undo(again)
            assert held(again) == state
        with pytest.raises(RefusedError, match="nothing to undo"):
            undo(again)
        for state in states[1:]:
            redo(again)
            assert held(again) == state
        with pytest.raises(RefusedError, match="nothing to redo"):
            redo(again)


class TestHistory:
    def test_readings_that_are_gone_are_told_of_and_those_of_others_not_looked_at(self, book: Logbook) -> None:
        uid = save_swatch(book, swatch(yarn=COTTON, readings=taken("20 sts = 10 cm; 21 sts = 10 cm; 22 rows = 10 cm")))
        save_swatch(book, swatch(2, yarn=COTTON))
        one = swatch_in_hand(book, uid)
        assert one is not None
        save_swatch(book, replace(one, readings=one.readings[:1]))
        told = [(line.before, line.after) for line in history(book, uid) if line.field.startswith("reading")]
        gone = [("21 sts = 10 cm", ""), ("22 rows = 10 cm", "")]
        assert sorted(told) == sorted([*gone, *(pair[::-1] for pair in gone), ("", "20 sts = 10 cm")])
        asked: list[str] = []
        book.connection.set_trace_callback(asked.append)
        history(book, uid)
        book.connection.set_trace_callback(None)
        plans = [
            row[3] for sql in asked if sql.startswith("SELECT") for row in book.connection.execute(f"EXPLAIN QUERY PLAN {sql}")
        ]
        assert plans
        assert not [plan for plan in plans if plan.startswith("SCAN change")]

    def test_of_a_swatch_newest_first_with_names_and_readings(self, book: Logbook) -> None:
        times = iter(f"2026-05-31T10:{minute:02d}:00.000+00:00" for minute in range(60))
        book.now = lambda: next(times)
        uid = save_swatch(book, swatch(yarn=COTTON, hook_mm=4.5, readings=taken("20 sts = 10 cm")))
        one = swatch_in_hand(book, uid)
        assert one is not None
        changed = replace(
            one, yarn=replace(COTTON, name="Scree"), hook_mm=5.0, readings=taken("20 sts = 11 cm", Condition.WORKED)
        )
        save_swatch(book, changed)
        undo(book)
        lines = history(book, uid)
        assert [line.at for line in lines] == sorted((line.at for line in lines), reverse=True)
        edit = {(line.field, line.before, line.after) for line in lines if line.action == "change swatch S-01"}
        assert edit == {
            ("yarn", COTTON.name, "Scree"),
            ("hook mm", "4.5", "5"),
            ("reading, worked", "20 sts = 10 cm", "20 sts = 11 cm"),
        }
        undone = {(line.field, line.before, line.after) for line in lines if line.action == "undo: change swatch S-01"}
        assert ("hook mm", "5", "4.5") in undone

    def test_names_are_those_of_today(self, book: Logbook) -> None:
        uid = save_swatch(book, swatch(pattern=SHELLS))
        one = swatch_in_hand(book, uid)
        assert one is not None
        assert one.pattern is not None
        save_pattern(book, replace(one.pattern, name="Fans"))
        assert ("stitch pattern", "", "Fans") in {(line.field, line.before, line.after) for line in history(book, uid)}

    def test_of_a_deleted_one(self, book: Logbook) -> None:
        uid = save_swatch(book, swatch(yarn=COTTON, colour="rust"))
        delete_swatches(book, [uid])
        assert any(line.field == "colour" and (line.before, line.after) == ("rust", "") for line in history(book, uid))

    def test_of_nothing(self, book: Logbook) -> None:
        assert history(book, "no such record") == []

    def test_what_was_and_is_empty_is_left_out(self, book: Logbook) -> None:
        uid = save_swatch(book, swatch(yarn=COTTON, colour="", notes=""))
        assert all(isinstance(line, HistoryLine) and line.before != line.after for line in history(book, uid))

    def test_pictures_are_counted_not_named(self, book: Logbook) -> None:
        one, other = (f"{digit * 40}.png" for digit in "01")
        times = iter(f"2026-05-31T10:{minute:02d}:00.000+00:00" for minute in range(60))
        book.now = lambda: next(times)
        uid = save_swatch(book, swatch(yarn=COTTON, pictures=one))
        for names in (other, f"{one}; {other}"):
            save_swatch(book, swatch(uid=uid, yarn=COTTON, pictures=names))
        told = [(line.before, line.after) for line in history(book, uid) if line.field == "pictures"]
        assert told == [("1 picture", "2 pictures"), ("1 picture", "1 other picture"), ("", "1 picture")]
