"""On the screens people have nothing of any page is cut off, lies over something else or reaches beyond the window."""

import shutil
import tkinter as tk
from collections.abc import Callable
from pathlib import Path
from tkinter import ttk

import pytest

from logbook.book.logbook import open_logbook
from logbook.settings import Settings
from logbook.window import main_window
from logbook.window.canvas import DrawingCanvas
from logbook.window.keys import MnemonicLabel
from logbook.window.look import Look
from logbook.window.main_window import MainWindow
from tests.support.display import scaled
from tests.support.fits import SCREENS, layout_faults, overlap, screen_faults
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


LONG = "more words than this place has room for"


def a_list(root: tk.Tk, look: Look, text: str, heading: str) -> None:
    tree = ttk.Treeview(root, columns=("a",), show="headings", height=2)
    tree.column("a", width=look.base.measure("few words"), stretch=False)
    tree.heading("a", text=heading)
    tree.insert("", "end", values=(text,))
    tree.grid()


def a_bar(root: tk.Tk, look: Look, last: float) -> None:
    bar = ttk.Scrollbar(root)
    bar.grid()
    bar.set(0, last)


def a_drawing(root: tk.Tk, look: Look, right: int) -> None:
    canvas = DrawingCanvas(root, look)
    canvas.configure(width=100, height=50)
    canvas.grid()
    settle(root)
    canvas.create_line(10, 10, right, 10)


def a_mnemonic(root: tk.Tk, look: Look, text: str) -> None:
    frame = tk.Frame(root, width=look.base.measure("few words"), height=3 * look.line)
    frame.grid()
    frame.grid_propagate(False)
    frame.columnconfigure(0, weight=1)
    MnemonicLabel(frame, text=text).grid(sticky="ew")


def a_line(root: tk.Tk, look: Look, height: int) -> None:
    entry = ttk.Entry(root)
    entry.place(x=0, y=0, width=100, height=height)


@pytest.mark.parametrize(
    ("make", "fitting", "faulty", "says"),
    [
        (lambda root, look, text: a_list(root, look, text, "few"), "few", LONG, f"“{LONG}” wants"),
        (lambda root, look, text: a_list(root, look, "few", text), "few", LONG, f"the heading “{LONG}” wants"),
        (a_bar, 0.5, 1.0, "nothing to scroll"),
        (a_drawing, 90, 200, "of what is drawn at"),
        (a_mnemonic, "few", "undoubtedly-too-long", "and wants"),
        (a_line, 30, 3, "is 3 high"),
    ],
)
def test_each_fault_of_what_is_shown_is_found(
    root: tk.Tk, look: Look, make: Callable[..., None], fitting: object, faulty: object, says: str
) -> None:
    root.geometry(f"{scaled(600)}x{scaled(400)}+0+0")
    for given, found in ((fitting, False), (faulty, True)):
        make(root, look, given)
        settle(root)
        assert any(says in fault for fault in layout_faults(root)) is found, layout_faults(root)
        for child in root.winfo_children():
            child.destroy()


def test_a_window_that_reaches_beyond_the_screen_is_found(root: tk.Tk) -> None:
    root.geometry("300x200+0+0")
    settle(root)
    assert screen_faults(root) == []
    root.geometry(f"{root.winfo_screenwidth() + 50}x200+0+0")
    settle(root)
    assert any("on a screen of" in fault for fault in screen_faults(root))
