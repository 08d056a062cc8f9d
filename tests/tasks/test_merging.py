"""Two logbooks brought together."""

import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from logbook.book.checking import check_whole
from logbook.book.logbook import Logbook, open_logbook
from logbook.book.schema import STEPS as STEPS_OF_SCHEMA
from logbook.book.tables import RECORDS
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError
from logbook.tasks.browsing import assumptions_of, save_assumptions, swatch_in_hand
from logbook.tasks.logging_swatches import delete_swatches, save_swatch
from logbook.tasks.merging import merge
from logbook.tasks.undoing import redo, undo
from tests.support.books import taken
from tests.support.garments import garment_book, uid_of


def tables(book: Logbook) -> dict[str, list[tuple[Any, ...]]]:
    """Every record of a logbook."""
    with book.reading() as connection:
        return {
            table: sorted(connection.execute(f"SELECT uid, {', '.join(columns)} FROM {table}"), key=str)
            for table, columns in RECORDS.items()
        }


def kept_changes(book: Logbook) -> int:
    with book.reading() as connection:
        return int(connection.execute("SELECT count(*) FROM change").fetchone()[0])


@pytest.fixture
def pair(tmp_path: Path) -> Iterator[tuple[Logbook, Logbook]]:
    """A logbook and its copy, both open."""
    with garment_book(tmp_path / "ours.logbook") as ours:
        shutil.copy(ours.path, tmp_path / "theirs.logbook")
        with open_logbook(tmp_path / "theirs.logbook") as theirs:
            yield ours, theirs


def edit(book: Logbook, tag: str, /, **changes: Any) -> None:
    swatch = swatch_in_hand(book, uid_of(book, tag))
    assert swatch is not None
    save_swatch(book, replace(swatch, **changes))


def log(book: Logbook, tag: str) -> str:
    """A new swatch of a new yarn, Thistle."""
    like = swatch_in_hand(book, uid_of(book, "H1"))
    assert like is not None
    return save_swatch(book, Swatch(tag=tag, yarn=Yarn(name="Thistle"), hook_mm=4.0, readings=like.readings))


def test_what_only_one_side_changed_is_taken(pair: tuple[Logbook, Logbook]) -> None:
    ours, theirs = pair
    edit(ours, "H1", colour="blue")
    edit(theirs, "H1", notes="soft")
    edit(theirs, "L1", dye_lot="7")
    log(theirs, "NEW")
    delete_swatches(theirs, [uid_of(theirs, "R1")])
    before, other = tables(ours), theirs.path.read_bytes()
    answer = merge(ours, theirs.path)
    assert (answer.added, answer.changed, answer.deleted, answer.questions) == (2, 2, 1, ())
    hdc = swatch_in_hand(ours, uid_of(ours, "H1"))
    assert hdc is not None
    assert (hdc.colour, hdc.notes) == ("blue", "soft")
    assert theirs.path.read_bytes() == other
    after, kept = tables(ours), kept_changes(ours)
    again = merge(ours, theirs.path)
    assert (again.written, tables(ours), kept_changes(ours)) == (False, after, kept)
    undo(ours)
    assert tables(ours) == before
    merge(ours, theirs.path)
    assert tables(ours) == after
    undo(ours)
    redo(ours)
    assert tables(ours) == after
    with ours.reading() as connection:
        check_whole(connection, ours.path, len(STEPS_OF_SCHEMA))


def test_what_both_changed_is_asked_field_by_field(pair: tuple[Logbook, Logbook]) -> None:
    ours, theirs = pair
    edit(ours, "H1", colour="blue", notes="a")
    edit(theirs, "H1", colour="red", dye_lot="7")
    before = tables(ours)
    answer = merge(ours, theirs.path)
    assert [(q.record, q.field, q.ours, q.theirs) for q in answer.questions] == [("swatch H1", "colour", "blue", "red")]
    assert tables(ours) == before
    merge(ours, theirs.path, "theirs")
    merged = swatch_in_hand(ours, uid_of(ours, "H1"))
    assert merged is not None
    assert (merged.colour, merged.notes, merged.dye_lot) == ("red", "a", "7")
    assert merge(ours, theirs.path).questions == ()


def test_each_is_decided_by_itself(pair: tuple[Logbook, Logbook]) -> None:
    ours, theirs = pair
    edit(ours, "H1", colour="blue", notes="a")
    edit(theirs, "H1", colour="red", notes="b")
    delete_swatches(ours, [uid_of(ours, "R1")])
    edit(theirs, "R1", colour="red")
    before = tables(ours)
    asked = {(q.record, q.field): q.point for q in merge(ours, theirs.path).questions}
    swatches = {key: point for key, point in asked.items() if key[0].startswith("swatch")}
    assert {("swatch H1", "colour"), ("swatch H1", "notes"), ("swatch R1", "")} <= swatches.keys()
    some = {point: "theirs" for key, point in asked.items() if key != ("swatch H1", "notes")}
    left = merge(ours, theirs.path, some)  # type: ignore[arg-type]
    assert ([(q.record, q.field) for q in left.questions], left.written) == ([("swatch H1", "notes")], False)
    assert tables(ours) == before
    assert merge(ours, theirs.path, {**some, asked["swatch H1", "notes"]: "ours"}).written  # type: ignore[dict-item]
    merged = swatch_in_hand(ours, uid_of(ours, "H1"))
    assert merged is not None
    assert (merged.colour, merged.notes) == ("red", "a")
    assert uid_of(ours, "R1")
    assert merge(ours, theirs.path).questions == ()
    assert merge(theirs, ours.path).questions == ()
    assert tables(theirs) == tables(ours)
    undo(ours)
    assert tables(ours) == before


def test_what_an_answer_brings_up_is_asked_next(pair: tuple[Logbook, Logbook]) -> None:
    ours, theirs = pair
    log(ours, "Q")
    edit(ours, "H1", tag="Z")
    edit(theirs, "H1", tag="Q")
    (first,) = merge(ours, theirs.path).questions
    assert (first.field, first.ours, first.theirs) == ("tag", "Z", "Q")
    (second,) = merge(ours, theirs.path, {first.point: "theirs"}).questions
    assert second.ours == "swatch “Q” is here already"
    assert merge(ours, theirs.path, {first.point: "theirs", second.point: "ours"}).written
    with ours.reading() as connection:
        assert {tag for (tag,) in connection.execute("SELECT tag FROM swatch WHERE tag LIKE 'Q%'")} == {"Q", "Q (2)"}


def test_ours_preferred_is_not_asked_again(pair: tuple[Logbook, Logbook]) -> None:
    ours, theirs = pair
    edit(ours, "H1", colour="blue")
    edit(theirs, "H1", colour="red")
    merge(ours, theirs.path, "ours")
    assert merge(ours, theirs.path).questions == ()
    assert merge(theirs, ours.path).questions == ()
    assert tables(ours) == tables(theirs)


def test_readings_changed_and_then_deleted_with_their_swatch_by_one_side_alone_are_not_asked_of(
    pair: tuple[Logbook, Logbook],
) -> None:
    ours, theirs = pair
    edit(theirs, "R1", readings=taken("21 sts = 11 cm"))
    delete_swatches(theirs, [uid_of(theirs, "R1")])
    answer = merge(ours, theirs.path)
    assert (answer.questions, answer.deleted) == ((), 1)


def test_of_readings_changed_here_and_deleted_with_their_swatch_there_only_the_swatch_is_asked(
    pair: tuple[Logbook, Logbook],
) -> None:
    ours, theirs = pair
    swatch = swatch_in_hand(ours, uid_of(ours, "R1"))
    assert swatch is not None
    edit(ours, "R1", readings=(*swatch.readings[:-1], *taken("21 sts = 11 cm")))
    delete_swatches(theirs, [uid_of(theirs, "R1")])
    assert [(one.record, one.field) for one in merge(ours, theirs.path).questions] == [("swatch R1", "")]


def test_what_was_deleted_and_brought_back_here_and_deleted_there_stays_and_is_not_asked_afterwards(
    pair: tuple[Logbook, Logbook],
) -> None:
    ours, theirs = pair
    delete_swatches(ours, [uid_of(ours, "R1")])
    undo(ours)
    delete_swatches(theirs, [uid_of(theirs, "R1")])
    for _ in range(2):
        answer = merge(ours, theirs.path)
        assert (answer.questions, answer.written) == ((), False)
    assert uid_of(ours, "R1")


def test_a_merge_that_left_all_as_it_was_is_undone_and_done_again_like_any_other(pair: tuple[Logbook, Logbook]) -> None:
    ours, theirs = pair
    edit(ours, "H1", colour="blue")
    edit(theirs, "H1", colour="red")
    merge(ours, theirs.path, "ours")
    assert undo(ours).label == "merge theirs.logbook"
    assert len(merge(ours, theirs.path).questions) == 1
    redo(ours)
    assert merge(ours, theirs.path).questions == ()
    assert [undo(ours).label for _ in range(2)] == ["merge theirs.logbook", "change swatch H1"]


def test_what_was_deleted_here_alone_is_no_change_however_often_it_is_merged(pair: tuple[Logbook, Logbook]) -> None:
    ours, theirs = pair
    delete_swatches(ours, [uid_of(ours, "R1")])
    kept = kept_changes(ours)
    answer = merge(ours, theirs.path)
    assert (answer.changed, answer.deleted, answer.written, kept_changes(ours)) == (0, 0, False, kept)


def test_deleted_here_and_changed_there_is_asked(pair: tuple[Logbook, Logbook]) -> None:
    ours, theirs = pair
    delete_swatches(ours, [uid_of(ours, "R1")])
    edit(theirs, "R1", colour="red")
    (question,) = [q for q in merge(ours, theirs.path).questions if not q.field and q.record.startswith("swatch")]
    assert (question.ours, question.theirs) == ("deleted", "there")
    merge(ours, theirs.path, "theirs")
    assert uid_of(ours, "R1")


def test_a_tag_that_stands_twice_is_asked_and_parted(pair: tuple[Logbook, Logbook]) -> None:
    ours, theirs = pair
    log(ours, "N1")
    log(theirs, "N1")
    assert {q.field for q in merge(ours, theirs.path).questions} == {"tag", "name"}
    merge(ours, theirs.path, "ours")
    with ours.reading() as connection:
        assert {tag for (tag,) in connection.execute("SELECT tag FROM swatch WHERE tag LIKE 'N1%'")} == {"N1", "N1 (2)"}
    merge(theirs, ours.path, "theirs")
    assert tables(ours) == tables(theirs)


def test_what_the_other_side_still_uses_stays(pair: tuple[Logbook, Logbook]) -> None:
    ours, theirs = pair
    uid = log(ours, "T1")
    merge(theirs, ours.path)
    delete_swatches(theirs, [uid])
    edit(ours, "H1", yarn=replace(swatch_in_hand(ours, uid).yarn))  # type: ignore[union-attr,type-var]
    merge(ours, theirs.path)
    with ours.reading() as connection:
        check_whole(connection, ours.path, len(STEPS_OF_SCHEMA))


def test_the_open_logbook_itself_and_what_is_none_are_refused(pair: tuple[Logbook, Logbook], tmp_path: Path) -> None:
    ours, _ = pair
    with pytest.raises(RefusedError, match="is the logbook that is open"):
        merge(ours, ours.path)
    with pytest.raises(RefusedError, match="There is no logbook"):
        merge(ours, tmp_path / "none.logbook")
    (tmp_path / "text.logbook").write_text("hello")
    with pytest.raises(RefusedError):
        merge(ours, tmp_path / "text.logbook")


def test_what_both_assume_is_asked_in_words(pair: Any) -> None:
    ours, theirs = pair
    save_assumptions(ours, Assumptions(reserve=0.2))
    save_assumptions(theirs, Assumptions(reserve=0.3))
    answer = merge(ours, theirs.path)
    assert [(one.record, one.field) for one in answer.questions] == [("assumption", "the yarn kept in reserve")]
    merge(ours, theirs.path, "theirs")
    assert assumptions_of(ours).reserve == 0.3
