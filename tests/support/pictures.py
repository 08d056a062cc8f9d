"""Small pictures drawn for tests, and what hostile or broken ones are made of."""

import struct
import zlib


def chunk(name: bytes, body: bytes) -> bytes:
    """A chunk of a PNG."""
    return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))


def png(width: int = 3, height: int = 2, colour: tuple[int, int, int] = (120, 60, 90), extra: bytes = b"") -> bytes:
    """A plain picture."""
    rows = (b"\0" + bytes(colour) * width) * height
    head = chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + head + extra + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


def huge_png(side: int = 20_000) -> bytes:
    """One that says it is that large, in a few bytes."""
    head = chunk(b"IHDR", struct.pack(">IIBBBBB", side, side, 8, 0, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + head + chunk(b"IDAT", zlib.compress(b"\0")) + chunk(b"IEND", b"")


GPS = b"GPS 52.5163 N 13.3777 E"


def exif(orientation: int = 6) -> bytes:
    """An EXIF segment with an orientation and a place."""
    tiff = b"II*\0" + struct.pack("<IH", 8, 2) + struct.pack("<HHIHH", 0x0112, 3, 1, orientation, 0)
    tiff += struct.pack("<HHII", 0x8825, 4, 1, 60) + struct.pack("<I", 0) + GPS
    body = b"Exif\0\0" + tiff
    return b"\xff\xe1" + struct.pack(">H", len(body) + 2) + body


def jpeg(width: int = 40, height: int = 30, segments: bytes = b"") -> bytes:
    """The frame of a JPEG with a scan of a few bytes: what is read of it without drawing it."""
    jfif = b"\xff\xe0" + struct.pack(">H", 16) + b"JFIF\0\1\1\0\0\1\0\1\0\0"
    frame = b"\xff\xc0" + struct.pack(">HBHHB", 11, 8, height, width, 1) + b"\1\x11\0"
    scan = b"\xff\xda" + struct.pack(">HB", 8, 1) + b"\1\0\0\x3f\0" + b"\x12\xff\x00\x34\xff\xd0\x56"
    return b"\xff\xd8" + jfif + segments + frame + scan + b"\xff\xd9"


def gif(width: int = 2, height: int = 2, extra: bytes = b"") -> bytes:
    """A GIF of two colours."""
    head = b"GIF89a" + struct.pack("<HHBBB", width, height, 0x80, 0, 0) + b"\0\0\0\xff\xff\xff"
    return head + extra + b"\x2c" + struct.pack("<HHHHB", 0, 0, width, height, 0) + b"\x02\x02\x84\x51\x00\x3b"
