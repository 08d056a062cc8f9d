import tkinter as tk
from tkinter import ttk

import pytest

from logbook.window.wheel import install_wheel, notches, scroll
from tests.support.screen import settle


@pytest.fixture
def box(root: tk.Tk) -> ttk.Combobox:
    install_wheel(root)
    box = ttk.Combobox(root, values=["from the bottom up", "sideways", "in the round"], state="readonly")
    box.grid()
    box.current(1)
    root.update()
    return box


WHEEL = ["<Button-4>", "<Button-5>", "<Shift-Button-4>", "<Shift-Button-5>", "<Control-Button-5>"]


@pytest.mark.parametrize("turn", WHEEL)
def test_no_drop_down_or_spin_box_changes(root: tk.Tk, box: ttk.Combobox, turn: str) -> None:
    count = ttk.Spinbox(root, from_=0, to=9)
    count.set(5)
    count.grid()
    root.update()
    for widget in (box, count):
        widget.event_generate(turn)
        widget.event_generate("<MouseWheel>", delta=-120)
    root.update()
    assert (box.current(), count.get()) == (1, "5")


def test_a_table_in_a_page_scrolls_first_and_then_the_page(root: tk.Tk, box: ttk.Combobox) -> None:
    page = tk.Canvas(root, height=200, scrollregion=(0, 0, 100, 900), yscrollincrement=10)
    page.grid()
    table = ttk.Treeview(page, height=4)
    page.create_window(0, 0, window=table, anchor="nw")
    for _ in range(6):
        table.insert("", "end")
    settle(root)
    scroll(root, str(table), "y", 3)
    assert table.yview()[1] == 1
    assert page.yview()[0] == 0
    scroll(root, str(table), "y", 3)
    assert page.yview()[0] > 0
    scroll(root, str(table), "y", -3)
    assert table.yview()[0] == 0
    scroll(root, str(table), "y", -3)
    assert page.yview()[0] == 0


@pytest.mark.parametrize("kind", ["wide", "drop-down"])
def test_a_wheel_that_goes_sideways_moves_a_wide_page_and_chooses_nothing(root: tk.Tk, box: ttk.Combobox, kind: str) -> None:
    page = tk.Canvas(root, width=200, scrollregion=(0, 0, 900, 100), xscrollincrement=10)
    page.grid()
    inside = ttk.Combobox(page, values=["a", "b", "c"], state="readonly")
    inside.current(1)
    page.create_window(0, 0, window=inside, anchor="nw")
    settle(root)
    under = page if kind == "wide" else inside
    under.event_generate("<Button>", button=7)
    settle(root)
    assert page.xview()[0] > 0
    under.event_generate("<Button>", button=6)
    settle(root)
    assert page.xview()[0] == 0
    for at_the_side in (8, 9):
        under.event_generate("<Button>", button=at_the_side)
    settle(root)
    assert page.xview()[0] == 0
    assert inside.current() == 1


@pytest.mark.parametrize(("delta", "lines"), [(120, -3), (-120, 3), (-240, 6), (1, -1), (-3, 3)])
def test_notches_of_either_kind_of_wheel(delta: int, lines: int) -> None:
    assert notches(delta) == lines
