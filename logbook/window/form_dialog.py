"""A form in a window of its own: what is typed goes to its presenter, what is wrong is said once a field was left."""

import tkinter as tk
from collections.abc import Callable, Mapping
from typing import Protocol

from logbook.errors import RefusedError
from logbook.pages.session import Session
from logbook.window.field import LabelledField
from logbook.window.followed_fields import FollowedFields
from logbook.window.long_dialog import LongDialog
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.unsaved import ask_of_unsaved


class Form(Protocol):
    """The form without its widgets."""

    @property
    def texts(self) -> Mapping[str, str]:
        """What is typed."""

    @property
    def is_dirty(self) -> bool:
        """Whether something is typed that is not saved."""

    def type_in(self, key: str, text: str) -> None:
        """Takes the text of one field."""

    def errors(self) -> Mapping[str, str]:
        """A sentence for each text that stands in the way of saving."""

    def save(self) -> Mapping[str, str]:
        """Saves; what stands in the way comes back. Raises RefusedError."""


class FormDialog(LongDialog):
    """A form of a kind ``_add``s its fields in reading order, then calls ``_end_form``; ``give_up`` is what Escape does."""

    def __init__(
        self, parent: tk.Misc, look: Look, title: str, session: Session, form: Form, letters: int, give_up: Callable[[], object]
    ) -> None:
        super().__init__(parent, look, title, give_up, letters, lambda: session.waiting)
        self._session, self._texts = session, form
        self._followed = FollowedFields(self._typed, self._left)
        self.fields = self._followed.fields
        self.refusal = Sentence(self.inside, " ", "Error.TLabel")
        look.grid(self.refusal, row=1, column=0, sticky="ew", pady=(1, 0))

    def _put_in_order(self, key: str) -> None:
        """A field was left: its text as it is to stand there."""

    def _show(self) -> None:
        """Shows the texts, and what is said of them."""
        self._followed.show(self._texts.texts)
        errors = self._texts.errors()
        for key, field in self.fields.items():
            error = self._followed.fault(key, errors.get(key))
            field.show_message(error or self._hint(key) or None, "error" if error else "hint")

    def _hint(self, key: str) -> str:
        """What is said under a field with nothing wrong."""
        return ""

    def _add(self, key: str, field: LabelledField) -> LabelledField:
        return self._followed.follow(key, field)

    def _typed(self, key: str) -> None:
        if self.fields[key].text != self._texts.texts[key]:
            self._followed.touched(key)
            self._texts.type_in(key, self.fields[key].text)
            self._show()

    def _left(self, key: str) -> None:
        self._put_in_order(key)
        self._show()

    def _end_form(self, save: Callable[[], object]) -> None:
        """The last button, which saves."""
        self.save_button = self.add_button("&Save", save, accent=True)
        self.bind("<Control-s>", lambda _: save())

    def _saved(self) -> bool:
        """Saves; False if something stands in the way, which is then said."""
        errors: Mapping[str, str] = {}

        def save() -> None:
            nonlocal errors
            errors = self._texts.save()

        if not self._try(save):
            return False
        if errors:
            self._followed.lack(errors)
            self._show()
            self.fields[next(key for key in self.fields if key in errors)].input.focus_set()
        return not errors

    def _settle(self, name: str, save: Callable[[], bool]) -> bool:
        """Asks what to do with what is typed and not saved; False: stay with it."""
        if self._session.waiting:
            return False  # what is being saved stays in hand until it is
        while self._texts.is_dirty:  # again, if something was typed while it was being saved
            answer = ask_of_unsaved(self, self.look, self._session, name)
            if answer == "drop":
                return True
            if answer != "save" or not save():
                return False
        return True

    def _try(self, action: Callable[[], object]) -> bool:
        """Whether it went; a refusal is said."""
        self.refusal.configure(text=" ")
        try:
            action()
        except RefusedError as error:
            self.refusal.configure(text=f"✕ {error}")
            return False
        return True
