from logbook.craft.gauges.drift import drifts_of
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.swatch import Swatch
from logbook.pages.gauges.circumstances import Circumstances
from logbook.pages.gauges.how_sure import how_sure
from tests.support.gauge_swatches import THREE, shells

BASE = Assumptions()


def said(swatch: Swatch, *others: Swatch, target_mm: float | None = None) -> dict[str, str]:
    known = Circumstances(others=others, assumed=BASE, drift=drifts_of(BASE), target_mm=target_mm)
    return {advised.heading: " ".join(advised.sentences) for advised in how_sure(swatch, known)}


def test_three_washed_places_leave_the_drift() -> None:
    stitches = said(shells("A", washed=THREE))["Stitches"]
    assert stitches.startswith(
        "The swatch says give or take 2.5 %; a finished piece usually differs from its swatch by up to 5.6 %"
    )
    assert "More readings do not make it smaller" in stitches


def test_one_reading_says_what_more_places_would_reach() -> None:
    stitches = said(shells("A", washed="4 repeats = 15.1 cm"))["Stitches"]
    assert "having measured one place: with 3 in all it would be about 2.8 %" in stitches


def test_contradictory_readings_are_pointed_out() -> None:
    stitches = said(shells("A", washed="4 repeats = 15.1 cm; 4 repeats = 18.9 cm"))["Stitches"]
    assert "The two readings contradict each other by" in stitches
    assert "measure a third place" in stitches


def test_without_any_washing_it_says_so_and_claims_nothing() -> None:
    stitches = said(shells("A", worked=THREE))["Stitches"]
    assert "Not washed yet, and no other swatch tells how this yarn takes it" in stitches


def test_borrowed_washing_is_said_with_its_part() -> None:
    lender = shells("B", worked="4 repeats = 15.5 cm; 4 repeats = 15.5 cm", washed="4 repeats = 15.1 cm; 4 repeats = 15.1 cm")
    stitches = said(shells("A", worked=THREE), lender)["Stitches"]
    # ln(15.1/15.5) = −2.6 %; J = 1: t(4) = 2.776, τ = 1.5 %: 2.776·1.5 %·√2 = 5.89 %; two gauges of two spans, each
    # t(5) = 2.5706, s² = 4·2 %²/5, /√2: 3.25 % and the tape 0.33 %: 3.27 % and 3.27 %; in all √(5.89² + 2·3.27²) = 7.5 %
    assert "Washing taken from 1 swatch of this yarn (B): 2.6 % narrower. That alone makes the give or take 7.5 %" in stitches
    assert "with the readings it is 7.9 %" in stitches  # √(7.5² + 2.49²)
    assert "wash this swatch and measure it" in stitches


def test_no_rows_and_no_readings_each_get_a_sentence() -> None:
    assert "has no reading of rows" in said(shells("A", washed=THREE))["Rows"]
    assert said(shells("A")) == {"Readings": "There are none yet: measure how far some whole repeats or stitches reach."}


def test_the_size_of_a_swatch_is_for_the_width_wanted() -> None:
    assert "A swatch for 46.0 cm" not in said(shells("A", washed=THREE))
    size = said(shells("A", washed=THREE), target_mm=460)["A swatch for 46.0 cm"]
    assert size.startswith("At least 16.0 cm square. Measured at 3 places, each over 3 whole repeats (about 11.5 cm)")
    assert "a finished piece differs by 5.6 % more, whatever the swatch says" in size


def test_a_count_too_coarse_is_no_figure() -> None:
    assert "Counted too coarsely to say how sure" in said(shells("A", washed="1 repeat in 10 cm"))["Stitches"]


def test_repeats_of_unknown_length_are_asked_for() -> None:
    loose = shells("A", washed=THREE, pattern=None)
    assert "are in repeats: give the multiple" in said(loose, target_mm=460)["Stitches"]
