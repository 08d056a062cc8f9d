"""A field of several lines."""

import tkinter as tk
from functools import partial
from tkinter import ttk

from logbook.window.field import LabelledField
from logbook.window.look import Look
from logbook.window.scroll_bar import show_bar


class TextField(LabelledField):
    """Its ``variable`` follows the typing and may be set; Tab moves on to the next field instead of writing a tab."""

    several_lines = True

    def __init__(self, parent: tk.Misc, look: Look, text: str, *, lines: int = 3, label_width: int = 0) -> None:
        super().__init__(parent, look, text, label_width)
        frame = ttk.Frame(self, style="Field.TFrame", padding=2)
        self.area = tk.Text(frame, height=lines, width=20, wrap="word", undo=True, font="TkTextFont")
        bar = ttk.Scrollbar(frame, orient="vertical", command=self.area.yview, takefocus=False, style="Card.Vertical.TScrollbar")
        self.area.configure(yscrollcommand=partial(show_bar, bar))
        self.area.grid(row=0, column=0, sticky="nsew")
        bar.grid(row=0, column=1, sticky="ns")
        frame.columnconfigure(0, weight=1)
        look.when_changed(frame, lambda: frame.columnconfigure(1, minsize=bar.winfo_reqwidth()))
        look.when_changed(self.area, lambda: self.area.configure(padx=look.pixels(1.5), pady=look.pixels(0.8)))
        self.area.bind("<Tab>", lambda _: self._leave("tk_focusNext"))
        for back in ("<Shift-Tab>", "<<PrevWindow>>"):
            self.area.bind(back, lambda _: self._leave("tk_focusPrev"))
        self.area.bind("<FocusIn>", lambda _: frame.state(["focus"]), add="+")
        self.area.bind("<FocusOut>", lambda _: frame.state(["!focus"]), add="+")
        self.area.bind("<<Paste>>", lambda _: self.after_idle(self.area.see, "insert"), add="+")
        self.area.bind("<<Modified>>", self._follow_typing)
        self.variable.trace_add("write", self._follow_variable)
        self.arrange(frame, grow=True, focus=self.area)

    def _leave(self, way: str) -> str:
        self.tk.call("focus", self.tk.call(way, str(self.area)))
        return "break"

    def _content(self) -> str:
        return self.area.get("1.0", "end-1c")

    def _follow_typing(self, _: object) -> None:
        if self.area.edit_modified():
            self.area.edit_modified(False)
            if self._content() != self.variable.get():
                self.variable.set(self._content())

    def _follow_variable(self, *_: str) -> None:
        if self._content() != self.variable.get():
            self.area.replace("1.0", "end-1c", self.variable.get())
            self.area.edit_reset()
