"""Dialogs over dialogs."""

import tkinter as tk

from logbook.window.dialog import Dialog
from logbook.window.keyboard import holder
from logbook.window.look import Look
from tests.support.screen import wait_until


class HeldElsewhere(Dialog):
    """The window manager holds the pointer, because a window is just being moved."""

    elsewhere = True
    tries = 0

    def grab_set(self) -> None:
        self.tries += 1
        if HeldElsewhere.elsewhere:
            raise tk.TclError("grab failed: another application has grab")
        super().grab_set()


def test_of_two_dialogs_that_wait_for_the_pointer_the_upper_one_gets_it(root: tk.Tk, look: Look) -> None:
    """Each try stands still for a second where another program holds the pointer: two that try by turns would end all else."""
    HeldElsewhere.elsewhere = True
    wait_until(root, root.winfo_viewable)
    lower = HeldElsewhere(root, look, "Lower", root.bell)
    lower.open(lower)
    upper = HeldElsewhere(lower, look, "Upper", root.bell)
    upper.open(upper)
    before, began = lower.tries, upper.tries
    wait_until(root, lambda: upper.tries > began + 1)
    assert lower.tries == before
    HeldElsewhere.elsewhere = False
    wait_until(root, lambda: holder(root) is upper)
    upper.close()
    wait_until(root, lambda: holder(root) is lower)
    lower.close()
    assert holder(root) is None


def test_a_dialog_that_still_waits_gets_the_pointer_after_the_one_above_it(root: tk.Tk, look: Look) -> None:
    HeldElsewhere.elsewhere = True
    wait_until(root, root.winfo_viewable)
    lower = HeldElsewhere(root, look, "Lower", root.bell)
    lower.open(lower)
    upper = HeldElsewhere(lower, look, "Upper", root.bell)
    upper.open(upper)
    upper.close()
    HeldElsewhere.elsewhere = False
    wait_until(root, lambda: holder(root) is lower)
    lower.close()
