"""How the fabric changes with its state."""

from logbook.craft.swatches.assumptions import Assumptions
from logbook.pages.gauges.changes import changes_of
from tests.support.gauge_swatches import PULLED, THREE, shells

BASE = Assumptions()


def test_from_as_worked_and_then_from_washed_by_hand() -> None:
    # stitches 144/150 = −4 %, 180/150 = +20 %, 180/144 = +25 %; rows 105/100 = +5 %, 90/100 = −10 %, 90/105 = −14 %
    washed, sideways, in_wear = changes_of(PULLED, BASE)
    assert washed.startswith("From as worked to washed, laid flat: stitches −4 % ± 7.")
    assert washed.endswith("(may be none).")
    assert "rows +5 % ± 9.8 % (may be none)" in washed
    assert sideways.startswith("From as worked to pulled sideways: stitches +20 % ±")
    assert "rows −10 % ±" in sideways
    assert in_wear.startswith("From washed, laid flat to pulled sideways: stitches +25 % ±")
    assert "rows −14 % ±" in in_wear


def test_a_single_state_has_nothing_to_say() -> None:
    for swatch in (shells("A", washed=THREE), shells("A"), shells("A", sideways=THREE)):
        assert changes_of(swatch, BASE) == ()


def test_never_measured_as_worked_it_starts_from_washed() -> None:
    (line,) = changes_of(shells("A", washed="4 repeats = 15 cm", lengthwise="4 repeats = 13.5 cm"), BASE)
    assert line.startswith("From washed, laid flat to pulled lengthwise: stitches −10 % ±")


def test_a_coarse_count_claims_no_figure() -> None:
    (line,) = changes_of(shells("A", worked="1 repeat in 10 cm", washed="4 repeats = 15 cm"), BASE)
    assert "±" not in line
    assert "counted too coarsely to be sure" in line
