"""Patterns as they are published are read whole with the counts that their writer worked out; their altered twins are named."""

import pytest

from tests.craft.rows.published_patterns import Published, mends, outcome, published

PATTERNS = published()
MARKED = {
    "Star stitch headband": "stars are drawn up in several places",
    "Night sky dishcloth": "stars are drawn up in several places",
    "Spike stitch tea cosy": "a stitch is called 1sp",
    "unseen3-motifs, Circle in a square": "a colour stands alone; a standing start",
    "unseen3-motifs, Granny triangle motif": "a round begins in the space just made",
    "Paired trebles for a pram cover": "between the stitches of a pair",
    "Peacock fan stole": "into the last dc work 2 dtr only, without the 2 ch",
    "Bed sock toe": "free loops",
    "Trinity stitch wash mitt": "three together begin in the place of the last stitch",
    "Layered flower": "around stitches of the round before the last",
    "Solid square without a seam line": "the round ends in the space it began in",
    "Two-tier rose, old leaflet": "around stitches of the round before the last, in prose",
    "Six-petal blanket hexagon": "long stitches between groups two rounds below",
    "Star doily centre, old leaflet": "what the chains below count as is said among the work",
}
"""Patterns that are not read whole yet, and why: what is not understood in them is marked."""
NAMED_LATER = ("Parish hall square", "Scalloped shelf edging", "Round collar in UK terms")
"""One stitch too few or too many comes out in a row that prints no count, and is named in the first row that it does not fit."""
FIT_ALTERED = ("Zigzag tube skirt",)
"""Altered, they fit after all: every round loses a repeat."""


@pytest.mark.parametrize("pattern", PATTERNS, ids=lambda pattern: f"{pattern.kind}, {pattern.name}")
def test_a_published_pattern_and_its_altered_twin(pattern: Published) -> None:
    whole, named = outcome(pattern)
    if pattern.name in MARKED or f"{pattern.kind}, {pattern.name}" in MARKED:
        assert (whole, named == "proven") == ("not understood", False)
    else:
        altered = "elsewhere" if pattern.name in NAMED_LATER else "proven" if pattern.name in FIT_ALTERED else "named"
        assert (whole, named) == ("read", altered)


def test_few_are_not_read_whole() -> None:
    assert len(MARKED) <= 0.05 * len(PATTERNS)


def test_there_are_enough_of_every_kind() -> None:
    kinds = [pattern.kind for pattern in PATTERNS]
    assert len(kinds) >= 150
    assert all(kinds.count(kind) >= 8 for kind in set(kinds))


def test_no_mend_is_offered_that_does_not_mend() -> None:
    offered = [mend for pattern in PATTERNS[::5] for mend in mends(pattern.twin)]
    assert len(offered) > 5
    assert all(offered)
