"""What a menu offers, as a list of entries; what can't be done now is grey."""

import tkinter as tk
from collections.abc import Callable, Sequence
from tkinter.font import Font
from typing import Literal, NamedTuple

from logbook.window.keys import accelerator, split_mnemonic

MENU_FONT = "TkMenuFont"
LEAST = 0.5
"""Of its usual size the text of a menu has at least."""
AROUND = 3
"""Lines of the screen that the title, the bar of menus and a task bar take."""


def always() -> bool:
    """For what can always be done."""
    return True


class Item(NamedTuple):
    """An entry: its words with the letter underlined, ``"&Save"``, its keys, what it does, and whether that can be done now.

    Its keys are bound by who makes it, and say why when it can't.
    """

    words: str
    keys: str
    action: Callable[[], object]
    possible: Callable[[], bool] = always


Entry = Item | None
"""None is a line between."""


def add_entries(menu: tk.Menu, entries: Sequence[Entry]) -> None:
    """Puts entries into a menu; where it would be higher than the screen, its text is smaller than the rest."""
    for entry in entries:
        if entry is None:
            menu.add_separator()
        else:
            add_entry(menu, entry)
    _fit(menu)


def _fit(menu: tk.Menu) -> None:
    """X11 would show what there is room for of it, and no more."""
    last = menu.index("end")
    if last is None:
        return
    menu.configure(font=MENU_FONT)
    line = menu.yposition(1) - menu.yposition(0) if last else 0
    needed, room = menu.yposition(last) + line, menu.winfo_screenheight() - AROUND * line
    if needed > room:
        smaller = Font(root=menu, name=MENU_FONT, exists=True).copy()
        smaller.configure(size=int(int(smaller.cget("size")) * max(LEAST, room / needed)))
        menu.configure(font=smaller)
        menu.smaller = smaller  # type: ignore[attr-defined]  # Tk takes it away with the last that holds it here


def add_entry(menu: tk.Menu, entry: Item) -> None:
    """Puts one entry into a menu, as it is now."""
    words, underline = split_mnemonic(entry.words)
    shown = accelerator(menu, entry.keys) if entry.keys else ""
    menu.add_command(label=words, underline=underline, command=entry.action, accelerator=shown, state=state(entry))


def state(entry: Item) -> Literal["normal", "disabled"]:
    """``normal``, or ``disabled`` where it can't be done now."""
    return "normal" if entry.possible() else "disabled"
