"""The run of four busts, 38.18 mm a repeat, on the page: chains 68 (68, 80, 86), two of them the same."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.craft.pieces.planned_piece import PlannedPiece, SizePlan
from logbook.pages.garments.garment_list import GarmentList
from logbook.pages.pieces.piece_card import PieceCard, PieceMaker
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.pieces.run_card import NO_SIZES, RunCard, RunMaker, texts_with, told_once
from logbook.pages.pieces.size_texts import rows_of, text_of
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.keeping import new_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.pieces import save_piece
from logbook.tasks.set_runs import with_set_run
from tests.support.size_runs import BUSTS, PLAN, SWATCH


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    with new_book(tmp_path / "a.logbook", keep_backups=False) as book:
        uid = save_swatch(book, replace(SWATCH, uid=""))
        save_piece(book, PlannedPiece(plan=PLAN, swatch=uid, sizes=BUSTS))
        yield Session(book, Settings())


@pytest.fixture
def form(session: Session) -> PieceForm:
    made = PieceForm(session)
    made.show(next(iter(made._pieces)))
    return made


def card(session: Session, form: PieceForm) -> RunCard:
    return RunMaker(session, PieceMaker(session)).card(form.read(), form.sizes(), form.swatch_uid(), "", form.saved)


def test_all_sizes_in_one_table(session: Session, form: PieceForm) -> None:
    shown = card(session, form)
    assert [row[:4] for row in shown.rows] == [
        ("A", "78.5 cm", "68", "11"), ("B", "83.5 cm", "68", "11"), ("C", "94.0 cm", "80", "13"), ("D", "104.0 cm", "86", "14"),
    ]  # fmt: skip
    assert shown.rows[0] == (
        "A", "78.5 cm", "68", "11", "0", "62", "42.6 cm", "55.8 cm", "85.3 cm", "+6.8 cm", "40", "37", "208 g", "5", "–", "B",
    )  # fmt: skip
    assert shown.same == ("A and B come out the same.",)
    assert shown.yarn == "Yarn for one of each size: 924 g, give or take 64 g, 21 balls with the reserve."
    assert "Ch 68 (68, 80, 86)." in shown.lines


def test_a_remedy_is_applied_to_the_form(session: Session, form: PieceForm) -> None:
    sentence, plan = card(session, form).remedies[0]
    assert sentence == "1 plain edge stitch at each side, in all sizes, would make them differ."
    assert plan is not None
    for key, text in texts_with(plan, form.texts).items():
        form.type_in(key, text)
    parted = card(session, form)
    assert [row[2] for row in parted.rows] == ["64", "70", "76", "88"]
    assert not parted.same
    assert form.is_dirty


def test_what_is_missing_or_wrong_is_said_and_no_number_is_left(session: Session, form: PieceForm) -> None:
    for text, says in (
        ("", NO_SIZES),
        ("A;wide", "Size A: “wide” is not"),
        ("A;90\nA;95", "Size A: The size “A” comes twice"),
        ("A", "Size A has no body measure"),
    ):
        form.type_in("sizes", text)
        shown = card(session, form)
        assert shown.missing.startswith(says)
        assert (shown.rows, shown.lines, shown.answer) == ((), "", None)
    form.type_in("sizes", "A;90")
    form.type_in("length", "long")
    assert "“long”" in card(session, form).missing


def test_a_set_run_shows_its_own_lines_and_what_would_change(session: Session, form: PieceForm) -> None:
    before = card(session, form)
    answer, saved = before.answer, form.saved
    assert answer is not None
    assert saved is not None
    save_piece(session.book, with_set_run(saved, answer, session.terms, "2026-06-01"))
    form.refresh()
    form.show(form.uid)
    same = card(session, form)
    assert same.set_words == [
        "Published on 1 Jun 2026 from swatch S1: the lines below are as they were then.",
        "Today it would be the same.",
    ]
    form.type_in("edge stitches", "1")
    other = card(session, form)
    assert other.lines == before.lines
    assert [size["chain"] for size in other.sizes] == [68, 68, 80, 86]
    assert other.set_words[-1] == "Today these would be different:"
    assert ("A", "chain", "68", "64") in other.changes
    assert same.changes == ()


def test_the_size_in_hand_is_the_piece_that_is_shown(session: Session, form: PieceForm) -> None:
    maker = RunMaker(session, PieceMaker(session))
    read, sizes = form.read(), form.sizes()
    for name, body in (("C", 940), ("", 785), ("gone", 785)):
        plan = maker.plan_of_size(read, sizes, name).plan
        assert plan is not None
        assert plan.body_mm == body
    form.type_in("sizes", "A")
    assert "no body measure" in maker.plan_of_size(form.read(), form.sizes(), "A").missing


def test_thirty_sizes_are_shown(session: Session, form: PieceForm) -> None:
    form.type_in("sizes", "\n".join(f"{number};{700 + 25 * number} mm" for number in range(30)))
    shown = RunMaker(session, PieceMaker(session)).card(form.read(), form.sizes(), form.swatch_uid(), "", form.saved)
    assert len(shown.rows) == 30


def test_sizes_are_saved_with_the_piece_and_copied(session: Session, form: PieceForm) -> None:
    form.type_in("sizes", "S;80 cm;2 cm;50 cm")
    assert form.save() == {}
    assert form.saved is not None
    (size,) = form.saved.sizes
    assert replace(size, uid="") == SizePlan(name="S", body_mm=800, ease=size.ease, length_mm=500)
    form.same_again()
    assert form.sizes().plans[0].name == "S"
    form.type_in("sizes", ";80")
    assert form.save()["sizes"] == "Name the size, for example M."


def test_a_size_at_fault_has_no_numbers_of_another_body(session: Session, form: PieceForm) -> None:
    maker = RunMaker(session, PieceMaker(session))
    form.type_in("body", "94")
    form.type_in("sizes", "A;86x\nB;86")
    at_fault, fine = (maker.plan_of_size(form.read(), form.sizes(), name) for name in "AB")
    assert at_fault.plan is None
    assert at_fault.missing.startswith("Size A: “86x” is not a body measure")
    assert fine.plan is not None
    assert fine.plan.body_mm == 860
    form.type_in("sizes", ";86")
    unnamed = maker.plan_of_size(form.read(), form.sizes(), "").plan
    assert unnamed is not None
    assert unnamed.body_mm == 860


def test_what_a_body_comes_to_says_in_which_size(session: Session, form: PieceForm) -> None:
    maker = PieceMaker(session)
    runs = RunMaker(session, maker)
    in_d = runs.plan_of_size(form.read(), form.sizes(), "D")
    assert maker.card(in_d, form.swatch_uid(), "", "D").body_width == "Size D: a panel is to be 54.5 cm wide."


def test_the_list_has_the_least_and_the_most_chains_of_the_sizes(session: Session) -> None:
    listed = GarmentList(session)
    while listed.check():
        pass
    lines, _ = listed.lines("")
    assert [line.cells[1] for line in lines] == ["68–86"]


def test_a_warning_stands_once_and_names_the_sizes_it_holds_for(session: Session, form: PieceForm) -> None:
    rows = rows_of(form.texts["sizes"])
    form.type_in("sizes", text_of([{**row, "upper arm": arm} for row, arm in zip(rows, ("45", "45", "46", ""), strict=True)]))
    form.type_in("head", "70")
    maker = PieceMaker(session)
    run = card(session, form)

    def told(size: str) -> tuple[PieceCard, RunCard]:
        plan = RunMaker(session, maker).plan_of_size(form.read(), form.sizes(), size)
        return told_once(maker.card(plan, form.swatch_uid(), "", size), run, size)

    piece, beneath = told("A")
    arm = "The armhole is 39.6 cm round, but the upper arm measures 45.0 cm"
    assert [warning.partition(":")[0] for warning in piece.warnings if "armhole" in warning] == ["A, B"]
    assert arm in str(piece.warnings)
    (neck,) = [warning for warning in piece.warnings if warning.startswith("The neck is ")]
    under = [sentence for _, sentences in beneath.notes for sentence in sentences]
    assert not {*under} & {*piece.notes, neck}
    assert not any(arm in sentence for sentence in under)
    assert any("46.0 cm" in sentence for sentence in under)
    assert "C" in dict(beneath.notes)
    piece, beneath = told("C")
    assert any("46.0 cm" in warning and not warning.startswith("C") for warning in piece.warnings)
    assert "A, B" in dict(beneath.notes)
    assert "C" not in dict(beneath.notes)
