"""Menus of entries."""

import tkinter as tk
from tkinter.font import Font, nametofont

import pytest

from logbook.window.look import Look
from logbook.window.menu_entries import Item, add_entries


@pytest.mark.parametrize(("percent", "many", "smaller"), [(100, 24, False), (200, 8, False), (200, 26, True)])
def test_a_menu_is_no_higher_than_the_screen(root: tk.Tk, look: Look, percent: int, many: int, smaller: bool) -> None:
    """Where it would be, its text is smaller; filled with less, it has its size again."""
    look.apply(percent=percent)
    menu = tk.Menu(root, tearoff=False)
    add_entries(menu, [None if n % 6 == 5 else Item(f"Entry {n}", "", root.bell) for n in range(many)])
    menu.post(0, 0)
    root.update()
    assert menu.winfo_height() < root.winfo_screenheight()
    menu.unpost()
    usual = nametofont("TkMenuFont", root).metrics("linespace")
    assert (Font(root=root, font=menu.cget("font")).metrics("linespace") < usual) is smaller
    menu.delete(0, "end")
    add_entries(menu, [Item("Entry", "", root.bell)])
    assert str(menu.cget("font")) == "TkMenuFont"
