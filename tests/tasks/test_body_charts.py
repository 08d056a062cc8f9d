from pathlib import Path

import pytest

from logbook.craft.sizes.body_chart import chart_of_text, chart_text
from logbook.craft.sizes.trade_charts import WOMEN
from logbook.errors import LogbookError, RefusedError
from logbook.tasks.body_charts import chart_called, chart_texts, delete_chart, save_chart
from logbook.tasks.undoing import undo
from tests.support.books import held, small_book


def test_the_womens_chart_reads_back_from_its_text() -> None:
    assert chart_of_text("women", chart_text(WOMEN)) == WOMEN


def test_a_chart_of_ones_own_is_kept_changed_and_undone(tmp_path: Path) -> None:
    with small_book(tmp_path / "book.logbook", 0) as book:
        start = held(book)
        save_chart(book, "chorus", "size; bust\nA; 90")
        assert chart_called("chorus", book).sizes[0].measure("bust") == 900
        save_chart(book, "chorus", "size\tbust\nA\t91–93")
        assert chart_called("chorus", book).sizes[0].ranges["bust"] == (910, 930)
        assert list(chart_texts(book)) == ["women", "men", "children", "heads", "chorus"]
        undo(book)
        assert chart_called("chorus", book).sizes[0].measure("bust") == 900
        delete_chart(book, "chorus")
        with pytest.raises(RefusedError, match="chorus"):
            chart_called("chorus", book)
        undo(book)
        undo(book)
        assert held(book) == start


def test_the_womens_chart_can_be_changed_and_had_back(tmp_path: Path) -> None:
    with small_book(tmp_path / "book.logbook", 0) as book:
        save_chart(book, "women", "size; bust\nonly; 90")
        assert [size.name for size in chart_called("women", book).sizes] == ["only"]
        delete_chart(book, "women")
        assert chart_called("women", book) == WOMEN


@pytest.mark.parametrize("text", ["", "bust\n90", "size; bust\nA; wide", "size; bust\nA; 90\nA; 91", "size; girth\nA; 90"])
def test_what_is_no_chart_is_not_kept(tmp_path: Path, text: str) -> None:
    with small_book(tmp_path / "book.logbook", 0) as book:
        before = held(book)
        with pytest.raises(LogbookError):
            save_chart(book, "chorus", text)
        with pytest.raises(RefusedError, match="name"):
            save_chart(book, " ", "size; bust\nA; 90")
        assert held(book) == before
