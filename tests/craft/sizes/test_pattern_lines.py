"""The lines of the run that tests/craft/sizes/test_size_run.py works out by hand: widths 426.36, 426.36, 502.73 and 540.91 mm."""

from dataclasses import replace

import pytest

from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.sizes.pattern_lines import WrittenSizes, pattern_parts, pattern_text
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.lengths import Ease
from logbook.craft.words.terms import Terms
from tests.support.cloth import swatch, thrice
from tests.support.sample_sheets import written_rows
from tests.support.size_runs import PLAN, SHELL, SWATCH, written


def lines(told: WrittenSizes) -> list[str]:
    return pattern_text(told).splitlines()


def test_all_of_it_in_us_terms() -> None:
    assert (
        pattern_text(written())
        == """Boathouse vest

Sizes
A (B, C, D)
To fit a body of 78.5 (83.5, 94, 104) cm / 31 (32 3/4, 37, 41) in

Materials
Heather (50 g = 120 m): 5 (5, 6, 6) balls, with 10 % in reserve
4.5 mm hook (US 7, UK 7), or the size that gives the gauge
5 mm hook for the foundation chain

Gauge
2.6 repeats (15.7 sts) and 11.1 rows = 10 cm / 4 in in shell stitch, 4.5 mm hook, washed and laid flat

Finished measurements, washed and laid flat
All round: 85.5 (85.5, 100.5, 108) cm / 33 1/2 (33 1/2, 39 1/2, 42 1/2) in
Width of a panel: 42.5 (42.5, 50.5, 54) cm / 16 3/4 (16 3/4, 19 3/4, 21 1/4) in
Length: 56 cm / 22 in
Armhole depth: 20 cm / 7 3/4 in
Neck width: 23.5 cm / 9 1/4 in

Panels, 2 alike, worked from the bottom up
Ch 68 (68, 80, 86).
The first stitch goes into the 2nd chain from the hook.
67 (67, 79, 85) base stitches: 11 (11, 13, 14) repeats of 6 and 1 more.
Work 62 rows.
The last row is a wrong-side row.
Place a marker at the end of row 40 for the armhole.
Shoulders of 15 (15, 21, 24) stitches on each side; the middle 37 are the neck.
"""
    )


def test_uk_terms_say_tension_and_name_the_stitch() -> None:
    plain = replace(SWATCH, pattern=StitchPattern(uid="p", name="double crochet", multiple=1, extra_chains=2, terms="US"))
    told = lines(written(own=plain, terms=Terms.UK))
    assert "Tension" in told
    assert any("in treble crochet, 4.5 mm hook" in line for line in told)
    assert any(line.endswith("or the size that gives the tension") for line in told)
    assert not any("gauge" in line.lower() for line in told)


def test_edge_stitches_are_told_and_the_first_stitch_is_not() -> None:
    told = lines(written(replace(PLAN, edge_stitches=1)))
    assert "Ch 64 (70, 76, 88)." in told
    assert any(line.endswith("and 1 plain edge stitch at each side.") for line in told)
    assert not any("first stitch" in line for line in told)


def test_rows_in_groups() -> None:
    grouped = replace(SHELL, set_up_rows=2, rows_in_repeat=4, closing_rows=1, first_stitch=4, skip_cover=3, extra_chains=None)
    told = lines(written(own=replace(SWATCH, pattern=grouped)))
    # 560 mm are 62.2 rows of 9 mm: 2 + 15·4 + 1 = 63
    assert "Work 63 rows: 2 set-up rows, the 4 rows of the repeat 15 times, 1 closing row." in told
    assert "The last row is a right-side row." in told
    assert "The first stitch goes into the 4th chain from the hook; the skipped chains count as a stitch and 2 ch." in told


def test_worked_sideways_the_chain_runs_up_the_body() -> None:
    told = lines(written(replace(PLAN, sideways=True)))
    assert "Panels, 2 alike, worked sideways" in told
    assert any(line.startswith("Place a marker after stitch ") for line in told)
    assert any(line.startswith("Shoulders of ") and " rows on each side" in line for line in told)
    assert any(line.startswith("Ch ") and "(" not in line for line in told)  # one length, so one chain for all


def test_in_the_round() -> None:
    told = lines(written(replace(PLAN, in_round=True, armhole_mm=None, neck_mm=None)))
    assert "Body, worked in the round" in told
    assert "Join into a ring, taking care not to twist the chain." in told
    assert any(line.startswith("Work 62 rounds") for line in told)
    assert not any(line.startswith("Width of a panel") for line in told)


def test_sizes_on_the_hook_where_both_states_are_known() -> None:
    both = swatch("S2", SHELL, {Condition.WORKED: thrice("4 repeats = 16 cm"), Condition.WASHED: thrice("4 repeats = 15.2 cm")})
    told = written(PiecePlan(ease=Ease(mm=50)), both)
    assert pattern_parts(told)[-1].heading == "While it is on the hook"
    assert not any(line.startswith("Length") for line in lines(told))


def test_unwashed_is_said() -> None:
    unwashed = swatch("S3", SHELL, {Condition.WORKED: thrice("4 repeats = 16 cm")})
    told = written(PiecePlan(ease=Ease(mm=50)), unwashed)
    assert "Finished measurements, before washing" in lines(told)
    assert any("as worked, before washing" in line for line in lines(told))


@pytest.mark.parametrize(("grams", "expected"), [(None, "Heather: "), (50.0, "balls")])
def test_yarn_in_grams_where_the_ball_is_not_known(grams: float | None, expected: str) -> None:
    assert SWATCH.yarn is not None
    own = replace(SWATCH, yarn=replace(SWATCH.yarn, ball_grams=grams, ball_metres=None))
    (line,) = (line for line in lines(written(own=own)) if line.startswith("Heather"))
    assert expected in line
    assert line.endswith("with 10 % in reserve")


WITH_ROWS = replace(SWATCH, pattern=replace(SHELL, rows_text=written_rows()["shell stitch"], terms="US"))
IN_ROUND = replace(PLAN, panels=1, in_round=True, armhole_mm=None, neck_mm=None)


def test_the_written_rows_have_their_counts_in_every_size() -> None:
    told = lines(written(own=WITH_ROWS))
    at = told.index("Rows of shell stitch")
    assert told[at + 2].startswith("Row 2: Ch 3 (counts as dc), 2 dc in first sc")
    assert [line[line.index("turn. ") :] for line in told[at + 1 : at + 4]] == ["turn. (67 (67, 79, 85) sts)"] * 3
    assert told[at + 4] == "Rep Rows 2 and 3."


def test_the_terms_of_the_rows_are_said_where_they_are_not_those_of_the_lines() -> None:
    assert "Rows of shell stitch, in US terms" in lines(written(own=WITH_ROWS, terms=Terms.UK))


def test_edge_stitches_are_not_in_the_counts() -> None:
    told = lines(written(replace(PLAN, edge_stitches=2), own=WITH_ROWS))
    at = told.index("Rows of shell stitch")
    assert told[at + 1].startswith("Work the plain edge stitches")
    assert "sts)" in told[at + 2]


@pytest.mark.parametrize("plan", [replace(PLAN, foundation_stitches=True), IN_ROUND])
def test_rows_that_the_piece_is_not_worked_by_are_left_out(plan: PiecePlan) -> None:
    assert not any(line.startswith("Rows of") for line in lines(written(plan, own=WITH_ROWS)))
