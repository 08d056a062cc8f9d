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


def lines_of(text: str, wide: int, measure: Callable[[str], int]) -> int:
    """How many lines ``text`` takes where one is ``wide`` pixels; a word that is wider goes on in the next.

    >>> lines_of("shell stitch in the round", 12, len)
    2
    """
    lines, taken = 1, 0
    for word in text.split():
        width = measure(f" {word}" if taken else word)
        if taken and taken + width > wide:
            lines, taken, width = lines + 1, 0, measure(word)
        lines, taken = lines + (taken + width - 1) // wide, (taken + width - 1) % wide + 1
    return lines
