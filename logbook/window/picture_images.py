"""Pictures as Tk shows them: small ones and large ones, without standing still for what is too large.

Tk draws PNG and GIF by itself. JPEG needs Pillow, the extra ``pictures``, which is loaded when the first picture is to be shown.
"""

import tkinter as tk
from functools import cache
from importlib import import_module
from io import BytesIO
from typing import Any

from logbook.errors import RefusedError
from logbook.pages.pictures_told import BY_TK, IN_VIEWER, WITH_PILLOW, fits_into, told_of

_CACHED = 60
"""Small pictures that are kept, the latest shown."""


@cache
def pillow() -> Any:
    """Pillow's Image, or None where it is not installed."""
    try:
        return import_module("PIL.Image")
    except ImportError:
        return None


def small(master: tk.Misc, name: str, content: bytes, side: int) -> tk.PhotoImage:
    """At most ``side`` pixels high and wide. Raises RefusedError, in a few words, if it can't be shown here."""
    known: dict[tuple[str, int], tk.PhotoImage] = master.nametowidget(".").__dict__.setdefault("small_pictures", {})
    found = known.pop((name, side), None) or shown(master, content, side, side)
    known[name, side] = found
    while len(known) > _CACHED:
        known.pop(next(iter(known)))
    return found


def shown(master: tk.Misc, content: bytes, width: int, height: int) -> tk.PhotoImage:
    """A picture within ``width`` by ``height`` pixels, never larger than it is. Raises RefusedError if it can't be shown here."""
    told = told_of(content)
    image = pillow()
    if told.pixels > (WITH_PILLOW if image is not None and told.kind == "jpg" else BY_TK):
        raise RefusedError(IN_VIEWER)
    try:
        if image is not None:
            return _by_pillow(image, master, content, width, height)
        if told.kind == "jpg":
            raise RefusedError(IN_VIEWER)
        photo = tk.PhotoImage(master=master, data=content)
        step = fits_into(photo.width(), photo.height(), width, height)
        return photo.subsample(step) if step > 1 else photo
    except (tk.TclError, OSError, ValueError, SyntaxError, MemoryError) as error:
        raise RefusedError("The picture can't be drawn: it is damaged.") from error


def _by_pillow(image: Any, master: tk.Misc, content: bytes, width: int, height: int) -> tk.PhotoImage:
    turn = import_module("PIL.ImageOps").exif_transpose
    with image.open(BytesIO(content), formats=("JPEG", "PNG", "GIF")) as opened:
        opened.draft("RGB", (width, height))
        turned = turn(opened).convert("RGBA")
    turned.thumbnail((width, height))
    plain = image.new("RGB", turned.size, "white")
    plain.paste(turned, mask=turned.getchannel("A"))
    head = f"P6 {plain.width} {plain.height} 255\n".encode()
    return tk.PhotoImage(master=master, data=head + plain.tobytes(), format="PPM")
