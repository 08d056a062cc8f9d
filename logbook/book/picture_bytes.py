"""Pictures as bytes: what kind one is, how large, whole or cut, and the same without what tells where and with what it was taken.

Kept are what draws the picture, its colours and which way is up; taken out are EXIF (but for the orientation), XMP, IPTC,
comments and whatever stands behind the picture's end. Not one pixel is drawn anew. Sources: ITU T.81 (JPEG), W3C PNG, GIF89a,
Exif 2.3.
"""

import struct
import zlib
from collections.abc import Callable, Iterator
from typing import NamedTuple

from logbook.craft.words.numbers import grouped

MOST_BYTES = 40_000_000
MOST_SIDE, MOST_PIXELS = 15_000, 60_000_000


class Picture(NamedTuple):
    """``kind``: png, gif or jpg. Sizes in pixels; ``content`` is without what was taken out."""

    kind: str
    width: int
    height: int
    content: bytes


class NoPictureError(ValueError):
    """The bytes are no picture that can be kept; the text says why, in words that go on a file's name."""


def picture_of(content: bytes) -> Picture:
    """The picture. Raises NoPictureError."""
    read = next((read for start, read in _READERS if content.startswith(start)), None)
    if read is None:
        raise NoPictureError("is not a picture that can be kept: choose a JPEG, PNG or GIF file")
    try:
        found = read(content)
    except (struct.error, IndexError) as error:
        raise NoPictureError("is cut off: copy it again from its source") from error
    if not (found.width and found.height):
        raise NoPictureError("has no size, so it shows nothing")
    if max(found.width, found.height) > MOST_SIDE or found.width * found.height > MOST_PIXELS:
        at_most = f"{grouped(MOST_SIDE)} at a side and {MOST_PIXELS // 1_000_000} million in all at most"
        said = f"is {grouped(found.width)} by {grouped(found.height)} pixels, more than can be shown: make it smaller, {at_most}"
        raise NoPictureError(said)
    return found


_PNG = b"\x89PNG\r\n\x1a\n"
_PNG_KEPT = frozenset(
    (b"IHDR", b"PLTE", b"IDAT", b"IEND", b"tRNS", b"gAMA", b"cHRM", b"sRGB", b"iCCP", b"pHYs", b"bKGD", b"sBIT")
)


def _png(content: bytes) -> Picture:
    width, height = struct.unpack_from(">II", content, 16)
    kept, place = [_PNG], len(_PNG)
    while True:
        length, name = struct.unpack_from(">I4s", content, place)
        whole = content[place : place + length + 12]
        if len(whole) < length + 12:
            raise IndexError
        if zlib.crc32(whole[4:-4]) != struct.unpack(">I", whole[-4:])[0]:
            raise NoPictureError("is damaged: copy it again from its source")
        if name in _PNG_KEPT:
            kept.append(whole)
        if name == b"IEND":
            return Picture("png", width, height, b"".join(kept))
        place += length + 12


def _gif(content: bytes) -> Picture:
    width, height, flags = struct.unpack_from("<HHB", content, 6)
    place = 13 + _colours(flags)
    kept = [content[:place]]
    while content[place] != 0x3B:
        start = place
        if content[place] == 0x2C:
            place = _after_blocks(content, place + 10 + _colours(content[place + 9]) + 1)
            keep = True
        elif content[place] == 0x21:
            label, said = content[place + 1], content[place + 3 : place + 14]
            place = _after_blocks(content, place + 2)
            keep = label in (0xF9, 0x01) or (label == 0xFF and said == b"NETSCAPE2.0")
        else:
            raise NoPictureError("is damaged: copy it again from its source")
        if keep:
            kept.append(content[start:place])
    return Picture("gif", width, height, b"".join([*kept, b"\x3b"]))


def _colours(flags: int) -> int:
    """The bytes of a colour table."""
    return 3 * 2 ** ((flags & 7) + 1) if flags & 0x80 else 0


def _after_blocks(content: bytes, place: int) -> int:
    while length := content[place]:
        place += length + 1
    return place + 1


_SIZES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}
_JPEG_KEPT = frozenset((0xE0, 0xE2, 0xEE))
"""Of what programs add: JFIF, colour profiles (but no further pictures), how colours are turned."""


def _jpeg(content: bytes) -> Picture:
    kept, turned, size = [], 1, (0, 0)
    for marker, segment in _segments(content):
        if marker in _SIZES:
            size = struct.unpack_from(">HH", segment, 5)[::-1]
        if marker == 0xE1 and segment[4:10] == b"Exif\0\0":
            turned = _orientation(segment[10:])
        further = marker == 0xE2 and not segment[4:].startswith(b"ICC_PROFILE\0")
        if (marker < 0xE0 or marker in _JPEG_KEPT) and not further:
            kept.append(segment)
    at = 1 if kept and kept[0][1:2] == b"\xe0" else 0
    if turned != 1:
        kept.insert(at, _exif_of(turned))
    return Picture("jpg", size[0], size[1], b"".join([b"\xff\xd8", *kept, b"\xff\xd9"]))


def _segments(content: bytes) -> Iterator[tuple[int, bytes]]:
    """Each marker with its segment, and with the lines that follow a scan's; without what begins and ends the picture."""
    place = 2
    while True:
        while content[place] == 0xFF and content[place + 1] == 0xFF:
            place += 1
        if content[place] != 0xFF:
            raise NoPictureError("is damaged: copy it again from its source")
        marker = content[place + 1]
        if marker == 0xD9:
            return
        end = place + 2 + struct.unpack_from(">H", content, place + 2)[0]
        if marker == 0xDA:
            end = _after_scan(content, end)
        if end > len(content):
            raise IndexError
        yield marker, content[place:end]
        place = end


def _after_scan(content: bytes, place: int) -> int:
    """Where the next marker stands: behind an FF of the picture's own lines a 00, or the sign of a restart, follows."""
    while (place := content.find(b"\xff", place)) >= 0:
        if content[place + 1] != 0 and not 0xD0 <= content[place + 1] <= 0xD7:
            return place
        place += 2
    raise IndexError


def _orientation(tiff: bytes) -> int:
    """Which way is up, 1 to 8; 1 where it is not said, or so that it can't be read."""
    order = {b"II": "<", b"MM": ">"}.get(tiff[:2])
    if order is None:
        return 1
    try:
        (start,) = struct.unpack_from(f"{order}I", tiff, 4)
        (count,) = struct.unpack_from(f"{order}H", tiff, start)
        for number in range(min(count, 1000)):
            tag, _, _, value = struct.unpack_from(f"{order}HHIH", tiff, start + 2 + 12 * number)
            if tag == 0x0112:
                return int(value) if 1 <= value <= 8 else 1
    except struct.error:
        pass
    return 1


def _exif_of(turned: int) -> bytes:
    tiff = b"MM\0*" + struct.pack(">IHHHIHHI", 8, 1, 0x0112, 3, 1, turned, 0, 0)
    body = b"Exif\0\0" + tiff
    return b"\xff\xe1" + struct.pack(">H", len(body) + 2) + body


_READERS: tuple[tuple[bytes, Callable[[bytes], Picture]], ...] = (
    (_PNG, _png), (b"GIF87a", _gif), (b"GIF89a", _gif), (b"\xff\xd8\xff", _jpeg),
)  # fmt: skip
