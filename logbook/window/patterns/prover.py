"""Proves written rows beside the window: long ones, and what would mend them, when the typing pauses."""

import tkinter as tk
from collections.abc import Callable
from functools import partial

from logbook.craft.rows.report import Proof
from logbook.pages.patterns.pattern_form import PatternForm
from logbook.pages.patterns.proving import ToProve
from logbook.window.background import Background

PAUSE_MS = 400
LONG_PAUSE_MS = 100


class Prover:
    """``follow`` after every change of the form; ``proven`` is called when it has taken a proof."""

    def __init__(self, place: tk.Misc, form: PatternForm, proven: Callable[[], object]) -> None:
        self._place, self._form, self._on_proven = place, form, proven
        self._pause = ""
        self._under_way = False
        place.bind("<Destroy>", lambda _: self._stop_pause(), add="+")

    def follow(self) -> None:
        """Sees to what is still to be proven of the rows as typed."""
        self._stop_pause()
        if self._form.to_prove is not None:
            self._pause = self._place.after(LONG_PAUSE_MS if self._form.proving else PAUSE_MS, self._prove)

    def _stop_pause(self) -> None:
        if self._pause:
            self._place.after_cancel(self._pause)
        self._pause = ""

    def _prove(self) -> None:
        self._pause = ""
        wanted = self._form.to_prove
        if wanted is not None and not self._under_way:
            self._under_way = True
            Background(self._place, lambda _: wanted.proof(), partial(self._proven, wanted), self._not_proven, lambda *_: None)

    def _proven(self, wanted: ToProve, proof: Proof) -> None:
        self._under_way = False
        self._form.proven(wanted, proof)
        self._on_proven()

    def _not_proven(self, error: Exception) -> None:
        self._under_way = False
        raise error
