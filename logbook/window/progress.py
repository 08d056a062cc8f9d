"""The window that shows how far a long work has come, with a way to cancel it."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk
from typing import Any, TypeVar

from logbook.craft.words.numbers import grouped
from logbook.window.background import Background, Cancelled, Report
from logbook.window.dialog import Dialog
from logbook.window.look import Look

Result = TypeVar("Result")
WIDTH = 40
"""Letters."""


def run_with_progress(
    parent: tk.Misc,
    look: Look,
    sentence: str,
    work: Callable[[Report], Result],
    done: Callable[[Result], object],
    failed: Callable[[Exception], object],
) -> None:
    """Starts ``work`` (see ``Background``) and returns at once.

    The dialog is closed before ``done`` or ``failed`` is called; cancelling calls neither.
    """
    dialog = _ProgressDialog(parent, look, sentence)

    def finish(result: Result) -> None:
        dialog.close()
        done(result)

    def give_up(error: Exception) -> None:
        dialog.close()
        if not isinstance(error, Cancelled):
            failed(error)

    dialog.open(dialog.cancel)
    dialog.follow(Background(parent, work, finish, give_up, dialog.show))


class _ProgressDialog(Dialog):
    """A bar, a count, and a button to cancel, which may be pressed before the work has begun."""

    def __init__(self, parent: tk.Misc, look: Look, sentence: str) -> None:
        super().__init__(parent, look, parent.winfo_toplevel().title(), self._stop)
        self._task: Background[Any] | None = None
        self._stopping = False
        ttk.Label(self.inside, text=sentence).grid(row=0, column=0, sticky="w")
        self._bar = ttk.Progressbar(self.inside, mode="indeterminate", length=WIDTH * look.letter)
        look.grid(self._bar, row=1, column=0, sticky="ew", pady=2)
        self._count = ttk.Label(self.inside, text=" ", style="Muted.TLabel")
        self._count.grid(row=2, column=0, sticky="w")
        self.cancel = self.add_button("&Cancel", self._stop)

    def follow(self, task: Background[Any]) -> None:
        """From now on ``task`` is what is cancelled."""
        self._task = task
        if self._stopping:
            task.cancel()

    def show(self, so_far: int, total: int) -> None:
        """How far the work has come; ``total`` is 0 while that is unknown."""
        if total:
            self._bar.configure(mode="determinate", maximum=total, value=so_far)
        else:
            self._bar.step(5)
        if not self._stopping:
            self._count.configure(text=f"{grouped(so_far)} of {grouped(total)}" if total else grouped(so_far))

    def _stop(self) -> None:
        self._stopping = True
        if self._task is not None:
            self._task.cancel()
        self.cancel.state(["disabled"])
        self._count.configure(text="Stopping …")
