"""The program's own picture, for its window and for the desktop: three rows of stitches on a piece of fabric."""

import struct
import zlib

GROUND, STITCH = (0x7A, 0x3B, 0x5D), (0xFF, 0xFD, 0xF8)
ACROSS, DOWN = 3, 3
SIDE, EDGE, THICK = 48.0, 5.0, 2.4
"""The picture is laid out on so many units; so wide is its edge, and so thick a line."""


def icon_png(pixels: int) -> bytes:
    """The picture as a PNG file with so many pixels a side (PNG, third edition: eight bits a channel, no filter)."""
    rows = (b"\0" + b"".join(bytes(_colour(x, y, SIDE / pixels)) for x in range(pixels)) for y in range(pixels))
    header = struct.pack(">IIBBBBB", pixels, pixels, 8, 2, 0, 0, 0)
    chunks = ((b"IHDR", header), (b"IDAT", zlib.compress(b"".join(rows), 9)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(_chunk(*chunk) for chunk in chunks)


def icon_svg() -> str:
    """The picture as an SVG file, of any size."""
    wide, high = _stitch()
    paths = (
        f"M{EDGE + i * wide:.3f} {EDGE + j * high:.3f}l{wide / 2:.3f} {high:.3f}l{wide / 2:.3f} {-high:.3f}"
        for j in range(DOWN)
        for i in range(ACROSS)
    )
    ground, stitch = (f"#{red:02X}{green:02X}{blue:02X}" for red, green, blue in (GROUND, STITCH))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {SIDE:g} {SIDE:g}"><rect width="{SIDE:g}" height="{SIDE:g}" '
        f'fill="{ground}"/><path fill="none" stroke="{stitch}" stroke-width="{THICK:g}" d="{"".join(paths)}"/></svg>\n'
    )


def _stitch() -> tuple[float, float]:
    return (SIDE - 2 * EDGE) / ACROSS, (SIDE - 2 * EDGE) / DOWN


def _colour(x: int, y: int, unit: float) -> tuple[int, int, int]:
    """A stitch is a V, seen from above."""
    wide, high = _stitch()
    right, down = (x + 0.5) * unit, (y + 0.5) * unit
    if not (EDGE <= right < SIDE - EDGE and EDGE <= down < SIDE - EDGE):
        return GROUND
    along, foot = (right - EDGE) % wide, wide / 2 * (1 - (down - EDGE) % high / high)
    return STITCH if min(abs(along - wide / 2 + foot), abs(along - wide / 2 - foot)) < THICK / 2 else GROUND


def _chunk(name: bytes, content: bytes) -> bytes:
    return struct.pack(">I", len(content)) + name + content + struct.pack(">I", zlib.crc32(name + content))
