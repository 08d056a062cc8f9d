"""Logging, changing and deleting a swatch, and what a form is offered."""

from dataclasses import replace
from typing import Any

import pytest

from logbook.book.swatches import stitch_patterns, yarns
from logbook.book.undo import undo
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import LogbookError, RefusedError
from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.keeping import Logbook
from logbook.tasks.logging_swatches import WRITTEN_AGAIN, delete_swatches, known_in, offered_tag, save_swatch, written_before
from logbook.tasks.stitch_patterns import delete_pattern, save_pattern
from tests.support.books import COTTON, SHELLS, held, swatch, taken
from tests.support.swatches import AWKWARD, full_swatch


def saved(book: Logbook, **values: Any) -> Swatch:
    return found(book, save_swatch(book, swatch(**{"yarn": COTTON, "pattern": SHELLS, **values})))


def found(book: Logbook, uid: str) -> Swatch:
    one = swatch_in_hand(book, uid)
    assert one is not None
    return one


def known_yarns(book: Logbook) -> list[Yarn]:
    with book.reading() as connection:
        return list(yarns(connection).values())


def known_patterns(book: Logbook) -> list[StitchPattern]:
    with book.reading() as connection:
        return list(stitch_patterns(connection).values())


class TestSaving:
    @pytest.mark.parametrize("text", AWKWARD)
    def test_everything_is_kept(self, book: Logbook, text: str) -> None:
        one = full_swatch(1, text)
        kept = found(book, save_swatch(book, one))
        assert kept.yarn is not None
        assert kept.pattern is not None
        assert replace(kept, yarn=replace(kept.yarn, uid=""), pattern=replace(kept.pattern, uid="")) == one

    def test_a_new_yarn_and_pattern_are_made_a_known_one_is_used(self, book: Logbook) -> None:
        first, second = saved(book, number=1), saved(book, number=2)
        assert first.yarn == second.yarn == known_yarns(book)[0]
        assert first.pattern == second.pattern == known_patterns(book)[0]
        assert len(known_yarns(book)) == len(known_patterns(book)) == 1

    def test_a_known_yarn_takes_the_details_given(self, book: Logbook) -> None:
        first = saved(book, number=1)
        saved(book, number=2, yarn=replace(COTTON, fibre="linen", ball_grams=None))
        assert found(book, first.uid).yarn == replace(known_yarns(book)[0], fibre="linen", ball_grams=None)

    def test_what_a_swatch_does_not_say_of_its_pattern_stays(self, book: Logbook) -> None:
        save_pattern(book, replace(SHELLS, half_plus=2, notes="lies flat"))
        kept = saved(book, pattern=StitchPattern(name=SHELLS.name, multiple=8)).pattern
        assert kept is not None
        assert (kept.multiple, kept.plus, kept.half_plus, kept.rows_text, kept.notes) == (
            8,
            None,
            2,
            SHELLS.rows_text,
            "lies flat",
        )

    def test_under_another_name_it_is_another_yarn(self, book: Logbook) -> None:
        first = saved(book, number=1)
        assert first.yarn is not None
        save_swatch(book, replace(first, yarn=replace(first.yarn, name="Scree")))
        assert [yarn.name for yarn in known_yarns(book)] == ["Scree", COTTON.name]

    def test_a_change_keeps_the_uid(self, book: Logbook) -> None:
        first = saved(book)
        assert save_swatch(book, replace(first, tag="S-77", readings=taken("20 sts = 10 cm"))) == first.uid
        assert found(book, first.uid).tag == "S-77"
        assert len(found(book, first.uid).readings) == 1
        assert undo(book).label == "change swatch S-77"
        assert found(book, first.uid) == first


class TestRequired:
    @pytest.mark.parametrize(
        ("values", "missing"),
        [
            ({"yarn": None, "pattern": None}, "needs a yarn or a stitch pattern: add it"),
            ({"hook_mm": None}, "needs the hook: add it"),
            ({"readings": ()}, "needs one reading: add it"),
            ({"hook_mm": None, "readings": ()}, "needs the hook and one reading: add them"),
            ({"yarn": None, "pattern": None, "hook_mm": None, "readings": ()}, "a yarn or a stitch pattern, the hook and one"),
            ({"tag": " "}, "needs a tag"),
            ({"yarn": Yarn(fibre="wool")}, "yarn needs a name"),
            ({"pattern": StitchPattern(multiple=6)}, "stitch pattern needs a name"),
            ({"pattern": replace(SHELLS, first_stitch=4, skip_cover=0)}, "do not agree"),
            ({"notes": "\0"}, r"U\+0000"),
            ({"colour": "\ud800"}, r"U\+D800"),
            ({"hook_mm": float("nan")}, "hook mm must be a finite number"),
        ],
    )
    def test_what_can_not_be_logged(self, book: Logbook, values: dict[str, Any], missing: str) -> None:
        before = held(book)
        with pytest.raises(LogbookError, match=missing):
            saved(book, **values)
        assert held(book) == before

    def test_a_yarn_or_a_pattern_is_enough(self, book: Logbook) -> None:
        assert saved(book, number=1, yarn=None).yarn is None
        assert saved(book, number=2, pattern=None).pattern is None

    def test_a_tag_that_another_swatch_has(self, book: Logbook) -> None:
        first = saved(book, number=1)
        before = held(book)
        with pytest.raises(RefusedError, match="another swatch with that tag, “S-01”"):
            saved(book, number=2, tag="S-01", yarn=Yarn(name="Scree"))
        assert held(book) == before
        second = saved(book, number=2)
        with pytest.raises(RefusedError, match="“S-01”"):
            save_swatch(book, replace(second, tag=first.tag))
        assert found(book, second.uid) == second


class TestDeleting:
    def test_and_undo(self, book: Logbook) -> None:
        one = saved(book)
        before = held(book)
        delete_swatches(book, [one.uid])
        assert swatch_in_hand(book, one.uid) is None
        assert held(book)["reading"] == []
        assert undo(book).label == "delete swatch S-01"
        assert held(book) == before

    def test_what_is_gone_already(self, book: Logbook) -> None:
        one = saved(book)
        delete_swatches(book, [one.uid])
        delete_swatches(book, [one.uid])
        undo(book)
        assert swatch_in_hand(book, one.uid) == one


class TestPatterns:
    def test_one_in_use_stays(self, book: Logbook) -> None:
        one = saved(book)
        assert one.pattern is not None
        with pytest.raises(RefusedError, match=r"still use it \(S-01\)"):
            delete_pattern(book, one.pattern)
        delete_swatches(book, [one.uid])
        delete_pattern(book, one.pattern)
        assert known_patterns(book) == []
        undo(book)
        assert known_patterns(book) == [one.pattern]

    def test_saved_and_changed(self, book: Logbook) -> None:
        uid = save_pattern(book, SHELLS)
        save_pattern(book, replace(SHELLS, uid=uid, multiple=8))
        assert [(one.name, one.multiple) for one in known_patterns(book)] == [(SHELLS.name, 8)]
        with pytest.raises(RefusedError, match="another stitch pattern of that name"):
            save_pattern(book, replace(SHELLS, uid=""))
        with pytest.raises(RefusedError, match="do not agree"):
            save_pattern(book, replace(SHELLS, uid=uid, first_stitch=4, skip_cover=0))


class TestOffers:
    def test_what_was_logged_before_in_order_and_once(self, book: Logbook) -> None:
        for number, colour in enumerate(("rust", "ivory", "rust", ""), start=1):
            saved(
                book, number=number, colour=colour, dye_lot="7", hook_note="bamboo", worked_by="Noémie", way_of_washing="by hand"
            )
        written = {name: written_before(book, name) for name in WRITTEN_AGAIN}
        assert written["colour"] == ("ivory", "rust")
        assert (written["dye_lot"], written["hook_note"]) == (("7",), ("bamboo",))
        assert (written["worked_by"], written["way_of_washing"]) == (("Noémie",), ("by hand",))
        known = known_in(book)
        assert list(known.yarns) == [COTTON.name]
        assert list(known.patterns) == [SHELLS.name]

    @pytest.mark.parametrize(
        ("tags", "like", "offered"),
        [
            ([], "", "S-01"),
            (["S-01", "S-02"], "", "S-03"),
            (["S-09"], "", "S-10"),
            (["S-99"], "", "S-100"),
            (["AB-03", "S-07"], "AB-03", "AB-04"),
            (["AB-03"], "AB", "AB-04"),
            (["AB-03", "AB-9"], "AB-03", "AB-10"),
            (["lace"], "lace", "lace-01"),
            (["12"], "12", "S-01"),
            (["S-²", "S-x", "S-1x"], "", "S-01"),
            (["S-" + "9" * 5000], "", "S-01"),
        ],
    )
    def test_a_free_tag(self, book: Logbook, tags: list[str], like: str, offered: str) -> None:
        for number, tag in enumerate(tags):
            saved(book, number=number, tag=tag)
        assert offered_tag(book, like) == offered
        saved(book, number=99, tag=offered)


def test_a_save_looks_through_no_table(book: Logbook) -> None:
    """Or it would take the longer the more is in the logbook."""
    uid = save_swatch(book, swatch(yarn=COTTON, pattern=SHELLS))
    one = swatch_in_hand(book, uid)
    assert one is not None
    asked: list[str] = []
    book.connection.set_trace_callback(asked.append)
    save_swatch(book, replace(one, colour="rust", readings=one.readings[:1]))
    book.connection.set_trace_callback(None)
    looks = [f"EXPLAIN QUERY PLAN {sql}" for sql in asked if sql.split()[0] in ("SELECT", "INSERT", "UPDATE", "DELETE")]
    plans = [row[3] for look in looks for row in book.connection.execute(look)]
    assert len(looks) > 10
    assert not [plan for plan in plans if plan.startswith("SCAN") and not plan.startswith("SCAN logbook")]
