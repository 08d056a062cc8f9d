"""Fields with a drop-down list: one to choose from fixed words, one that suggests what was written before."""

import tkinter as tk
import unicodedata
from collections.abc import Callable, Iterable, Sequence
from tkinter import ttk

from logbook.window.field import LabelledField
from logbook.window.keys import CONTROL
from logbook.window.look import Look

SUGGESTIONS_NAMED = 3
ALT, WINDOWS_ALT = 0x8, 0x20000


class ChoiceField(LabelledField):
    """One of ``choices``; Down opens the list, and a letter goes to the next choice that begins with it."""

    def __init__(
        self, parent: tk.Misc, look: Look, text: str, choices: Sequence[str], *, width: int = 12, label_width: int = 0
    ) -> None:
        super().__init__(parent, look, text, label_width)
        self.choices = tuple(choices)
        box = ttk.Combobox(self, textvariable=self.variable, values=self.choices, state="readonly", width=width)
        box.configure(font="TkTextFont")
        box.bind("<Key>", self._go_to_letter)
        box.bind("<<ComboboxSelected>>", lambda _: box.selection_clear())
        self.arrange(box, grow=False)
        self.text = self.choices[0]

    def _go_to_letter(self, event: "tk.Event[tk.Misc]") -> None:
        alt = WINDOWS_ALT if self.tk.call("tk", "windowingsystem") == "win32" else ALT | WINDOWS_ALT
        if int(event.state) & (CONTROL | alt):
            return  # it leads to another field
        letter = folded(event.char) if event.char.isalnum() else ""
        here = self.choices.index(self.text) if self.text in self.choices else -1
        after = self.choices[here + 1 :] + self.choices[: here + 1]
        for choice in after if letter else ():
            if folded(choice).startswith(letter):
                self.text = choice
                return


class SuggestionField(LabelledField):
    """A line of text that knows what might be meant; ``suggest`` gives all that was written before, most likely first.

    While typing, the best few are named under the field and the typing goes on undisturbed; Down opens the list of
    those that contain what is typed.
    """

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        text: str,
        suggest: Callable[[], Iterable[str]],
        *,
        width: int = 24,
        label_width: int = 0,
        grow: bool = False,
    ) -> None:
        super().__init__(parent, look, text, label_width)
        self._suggest = suggest
        self._hinting = False
        self._text_named_for = ""
        self.box = ttk.Combobox(self, textvariable=self.variable, width=width, font="TkTextFont")
        self.box.configure(postcommand=self._fill_list)
        self.box.bind("<KeyRelease>", lambda _: self._name_the_best())
        self.box.bind("<FocusOut>", lambda _: self._clear_hint())
        self.box.bind("<<ComboboxSelected>>", lambda _: self._clear_hint())
        self.arrange(self.box, grow)

    def matching(self) -> list[str]:
        """What contains every typed word, upper case and accents aside; those that begin with the text first."""
        typed = folded(self.text.strip())
        parts = typed.split()
        found = [word for word in dict.fromkeys(self._suggest()) if all(part in folded(word) for part in parts)]
        return sorted(found, key=lambda word: not folded(word).startswith(typed))

    def _fill_list(self) -> None:
        """Everything, if the text is already one of them: the list was opened to choose another."""
        found, everything = self.matching(), list(dict.fromkeys(self._suggest()))
        self.box.configure(values=everything if not found or self.text in everything else found)

    def _name_the_best(self) -> None:
        if self.text == self._text_named_for:
            return
        self._text_named_for = self.text
        found = [word for word in self.matching() if word != self.text] if self.text.strip() else []
        if not found:
            self._clear_hint()
            return
        more = " …" if len(found) > SUGGESTIONS_NAMED else ""
        self.show_message("↓ " + " · ".join(found[:SUGGESTIONS_NAMED]) + more, "hint")
        self._hinting = True

    def _clear_hint(self) -> None:
        if self._hinting:
            self.show_message(None)
        self._hinting = False


def folded(text: str) -> str:
    """Lower case and without accents, for comparing what was typed."""
    return "".join(c for c in unicodedata.normalize("NFKD", text.casefold()) if not unicodedata.combining(c))
