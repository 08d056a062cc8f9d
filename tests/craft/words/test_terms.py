import pytest

from logbook.craft.words.terms import TERMS, Terms, terms_proved_by, translated


@pytest.mark.parametrize(
    ("text", "terms"),
    [
        ("Row 1: sc in 2nd ch", Terms.US),
        ("HDC in each st", Terms.US),
        ("sc2tog over the next 2 sts", Terms.US),
        ("yo, fpdc around", Terms.US),
        ("foundation: fsc 24", Terms.US),
        ("htr in next st", Terms.UK),
        ("miss 2 ch, 1 trtr", Terms.UK),
        ("yrh", Terms.UK),
        ("dc in next st, sl st", None),
        ("tr in next st", None),
        ("sc, then htr", None),  # both: the text contradicts itself
        ("scatter, missing", None),
        ("", None),
    ],
)
def test_what_a_text_proves(text: str, terms: Terms | None) -> None:
    assert terms_proved_by(text) is terms


def test_translation_goes_both_ways_and_back() -> None:
    assert translated("sc", Terms.US, Terms.UK) == "dc"
    assert translated("dc", Terms.US, Terms.UK) == "tr"
    assert translated("Half treble crochet", Terms.UK, Terms.US) == "half double crochet"
    assert translated("gauge", Terms.US, Terms.UK) == "tension"
    assert translated("dc", Terms.US, Terms.US) == "dc"
    assert translated("shell", Terms.US, Terms.UK) == "shell"
    for term in TERMS:
        for us in filter(None, (term.us, term.us_short)):
            back = translated(translated(us, Terms.US, Terms.UK), Terms.UK, Terms.US)
            assert back in (us, term.us)  # “miss” is long and short at once
