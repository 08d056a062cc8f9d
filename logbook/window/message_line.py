"""A line for what is said of a field, which takes room only while something is said, and moves nothing while one types."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.window.keyboard import focused
from logbook.window.sentence import Sentence

MOST_LINES = 8


class MessageLine:
    """``place`` grids the sentence where its line is to be; called when one comes, and again by ``place_again``."""

    def __init__(self, owner: ttk.Frame, place: Callable[[Sentence], object]) -> None:
        self._owner, self._place = owner, place
        self._said: tuple[str, str] = ("", "TLabel")
        self._waits = False
        self.sentence: Sentence | None = None

    def say(self, text: str, style: str, at_once: bool) -> None:
        """Says ``text``, "" for nothing; unless ``at_once`` its line waits until no field of the form is typed in."""
        self._said = (text, style)
        self._make_room(at_once)

    def place_again(self) -> None:
        """The line belongs elsewhere now."""
        if self.sentence is not None and self.sentence.winfo_manager():
            self._place(self.sentence)

    def _make_room(self, at_once: bool = False) -> None:
        text, style = self._said
        shown = self.sentence is not None and bool(self.sentence.winfo_manager())
        if bool(text) != shown and not at_once and self._wait_until_left():
            if self.sentence is not None and shown:
                self._say_nothing(self.sentence)
            return
        if text and self.sentence is None:
            self.sentence = Sentence(self._owner)
        if self.sentence is None:
            return
        self.sentence.configure(text=text or " ", style=style)
        if text and not shown:
            self._place(self.sentence)
        elif shown and not text:
            self.sentence.grid_remove()

    def _say_nothing(self, sentence: Sentence) -> None:
        """As high as what was said."""
        high, lines = sentence.winfo_height(), 1
        sentence.configure(text=" ")
        while sentence.winfo_reqheight() < high and lines < MOST_LINES:
            lines += 1
            sentence.configure(text="\n".join([" "] * lines))

    def _wait_until_left(self) -> bool:
        """Whether the keyboard is in a field of the same form; when it leaves, there is room for what is to be said."""
        here = focused(self._owner) if self._owner.winfo_viewable() else None
        form: tk.Misc | None = self._owner.master
        while isinstance(form, ttk.Frame):
            form = form.master
        if not isinstance(here, ttk.Entry) or not str(here).startswith(str(form)):
            return False
        if not self._waits:
            self._waits = True
            here.bind("<FocusOut>", lambda _: self._owner.after_idle(self._left), add="+")
        return True

    def _left(self) -> None:
        self._waits = False
        if self._owner.winfo_exists():
            self._make_room(at_once=True)
