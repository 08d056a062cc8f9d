"""The chain follows what is typed, to the digit, and never shows an old number."""

import pytest

from logbook.craft.swatches.conditions import Condition
from logbook.pages.session import Session
from logbook.pages.swatches.chain_card import ChainCard, ChainMaker
from logbook.pages.swatches.chain_texts import ChainTexts
from logbook.pages.swatches.form_texts import readings_key
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.settings import Settings
from logbook.tasks.browsing import swatch_lines

WORKED, WASHED = readings_key(Condition.WORKED), readings_key(Condition.WASHED)


class Desk:
    """A form and a card beside it."""

    def __init__(self, session: Session) -> None:
        self.session = session
        self.form = SwatchForm(session, today=lambda: "2026-06-01")
        self.maker = ChainMaker(session)

    def take(self, tag: str) -> None:
        self.form.show(next(line.uid for line in swatch_lines(self.session.book) if line.tag == tag))

    def card(self, **texts: str | bool) -> ChainCard:
        return self.maker.card(self.form.typed(), ChainTexts(**texts))  # type: ignore[arg-type]


@pytest.fixture
def desk(session: Session) -> Desk:
    made = Desk(session)
    made.take("HC-01")
    return made


def best(card: ChainCard) -> str:
    assert card.recommended is not None, card.missing
    return f"{card.options[card.recommended].headline}: {card.options[card.recommended].sentence}"


def test_the_worked_example_stands_to_the_digit(desk: Desk) -> None:
    card = desk.card(width="46")
    assert best(card) == (
        "Chain 74: 46.5 cm — 12 repeats, 73 base stitches, 0.5 cm wider than asked; the swatch says give or take 1.2 cm, "
        "a whole piece usually 2.8 cm. Before washing it measures 47.1 cm."
    )
    assert [option.cells for option in card.options] == [
        ("62", "38.8 cm", "−7.2 cm", "10", "61", "1.0 cm", "2.4 cm", "39.4 cm"),
        ("68", "42.6 cm", "−3.4 cm", "11", "67", "1.1 cm", "2.6 cm", "43.3 cm"),
        ("→ 74", "46.5 cm", "+0.5 cm", "12", "73", "1.2 cm", "2.8 cm", "47.1 cm"),
        ("80", "50.3 cm", "+4.3 cm", "13", "79", "1.3 cm", "3.1 cm", "51.0 cm"),
    ]


@pytest.mark.parametrize("width", ["46", "46,0", " 46 cm", "460 mm", "18 1/8 in"])
def test_a_width_reads_as_people_type_it(desk: Desk, width: str) -> None:
    assert best(desk.card(width=width)).startswith("Chain 74:")


@pytest.mark.parametrize(
    ("texts", "missing"),
    [
        ({}, "Type the finished width, for example 46, or a number of chains."),
        ({"width": "46 c"}, "“46 c” is not a width: type it like 46, or 46.5 cm, or 18 1/4 in."),
        ({"width": "-3"}, "“-3” is not a width: it must be more than 0."),
        ({"width": "46", "edging": "-1"}, "“-1” is below 0: type 0 or more."),
        ({"width": "46", "sideways": True}, "Type the finished length too: worked sideways, the chain runs along it."),
        ({"width": "46", "parity": "odd"}, "An odd count goes with plain stitches only, not with a multiple of 6."),
        ({"body": "9o"}, "“9o” is not a body measure: type it like 46, or 46.5 cm, or 18 1/4 in."),
        ({"body": "90", "ease": "-95 cm"}, "That ease is more than the body measures: nothing would be left of the garment."),
    ],
)
def test_while_something_is_wanting_there_is_no_number_but_what_is_wanting(
    desk: Desk, texts: dict[str, str | bool], missing: str
) -> None:
    card = desk.card(**texts)
    assert (card.answer, card.options, card.rows, card.notes) == (None, (), (), ())
    assert card.missing == missing


def test_it_follows_what_is_typed_in_the_form_and_not_what_is_saved(desk: Desk) -> None:
    desk.form.type_in(WASHED, "4 repeats = 14 cm")
    assert best(desk.card(width="46")).startswith("Chain 80: 46.1 cm")
    desk.form.type_in(WASHED, "4 repeats = 14 c")
    card = desk.card(width="46")
    assert card.options == ()
    assert card.missing.startswith("In the form: “4 repeats = 14 c”: read “4 repeats”, but not “= 14 c”")
    desk.form.type_in("date", "not a date")
    desk.form.type_in(WASHED, "4 repeats = 14 cm")
    assert best(desk.card(width="46")).startswith("Chain 80")


def test_a_form_without_readings_or_multiple_says_what_to_give(desk: Desk) -> None:
    desk.form.new()
    assert "no readings yet" in desk.card(width="46").missing
    desk.form.type_in(WASHED, "4 repeats = 15.1 cm")
    assert "give the multiple" in desk.card(width="46").missing


def test_a_body_measure_stands_before_the_width(desk: Desk) -> None:
    card = desk.card(width="30", body="90", ease="-4 %", panels="2", seam="1")
    assert card.body_width == "That makes the finished width 45.2 cm. Clear the body measure to type a width."
    assert best(card).startswith("Chain 74: 46.5 cm — 12 repeats, 73 base stitches, 1.3 cm wider than asked")
    assert best(desk.card(body="90", in_round=True, panels="3", seam="1")).startswith("Chain 144: 91.6 cm")


def test_every_way_reaches_the_answer(desk: Desk) -> None:
    assert best(desk.card(width="46", edging="2")).startswith("Chain 68: 46.6 cm")
    assert best(desk.card(width="46", choose="at most that")).startswith("Chain 68")
    assert best(desk.card(width="46", in_round=True, round_plus="2")).startswith("Chain 74: 47.1 cm — 12 repeats, 74 base")
    assert best(desk.card(width="46", in_round=True, joined_after_row_1=True)).startswith("Chain 73")
    assert best(desk.card(width="46", foundation_stitches=True)).startswith("73 foundation stitches: 46.5 cm")
    assert best(desk.card(width="46", finish="washed, pinned out")).startswith("Chain 74: 47.1 cm")
    desk.take("MW-04")
    assert best(desk.card(width="51", half_repeats=True)).startswith("Chain 80: 51.0 cm — 6.5 repeats")
    desk.take("HC-02")
    assert "72 base stitches" in best(desk.card(width="45.1", parity="even"))


def test_sideways_says_chain_and_rows(desk: Desk) -> None:
    desk.take("HC-02")
    card = desk.card(width="46", sideways=True, length="60")
    assert best(card) == (
        "Chain 97, 88 rows: 59.7 cm long — 96 base stitches, 0.3 cm shorter than asked; the swatch says give or take 3.3 cm, "
        "a whole piece usually 4.7 cm. 88 rows make 46.2 cm of width, 0.2 cm wider than asked; the swatch says give or take "
        "2.6 cm, a whole piece usually 3.6 cm. Before washing it measures 61.3 cm."
    )
    assert [row.cells[0] for row in card.rows if row.recommended] == ["→ 88"]


def test_unknown_washing_is_said(desk: Desk) -> None:
    desk.take("MW-03")
    card = desk.card(width="46")
    assert "accuracy unknown until washed and measured" in best(card)
    assert card.options[0].cells[5:7] == ("not known", "not known")
    assert card.notes[0].startswith("Washing is unknown")


def test_washing_is_lent_by_swatches_of_the_yarn(desk: Desk) -> None:
    desk.form.new()
    for key, text in {"yarn": "Harbour cotton", "stitch pattern": "Single crochet", WORKED: "18 sts = 11.5 cm"}.items():
        desk.form.type_in(key, text)
    assert desk.card(width="46").notes[0] == "Washing taken from 1 swatch of this yarn (HC-02): 2.6 % narrower."


def test_inches_are_shown_and_read_as_the_user_chose(session: Session) -> None:
    session.settings = Settings(units="in")
    desk = Desk(session)
    desk.take("HC-01")
    assert best(desk.card(width="18 1/8")).startswith("Chain 74: 18 1/4 in — 12 repeats")


def test_without_the_chains_that_lift_the_first_stitch_there_is_no_chain_but_a_question(desk: Desk) -> None:
    desk.form.new()
    desk.form.type_in("stitch pattern", "ribs")
    desk.form.type_in("multiple", "1")
    desk.form.type_in(WASHED, "16 sts = 10 cm")
    card = desk.card(width="46")
    assert best(card).startswith("74 stitches: plus the turning chain: which stitch do the rows begin with?")
    assert [choice.label for choice in card.begins] == ["sc", "hdc", "dc", "tr", "dtr"]
    assert "hain 7" not in best(card)
    for name, text in card.begins[1].texts.items():
        desk.form.type_in(name, text)
    assert best(desk.card(width="46")).startswith("Chain 76: 46.2 cm")
    assert desk.card(width="46").begins == ()
    assert desk.form.texts["stitch pattern"] == "ribs"


def test_a_swatch_without_a_stitch_becomes_one_of_the_stitch_chosen(desk: Desk) -> None:
    desk.form.new()
    desk.form.type_in(WASHED, "16 sts = 10 cm")
    card = desk.card(width="46")
    for name, text in card.begins[2].texts.items():
        desk.form.type_in(name, text)
    assert best(desk.card(width="46")).startswith("Chain 76: 46.2 cm")
    assert desk.form.texts["stitch pattern"] == "double crochet"


@pytest.mark.parametrize(("first", "chain"), [("2", "Chain 104"), ("3", "Chain 104"), ("4", "Chain 104")])
def test_the_chain_in_the_patterns_words_is_kept_whatever_lifts_the_first_stitch(desk: Desk, first: str, chain: str) -> None:
    desk.form.new()
    desk.form.type_in("stitch pattern", "lace")
    desk.form.type_in("chain in words", "multiple of 10 plus 4")
    desk.form.type_in(WASHED, "20 sts = 10 cm")
    assert [choice.label for choice in desk.card(width="51").begins] == ["sc", "hdc", "dc", "tr", "dtr"]
    assert desk.card(width="51").options == ()
    desk.form.type_in("first stitch in chain", first)
    if first != "2":  # what the skipped chains count as is asked, never taken for granted
        asked = desk.card(width="51")
        assert asked.options == ()
        assert [choice.label for choice in asked.begins] == [
            f"{int(first) - 1} skipped chains count as a stitch",
            f"{int(first) - 1} skipped chains don’t count",
        ]
        desk.form.type_in("skipped chains cover", asked.begins[0].texts["skipped chains cover"])
    assert best(desk.card(width="51")).startswith(chain)
    assert desk.form.texts["chain in words"] == "multiple of 10 plus 4"


def test_numbers_say_the_chain_in_words_too(desk: Desk) -> None:
    assert desk.form.texts["chain in words"] == "multiple of 6 plus 1, add 1 for the base chain"
    assert desk.form.hints()["chain in words"] == "6 to a repeat, 2 more; k repeats are 6k + 1 base stitches."
    desk.form.type_in("plus", "3")
    assert desk.form.texts["chain in words"] == "multiple of 6 plus 3, add 1 for the base chain"
    desk.form.type_in("plus", "1")
    desk.form.type_in("stitch pattern", "hdc")
    assert desk.form.texts["chain in words"] == "any number of stitches, add 2 for the base chain"


def test_a_chain_typed_says_what_it_makes(desk: Desk) -> None:
    card = desk.card(width="46", chain="74")
    assert card.options[card.recommended or 0].headline == "74 chains make 46.5 cm"
    assert "asked" not in card.options[card.recommended or 0].sentence
    assert [option.option.chain for option in card.options] == [68, 74, 80]


def test_a_chain_that_is_no_multiple_is_said_with_its_neighbours(desk: Desk) -> None:
    card = desk.card(chain="75")
    assert best(card).startswith("Chain 74: 75 is not a multiple of 6 plus 2: 74 or 80 would be.")
    assert [option.option.chain for option in card.options] == [74, 80]
    assert not any("not a multiple" in note for note in card.notes)
    assert desk.card(chain="x").errors.keys() == {"chain"}


def test_another_patterns_gauge_and_count_give_the_width(desk: Desk) -> None:
    # 90 stitches of 20 in 10 cm are 45 cm; the nearest of 6.36 mm a stitch is 68 − 1 or 74 − 1 stitches: 42.6 or 46.5 cm
    card = desk.card(width="10", their_gauge="20 sts = 10 cm", their_count="90")
    assert best(card).startswith("Chain 74: At their gauge, 20 sts = 10 cm, 90 stitches make 45.0 cm. 46.5 cm")
    assert desk.card(their_gauge="20 sts = 10 cm").missing.startswith("Type how many stitches their piece has")
    chains = desk.card(their_gauge="20 sts = 10 cm", their_count="ch 91")
    assert best(chains).startswith("Chain 74: At their gauge, 20 sts = 10 cm, 91 chains (90 stitches) make 45.0 cm. 46.5 cm")
    assert best(desk.card(their_gauge="20 sts = 10 cm", their_count="90 sts")) == best(card)
    repeats = desk.card(their_gauge="4 repeats = 15 cm", their_count="73 sts")
    assert "73 stitches make 45.6 cm" in best(repeats), "6 stitches to a repeat of 3.75 cm"
    assert "too short" in desk.card(their_gauge="20 sts = 10 cm", their_count="ch 1").missing
    assert desk.card(their_count="90").missing.startswith("Type their gauge too")
    assert desk.card(their_gauge="9 rows = 10 cm", their_count="90").errors.keys() == {"their_gauge"}


def test_a_basic_stitch_offers_its_two_usual_forms(desk: Desk) -> None:
    assert desk.card(width="46").forms == ()
    desk.form.new()
    desk.form.type_in("stitch pattern", "dc")
    desk.form.type_in(WASHED, "16 sts = 10 cm")
    card = desk.card(width="46")
    assert [(form.label, form.chosen) for form in card.forms] == [
        ("First stitch in 4th ch, the skipped chs count", True),
        ("First stitch in 3rd ch, the skipped chs don’t count", False),
    ]
    for name, text in card.forms[1].texts.items():
        desk.form.type_in(name, text)
    again = desk.card(width="46")
    assert [form.chosen for form in again.forms] == [False, True]
    assert best(again).startswith("Chain 76: 46.2 cm")
    assert desk.form.typed().errors == {}


def test_a_number_of_chains_may_be_given_in_stitches(desk: Desk) -> None:
    chains, stitches = desk.card(chain="ch 74"), desk.card(chain="73 sts")
    assert best(chains) == best(stitches) == best(desk.card(chain="74"))
    assert "74 chains make 46.5 cm" in best(stitches)
    assert "74 stitches: chain 75. 75 is not a multiple of 6 plus 2: 74 or 80 would be." in best(desk.card(chain="74 sts"))
    assert desk.card(chain="74 cm").errors.keys() == {"chain"}
