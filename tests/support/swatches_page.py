"""The page of swatches as a user finds it once all of it is drawn."""

import tkinter as tk

from logbook.pages.session import Session
from logbook.window.look import Look
from logbook.window.swatches.page import SwatchesPage
from tests.support.screen import settle, wait_until


def page_on(root: tk.Tk, look: Look, session: Session) -> SwatchesPage:
    """The page with its form and its chain, and the keyboard where it begins."""
    shown = SwatchesPage(root, look, session)
    shown.frame.pack(fill="both", expand=True)
    wait_until(root, lambda: shown.chain.winfo_viewable() or (shown.editor.winfo_viewable() and shown.panes.hidden == 2))
    settle(root)
    shown.first_focus()
    root.update()
    return shown
