"""A row of flat radio buttons: one of several views or sizes. The arrow keys step through them."""

import tkinter as tk
from collections.abc import Callable, Mapping, Sequence
from tkinter import ttk

from logbook.window.look import Look
from logbook.window.styles import styled

GAP = 2
"""Pixels between two buttons."""


class FlatChoice(ttk.Frame):
    """``on_choose`` gets the key of what the user chooses; where room is short the buttons go on in another line.

    The chosen one is told by its fill and its border. Tab comes to the chosen one alone.
    """

    def __init__(self, parent: tk.Misc, look: Look, on_choose: Callable[[str], object]) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"), width=1, height=1)
        self._style = styled(parent, "Flat.Toolbutton")
        self.look, self._on_choose = look, on_choose
        self._chosen = tk.StringVar(self)
        self.buttons: dict[str, ttk.Radiobutton] = {}
        self._width = 0
        look.when_changed(self, self._follow_look)
        self.bind("<Configure>", self._follow_width)

    @property
    def chosen(self) -> str:
        """The key of the chosen one."""
        return self._chosen.get()

    def show(self, words: Mapping[str, str], chosen: str) -> None:
        """Offers these (key → words); the keyboard stays on the chosen one if it was in the row."""
        if list(words) != list(self.buttons):
            for button in self.buttons.values():
                button.destroy()
            self.buttons = {key: self._button(key) for key in words}
            self._width = 0
        for key, button in self.buttons.items():
            if str(button.cget("text")) != words[key]:
                button.configure(text=words[key])
                self._width = 0
        self._choose(chosen)
        self._arrange()

    def _button(self, key: str) -> ttk.Radiobutton:
        button = ttk.Radiobutton(self, value=key, variable=self._chosen, style=self._style)
        button.configure(command=lambda: self._pressed(key))
        for event, step in {"Left": -1, "Up": -1, "Right": 1, "Down": 1}.items():
            button.bind(f"<{event}>", lambda _, step=step: self._step(step))  # type: ignore[misc]
        button.bind("<Return>", lambda _: self._pressed(key))
        return button

    def _pressed(self, key: str) -> None:
        self._choose(key)
        self.buttons[key].focus_set()
        self._on_choose(key)

    def _step(self, step: int) -> str:
        keys: Sequence[str] = list(self.buttons)
        place = keys.index(self.chosen) if self.chosen in keys else 0
        self._pressed(keys[(place + step) % len(keys)])
        return "break"

    def _choose(self, key: str) -> None:
        self._chosen.set(key)
        for name, button in self.buttons.items():
            button.configure(takefocus=name == key)

    def _follow_look(self) -> None:
        palette, style = self.look.palette, self.look.style
        card = "Card." in str(self.cget("style"))
        ground = palette.surface if card else palette.page
        name = self._style
        style.configure(name, background=ground, foreground=palette.ink, relief="raised", borderwidth=1)
        style.configure(name, bordercolor=ground, lightcolor=ground, darkcolor=ground, anchor="center")
        style.configure(name, padding=(self.look.pixels(1.6), self.look.pixels(0.6)), focuscolor=palette.focus)
        edges = [("focus", palette.focus), ("selected", palette.selection), ("active", palette.button_hover)]
        style.map(
            name,
            background=[("selected", palette.selection), ("active", palette.button_hover)],
            bordercolor=[("focus", palette.focus), ("selected", palette.accent)],
            lightcolor=edges,
            darkcolor=edges,
            relief=[],
        )
        self._width = 0
        self._arrange()

    def _follow_width(self, event: "tk.Event[tk.Misc]") -> None:
        if event.width != self._width:
            self._arrange()

    def _arrange(self) -> None:
        """As many side by side as there is room for."""
        room = self.winfo_width()
        if room == self._width or room <= 1:
            return
        self._width = room
        x = y = 0
        for button in self.buttons.values():
            wide, high = button.winfo_reqwidth(), button.winfo_reqheight()
            if x and x + wide > room:
                x, y = 0, y + high + GAP
            button.place(x=x, y=y)
            x += wide + GAP
        height = y + max((button.winfo_reqheight() for button in self.buttons.values()), default=0)
        self.configure(height=max(1, height))
