"""Rates of small numbers: looked up by their share they are those that are worked out."""

from bisect import bisect_right

from logbook.craft.garments.rates import rates_by_share, small_ratio


def test_a_rate_is_found_by_its_share() -> None:
    shares = [share for share, _ in rates_by_share()]
    for a in range(1, 73):
        for b in range(1, 41):
            assert rates_by_share()[bisect_right(shares, a / b) - 1][1] == small_ratio(a, b), (a, b)


def test_halfway_between_two_it_is_the_one_of_smaller_numbers() -> None:
    assert small_ratio(17, 18) == (1, 1)
    assert small_ratio(17, 16) == (1, 1)
