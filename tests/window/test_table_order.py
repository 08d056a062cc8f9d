"""Which rows a table shows and in which order, without a widget."""

import pytest

from logbook.window.table_order import NO_RANKS, TableOrder
from logbook.window.table_rows import KeptRows, Row

BY_LETTER = {"d": 2.0, "a": 1.0, "c": None, "b": 3.0}


@pytest.fixture
def order() -> TableOrder:
    order = TableOrder()
    order.take(KeptRows(Row(key, (key,), (number,)) for key, number in BY_LETTER.items()))
    return order


def test_a_column_sorts_upwards_then_downwards_then_not_at_all_and_empty_cells_come_last(order: TableOrder) -> None:
    seen = []
    for _ in range(3):
        order.sort_next(0)
        seen.append("".join(order.shown()))
    assert seen == ["adbc", "bdac", "dacb"]


def test_what_is_asked_for_is_sorted_within_its_ranks(order: TableOrder) -> None:
    order.sort(0)
    order.show_only({"b", "c", "d"}, {"c": 0}, as_listed=False)
    assert list(order.shown()) == ["c", "d", "b"]
    assert order.count == 4


def test_keys_that_come_as_listed_keep_their_order_until_a_column_sorts(order: TableOrder) -> None:
    order.show_only(["b", "a"], NO_RANKS, as_listed=True)
    assert list(order.shown()) == ["b", "a"]
    order.sort(0)
    assert list(order.shown()) == ["a", "b"]


def test_another_list_is_shown_whole_and_sorted_as_the_one_before(order: TableOrder) -> None:
    order.sort(0)
    order.show_only({"a"}, NO_RANKS, as_listed=False)
    order.take(KeptRows([Row("y", ("y",), (2.0,)), Row("x", ("x",), (1.0,))]))
    assert list(order.shown()) == ["x", "y"]
