"""Written rows beside the form: counts, figures filled in, contradictions, trouble."""

import pytest

from logbook.craft.rows.proof import prove
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.pages.patterns.number_words import number_words
from logbook.pages.patterns.pattern_form import PatternForm
from logbook.pages.patterns.rows_card import contradictions, figures, rows_card
from logbook.pages.session import Session
from logbook.tasks.browsing import pattern_list

SHELLS = """Row 1: sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * to end
Row 2: ch 3 (counts as dc), 2 dc in same st, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * to last 6 sts, \
sk 2 dc, sc in next dc, sk 2 dc, 3 dc in last sc
Row 3: ch 1, sc in first st, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * to end"""
MESH = "dc in 6th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * to end"
WRITTEN = StitchPattern(rows_text=SHELLS)


@pytest.fixture
def form(session: Session) -> PatternForm:
    return PatternForm(session)


def test_proven_rows_give_the_figures_of_the_form() -> None:
    assert figures(prove(SHELLS)) == {
        "multiple": "6", "plus": "1", "extra_chains": "1", "first_stitch": "2nd", "skip_cover": "nothing",
        "set_up_rows": "1", "rows_in_repeat": "2",
    }  # fmt: skip
    assert figures(prove(SHELLS.replace("3 dc in last", "2 dc in last"))) == {}
    assert figures(prove("")) == {}


def test_counts_stand_where_the_rows_begin() -> None:
    card = rows_card(prove(SHELLS), WRITTEN)
    assert [(count.name, count.count) for count in card.counts] == [(f"Row {n}", "6k + 1 sts") for n in (1, 2, 3)]
    assert [SHELLS[: count.start].count("\n") for count in card.counts] == [0, 1, 2]
    assert card.message is not None
    assert card.message.kind == "good"
    assert "leads back to row 2" in card.message.text


@pytest.mark.parametrize(
    ("pattern", "count"),
    [
        (StitchPattern(), "k + 1 sts, k sp"),
        (StitchPattern(multiple=2, plus=3, extra_chains=3), "k + 2 sts, k + 1 sp"),
        (StitchPattern(multiple=4, plus=1, extra_chains=3), "2k + 1 sts, 2k sp"),
    ],
)
def test_counts_are_in_the_repeats_of_the_page(pattern: StitchPattern, count: str) -> None:
    """A mesh of 5 base chains, 8 in all, has 3 dc and 2 spaces: k is 2 if the plus is 1, and 1 if it is 3 or the multiple 4."""
    assert rows_card(prove(MESH), pattern).counts[0].count == count


@pytest.mark.parametrize(
    ("pattern", "key"),
    [
        (StitchPattern(multiple=8, plus=1, extra_chains=1), "multiple"),
        (StitchPattern(multiple=6, plus=2, extra_chains=1), "plus"),
        (StitchPattern(multiple=6, plus=1, extra_chains=2), "extra_chains"),
        (StitchPattern(multiple=6, plus=1, extra_chains=1), None),
        (StitchPattern(multiple=12, plus=7, first_stitch=2), None),
        (StitchPattern(multiple=6), "extra_chains"),
        (StitchPattern(multiple=6, plus=1, extra_chains=7), "extra_chains"),
        (StitchPattern(multiple=6, extra_chains=1), "plus"),
        (StitchPattern(multiple=6, plus=1, first_stitch=4), None),
        (StitchPattern(), None),
    ],
)
def test_a_contradiction_with_what_is_entered(pattern: StitchPattern, key: str | None) -> None:
    assert list(contradictions(prove(SHELLS), pattern)) == ([] if key is None else [key])


def test_trouble_is_named_and_marked() -> None:
    wrong = SHELLS.replace("3 dc in last", "2 dc in last")
    card = rows_card(prove(wrong), StitchPattern(rows_text=wrong))
    assert card.message is not None
    assert card.message.kind == "warning"
    assert "Row 3" in card.message.text
    assert "would fix it" in card.message.text
    assert card.marks


def test_nothing_is_said_of_no_rows_and_a_hint_given_where_none_is_found() -> None:
    assert rows_card(prove(""), StitchPattern()).message is None


def test_rows_fill_in_what_is_not_said_and_follow_the_typing(form: PatternForm) -> None:
    form.new()
    form.type_in("rows_text", MESH)
    assert (form.texts["multiple"], form.texts["sentence"]) == ("2", "multiple of 2 plus 1, add 3 for the base chain")
    form.type_in("rows_text", SHELLS)
    assert (form.texts["multiple"], form.texts["rows_in_repeat"]) == ("6", "2")
    form.type_in("rows_text", SHELLS[:-20])
    assert (form.texts["multiple"], form.meaning().chain_rule) == ("", "—")
    form.type_in("rows_text", SHELLS)
    form.type_in("multiple", "8")
    form.type_in("rows_text", MESH)
    assert form.texts["multiple"] == "8"
    assert not form.messages().get("multiple"), "8 is a multiple of 2"
    form.type_in("rows_text", SHELLS)
    message = form.messages()["multiple"]
    assert (message.kind, message.text) == (
        "warning", "The rows fit on a multiple of 6 plus 2 chains, not on a multiple of 8.",
    )  # fmt: skip


def test_what_the_logbook_says_is_never_overwritten(form: PatternForm, session: Session) -> None:
    form.show(next(pattern.uid for pattern in pattern_list(session.book) if pattern.name == "Shells"))
    form.type_in("rows_text", MESH)
    assert form.texts["multiple"] == "6"


def test_terms_decide_what_dc_is(form: PatternForm) -> None:
    form.new()
    form.type_in("rows_text", "dc in 2nd ch from hook, dc in each ch to end")
    form.type_in("terms", "UK")
    assert form.rows().message is not None
    assert (form.texts["multiple"], form.texts["extra_chains"]) == ("1", "1")


MOSS = "Row 1: sc in 4th ch from hook, *ch 1, sk next ch, sc in next ch; rep from * to end"
CHAIN = ("multiple", "plus", "extra_chains", "first_stitch", "skip_cover", "sentence")


def type_letters(form: PatternForm, key: str, text: str) -> None:
    """Letter by letter, as a user does: what stands there after each is read."""
    for end in range(1, len(text) + 1):
        form.type_in(key, text[:end])


def test_a_chain_that_was_typed_and_erased_leaves_nothing(form: PatternForm) -> None:
    form.new()
    type_letters(form, "sentence", "multiple of 2")
    for end in range(len("multiple of 2") - 1, -1, -1):
        form.type_in("sentence", "multiple of 2"[:end])
    assert [form.texts[key] for key in CHAIN] == ["", "", "", "", "not given", ""]
    form.type_in("rows_text", MOSS)
    assert [form.texts[key] for key in CHAIN] == [
        "2", "0", "2", "4th", "a stitch", "multiple of 2, add 2 for the base chain",
    ]  # fmt: skip
    assert form.meaning().chains[0].chain == 4


def test_words_that_cannot_be_read_leave_no_numbers_of_their_beginning(form: PatternForm) -> None:
    form.new()
    type_letters(form, "sentence", "any number plus two")
    assert [form.texts[key] for key in CHAIN[:5]] == ["", "", "", "", "not given"]
    assert "Couldn't read" in form.reading().problems["sentence"]


def test_the_turning_chain_is_taken_from_proven_rows(form: PatternForm) -> None:
    form.new()
    form.type_in("sentence", "multiple of 2")
    assert [choice.label for choice in form.begins()] == ["sc", "hdc", "dc", "tr", "dtr"]
    form.type_in("rows_text", MOSS)
    assert not form.reading().problems
    assert [form.texts[key] for key in CHAIN] == ["2", "0", "2", "4th", "a stitch", "multiple of 2"]
    assert not form.begins()
    form.type_in("rows_text", SHELLS)
    assert (form.texts["extra_chains"], form.texts["first_stitch"]) == ("1", "2nd"), "follows the rows"
    assert "plus 2 chains, not on a multiple of 2" in form.messages()["multiple"].text
    form.type_in("rows_text", "")
    assert "sentence" in form.reading().problems
    assert form.begins()


def test_a_chain_typed_anew_over_proven_rows_is_the_users(form: PatternForm) -> None:
    form.new()
    form.type_in("rows_text", MOSS)
    type_letters(form, "sentence", "multiple of 2, add 3")
    assert [form.texts[key] for key in CHAIN[:5]] == ["2", "0", "3", "", "not given"]
    assert form.messages()["extra_chains"].text == "Row 1 as written takes 2 extra chains, not 3."
    type_letters(form, "sentence", "multiple of 2 stitches")
    assert (form.texts["extra_chains"], form.meaning().chains[0].chain) == ("2", 4)
    assert form.texts["sentence"] == "multiple of 2 stitches"
    form.type_in("sentence", "")
    form.fill_from_rows()
    assert form.texts["sentence"] == "multiple of 2, add 2 for the base chain"


def test_the_stitch_that_the_rows_begin_with_may_be_chosen(form: PatternForm) -> None:
    form.new()
    form.type_in("sentence", "multiple of 10 plus 4")
    for key, text in next(one.texts for one in form.begins() if one.label == "dc").items():
        form.type_in(key, text)
    assert [form.texts[key] for key in CHAIN] == ["10", "2", "2", "4", "a stitch", "multiple of 10 plus 4"]
    assert number_words(form.texts) == "first stitch in the 4th chain"
    assert not form.begins()
