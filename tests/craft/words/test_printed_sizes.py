import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.words.lengths import Units, read_length
from logbook.craft.words.printed_sizes import printed_length, sized


def test_all_sizes_in_one_line() -> None:
    assert sized([68, 74, 86, 92]) == "68 (74, 86, 92)"
    assert sized([68]) == "68"
    assert sized(["20,5", "21,5", "23"]) == "20,5 (21,5; 23)"  # decimal commas
    with pytest.raises(ValueError, match="not enough values"):
        sized([])


def test_printed_lengths_by_hand() -> None:
    assert [printed_length(mm, Units.CM) for mm in (426.4, 464.5, 541)] == ["42.5", "46.5", "54"]
    # 426.4 mm is 16.787 in: 16 3/4; 464.5 is 18.287: 18 1/4; 541 is 21.299: 21 1/4
    assert [printed_length(mm, Units.INCHES) for mm in (426.4, 464.5, 541)] == ["16 3/4", "18 1/4", "21 1/4"]


@given(st.floats(1, 5000), st.sampled_from(Units))
def test_printed_lengths_stay_within_half_a_step(mm: float, units: Units) -> None:
    assert abs(read_length(printed_length(mm, units), units) - mm) <= (2.5 if units is Units.CM else 25.4 / 8) + 1e-6
