"""The form of a record: fields from top to bottom, the seldom needed ones in sections that fold."""

import tkinter as tk
from abc import abstractmethod
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial
from tkinter import ttk
from typing import NamedTuple, Protocol

from logbook.window.card import Card
from logbook.window.ellipsis import cut, lines_of
from logbook.window.field import LabelledField
from logbook.window.folding import Folding
from logbook.window.followed_fields import FollowedFields
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence

NOT_SAVED = " · not saved"
"""How a form's title ends while something typed is not saved."""
BESIDE, LEAST_BESIDE = 25, 10
"""Per cent of the width that the words beside the title get in any case, and letters of them that are worth saying."""
TITLE_LINES = 2
"""As high as a title may be: what is below it is what is worked in."""
INDENT = 2
"""Units by which what is folded stands in."""


class Item(Protocol):
    """Something of the form; ``key`` is the name of its text."""

    @property
    def key(self) -> str:
        """The name."""


class SideBySide(NamedTuple):
    """Things of the form that stand side by side where there is room."""

    items: Sequence[Item]

    @property
    def key(self) -> str:
        """That of the first."""
        return self.items[0].key


class Section(NamedTuple):
    """Fields that fold away under a title; ``name`` is what the settings remember it by."""

    name: str
    title: str
    items: Sequence[Item]


class Texts(Protocol):
    """The form without its widgets."""

    @property
    def texts(self) -> Mapping[str, str]:
        """What is typed."""


class FormCard(Card):
    """Shows the texts of ``form`` and types into it. ``on_change`` is called after every change of a text, ``on_fold`` with
    the name of a section the user opens or closes. What is folded away is made when it is first opened.

    A form of a kind makes its fields and says what they mean.
    """

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        form: Texts,
        items: Sequence[Item | Section],
        opened: Iterable[str],
        on_change: Callable[[], object],
        on_fold: Callable[[str, bool], object],
    ) -> None:
        super().__init__(parent, look, fills=True)
        self.look, self._form, self._items = look, form, items
        self._on_change, self._on_fold = on_change, on_fold
        self._opened = set(opened)
        self._followed = FollowedFields(lambda key: self._typed(key, self.fields[key].text), self._leave)
        self.fields = self._followed.fields
        self.sections: dict[str, Folding] = {}
        self.rowconfigure(1, weight=1)
        self._name = ""
        self._title = Sentence(self, style="Title.TLabel")
        self._title.grid(row=0, column=0, sticky="ew")
        self._beside = Sentence(self, style="Muted.TLabel")
        self._beside.configure(anchor="e", justify="right")
        self._beside.grid(row=0, column=1, sticky="ew")
        self.bind("<Configure>", lambda _: self._share_title(), add="+")
        self._is_typing = False
        self._scrolled = Scrolled(self, look, 10)
        look.grid(self._scrolled, row=1, column=0, columnspan=2, sticky="nsew", pady=(1, 0))
        self._build(self._scrolled.inside, items)
        self.show()

    @abstractmethod
    def say(self) -> None:
        """Brings title, meanings and messages up to date."""

    @abstractmethod
    def _make(self, place: ttk.Frame, item: Item) -> ttk.Widget:
        """The widget of one item."""

    @abstractmethod
    def _show_texts(self) -> None:
        """Puts the form's texts into all widgets there are."""

    @abstractmethod
    def _type_in(self, key: str, text: str) -> None:
        """Types a text that has changed into the form."""

    def show(self) -> None:
        """Shows the record in hand as the form has it, from the top, with nothing at fault yet."""
        self._followed.begin()
        self._show_texts()
        self._scrolled.canvas.yview_moveto(0)
        self.say()

    def show_errors(self, errors: Mapping[str, str]) -> None:
        """Says what stands in the way of saving beside each field, and goes to the first."""
        self._followed.lack(errors)
        for section in (item for item in self._items if isinstance(item, Section)):
            if any(key in errors for key in keys_of(section.items)):
                self._open(section)
        self.say()
        first = next((key for key in keys_of(self._items) if key in errors), None)
        if first is not None:
            self._go_to(first)

    def say_title(self, title: str, beside: str = "") -> None:
        """The title, and at its right ``beside``, or that something is not saved: so nothing moves at the first key."""
        self._name, unsaved, _ = title.partition(NOT_SAVED)
        self._beside.configure(text="not saved" if unsaved else beside)
        self._share_title()

    def _share_title(self) -> None:
        """The words beside the title in one line where there is room, else in two in what the title leaves; where that is too
        little they give way. A long title ends in an ellipsis: the form has all of it.
        """
        wide = self.winfo_width() - self.look.pixels(12)
        text = str(self._beside.cget("text"))
        needed = self.look.base.measure(text) + self.look.pixels(2) if text else 0
        left = wide - self.look.title.measure(self._name)
        there = left >= min(needed, LEAST_BESIDE * self.look.letter) and TITLE_LINES * left > needed
        beside = min(needed, max(left, self.winfo_width() * BESIDE // 100)) if there else 0
        self.columnconfigure(0, weight=1)
        self.columnconfigure(1, minsize=beside)
        self._beside.grid() if there else self._beside.grid_remove()
        title = cut(self._name, TITLE_LINES, lambda words: self._lines(words, wide - beside)) if wide > beside else self._name
        self._title.configure(text=title)

    def _lines(self, words: str, wide: int) -> int:
        return lines_of(words, wide, self.look.title.measure)

    def fault(self, key: str, error: str | None) -> str:
        """What is to be said to be wrong with a field: what stands in the way of saving, or once it was left its ``error``."""
        return self._followed.fault(key, error)

    def may_wait(self, key: str) -> bool:
        """Whether what is wrong with a field came about by typing in another: nothing moves until that is left."""
        return self._is_typing and not self._followed.lacks(key)

    def was_left(self, key: str) -> bool:
        """Whether the keyboard has left the field since something was typed in it."""
        return self._followed.was_left(key)

    def start(self) -> None:
        """Puts the keyboard into the first field."""
        self._go_to(next(iter(self.fields)))

    def _go_to(self, key: str) -> None:
        self.fields[key].input.focus_set()

    def _build(self, place: ttk.Frame, items: Iterable[Item | Section], indent: float = 0) -> None:
        place.columnconfigure(0, weight=1)
        for row, item in enumerate(items):
            widget = self._build_section(place, item) if isinstance(item, Section) else self._make(place, item)
            self.look.grid(widget, row=row, column=0, sticky="ew", padx=(indent, 0), pady=(0, 0.5))

    def _build_section(self, place: ttk.Frame, section: Section) -> Folding:
        is_open = section.name in self._opened
        folding = Folding(place, section.title, is_open, partial(self._folded, section))
        self.sections[section.name] = folding
        if is_open:
            self._build(folding.inside, section.items, INDENT)
        return folding

    def _folded(self, section: Section, is_open: bool) -> None:
        if is_open:
            self._open(section)
            self.say()
        self._on_fold(section.name, is_open)

    def _open(self, section: Section) -> None:
        """Opens a section, making its fields if they were never shown."""
        folding = self.sections[section.name]
        if not folding.inside.winfo_children():
            self._build(folding.inside, section.items, INDENT)
            self._show_texts()
        folding.show(True)

    def _follow(self, key: str, field: LabelledField) -> LabelledField:
        """Keeps a field that was made, and types what is typed in it into the form."""
        return self._followed.follow(key, field)

    def _typed(self, key: str, text: str) -> None:
        if text == self._form.texts[key]:
            return
        self._followed.touched(key)
        self._is_typing = True
        try:
            self._type_in(key, text)
            self.say()
            self._on_change()
        finally:
            self._is_typing = False

    def _leave(self, key: str) -> None:
        """What can't be read is at fault only once the field was left."""
        self.say()


def keys_of(items: Iterable[Item | Section]) -> Iterable[str]:
    """The names of the texts in reading order."""
    for item in items:
        if isinstance(item, Section | SideBySide):
            yield from keys_of(item.items)
        else:
            yield item.key
