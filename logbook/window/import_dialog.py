"""What an import would do, before it is done: new swatches, changed ones, and every problem with its row."""

import tkinter as tk
from tkinter import ttk

from logbook.craft.words.counting import counted
from logbook.tasks.importing import ImportPlan
from logbook.window.dialog import Dialog
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

_ROWS = 12
_WIDTH = 100
"""Letters, where the screen has room for them."""
_PROBLEMS = (Column("row", "Row", 6, "right"), Column("column", "Column", 18), Column("says", "What is wrong", 46, grow=True))
_CHANGES = (Column("row", "Row", 6, "right"), Column("tag", "Tag", 12), Column("what", "What it would change", 46, grow=True))


def show_plan(parent: tk.Misc, look: Look, plan: ImportPlan) -> bool:
    """Shows the plan; True if the user wants it done (of a sheet with problems: its good rows)."""
    return _Plan(parent, look, plan).wanted


class _Plan:
    def __init__(self, parent: tk.Misc, look: Look, plan: ImportPlan) -> None:
        self.wanted = False
        self._dialog = Dialog(parent, look, f"Import {plan.name}", lambda: self._dialog.close())
        inside = self._dialog.inside
        look.grid(Sentence(inside, sentence_on(plan)), row=0, column=0, sticky="ew", pady=(0, 2))
        width = self._dialog.wide(_WIDTH)
        inside.columnconfigure(0, minsize=width)
        count = len(plan.added) + len(plan.changed) + len(plan.kept.written)
        if plan.problems or count:
            self._add_tabs(inside, look, plan)
        leave = self._dialog.add_button("&Cancel" if count else "&Close", self._dialog.close, accent=count == 0)
        focus = leave
        if count:
            what = counted(count, "record" if plan.kept.written else "swatch")
            words = f"&Import the {what} without problems" if plan.problems else f"&Import {what}"
            take = self._dialog.add_button(words, self._take, accent=not plan.problems)
            focus = leave if plan.problems else take
        self._dialog.open(focus)
        self._dialog.wait_window()

    def _add_tabs(self, inside: ttk.Frame, look: Look, plan: ImportPlan) -> None:
        tabs = ttk.Notebook(inside)
        look.grid(tabs, row=1, column=0, sticky="nsew")
        tabs.enable_traversal()
        inside.rowconfigure(1, weight=1)
        self._whole = Sentence(inside)
        look.grid(self._whole, row=2, column=0, sticky="ew", pady=(1, 0))
        if plan.problems:
            self._add_problems(tabs, look, plan)
        self._add_changes(tabs, look, plan)

    def _take(self) -> None:
        self.wanted = True
        self._dialog.close()

    def _add_problems(self, tabs: ttk.Notebook, look: Look, plan: ImportPlan) -> None:
        table = Table(tabs, look, _PROBLEMS, self._show_whole)
        table.set_rows(
            Row(str(place), (str(p.row), p.column, p.says), (float(p.row), p.column, p.says))
            for place, p in enumerate(plan.problems)
        )
        self._problems = plan.problems
        table.select(["0"])
        self._show_whole(("0",))
        table.tree.configure(height=_ROWS)
        tabs.add(table, text=f"Problems ({len(plan.problems)})", underline=0)

    def _show_whole(self, keys: tuple[str, ...]) -> None:
        """A sentence may be wider than its column: the chosen one stands whole beneath."""
        if keys:
            problem = self._problems[int(keys[0])]
            self._whole.configure(text=f"Row {problem.row}, {problem.column}: {problem.says}")

    def _add_changes(self, tabs: ttk.Notebook, look: Look, plan: ImportPlan) -> None:
        table = Table(tabs, look, _CHANGES)
        lines = [(one, "new swatch") for one in plan.added]
        lines += [(one, f"changes {', '.join(one.changes)}") for one in plan.changed]
        table.set_rows(
            Row(str(place), (str(one.row), one.swatch.tag, what), (float(one.row), one.swatch.tag, what))
            for place, (one, what) in enumerate(sorted(lines, key=lambda line: line[0].row))
        )
        table.tree.configure(height=_ROWS)
        tabs.add(table, text=f"What it would change ({len(lines)})", underline=0)


def sentence_on(plan: ImportPlan) -> str:
    """``43 new swatches and 2 changed ones; 5 problems.``"""
    return " ".join(filter(None, (_would_do(plan), plan.kept.note)))


def _would_do(plan: ImportPlan) -> str:
    added, changed, problems = len(plan.added), len(plan.changed), len(plan.problems)
    new = counted(added, "new swatch")
    edits = f"change {changed}" if changed else "change none"
    beside = f", and also {plan.kept.sentence()}" if plan.kept.written else ""
    if problems:
        return f"{plan.name}: {counted(problems, 'problem')} found. Without those rows, it would add {new} and {edits}{beside}."
    if not added and not changed and not plan.kept.written:
        return f"Everything in {plan.name} is in the logbook already."
    return f"{plan.name} would add {new} and {edits}{beside}; one Undo takes it all back."
