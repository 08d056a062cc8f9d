"""Every kind of note as it is said."""

from dataclasses import replace

import pytest

from logbook.craft.gauges.hanging import Growth
from logbook.craft.pieces.edge_stitches import EdgeStitch
from logbook.craft.pieces.fit import BodyOpening, FitVerdict, fit_of
from logbook.craft.pieces.notes import (
    AllAlike,
    CantTellApart,
    Clip,
    EdgeRows,
    EdgesOf,
    EdgesPart,
    HookParts,
    Note,
    OddRib,
    Plain,
    TooSmall,
    Unusual,
)
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.lengths import Units
from logbook.tasks.note_words import in_all_sizes, said

NECK = BodyOpening(name="neck", part="head", round_mm=500, needs_mm=560)
EDGE = EdgeStitch(stitch_mm=6.0, give_or_take=0.03, extra_chains=1, tag="H1")


@pytest.mark.parametrize(
    ("note", "words"),
    [
        (
            TooSmall(NECK, None),
            "The neck is 50.0 cm round, but an adult’s head usually measures 56.0 cm: make it larger, or leave an opening.",
        ),
        (
            TooSmall(NECK, 0.2),
            "The neck is 50.0 cm round, but an adult’s head usually measures 56.0 cm: it only goes on stretched by 12 %.",
        ),
        (
            TooSmall(replace(NECK, needs_mm=580), None),
            "The neck is 50.0 cm round, but the head measures 58.0 cm: make it larger, or leave an opening.",
        ),
        (FitVerdict.TOO_TIGHT, "It is too tight on that body."),
        (
            Unusual(0.3125, Direction.STITCHES),
            "That gauge is 320 stitches in 10 cm, which is hardly crocheted: check the readings.",
        ),
        (CantTellApart(1), "Chains a stitch apart differ by less than the give or take: either may come nearer."),
        (EdgesOf(4, EDGE), "4 plain stitches at each side, as wide as on swatch H1; the chain starts as for them."),
        (Growth(13.08, None, near=True), "Worn, its own weight makes it 1.3 cm longer."),
        (Growth(-15, 37, near=True), "Worn, its own weight makes it 1.5 cm shorter, give or take 3.7 cm."),
        (Clip(4), "To see how much longer it hangs: Clip 4 g to the swatch, hang it up overnight and measure it hanging."),
        (AllAlike(("A", "B", "C")), "A, B and C come out the same."),
        (EdgesPart(1), "1 plain edge stitch at each side, in all sizes, would make them differ."),
        (EdgesPart(None), "Plain edge stitches, as many as each size needs at each side, would make them differ."),
        (Plain.HALF_REPEATS_PART, "Half repeats, which the pattern allows, would make them differ."),
    ],
)  # fmt: skip
def test_a_note_is_one_sentence(note: Note, words: str) -> None:
    assert said((note,)) == (words,)


@pytest.mark.parametrize(
    ("note", "part"),
    [
        (OddRib(59), "needs an even number of rows, so that its edges match; 59 is odd"),
        (EdgeRows(0.25), "The edge stitches' rows are 25 % taller than the pattern's: the edges will flare"),
        (EdgeRows(-1 / 6), "17 % shorter than the pattern's: the edges will draw in"),
        (EdgesOf(1, replace(EDGE, tag="")), "1 plain stitch at each side, taken to be as wide as the pattern's own"),
        (
            Growth(13, 2, near=False),
            "may make it 1.3 cm longer; but the weight hung on the swatch was far from the garment's",
        ),
        (Clip(0), "its own weight is enough"),
        (Plain.CHILDRENS_WEAR, "rules of your own country"),
        (
            HookParts("2", Direction.STITCHES, 6.6, 6.36),
            "Take a thicker hook for 2 alone: with 15.2 stitches in 10 cm instead of 15.7 it would have a width of its own.",
        ),
    ],
)
def test_what_a_note_says(note: Note, part: str) -> None:
    (sentence,) = said((note,))
    assert part in sentence


def test_in_inches() -> None:
    (small,) = said((TooSmall(NECK, 0.1),), Units.INCHES)
    assert small.startswith(
        "The neck is 19 5/8 in round, but an adult’s head usually measures 22 in, more than the fabric stretches"
    )
    assert said((fit_of(1016, 939.8, None, None),), Units.INCHES) == ("It measures 40 in all round, 3 in more than the body.",)


def test_edges_said_by_hand_need_no_words() -> None:
    assert said((EdgesOf(2, replace(EDGE, tag="", by_hand=True)),)) == ()


def test_what_is_said_of_all_sizes_stands_without_their_names() -> None:
    assert in_all_sizes([("S", ["a", "b"]), ("M", ["a"])]) == ("a", "S: b")
