"""What the pages share on which a list stands beside the form of the record in hand and what follows from it."""

import tkinter as tk
from abc import ABC, abstractmethod
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from tkinter import ttk

from logbook.craft.words.notation import notation
from logbook.errors import RefusedError
from logbook.pages.drafts import draft_of
from logbook.pages.session import Session
from logbook.pages.typed_since import MEANWHILE
from logbook.tasks.drafts import Draft
from logbook.window.button_row import ButtonRow
from logbook.window.changed_elsewhere import may_save
from logbook.window.keys import bind_keys
from logbook.window.look import Look
from logbook.window.panes import Panes, Shares
from logbook.window.record_parts import Form, FormShown, ListShown
from logbook.window.table import Entry
from logbook.window.unsaved import ask_of_unsaved


class RecordPage(ABC):
    """A page of a kind sets ``find``, ``editor`` and ``row``, and says what is different with it."""

    drafts_as: str
    """Which page its drafts are of."""
    panes_as = ""
    """What the settings remember its panes by; "": by ``drafts_as``."""
    kind: str
    """``swatch``: what its records are called."""
    find: ListShown
    editor: FormShown
    row: ButtonRow
    panes_are: tuple[str, str, str] = ("List", "Form", "Your numbers")
    """What its panes are called, where one of them is hidden."""

    def __init__(self, parent: tk.Misc, look: Look, session: Session, form: Form) -> None:
        self.frame = ttk.Frame(parent)
        self.look, self.session, self._form = look, session, form
        self._units, self._notation = session.units, notation()
        self.panes = Panes(self.frame, look, self.panes_are, self._keep_shares)

    @property
    def part(self) -> "RecordPage":
        """All of it."""
        return self

    @property
    @abstractmethod
    def _name(self) -> str:
        """What the saved record in hand is called."""

    @abstractmethod
    def _saved_words(self) -> str:
        """What is said after saving."""

    @abstractmethod
    def _delete(self, uids: Sequence[str]) -> str:
        """Deletes these records, and gives what is said then."""

    @abstractmethod
    def _changed(self) -> None:
        """Brings what follows, and which buttons do something, up to date with what is typed."""

    @abstractmethod
    def _reload(self) -> None:
        """Takes from the logbook again what is listed, offered and lent; what is typed stays."""

    def first_focus(self) -> None:
        """Into the find field; with nothing in the list yet into the form."""
        if self.find.table.shown or self._form.saved is not None:
            self._go_to_list()
        else:
            self.editor.start()

    def more_entries(self) -> Sequence[Entry]:
        """What the menu of its name holds besides."""
        return ()

    def entries(self) -> Sequence[Entry]:
        """All that can be done with its records: the menu of its name, and the right button in the list."""
        more = list(self.more_entries())
        return [*self.row.entries, *([None, *more] if more else [])]

    def _go_to_list(self) -> None:
        self.panes.bring(0)
        self.find.start()

    def record_in_hand(self) -> tuple[str, str] | None:
        """The name and uid of the saved record in hand."""
        return (self._name, self._form.uid) if self._form.saved is not None else None

    def drafts(self) -> Iterator[Draft]:
        """What is typed in the form."""
        name, units = self._name if self._form.saved is not None else "", self.session.units.value
        draft = draft_of(self.drafts_as, self._form.uid, name, units, self._form.texts, self._form.opened)
        if draft is not None:
            yield draft

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """As the form's."""
        return self._form.kept(draft)

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> bool:
        """Takes a draft's record in hand with these texts typed; False: what is typed now is to stay."""
        if not self.settle():
            return False
        self._take_new(lambda: self._form.take_up(draft, texts))
        return True

    def settle(self) -> bool:
        """Asks what to do with what is typed and not saved; False: stay with it."""
        if self.session.waiting:
            return False  # what is being saved stays in hand until it is
        while self._form.is_dirty:  # again, if something was typed while it was being saved
            name = self._name if self._form.saved is not None else f"the new {self.kind}"
            answer = ask_of_unsaved(self.frame, self.look, self.session, name)
            if answer == "drop":
                self.revert()
                return True
            if answer != "save" or not self.save():
                return False
        return True

    def new(self) -> None:
        """Takes a new record in hand."""
        if self.settle():
            self._take_new(self._form.new)

    def same_again(self) -> None:
        """Takes a new one like the one in hand."""
        if self.settle():
            self._take_new(self._form.same_again)

    def save(self) -> bool:
        """Saves what is typed; False if something stands in the way, which is then said."""
        try:
            if not may_save(self.frame, self.look, self.session, self._form.changed_elsewhere, f"This {self.kind}"):
                return False
            errors = self._form.save()
        except RefusedError as error:
            self.row.refuse(str(error))
            return False
        if errors:
            self.editor.show_errors(errors)
            self.row.refuse(self._not_saved(errors))
            return False
        self._reload()
        self._shown_anew()
        self.session.say(f"{self._saved_words()} {MEANWHILE}" if self._form.is_dirty else self._saved_words())
        self.session.records_changed(self)
        return True

    def revert(self) -> None:
        """Puts back what is saved."""
        if self.session.waiting:
            return
        self._form.revert()
        self._shown_anew()

    def delete(self) -> None:
        """Deletes what is selected, or what is in hand; then the next in the list is in hand."""
        uids = self._to_delete()
        if not uids or not self.settle():
            return
        shown = self.find.table.shown
        place = min((shown.index(uid) for uid in uids if uid in shown), default=0)
        try:
            done = self._delete(uids)
        except RefusedError as error:
            self.row.refuse(str(error))
            return
        self._reload()
        left = self.find.table.shown
        if self._form.is_dirty:  # typed while it waited: that stays, as a new one
            self._changed()
        elif left:
            self._show(left[min(place, len(left) - 1)])
            self.find.table.tree.focus_set()  # on the button, another Return would delete the next one
        else:
            self._take_new(self._form.new)
        self.session.say(done)
        self.session.records_changed(self)

    def _to_delete(self) -> Sequence[str]:
        return [self._form.uid] if self._form.uid else []

    def _not_saved(self, errors: Mapping[str, str]) -> str:
        return "Not saved yet: see the marked fields." if len(errors) > 1 else "Not saved yet: see the marked field."

    def _place(self, view: ttk.Frame, column: int) -> None:
        """A part of the page, which fills its pane."""
        self.panes.put(view, column)

    def _arrange(self, shares: Sequence[int]) -> None:
        """The shares of the panes in the page's width where the user gave them no others, the row of buttons, and their keys."""
        first, second, _ = shares
        usual = (first / sum(shares), (first + second) / sum(shares))
        self._usual: Shares = usual
        self.share_panes()
        self.look.grid(self.panes, row=0, column=0, sticky="nsew", pady=(1, 1.5))
        self.frame.columnconfigure(0, weight=1)
        self.frame.rowconfigure(0, weight=1)
        commands = (
            ("&Delete", "Mod-d", self.delete),
            ("&New", "Mod-n", self.new),
            ("Same a&gain", "Mod-g", self.same_again),
            ("&Revert", "Mod-r", self.revert),
            ("&Save", "Mod-s", self.save),
        )
        self.row = ButtonRow(self.frame, self.look, self.session, commands)
        self.look.grid(self.row, row=1, column=0, sticky="ew", pady=(0, 1))
        self.find.table.entries = self.entries
        bind_keys(self.frame.winfo_toplevel(), "Mod-f", self._go_to_list, while_shown=self.frame)
        self.session.on_records(self._records_changed)
        self.session.on_settings(self._settings_changed)

    def _show_possible(self) -> None:
        """Which buttons do something; and where nothing can be written, that what is typed can't be saved."""
        writable, dirty, saved = not self.session.why_not_writable, self._form.is_dirty, self._form.saved is not None
        self.row.take_back()
        if dirty and not writable:
            self.row.refuse(self.session.why_not_writable)
        self.row.show_possible(
            {
                "New": writable,
                "Same again": writable and saved,
                "Save": writable and dirty,
                "Revert": dirty,
                "Delete": writable and saved,
            }
        )

    def _select(self, uids: tuple[str, ...]) -> None:
        """The user chose another record in the list; with something typed they may want to stay."""
        if not uids or uids[0] == self._form.uid:
            return
        if self.settle():
            self._show(uids[0])
        else:
            self._mark()

    def _show(self, uid: str) -> None:
        if self._form.show(uid):
            self._shown_anew()
            if uid not in self.find.table.selected:  # it may be the first of several
                self.find.table.select([uid])

    def _mark(self) -> None:
        """The line of the record in hand is the one selected."""
        self.find.table.select([self._form.uid] if self._form.uid else [])

    def _take_new(self, make: Callable[[], None]) -> None:
        make()
        self._mark()
        self._shown_anew()
        self.editor.start()

    def _shown_anew(self) -> None:
        self.editor.show()
        self._changed()

    def _records_changed(self, by: object) -> None:
        """Others have written: what is typed here stays, what is only shown is shown anew."""
        if by is self:
            return
        self._reload()
        if self._form.changed_elsewhere():
            if self._form.is_dirty:
                self.session.say(
                    f"This {self.kind} was changed elsewhere in the meantime. What you typed is still here, not saved yet."
                )
            else:
                self._form.revert()
                self._mark()
                self._shown_anew()
                return
        self._changed()

    def _settings_changed(self) -> None:
        if notation() != self._notation:
            self._notation = notation()
            self._reload()
            if self._form.saved is not None and not self._form.is_dirty:
                self._form.revert()
            self.editor.show()
            self._units_changed()
            self._changed()
        if self.session.units is not self._units:
            self._units = self.session.units
            self._units_changed()

    @abstractmethod
    def _units_changed(self) -> None:
        """Lengths are shown in other units, or numbers with another decimal mark, from now on."""

    def share_panes(self) -> None:
        """The panes as the settings have them."""
        self.panes.share(self.session.settings.panes.get(self.panes_as or self.drafts_as, self._usual))

    def _keep_shares(self, shares: Shares) -> None:
        """The panes as the user dragged them, for the next window too."""
        settings = self.session.settings
        self.session.change_settings(replace(settings, panes={**settings.panes, self.panes_as or self.drafts_as: shares}))

    def _fold(self, section: str, is_open: bool) -> None:
        self.session.change_settings(self.session.settings.with_opened(section, is_open))
