"""The logbook that the tests of the page of stitch patterns begin with."""

from tests.support.patterns import session

__all__ = ["session"]
