"""Dialogs over dialogs, and their size."""

import tkinter as tk
from tkinter import ttk

import pytest

from logbook.window.dialog import Dialog
from logbook.window.keyboard import holder
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from tests.support.fits import screen_faults
from tests.support.screen import settle, wait_until


class HeldElsewhere(Dialog):
    """The window manager holds the pointer, because a window is just being moved."""

    elsewhere = True
    tries = 0

    def grab_set(self) -> None:
        self.tries += 1
        if HeldElsewhere.elsewhere:
            raise tk.TclError("grab failed: another application has grab")
        super().grab_set()


def two_that_wait(root: tk.Tk, look: Look) -> tuple[HeldElsewhere, HeldElsewhere]:
    """A dialog and one above it, the pointer held elsewhere."""
    HeldElsewhere.elsewhere = True
    wait_until(root, root.winfo_viewable)
    lower = HeldElsewhere(root, look, "Lower", root.bell)
    lower.open(lower)
    upper = HeldElsewhere(lower, look, "Upper", root.bell)
    upper.open(upper)
    return lower, upper


def test_of_two_dialogs_that_wait_for_the_pointer_the_upper_one_gets_it(root: tk.Tk, look: Look) -> None:
    """Each try stands still for a second where another program holds the pointer: two that try by turns would end all else."""
    lower, upper = two_that_wait(root, look)
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
    lower, upper = two_that_wait(root, look)
    upper.close()
    HeldElsewhere.elsewhere = False
    wait_until(root, lambda: holder(root) is lower)
    lower.close()


@pytest.mark.parametrize("percent", [100, 200])
@pytest.mark.parametrize(
    "words", [("Delete", "Close"), ("Cancel", "Keep what is here", "Use the other's", "Merge"), ("A good many words",) * 6]
)
def test_all_buttons_are_in_the_window(root: tk.Tk, look: Look, percent: int, words: tuple[str, ...]) -> None:
    """However narrow it is, as far as two lines hold them."""
    look.apply(percent=percent)
    dialog = Dialog(root, look, "Buttons", root.bell)
    ttk.Label(dialog.inside, text="A question.").grid()
    buttons = [dialog.add_button(text, root.bell) for text in words]
    dialog.open(buttons[-1])
    settle(root)
    assert screen_faults(dialog) == []
    upper, lower = buttons[: len(buttons) // 2], buttons[len(buttons) // 2 :]
    narrow = sum(max(pair[0].winfo_width(), pair[1].winfo_width()) for pair in zip(upper, lower, strict=True))
    dialog.geometry(f"{narrow + look.pixels(20)}x{dialog.winfo_height() + look.pixels(20)}")
    settle(root)
    assert screen_faults(dialog) == []
    dialog.close()


def test_it_is_as_high_as_its_sentences_are_at_its_width(root: tk.Tk, look: Look) -> None:
    """Before it is shown they do not know that, and ask for more."""
    dialog = Dialog(root, look, "Sentences", root.bell)
    dialog.inside.columnconfigure(0, minsize=dialog.wide(60))
    for row in range(3):
        Sentence(dialog.inside, "One sentence that goes on for longer than a line of it is wide. " * 4).grid(row=row, sticky="ew")
    dialog.open(dialog.add_button("Close", dialog.close))
    settle(root)
    assert screen_faults(dialog) == []
    assert dialog.winfo_height() == dialog.winfo_reqheight()
    dialog.close()


def test_it_is_no_wider_than_the_screen(root: tk.Tk, look: Look) -> None:
    look.apply(percent=200)
    dialog = Dialog(root, look, "Wide", root.bell)
    dialog.inside.columnconfigure(0, minsize=dialog.wide(500))
    Sentence(dialog.inside, "One sentence that is longer than a screen is wide. " * 4).grid(sticky="ew")
    dialog.open(dialog.add_button("Close", dialog.close))
    settle(root)
    assert screen_faults(dialog) == []
    dialog.close()
