"""The ways to begin rows, where there is little room for their words."""

import tkinter as tk
from tkinter import ttk

from logbook.pages.swatches.first_stitches import FirstStitchChoice
from logbook.window.look import Look
from logbook.window.swatches.first_stitch_buttons import FirstStitchButtons
from tests.support.fits import below
from tests.support.screen import settle

LONG = FirstStitchChoice("First stitch in 3rd ch, the skipped chs don’t count", {"extra chains": "2"}, chosen=True)
SHORT = tuple(FirstStitchChoice(name, {}) for name in ("sc", "hdc", "dc"))


def test_long_words_of_a_way_to_begin_go_on_in_another_line(root: tk.Tk, look: Look) -> None:
    taken: list[object] = []
    place = ttk.Frame(root, width=look.base.measure(LONG.label) * 2 // 3, height=200)
    place.grid()
    place.grid_propagate(False)
    place.columnconfigure(0, weight=1)
    buttons = FirstStitchButtons(place, look, taken.append)
    buttons.grid(sticky="w")
    buttons.show([LONG])
    settle(root)
    (button,) = (one for one in below(buttons) if isinstance(one, ttk.Button))
    assert str(button["text"]).replace("\n", " ") == f"✓ {LONG.label}"
    assert button.winfo_reqwidth() <= button.winfo_width() <= place.winfo_width()
    button.invoke()
    assert taken == [LONG.texts]
    buttons.show(SHORT)
    settle(root)
    one_row = [one for one in below(buttons) if isinstance(one, ttk.Button)]
    assert [one["text"] for one in one_row] == ["sc", "hdc", "dc"]
    assert len({one.winfo_y() for one in one_row}) == 1
