"""A body chart as cells."""

import pytest

from logbook.craft.sizes.body_chart import MEASURES, chart_of_text, chart_text
from logbook.craft.sizes.trade_charts import TRADE_CHARTS
from logbook.pages.pieces.chart_table import more_measures, pasted, table_of, text_of


@pytest.mark.parametrize("name", TRADE_CHARTS)
def test_a_chart_goes_into_cells_and_back(name: str) -> None:
    text = chart_text(TRADE_CHARTS[name])
    headings, rows = table_of(text)
    assert all(len(row) == len(headings) for row in rows)
    assert text_of(headings, rows) == text
    assert chart_of_text(name, text_of(headings, rows)) == TRADE_CHARTS[name]


def test_empty_rows_go_and_signs_that_part_cells_too() -> None:
    assert text_of(["size", "bust"], [["A", "9;0"], ["", " "], ["B", "95\t"]]) == "size; bust\nA; 9 0\nB; 95"
    assert table_of("") == (["size"], [])
    assert table_of("size;bust\nA") == (["size", "bust"], [["A", ""]])


def test_cells_copied_in_a_spreadsheet() -> None:
    assert pasted("78.5") is None
    assert pasted("A\t78.5\r\nB\t94\r\n") == [["A", "78.5"], ["B", "94"]]
    assert pasted("A\nB") == [["A"], ["B"]]


def test_measures_that_may_be_added() -> None:
    assert more_measures(["size", "bust"]) == tuple(one for one in MEASURES if one != "bust")
