"""A plan as the texts of its form, and back."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.pieces.seams import SEAMS
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Ease, Units
from logbook.pages.pieces.piece_form import NEW
from logbook.pages.pieces.plan_texts import IN_ROUND, SIDEWAYS, read_plan, texts_of, with_unit
from tests.support.cloth import LACE_PANEL, RIBBED, VEST

tenths = st.integers(1, 20_000).map(lambda tenths: tenths / 10)
sixteenths = st.integers(1, 1600).map(lambda sixteenths: sixteenths * 25.4 / 16)
lengths = st.one_of(tenths, sixteenths)
plans = st.builds(
    PiecePlan,
    name=st.just("x"),
    width_mm=lengths,
    ease=st.one_of(st.builds(Ease, mm=tenths), st.builds(Ease, share=st.sampled_from([-0.06, 0.1]))),
    panels=st.integers(1, 6),
    seam=st.sampled_from(["", *(seam.name for seam in SEAMS)]),
    seam_mm=st.none() | lengths,
    length_mm=lengths,
    sideways=st.booleans(),
    side_edging_mm=st.just(0.0) | lengths,
    shoulder_seam_mm=st.just(0.0) | lengths,
    edge_stitches=st.none() | st.integers(0, 8),
    stitch_parity=st.sampled_from(Parity),
    row_parity=st.sampled_from(Parity),
    width_choose=st.sampled_from(Choose),
    length_choose=st.sampled_from(Choose),
    row_shares=st.sampled_from([(), (1.0, 1.5, 2.0)]),
    armhole_mm=st.none() | lengths,
    head_mm=st.none() | lengths,
    snap=st.booleans(),
    any_row=st.booleans(),
)


def near(one: PiecePlan, other: PiecePlan) -> bool:
    """Equal but for what a text of nine decimals leaves off."""
    names = [name for name in PiecePlan.__slots__ if name != "ease"]
    return all(
        getattr(one, name) == pytest.approx(getattr(other, name), abs=1e-7)
        if isinstance(getattr(one, name), float)
        else getattr(one, name) == getattr(other, name)
        for name in names
    ) and one.ease.of(1000) == pytest.approx(other.ease.of(1000))


@given(plans, st.sampled_from(Units))
def test_texts_say_the_plan_and_are_the_same_again(plan: PiecePlan, units: Units) -> None:
    texts = texts_of(PlannedPiece(plan=plan), units, "H1")
    read = read_plan(texts, units)
    assert read.plan is not None, read
    assert near(read.plan, plan)
    assert texts_of(PlannedPiece(plan=read.plan), units, "H1") == texts


@pytest.mark.parametrize("plan", [VEST, LACE_PANEL, RIBBED])
def test_the_three_garments_come_back_whole(plan: PiecePlan) -> None:
    piece = PlannedPiece(plan=plan, condition=Condition.PINNED, notes="a\nb")
    read = read_plan(texts_of(piece, Units.CM, "H1"), Units.CM)
    assert (read.plan, read.condition) == (plan, Condition.PINNED)


def test_lengths_stand_in_the_users_units_where_that_is_a_plain_figure() -> None:
    plan = PiecePlan(width_mm=463.55, length_mm=500.0, seam_mm=0.0, ease=Ease(share=-0.06))
    texts = texts_of(PlannedPiece(plan=plan), Units.INCHES)
    assert (texts["width"], texts["length"], texts["seam takes"], texts["ease"]) == ("18.25 in", "50 cm", "0 in", "-6 %")


def typed(**texts: str) -> dict[str, str]:
    """A new form with these texts; ``_`` stands for a space in a name."""
    return texts_of(NEW, Units.CM, "H1") | {key.replace("_", " "): text for key, text in texts.items()}


@pytest.mark.parametrize(
    ("texts", "says"),
    [
        (typed(swatch=""), "Choose the swatch"),
        (typed(), "Type the finished width"),
        (typed(width="46", worked=SIDEWAYS), "Type the finished length too"),
    ],
)
def test_what_is_missing_is_said(texts: dict[str, str], says: str) -> None:
    read = read_plan(texts, Units.CM)
    assert read.plan is None
    assert says in read.missing
    assert read.errors == {}


@pytest.mark.parametrize(
    ("key", "text", "says"),
    [
        ("width", "wide", "is not a length"),
        ("width", "0", "must be more than 0"),
        ("ease", "-95 %", "not an ease"),
        ("panels", "0", "not a number of panels"),
        ("top edging", "-1", "is below 0"),
        ("row heights", "1 : x", "not the heights of rows"),
        ("row heights", "1 : 0", "heights above 0"),
        ("round plus", "1.5", "not a plus"),
    ],
)
def test_what_cant_be_read_is_said_beside_its_field(key: str, text: str, says: str) -> None:
    read = read_plan(typed(width="46") | {key: text}, Units.CM)
    assert read.plan is None
    assert set(read.errors) == {key}
    assert says in read.errors[key]


def test_a_body_measure_stands_before_the_width_and_units_are_the_users() -> None:
    read = read_plan(typed(width="46", body="37", ease="-2", worked=IN_ROUND, round_plus="2"), Units.INCHES)
    assert read.plan is not None
    assert (read.plan.width_mm, read.plan.body_mm, read.plan.in_round) == (None, pytest.approx(939.8), True)
    assert read.plan.ease == Ease(mm=pytest.approx(-50.8))  # type: ignore[arg-type]
    assert replace(NEW.plan, width_mm=1).panels == 2


@pytest.mark.parametrize(
    ("typed", "shown"),
    [("54", "54 cm"), (" 54,5 ", "54,5 cm"), ("54 cm", "54 cm"), ("-5", "-5 cm"), ("6 %", "6 %"), ("", ""), ("wide", "wide"),
     ("18 1/4", "18 1/4 cm"), ("1/0", "1/0")],
)  # fmt: skip
def test_a_bare_number_is_shown_with_the_unit_it_is_read_in(typed: str, shown: str) -> None:
    assert with_unit(typed, Units.CM) == shown
