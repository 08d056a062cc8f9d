"""What a menu offers, as a list of entries."""

import tkinter as tk
from collections.abc import Callable, Sequence

from logbook.window.keys import accelerator, split_mnemonic

Entry = tuple[str, str, Callable[[], object]] | None
"""The words of a menu's entry with the letter underlined, ``"&Save"``, its keys and what it does; None is a line between."""


def add_entries(menu: tk.Menu, entries: Sequence[Entry]) -> None:
    """Puts entries into a menu."""
    for entry in entries:
        if entry is None:
            menu.add_separator()
            continue
        words, underline = split_mnemonic(entry[0])
        shown = accelerator(menu, entry[1]) if entry[1] else ""
        menu.add_command(label=words, underline=underline, command=entry[2], accelerator=shown)
