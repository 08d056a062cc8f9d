import struct

import pytest

from logbook.book.picture_bytes import NoPictureError, picture_of
from tests.support.pictures import GPS, chunk, exif, gif, huge_png, jpeg, png


def segment(marker: int, body: bytes) -> bytes:
    return bytes((0xFF, marker)) + struct.pack(">H", len(body) + 2) + body


XMP, IPTC = segment(0xE1, b"http://ns.adobe.com/xap/1.0/\0GPS 52.5"), segment(0xED, b"Photoshop 3.0\0GPS52")


def test_a_png_says_its_size_and_loses_where_it_was_taken() -> None:
    plain = png()
    with_place = png(extra=chunk(b"eXIf", GPS) + chunk(b"tEXt", b"Comment\0" + GPS) + chunk(b"gAMA", b"\0\0\xb1\x8f"))
    found = picture_of(with_place)
    assert (found.kind, found.width, found.height) == ("png", 3, 2)
    assert GPS not in found.content
    assert found.content == png(extra=chunk(b"gAMA", b"\0\0\xb1\x8f"))
    assert picture_of(plain).content == plain


def test_a_jpeg_keeps_which_way_is_up_and_loses_the_rest() -> None:
    taken = jpeg(segments=exif(6) + XMP + IPTC + segment(0xFE, b"hi")) + b"behind the end " + GPS
    found = picture_of(taken)
    assert (found.kind, found.width, found.height) == ("jpg", 40, 30)
    assert b"GPS" not in found.content
    assert b"hi" not in found.content
    again = picture_of(found.content)
    assert again.content == found.content  # nothing more to take out, the orientation is there still
    assert b"Exif\0\0" in found.content
    assert picture_of(jpeg()).content == jpeg()


def test_a_gif_loses_its_comments() -> None:
    comment = b"\x21\xfe" + bytes([len(GPS)]) + GPS + b"\0"
    loop = b"\x21\xff\x0bNETSCAPE2.0\x03\x01\x00\x00\x00"
    found = picture_of(gif(extra=comment + loop) + b"behind")
    assert (found.kind, found.width, found.height, found.content) == ("gif", 2, 2, gif(extra=loop))


@pytest.mark.parametrize("whole", [png(), jpeg(segments=exif()), gif()])
def test_a_picture_that_is_cut_anywhere_is_refused(whole: bytes) -> None:
    for length in range(12, len(whole)):
        with pytest.raises(NoPictureError):
            picture_of(whole[:length])


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"a text", "is not a picture"),
        (b"", "is not a picture"),
        (huge_png(), "20,000 by 20,000 pixels"),
        (png()[:-20] + b"x" + png()[-19:], "is damaged"),
        (jpeg(0, 30), "has no size"),
        (b"\xff\xd8\xff\xe0\0\x10", "cut off"),
    ],
)
def test_what_is_no_picture_is_said_so(content: bytes, says: str) -> None:
    with pytest.raises(NoPictureError, match=says):
        picture_of(content)
