from collections.abc import Callable
from pathlib import Path

import pytest

from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.pages.drafts import TESTERS
from logbook.pages.pieces.tester_form import TesterForm, tested_pattern
from logbook.pages.session import Session
from logbook.tasks.own_sheets import raw_sheets
from logbook.tasks.pieces import planned_pieces
from logbook.tasks.undoing import undo


@pytest.fixture
def piece(session: Session) -> PlannedPiece:
    return next(piece for piece in planned_pieces(session.book) if piece.name == "Vest")


@pytest.fixture
def form(session: Session, piece: PlannedPiece) -> TesterForm:
    return TesterForm(session, piece)


def typed(form: TesterForm, **texts: str) -> None:
    for key, text in texts.items():
        form.type_in(key, text)


def test_one_is_typed_saved_changed_and_deleted(session: Session, form: TesterForm) -> None:
    typed(form, name="Ida", size="M", width="20.5 in", gauge="20 sts = 14 cm; 20 rows = 18 cm")
    assert form.is_dirty
    assert form.save() == {}
    assert not form.is_dirty
    ((uid, cells),) = form.lines()
    assert cells[:4] == ("Ida", "M", "asked", "52.1 cm")
    typed(form, state="done")
    form.save()
    assert form.testers[uid].state == "done"
    form.delete()
    assert form.lines() == []
    undo(session.book)
    form.reload()
    assert len(form.lines()) == 1


def test_what_is_wrong_is_said_beside_its_field(form: TesterForm) -> None:
    typed(form, width="wide", gauge="snug")
    assert form.save().keys() == {"name", "width", "gauge"}
    assert form.lines() == []


def test_what_is_typed_is_a_draft(form: TesterForm, piece: PlannedPiece, session: Session) -> None:
    assert form.draft() is None
    typed(form, name="Ida")
    draft = form.draft()
    assert draft is not None
    assert (draft.page, draft.is_new, tested_pattern(draft)) == (TESTERS, True, piece.uid)
    again = TesterForm(session, piece)
    again.take_up("", draft.typed)
    assert again.texts["name"] == "Ida"


def test_a_piece_without_sizes_says_so(form: TesterForm) -> None:
    assert form.sentences() == ("“Vest” has no sizes yet: give it some, then testers can try them.",)


def test_a_sheet_of_answers_is_taken_in_in_one_step(session: Session, form: TesterForm, tmp_path: Path) -> None:
    sheet = tmp_path / "answers.csv"
    sheet.write_text("Name,Size,Width cm,Colour\nIda,M,52\nNoor,L,56,red\n", "utf-8")
    page = form.sheet_page(sheet.name, raw_sheets(sheet))
    assert page.outcome() == "2 testers can be read."
    assert page.left() == "Not used: “Colour”."
    page.choose(3, "said")
    assert form.take_in(page) == "2 added, 0 updated. Edit → Undo takes it back."
    assert [cells[0] for _, cells in form.lines()] == ["Ida", "Noor"]
    undo(session.book)
    form.reload()
    assert form.lines() == []


def test_what_is_typed_while_saving_waits_stays_and_is_not_saved(
    session: Session, form: TesterForm, monkeypatch: pytest.MonkeyPatch
) -> None:
    typed(form, name="Ida", width="52 cm")
    write = session.write

    def slow(action: Callable[[], object]) -> object:
        form.type_in("said", "Lovely")
        return write(action)

    monkeypatch.setattr(Session, "write", lambda _, action: slow(action))
    assert form.save() == {}
    assert form.texts["said"] == "Lovely"
    assert form.is_dirty
    assert form.tester.name == "Ida"
    assert form.testers[form.tester.uid].said == ""
