import tkinter as tk

from logbook.window.look import Look
from logbook.window.tick_box import TickBox
from tests.support.screen import settle


def test_its_text_wraps_in_a_narrow_place_and_is_one_line_again_in_a_wide_one(root: tk.Tk, look: Look) -> None:
    box = TickBox(root, look, "May stop inside a row repeat", tk.BooleanVar(root), lambda: None)
    box.grid(row=0, column=0, sticky="w")
    one_line = box.winfo_reqheight()
    root.geometry("150x200")
    settle(root)
    assert box.winfo_reqwidth() <= 150
    assert box.winfo_reqheight() > one_line
    root.geometry("600x200")
    settle(root)
    assert box.winfo_reqheight() == one_line
