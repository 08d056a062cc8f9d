"""The page of swatches: what there is, the one in hand, the chain that follows from it."""

import tkinter as tk
from collections.abc import Callable
from functools import partial
from tkinter import ttk
from typing import TYPE_CHECKING

from logbook.errors import RefusedError
from logbook.pages.session import Session
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.pages.swatches.swatch_list import SwatchList, filters_of
from logbook.tasks.browsing import Filters, tags_of
from logbook.tasks.logging_swatches import delete_swatches
from logbook.window.changed_elsewhere import may_save
from logbook.window.editing import press_or_say_why
from logbook.window.gauges.gauge_actions import GaugeActions, OnPage
from logbook.window.keys import bind_keys, split_mnemonic
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.swatches.find_view import FindActions, FindView
from logbook.window.swatches.form_view import FormView
from logbook.window.unsaved import ask_of_unsaved
from logbook.window.when_drawn import when_drawn

if TYPE_CHECKING:
    from logbook.window.swatches.chain_side import ChainSide
    from logbook.window.swatches.chain_view import ChainView

FILTERS = "swatches.filters"
SHARES = (30, 34, 36)
"""Of the page's width, from left to right."""


class SwatchesPage:
    """Finds, shows and logs swatches, and says what each makes of a width."""

    def __init__(self, parent: tk.Misc, look: Look, session: Session) -> None:
        self.frame = ttk.Frame(parent)
        self.look, self.session = look, session
        self.swatches = SwatchList(session)
        self.form = SwatchForm(session)
        if self.swatches.newest is None or not self.form.show(self.swatches.newest):
            self.form.new()
        self._side: ChainSide | None = None
        self._units = session.units
        opened = session.settings.opened
        actions = FindActions(self._select, self._go_to_width, self.delete, session.open_sample, partial(self._fold, FILTERS))
        self.find = FindView(self.frame, look, self.swatches, lambda: self.form.known, actions, FILTERS in opened)
        self.editor = FormView(self.frame, look, self.form, opened, self._changed, self._fold)
        on_page = OnPage(
            in_hand=lambda: self.side.known(),
            selected=lambda: self.find.table.selected,
            selected_tags=self._selected_tags,
            filters=self._filters,
            count=lambda: self.swatches.count,
            take=self.take,
        )
        self.gauges = GaugeActions(self.frame, look, session, on_page)
        self._arrange()
        self._bind_keys()
        session.on_records(self._records_changed)
        session.on_settings(self._settings_changed)
        self._mark()
        self._changed()
        when_drawn(self.find, lambda: self.side)

    @property
    def side(self) -> "ChainSide":
        """The chain, made when it is first wanted or when list and form are drawn: what it takes, they need not wait for."""
        if self._side is None:
            from logbook.window.swatches.chain_side import ChainSide

            self._side = ChainSide(self.frame, self.look, self.session, self.form, self.session.settings.opened, self._fold)
            self._place(self._side.chain, 2)
            self._side.chain.lift(self.editor)  # next after the form, where Tab goes on to
            self._side.show()
        return self._side

    @property
    def chain(self) -> "ChainView":
        """The chain itself."""
        return self.side.chain

    def first_focus(self) -> None:
        """Into the find field; with nothing logged yet into the form."""
        if self.swatches.count:
            self.find.start()
        else:
            self.editor.start()

    def record_in_hand(self) -> tuple[str, str] | None:
        """The tag and uid of the logged swatch in hand."""
        saved = self.form.saved
        return (saved.tag, saved.uid) if saved else None

    def settle(self) -> bool:
        """Asks what to do with what is typed and not saved; False: stay with it."""
        if self.session.waiting:
            return False  # what is being saved stays in hand until it is
        if not self.form.is_dirty:
            return True
        name = self.form.saved.tag if self.form.saved else "the new swatch"
        answer = ask_of_unsaved(self.frame, self.look, self.session, name)
        if answer == "drop":
            self.form.revert()
            self._shown_anew()
        return answer == "drop" or (answer == "save" and self.save())

    def new(self) -> None:
        """Takes a new swatch in hand."""
        if self.settle():
            self._take_new(self.form.new)

    def same_again(self) -> None:
        """Takes a new swatch like this one in hand."""
        if self.settle():
            self._take_new(self.form.same_again)

    def save(self) -> bool:
        """Saves what is typed; False if something stands in the way, which is then said."""
        try:
            if not may_save(self.frame, self.look, self.session, self.form.changed_elsewhere, self.form.name):
                return False
            errors = self.form.save()
        except RefusedError as error:
            self._refuse(str(error))
            return False
        if errors:
            self.editor.show_errors(errors)
            self._refuse("Not saved yet: see the marked fields." if len(errors) > 1 else "Not saved yet: see the marked field.")
            return False
        self._reload()
        self.find.reveal(self.form.uid)
        self._shown_anew()
        self.session.say(f"Swatch {self.form.texts['tag']} is saved.")
        self.session.records_changed(self)
        return True

    def revert(self) -> None:
        """Puts back what is saved."""
        if self.session.waiting:
            return
        self.form.revert()
        self._shown_anew()

    def delete(self) -> None:
        """Deletes the selected swatches, or the one in hand; then the next in the list is in hand."""
        uids = self.find.table.selected or ((self.form.uid,) if self.form.uid else ())
        if not uids or not self.settle():
            return
        shown = self.find.table.shown
        place = min((shown.index(uid) for uid in uids if uid in shown), default=0)
        try:
            self.session.write(lambda: delete_swatches(self.session.book, uids))
        except RefusedError as error:
            self._refuse(str(error))
            return
        self._reload()
        left = self.find.table.shown
        if left:
            self._show(left[min(place, len(left) - 1)])
        else:
            self._take_new(self.form.new)
        count = "1 swatch is" if len(uids) == 1 else f"{len(uids)} swatches are"
        self.session.say(f"{count} deleted. Undo brings back what was deleted.")
        self.session.records_changed(self)

    def _arrange(self) -> None:
        for column, share in enumerate(SHARES):
            self.frame.columnconfigure(column, weight=share, uniform="columns")
        self.frame.rowconfigure(0, weight=1)
        self._place(self.find, 0)
        self._place(self.editor, 1)
        self._build_buttons()

    def _place(self, view: ttk.Frame, column: int) -> None:
        self.look.grid(view, row=0, column=column, sticky="nsew", padx=(0 if column == 0 else 2, 0), pady=(1, 1.5))

    def _build_buttons(self) -> None:
        bar = ttk.Frame(self.frame)
        self.look.grid(bar, row=1, column=0, columnspan=3, sticky="ew", pady=(0, 1))
        bar.columnconfigure(1, weight=1)
        self.menu_button = self.gauges.menu_button(bar, "Com&pare")
        self.menu_button.grid(row=0, column=0, sticky="w")
        self.refusal = Sentence(bar, "", "Error.TLabel")
        self.buttons: dict[str, ttk.Button] = {}
        for column, (text, (_, action)) in enumerate(self._commands().items(), 2):
            words, underline = split_mnemonic(text)
            style = "Accent.TButton" if words == "Save" else "TButton"
            self.buttons[words] = ttk.Button(bar, text=words, underline=underline, command=action, style=style)
            self.look.grid(self.buttons[words], row=0, column=column, padx=(2, 0))
        # Under the buttons, which take all the width there is at the largest text size.
        self.look.grid(self.refusal, row=1, column=0, columnspan=bar.grid_size()[0], sticky="ew", pady=(0.5, 0))
        self.refusal.grid_remove()

    def _commands(self) -> dict[str, tuple[str, Callable[[], object]]]:
        """The words on each button with the letter of its Alt key, its keys, and what it does."""
        return {
            "&New": ("Mod-n", self.new),
            "Same a&gain": ("Mod-g", self.same_again),
            "&Save": ("Mod-s", self.save),
            "&Revert": ("Mod-r", self.revert),
            "&Delete": ("Mod-d", self.delete),
        }

    def _bind_keys(self) -> None:
        window = self.frame.winfo_toplevel()
        for text, (keys, _) in self._commands().items():
            button = self.buttons[split_mnemonic(text)[0]]
            bind_keys(window, keys, partial(press_or_say_why, button, self.session, self._refuse), while_shown=self.frame)
        bind_keys(window, "Mod-f", self.find.start, while_shown=self.frame)

    def _show_possible(self) -> None:
        """Buttons that would do nothing are off."""
        writable, dirty = not self.session.why_not_writable, self.form.is_dirty
        if dirty and not writable:
            self._refuse(self.session.why_not_writable)
        for name, possible in {
            "New": writable,
            "Same again": writable,
            "Save": writable and dirty,
            "Revert": dirty,
            "Delete": writable and self.form.saved is not None,
        }.items():
            self.buttons[name].state(["!disabled" if possible else "disabled"])

    def _select(self, uids: tuple[str, ...]) -> None:
        """The user chose another swatch in the list; with something typed they may want to stay."""
        if not uids or uids[0] == self.form.uid:
            return
        if self.settle():
            self._show(uids[0])
        else:
            self.find.table.select([self.form.uid])

    def _show(self, uid: str) -> None:
        if self.form.show(uid):
            self._shown_anew()
            if uid not in self.find.table.selected:  # it may be the first of several
                self.find.table.select([uid])

    def take(self, uid: str) -> None:
        """Takes another swatch in hand, unless what is typed is to stay."""
        if uid != self.form.uid and self.settle():
            self._show(uid)

    def _selected_tags(self) -> tuple[str, ...]:
        return tags_of(self.session.book, self.find.table.selected)

    def _filters(self) -> Filters:
        return filters_of(self.find.texts())[0]

    def _take_new(self, make: Callable[[], None]) -> None:
        make()
        self.find.table.select([])
        self._shown_anew()
        self.editor.start()

    def _shown_anew(self) -> None:
        self.editor.show()
        self._changed()

    def _refuse(self, sentence: str) -> None:
        self.refusal.configure(text=f"✕ {sentence}")
        self.refusal.grid()

    def _changed(self) -> None:
        """Brings what follows up to date with what is typed in the form."""
        self.refusal.grid_remove()
        self._show_possible()
        if self._side is not None:
            self._side.show()

    def _reload(self) -> None:
        self.swatches.reload()
        self.form.refresh()
        if self._side is not None:
            self._side.refresh()
        self.find.reload()
        self._mark()

    def _mark(self) -> None:
        """The line of the swatch in hand is the one selected."""
        self.find.table.select([self.form.uid] if self.form.uid else [])

    def _records_changed(self, by: object) -> None:
        """Others have written: what is typed here stays, what is only shown is shown anew."""
        if by is self:
            return
        changed = self.form.changed_elsewhere()
        if changed and self.form.is_dirty:
            self.session.say("This swatch was changed elsewhere meanwhile. What is typed here is still there, not saved.")
        elif changed:
            self.form.revert()
        self._reload()
        if changed and not self.form.is_dirty:
            self.editor.show()
        else:
            self.editor.say()
        self._changed()

    def _settings_changed(self) -> None:
        if self.session.units is not self._units:
            self._units = self.session.units
            self.form.refresh()
            if self._side is not None:
                self._side.chain.settings_changed()
            self.editor.say()
            self._changed()

    def _fold(self, section: str, is_open: bool) -> None:
        self.session.change_settings(self.session.settings.with_opened(section, is_open))

    def _go_to_width(self) -> None:
        self.chain.start()
