"""The run worked by hand: 38.1818 mm a repeat, multiple 6 plus 1, extra chain 1, two panels, ease 5 cm; stitch 6.36364 mm.

Widths: 61 stitches 388.18, 67 → 426.36, 73 → 464.55, 79 → 502.73, 85 → 540.91 mm.
    bust 78.5: T = 417.5 → 67 (+8.9), chain 68      83.5: T = 442.5 → 67 (−16.1; 73 is +22.0), chain 68
    bust 94:   T = 495   → 79 (+7.7), chain 80      104:  T = 545   → 85 (−4.1), chain 86
With one edge stitch of 6.36364 mm at each side (12.73 mm): 417.5 → 61 (400.91, −16.6; 67 is 439.09, +21.6), 442.5 → 67 (−3.4),
495 → 79 is 515.45 (+20.5), 73 is 477.27 (−17.7), 545 → 85 is 553.64 (+8.6): chains 64, 70, 76, 88: all differ, the
widest miss 17.7. Two miss by 16.8 at most, no more than 5 mm better, and three part nothing: one it is.
"""

from dataclasses import replace

import pytest

from logbook.craft.pieces.notes import AllAlike, EdgesPart, HookParts, Plain
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.body_chart import End, read_chart
from logbook.craft.sizes.size_run import SizeRun, remedies, size_run, sizes_of_chart
from logbook.craft.sizes.trade_charts import WOMEN
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.lengths import Ease
from logbook.errors import RefusedError
from tests.support.cloth import gauges_of_swatch, swatch, thrice

SHELL = StitchPattern(uid="shell", name="shell stitch", multiple=6, plus=1, extra_chains=1)
SHELL_SWATCH = swatch(
    "S1",
    SHELL,
    {Condition.WASHED: f"4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm; {thrice('20 rows = 18 cm')}"},
    swatch_grams=12.0,
    swatch_stitches=24,
    swatch_rows=20,
)
GAUGES = gauges_of_swatch(SHELL_SWATCH)
PLAN = PiecePlan(ease=Ease(mm=50), length_mm=560)
BUSTS = tuple(SizePlan(name=name, body_mm=bust) for name, bust in (("1", 785), ("2", 835), ("3", 940), ("4", 1040)))


def chains(run: SizeRun) -> list[int]:
    return [size.piece.chain for size in run.sizes]


def test_the_four_sizes_by_hand() -> None:
    run = size_run(PLAN, BUSTS, GAUGES)
    assert chains(run) == [68, 68, 80, 86]
    assert [size.same_as for size in run.sizes] == [("2",), ("1",), (), ()]
    assert run.same == (AllAlike(("1", "2")),)
    assert not run.all_differ
    first = run.sizes[0].piece.fit
    assert first is not None
    assert first.around_mm == pytest.approx(2 * 426.3636, abs=0.001)
    assert first.ease_mm == pytest.approx(852.727 - 785, abs=0.001)


def test_what_would_part_them() -> None:
    edges, hook = remedies(size_run(PLAN, BUSTS, GAUGES), PLAN, BUSTS, GAUGES)
    assert edges.note == EdgesPart(1)
    assert edges.plan is not None
    assert edges.plan.edge_stitches == 1
    parted = size_run(edges.plan, BUSTS, GAUGES)
    assert parted.all_differ
    assert chains(parted) == [64, 70, 76, 88]
    # Size 2 wants 442.5 and gets 426.36: 6.36364·442.5/426.36 = 6.6 mm
    assert hook.note == HookParts("2", Direction.STITCHES, pytest.approx(6.6, abs=0.01), pytest.approx(6.3636, abs=1e-4))


def test_no_hook_is_offered_for_a_size_that_is_to_be_as_wide_as_another() -> None:
    copied = (*BUSTS[2:], replace(BUSTS[-1], name="5"))
    run = size_run(PLAN, copied, GAUGES)
    assert run.same == (AllAlike((BUSTS[-1].name, "5")),)
    assert remedies(run, PLAN, copied, GAUGES) == ()
    # size 1 is alone in its width among the three that come out the same, so a hook of its own parts it
    again = (*BUSTS, replace(BUSTS[1], name="2 again"))
    hook = remedies(size_run(PLAN, again, GAUGES), PLAN, again, GAUGES)[-1].note
    assert isinstance(hook, HookParts)
    assert hook.size == "1"


def test_sizes_that_differ_need_no_remedy() -> None:
    apart = tuple(size for size in BUSTS if size.name != "2")
    assert size_run(PLAN, apart, GAUGES).same == ()
    assert remedies(size_run(PLAN, apart, GAUGES), PLAN, apart, GAUGES) == ()


def test_sizes_further_apart_than_one_number_of_edges_helps_take_each_their_own() -> None:
    # 10 cm a repeat, two panels step by 20 cm round; the chart's sizes lie 10 cm apart
    wide = gauges_of_swatch(
        swatch("W", StitchPattern(uid="w", multiple=20, plus=1, extra_chains=2), {Condition.WASHED: thrice("2 repeats = 18 cm")})
    )
    plan, sizes = replace(PLAN, length_mm=None), sizes_of_chart(WOMEN)
    run = size_run(plan, sizes, wide)
    assert [alike.names for alike in run.same] == [("S", "M"), ("1X", "2X"), ("3X", "4X")]
    remedy, _ = remedies(run, plan, sizes, wide)
    assert remedy.note == EdgesPart(None)
    assert remedy.plan is not None
    parted = size_run(remedy.plan, sizes, wide)
    assert parted.all_differ
    assert max(size.piece.edge_stitches for size in parted.sizes) <= 4


def test_half_repeats_part_them_where_the_pattern_has_them() -> None:
    # 6·11 + 3 + 1 = 70 stitches, 445.45 mm, are nearest to 442.5
    halves = gauges_of_swatch(replace(SHELL_SWATCH, pattern=replace(SHELL, half_plus=1)))
    found = next(
        remedy
        for remedy in remedies(size_run(PLAN, BUSTS, halves), PLAN, BUSTS, halves)
        if remedy.note is Plain.HALF_REPEATS_PART
    )
    assert found.plan is not None
    assert chains(size_run(found.plan, BUSTS, halves)) == [68, 71, 80, 86]


def test_edge_stitches_left_to_the_program_are_one_number_for_all_if_they_can_be() -> None:
    wide = gauges_of_swatch(
        swatch("W", StitchPattern(uid="w", multiple=16, plus=1, extra_chains=2), {Condition.WASHED: thrice("2 repeats = 16 cm")})
    )
    plan = replace(PLAN, length_mm=None, edge_stitches=None)
    # Panels of 45 and 53 cm, a repeat of 8 cm apart: with 4 edge stitches of 5 mm 405 + 40 = 445 and 525 mm, both 5 off
    alike = (SizePlan(name="A", body_mm=850), SizePlan(name="B", body_mm=1010))
    run = size_run(plan, alike, wide)
    assert (chains(run), [size.piece.edge_stitches for size in run.sizes]) == ([91, 107], [4, 4])
    # Panels of 45 and 49.2 cm: any one number leaves one of them more than half its give or take off
    # (0: 35, 7; 1: 35, 3; 2: 25, 13; 3: 15, 23; 4: 5, 33), so A takes 4, and B, 485 mm without any and 7 off, none
    apart = (SizePlan(name="A", body_mm=850), SizePlan(name="B", body_mm=934))
    run = size_run(plan, apart, wide)
    assert (chains(run), [size.piece.edge_stitches for size in run.sizes]) == ([91, 99], [4, 0])


def test_a_chart_gives_the_sizes() -> None:
    sizes = sizes_of_chart(WOMEN, End.LOW, armhole_deeper_mm=30)
    assert [(s.name, s.body_mm) for s in sizes[:2]] == [("XS", 710), ("S", 810)]
    assert (sizes[0].armhole_mm, sizes[0].hip_mm, sizes[0].upper_arm_mm) == (180, 840, 250)
    assert sizes_of_chart(WOMEN)[0].armhole_mm is None
    run = size_run(replace(PLAN, neck_mm=240), sizes, GAUGES)
    assert len(run.sizes) == 9
    assert run.yarn is not None
    assert run.yarn.grams == pytest.approx(sum(size.piece.yarn.grams for size in run.sizes if size.piece.yarn))
    with pytest.raises(RefusedError, match="Size A has no bust measure"):
        sizes_of_chart(read_chart("mine", ["size", "hip"], [["A", "90"]]))


def test_a_size_may_want_its_own() -> None:
    own = SizePlan(name="long", body_mm=785, length_mm=650, ease=Ease(mm=100), armhole_mm=180, neck_mm=220)
    usual, longer = size_run(replace(PLAN, armhole_mm=170), (BUSTS[0], own), GAUGES).sizes
    assert (usual.piece.rows, longer.piece.rows) == (62, 72)
    assert longer.piece.chain == 68  # (785 + 100)/2 = 442.5
    assert set(longer.piece.marks) == {"armhole", "neck begins", "neck ends"}


def test_what_cannot_be_names_the_size() -> None:
    with pytest.raises(RefusedError, match="Size 3: That armhole does not fit"):
        size_run(PLAN, (BUSTS[0], replace(BUSTS[2], armhole_mm=700)), GAUGES)
    with pytest.raises(RefusedError, match="at least one size"):
        size_run(PLAN, (), GAUGES)


def test_children_s_sizes_show_the_caution() -> None:
    assert size_run(PLAN, (SizePlan(name="age 4", body_mm=580),), GAUGES).cautions == (Plain.CHILDRENS_WEAR,)


def test_a_width_typed_in_the_plan_gives_way_to_every_size_s_body() -> None:
    assert chains(size_run(replace(PLAN, width_mm=300.0), BUSTS, GAUGES)) == chains(size_run(PLAN, BUSTS, GAUGES))


def test_sizes_from_the_widest_down_are_not_taken_for_alike() -> None:
    """A difference of widths counts whichever of the two is the wider."""
    falling = size_run(PLAN, tuple(reversed(BUSTS)), GAUGES)
    assert chains(falling) == [86, 80, 68, 68]
    assert [size.same_as for size in falling.sizes] == [(), (), ("1",), ("2",)]
    (edges, _) = remedies(falling, PLAN, tuple(reversed(BUSTS)), GAUGES)
    (rising, _) = remedies(size_run(PLAN, BUSTS, GAUGES), PLAN, BUSTS, GAUGES)
    assert edges.note == rising.note


def test_a_size_that_comes_out_narrower_misses_as_much_as_one_that_comes_out_wider() -> None:
    # One edge stitch at each side: 570 → 83 + 2 are 553.6 (−16.4), 595 → 591.8 (−3.2). Two: 566.4 (−3.6), 604.5 (+9.5).
    two = tuple(SizePlan(name=name, body_mm=bust) for name, bust in (("1", 1090), ("2", 1140)))
    edges, *_ = remedies(size_run(PLAN, two, GAUGES), PLAN, two, GAUGES)
    assert edges.note == EdgesPart(2)
