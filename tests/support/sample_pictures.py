"""Draws the pictures of the sample, stitch by stitch: ``python -m tests.support.sample_pictures``.

They are kept in ``sample_data`` under the names that the sample's sheet and pieces call them by.
"""

import hashlib
import math
import struct
import sys
import zlib
from collections.abc import Callable, Iterator
from pathlib import Path

from tests.support.pictures import chunk

FOLDER = Path(__file__).resolve().parent.parent.parent / "sample_data" / "swatches.pictures"
WIDE, HIGH = 320, 240
Colour = tuple[int, int, int]
TABLE: Colour = (214, 203, 184)


class Cloth:
    """A picture being drawn."""

    def __init__(self) -> None:
        self._rows = [bytearray(bytes(TABLE) * WIDE) for _ in range(HIGH)]
        for y, row in enumerate(self._rows):  # the grain of a table
            for x in range(WIDE):
                shade = round(5 * math.sin(y / 7 + math.sin(x / 41) * 2))
                row[3 * x : 3 * x + 3] = bytes(max(0, min(255, part + shade)) for part in TABLE)

    def thread(self, x0: float, y0: float, x1: float, y1: float, thick: float, colour: Colour) -> None:
        """A bit of yarn, lighter along its middle."""
        length = math.hypot(x1 - x0, y1 - y0) or 1.0
        for y in range(max(0, math.floor(min(y0, y1) - thick)), min(HIGH, math.ceil(max(y0, y1) + thick) + 1)):
            for x in range(max(0, math.floor(min(x0, x1) - thick)), min(WIDE, math.ceil(max(x0, x1) + thick) + 1)):
                along = max(0.0, min(1.0, ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / length**2))
                off = math.hypot(x - x0 - along * (x1 - x0), y - y0 - along * (y1 - y0)) / thick
                if off <= 1:
                    light = 1.1 - 0.45 * off * off
                    self._rows[y][3 * x : 3 * x + 3] = bytes(max(0, min(255, round(part * light))) for part in colour)

    def png(self) -> bytes:
        """The picture."""
        head = struct.pack(">IIBBBBB", WIDE, HIGH, 8, 2, 0, 0, 0)
        body = zlib.compress(b"".join(b"\0" + bytes(row) for row in self._rows), 9)
        return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", body) + chunk(b"IEND", b"")


def single_crochet(cloth: Cloth, colour: Colour, left: int = 50, top: int = 35, wide: int = 20, high: int = 15) -> None:
    """Rows of small V."""
    for row in range(high):
        for stitch in range(wide):
            x, y = left + 11 * stitch + (row % 2) * 1.5, top + 11.5 * row + math.sin(stitch / 3) * 0.7
            cloth.thread(x, y, x + 4.5, y + 7, 2.6, colour)
            cloth.thread(x + 9, y, x + 5, y + 7, 2.6, colour)


def shells(cloth: Cloth, colour: Colour) -> None:
    """Fans of five over fans of five."""
    for row in range(6):
        for fan in range(6):
            x, y = 55 + 37 * fan + (row % 2) * 18, 62 + 29 * row
            for tilt in (-56, -28, 0, 28, 56):
                angle = math.radians(tilt)
                cloth.thread(x, y, x + 21 * math.sin(angle), y - 21 * math.cos(angle), 2.4, colour)
            cloth.thread(x - 17, y + 3, x + 17, y + 3, 1.8, colour)


def vest(cloth: Cloth, colour: Colour) -> None:
    """A vest laid flat: a body of single crochet with two shoulders."""
    single_crochet(cloth, colour, 85, 95, 14, 11)
    single_crochet(cloth, colour, 96, 30, 4, 6)
    single_crochet(cloth, colour, 184, 30, 4, 6)


PICTURES: tuple[tuple[str, Callable[[Cloth, Colour], None], Colour], ...] = (
    ("LC-01, single crochet", single_crochet, (232, 222, 200)),
    ("LC-02, shells", shells, (232, 222, 200)),
    ("OA-05, shells", shells, (130, 144, 158)),
    ("Usher's vest for Noémie", vest, (232, 222, 200)),
)


def drawn() -> Iterator[tuple[str, bytes]]:
    """What each shows, and the picture."""
    for what, draw, colour in PICTURES:
        cloth = Cloth()
        draw(cloth, colour)
        yield what, cloth.png()


def main() -> int:
    """Writes them, and says the name of each."""
    FOLDER.mkdir(exist_ok=True)
    for what, content in drawn():
        name = f"{hashlib.sha256(content).hexdigest()}.png"
        (FOLDER / name).write_bytes(content)
        print(f"{what}: {name} ({len(content):,} bytes)")
    return 0


if __name__ == "__main__":
    sys.exit(main())
