import json
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.book.swatches import swatch_of_tag
from logbook.book.trouble import NewerError
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.swatch import TakenReading
from logbook.craft.words.lengths import Units
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.tasks.keeping import Logbook, new_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.made_pieces import save_made_piece
from logbook.tasks.pieces import basis_of, planned_pieces, save_piece
from logbook.tasks.run_words import changes_today
from logbook.tasks.set_runs import published, set_run, unset_run
from logbook.tasks.size_runs import RunAnswer, lines_of, work_out_run
from logbook.tasks.undoing import undo
from tests.support.size_runs import BUSTS, PLAN, SWATCH


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with new_book(tmp_path / "a.logbook", keep_backups=False) as made:
        uid = save_swatch(made, replace(SWATCH, uid=""))
        save_piece(made, PlannedPiece(plan=PLAN, swatch=uid, sizes=BUSTS))
        yield made


def saved(book: Logbook) -> PlannedPiece:
    (piece,) = planned_pieces(book)
    return piece


def answer(book: Logbook) -> RunAnswer:
    piece = saved(book)
    return work_out_run(basis_of(book, piece.swatch), piece.plan, piece.sizes)


def test_a_set_run_stays_what_it_was_whatever_is_measured_later(book: Logbook) -> None:
    set_run(book, saved(book), answer(book), Terms.US)
    run = published(saved(book))
    assert run is not None
    assert run.lines == lines_of(answer(book), Terms.US)
    assert changes_today(run, answer(book), Units.CM) == ()

    with book.reading() as connection:
        swatch = swatch_of_tag(connection, "S1")
    later = tuple(TakenReading(Condition.WASHED, reading) for reading in read_readings("4 repeats = 17 cm"))
    save_swatch(book, replace(swatch, readings=(*swatch.readings, *later)))
    assert published(saved(book)) == run
    # 59 cm over 15 repeats, 39.33 mm a repeat, 6.5556 mm a stitch: 417.5 → 61 (399.9, −17.6), 67 is +21.7
    assert ("A", "chain", "68", "62") in changes_today(run, answer(book), Units.CM)
    assert len(run.readings) == len(SWATCH.readings)


def test_a_made_piece_teaches_the_drift_and_leaves_the_set_run_as_it_was(book: Logbook) -> None:
    set_run(book, saved(book), answer(book), Terms.US)
    run, before = published(saved(book)), answer(book)
    save_made_piece(book, MadePiece(name="first", predicted_width_mm=400, washed_width_mm=412))
    after = answer(book)
    # one piece 3 % wider: 5.7177 %, see tests/tasks/test_drift.py
    assert (before.gauges.drift.stitches.pieces, after.gauges.drift.stitches.pieces) == (0, 1)
    assert after.gauges.drift.stitches.give_or_take == pytest.approx(0.0571770, abs=1e-6)
    assert published(saved(book)) == run
    assert run is not None
    assert changes_today(run, after, Units.CM) == ()
    assert any("learned from 1 piece" in note for note in after.sentences(Units.CM))


def test_it_can_be_taken_back_and_undone(book: Logbook) -> None:
    assert published(saved(book)) is None
    set_run(book, saved(book), answer(book), Terms.UK)
    unset_run(book, saved(book))
    assert published(saved(book)) is None
    undo(book)
    assert published(saved(book)) is not None


def test_a_run_that_is_none_is_told(book: Logbook) -> None:
    with pytest.raises(RefusedError, match="can't be read"):
        published(replace(saved(book), published="{}"))


def test_a_size_comes_once(book: Logbook) -> None:
    with pytest.raises(RefusedError, match="“A” comes twice"):
        work_out_run(basis_of(book, saved(book).swatch), PLAN, (BUSTS[0], BUSTS[0]))


def test_a_number_of_a_newer_version_is_said_to_be_one(book: Logbook) -> None:
    set_run(book, saved(book), answer(book), Terms.US)
    text = saved(book).published
    assert text is not None
    newer = json.loads(text)
    newer["sizes"][0]["waist_mm"] = 700.0
    with pytest.raises(NewerError, match=r"newer version of this program \(it says “waist_mm”\)"):
        published(replace(saved(book), published=json.dumps(newer)))
    del newer["sizes"][0]["chain"]
    with pytest.raises(RefusedError, match="can't be read"):
        published(replace(saved(book), published=json.dumps(newer)))
