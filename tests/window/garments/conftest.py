"""The logbook that the tests of garments begin with."""

from tests.support.garments import session

__all__ = ["session"]
