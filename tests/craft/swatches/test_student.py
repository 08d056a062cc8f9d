import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.swatches.student import probability_within, t_975

# The 97.5 % column of the usual printed table of Student's t.
TABLE = {
    1: 12.706, 2: 4.303, 3: 3.182, 4: 2.776, 5: 2.571, 6: 2.447, 7: 2.365, 8: 2.306, 9: 2.262, 10: 2.228,
    15: 2.131, 20: 2.086, 30: 2.042, 60: 2.000, 120: 1.980,
}  # fmt: skip


@pytest.mark.parametrize(("degrees", "value"), TABLE.items())
def test_the_quantiles_are_those_of_the_printed_table(degrees: int, value: float) -> None:
    assert t_975(degrees) == pytest.approx(value, abs=0.0005)


@given(st.integers(1, 300))
def test_the_quantile_holds_95_percent_and_falls_toward_the_normal_one(degrees: int) -> None:
    assert probability_within(t_975(degrees), degrees) == pytest.approx(0.95, abs=1e-9)
    assert t_975(degrees) > t_975(degrees + 1) > 1.95996


def test_no_degree_of_freedom_is_a_mistake_of_the_program() -> None:
    with pytest.raises(ValueError, match="at least 1 degree"):
        t_975(0)
