"""Sheets in and out from the window: the work runs beside it, with progress and a way to cancel."""

import tkinter as tk
from dataclasses import replace
from pathlib import Path

from logbook.craft.words.counting import counted
from logbook.errors import LogbookError
from logbook.pages.own_sheet_page import OwnSheetPage, remembering
from logbook.pages.session import Session
from logbook.tasks.exporting import ExportResult, export
from logbook.tasks.importing import ImportPlan, ImportResult, carry_out, plan_for, plan_import
from logbook.tasks.own_sheets import is_of_the_log, pasted_sheets, raw_sheets
from logbook.window.background import Report
from logbook.window.file_dialogs import ask_what_to_open, ask_where_to_save, named_today
from logbook.window.import_dialog import show_plan
from logbook.window.look import Look
from logbook.window.message import say_foreseen, tell
from logbook.window.own_sheet_dialog import ask_columns
from logbook.window.progress import run_with_progress

SHEETS_REMEMBERED = 30
SHEETS = [("Sheets", "*.xlsx *.csv *.txt *.tsv"), ("All files", "*")]


def import_sheet(root: tk.Tk, look: Look, session: Session) -> None:
    """Asks for a sheet and, where its words are the maker's own, what its columns are; shows what it would do, and takes it in
    if the user wants that."""
    chosen = ask_what_to_open(parent=root, title="Import a sheet of swatches", filetypes=SHEETS)
    if not chosen:
        return
    path = Path(chosen)

    def read(report: Report) -> ImportPlan | OwnSheetPage:
        if not is_of_the_log(path) and not session.book.is_at(path):
            return OwnSheetPage(path.name, raw_sheets(path, report), session.settings.sheets)
        with session.book.again() as book:
            return plan_import(book, path, progress=report)

    def decide(found: ImportPlan | OwnSheetPage) -> None:
        if isinstance(found, ImportPlan):
            _show_and_write(root, look, session, found)
        else:
            _ask(root, look, session, found)

    run_with_progress(root, look, f"Reading {path.name} …", read, decide, lambda error: say_foreseen(root, look, error))


def paste_rows(root: tk.Tk, look: Look, session: Session) -> None:
    """Takes in what was copied in a spreadsheet program, headings and all, as a sheet is taken in."""
    try:
        copied = root.clipboard_get()
    except tk.TclError:
        copied = ""
    if "\n" not in copied.strip():
        session.say("Copy rows in a spreadsheet first, with their headings above them.")
        return
    try:
        _ask(root, look, session, OwnSheetPage("what was copied", pasted_sheets(copied), session.settings.sheets))
    except LogbookError as error:
        say_foreseen(root, look, error)


def _ask(root: tk.Tk, look: Look, session: Session, page: OwnSheetPage) -> None:
    """What the columns are; what is chosen is remembered."""
    if ask_columns(root, look, page):
        kept = remembering(session.settings.sheets, page.signature, page.to_remember(), SHEETS_REMEMBERED)
        session.change_settings(replace(session.settings, sheets=kept))
        _plan_own(root, look, session, page)


def _plan_own(root: tk.Tk, look: Look, session: Session, page: OwnSheetPage) -> None:
    def compare(report: Report) -> ImportPlan:
        with session.book.again() as book:
            return plan_for(book, page.name, page.own.swatches, page.own, progress=report)

    run_with_progress(
        root,
        look,
        f"Comparing {page.name} …",
        compare,
        lambda plan: _show_and_write(root, look, session, plan),
        lambda error: say_foreseen(root, look, error),
    )


def _show_and_write(root: tk.Tk, look: Look, session: Session, plan: ImportPlan) -> None:
    if show_plan(root, look, plan):
        _write(root, look, session, plan)


def _write(root: tk.Tk, look: Look, session: Session, plan: ImportPlan) -> None:
    def write(report: Report) -> ImportResult:
        with session.book.again() as book:
            return carry_out(book, plan, good_rows_only=True, progress=report)

    def written(result: ImportResult) -> None:
        session.notice_others()
        beside = f"; also {result.others}" if result.others else ""
        session.say(
            f"Imported {plan.name}: {counted(result.added, 'swatch')} added, {result.changed} changed{beside}. "
            "Edit → Undo takes it back."
        )

    run_with_progress(root, look, f"Importing {plan.name} …", write, written, lambda error: say_foreseen(root, look, error))


def export_sheet(root: tk.Tk, look: Look, session: Session) -> None:
    """Asks where to, and writes every swatch there."""
    chosen = ask_where_to_save(
        parent=root,
        title="Export to a sheet",
        kinds=[("Workbook", "*.xlsx"), ("CSV", "*.csv")],
        name=named_today(session.book.path.stem),
    )
    if not chosen:
        return

    def write(report: Report) -> ExportResult:
        with session.book.again() as book:
            return export(book, Path(chosen), report)

    def written(result: ExportResult) -> None:
        session.say(f"{counted(result.rows, 'swatch')} written to {result.target}.")
        for note in result.notes:
            tell(root, look, note)

    run_with_progress(root, look, f"Writing {Path(chosen).name} …", write, written, lambda error: say_foreseen(root, look, error))
