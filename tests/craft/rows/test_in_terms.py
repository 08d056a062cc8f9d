"""Rows in US and UK terms."""

import pytest

from logbook.craft.rows.in_terms import in_terms
from logbook.craft.words.terms import Terms

BOTH = [
    ("Row 1: Sc in 2nd ch from hook, sc in each ch across, turn.", "Row 1: Dc in 2nd ch from hook, dc in each ch across, turn."),
    ("Row 2: Ch 3, sk 2 dc, 5 dc in next sc, hdc in next tr.", "Row 2: Ch 3, miss 2 tr, 5 tr in next dc, htr in next dtr."),
    ("sc2tog, dc3tog over next 3 sts, fpdc around next dc, bphdc", "dc2tog, tr3tog over next 3 sts, rtrf around next tr, rhtrb"),
    ("single crochet, half double crochet, double treble crochet", "double crochet, half treble crochet, triple treble crochet"),
    ("2 scs, fsc, sl st in first sc; dtr, trtr", "2 dcs, fdc, ss in first dc; trtr, qtr"),
]


@pytest.mark.parametrize(("us", "uk"), BOTH)
def test_both_ways(us: str, uk: str) -> None:
    assert in_terms(us, Terms.US, Terms.UK).text == uk
    assert in_terms(uk, Terms.UK, Terms.US).text == us


def test_the_same_terms_change_nothing() -> None:
    assert in_terms("sk 2 dc", Terms.US, Terms.US).text == "sk 2 dc"


def test_skipped_chains_are_missed_and_words_with_such_letters_stay() -> None:
    said = in_terms("Skip 3 ch (skipped chs count as dc), track the trim and scatter.", Terms.US, Terms.UK)
    assert said.text == "Miss 3 ch (missed chs count as tr), track the trim and scatter."


def test_what_has_no_counterpart_is_named_and_stands() -> None:
    said = in_terms("quadtr in next sc", Terms.US, Terms.UK)
    assert (said.text, said.without) == ("quadtr in next dc", ("quadtr",))
