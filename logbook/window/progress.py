"""The window that shows how far a long work has come, with a way to cancel it."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk
from typing import TypeVar

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

    def finish(result: Result) -> None:
        dialog.close()
        done(result)

    def give_up(error: Exception) -> None:
        dialog.close()
        if not isinstance(error, Cancelled):
            failed(error)

    task: Background[Result] | None = None

    def stop() -> None:
        if task is not None:
            task.cancel()
        cancel.state(["disabled"])
        count.configure(text="Stopping …")

    dialog = Dialog(parent, look, parent.winfo_toplevel().title(), stop)
    ttk.Label(dialog.inside, text=sentence).grid(row=0, column=0, sticky="w")
    bar = ttk.Progressbar(dialog.inside, mode="indeterminate", length=WIDTH * look.base.measure("0"))
    look.grid(bar, row=1, column=0, sticky="ew", pady=2)
    count = ttk.Label(dialog.inside, text=" ", style="Muted.TLabel")
    count.grid(row=2, column=0, sticky="w")
    cancel = dialog.add_button("&Cancel", stop)

    def show(so_far: int, total: int) -> None:
        if total:
            bar.configure(mode="determinate", maximum=total, value=so_far)
        else:
            bar.step(5)
        if not cancel.instate(["disabled"]):
            count.configure(text=f"{so_far:,} of {total:,}" if total else f"{so_far:,}")

    dialog.open(cancel)
    task = Background(parent, work, finish, give_up, show)
    if cancel.instate(["disabled"]):
        task.cancel()
