"""What is drawn over a table's rows: a bar at the row in hand, and the border where columns reach beyond it."""

import tkinter as tk
from tkinter import ttk

from logbook.window.look import Look


class TableMarks:
    """``mark`` is the bar, ``edges`` are the border at the left and right."""

    def __init__(self, tree: ttk.Treeview, look: Look) -> None:
        self._tree, self._look = tree, look
        self.mark, *self.edges = (tk.Frame(tree, borderwidth=0, highlightthickness=0) for _ in range(3))

    def place_edges(self) -> None:
        """Where columns reach beyond the border at the left or right Tk draws them over it, and so over the ring of the focus."""
        palette, focused = self._look.palette, self._tree.instate(["focus"])
        first, last = (float(share) for share in self._tree.xview())
        for edge, side, over in zip(self.edges, (0.0, 1.0), (first > 0, last < 1), strict=True):
            edge.configure(background=palette.focus if focused else palette.line)
            if over:
                edge.place(relx=side, anchor="ne" if side else "nw", width=2 if focused else 1, relheight=1)
            else:
                edge.place_forget()

    def place_mark(self, row: str) -> None:
        """A bar at the left of the ``row`` in hand ("": none), since the colour of a selected row alone is too faint a sign."""
        box = self._tree.bbox(row) if row else ""
        if box:
            self.mark.place(x=1, y=box[1], width=self._look.pixels(0.8), height=box[3])
        else:
            self.mark.place_forget()

    def follow_look(self) -> None:
        """The colours are others."""
        self.mark.configure(background=self._look.palette.accent)
        self.place_edges()
