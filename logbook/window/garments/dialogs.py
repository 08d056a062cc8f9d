"""The dialogs of a garment: what a new one is begun from, and the same one in another yarn."""

import tkinter as tk
from functools import partial
from tkinter import ttk

from logbook.craft.garments.plan import GarmentPlan
from logbook.craft.garments.templates import TEMPLATES
from logbook.pages.garments.other_yarn import HEADINGS, OtherYarn
from logbook.pages.swatches.swatch_choice import SwatchChoice
from logbook.window.choices import SuggestionField
from logbook.window.dialog import Dialog
from logbook.window.flat_choice import FlatChoice
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

LABEL_LETTERS = 16
SINGLE_PIECE = "single piece"
SAYS = {
    "two-panel top": "Back and front with a round neck, sewn at shoulders and sides.",
    "cardigan": "A back, two half fronts with a V neck, two sleeves, a band all along the fronts and the neck.",
    "top-down raglan": "A yoke in rounds from the neck, a body and two sleeves worked on from it. It needs a plain stitch.",
    "hat": "A flat crown, then straight down, in rounds. It needs a plain stitch.",
    "shawl": "A triangle from its tip. It needs a plain stitch.",
    "blanket with border": "A panel and a border picked up all round it.",
    "empty": "Nothing yet: add its pieces one by one.",
    SINGLE_PIECE: "One panel by itself: its chain, rows, marks, yarn and sizes.",
}


def ask_template(parent: tk.Misc, look: Look, swatches: SwatchChoice, *, single: bool) -> tuple[str, str] | None:
    """The template chosen and the tag of a swatch, which may be ""; None: leave it. ``single``: a single piece is offered too."""
    chosen: list[tuple[str, str]] = []
    dialog = Dialog(parent, look, "New garment", lambda: dialog.close())
    inside = dialog.inside
    Sentence(inside, "Begin with", "Section.TLabel").grid(row=0, column=0, sticky="ew")
    says = Sentence(inside, style="Muted.TLabel")

    def choose(name: str) -> None:
        says.configure(text=SAYS[name])
        dialog.grow()

    row = FlatChoice(inside, look, choose)
    look.grid(row, row=1, column=0, sticky="ew", pady=(1, 1))
    look.grid(says, row=2, column=0, sticky="ew", pady=(0, 2))
    field = SuggestionField(
        inside, look, "From swat&ch", lambda: swatches.offered(""), width=30, label_width=LABEL_LETTERS, grow=True
    )
    field.grid(row=3, column=0, sticky="ew")
    hint = Sentence(inside, "One swatch for all pieces to begin with; any piece can have its own later.", "Muted.TLabel")
    look.grid(hint, row=4, column=0, sticky="ew", pady=(0, 1))
    inside.columnconfigure(0, weight=1, minsize=dialog.wide(62))

    def begin() -> None:
        tag = swatches.tag(field.text)
        if swatches.unknown(field.text):
            field.show_message(swatches.unknown(field.text))
            field.input.focus_set()
            return
        chosen.append((row.chosen, tag))
        dialog.close()

    dialog.add_button("&Cancel", dialog.close)
    dialog.add_button("&Begin", begin, accent=True)
    dialog.bind("<Control-Return>", lambda _: begin())
    row.show({name: name for name in (*TEMPLATES, *([SINGLE_PIECE] if single else []))}, TEMPLATES[0])
    choose(TEMPLATES[0])
    dialog.open(row.buttons[TEMPLATES[0]])
    dialog.wait_window()
    return chosen[0] if chosen else None


def ask_other_yarn(parent: tk.Misc, look: Look, other: OtherYarn) -> GarmentPlan | None:
    """The plan in other swatches that the user takes; None: leave it."""
    taken: list[GarmentPlan] = []
    dialog = Dialog(parent, look, "The same garment in another yarn", lambda: dialog.close())
    inside = dialog.inside
    inside.columnconfigure(0, weight=1, minsize=dialog.wide(70))
    fields = _fields_for_others(inside, look, other)
    place = len(fields)
    table = _beside_table(inside, look)
    table.grid(row=place, column=0, sticky="nsew")
    inside.rowconfigure(place, weight=1)
    says = Sentence(inside)
    look.grid(says, row=place + 1, column=0, sticky="ew", pady=(1, 0))

    def chosen() -> dict[str, str]:
        return {tag: field.text for tag, field in fields.items()}

    def show() -> None:
        beside = other.beside(chosen())
        table.set_rows(Row(str(number), cells, cells) for number, cells in enumerate(beside.rows))
        style = "Error.TLabel" if beside.error else "TLabel"
        says.configure(text=f"✕ {beside.error}" if beside.error else "\n".join(beside.yarn), style=style)
        take.state(["disabled" if beside.error or not any(text.strip() for text in chosen().values()) else "!disabled"])

    def begin() -> None:
        taken.append(other.plan(chosen()))
        dialog.close()

    dialog.add_button("&Cancel", dialog.close)
    take: ttk.Button = dialog.add_button("Make i&t a new garment", begin, accent=True)
    for field in fields.values():
        field.variable.trace_add("write", lambda *_: show())
    show()
    dialog.open(next(iter(fields.values())).input)
    dialog.wait_window()
    return taken[0] if taken else None


def _fields_for_others(inside: ttk.Frame, look: Look, other: OtherYarn) -> dict[str, SuggestionField]:
    """For each swatch by its tag, which one is taken instead, one below the other from the first row."""
    fields: dict[str, SuggestionField] = {}
    for number, tag in enumerate(other.tags):
        suggest = partial(other.form.swatches.offered, "")
        field = SuggestionField(inside, look, f"Instead of {tag}", suggest, width=30, label_width=LABEL_LETTERS, grow=True)
        look.grid(field, row=number, column=0, sticky="ew", pady=(0, 0.5))
        fields[tag] = field
    return fields


def _beside_table(inside: ttk.Frame, look: Look) -> Table:
    columns = [
        Column(str(n), text, max(6, len(text)), "left" if n < 2 else "right", grow=n == 1) for n, text in enumerate(HEADINGS)
    ]
    table = Table(inside, look, columns, lambda _: None)
    table.tree.configure(height=10)
    return table
