"""Remarks on sizes, each under the sizes it is said of."""

import tkinter as tk
from collections.abc import Sequence
from tkinter import ttk

from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.styles import styled

Groups = Sequence[tuple[str, Sequence[str]]]
"""Names of sizes, "" for all of them, and what is said of them."""
ALL = "All sizes"


class NotesView(ttk.Frame):
    """Takes no room while there are none."""

    def __init__(self, parent: tk.Misc, look: Look) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"), height=1)
        self.look = look
        self._groups: Groups = ()
        self.columnconfigure(0, weight=1)

    def show(self, groups: Groups) -> None:
        """Shows these; where there is but one group, of all sizes, without a heading."""
        if groups == self._groups:
            return
        self._groups = groups
        for widget in self.winfo_children():
            widget.destroy()
        for sizes, sentences in groups:
            if sizes or len(groups) > 1:
                self.look.grid(Sentence(self, sizes or ALL, "Section.TLabel"), column=0, sticky="ew", pady=(1, 0))
            self.look.grid(Sentence(self, "\n".join(sentences), "Muted.TLabel"), column=0, sticky="ew")
