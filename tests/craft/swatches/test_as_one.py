"""What one yarn or stitch pattern takes from another that turns out to be the same."""

from logbook.craft.swatches.as_one import as_one, lost, why_not_one
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.yarn import Yarn


def test_what_is_not_said_is_taken_and_the_rest_stays() -> None:
    kept = Yarn(uid="a", name="Weir", fibre="wool", ball_grams=50.0)
    other = Yarn(uid="b", name="Weer", fibre="merino", yarn_class=3, ball_grams=50.0, ball_metres=120.0)
    assert as_one(kept, other) == Yarn(uid="a", name="Weir", fibre="wool", yarn_class=3, ball_grams=50.0)
    assert lost(kept, other) == ("ball_metres", "fibre")


def test_chains_are_taken_together_or_not_at_all() -> None:
    kept = StitchPattern(name="shell", multiple=6, plus=1, extra_chains=1)
    other = StitchPattern(name="shells", first_stitch=4, skip_cover=1, set_up_rows=1, rows_in_repeat=2)
    one = as_one(kept, other)
    assert (one.extra_chains, one.first_stitch, one.skip_cover) == (1, None, None)
    assert (one.set_up_rows, one.rows_in_repeat) == (1, 2)
    assert lost(kept, other) == ("first_stitch", "skip_cover")


def test_readings_in_repeats_keep_their_meaning() -> None:
    kept = StitchPattern(name="shell", multiple=6, rows_in_repeat=2)
    assert why_not_one(kept, StitchPattern(name="shells", multiple=8)) == ("multiple", "repeats", 6, 8)
    assert why_not_one(kept, StitchPattern(name="shells", multiple=6, rows_in_repeat=4)) == (
        "rows_in_repeat",
        "row repeats",
        2,
        4,
    )
    assert why_not_one(kept, StitchPattern(name="shells", multiple=6)) is None
    assert why_not_one(Yarn(name="a"), Yarn(name="b")) is None
