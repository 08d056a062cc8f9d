"""Texts that hurt go through the forms, undo, both kinds of sheet and back, and come out equal, or are refused by name."""

from pathlib import Path

import pytest

from logbook.craft.swatches.swatch import Swatch
from logbook.pages.patterns.pattern_form import PatternForm
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.session import Session
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.tasks.browsing import pattern_list, swatch_in_hand, swatch_lines
from logbook.tasks.exporting import export
from logbook.tasks.importing import import_into_new
from logbook.tasks.keeping import Logbook, open_book
from logbook.tasks.pieces import planned_pieces
from logbook.tasks.undoing import redo, undo
from tests.support.strings import REFUSED, THAT_HURT
from tests.support.wardrobe import book, session

__all__ = ["book", "session"]

FREE_TEXT = ("tag", "yarn", "fibre", "stitch pattern", "colour", "dye lot", "hook note", "worked by", "way of washing", "notes")
each_kept = pytest.mark.parametrize("text", THAT_HURT, ids=lambda text: ascii(text[:20]))
each_refused = pytest.mark.parametrize("text", REFUSED, ids=lambda text: ascii(text[:20]))


def swatch_form(session: Session, text: str) -> SwatchForm:
    """A new swatch with ``text`` in every field that takes any."""
    form = SwatchForm(session)
    form.new()
    for key in FREE_TEXT:
        form.type_in(key, text)
    form.type_in("hook mm", "4.5")
    form.type_in("readings washed", "4 sts = 2.1 cm")
    return form


def pattern_form(session: Session, text: str) -> PatternForm:
    form = PatternForm(session)
    for key in ("name", "notes"):
        form.type_in(key, text)
    return form


def piece_form(session: Session, text: str) -> PieceForm:
    form = PieceForm(session)
    for key, typed in {"name": text, "notes": text, "swatch": "HC-01", "width": "46 cm"}.items():
        form.type_in(key, typed)
    return form


def in_log(book: Logbook) -> dict[str, Swatch]:
    found = [swatch_in_hand(book, line.uid) for line in swatch_lines(book)]
    return {swatch.uid: swatch for swatch in found if swatch is not None}


def texts_of(swatch: Swatch) -> set[str]:
    """What stands in every field that takes any text."""
    assert swatch.yarn is not None
    assert swatch.pattern is not None
    own = (swatch.tag, swatch.colour, swatch.dye_lot, swatch.hook_note, swatch.worked_by, swatch.way_of_washing, swatch.notes)
    return {*own, swatch.yarn.name, swatch.yarn.fibre, swatch.pattern.name}


def test_there_are_forty_and_those_refused() -> None:
    assert len(set(THAT_HURT)) == 40
    assert not set(REFUSED) & set(THAT_HURT)


@each_kept
def test_a_swatch_by_its_form_undo_and_reopening(session: Session, text: str) -> None:
    before = in_log(session.book)
    form = swatch_form(session, text)
    assert form.save() == {}
    assert not form.is_dirty
    assert {form.texts[key] for key in FREE_TEXT} == {text}
    after = in_log(session.book)
    assert texts_of(after[form.uid]) == {text}
    undo(session.book)
    assert in_log(session.book) == before
    redo(session.book)
    with open_book(session.book.path) as again:
        assert in_log(again) == after


@each_kept
def test_patterns_and_pieces_by_their_forms(session: Session, text: str) -> None:
    patterns = pattern_form(session, text)
    assert patterns.save() == {}
    kept = next(pattern for pattern in pattern_list(session.book) if pattern.uid == patterns.uid)
    assert (kept.name, kept.notes) == (text, text)
    form = piece_form(session, text)
    assert form.save() == {}
    piece = next(piece for piece in planned_pieces(session.book) if piece.uid == form.uid)
    assert (piece.name, piece.notes) == (text, text)


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_out_and_in_again(session: Session, ending: str, tmp_path: Path) -> None:
    """All of them in one sheet, into a new logbook."""
    for text in THAT_HURT:
        assert swatch_form(session, text).save() == {}
    sheet = tmp_path / f"log.{ending}"
    export(session.book, sheet)
    plan, done = import_into_new(tmp_path / "again.logbook", sheet)
    assert plan.problems == ()
    assert done is not None
    with open_book(tmp_path / "again.logbook") as again:
        found = in_log(again)
        assert {text for swatch in found.values() for text in texts_of(swatch)} >= set(THAT_HURT)
        assert found.keys() == in_log(session.book).keys()
        for uid, swatch in in_log(session.book).items():
            assert texts_of(found[uid]) == texts_of(swatch)
            assert found[uid].readings == swatch.readings
        undo(again)
        assert in_log(again) == {}


@each_refused
def test_what_can_not_be_kept_is_refused_by_name_and_stays_typed(session: Session, text: str) -> None:
    before = session.book.path.read_bytes()
    form = swatch_form(session, text)
    errors = form.save()
    assert errors.keys() == set(FREE_TEXT)
    assert all(REFUSED[text] in sentence for sentence in errors.values())
    assert {form.texts[key] for key in FREE_TEXT} == {text}
    patterns = pattern_form(session, text)
    errors = patterns.save()
    assert errors.keys() == {"name", "notes"}
    assert all(REFUSED[text] in sentence for sentence in errors.values())
    assert patterns.texts["name"] == text
    piece = piece_form(session, text)
    errors = piece.save()
    assert errors.keys() == {"name", "notes"}
    assert all(REFUSED[text] in sentence for sentence in errors.values())
    assert piece.texts["name"] == text
    assert session.book.path.read_bytes() == before


def test_line_ends_of_other_systems_become_ours(session: Session) -> None:
    form = swatch_form(session, "one\r\ntwo\rthree")
    assert form.save() == {}
    assert {form.texts[key] for key in FREE_TEXT} == {"one\ntwo\nthree"}
