"""The columns of a table: their headings and their widths."""

from collections.abc import Callable, Sequence
from functools import partial
from tkinter import ttk
from typing import Literal, NamedTuple

from logbook.window.look import Look

EDGES = 4
"""Pixels of its width that the border of a table takes."""


class Column(NamedTuple):
    """``width`` is in letters; numbers belong at the ``"right"``; a column may ``grow`` into width that is over.

    One that grows may also shrink to ``least`` letters, if there are any, where the table is narrower than it wants to be.
    A ``summary`` says again what other columns say, for a narrow place: it is neither copied nor sorted by.
    """

    key: str
    heading: str
    width: int
    align: Literal["left", "right"] = "left"
    grow: bool = False
    summary: bool = False
    least: int = 0


def set_widths(tree: ttk.Treeview, look: Look, columns: Sequence[Column]) -> None:
    """The widths in letters, in pixels of the text as it is now; no column is narrower than its heading."""
    letter = look.letter
    for column in columns:
        heading = look.bold.measure(f"{column.heading} ▲")
        width, least = (max(letter * letters, heading) for letters in (column.width, column.least or column.width))
        tree.column(
            column.key,
            width=width + look.pixels(4),
            minwidth=least + look.pixels(4),
            stretch=column.grow,
            anchor="e" if column.align == "right" else "w",
        )


def spread(tree: ttk.Treeview, columns: Sequence[Column]) -> None:
    """Gives the columns that grow alike what the others leave; Tk does so only while a table becomes wider."""
    shown = tree.cget("displaycolumns")
    there = [column for column in columns if column.key in shown or "#all" in shown]
    least = {column.key: int(tree.column(column.key, "minwidth" if column.grow else "width")) for column in there}
    growing = [column.key for column in there if column.grow]
    if tree.winfo_width() > 1 and growing:
        more = max(0, tree.winfo_width() - EDGES - sum(least.values()))
        for key in growing:
            tree.column(key, width=least[key] + more // len(growing))


def show_headings(
    tree: ttk.Treeview, columns: Sequence[Column], in_order: tuple[int, bool] | None, sort_by: Callable[[str], object]
) -> None:
    """The headings, with a sign at the column that is sorted by: ``in_order`` is its place, and whether downwards."""
    for place, column in enumerate(columns):
        sign = "" if in_order is None or in_order[0] != place else "▼" if in_order[1] else "▲"
        right = column.align == "right"
        text = f"{sign} {column.heading}" if right else f"{column.heading} {sign}"
        tree.heading(column.key, text=text.strip(), anchor="e" if right else "w", command=partial(sort_by, column.key))
