"""Keys of what changes the logbook, while it can't be changed."""

from collections.abc import Callable
from tkinter import ttk

from logbook.pages.session import Session


def press_or_say_why(button: ttk.Button, session: Session, say: Callable[[str], object]) -> None:
    """Presses the button; if it is off because nothing can be written, says so instead of doing nothing."""
    if session.why_not_writable and button.instate(["disabled"]):
        say(session.why_not_writable)
    else:
        button.invoke()
