"""What the arithmetic assumes before it is measured; kept in the logbook, since it changes numbers."""

import tkinter as tk

from logbook.errors import LogbookError
from logbook.pages.assumption_form import TICKED, AssumptionForm
from logbook.pages.session import Session
from logbook.window.field import Field
from logbook.window.long_dialog import LongDialog
from logbook.window.look import Look
from logbook.window.message import tell
from logbook.window.sentence import Sentence
from logbook.window.tick_box import TickBox

LETTERS = 56


def show_assumptions(parent: tk.Misc, look: Look, session: Session) -> None:
    """Shows the assumptions to be changed; Escape leaves them."""
    form = AssumptionForm(session)
    dialog = LongDialog(parent, look, "Assumptions", lambda: dialog.close(), LETTERS, lambda: session.waiting)
    words = "These are used until your own measurements replace them. Changing one changes every number that depends on it."
    look.grid(Sentence(dialog.body, words), row=0, column=0, sticky="ew", pady=(0, 2))
    fields: dict[str, Field] = {}
    ticks: dict[str, tk.BooleanVar] = {}
    for row, line in enumerate(form.lines, start=1):
        if line.is_tick:
            ticks[line.name] = tk.BooleanVar(dialog.body, bool(line.text))
            box = TickBox(dialog.body, look, line.label, ticks[line.name], lambda: None)
            look.grid(box, row=row, column=0, sticky="w", pady=(1, 1))
            continue
        field = Field(dialog.body, look, line.label, width=10, unit=line.unit, label_width=34)
        field.text = line.text
        look.grid(field, row=row, column=0, sticky="ew")
        fields[line.name] = field

    def typed() -> dict[str, str]:
        ticked = {name: TICKED if variable.get() else "" for name, variable in ticks.items()}
        return {name: field.text for name, field in fields.items()} | ticked

    def save() -> None:
        texts = typed()
        errors = form.errors(texts)
        for name, field in fields.items():
            field.show_message(errors.get(name))
        if errors:
            return
        try:
            form.save(texts)
        except LogbookError as error:
            tell(dialog, look, str(error))
            return
        session.records_changed(form)
        session.say("The assumptions were saved.")
        if typed() == texts:  # else something was typed while it waited
            dialog.close()

    dialog.add_button("&Cancel", dialog.leave)
    dialog.add_button("&Save", save, accent=True)
    dialog.bind("<Return>", lambda _: save())
    dialog.open(next(iter(fields.values())).input)
