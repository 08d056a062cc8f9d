"""How numbers and dates are written where the reader lives.

The outermost layer says it once, at its start; nothing here asks the system. What is kept, handed to scripts or written to a
sheet is written in ``PLAIN`` notation, whatever the reader's is.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from typing import NamedTuple

POINT, COMMA = ".", ","


class Notation(NamedTuple):
    """``mark``: what stands before decimals. ``month_first``: May 31, 2026 rather than 31 May 2026."""

    mark: str = POINT
    month_first: bool = False


PLAIN = Notation()
_NOTATION: ContextVar[Notation] = ContextVar("notation", default=PLAIN)


def notation() -> Notation:
    """How numbers and dates are written now."""
    return _NOTATION.get()


def write_in(chosen: Notation) -> None:
    """From now on, in this thread and in what it starts in a copy of its context."""
    _NOTATION.set(chosen)


@contextmanager
def written_in(chosen: Notation) -> Iterator[None]:
    """So while this lasts; afterwards as before."""
    before = _NOTATION.set(chosen)
    try:
        yield
    finally:
        _NOTATION.reset(before)
