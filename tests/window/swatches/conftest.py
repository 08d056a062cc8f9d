"""The page of swatches on a small logbook."""

import tkinter as tk

import pytest

from logbook.pages.session import Session
from logbook.window.look import Look
from logbook.window.swatches.page import SwatchesPage
from tests.support.display import scaled
from tests.support.swatches_page import page_on
from tests.support.wardrobe import book, session

__all__ = ["book", "session"]


@pytest.fixture
def page(root: tk.Tk, look: Look, session: Session) -> SwatchesPage:
    root.geometry(f"{scaled(1366)}x{scaled(690)}+0+0")
    return page_on(root, look, session)
