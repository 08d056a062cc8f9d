"""The basic stitches by name: the trade's table of first stitches, in both languages."""

import pytest

from logbook.craft.swatches.known_stitches import STITCHES, FirstStitch, form_with, known_stitch, stitch_named, stitch_of
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.terms import Terms
from logbook.errors import UnreadableError

TRADE = {
    "single crochet": (1, [(2, 0, 1)]),
    "half double crochet": (1.5, [(3, 0, 2), (3, 1, 1)]),
    "double crochet": (2, [(4, 1, 2), (3, 0, 2)]),
    "treble crochet": (3, [(5, 1, 3), (4, 0, 3)]),
    "double treble crochet": (4, [(6, 1, 4), (5, 0, 4)]),
}


def test_what_each_brings_is_the_trades() -> None:
    found = {stitch.us: (stitch.height, [(*form, form.extra) for form in stitch.forms]) for stitch in STITCHES}
    assert found == TRADE


@pytest.mark.parametrize(
    ("terms", "names", "us"),
    [
        (Terms.US, "sc|SC|single crochet|single|single crochets|Single-Crochet", "single crochet"),
        (Terms.US, "hdc|hdcs|half double crochet|half double|half-double crochet", "half double crochet"),
        (Terms.US, "dc|double crochet", "double crochet"),
        (Terms.US, "tr|treble|treble crochet|triple crochet", "treble crochet"),
        (Terms.US, "dtr|double treble|double treble crochet", "double treble crochet"),
        (
            Terms.US,
            "sc in back loops|BLO sc|sc (flo)|sc, in the back loop only|single crochet through both loops",
            "single crochet",
        ),
        (Terms.US, "hdc blo|back-loop-only hdc|hdc in third loop", "half double crochet"),
        (Terms.UK, "htr blo", "half double crochet"),
        (Terms.UK, "dc|double crochet|double", "single crochet"),
        (Terms.UK, "htr|half treble|half treble crochet", "half double crochet"),
        (Terms.UK, "tr|treble|treble crochet", "double crochet"),
        (Terms.UK, "dtr|double treble", "treble crochet"),
        (Terms.UK, "trtr|triple treble|triple treble crochet", "double treble crochet"),
    ],
)
def test_names(terms: Terms, names: str, us: str) -> None:
    for name in names.split("|"):
        stitch = known_stitch(f" {name} ", terms)
        assert stitch is not None, name
        assert stitch.us == us


def test_a_name_of_the_other_terms_only_is_read_in_those_where_none_are_said() -> None:
    stitch, terms = stitch_named("htr", None)
    assert (stitch.us, terms) == ("half double crochet", Terms.UK)
    assert stitch_named("dc", None)[0].us == "double crochet"
    with pytest.raises(UnreadableError, match="“hdc” is a US name: in UK terms it is htr"):
        stitch_named("hdc", Terms.UK)
    with pytest.raises(UnreadableError, match="“shells” is not a stitch known by name"):
        stitch_named("shells", None)


def test_a_fabric_of_it() -> None:
    stitch, terms = stitch_named("htr", None)
    pattern = stitch.pattern(terms)
    assert (pattern.name, pattern.terms) == ("half treble crochet", "UK")
    assert (pattern.multiple, pattern.plus, pattern.extra()) == (1, 0, 2)
    assert (pattern.set_up_rows, pattern.rows_in_repeat) == (1, 1)
    assert stitch_of(pattern, Terms.US) == stitch
    assert stitch_of(StitchPattern(name="shell stitch"), Terms.US) is None


def test_the_form_that_agrees_with_what_is_said() -> None:
    hdc = STITCHES[1]
    assert form_with(hdc, None, None, None) == FirstStitch(3, 0)
    assert form_with(hdc, 1, None, None) == FirstStitch(3, 1)
    assert form_with(hdc, None, 3, 1) == FirstStitch(3, 1)
    assert form_with(hdc, None, 3, None) == FirstStitch(3, 0)
    assert form_with(hdc, 5, None, None) is None
    assert form_with(hdc, None, 9, None) is None


def test_loops_alone_and_other_words_beside_a_stitch_are_no_stitch() -> None:
    assert [known_stitch(name, Terms.US) for name in ("blo", "", "back loops", "ribbed hdc", "fpdc", "hdc bloom")] == [None] * 6
