"""Another logbook taken into the one that is open, from the window: the work runs beside it."""

import tkinter as tk
from collections.abc import Mapping
from pathlib import Path

from logbook.pages.session import Session
from logbook.tasks.merging import MergeAnswer, Point, Side, merge
from logbook.window.background import Report
from logbook.window.file_dialogs import ask_what_to_open
from logbook.window.look import Look
from logbook.window.merge_dialog import ask_whose
from logbook.window.message import say_foreseen
from logbook.window.progress import run_with_progress
from logbook.window.save_copy import KINDS


def merge_logbook(root: tk.Tk, look: Look, session: Session) -> None:
    """Asks for the other logbook, merges it, and asks whose word goes where both have changed the same."""
    chosen = ask_what_to_open(parent=root, title="Merge another logbook into this one", filetypes=KINDS)
    if chosen:
        _merge(root, look, session, Path(chosen), {})


def _merge(root: tk.Tk, look: Look, session: Session, other: Path, decided: Mapping[Point, Side]) -> None:
    def work(report: Report) -> MergeAnswer:
        with session.book.again() as book:
            return merge(book, other, decided)

    def done(answer: MergeAnswer) -> None:
        if any(question.point not in decided for question in answer.questions):
            more = ask_whose(root, look, other.name, answer.questions)
            if more is not None:
                _merge(root, look, session, other, {**decided, **more})
            return
        session.notice_others()
        session.say(_said(other, answer))

    run_with_progress(root, look, f"Merging {other.name} …", work, done, lambda error: say_foreseen(root, look, error))


def _said(other: Path, answer: MergeAnswer) -> str:
    if not answer.written:
        return f"{other.name} has nothing that is not here already."
    what = f"{answer.added} added, {answer.changed} changed, {answer.deleted} deleted"
    return f"Merged {other.name}: {what}. Edit → Undo takes it back."
