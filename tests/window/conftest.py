"""For the tests of the window's parts."""

import tkinter as tk

import pytest

from logbook.window.keys import install_keys, install_mnemonics
from logbook.window.look import Look
from tests.support.whole_window import sample_file

__all__ = ["sample_file"]


@pytest.fixture
def look(root: tk.Tk) -> Look:
    install_keys(root)
    install_mnemonics(root)
    return Look(root)
