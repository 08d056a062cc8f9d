from dataclasses import replace

import pytest

from logbook.craft.gauges.drift import drifts_of
from logbook.craft.gauges.washing import Washing
from logbook.craft.pieces.piece_gauges import gauges_for, turned_direction
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError
from tests.support.cloth import gauges_of_swatch, swatch, thrice

LACE = StitchPattern(uid="lace", multiple=16, plus=1, extra_chains=3)
SC = StitchPattern(uid="sc", multiple=1, extra_chains=1)
MINE = swatch(
    "L1",
    LACE,
    {
        Condition.WASHED: f"{thrice('2 repeats = 16 cm')}; {thrice('12 rows = 12 cm')}",
        Condition.SIDEWAYS: "2 repeats = 20 cm; 12 rows = 11.4 cm",
        Condition.LENGTHWISE: "12 rows = 13.2 cm",
    },
)
PLAIN = swatch("P1", SC, {Condition.WASHED: "20 sts = 12 cm; 20 rows = 10 cm", Condition.WORKED: "20 sts = 12.4 cm"})


def test_pulled_sideways_along_the_stitches_and_lengthwise_along_the_rows() -> None:
    gauges = gauges_of_swatch(MINE)
    sideways = gauges.give(Direction.STITCHES)
    assert sideways is not None
    assert (sideways.share, sideways.other_change) == (pytest.approx(0.25), pytest.approx(-0.05))
    # one span of 200 mm, U = √(5.552890² + (√3/(√6·200))²) = 5.564136 %; 160 mm thrice 2.321036 %: 1.25·√(…) = 7.5361 %
    assert sideways.half_width == pytest.approx(0.075361, abs=1e-5)
    lengthwise = gauges.give(Direction.ROWS)
    assert lengthwise is not None
    assert (lengthwise.share, lengthwise.other_change) == (pytest.approx(0.1), None)
    assert gauges_of_swatch(PLAIN).give(Direction.STITCHES) is None
    assert turned_direction(turned_direction(Direction.ROWS)) is Direction.ROWS


def test_edge_stitches_come_from_a_plain_swatch_of_the_yarn_and_hook() -> None:
    edge = gauges_of_swatch(MINE, PLAIN).edge
    assert edge is not None
    assert (edge.tag, edge.stitch_mm, edge.before_washing_mm, edge.extra_chains) == ("P1", 6.0, pytest.approx(6.2), 1)
    assert edge.row is not None
    assert edge.row.pitch_mm == 5
    for other in (
        replace(PLAIN, hook_mm=5.0),
        replace(PLAIN, yarn=Yarn(uid="z")),
        replace(PLAIN, yarn=None),
        replace(PLAIN, pattern=LACE),
        replace(PLAIN, pattern=None),
        replace(PLAIN, readings=()),
    ):
        own = gauges_of_swatch(MINE, other).edge
        assert own is not None
        assert (own.tag, own.stitch_mm, own.extra_chains) == ("", 5.0, 3)


def test_unmeasured_rows_are_missed_only_when_they_are_needed() -> None:
    gauges = gauges_of_swatch(swatch("S", SC, {Condition.WASHED: "20 sts = 12 cm"}))
    assert gauges.pitch(Direction.STITCHES) == 6
    with pytest.raises(RefusedError, match="The rows of this swatch were not measured"):
        gauges.finished(Direction.ROWS)


def test_washing_is_borrowed_for_pieces_too_and_a_trial_needs_its_weights() -> None:
    lender = swatch("B", LACE, {Condition.WORKED: "2 repeats = 17 cm", Condition.WASHED: "2 repeats = 16 cm"})
    mine = swatch("M", LACE, {Condition.WORKED: "2 repeats = 17 cm"})
    assert gauges_of_swatch(mine, lender).stitches.washing is Washing.BORROWED
    hung = swatch("H", SC, {Condition.WASHED: "20 rows = 10 cm; 20 sts = 12 cm", Condition.HUNG: "20 rows = 10.4 cm"})
    assert gauges_of_swatch(hung).trial(Direction.ROWS) is None
    weighed = replace(hung, swatch_grams=10.0, hung_clip_mm=80.0)
    trial = gauges_of_swatch(weighed).trial(Direction.ROWS)
    assert trial is not None
    assert trial.load == pytest.approx(5 / 80)


def test_pinned_sizes_go_by_pinned_readings() -> None:
    both = swatch("D", SC, {Condition.WASHED: "20 sts = 12 cm", Condition.PINNED: "20 sts = 13 cm"})
    found = gauges_for(both, (), drifts_of(Assumptions()), Assumptions(), Condition.PINNED)
    assert (found.stitches.pitch_mm, found.condition) == (6.5, Condition.PINNED)
