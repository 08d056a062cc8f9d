"""Assumptions: those that differ from the start are kept."""

from dataclasses import replace
from pathlib import Path

import pytest

from logbook.book.assumptions import assumptions, put_assumptions
from logbook.book.trouble import DamagedError
from logbook.craft.swatches.assumptions import Assumptions
from tests.support.books import small_book


def test_kept_only_where_they_differ(tmp_path: Path) -> None:
    with small_book(tmp_path / "a.logbook", 0) as book:
        assert assumptions(book.connection) == Assumptions()
        mine = replace(Assumptions(), drift=1 / 3, most_edge_stitches=2)
        with book.writing("assume") as writing:
            put_assumptions(writing, mine)
        assert assumptions(book.connection) == mine
        assert isinstance(assumptions(book.connection).most_edge_stitches, int)
        with book.writing("as at the start") as writing:
            put_assumptions(writing, Assumptions())
        assert book.connection.execute("SELECT count(*) FROM assumption").fetchone() == (0,)


def test_one_that_is_no_number_of_stitches_is_damage(tmp_path: Path) -> None:
    with small_book(tmp_path / "a.logbook", 0) as book:
        book.connection.execute("INSERT INTO assumption VALUES ('most_edge_stitches', 9e999)")
        with pytest.raises(DamagedError):
            assumptions(book.connection)
