"""The parts of a page: dragged and remembered, two at a time where three have no room."""

import tkinter as tk
from tkinter import ttk

import pytest

from logbook.window.look import Look
from logbook.window.panes import Panes, Shares
from logbook.window.scrolled import Scrolled
from tests.support.display import scaled
from tests.support.screen import press, settle


class Shown:
    """Three labelled parts in a window."""

    def __init__(self, root: tk.Tk) -> None:
        self.look, self.kept = Look(root), list[Shares]()
        frame = ttk.Frame(root)
        frame.pack(fill="both", expand=True)
        frame.columnconfigure(0, weight=1)
        frame.rowconfigure(0, weight=1)
        self.panes = Panes(frame, self.look, ("List", "Form", "Answer"), self.kept.append)
        self.panes.grid(row=0, column=0, sticky="nsew")
        self.parts = [ttk.Frame(frame) for _ in range(3)]
        for place, part in enumerate(self.parts):
            ttk.Entry(part).grid()
            self.panes.put(part, place)
        self.panes.share((0.3, 0.65))


WIDTH = scaled(1340)


@pytest.fixture
def shown(root: tk.Tk) -> Shown:
    root.geometry(f"{WIDTH}x600+0+0")
    made = Shown(root)
    settle(root)
    return made


def test_each_has_its_share(shown: Shown) -> None:
    widths = [part.winfo_width() for part in shown.parts]
    assert [width / WIDTH for width in widths] == pytest.approx([0.3, 0.35, 0.35], abs=0.02)
    assert shown.panes.hidden is None


def test_a_dragged_bar_is_told_and_never_squeezes_a_part(root: tk.Tk, shown: Shown) -> None:
    bar = shown.panes.bar
    bar.sash_place(0, scaled(500), 0)
    bar.event_generate("<ButtonRelease-1>", x=scaled(500), y=10)
    settle(root)
    assert len(shown.kept) == 1
    assert round(shown.kept[0][0], 2) == round(scaled(500) / WIDTH, 2)
    shown.panes.share((0.01, 0.99))
    settle(root)
    letter = shown.look.base.measure("0")
    assert all(part.winfo_width() >= 30 * letter for part in shown.parts)


def test_where_room_is_short_the_form_has_one_of_the_others_beside_it(root: tk.Tk, shown: Shown) -> None:
    shown.look.apply(percent=200)
    settle(root)
    assert [part.winfo_viewable() for part in shown.parts] == [1, 1, 0]
    assert shown.panes.switch["text"] == "Answer ▸"
    shown.panes.switch.invoke()
    settle(root)
    assert [part.winfo_viewable() for part in shown.parts] == [0, 1, 1]
    assert str(root.focus_get()).startswith(str(shown.parts[2]))
    shown.panes.bring(0)
    settle(root)
    assert [part.winfo_viewable() for part in shown.parts] == [1, 1, 0]
    shown.look.apply(percent=100)
    settle(root)
    assert all(part.winfo_viewable() for part in shown.parts)


def test_a_part_that_is_brought_is_shown_from_its_top_until_something_is_typed(root: tk.Tk, shown: Shown) -> None:
    """Though the first thing that takes the keyboard stands further down."""
    for child in shown.parts[2].winfo_children():
        child.destroy()
    scrolled = Scrolled(shown.parts[2], shown.look, 10)
    scrolled.grid(sticky="nsew")
    shown.parts[2].rowconfigure(0, weight=1)
    ttk.Frame(scrolled.inside, height=2000).grid()
    low = ttk.Entry(scrolled.inside)
    low.grid()
    shown.look.apply(percent=200)
    settle(root)
    shown.panes.switch.invoke()
    settle(root)
    assert root.focus_get() is low
    assert scrolled.canvas.yview()[0] == 0
    press(low, "<Key-a>")
    settle(root)
    assert low.winfo_rooty() < scrolled.canvas.winfo_rooty() + scrolled.canvas.winfo_height()


@pytest.mark.parametrize("tabs", [1, 12])
def test_the_button_that_brings_the_hidden_part_takes_no_row_where_the_tabs_leave_room(root: tk.Tk, tabs: int) -> None:
    """It goes with its page, and never lies over a tab."""
    root.geometry(f"{scaled(1000)}x600+0+0")
    look = Look(root)
    look.apply(percent=200)
    book = ttk.Notebook(root)
    book.pack(fill="both", expand=True)
    pages = [ttk.Frame(book) for _ in range(tabs)]
    for number, page in enumerate(pages):
        book.add(page, text=f"Page {number}")
    panes = Panes(pages[0], look, ("List", "Form", "Answer"), lambda _: None)
    panes.pack(fill="both", expand=True)
    for place in range(3):
        panes.put(ttk.Frame(pages[0]), place)
    settle(root)
    assert panes.hidden is not None
    assert panes.switch.winfo_viewable()
    assert (panes.bar.winfo_rooty() == panes.winfo_rooty()) is (tabs == 1)
    left, middle = panes.switch.winfo_rootx() - book.winfo_rootx(), panes.switch.winfo_rooty() + panes.switch.winfo_height() // 2
    assert book.identify(left, middle - book.winfo_rooty()) in ("", "client")
    assert panes.switch.winfo_rootx() + panes.switch.winfo_width() <= root.winfo_rootx() + root.winfo_width()
    if tabs > 1:
        book.select(1)
        settle(root)
        assert not panes.switch.winfo_viewable()
        book.select(0)
        settle(root)
    panes.switch.invoke()
    settle(root)
    assert panes.switch["text"] == "◂ List"
    panes.destroy()
    assert not panes.switch.winfo_exists()
