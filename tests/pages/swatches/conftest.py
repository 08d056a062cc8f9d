"""The logbook that the tests of the page of swatches begin with."""

from tests.support.wardrobe import book, session

__all__ = ["book", "session"]
