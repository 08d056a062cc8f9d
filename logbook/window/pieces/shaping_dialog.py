"""Shaping: increases and decreases spread evenly, and what an edging picks up, written as rows are written; live."""

import tkinter as tk

from logbook.pages.pieces.piece_card import NOT_YET
from logbook.pages.pieces.plan_texts import TICKED
from logbook.pages.pieces.shaping import KINDS, shaped, texts_from
from logbook.tasks.pieces import PieceAnswer
from logbook.window.choices import ChoiceField
from logbook.window.dialog import Dialog
from logbook.window.field import Field, LabelledField
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.tick_box import TickBox

LABEL_LETTERS = 20
LABELS = {
    "start": "From s&titches",
    "end": "t&o stitches",
    "rows": "over &rows",
    "stitch": "Plain stitc&h",
    "ends": "Along row &ends",
    "row gauge": "Rows &gauge",
    "edging gauge": "E&dging gauge",
}


def show_shaping(parent: tk.Misc, look: Look, answer: PieceAnswer | None) -> None:
    """Opens the dialog; it begins with the counts of the piece in hand, if there is one."""
    dialog = _ShapingDialog(parent, look, texts_from(answer))
    dialog.open(dialog.kind.input)
    dialog.wait_window()


class _ShapingDialog(Dialog):
    def __init__(self, parent: tk.Misc, look: Look, texts: dict[str, str]) -> None:
        super().__init__(parent, look, "Shaping", self.close)
        self._texts = texts
        self.kind = ChoiceField(self.inside, look, "&Shape", tuple(KINDS), width=24, label_width=LABEL_LETTERS)
        look.grid(self.kind, row=0, column=0, sticky="ew", pady=(0, 0.5))
        self.fields: dict[str, LabelledField] = {}
        for row, (key, label) in enumerate(LABELS.items(), 1):
            field = Field(self.inside, look, label, width=22 if "gauge" in key else 8, label_width=LABEL_LETTERS)
            field.text = texts[key]
            look.grid(field, row=row, column=0, sticky="ew", pady=(0, 0.5))
            field.variable.trace_add("write", lambda *_: self._show())
            self.fields[key] = field
        self._on_edge = tk.BooleanVar(self, False)
        self._box = TickBox(self.inside, look, "Also at the very edge", self._on_edge, self._show)
        self._box.grid(row=8, column=0, sticky="w")
        self.result = Sentence(self.inside, NOT_YET, "Section.TLabel")
        self.says = Sentence(self.inside, "", "Muted.TLabel")
        look.grid(self.result, row=9, column=0, sticky="ew", pady=(3, 1))
        look.grid(self.says, row=10, column=0, sticky="ew")
        self.kind.variable.trace_add("write", lambda *_: self._show())
        self._copy = self.add_button("C&opy the row", self._copied)
        self.add_button("&Close", self.close, accent=True)
        look.when_changed(self, lambda: self.inside.columnconfigure(0, minsize=self.wide(60)))
        # The tallest of the three kinds gives the dialog its height, so that nothing jumps.
        self.inside.rowconfigure(11, weight=1)
        self._show()

    def _show(self) -> None:
        asked = KINDS[self.kind.text]
        for key, field in self.fields.items():
            if key in asked:
                field.grid()
            else:
                field.grid_remove()
        if "on edge" in asked:
            self._box.grid()
        else:
            self._box.grid_remove()
        texts = {key: field.text for key, field in self.fields.items()} | {"on edge": TICKED if self._on_edge.get() else ""}
        found = shaped(self.kind.text, texts)
        self.result.configure(text=found.text or NOT_YET)
        self.says.configure(text=found.says)
        self.says.grid() if found.says else self.says.grid_remove()
        self._copy.state(["!disabled" if found.text else "disabled"])
        self.grow()

    def _copied(self) -> None:
        self.clipboard_clear()
        self.clipboard_append(str(self.result.cget("text")))
