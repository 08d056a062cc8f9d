"""A record that another window or page has changed, while something else is typed for it here."""

import tkinter as tk
from collections.abc import Callable

from logbook.pages.session import Session
from logbook.window.look import Look
from logbook.window.message import Answer, ask


def may_save(parent: tk.Misc, look: Look, session: Session, changed: Callable[[], bool], name: str) -> bool:
    """Looks whether others have written; if they have ``changed`` this very record, asks whether to save over that.

    Raises RefusedError if the logbook is not there any more.
    """
    session.say("")  # what was said before is over
    session.notice_others()
    if not changed():
        return True
    answers = [Answer("over", "&Save mine anyway"), Answer("stay", "&Keep editing")]
    return (
        ask(
            parent,
            look,
            f"{name} was changed elsewhere since it was shown here.",
            answers,
            default="stay",
            escape="stay",
            details="What is there now stays in its history (Edit → Changes of this record), and Undo brings it back.",
        )
        == "over"
    )
