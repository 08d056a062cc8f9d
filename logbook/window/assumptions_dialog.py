"""What the arithmetic assumes before it is measured; kept in the logbook, since it changes numbers."""

import tkinter as tk

from logbook.errors import LogbookError
from logbook.pages.assumption_form import AssumptionForm
from logbook.pages.session import Session
from logbook.window.dialog import Dialog
from logbook.window.field import Field
from logbook.window.look import Look
from logbook.window.message import tell
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence


def show_assumptions(parent: tk.Misc, look: Look, session: Session) -> None:
    """Shows the assumptions to be changed; Escape leaves them."""
    form = AssumptionForm(session)
    dialog = Dialog(parent, look, "What is assumed", lambda: dialog.close())
    scrolled = Scrolled(dialog.inside, look, 56)
    scrolled.grid(row=0, column=0, sticky="nsew")
    scrolled.inside.columnconfigure(0, weight=1)
    dialog.inside.rowconfigure(0, weight=1)
    words = "Used until the logbook has learnt better. Changing one changes every number that rests on it."
    look.grid(Sentence(scrolled.inside, words), row=0, column=0, sticky="ew", pady=(0, 2))
    fields: dict[str, Field] = {}
    for row, line in enumerate(form.lines, start=1):
        field = Field(scrolled.inside, look, line.label, width=10, unit=line.unit, label_width=34)
        field.text = line.text
        look.grid(field, row=row, column=0, sticky="ew")
        fields[line.name] = field

    def save() -> None:
        errors = form.errors({name: field.text for name, field in fields.items()})
        for name, field in fields.items():
            field.show_message(errors.get(name))
        if errors:
            return
        try:
            form.save({name: field.text for name, field in fields.items()})
        except LogbookError as error:
            tell(dialog, look, str(error))
            return
        dialog.close()
        session.records_changed(form)
        session.say("The assumptions were saved.")

    dialog.add_button("&Leave them", dialog.close)
    dialog.add_button("&Save", save, accent=True)
    dialog.bind("<Return>", lambda _: save())
    dialog.update_idletasks()
    scrolled.canvas.configure(height=min(scrolled.inside.winfo_reqheight(), dialog.winfo_screenheight() * 2 // 3))
    dialog.open(next(iter(fields.values())).input)
