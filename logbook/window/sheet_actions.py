"""Sheets in and out from the window: the work runs beside it, with progress and a way to cancel."""

import tkinter as tk
from pathlib import Path
from tkinter import filedialog

from logbook.pages.session import Session
from logbook.tasks.exporting import ExportResult, export
from logbook.tasks.importing import ImportPlan, ImportResult, carry_out, plan_import
from logbook.window.background import Report
from logbook.window.import_dialog import show_plan
from logbook.window.look import Look
from logbook.window.message import say_foreseen, tell
from logbook.window.progress import run_with_progress

SHEETS = [("Sheets", "*.xlsx *.csv"), ("All files", "*")]


def import_sheet(root: tk.Tk, look: Look, session: Session) -> None:
    """Asks for a sheet, shows what it would do, and takes it in if the user wants that."""
    chosen = filedialog.askopenfilename(parent=root, title="Import a sheet of swatches", filetypes=SHEETS)
    if not chosen:
        return

    def read(report: Report) -> ImportPlan:
        with session.book.again() as book:
            return plan_import(book, Path(chosen))

    def decide(plan: ImportPlan) -> None:
        wanted = show_plan(root, look, plan)
        if wanted:
            _write(root, look, session, plan)

    run_with_progress(root, look, f"Reading {Path(chosen).name} …", read, decide, lambda error: say_foreseen(root, look, error))


def _write(root: tk.Tk, look: Look, session: Session, plan: ImportPlan) -> None:
    def write(report: Report) -> ImportResult:
        with session.book.again() as book:
            return carry_out(book, plan, good_rows_only=True, progress=report)

    def written(result: ImportResult) -> None:
        session.notice_others()
        session.say(f"Imported {plan.name}: {result.added} swatches added, {result.changed} changed. Edit → Undo takes it back.")

    run_with_progress(root, look, f"Taking in {plan.name} …", write, written, lambda error: say_foreseen(root, look, error))


def export_sheet(root: tk.Tk, look: Look, session: Session) -> None:
    """Asks where to, and writes every swatch there."""
    chosen = filedialog.asksaveasfilename(
        parent=root, title="Export to a sheet", defaultextension=".xlsx", filetypes=[("Workbook", "*.xlsx"), ("CSV", "*.csv")]
    )
    if not chosen:
        return

    def write(report: Report) -> ExportResult:
        with session.book.again() as book:
            return export(book, Path(chosen), report)

    def written(result: ExportResult) -> None:
        session.say(f"{result.rows} swatches written to {result.target}.")
        for note in result.notes:
            tell(root, look, note)

    run_with_progress(root, look, f"Writing {Path(chosen).name} …", write, written, lambda error: say_foreseen(root, look, error))
