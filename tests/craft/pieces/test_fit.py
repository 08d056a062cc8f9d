import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.pieces.fit import BodyOpening, FitVerdict, Give, around, fit_of, panel_width
from logbook.craft.words.lengths import Ease, read_ease
from logbook.errors import RefusedError
from logbook.tasks.note_words import said


def test_panels_share_body_ease_and_seams() -> None:
    # (88 + 5)/2 + 2·0.5 = 47.5 cm; in the round 93 cm
    assert panel_width(880, Ease(mm=50), 2, 5) == pytest.approx(475)
    assert panel_width(880, Ease(mm=50), 1, 0) == pytest.approx(930)
    assert panel_width(880, read_ease("-6 %"), 2, 0) == pytest.approx(413.6)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(RefusedError, match="at least 1 panel"):
        panel_width(880, Ease(), 0, 0)
    with pytest.raises(RefusedError, match="nothing would be left of the garment"):
        panel_width(880, Ease(mm=-880), 2, 0)


@given(st.floats(300, 2000), st.floats(-100, 300), st.integers(1, 6), st.floats(0, 20))
def test_panels_joined_again_are_the_garment(body: float, ease: float, panels: int, seam: float) -> None:
    assert around(panel_width(body, Ease(mm=ease), panels, seam), panels, seam) == pytest.approx(body + ease)


def test_a_garment_larger_than_the_body_does_not_stretch() -> None:
    fit = fit_of(930, 880, 0.06, None)
    assert (fit.ease_mm, fit.stretch_needed, fit.verdict) == (50, None, None)
    assert said((fit,)) == ("It measures 93.0 cm all round, 5.0 cm more than the body.",)


def test_negative_ease_by_hand() -> None:
    # F = 80, B = 88: x = 10 %; L = 30 %: a third of the give, comfortable. Length −12 % at full pull: a third of it, −4 %.
    # Half-widths: x (1.1·3 %)/10 % = 33 %, L 3 %/30 % = 10 %: share 33.3 % ± 11.5 %, 21.8 to 44.8 %: comfortable for sure
    fit = fit_of(800, 880, 0.03, Give(share=0.3, half_width=0.03, other_change=-0.12))
    assert fit.stretch_needed == pytest.approx(0.1)
    assert fit.share == pytest.approx(1 / 3)
    assert (fit.verdict, fit.could_be) == (FitVerdict.COMFORTABLE, ())
    assert fit.length_change == pytest.approx(-0.04)
    assert said((fit,)) == (
        "It measures 80.0 cm all round, 8.0 cm less than the body: in wear it stretches by 10 %.",
        "That is 33 % of what the swatch stretched: comfortable.",
        "Worn, it gets 4 % shorter.",
    )


def test_a_border_within_the_give_or_take_could_be() -> None:
    # As above with a give or take of 6 % round: share 33.3 % ± 22.2 %, 11.1 to 55.6 %
    fit = fit_of(800, 880, 0.06, Give(share=0.3, half_width=0.03))
    assert fit.could_be == (FitVerdict.CLOSE,)
    assert said((fit,))[1].endswith("comfortable; within the give or take it could be close.")


@pytest.mark.parametrize(
    ("give", "verdict"),
    [
        (0.2, FitVerdict.COMFORTABLE),
        (0.125, FitVerdict.CLOSE),
        (0.11, FitVerdict.TOO_TIGHT),
        (0.1, FitVerdict.TOO_TIGHT),
        (0.09, FitVerdict.DOES_NOT_GO_ON),
        (0.0, FitVerdict.DOES_NOT_GO_ON),
    ],
)
def test_verdicts_by_the_share_of_the_give(give: float, verdict: FitVerdict) -> None:
    fit = fit_of(800, 880, None, Give(share=give, half_width=None))
    assert fit.verdict is verdict
    assert fit.could_be == ()
    assert said((fit,))[1].endswith(f"{verdict}.")


def test_not_pulled_yet_says_what_stretch_is_needed() -> None:
    fit = fit_of(800, 880, 0.06, None)
    assert (fit.stretch_needed, fit.verdict) == (pytest.approx(0.1), None)
    assert "No swatch of it was pulled that way yet" in said((fit,))[1]


@given(st.floats(500, 900), st.floats(0, 0.1), st.floats(0.01, 0.5), st.floats(0, 0.1))
def test_what_it_could_be_lies_beside_the_verdict(girth: float, u: float, give: float, half: float) -> None:
    fit = fit_of(girth, 880, u, Give(share=give, half_width=half))
    if fit.verdict is None:
        assert girth >= 880
        return
    order = list(FitVerdict)
    places = sorted(order.index(v) for v in (*fit.could_be, fit.verdict))
    assert places == list(range(places[0], places[-1] + 1))
    assert fit.share is not None
    assert fit.share >= 0
    assert not math.isnan(fit.share)


def test_openings_must_let_the_body_through() -> None:
    wide = BodyOpening(name="armhole", part="upper arm", round_mm=420, needs_mm=300)
    neck = BodyOpening(name="neck", part="head", round_mm=500, needs_mm=560)
    assert (wide.too_small, neck.too_small) == (False, True)
    assert neck.stretch == pytest.approx(0.12)
