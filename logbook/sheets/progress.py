"""Telling how far a sheet is written or read."""

from collections.abc import Callable, Iterable, Iterator
from typing import TypeVar

Progress = Callable[[int, int], None]
"""Called with (done, total), 0 while the total is unknown; it may raise to cancel."""

_STEP = 100
_Item = TypeVar("_Item")


def counted(items: Iterable[_Item], many: int, progress: Progress | None, before: int = 0, after: int = 0) -> Iterator[_Item]:
    """``items``, of which there are ``many``, one by one, telling ``progress`` every hundred and at their end.

    ``before`` and ``after`` are how many things of the whole come before and after these.
    """
    total = before + many + after
    for done, item in enumerate(items, start=before):
        if progress is not None and done % _STEP == 0:
            progress(done, total)
        yield item
    if progress is not None:
        progress(before + many, total)
