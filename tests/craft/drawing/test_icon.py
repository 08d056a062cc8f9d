"""The program's picture: the same as pixels and as lines."""

import itertools
import struct
import zlib
from xml.etree import ElementTree

from logbook.craft.drawing.icon import GROUND, STITCH, icon_png, icon_svg


def pixels(png: bytes) -> list[list[tuple[int, ...]]]:
    """Of a file with one IDAT and no filters, as ours."""
    side = struct.unpack(">I", png[16:20])[0]
    at = png.index(b"IDAT")
    length = struct.unpack(">I", png[at - 4 : at])[0]
    raw = zlib.decompress(png[at + 4 : at + 4 + length])
    rows = [raw[y * (3 * side + 1) + 1 : (y + 1) * (3 * side + 1)] for y in range(side)]
    return [[tuple(row[3 * x : 3 * x + 3]) for x in range(side)] for row in rows]


def test_it_shows_nine_stitches_on_fabric() -> None:
    found = pixels(icon_png(48))
    assert {colour for row in found for colour in row} == {GROUND, STITCH}
    assert all(found[0][x] == GROUND == found[x][0] for x in range(48))
    for row in (11, 24, 36):  # half way down each row of stitches
        changes = [one != after for one, after in itertools.pairwise(found[row])]
        assert sum(changes) == 2 * 6, row


def test_every_chunk_is_whole() -> None:
    png, at = icon_png(16), 8
    while at < len(png):
        length = struct.unpack(">I", png[at : at + 4])[0]
        assert zlib.crc32(png[at + 4 : at + 8 + length]) == struct.unpack(">I", png[at + 8 + length : at + 12 + length])[0]
        at += 12 + length
    assert at == len(png)


def test_as_lines_it_has_as_many_stitches() -> None:
    path = ElementTree.fromstring(icon_svg())[1]
    assert path.get("d", "").count("M") == 9
