"""Questions and messages: a sentence, and buttons that say what they do."""

import tkinter as tk
from collections.abc import Callable, Sequence
from tkinter import ttk
from typing import NamedTuple

from logbook.errors import LogbookError
from logbook.window.dialog import Dialog
from logbook.window.look import Look

WIDEST = 60
"""Letters in a line of a message."""


class Answer(NamedTuple):
    """A button: what it gives, and the verb on it, ``"&Keep both"``."""

    key: str
    text: str


def ask(
    parent: tk.Misc, look: Look, sentence: str, answers: Sequence[Answer], default: str, escape: str, details: str = ""
) -> str:
    """The key of the answer chosen: ``default`` has the focus at first and is the last at the right, Escape and closing give
    ``escape``.
    """
    chosen = escape

    def choose(key: str) -> None:
        nonlocal chosen
        chosen = key
        dialog.close()

    dialog = Dialog(parent, look, parent.winfo_toplevel().title(), lambda: choose(escape))
    _say(dialog, sentence, details)
    in_order = sorted(answers, key=lambda answer: answer.key == default)
    buttons = {a.key: dialog.add_button(a.text, _chooser(choose, a.key), a.key == default) for a in in_order}
    for key, button in buttons.items():
        button.bind("<Right>", lambda _, key=key: _beside(buttons, key, 1))  # type: ignore[misc]
        button.bind("<Left>", lambda _, key=key: _beside(buttons, key, -1))  # type: ignore[misc]
    dialog.open(buttons[default])
    dialog.wait_window()
    return chosen


def tell(parent: tk.Misc, look: Look, sentence: str, details: str = "") -> None:
    """Shows a sentence until the user has read it."""
    ask(parent, look, sentence, [Answer("read", "&Close")], "read", "read", details)


def say_foreseen(parent: tk.Misc, look: Look, error: Exception) -> None:
    """Shows an error the program foresaw in its own words; any other is raised again, to be shown and written down."""
    if not isinstance(error, LogbookError):
        raise error
    tell(parent, look, str(error))


def _say(dialog: Dialog, sentence: str, details: str) -> None:
    texts = [(sentence, "TLabel")] + ([(details, "Muted.TLabel")] if details else [])
    for row, (text, style) in enumerate(texts):
        label = ttk.Label(dialog.inside, text=text, style=style, justify="left")
        widest = min(WIDEST * dialog.look.base.measure("n"), dialog.winfo_screenwidth() * 3 // 4)
        label.configure(wraplength=widest)
        dialog.look.grid(label, row=row, column=0, sticky="w", pady=(0, 2))


def _chooser(choose: Callable[[str], None], key: str) -> Callable[[], None]:
    return lambda: choose(key)


def _beside(buttons: dict[str, ttk.Button], key: str, step: int) -> None:
    keys = list(buttons)
    buttons[keys[(keys.index(key) + step) % len(keys)]].focus_set()
