"""What a menu offers, as a list of entries; what can't be done now is grey."""

import tkinter as tk
from collections.abc import Callable, Sequence
from typing import Literal, NamedTuple

from logbook.window.keys import accelerator, split_mnemonic


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
    """Puts entries into a menu."""
    for entry in entries:
        if entry is None:
            menu.add_separator()
        else:
            add_entry(menu, entry)


def add_entry(menu: tk.Menu, entry: Item) -> None:
    """Puts one entry into a menu, as it is now."""
    words, underline = split_mnemonic(entry.words)
    shown = accelerator(menu, entry.keys) if entry.keys else ""
    menu.add_command(label=words, underline=underline, command=entry.action, accelerator=shown, state=state(entry))


def state(entry: Item) -> Literal["normal", "disabled"]:
    """``normal``, or ``disabled`` where it can't be done now."""
    return "normal" if entry.possible() else "disabled"
