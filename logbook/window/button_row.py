"""The row of buttons at the foot of a page, their keys, and the line that says why something can't be done."""

from collections.abc import Callable, Mapping
from functools import partial
from tkinter import ttk

from logbook.pages.session import Session
from logbook.window.keys import bind_keys, split_mnemonic
from logbook.window.look import Look
from logbook.window.menu_entries import Item
from logbook.window.sentence import Sentence

Command = tuple[str, str, Callable[[], object]]
"""The words on a button with the letter of its Alt key, ``"&Save"``, its keys, and what it does."""


class ButtonRow(ttk.Frame):
    """Grid it under the rest of ``page``, while which is shown the keys hold. Delete is alone at the left, and the last that Tab
    comes to; Save stands out."""

    def __init__(
        self,
        page: ttk.Frame,
        look: Look,
        session: Session,
        commands: tuple[Command, ...],
    ) -> None:
        super().__init__(page)
        self.look, self._session, self._commands = look, session, commands
        self.columnconfigure(2, weight=1)
        self.buttons: dict[str, ttk.Button] = {}
        for column, (text, keys, action) in enumerate(commands, 3):
            words, underline = split_mnemonic(text)
            style = "Accent.TButton" if words == "Save" else "TButton"
            button = self.buttons[words] = ttk.Button(self, text=words, underline=underline, command=action, style=style)
            if words == "Delete":
                button.grid(row=0, column=0)
            else:
                look.grid(button, row=0, column=column, padx=(2, 0))
            bind_keys(page.winfo_toplevel(), keys, partial(self._press, button), while_shown=page)
        self.buttons["Delete"].lift()  # Tab goes by that: after the last field comes what deletes nothing
        self.refusal = Sentence(self, "", "Error.TLabel")
        self.bind("<Configure>", lambda _: self._fit(), add="+")

    @property
    def entries(self) -> list[Item]:
        """What its buttons do, as entries of a menu: Delete last."""
        first, *others = self._commands
        return [self._item(text, keys) for text, keys, _ in (*others, first)]

    def _item(self, text: str, keys: str) -> Item:
        button = self.buttons[split_mnemonic(text)[0]]
        return Item(text, keys, partial(self._press, button), lambda: button.instate(["!disabled"]))

    def refuse(self, sentence: str) -> None:
        """Says why something can't be done."""
        self.refusal.configure(text=f"✕ {sentence}")
        self._place_refusal()

    def take_back(self) -> None:
        """What was refused is over."""
        self.refusal.configure(text="")
        self.refusal.grid_remove()

    def show_possible(self, possible: Mapping[str, bool]) -> None:
        """Buttons that would do nothing are off."""
        for words, can_be in possible.items():
            self.buttons[words].state(["!disabled" if can_be else "disabled"])

    def _fit(self) -> None:
        """Buttons of one width each where there is room for that, else of the width of their words."""
        for width in ("", 0):
            for button in self.buttons.values():
                button.configure(width=width)
            if self._needs() <= self.winfo_width():
                break
        self._place_refusal()

    def _needs(self) -> int:
        """Pixels that all buttons take side by side."""
        return sum(button.winfo_reqwidth() + self.look.pixels(2) for button in self.buttons.values())

    def _place_refusal(self) -> None:
        """Left of the buttons, so that nothing moves; under them where they leave too little room, as they do in large text."""
        text = str(self.refusal.cget("text"))
        gap = self.look.pixels(3)
        room = (self.grid_bbox(2, 0) or (0, 0, 0, 0))[2] - 2 * gap
        if not text:
            self.refusal.grid_remove()
        elif self.look.base.measure(text) < room:
            self.refusal.grid(row=0, column=2, columnspan=1, sticky="ew", padx=gap, pady=0)
        else:
            across = self.grid_size()[0]
            self.refusal.grid(row=1, column=0, columnspan=across, sticky="ew", padx=0, pady=(self.look.pixels(0.5), 0))

    def _press(self, button: ttk.Button) -> None:
        """A key whose button is off because nothing can be written says so instead of doing nothing."""
        if self._session.why_not_writable and button.instate(["disabled"]):
            self.refuse(self._session.why_not_writable)
        else:
            button.invoke()
