"""A wide lace by hand: multiple 16 plus 1, t 2, stitch 5 mm (a repeat is 8 cm), U 2.5 %, drift 5.5 %; edge stitch 6 mm, t 1.

Width wanted 46 cm. Plain: k = 5: 81·5 = 405 (−55), k = 6: 97·5 = 485 (+25). Half the give or take of 485 mm,
√(2.5² + 5.5²) % = 6.0415 % → 29.30/2 = 14.65 mm: 25 is more, so edges are offered.
    f = 1: 12 mm of edge: 417 (−43), 497 (+37)      f = 2: 429 (−31), 509 (+49)
    f = 3: 441 (−19), 521                            f = 4: 453 (−7)
The least miss is 7 mm with f = 4; none of the others is within 12 mm, so f = 4: 81 + 8 = 89 stitches, chain 90.
"""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.pieces.edge_stitches import EdgeStitch, chains_with_edges, edges_for, edges_for_all, edges_wanted, rows_taller
from logbook.craft.pieces.options import Option, Pitch
from logbook.craft.pieces.starting_chain import ChainRule, starting_chains
from logbook.craft.swatches.gauge import Gauge

LACE = ChainRule(multiple=16, plus=1, extra_chains=2)
WIDTH = Pitch(mm=5.0, gauge_give_or_take=0.025, drift_give_or_take=0.055, before_washing_mm=5.2)
EDGE = EdgeStitch(stitch_mm=6.0, give_or_take=0.03, extra_chains=1, before_washing_mm=6.3, tag="H1")


def best(options: tuple[Option, ...]) -> Option:
    return next(option for option in options if option.recommended)


def test_the_wide_lace_by_hand() -> None:
    plain = best(starting_chains(460, WIDTH, LACE))
    assert (plain.chain, plain.difference_mm) == (99, pytest.approx(25))
    assert edges_wanted(plain)
    assert edges_for(460, WIDTH, LACE, EDGE, most=4) == 4
    found = best(chains_with_edges(460, WIDTH, LACE, EDGE, 4))
    assert (found.repeats, found.count, found.chain) == (5, 89, 90)
    assert found.mm == pytest.approx(453)
    assert found.before_washing_mm == pytest.approx(81 * 5.2 + 8 * 6.3)
    gauge = math.hypot(405 * 0.025, 48 * 0.03)
    assert found.gauge_give_or_take_mm == pytest.approx(gauge)
    assert found.give_or_take_mm == pytest.approx(math.hypot(gauge, 453 * 0.055))


def test_none_where_the_repeats_come_near_enough() -> None:
    # 48 cm: 485 is 5 mm off, within 14.65
    assert edges_for(480, WIDTH, LACE, EDGE, most=4) == 0
    # give or take unknown: more than 5 mm off is too far
    unknown = replace(WIDTH, gauge_give_or_take=None)
    assert edges_for(480, unknown, LACE, EDGE, most=4) == 0
    assert edges_for(450, unknown, LACE, EDGE, most=4) == 4  # 485 is 35 off, 453 only 3


def test_the_least_number_within_5_mm_of_the_best() -> None:
    # 42 cm: plain 405 (−15, more than half of 24.5 mm = 12.2); f = 1: 417 (−3), f = 2: 429 (+9): one is enough
    assert edges_for(420, WIDTH, LACE, EDGE, most=4) == 1


def test_the_chain_is_the_edge_stitch_s() -> None:
    for each in (1, 2, 3):
        for option in chains_with_edges(460, WIDTH, LACE, EDGE, each):
            assert option.chain == option.count + 1
            assert (option.count - 2 * each - 1) % 16 == 0
    assert chains_with_edges(460, WIDTH, LACE, EDGE, 0) == starting_chains(460, WIDTH, LACE)


def test_one_number_for_all_sizes_goes_by_the_widest_miss() -> None:
    assert edges_for_all((480, 484), WIDTH, LACE, EDGE, most=4) == 0
    # 42 and 46 cm miss by 15, 25 with none; 3, 37; 9, 31; 21, 19; 33, 7 with 4. The widest, 25, is within
    # 5 mm of the least, 21: none
    assert edges_for_all((420, 460), WIDTH, LACE, EDGE, most=4) == 0
    # 42 and 45 cm: 15, 35; 3, 33; 9, 21; 21, 9; 33, 3. The widest is least, 21, with two first
    assert edges_for_all((420, 450), WIDTH, LACE, EDGE, most=4) == 2


def test_rows_of_another_height_are_warned_of() -> None:
    edge = replace(EDGE, row=Gauge(10.0, 0.03, 0, 0, 3, ()))
    assert rows_taller(edge, 9.8, 0.03) is None
    assert rows_taller(EDGE, 5.0, 0.03) is None
    assert rows_taller(edge, 8.0, 0.03) == pytest.approx(0.25)
    assert rows_taller(edge, 12.0, None) == pytest.approx(-1 / 6)


@given(st.floats(150, 900), st.floats(3, 8), st.floats(3, 10), st.integers(0, 6))
def test_edges_never_make_it_worse_by_more_than_5_mm(target: float, stitch: float, edge_mm: float, most: int) -> None:
    width, edge = replace(WIDTH, mm=stitch), replace(EDGE, stitch_mm=edge_mm)
    chosen = edges_for(target, width, LACE, edge, most)
    misses = [abs(best(chains_with_edges(target, width, LACE, edge, each)).difference_mm) for each in range(most + 1)]
    assert 0 <= chosen <= most
    if chosen:
        assert misses[chosen] <= min(misses) + 5 + 1e-6
        assert all(miss > min(misses) + 5 - 1e-6 for miss in misses[:chosen])
