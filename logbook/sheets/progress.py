"""Telling how far a long export is."""

from collections.abc import Callable, Iterator, Sequence
from typing import TypeVar

Progress = Callable[[int, int], None]
"""Called with (done, total); it may raise to cancel."""

_STEP = 100
_Item = TypeVar("_Item")


def counted(items: Sequence[_Item], progress: Progress | None) -> Iterator[_Item]:
    """``items`` one by one, telling ``progress`` every hundred and at the end."""
    for done, item in enumerate(items):
        if progress is not None and done % _STEP == 0:
            progress(done, len(items))
        yield item
    if progress is not None:
        progress(len(items), len(items))
