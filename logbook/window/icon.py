"""The picture that the desktop shows for the window."""

import tkinter as tk

from logbook.craft.drawing.icon import icon_png

PIXELS = 48


def draw_icon(root: tk.Tk) -> tk.PhotoImage:
    """Gives the window its picture; it lives as long as what comes back is kept."""
    image = tk.PhotoImage(master=root, data=icon_png(PIXELS))
    root.iconphoto(True, image)
    return image
