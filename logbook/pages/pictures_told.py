"""What of a picture decides whether it is drawn in the window."""

from typing import NamedTuple

from logbook.errors import RefusedError
from logbook.tasks.pictures import measured

BY_TK, WITH_PILLOW = 5_000_000, 30_000_000
"""Pixels that are drawn in the window, so that nobody waits: a JPEG is drawn smaller from the start."""
IN_VIEWER = "This picture opens in the system's viewer."


class Told(NamedTuple):
    """Its kind, and how many pixels it has."""

    kind: str
    pixels: int


def told_of(content: bytes) -> Told:
    """Raises RefusedError, in one sentence, if it is no whole picture, or larger than any that is kept."""
    kind, width, height = measured(content)
    return Told(kind, width * height)


def fits_into(width: int, height: int, most_wide: int, most_high: int) -> int:
    """By what whole number a picture is to be made smaller."""
    if most_wide < 1 or most_high < 1:
        raise RefusedError("There is no room to show it.")
    return max(-(-width // most_wide), -(-height // most_high), 1)
