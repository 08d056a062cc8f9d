"""The page of pieces: what is planned, the one in hand, what follows from it."""

import tkinter as tk
from collections.abc import Callable
from functools import partial
from tkinter import ttk

from logbook.errors import RefusedError
from logbook.pages.pieces.piece_card import PieceCard, PieceMaker
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.pieces.piece_list import PieceList
from logbook.pages.session import Session
from logbook.tasks.pieces import delete_piece
from logbook.window.changed_elsewhere import may_save
from logbook.window.editing import press_or_say_why
from logbook.window.keys import bind_keys, split_mnemonic
from logbook.window.look import Look
from logbook.window.pieces.file_actions import FileActions
from logbook.window.pieces.find_view import FindView
from logbook.window.pieces.follow_view import FollowView
from logbook.window.pieces.form_view import FormView
from logbook.window.pieces.sizes_side import Around, SizesSide
from logbook.window.sentence import Sentence
from logbook.window.unsaved import ask_of_unsaved

SHARES = (26, 35, 39)
"""Of the page's width, from left to right."""


class PiecesPage:
    """A page of the window."""

    def __init__(self, parent: tk.Misc, look: Look, session: Session) -> None:
        self.frame = ttk.Frame(parent)
        self.look, self.session = look, session
        self.pieces = PieceList(session)
        self.form = PieceForm(session)
        self._maker = PieceMaker(session)
        self._units = session.units
        self.card = PieceCard()
        self.left = ttk.Frame(self.frame, width=1, height=1)
        self.find = FindView(self.left, look, self.pieces, self._select, self._go_to_form, self.delete)
        opened = session.settings.opened
        self.editor = FormView(self.frame, look, self.form, lambda: session.units, opened, self._changed, self._fold)
        self.files = FileActions(self.frame, look, session, self.form, lambda: self.card.answer)
        self.follow = FollowView(self.frame, look, self.files.shape)
        self.sizes = self._sizes_side()
        self._arrange()
        self._bind_keys()
        session.on_records(self._records_changed)
        session.on_settings(self._settings_changed)
        if self.pieces.lines:
            self._show(self.pieces.lines[0].uid)
        else:
            self._changed()

    def first_focus(self) -> None:
        """Into the find field; with nothing planned yet into the form."""
        if self.pieces.lines:
            self.find.start()
        else:
            self.editor.start()

    def record_in_hand(self) -> tuple[str, str] | None:
        """The name and uid of the saved piece in hand."""
        saved = self.form.saved
        return (saved.name, saved.uid) if saved else None

    def settle(self) -> bool:
        """Asks what to do with what is typed and not saved; False: stay with it."""
        if self.session.waiting:
            return False  # what is being saved stays in hand until it is
        if not self.form.is_dirty:
            return True
        name = self.form.saved.name if self.form.saved else "the new piece"
        answer = ask_of_unsaved(self.frame, self.look, self.session, name)
        if answer == "drop":
            self.revert()
        return answer == "drop" or (answer == "save" and self.save())

    def new(self) -> None:
        """Takes a new piece in hand."""
        if self.settle():
            self._take_new(self.form.new)

    def same_again(self) -> None:
        """Takes a copy of this piece in hand, to change and save."""
        if self.settle():
            self._take_new(self.form.same_again)

    def save(self) -> bool:
        """Saves what is typed; False if something stands in the way, which is then said."""
        try:
            if not may_save(self.frame, self.look, self.session, self.form.changed_elsewhere, "This piece"):
                return False
            errors = self.form.save()
        except RefusedError as error:
            self._refuse(str(error))
            return False
        if errors:
            self.editor.show_errors(errors)
            if "sizes" in errors:
                self._refuse(f"Not saved yet: {errors['sizes']}")
                return False
            self._refuse("Not saved yet: see the marked fields." if len(errors) > 1 else "Not saved yet: see the marked field.")
            return False
        self._reload()
        self._shown_anew()
        self.session.say(f"“{self.form.texts['name']}” is saved.")
        self.session.records_changed(self)
        return True

    def revert(self) -> None:
        """Puts back what is saved."""
        if self.session.waiting:
            return
        self.form.revert()
        self._shown_anew()

    def delete(self) -> None:
        """Deletes the piece in hand; then the next in the list is in hand."""
        gone = self.form.saved
        if gone is None or not self.settle():
            return
        shown = self.find.table.shown
        place = shown.index(gone.uid) if gone.uid in shown else 0
        try:
            self.session.write(partial(delete_piece, self.session.book, gone))
        except RefusedError as error:
            self._refuse(str(error))
            return
        self._reload()
        left = self.find.table.shown
        if left:
            self._show(left[min(place, len(left) - 1)])
        else:
            self._take_new(self.form.new)
        self.session.say(f"“{gone.name}” is deleted. Undo brings it back.")
        self.session.records_changed(self)

    def _sizes_side(self) -> SizesSide:
        around = Around(
            save=self.save,
            answer=lambda: self.card.answer,
            words=lambda: self.find.find.text,
            typed=self._changed,
            shown_anew=self._shown_anew,
            reloaded=self._written_to,
            fold=self._fold,
        )
        side = SizesSide(
            self.frame, self.look, self.session, self.form, self._maker, self.files, around, self.follow.runs, self.left
        )
        self.find.find.variable.trace_add("write", lambda *_: side.look_up())
        return side

    def _written_to(self) -> None:
        """The views beside the form have written to the logbook: what is typed in it stays."""
        self._reload()
        if not self.form.is_dirty and self.form.changed_elsewhere():
            self.form.revert()
        self._changed()
        self.session.records_changed(self)

    def _arrange(self) -> None:
        self.find.grid(row=0, column=0, sticky="nsew")
        self.left.columnconfigure(0, weight=1)
        self.left.rowconfigure(0, weight=1)
        self.left.grid_propagate(False)
        for column, (view, share) in enumerate(zip((self.left, self.editor, self.follow), SHARES, strict=True)):
            self.look.grid(view, row=0, column=column, sticky="nsew", padx=(0 if column == 0 else 2, 0), pady=(1, 1.5))
            self.frame.columnconfigure(column, weight=share, uniform="columns")
        self.frame.rowconfigure(0, weight=1)
        bar = ttk.Frame(self.frame)
        self.look.grid(bar, row=1, column=0, columnspan=3, sticky="ew", pady=(0, 1))
        bar.columnconfigure(1, weight=1)
        self.menu_button = self.files.menu_button(bar, "&Print", self.sizes.entries)
        self.menu_button.grid(row=0, column=0, sticky="w")
        self.refusal = Sentence(bar, " ", "Error.TLabel")
        self.look.grid(self.refusal, row=1, column=0, columnspan=7, sticky="ew", pady=(0.5, 0))
        self.refusal.grid_remove()  # under the buttons, which take all the width there is at the largest text size
        self.buttons: dict[str, ttk.Button] = {}
        for column, (text, (_, action)) in enumerate(self._commands().items(), 2):
            words, underline = split_mnemonic(text)
            style = "Accent.TButton" if words == "Save" else "TButton"
            self.buttons[words] = ttk.Button(bar, text=words, underline=underline, command=action, style=style)
            self.look.grid(self.buttons[words], row=0, column=column, padx=(2, 0))

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
        writable, dirty, saved = not self.session.why_not_writable, self.form.is_dirty, self.form.saved is not None
        if dirty and not writable:
            self._refuse(self.session.why_not_writable)
        for name, possible in {
            "New": writable,
            "Same again": writable and saved,
            "Save": writable and dirty,
            "Revert": dirty,
            "Delete": writable and saved,
        }.items():
            self.buttons[name].state(["!disabled" if possible else "disabled"])

    def _select(self, uids: tuple[str, ...]) -> None:
        """The user chose another piece in the list; with something typed they may want to stay."""
        if not uids or uids[0] == self.form.uid:
            return
        if self.settle():
            self._show(uids[0])
        else:
            self.find.table.select([self.form.uid])

    def _show(self, uid: str) -> None:
        if self.form.show(uid):
            self._shown_anew()
            self.find.table.select([uid])

    def _take_new(self, make: Callable[[], None]) -> None:
        make()
        self.find.table.select([])
        self._shown_anew()
        self.editor.start()

    def _shown_anew(self) -> None:
        self.editor.show()
        self._changed()
        self.follow.to_top()

    def _changed(self) -> None:
        """Brings what follows up to date with what is typed."""
        self.refusal.grid_remove()
        read, sizes = self.form.read(), self.form.sizes()
        self.sizes.show(read, sizes)
        in_hand = self.sizes.plan_in_hand(read, sizes)
        swatch, edge = self.form.swatch_uid(), self.form.swatch_uid("edge swatch")
        self.card = self._maker.card(in_hand, swatch, edge, self.sizes.view.size_name)
        self.follow.show(self.card)
        self.editor.say(self.card.body_width)
        self._show_possible()

    def _reload(self) -> None:
        self.pieces.reload()
        self.form.refresh()
        self._maker.refresh()
        self.sizes.reload()
        self.find.reload()
        self.find.table.select([self.form.uid] if self.form.uid else [])

    def _records_changed(self, by: object) -> None:
        """Others have written: what is typed here stays, what is only shown is shown anew."""
        if by is self:
            return
        self._reload()
        if self.form.changed_elsewhere():
            if self.form.is_dirty:
                self.session.say("This piece was changed elsewhere meanwhile. What is typed here is still there, not saved.")
            else:
                self.form.revert()
                self._reload()
                self.editor.show()
        self._changed()

    def _settings_changed(self) -> None:
        if self.session.units is not self._units:
            self._units = self.session.units
            self.form.units_changed()
            self._shown_anew()

    def _fold(self, section: str, is_open: bool) -> None:
        self.session.change_settings(self.session.settings.with_opened(section, is_open))

    def _refuse(self, sentence: str) -> None:
        self.refusal.configure(text=f"✕ {sentence}")
        self.refusal.grid()

    def _go_to_form(self) -> None:
        self.editor.start()
