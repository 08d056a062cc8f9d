import pytest

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.pages.gauges.line_to_copy import line_to_copy
from tests.support.gauge_swatches import SC, THREE, shells

BASE = Assumptions()


def test_the_finished_gauge_if_it_was_measured_else_the_one_as_worked() -> None:
    both = shells("A", worked="4 repeats = 16 cm", washed=f"{THREE}; 10 rows = 11.1 cm")
    assert line_to_copy(both, BASE, Terms.US) == (
        "Gauge: 2.6 repeats (15.7 sts) and 9 rows = 10 cm / 4 in in Shells, 4.5 mm hook, washed and laid flat"
    )
    assert line_to_copy(shells("A", worked="4 repeats = 16 cm"), BASE, Terms.US).endswith("as worked, before washing")


def test_uk_terms() -> None:
    line = line_to_copy(shells("A", washed="16 sts in 10 cm", pattern=SC), BASE, Terms.UK)
    assert line == "Tension: 16 sts = 10 cm / 4 in in double crochet, 4.5 mm hook, washed and laid flat"


def test_without_a_gauge_it_refuses() -> None:
    with pytest.raises(RefusedError, match="there is no gauge to write down"):
        line_to_copy(shells("A"), BASE, Terms.US)
