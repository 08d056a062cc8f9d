"""A record that another window or page has changed, while something else is typed for it here."""

import tkinter as tk

from logbook.window.look import Look
from logbook.window.message import Answer, ask


def may_write_over(parent: tk.Misc, look: Look, name: str) -> bool:
    """Whether what is typed for ``name`` is to be saved over what is there by now."""
    answers = [Answer("over", "&Save mine over that"), Answer("stay", "Sta&y here")]
    return ask(
        parent,
        look,
        f"{name} was changed elsewhere since it was shown here.",
        answers,
        default="stay",
        escape="stay",
        details="What is there now stays among its changes (Edit → Changes of this record) and Undo brings it back.",
    ) == "over"
