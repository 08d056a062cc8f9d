"""The yarns, or the stitch patterns, of the logbook: to rename one, merge it into another, delete it where it is not used."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.errors import LogbookError
from logbook.pages.known_names import KnownNames
from logbook.pages.session import Session
from logbook.tasks.at_home import name_key
from logbook.tasks.known_names import NameOf
from logbook.window.choices import SuggestionField
from logbook.window.dialog import Dialog
from logbook.window.field import Field
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

LABEL_LETTERS = 11
ROWS = 9
TITLES = {NameOf.YARN: "Yarns", NameOf.PATTERN: "Stitch patterns"}
HEADINGS = {NameOf.YARN: "Yarn", NameOf.PATTERN: "Stitch pattern"}


def show_names(parent: tk.Misc, look: Look, session: Session, kind: NameOf, uid: str = "") -> None:
    """Opens the list with the one of ``uid`` in hand."""
    dialog = NamesDialog(parent, look, session, kind, uid)
    dialog.open(dialog.table.tree if dialog.table.shown else dialog.find.input)
    dialog.wait_window()


class NamesDialog(Dialog):
    """Every action is one step of undo; the list stays open for the next."""

    def __init__(self, parent: tk.Misc, look: Look, session: Session, kind: NameOf, uid: str) -> None:
        self.names = KnownNames(session, kind)
        super().__init__(parent, look, TITLES[kind], self.close, lambda: self.names.waits)
        self._session = session
        self.inside.rowconfigure(1, weight=1)
        self.find = Field(self.inside, look, "&Find", label_width=LABEL_LETTERS, grow=True)
        columns = (Column("name", HEADINGS[kind], 42, grow=True, least=20), Column("swatches", "Swatches", 8, "right"))
        self.table = Table(self.inside, look, columns, self._chosen)
        self.table.tree.configure(height=ROWS, selectmode="browse")
        self.name = Field(self.inside, look, "&Name", width=30, label_width=LABEL_LETTERS, grow=True)
        self.into = SuggestionField(
            self.inside, look, "Merge &into", lambda: self.names.others(self._uid), label_width=LABEL_LETTERS, grow=True
        )
        self.rename_button = ttk.Button(self.inside, text="Rename", underline=0, command=self._rename)
        self.merge_button = ttk.Button(self.inside, text="Merge", underline=0, command=self._merge)
        self.says = Sentence(self.inside)
        look.grid(self.find, row=0, column=0, columnspan=2, sticky="ew")
        look.grid(self.table, row=1, column=0, columnspan=2, sticky="nsew", pady=(1, 2))
        for row, (field, button) in enumerate(((self.name, self.rename_button), (self.into, self.merge_button)), 2):
            look.grid(field, row=row, column=0, sticky="ew", pady=(0, 0.5))
            look.grid(button, row=row, column=1, sticky="new", padx=(2, 0), pady=(0, 0.5))
        look.grid(self.says, row=4, column=0, columnspan=2, sticky="ew", pady=(1, 0))
        look.when_changed(self, lambda: self.inside.rowconfigure(4, minsize=3 * look.line))
        self.delete_button = self.add_button("&Delete", self._delete)
        self.add_button("&Close", self.leave, accent=True)
        for field in (self.name, self.into):
            field.variable.trace_add("write", lambda *_: self._say())
        self.name.input.bind("<Return>", lambda _: self.rename_button.invoke())
        self.into.input.bind("<Return>", lambda _: self.merge_button.invoke())
        self.find.variable.trace_add("write", lambda *_: self.table.show_only(self._found()))
        self._uid = ""
        self._list(uid)

    def open(self, focus: tk.Misc) -> None:
        """With the one in hand in sight, now that the list has its height."""
        super().open(focus)
        self.table.select(self.table.selected)

    def _found(self) -> list[str] | None:
        return self.names.matching(self.find.text) if self.find.text.strip() else None

    def _list(self, uid: str) -> None:
        """Shows them anew, with this one in hand or the first."""
        self.table.set_rows(
            Row(key, (one.record.name, str(one.swatches)), (name_key(one.record.name), one.swatches))
            for key, one in self.names.known.items()
        )
        self.table.show_only(self._found())
        shown = self.table.shown
        self._uid = uid if uid in shown else next(iter(shown), "")
        self.table.select([self._uid] if self._uid else [])
        self._in_hand()

    def _chosen(self, keys: tuple[str, ...]) -> None:
        if keys and keys[0] != self._uid:
            self._uid = keys[0]
            self._in_hand()

    def _in_hand(self) -> None:
        self.name.text, self.into.text = self.names.name(self._uid), ""
        self._say()

    def _say(self) -> None:
        """What merging would do, and which buttons do something."""
        can = bool(self._uid) and not self.names.why_not
        typed, into = self.name.text.strip(), self.into.text.strip()
        says = self.names.why_not or self.names.says(self._uid, into)
        self.says.configure(text=says)
        possible = {
            self.rename_button: can and bool(typed) and typed != self.names.name(self._uid),
            self.merge_button: can and bool(self.names.uid(into)) and not says.startswith("✕"),
            self.delete_button: can and self.names.can_go(self._uid),
        }
        for button, does in possible.items():
            button.state(["!disabled" if does else "disabled"])

    def _rename(self) -> None:
        self._do(lambda: self.names.rename(self._uid, self.name.text), self._uid)

    def _merge(self) -> None:
        self._do(lambda: self.names.merge(self._uid, self.into.text), self.names.uid(self.into.text))

    def _delete(self) -> None:
        shown = self.table.shown
        place = shown.index(self._uid) if self._uid in shown else 0
        after = [*shown[place + 1 :], *reversed(shown[:place])]
        self._do(lambda: self.names.delete(self._uid), next(iter(after), ""))

    def _do(self, action: Callable[[], str], then: str) -> None:
        """Does it and goes on with ``then``; what can't be done is said, and what is typed stays."""
        try:
            done = action()
        except LogbookError as error:
            self.says.configure(text=f"✕ {error}")
            return
        self._list(then)
        self.table.tree.focus_set()
        self.says.configure(text=done)
        self._session.say(done)
