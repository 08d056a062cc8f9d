from dataclasses import replace

import pytest

from logbook.craft.gauges.gauge_line import gauge_line
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError

BASE = Assumptions()


def swatch(text: str, pattern: StitchPattern | None, condition: Condition = Condition.WASHED) -> Swatch:
    return Swatch(tag="A1", hook_mm=4.5, pattern=pattern, readings=tuple(TakenReading(condition, r) for r in read_readings(text)))


LACE = swatch(
    "4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm; 22 rows = 24.4 cm",
    StitchPattern(name="shell stitch", multiple=6),
)


def test_a_lace_stitch_in_repeats_and_stitches() -> None:
    # 100/38.1818 = 2.619 repeats, ·6 = 15.714 stitches; 22/2.44 = 9.016 rows
    assert gauge_line(LACE, Condition.WASHED, BASE, Terms.US) == (
        "Gauge: 2.6 repeats (15.7 sts) and 9 rows = 10 cm / 4 in in shell stitch, 4.5 mm hook, washed and laid flat"
    )
    assert gauge_line(LACE, Condition.WASHED, BASE, Terms.UK).startswith(
        "Tension: 2.6 repeats (15.7 sts) and 9 rows = 10 cm / 4 in"
    )


def test_a_plain_stitch_in_either_terms() -> None:
    plain = swatch("14 hdc = 10 cm", StitchPattern(name="half double crochet", multiple=1, terms="US"), Condition.WORKED)
    assert gauge_line(plain, Condition.WORKED, BASE, Terms.UK) == (
        "Tension: 14 sts = 10 cm / 4 in in half treble crochet, 4.5 mm hook, as worked, before washing"
    )


def test_what_is_not_known_is_left_out() -> None:
    bare = replace(swatch("10 rows = 10 cm; 1 row = 10 cm", None, Condition.PINNED), hook_mm=None)
    assert gauge_line(bare, Condition.PINNED, BASE, Terms.US) == "Gauge: 5.5 rows = 10 cm / 4 in, washed and pinned out"
    assert "1 repeat (6 sts)" in gauge_line(swatch("4 repeats = 40 cm", LACE.pattern), Condition.WASHED, BASE, Terms.US)
    with pytest.raises(RefusedError, match="A1 was not measured hung: there is no gauge to write down"):
        gauge_line(LACE, Condition.HUNG, BASE, Terms.US)
