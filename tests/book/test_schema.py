"""The tables and their steps."""

import hashlib
import sqlite3
from collections.abc import Iterator
from contextlib import closing

import pytest

from logbook.book import schema, tables


@pytest.fixture
def empty() -> Iterator[sqlite3.Connection]:
    with closing(sqlite3.connect(":memory:", isolation_level=None)) as connection:
        schema.take_steps(connection, schema.STEPS)
        yield connection


def test_the_version_counts_the_steps(empty: sqlite3.Connection) -> None:
    assert empty.execute("PRAGMA user_version").fetchone() == (len(schema.STEPS),)


def test_every_table_is_strict(empty: sqlite3.Connection) -> None:
    assert all(strict for _, name, _, _, _, strict in empty.execute("PRAGMA table_list") if not name.startswith("sqlite_"))


def test_the_records_have_the_columns_listed(empty: sqlite3.Connection) -> None:
    for table, columns in tables.RECORDS.items():
        found = [row[1] for row in empty.execute(f"PRAGMA table_info({table})")]
        assert found == ["uid", *columns]


def test_a_released_step_stands_as_it_was() -> None:
    """Files made by an earlier version are checked against these very statements: add a step, don't change one."""
    known = [
        "30e8a5b8d13fbc0deb9e54b0bdba6c102d08b1195d3ecbf5f791246c311d73a6",
        "7d11f40a850d206b6892a03ca95bfc3f35a0dbe5916dc9586fe30f0642283b20",
        "75e9a19b15221be0f7ada4d5ab081aea74b1380f11be5177158c115825e764a3",
        "b0ba3e34b6d3c7cf707aef891aa2be5903328fc1f5728b0623ed2e4d750cc86c",
    ]
    assert [hashlib.sha256("\n".join(step).encode()).hexdigest() for step in schema.STEPS] == known
