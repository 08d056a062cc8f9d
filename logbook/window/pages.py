"""The pages of the window. Each is imported and made when it is first looked at, so that the window is there at once."""

import tkinter as tk
from collections.abc import Callable

from logbook.pages.session import Session
from logbook.window.look import Look
from logbook.window.page import Page


def _swatches(parent: tk.Misc, look: Look, session: Session) -> Page:
    from logbook.window.swatches.page import SwatchesPage

    return SwatchesPage(parent, look, session)


def _pieces(parent: tk.Misc, look: Look, session: Session) -> Page:
    from logbook.window.pieces.both import PiecesAndGarments

    return PiecesAndGarments(parent, look, session)


def _patterns(parent: tk.Misc, look: Look, session: Session) -> Page:
    from logbook.window.patterns.page import PatternsPage

    return PatternsPage(parent, look, session)


PAGES: tuple[tuple[str, Callable[[tk.Misc, Look, Session], Page]], ...] = (
    ("S&watches", _swatches),
    ("P&ieces", _pieces),
    ("S&titch patterns", _patterns),
)
"""Each page's name with the letter of its Alt key, and what makes it."""
