"""What is typed on a page and not saved, when the page, the record or the logbook is about to be left."""

import tkinter as tk

from logbook.pages.session import Session
from logbook.window.look import Look
from logbook.window.message import Answer, ask


def ask_of_unsaved(parent: tk.Misc, look: Look, session: Session, name: str) -> str:
    """What to do with what is typed for ``name``: ``save`` (not offered where nothing can be written), ``drop`` or ``stay``."""
    answers = [Answer("save", "&Save"), Answer("drop", "&Discard"), Answer("stay", "&Keep editing")]
    sentence = f"What you typed for {name} is not saved."
    if session.why_not_writable:
        return ask(parent, look, sentence, answers[1:], "stay", "stay", session.why_not_writable)
    return ask(parent, look, sentence, answers, "save", "stay")
