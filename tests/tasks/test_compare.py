"""What is said of gauges compared."""

import pytest

from logbook.craft.gauges.comparison import Difference
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.tasks.compare import difference_sentence


@pytest.mark.parametrize(
    ("difference", "words"),
    [
        (
            Difference(Condition.WASHED, Direction.STITCHES, ("A", "B"), 1.05, 0.07597),
            "A and B: the stitch (washed, laid flat) may be the same.",
        ),
        (
            Difference(Condition.WASHED, Direction.STITCHES, ("C", "A"), 1.0935, 0.06101),
            "C and A differ: the stitch (washed, laid flat) is 9.3 % wider in C.",
        ),
        (
            Difference(Condition.WORKED, Direction.ROWS, ("A", "B"), 0.9, 0.05),
            "A and B differ: the row (as worked) is 10 % shorter in A.",
        ),
        (
            Difference(Condition.WORKED, Direction.ROWS, ("A", "B"), 0.9, None),
            "A and B: the row (as worked) was counted too coarsely in one of them to tell whether they differ.",
        ),
    ],
)
def test_two_swatches(difference: Difference, words: str) -> None:
    assert difference_sentence(difference) == words
