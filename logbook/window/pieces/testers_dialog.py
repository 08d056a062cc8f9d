"""Those who try a pattern: their list, the one in the form, which size is off, and the sheets that go round and come back."""

import tkinter as tk
from collections.abc import Callable
from pathlib import Path
from tkinter import ttk

from logbook.errors import LogbookError
from logbook.pages.pieces.plan_texts import taken_unit, with_unit
from logbook.pages.pieces.tester_form import HEADINGS, STATES, TesterForm
from logbook.pages.session import Session
from logbook.pages.typed_since import MEANWHILE
from logbook.tasks.own_sheets import raw_sheets
from logbook.window.choices import ChoiceField
from logbook.window.field import Field
from logbook.window.field_row import FieldRow
from logbook.window.file_dialogs import ask_what_to_open, ask_where_to_save, named_today
from logbook.window.form_dialog import FormDialog
from logbook.window.look import Look
from logbook.window.message import say_foreseen
from logbook.window.own_sheet_dialog import ask_columns
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table
from logbook.window.text_field import TextField

LABEL_LETTERS = 14
SHEETS = [("Sheets", "*.xlsx *.csv *.txt *.tsv"), ("All files", "*")]
GAUGE_HINT = "Measured on what they made, washed: 20 sts = 12.4 cm; 20 sts = 12.6 cm; 16 rows = 11 cm"
WIDTHS = {"Name": 14, "Size": 6, "State": 8, "Width": 8, "Length": 8, "Gauge": 14}


def show_testers(parent: tk.Misc, look: Look, session: Session, form: TesterForm, done: Callable[[str], object]) -> None:
    """Opens the dialog; ``done`` is told, in a sentence, whenever something was written."""
    dialog = TestersDialog(parent, look, session, form, done)
    dialog.open(dialog.table.tree if dialog.table.shown else dialog.fields["name"].input)
    dialog.wait_window()


class TestersDialog(FormDialog):
    """Everything in it can be undone."""

    def __init__(self, parent: tk.Misc, look: Look, session: Session, form: TesterForm, done: Callable[[str], object]) -> None:
        super().__init__(parent, look, form.title, session, form, 84, self._leave)
        self._form, self._done = form, done
        self._build(self.body)
        self.delete_button = self.add_button("&Delete", self._delete)
        self.add_button("Close", self._leave)
        self.add_button("&New", self._new)
        self._end_form(self._save)
        self._show_all()

    def _build(self, place: ttk.Frame) -> None:
        look = self.look
        columns = [Column(name, name, WIDTHS[name], grow=name in ("Name", "Gauge"), least=6) for name in HEADINGS]
        self.table = Table(place, look, columns, self._chosen)
        self.table.grid(row=0, column=0, sticky="ew")
        sheets = ttk.Frame(place)
        look.grid(sheets, row=1, column=0, sticky="w", pady=(1, 0))
        for number, (text, letter, action) in enumerate(
            (("Save a sheet for testers…", 15, self._save_sheet), ("Import a sheet of answers…", 0, self._take_in))
        ):
            look.grid(ttk.Button(sheets, text=text, underline=letter, command=action), row=0, column=number, padx=(0, 2))
        self.says = Sentence(place, " ", "Section.TLabel")
        look.grid(self.says, row=2, column=0, sticky="ew", pady=(1, 1))
        first = FieldRow(place, look)
        first.arrange(
            [
                self._add("name", Field(first, look, "Na&me or initials", width=20)),
                self._add("size", ChoiceField(first, look, "Si&ze", ("", *self._form.sizes), width=8)),
                self._add("state", ChoiceField(first, look, "S&tate", STATES, width=10)),
            ]
        )
        second = FieldRow(place, look)
        measured = [
            self._add("width", Field(second, look, "&Width measured", width=10)),
            self._add("length", Field(second, look, "&Length measured", width=10)),
        ]
        if len(self._form.parts) > 1:
            measured.insert(0, self._add("part", ChoiceField(second, look, "&Piece measured", ("", *self._form.parts), width=18)))
        for field in measured:
            if isinstance(field, Field):
                field.show_taken_unit(lambda typed: taken_unit(typed, self._session.units))
        second.arrange(measured)
        for row, beside in enumerate((first, second), start=3):
            look.grid(beside, row=row, column=0, sticky="ew", pady=(1, 0))
        gauge = self._add("gauge", Field(place, look, "Its &gauge", label_width=LABEL_LETTERS, grow=True))
        said = self._add("said", TextField(place, look, "What the&y say", lines=3, label_width=LABEL_LETTERS))
        for row, field in enumerate((gauge, said), start=5):
            look.grid(field, row=row, column=0, sticky="ew", pady=(1, 0))

    def _put_in_order(self, key: str) -> None:
        if key in ("width", "length"):
            self.fields[key].text = with_unit(self.fields[key].text, self._session.units)

    def _hint(self, key: str) -> str:
        return GAUGE_HINT if key == "gauge" else ""

    def _show(self) -> None:
        super()._show()
        self.delete_button.state(["!disabled" if self._form.tester.uid else "disabled"])
        self.save_button.state(["!disabled" if self._form.is_dirty else "disabled"])

    def _show_all(self) -> None:
        self._followed.begin()
        self.table.set_rows(Row(uid, cells, cells) for uid, cells in self._form.lines())
        self.table.tree.configure(height=min(6, max(2, self.table.count)))
        uid = self._form.tester.uid
        self.table.select([uid] if uid else [])
        self.says.configure(text="\n".join(self._form.sentences()))
        self._show()

    def _chosen(self, uids: tuple[str, ...]) -> None:
        if uids and uids[0] != self._form.tester.uid:
            if self._is_settled():
                self._form.show(uids[0])
            self._show_all()

    def _is_settled(self) -> bool:
        return self._settle(self._form.tester.name or "the new tester", self._save)

    def _new(self) -> None:
        if self._is_settled():
            self._form.show("")
            self._show_all()
            self.fields["name"].input.focus_set()

    def _save(self) -> bool:
        if not self._saved():
            return False
        self._show_all()
        if self._form.is_dirty:
            self.refusal.configure(text=f"✕ {MEANWHILE}")
        self._done(f"{self._form.tester.name} is saved.")
        return True

    def _delete(self) -> None:
        name = self._form.tester.name
        if self._form.tester.uid and self._try(self._form.delete):
            self._show_all()
            self._done(f"{name} is deleted. Undo brings it back.")

    def _take_in(self) -> None:
        if not self._is_settled():
            return
        chosen = ask_what_to_open(parent=self, title="Import a sheet of answers", filetypes=SHEETS)
        if not chosen:
            return
        try:
            path = Path(chosen)
            page = self._form.sheet_page(path.name, raw_sheets(path))
            if ask_columns(self, self.look, page):
                self._done(self._form.take_in(page))
        except LogbookError as error:
            say_foreseen(self, self.look, error)
        self._show_all()

    def _save_sheet(self) -> None:
        chosen = ask_where_to_save(
            parent=self,
            title="Save a sheet for testers",
            kinds=[("Workbook", "*.xlsx")],
            name=named_today(f"{self._form.of.name} to test"),
        )
        if chosen and self._try(lambda: self._form.save_sheet(Path(chosen))):
            self._done(f"{Path(chosen).name} is ready to send to the testers.")

    def _leave(self) -> None:
        if self._is_settled():
            self.close()
