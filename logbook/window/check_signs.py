"""The signs of check boxes, drawn by ourselves since clam's own are small and hard to read."""

import base64
import struct
import tkinter as tk
import zlib
from collections.abc import Callable, Sequence
from functools import cache
from tkinter import ttk
from typing import Any

from logbook.window.palette import Palette

Distance = Callable[[float, float], float]
"""How far a point lies outside (> 0) or inside (< 0) a shape; all in shares of the sign's side, 0 to 1."""


class CheckSigns:
    """One image for each state; the images keep their names, and are painted anew by ``draw``."""

    def __init__(self, root: tk.Misc, style: ttk.Style) -> None:
        self._images = {(on, enabled): tk.PhotoImage(master=root) for on in (False, True) for enabled in (False, True)}
        style.element_create(
            "Drawn.indicator",
            "image",
            self._images[False, True],
            ("disabled", "selected", self._images[True, False]),
            ("disabled", self._images[False, False]),
            ("selected", self._images[True, True]),
            sticky="",
        )
        label: tuple[str, Any] = ("Checkbutton.label", {"sticky": "nswe"})
        focus: tuple[str, Any] = ("Checkbutton.focus", {"side": "left", "sticky": "w", "children": [label]})
        sign: tuple[str, Any] = ("Drawn.indicator", {"side": "left"})
        style.layout("TCheckbutton", [("Checkbutton.padding", {"sticky": "nswe", "children": [sign, focus]})])

    def draw(self, palette: Palette, side: int) -> None:
        """Paints all signs ``side`` pixels high, with a gap to the right of each."""
        covers = _covers(_check(side), side)
        for (on, enabled), image in self._images.items():
            strong = palette.accent if on else palette.outline
            outer = strong if enabled else palette.line
            inner = (palette.accent if on else palette.surface) if enabled else (palette.line if on else palette.page)
            mark = palette.on_accent if enabled else palette.muted
            colours = (outer, inner, mark) if on else (outer, inner)
            image.configure(data=_png(side, _painted(covers, colours)))


def _check(side: int) -> tuple[Distance, Distance, Distance]:
    """The outline, the ground inside it, and the mark."""
    thin = 1.5 / side
    strokes = ((0.24, 0.52, 0.43, 0.71), (0.43, 0.71, 0.78, 0.30))
    return (
        lambda x, y: _square(x, y, 0.5),
        lambda x, y: _square(x, y, 0.5 - thin),
        lambda x, y: min(_segment(x, y, *stroke) for stroke in strokes) - 0.065,
    )


def _square(x: float, y: float, half: float) -> float:
    """With corners a little rounded."""
    rounding = 0.12
    dx, dy = (max(abs(v - 0.5) - half + rounding, 0.0) for v in (x, y))
    return float((dx * dx + dy * dy) ** 0.5) - rounding


def _segment(x: float, y: float, x0: float, y0: float, x1: float, y1: float) -> float:
    dx, dy = x1 - x0, y1 - y0
    along = max(0.0, min(1.0, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy)))
    return float(((x - x0 - along * dx) ** 2 + (y - y0 - along * dy) ** 2) ** 0.5)


def _covers(shapes: Sequence[Distance], side: int) -> list[list[float]]:
    """For each shape how much of each pixel it covers, 0 to 1, row by row: the edges come out soft."""
    middles = [(i + 0.5) / side for i in range(side)]
    return [[min(1.0, max(0.0, 0.5 - shape(x, y) * side)) for y in middles for x in middles] for shape in shapes]


def _painted(covers: Sequence[Sequence[float]], colours: Sequence[str]) -> list[bytes]:
    """The pixels as red, green, blue, alpha; the shapes painted over each other, the first on nothing."""
    layers = [tuple(int(colour[i : i + 2], 16) for i in (1, 3, 5)) for colour in colours]

    @cache  # most pixels lie well inside or outside of a shape, so few are different
    def painted(shares: tuple[float, ...]) -> bytes:
        pixel = layers[0]
        for share, layer in zip(shares[1:], layers[1:], strict=False):
            pixel = tuple(round(old + (new - old) * share) for old, new in zip(pixel, layer, strict=True))
        return bytes((*pixel, round(255 * shares[0])))

    return [painted(shares) for shares in zip(*covers, strict=True)]


def _png(side: int, pixels: Sequence[bytes]) -> bytes:
    """A picture of ``side`` rows, with a see-through gap of a third at the right; as base64."""
    gap = bytes(4 * (side // 3))
    rows = b"".join(b"\0" + b"".join(pixels[i : i + side]) + gap for i in range(0, side * side, side))
    header = struct.pack(">IIBBBBB", side + side // 3, side, 8, 6, 0, 0, 0)
    chunks = ((b"IHDR", header), (b"IDAT", zlib.compress(rows)), (b"IEND", b""))
    framed = (struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body)) for name, body in chunks)
    return base64.b64encode(b"\x89PNG\r\n\x1a\n" + b"".join(framed))
