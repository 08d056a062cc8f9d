"""The logbook that the tests of the page of pieces begin with."""

from tests.support.garments import session

__all__ = ["session"]
