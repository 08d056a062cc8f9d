"""Text that is cut where there is no room for the rest of it."""

from collections.abc import Callable

SIGN = "…"


def cut(text: str, room: int, measure: Callable[[str], int]) -> str:
    """``text``, or as much of its beginning as fits into ``room`` pixels with an ellipsis after it.

    >>> cut("shell stitch", 7, len)
    'shell…'
    """
    if measure(text) <= room:
        return text
    least, most = 0, len(text)
    while least < most:
        middle = (least + most + 1) // 2
        if measure(text[:middle].rstrip() + SIGN) <= room:
            least = middle
        else:
            most = middle - 1
    return text[:least].rstrip() + SIGN
