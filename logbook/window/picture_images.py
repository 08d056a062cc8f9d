"""Pictures as Tk shows them: small ones and large ones, without standing still for what is too large.

Tk draws PNG and GIF by itself. JPEG needs Pillow, the extra ``pictures``, which is loaded when the first picture is to be shown.
"""

import tkinter as tk
from functools import cache
from importlib import import_module
from io import BytesIO
from typing import Any, NamedTuple

from logbook.errors import RefusedError
from logbook.pages.pictures_told import BY_TK, IN_VIEWER, WITH_PILLOW, fits_into, told_of

_CACHED = 60
"""Small pictures that are kept, the latest shown."""
_DAMAGED = "The picture can't be shown: it is damaged."


@cache
def pillow() -> Any:
    """Pillow's Image, or None where it is not installed."""
    try:
        return import_module("PIL.Image")
    except ImportError:
        return None


class Drawn(NamedTuple):
    """A picture as Tk takes it, which is to be no larger than ``width`` by ``height``."""

    data: bytes
    width: int
    height: int


def known_small(master: tk.Misc, name: str, side: int) -> tk.PhotoImage | None:
    """A picture that was shown small a short while ago, at most ``side`` pixels high and wide."""
    known = _known(master)
    found = known.pop((name, side), None)
    if found is not None:
        known[name, side] = found
    return found


def small(master: tk.Misc, name: str, drawn: Drawn) -> tk.PhotoImage:
    """It is known from now on. Raises RefusedError, in a few words, if it can't be shown here."""
    known = _known(master)
    known[name, drawn.width] = found = as_photo(master, drawn)
    while len(known) > _CACHED:
        known.pop(next(iter(known)))
    return found


def _known(master: tk.Misc) -> dict[tuple[str, int], tk.PhotoImage]:
    found: dict[tuple[str, int], tk.PhotoImage] = master.nametowidget(".").__dict__.setdefault("small_pictures", {})
    return found


def shown(master: tk.Misc, content: bytes, width: int, height: int) -> tk.PhotoImage:
    """A picture within ``width`` by ``height`` pixels, never larger than it is. Raises RefusedError if it can't be shown here."""
    return as_photo(master, draw(content, width, height))


def draw(content: bytes, width: int, height: int) -> Drawn:
    """What takes long of showing it, without Tk, for any thread. Raises RefusedError if it can't be shown here."""
    told = told_of(content)
    image = pillow()
    if told.pixels > (WITH_PILLOW if image is not None and told.kind == "jpg" else BY_TK):
        raise RefusedError(IN_VIEWER)
    try:
        if image is not None:
            return Drawn(_by_pillow(image, content, width, height), width, height)
    except (OSError, ValueError, SyntaxError, MemoryError) as error:
        raise RefusedError(_DAMAGED) from error
    if told.kind == "jpg":
        raise RefusedError(IN_VIEWER)
    return Drawn(content, width, height)


def as_photo(master: tk.Misc, drawn: Drawn) -> tk.PhotoImage:
    """What is left of showing it. Raises RefusedError if it can't be shown here."""
    try:
        photo = tk.PhotoImage(master=master, data=drawn.data)
    except tk.TclError as error:
        raise RefusedError(_DAMAGED) from error
    step = fits_into(photo.width(), photo.height(), drawn.width, drawn.height)
    return photo.subsample(step) if step > 1 else photo


def _by_pillow(image: Any, content: bytes, width: int, height: int) -> bytes:
    """As a plain picture without a packing (PPM)."""
    turn = import_module("PIL.ImageOps").exif_transpose
    with image.open(BytesIO(content), formats=("JPEG", "PNG", "GIF")) as opened:
        opened.draft("RGB", (width, height))
        turned = turn(opened).convert("RGBA")
    turned.thumbnail((width, height))
    plain = image.new("RGB", turned.size, "white")
    plain.paste(turned, mask=turned.getchannel("A"))
    return f"P6 {plain.width} {plain.height} 255\n".encode() + bytes(plain.tobytes())
