"""What was typed and not saved, offered again field by field beside what the logbook holds."""

import tkinter as tk

from logbook.pages.drafts import Offer, told_now
from logbook.window.long_dialog import LongDialog
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.tick_box import TickBox

TAKE, DROP, LATER = "take", "drop", "later"
LETTERS = 64
LONGEST = 400
"""Letters of a text that are shown; all of it is taken up."""


def offer_draft(parent: tk.Misc, look: Look, offer: Offer) -> tuple[str, frozenset[str]]:
    """TAKE, DROP or LATER (Escape too), and the keys of the fields that stayed ticked."""
    answer = LATER

    def choose(chosen: str) -> None:
        nonlocal answer
        answer = chosen
        dialog.close()

    dialog = LongDialog(parent, look, "Unsaved work", lambda: choose(LATER), LETTERS)
    body = dialog.body
    look.grid(Sentence(body, offer.sentence), row=0, column=0, sticky="ew", pady=(0, 2))
    ticks = {field.key: tk.BooleanVar(dialog, True) for field in offer.fields}
    for row, field in enumerate(offer.fields):
        TickBox(body, look, field.label, ticks[field.key], lambda: None).grid(row=3 * row + 1, column=0, sticky="w")
        typed = Sentence(body, _in_short(field.typed.strip()) if field.typed.strip() else "(emptied)")
        look.grid(typed, row=3 * row + 2, column=0, sticky="ew", padx=(5, 0))
        if said := _in_short(told_now(field)):
            style = "Warning.TLabel" if field.changed else "Muted.TLabel"
            look.grid(Sentence(body, said, style), row=3 * row + 3, column=0, sticky="ew", padx=(5, 0), pady=(0, 1))
    words = "“Bring it back” puts it into its form again, still not saved. “Not now” asks again at the next start."
    look.grid(Sentence(body, words, "Muted.TLabel"), row=3 * len(ticks) + 1, column=0, sticky="ew", pady=(2, 0))
    dialog.add_button("&Discard", lambda: choose(DROP))
    dialog.add_button("&Not now", lambda: choose(LATER))
    take = dialog.add_button("&Bring it back", lambda: choose(TAKE), accent=True)
    dialog.open(take)
    dialog.wait_window()
    return answer, frozenset(key for key, ticked in ticks.items() if ticked.get())


def _in_short(text: str) -> str:
    return text if len(text) <= LONGEST else f"{text[:LONGEST]} …"
