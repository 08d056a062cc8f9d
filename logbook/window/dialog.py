"""A window of its own that asks or tells, above the one that opened it."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.window.keyboard import Hold, holder, keep_behind, last_focused, take_keyboard
from logbook.window.keys import install_mnemonics, split_mnemonic
from logbook.window.look import Look

BESIDE, ABOVE_AND_BELOW = 8, 60
EDGE = 5
"""Pixels of the screen that a window's frame, its title and a task bar may need; units beside what is in the dialog."""


class Dialog(tk.Toplevel):
    """Fill ``inside``, add buttons in reading order, then ``open``. Escape does what ``on_escape`` does, as ``leave`` does; but
    not while the dialog ``stays``, because what it writes is still waiting.

    While one that is ``modal`` is open nothing can be done elsewhere; one that is not can stay open beside the work.
    """

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        title: str,
        on_escape: Callable[[], object],
        stays: Callable[[], bool] = lambda: False,
        *,
        modal: bool = True,
    ) -> None:
        super().__init__(parent)
        self.withdraw()
        self.modal = modal
        self.look, self._above = look, parent.winfo_toplevel()
        self._before = last_focused(self._above)
        self._hold = Hold(self)
        beneath = self._above if isinstance(self._above, Dialog) and self._above.modal else holder(self)
        self._beneath = beneath if isinstance(beneath, Dialog) else None
        self.title(title)
        self.configure(background=look.palette.page)
        self.inside, self._buttons = ttk.Frame(self), ttk.Frame(self)
        look.grid(self.inside, row=0, column=0, sticky="nsew", padx=EDGE, pady=(4, 0))
        look.grid(self._buttons, row=1, column=0, sticky="ew", padx=EDGE, pady=4)
        self._buttons.columnconfigure(1, weight=1)
        self._buttons.bind("<Configure>", lambda event: self._fit_buttons(event.width))
        self.columnconfigure(0, weight=1)
        self.rowconfigure(0, weight=1)
        self.inside.columnconfigure(0, weight=1)
        self._on_escape, self._stays = on_escape, stays
        keep_behind(self, self.leave)
        self.bind("<Escape>", lambda _: self.leave())
        install_mnemonics(self)

    @property
    def most_inside(self) -> int:
        """Pixels that what is in it may be wide on this screen."""
        return self.winfo_screenwidth() - BESIDE - 2 * self.look.pixels(EDGE)

    def wide(self, letters: int) -> int:
        """Pixels of so many letters, as far as the screen has room for them."""
        return min(letters * self.look.letter, self.most_inside)

    def leave(self) -> None:
        """Escape, or the window's own button."""
        if not self._stays():
            self._on_escape()

    def add_button(self, text: str, command: Callable[[], object], accent: bool = False) -> ttk.Button:
        """A button right of the others, one that deletes alone at the left while there is room; ``&`` in ``text`` marks its
        letter. One may stand out as ``accent``."""
        words, underline = split_mnemonic(text)
        button = ttk.Button(self._buttons, text=words, underline=underline, command=command)
        button.configure(style="Accent.TButton" if accent else "TButton")
        self._place_buttons(1)
        return button

    def _place_buttons(self, lines: int) -> None:
        buttons = self._buttons.winfo_children()
        in_line = -(-len(buttons) // lines)
        for place, button in enumerate(buttons):
            assert isinstance(button, ttk.Button)
            line, column = divmod(place, in_line)
            if lines == 1 and str(button.cget("text")).startswith("Delete"):
                button.grid(row=0, column=0, sticky="")
            else:
                gaps = (2 if lines == 1 or column else 0, 0), (line, 0)
                self.look.grid(button, row=line, column=2 + column, sticky="ew", padx=gaps[0], pady=gaps[1])

    def _fit_buttons(self, room: int) -> None:
        """Of one width each where there is room for that, else as wide as their words, else in two lines."""
        buttons = self._buttons.winfo_children()
        for width in ("", 0):
            for button in buttons:
                button.configure(width=width)  # type: ignore[call-arg]
            if sum(button.winfo_reqwidth() + self.look.pixels(2) for button in buttons) <= room:
                self._place_buttons(1)
                return
        self._place_buttons(2)

    def open(self, focus: tk.Misc) -> None:
        """Shows it over its parent, holds the keyboard, and puts the focus on ``focus``."""
        self.update_idletasks()
        above = self._above
        width = min(self.winfo_reqwidth(), self.winfo_screenwidth() - BESIDE)
        self._fit_buttons(width - 2 * self.look.pixels(EDGE))
        self.update_idletasks()
        height = min(self.winfo_reqheight(), self.winfo_screenheight() - ABOVE_AND_BELOW)
        x, y = (self.winfo_screenwidth() - width) // 2, (self.winfo_screenheight() - height) // 3
        if above.winfo_viewable():
            x = above.winfo_rootx() + (above.winfo_width() - width) // 2
            y = above.winfo_rooty() + (above.winfo_height() - height) // 3
        x = max(0, min(x, self.winfo_screenwidth() - BESIDE - width))
        y = max(0, min(y, self.winfo_screenheight() - ABOVE_AND_BELOW - height))
        self.geometry(f"{width}x{height}+{x}+{y}")
        if above.winfo_viewable() and self.modal:
            self.transient(above)
        self.deiconify()
        while not self.winfo_viewable():  # not wait_visibility: that waits for ever if the news came while deiconifying
            self.update()
        self._lower(width, x, y)
        if self.modal:
            if self._beneath is not None:
                self._beneath._hold.leave_off()
            self._hold.take()
        take_keyboard(focus)

    def _lower(self, width: int, x: int, y: int) -> None:
        """Sentences know their height only once they are shown at their width, and ask for more before."""
        self.update_idletasks()
        height = self.winfo_reqheight()
        if height < self.winfo_height():
            self.geometry(f"{width}x{height}+{x}+{y + (self.winfo_height() - height) // 3}")
            self.update_idletasks()

    def grow(self) -> None:
        """Takes the height that what is in it needs now, as far as the screen goes; it never gets lower."""
        self.update_idletasks()
        most = self.winfo_screenheight() - ABOVE_AND_BELOW
        height = min(self.wanted_height, most)
        if self.winfo_viewable() and height > self.winfo_height():
            y = max(0, min(self.winfo_y(), most - height))
            self.geometry(f"{self.winfo_width()}x{height}+{self.winfo_x()}+{y}")

    @property
    def wanted_height(self) -> int:
        """Pixels that it would be high if the screen had room for all that is in it."""
        return self.winfo_reqheight()

    def close(self) -> None:
        self._hold.leave_off()
        self.grab_release()
        self.destroy()
        if self._beneath is not None and self._beneath.winfo_exists():
            self._beneath._hold.take()
        if self.modal and self._before is not None and self._before.winfo_exists():
            self._before.focus_set()
