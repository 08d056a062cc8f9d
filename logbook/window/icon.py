"""The picture that the desktop shows for the window: three rows of stitches on a piece of fabric."""

import tkinter as tk

SIDE = 48
"""Pixels."""
GROUND, STITCH = "#7A3B5D", "#FFFDF8"
ACROSS, DOWN = 3, 3
EDGE = 5
THICK = 2.4


def draw_icon(root: tk.Tk) -> tk.PhotoImage:
    """Gives the window its picture; it lives as long as what comes back is kept."""
    image = tk.PhotoImage(master=root, width=SIDE, height=SIDE)
    image.put(" ".join("{" + " ".join(_colour(x, y) for x in range(SIDE)) + "}" for y in range(SIDE)))
    root.iconphoto(True, image)
    return image


def _colour(x: int, y: int) -> str:
    """A stitch is a V, seen from above."""
    wide, high = (SIDE - 2 * EDGE) / ACROSS, (SIDE - 2 * EDGE) / DOWN
    along, down = (x + 0.5 - EDGE) % wide, (y + 0.5 - EDGE) % high
    inside = EDGE <= x < SIDE - EDGE and EDGE <= y < SIDE - EDGE
    foot = wide / 2 * (1 - down / high)
    on_arm = min(abs(along - wide / 2 + foot), abs(along - wide / 2 - foot)) < THICK / 2
    return STITCH if inside and on_arm else GROUND
