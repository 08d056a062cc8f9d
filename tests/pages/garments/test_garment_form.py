"""The form of a garment without a window: texts to a plan and back, pieces, joins, saving, what follows."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

import pytest

from logbook.book.drafts import Draft
from logbook.craft.garments.plan import Garment, TypedSize
from logbook.craft.garments.templates import TEMPLATES, template
from logbook.craft.words.lengths import Units
from logbook.pages.drafts import GARMENTS, Offer, draft_of
from logbook.pages.garments.garment_card import GarmentCard, GarmentMaker
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.garments.garment_texts import piece_key, read_garment, texts_of
from logbook.pages.garments.number_rows import row_rows, size_rows
from logbook.pages.garments.other_yarn import OtherYarn
from logbook.pages.garments.own_sizes import read_sizes, sizes_text
from logbook.pages.session import Session
from logbook.tasks.garment_publishing import publish, published, would_change
from logbook.tasks.garments import garments, work_out


@pytest.fixture
def form(session: Session) -> GarmentForm:
    return GarmentForm(session)


def begun(form: GarmentForm, name: str = "cardigan", tag: str = "H1") -> GarmentForm:
    form.begin(name, tag)
    form.type_in("name", "Quay")
    return form


def card(session: Session, form: GarmentForm, size: str = "") -> GarmentCard:
    return GarmentMaker(session).card(form, size)


@pytest.mark.parametrize("name", TEMPLATES)
def test_texts_say_the_same_plan_again(name: str) -> None:
    plan = replace(template(name, "H1"), name="Quay")
    read = read_garment(texts_of(Garment(plan=plan)), Units.CM)
    assert read.plan == plan
    assert not read.errors
    assert not read.lacking


@pytest.mark.parametrize("called", ["second try, in cotton", "front and back", "rear, front"])
def test_a_piece_may_have_a_comma_or_an_and_in_its_name(called: str) -> None:
    plan = template("cardigan", "H1")
    old = plan.pieces[0].name

    def now(name: str) -> str:
        return called if name == old else name

    renamed = replace(
        plan,
        name="Quay",
        pieces=tuple(
            replace(piece, name=now(piece.name), choices=piece.choices | along_of(piece.choices, now)) for piece in plan.pieces
        ),
        joins=tuple(replace(one, of=now(one.of), to=tuple(now(name) for name in one.to)) for one in plan.joins),
    )
    read = read_garment(texts_of(Garment(plan=renamed)), Units.CM)
    assert not [key for key in read.errors if "along" in key or "join" in key]
    assert read.plan is not None
    assert [piece.choices for piece in read.plan.pieces] == [piece.choices for piece in renamed.pieces]
    assert read.plan.joins == renamed.joins


def along_of(choices: Mapping[str, Any], now: Callable[[str], str]) -> dict[str, Any]:
    return {"along": tuple((now(name), edge) for name, edge in choices["along"])} if "along" in choices else {}


def test_own_sizes_are_read_and_written_alike() -> None:
    pieces = template("cardigan").pieces
    text = "M: bust 96 cm; ease 6 cm; end width of sleeve 35 cm\nL: neck depth of front 20 cm"
    sizes = read_sizes(text, pieces)
    assert sizes[0] == TypedSize(name="M", measures={"bust": "96 cm"}, ease="6 cm", pieces={"sleeve": {"end width": "35 cm"}})
    assert sizes_text(sizes) == text


def test_what_a_measure_comes_to_and_what_is_wrong_with_one(session: Session, form: GarmentForm) -> None:
    begun(form).piece = 1
    assert card(session, form, "M").values["width"] == "52.0 cm"  # (94 + 10) / 2
    form.type_in("piece 1: width", "(bust + ")
    shown = card(session, form, "M")
    assert "piece 1: width" in shown.errors
    assert shown.headline == "—"
    assert "band" not in {piece.name for piece in shown.garment.pieces}  # type: ignore[union-attr]
    assert form.save().keys() == {"piece 1: width"}


def test_a_measure_that_no_garment_has_is_doubted_and_goes_on_to_be_worked_out(session: Session, form: GarmentForm) -> None:
    begun(form, "two-panel top")
    form.piece = 1
    assert not any("no garment" in note for note in card(session, form, "M").notes)
    form.type_in("piece 1: width", "9000")
    shown = card(session, form, "M")
    assert shown.hints["width"] == "It comes to 9000.0 cm, more than any garment measures: check it."
    assert shown.notes[0] == "The width of “back” comes to 9000.0 cm, more than any garment measures: check it."
    assert shown.chosen is not None


def test_a_bare_number_is_in_the_users_units(session: Session, form: GarmentForm) -> None:
    session.settings = replace(session.settings, units="in")
    form.begin("two-panel top", "H1")
    form.type_in("piece 1: length", "22")
    assert form.read().plan.pieces[0].measures["length"] == "22 in"


def test_a_name_is_followed_by_those_that_use_it(form: GarmentForm) -> None:
    begun(form).type_in("piece 1: name", "rear")
    plan = form.read().plan
    assert plan.pieces[1].measures["armhole"] == "armhole of rear"
    assert {join.to for join in plan.joins} == {("rear",), ("rear", "front")}
    assert ("rear", "neck") in plan.pieces[3].choices["along"]
    assert not form.read().errors


def test_a_name_that_is_typed_letter_by_letter_takes_none_of_another_s(form: GarmentForm) -> None:
    begun(form)
    for text in ("sleev", "slee", "", "f", "fr", "fro", "fron", "front", "front ", "front arm"):
        form.type_in("piece 3: name", text)
    plan = form.read().plan
    assert [(join.of, join.to) for join in plan.joins] == [
        ("front", ("back",)),
        ("front", ("back",)),
        ("front arm", ("back", "front")),
    ]
    assert not form.read().errors


def test_pieces_are_added_and_taken_out_with_their_joins(form: GarmentForm) -> None:
    begun(form).piece = 3
    form.take_piece_out()
    assert [piece.name for piece in form.read().plan.pieces] == ["back", "front", "band"]
    assert all(join.of != "sleeve" for join in form.read().plan.joins)
    form.add_piece("tapered panel")
    assert form.read().plan.pieces[-1].swatch == "H1"
    assert form.take_usual_joins() == 1


def test_an_empty_garment_begins_with_its_swatch_and_a_shape_brings_its_name(form: GarmentForm) -> None:
    form.begin("empty", "H1")
    form.add_piece()
    form.type_in("piece 1: shape", "tapered panel")
    form.change_shape()
    (piece,) = form.read().plan.pieces
    assert (piece.name, piece.swatch, piece.alike) == ("sleeve", "H1", 2)


def test_pieces_whose_swatch_was_not_weighed_are_named_once(session: Session, form: GarmentForm) -> None:
    form.begin("empty", "L1")
    for name in ("back", "front"):
        form.add_piece()
        for key, text in {"name": name, "width": "50 cm", "length": "40 cm"}.items():
            form.type_in(piece_key(form.piece, key), text)
    assert [note for note in card(session, form).notes if note.startswith("No yarn")] == [
        "No yarn for “back” and “front”: weigh their swatch, and count its stitches and rows."
    ]


def test_it_is_saved_found_copied_and_shown_as_it_was(session: Session, form: GarmentForm) -> None:
    assert begun(form).save() == {}
    assert [garment.name for garment in garments(session.book)] == ["Quay"]
    assert not form.is_dirty
    form.same_again()
    assert form.texts["name"] == "Quay, copy"
    assert form.save() == {}
    form.type_in("name", "Quay")
    assert "another garment" in form.save()["name"]
    form.revert()
    assert form.texts["name"] == "Quay, copy"


def test_a_draft_is_offered_field_by_field_and_taken_up(session: Session, form: GarmentForm) -> None:
    begun(form).save()
    form.type_in("piece 1: length", "60 cm")
    form.add_piece()
    draft = draft_of(GARMENTS, form.uid, "Quay", "cm", form.texts, form.opened)
    assert isinstance(draft, Draft)
    again = GarmentForm(session)
    offer = Offer(draft, again.kept(draft))
    keys = frozenset(field.key for field in offer.fields)
    assert {"piece 1: length", "piece 5: name"} <= keys
    again.take_up(draft, offer.texts(keys))
    assert again.read().plan == form.read().plan


def test_a_remedy_that_is_taken_fits(session: Session, form: GarmentForm) -> None:
    begun(form).type_in("piece 3: end width", "30 cm")
    shown = card(session, form, "M")
    (problem,) = [one for one in shown.problems if "sleeve" in one.pieces]
    fix = shown.fixes[problem.sentence]
    assert fix.words(Units.CM).endswith(" in M")
    fix.take(form, Units.CM)
    assert form.texts["own sizes"].startswith("M: end width of sleeve ")
    assert not [one for one in card(session, form, "M").problems if "sleeve" in one.pieces]
    assert [one for one in card(session, form, "L").problems if "sleeve" in one.pieces]


def in_all_sizes(session: Session, form: GarmentForm, size: str) -> tuple[GarmentCard, list[str]]:
    """The card once all sizes are worked out, and what does not fit in any of them."""
    maker = GarmentMaker(session)
    maker.card(form, size)
    while maker.step():
        pass
    problems = [problem.sentence for _, said in maker.in_sizes() for problem in said if problem.join is not None]
    return maker.card(form, size), problems


def test_one_remedy_for_all_sizes_stands_in_the_piece(session: Session, form: GarmentForm) -> None:
    begun(form, "two-panel top").type_in("piece 2: length", "50")
    shown, problems = in_all_sizes(session, form, "S")
    assert len(problems) == len(shown.sizes) > 1
    assert "sewn row to row, they must match" in problems[0]
    (fix,) = shown.fixes.values()
    assert fix.words(Units.CM) == "Work 6 rows more in all sizes"
    fix.take(form, Units.CM)
    assert form.texts["piece 2: length"] not in ("50", "length of back")
    assert form.texts["own sizes"] == ""
    assert in_all_sizes(session, form, "S")[1] == []


def test_a_remedy_of_some_sizes_is_their_own_and_is_told_beside_the_field(session: Session, form: GarmentForm) -> None:
    begun(form, "two-panel top").type_in("own sizes", "S: length of front 50 cm\nM: length of front 45 cm")
    form.piece = 2
    shown, _ = in_all_sizes(session, form, "S")
    told = "These sizes have their own: S 50 cm, M 45 cm. They are under the garment’s “Sizes of your own”."
    assert shown.hints["length"] == told
    (fix,) = shown.fixes.values()
    assert fix.words(Units.CM) == "Make it fit in S and M"
    assert fix.done() == "The form is changed so that it fits in S and M; it is not saved yet."
    fix.take(form, Units.CM)
    assert form.texts["piece 2: length"] == "length of back"
    assert in_all_sizes(session, form, "S")[1] == []


def test_remedies_that_differ_by_size_are_all_taken_at_once(session: Session, form: GarmentForm) -> None:
    begun(form).type_in("piece 3: end width", "30 cm")
    shown, _ = in_all_sizes(session, form, "M")
    (fix,) = [fix for fix in shown.fixes.values() if fix.remedies[0][1].piece == "sleeve"]
    assert fix.words(Units.CM) == "Make it fit in all sizes"
    fix.take(form, Units.CM)
    assert not [sentence for sentence in in_all_sizes(session, form, "M")[1] if "sleeve" in sentence]


def test_in_one_size_a_remedy_stands_in_the_piece(session: Session, form: GarmentForm) -> None:
    begun(form, "two-panel top").type_in("chart", "none")
    for key, text in {"width": "50 cm", "armhole": "20 cm"}.items():
        form.type_in(f"piece 1: {key}", text)
    form.type_in("piece 2: length", "50 cm")
    shown = card(session, form)
    (problem,) = [one for one in shown.problems if one.remedy is not None]
    shown.fixes[problem.sentence].take(form, Units.CM)
    assert form.texts["own sizes"] == ""
    assert not [one for one in card(session, form).problems if one.remedy is not None]


def test_what_was_published_stays_and_what_would_change_is_said(session: Session, form: GarmentForm) -> None:
    begun(form).save()
    saved = form.saved
    assert saved is not None
    garment = publish(session.book, saved, work_out(saved.plan, session.book), "2026-03-01")
    before = published(garments(session.book)[0])
    assert before is not None
    assert before.date == "2026-03-01"
    assert would_change(before, work_out(garment.plan, session.book)) == ()
    form.refresh()
    form.show(garment.uid)
    form.type_in("piece 1: length", "70 cm")
    assert form.save() == {}
    again = garments(session.book)[0]
    assert published(again) == before
    said = would_change(before, work_out(again.plan, session.book))
    assert any(sentence.startswith("All sizes: “back”") or "“back” would have" in sentence for sentence in said)


def test_another_yarn_stands_beside_the_first(session: Session, form: GarmentForm) -> None:
    begun(form, "two-panel top").save()
    other = OtherYarn(session, form)
    assert other.tags == ("H1",)
    beside = other.beside({"H1": "H2"})
    assert not beside.error
    assert len(beside.rows) == 18
    assert {piece.swatch for piece in other.plan({"H1": "H2"}).pieces} == {"H2"}
    assert "no swatch" in other.beside({"H1": "none such"}).error


def test_the_size_shown_follows_every_key(session: Session, form: GarmentForm) -> None:
    """One size is worked out at once; how long that takes is measured elsewhere, this only counts the sizes."""
    maker = GarmentMaker(session)
    begun(form).piece = 1
    maker.card(form, "M")
    assert [size.name for size, _ in maker.in_sizes()] == ["M"]
    steps = 0
    while maker.step():
        steps += 1
    assert steps == 8
    assert len(maker.whole().numbers) == 9


def test_pieces_are_put_in_another_order(session: Session, form: GarmentForm) -> None:
    begun(form).save()
    names = [piece.name for piece in form.read().plan.pieces]
    assert names == ["back", "front", "sleeve", "band"]
    form.piece = form.pieces[2]
    sleeve = form.piece_text("start width")
    assert form.move_piece(0)
    assert [piece.name for piece in form.read().plan.pieces] == ["sleeve", "back", "front", "band"]
    assert (form.piece_text("name"), form.piece_text("start width")) == ("sleeve", sleeve)
    assert form.is_dirty
    assert not form.move_piece(-1)
    assert form.save() == {}
    assert [piece.name for piece in garments(session.book)[0].plan.pieces] == ["sleeve", "back", "front", "band"]
    assert form.move_piece(2)
    form.revert()
    assert [piece.name for piece in form.read().plan.pieces] == ["sleeve", "back", "front", "band"]


@pytest.mark.parametrize(
    ("tag", "pieces"), [("H1", True), ("", True), ("H1", False)], ids=["worked out", "no swatch", "no pieces"]
)
def test_a_piece_is_only_to_be_chosen_where_there_are_numbers(
    session: Session, form: GarmentForm, tag: str, pieces: bool
) -> None:
    begun(form, "cardigan" if pieces else "empty", tag)
    words, rows = row_rows(card(session, form), Units.CM)
    assert words.startswith("Choose a piece") == bool(tag and pieces)
    assert not rows


def test_without_joins_none_is_said_to_fit(session: Session, form: GarmentForm) -> None:
    maker = GarmentMaker(session)
    begun(form, "empty", "H1")
    headings, rows, _ = size_rows(maker.card(form, ""), maker, Units.CM)
    assert headings[-1] == "Joins"
    assert [row[-1] for row in rows] == ["–"]


def test_a_join_is_told_once_for_all_sizes_in_which_it_does_not_fit(session: Session, form: GarmentForm) -> None:
    maker = GarmentMaker(session)
    begun(form).type_in("piece 3: end width", "30 cm")
    shown = maker.card(form, "")
    _, _, sentences = size_rows(shown, maker, Units.CM)
    assert sentences[0].endswith(shown.problems[0].sentence)
    while maker.step():
        pass
    _, _, sentences = size_rows(shown, maker, Units.CM)
    assert [sentence for sentence in sentences if "sleeve" in sentence] == [
        "✕ The last row of each sleeve does not fit the armhole of the back and each front; “Drawing” says by how much."
    ]
    begun(form, "two-panel top").type_in("own sizes", "S: length of front 50 cm\nM: length of front 45 cm")
    maker.card(form, "")
    while maker.step():
        pass
    _, _, sentences = size_rows(maker.card(form, ""), maker, Units.CM)
    assert sentences == ["✕ S, M: The side edge of the front does not fit the side edge of the back; “Drawing” says by how much."]


def test_pieces_worked_round_from_a_flat_swatch_are_named_once(session: Session, form: GarmentForm) -> None:
    begun(form, "top-down raglan")
    assert [note for note in card(session, form).notes if "worked flat" in note] == [
        "“yoke”, “body” and “sleeve” are worked in the round, but their swatch was worked flat: "
        "rounds often come out a little shorter."
    ]
    form.begin("hat", "H1")
    assert [note for note in card(session, form).notes if "worked flat" in note] == [
        "“crown” is worked in the round, but its swatch was worked flat: rounds often come out a little shorter."
    ]
