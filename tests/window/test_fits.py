"""On the screens people have nothing of any page is cut off, lies over something else or reaches beyond the window."""

import shutil
import tkinter as tk
from pathlib import Path
from tkinter import ttk

import pytest

from logbook.book.logbook import open_logbook
from logbook.settings import Settings
from logbook.window import main_window
from logbook.window.main_window import MainWindow
from tests.support.fits import SCREENS, layout_faults, overlap
from tests.support.screen import settle, wait_until

FRAME = 0.3
"""Inches that the window manager's title bar takes of the height."""
PAGES = 3


@pytest.mark.parametrize("dpi", SCREENS, indirect=True)
def test_every_page(root: tk.Tk, dpi: int, sample_file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(main_window, "report_unexpected", lambda *_: None)
    window = MainWindow(root, Settings())
    window.show(open_logbook(Path(shutil.copy(sample_file, tmp_path))), is_sample=True)
    width, height = SCREENS[dpi]
    root.geometry(f"{width}x{height - round(FRAME * dpi)}+0+0")
    faults = []
    for percent in (100, 150, 200):
        window.look.apply(percent=percent)
        for number in range(PAGES):
            window.tabs.select(number)
            wait_until(root, lambda: (page := window.page_in_hand()) and page.frame.winfo_viewable())
            for _ in range(3):
                settle(root)
            faults += [f"{percent} %, page {number + 1}: {fault}" for fault in layout_faults(root)]
    window.watch.end()
    if window.session is not None:
        window.session.book.close()
    assert not faults, "\n".join(faults)


def test_what_is_cut_off_or_lies_over_something_is_found(root: tk.Tk) -> None:
    frame = tk.Frame(root, width=100, height=30)
    frame.pack_propagate(False)
    frame.pack()
    label = ttk.Label(frame, text="a good many words, more than there is room for")
    label.pack(anchor="w")
    settle(root)
    assert any("and wants" in fault for fault in layout_faults(root))
    label.configure(text="few")
    settle(root)
    assert layout_faults(root) == []
    assert overlap((0, 0, 10, 10), (8, 8, 20, 20))
    assert not overlap((0, 0, 10, 10), (10, 0, 20, 10))
