"""Sizes that are off, reckoned by hand; how often they are named is in the bench."""

import math

import pytest

from logbook.craft.sizes.size_off import TestedMeasure, sizes_off
from logbook.craft.swatches.assumptions import Assumptions


def tried(size: str, *came_out: float, gauge: float = 1.0, what: str = "width") -> list[TestedMeasure]:
    return [TestedMeasure(size, what, one, gauge, 0.04) for one in came_out]


FINE = [*tried("S", 0.995, 1.0, 1.005), *tried("M", 1.0, 1.01, 0.99), *tried("L", 1.0, 0.995, 1.005)]


def test_a_size_that_is_off_is_named_with_what_gauge_explains() -> None:
    off = [*tried("2X", 1.045, gauge=1.01), *tried("2X", 1.05, gauge=1.005), *tried("2X", 1.055, gauge=1.015)]
    (found,) = sizes_off([*FINE, *off], Assumptions())
    assert (found.size, found.what, found.alike, found.testers) == ("2X", "width", 3, 3)
    assert found.came_out == pytest.approx(0.05, abs=1e-4)
    assert found.by_gauge == pytest.approx(0.01, abs=1e-4)
    r = [math.log(1.045 / 1.01), math.log(1.05 / 1.005), math.log(1.055 / 1.015)]
    fine = [math.log(one.came_out) for one in FINE]
    w = 1 / (0.02**2 + 0.017**2)  # 1,451; that none is off counts 1/0.02² = 2,500
    assert found.left == pytest.approx(math.expm1(sum(r) / 3 - w * sum(fine) / (9 * w + 2500)))
    # f = (4 + w·squares)/(4 + 8), U = t(97.5 %, 12)·√f·√(1/3w + 1/(9w + 2500))
    squares = sum((x - sum(r) / 3) ** 2 for x in r)
    squares += sum((x - sum(fine[i : i + 3]) / 3) ** 2 for i in (0, 3, 6) for x in fine[i : i + 3])
    spread = math.sqrt((4 + w * squares) / 12)
    assert found.give_or_take == pytest.approx(2.178813 * spread * math.sqrt(1 / (3 * w) + 1 / (9 * w + 2500)), rel=1e-5)


def test_what_gauge_explains_is_no_fault() -> None:
    assert sizes_off([*FINE, *tried("2X", 1.05, 1.05, 1.05, gauge=1.05)], Assumptions()) == ()


def test_all_sizes_off_alike_is_no_fault_of_one() -> None:
    assert sizes_off([one for size in "SMLX" for one in tried(size, 1.04, 1.045, 1.035)], Assumptions()) == ()


def test_of_one_tester_alone_nothing_is_said() -> None:
    assert sizes_off([*FINE, *tried("2X", 1.2)], Assumptions()) == ()
    assert sizes_off([], Assumptions()) == ()


def test_width_and_length_are_apart() -> None:
    lengths = [TestedMeasure(one.size, "length", one.came_out, 1.0, 0.04) for one in FINE]
    found = sizes_off([*FINE, *lengths, *tried("XL", 0.93, 0.935, 0.94, what="length")], Assumptions())
    assert [(one.size, one.what) for one in found] == [("XL", "length")]
    assert found[0].left < 0
