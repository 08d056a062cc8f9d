import pytest

from logbook.craft.gauges.washing import Washing
from logbook.craft.words.lengths import Units
from logbook.tasks.chain_words import sureness_words


@pytest.mark.parametrize(
    ("mm", "washing", "words"),
    [
        (12.0, Washing.MEASURED, "the swatch says give or take 1.2 cm, a whole piece usually 1.2 cm"),
        (None, Washing.UNKNOWN, "accuracy unknown until washed and measured"),
        (None, Washing.MEASURED, "accuracy unknown: the count is too coarse to tell"),
    ],
)
def test_a_washed_swatch_is_not_told_to_be_washed(mm: float | None, washing: Washing, words: str) -> None:
    assert sureness_words(mm, mm, Units.CM, washing) == words
