"""An open logbook, to do things with."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from logbook.tasks.keeping import Logbook, new_book


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    """A new, empty logbook whose backups are kept."""
    with new_book(tmp_path / "vests.logbook") as book:
        yield book
