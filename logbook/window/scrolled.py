"""A form that may be longer than its place."""

import tkinter as tk
from functools import partial
from tkinter import ttk

from logbook.window.keyboard import last_focused, list_is_open
from logbook.window.look import Look
from logbook.window.scroll_bar import show_bar
from logbook.window.styles import styled


class Scrolled(ttk.Frame):
    """Fill ``inside``; it gets the width there is and scrolls up and down. A focused field is brought into view,
    and from it PgUp and PgDn scroll.

    ``width`` in letters is what it asks for.
    """

    def __init__(self, parent: tk.Misc, look: Look, width: int) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look, self._letters = look, width
        self._follows, self._height = False, 0
        self._unseen = ""
        self.canvas = tk.Canvas(self, highlightthickness=0, borderwidth=0, width=1, height=1)
        self.bar = ttk.Scrollbar(self, orient="vertical", command=self.canvas.yview, takefocus=False)
        self.inside = ttk.Frame(self.canvas, style=styled(parent, "TFrame"))
        self._window = self.canvas.create_window(0, 0, anchor="nw", window=self.inside)
        self.canvas.configure(yscrollcommand=partial(show_bar, self.bar))
        self.canvas.grid(row=0, column=0, sticky="nsew")
        self.bar.grid(row=0, column=1, sticky="nse")
        self.rowconfigure(0, weight=1)
        self.columnconfigure(0, weight=1)
        self.canvas.bind("<Configure>", lambda _: self._resized())
        # When it has become so short that none of it is in view, Tk unmaps it and does not tell its new size.
        for event in ("<Configure>", "<Unmap>"):
            self.inside.bind(event, lambda _: self._fit())
        # Nor does Tk tell of a size that it took while none of this could be seen.
        self.canvas.bind("<Expose>", lambda _: self._fit())
        look.when_changed(self, self._follow_look)
        self._bind_window(self.winfo_toplevel())

    def reveal(self, widget: tk.Misc) -> None:
        """Scrolls so that ``widget`` can be seen, with a line above and a message of three below, if there is room."""
        top = widget.winfo_rooty() - self.inside.winfo_rooty()
        bottom = top + widget.winfo_height() + 3 * self.look.label_height
        first = self.canvas.canvasy(0)
        shown = self.canvas.winfo_height()
        margin = min(2 * self.look.line, max(0, shown - widget.winfo_height()))
        if top - margin < first or bottom - top > shown:
            self._begin_at(max(0, top - margin))
        elif bottom > first + shown:
            self._begin_at(bottom - shown)

    def show_top(self, focused: tk.Misc) -> None:
        """Begins at the top, though what takes the keyboard just now may be further down, until the user does something."""
        self._unseen = str(focused)
        self.canvas.yview_moveto(0)

    def _begin_at(self, y: float) -> None:
        """Tk scrolls by whole lines, and would round down: what is to be in view at the bottom would not be."""
        lines = -(-y // self.look.line)
        self.canvas.yview_moveto(lines * self.look.line / max(1, self.inside.winfo_height()))

    def scroll_lines(self, lines: int) -> int:
        """Scrolls down by so many lines, as far as there is something; how many pixels that moved what is inside up."""
        before = self.canvas.canvasy(0)
        self.canvas.yview_scroll(lines, "units")
        return round(self.canvas.canvasy(0) - before)

    def _resized(self) -> None:
        """The field with the keyboard stays in view when a sentence elsewhere takes some of the height."""
        self._fit()
        self.after_idle(self._reveal_focused)

    def _reveal_focused(self) -> None:
        here = last_focused(self) if self.winfo_exists() else None
        if here is None or str(here) == self._unseen:
            return
        if self._holds(here) and not list_is_open(here):  # the list would hang in the air
            self.reveal(here)

    def _fit(self) -> None:
        width, height = self.canvas.winfo_width(), self.inside.winfo_reqheight()
        if self._follows and height != self._height:  # scrolling comes here as well, and must not scroll again
            self.after_idle(self._reveal_focused)
        self._height = height
        self.canvas.itemconfigure(self._window, width=width)
        self.canvas.configure(scrollregion=(0, 0, width, max(height, self.canvas.winfo_height())))

    def _follow_look(self) -> None:
        card = str(self.inside.cget("style")).startswith("Card.")
        self.canvas.configure(background=self.look.palette.surface if card else self.look.palette.page)
        width = self._letters * self.look.letter
        self.canvas.configure(yscrollincrement=self.look.line, width=width)
        self.columnconfigure(1, minsize=self.bar.winfo_reqwidth() + self.look.pixels(0.5))

    def _bind_window(self, window: tk.Tk | tk.Toplevel) -> None:
        window.bind("<FocusIn>", self._follow_focus, add="+")
        window.bind("<Key>", self._typed, add="+")
        for event in ("<Button>", "<MouseWheel>"):
            window.bind(event, lambda _: self._stay(), add="+")
        window.bind("<Prior>", lambda event: self._page(event, -1), add="+")
        window.bind("<Next>", lambda event: self._page(event, 1), add="+")

    def _holds(self, widget: object) -> bool:
        return bool(self.winfo_exists()) and str(widget).startswith(f"{self.inside}.")

    def _follow_focus(self, event: "tk.Event[tk.Misc]") -> None:
        """Also when what is inside takes its size after that, until the user does something else."""
        if self._holds(event.widget):
            self._follows = True
            self.after_idle(self._reveal_focused)

    def _typed(self, event: "tk.Event[tk.Misc]") -> None:
        """A field that was scrolled away comes back when something is typed in it."""
        self._stay()
        if self._holds(event.widget) and isinstance(event.widget, tk.Misc):
            top = event.widget.winfo_rooty() - self.canvas.winfo_rooty()
            if top + event.widget.winfo_height() <= 0 or top >= self.canvas.winfo_height():
                self.after_idle(self._reveal_focused)

    def _stay(self) -> None:
        self._follows, self._unseen = False, ""

    def _page(self, event: "tk.Event[tk.Misc]", pages: int) -> None:
        """Text that follows the last field can be read by keys as well; a list inside pages through itself."""
        if self._holds(event.widget) and not isinstance(event.widget, tk.Text | ttk.Treeview | tk.Listbox):
            self.canvas.yview_scroll(pages, "pages")
