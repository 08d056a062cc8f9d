"""Who has the keyboard while something that Tk made by itself has it."""

import ast
import tkinter as tk
from pathlib import Path
from tkinter import ttk

import pytest

from logbook.window import keyboard
from logbook.window.keyboard import GIVEN_MS, Hold, focused, holder, install_keyboard, keep_behind, last_focused
from tests.support.screen import wait_until

WINDOW = Path(keyboard.__file__).parent
LOOK_UPS = {"focus_get", "focus_displayof", "focus_lastfor", "grab_current", "winfo_containing", "selection_own_get"}


def test_only_one_place_asks_tk_for_the_focus_or_the_grab() -> None:
    asking = {
        f"{path.relative_to(WINDOW)}:{node.lineno}"
        for path in WINDOW.rglob("*.py")
        if path.name != "keyboard.py"
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Attribute) and node.attr in LOOK_UPS
    }
    assert not asking


def test_one_of_ours_is_known(root: tk.Tk) -> None:
    entry = ttk.Entry(root)
    entry.grid()
    entry.focus_force()
    root.update()
    assert focused(root) is entry
    assert last_focused(entry) is entry
    entry.grab_set()
    assert holder(root) is entry
    entry.grab_release()
    assert holder(root) is None


def test_the_list_of_a_drop_down_is_elsewhere(root: tk.Tk) -> None:
    box = ttk.Combobox(root, values=["one", "two"])
    box.grid()
    box.focus_force()
    root.update()
    box.event_generate("<Down>")
    wait_until(root, lambda: made_by_tk(root, "grab", "current"))
    root.tk.call("focus", "-force", f"{box}.popdown.f.l")
    wait_until(root, lambda: made_by_tk(root, "focus"))
    assert focused(root) is None
    assert holder(root) is None


def test_a_list_that_is_shut_gives_the_keyboard_back(root: tk.Tk) -> None:
    """Not every window manager does, and Tk may think that it still has it."""
    install_keyboard(root, begin=root.focus_set)
    box = ttk.Combobox(root, values=["one", "two"])
    box.grid()
    box.focus_force()
    root.update()
    for shut in (("ttk::combobox::Unpost", str(box)), ("wm", "withdraw", f"{box}.popdown")):
        box.event_generate("<Down>")
        wait_until(root, lambda: made_by_tk(root, "grab", "current"))
        root.tk.call("focus", "-force", f"{box}.popdown.f.l")
        wait_until(root, lambda: made_by_tk(root, "focus"))
        root.tk.call(*shut)
        wait_until(root, lambda: focused(root) is box)


def test_a_field_whose_card_goes_out_of_sight_gives_the_keyboard_back(root: tk.Tk) -> None:
    card, seen = ttk.Frame(root), ttk.Entry(root)
    install_keyboard(root, begin=seen.focus_set)
    field = ttk.Entry(card)
    for widget in (card, field, seen):
        widget.grid()
    field.focus_force()
    root.update()
    card.grid_remove()
    wait_until(root, lambda: focused(root) is seen)


def test_the_list_of_a_drop_down_out_of_sight_does_not_stay_open(root: tk.Tk) -> None:
    install_keyboard(root, begin=root.focus_set)
    left = ttk.Frame(root)
    box = ttk.Combobox(left, values=["one", "two"])
    left.grid()
    box.grid()
    box.focus_force()
    root.update()
    left.grid_remove()
    root.update()
    root.tk.call("ttk::combobox::Post", str(box))
    wait_until(root, lambda: not root.tk.call("winfo", "viewable", f"{box}.popdown"))
    wait_until(root, lambda: holder(root) is None and not made_by_tk(root, "grab", "current"))


def test_a_menu_that_is_shut_gives_the_keyboard_back(root: tk.Tk) -> None:
    install_keyboard(root, begin=root.focus_set)
    entry = ttk.Entry(root)
    entry.grid()
    entry.focus_force()
    root.update()
    menu = tk.Menu(root, tearoff=False)
    menu.add_command(label="Save")
    menu.post(20, 20)
    wait_until(root, menu.winfo_ismapped)
    menu.focus_force()
    wait_until(root, lambda: focused(root) is menu)
    menu.unpost()
    wait_until(root, lambda: focused(root) is entry)


def test_the_shown_copy_of_a_menu_is_elsewhere(root: tk.Tk) -> None:
    bar = tk.Menu(root)
    bar.add_cascade(label="Logbook", menu=tk.Menu(bar))
    root.configure(menu=bar)
    root.update()
    root.event_generate("<F10>")
    wait_until(root, lambda: made_by_tk(root, "focus"))
    assert focused(root) is None
    assert last_focused(root) is None
    root.event_generate("<Escape>")


class HeldElsewhere(tk.Toplevel):
    """Another program, such as the window manager while a button moves a window, holds the pointer for the first two tries."""

    tries = 0

    def grab_set(self) -> None:
        self.tries += 1
        if self.tries <= 2:
            raise tk.TclError("grab failed: another application has grab")
        super().grab_set()


def test_a_dialog_holds_the_pointer_once_another_program_lets_go_of_it(root: tk.Tk) -> None:
    dialog = HeldElsewhere(root)
    wait_until(root, dialog.winfo_viewable)
    Hold(dialog).take()
    assert holder(root) is None
    wait_until(root, lambda: holder(root) is dialog)
    dialog.destroy()


def made_by_tk(root: tk.Tk, *question: str) -> bool:
    """Whether Tk answers with a window that it made by itself."""
    path = str(root.tk.call(*question))
    return ".popdown" in path or ".#" in path


def test_a_window_that_goes_right_after_it_was_given_the_keyboard_behind_a_dialog(root: tk.Tk) -> None:
    """What is to be looked at a moment later is gone by then."""
    behind, dialog = tk.Toplevel(root), tk.Toplevel(root)
    keep_behind(behind, root.bell)
    wait_until(root, dialog.winfo_viewable)
    Hold(dialog).take()
    root.tk.call(*root.tk.splitlist(str(behind.protocol("WM_TAKE_FOCUS"))))
    behind.destroy()
    passed: list[bool] = []
    root.after(GIVEN_MS[-1] + 1, passed.append, True)
    wait_until(root, lambda: passed)
    dialog.destroy()


@pytest.mark.parametrize("drawn", ["nothing", "the dialog alone"])
def test_a_dialog_that_is_still_to_be_drawn_takes_the_keyboard_into_its_field(root: tk.Tk, drawn: str) -> None:
    """Tk forgets which field waits for it when anything else is given the keyboard meanwhile."""
    before, dialog = ttk.Entry(root), tk.Toplevel(root)
    field = ttk.Entry(dialog)
    before.grid()
    before.focus_force()
    root.update()
    if drawn == "nothing":
        dialog.withdraw()
    dialog.grab_set()
    field.focus_set()
    before.grid_remove()
    root.update()
    keyboard._bring_back(root, root.focus_set)
    root.update()
    field.grid()
    dialog.deiconify()
    wait_until(root, lambda: focused(root) is field)
