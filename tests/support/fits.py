"""What of a layout is cut off, lies over something else or reaches beyond its place, whatever the font and the screen."""

import tkinter as tk
import tkinter.font
from collections.abc import Iterator
from itertools import combinations
from tkinter import ttk

from logbook.window.canvas import DrawingCanvas
from logbook.window.keys import MnemonicLabel
from logbook.window.panes import Panes
from logbook.window.text_area import TextArea

WORDS = (ttk.Label, ttk.Button, ttk.Checkbutton, ttk.Radiobutton, ttk.Menubutton)
SCREENS = {96: (1366, 768), 110: (1366, 768), 144: (1920, 1080)}
"""Screens that nothing may be cut on: dots per inch → width and height in pixels."""
EDGE = 2
"""Pixels by which the outline of a drawing may reach over its edge."""
LOW = 4
"""Pixels: what is lower can't be seen."""
SLACK = 1
"""Pixels that rounding may take."""
Edges = tuple[int, int, int, int]


def below(place: tk.Misc) -> Iterator[tk.Misc]:
    """Every widget in ``place``, without menus and other windows."""
    for child in place.winfo_children():
        if not isinstance(child, tk.Menu | tk.Toplevel):
            yield child
            yield from below(child)


def layout_faults(place: tk.Misc) -> list[str]:
    """A line for each fault of what is shown in ``place``; what scrolls may be longer than its place, not wider."""
    return [fault for parent in (place, *below(place)) for faults in (_faults_in, _faults_of) for fault in faults(parent)]


def screen_faults(window: tk.Tk | tk.Toplevel) -> list[str]:
    """The same of a window and all in it, and where it reaches beyond the screen."""
    left, top, right, bottom = edges(window)
    wide, high = window.winfo_screenwidth(), window.winfo_screenheight()
    beyond = left < -SLACK or top < -SLACK or right > wide + SLACK or bottom > high + SLACK
    return [f"{window} stands at {edges(window)} on a screen of {wide}x{high}"] * beyond + layout_faults(window)


def _faults_of(widget: tk.Misc) -> Iterator[str]:
    """What is wrong with what is shown in one widget itself."""
    if not widget.winfo_viewable():
        return
    kept = isinstance(widget.master, TextArea)  # its bar has its place, whether it is wanted or not
    if isinstance(widget, ttk.Scrollbar) and not kept and tuple(map(float, widget.get())) == (0, 1):
        yield f"{widget} has nothing to scroll"
    if isinstance(widget, MnemonicLabel):
        text, font = str(widget.cget("text")), tkinter.font.Font(root=widget, name="TkDefaultFont", exists=True)
        broken = widget.winfo_height() >= 2 * font.metrics("linespace")
        wide = max(map(font.measure, text.split() if broken else [text]), default=0)
        if wide > widget.winfo_width() + SLACK:
            yield f"{widget} “{text}” is {widget.winfo_width()} wide and wants {wide}"
    if isinstance(widget, DrawingCanvas) and (drawn := widget.bbox("all")) is not None:
        wide, high = widget.winfo_width(), widget.winfo_height()
        if drawn[0] < -EDGE or drawn[1] < -EDGE or drawn[2] > wide + EDGE or drawn[3] > high + EDGE:
            yield f"{widget} shows {wide} by {high} of what is drawn at {drawn}"
    if isinstance(widget, ttk.Treeview):
        yield from _cut_cells(widget)
    if isinstance(widget, ttk.Entry | ttk.Button | ttk.Treeview | tk.Text) and 1 < widget.winfo_height() < LOW:
        yield f"{said(widget)} is {widget.winfo_height()} high"


def _cut_cells(tree: ttk.Treeview) -> Iterator[str]:
    """Headings and cells that are wider than their columns, but for those that end in an ellipsis."""
    shown = tree.cget("displaycolumns")
    columns = tree.cget("columns") if "#all" in shown else shown
    bold, plain = (tkinter.font.Font(root=tree, name=name, exists=True) for name in ("TkHeadingFont", "TkDefaultFont"))
    for column in columns:
        wide, heading = int(tree.column(column, "width")), str(tree.heading(column, "text"))
        if str(tree.cget("show")) != "" and bold.measure(heading) > wide:
            yield f"{tree}: the heading “{heading}” wants {bold.measure(heading)} and has {wide}"
        for row in (one for one in tree.get_children() if tree.bbox(one)):
            for text in str(tree.set(row, column)).split("\n"):
                if not text.endswith("…") and plain.measure(text) > wide:
                    yield f"{tree}: “{text}” wants {plain.measure(text)} and has {wide}"


def _faults_in(parent: tk.Misc) -> Iterator[str]:
    shown = [
        child for child in parent.winfo_children() if not isinstance(child, tk.Menu | tk.Toplevel) and child.winfo_viewable()
    ]
    left, top, right, bottom = edges(parent)
    for child in shown:
        here = edges(child)
        if here[0] < left - SLACK or here[2] > right + SLACK:
            yield f"{said(child)} reaches from {here[0]} to {here[2]}, its place from {left} to {right}"
        if not isinstance(parent, tk.Canvas) and (here[1] < top - SLACK or here[3] > bottom + SLACK):
            yield f"{said(child)} reaches down from {here[1]} to {here[3]}, its place from {top} to {bottom}"
        if isinstance(child, WORDS) and str(child.cget("text")).strip():
            if child.winfo_reqwidth() > child.winfo_width() + SLACK:
                yield f"{said(child)} is {child.winfo_width()} wide and wants {child.winfo_reqwidth()}"
            if child.winfo_reqheight() > child.winfo_height() + SLACK:
                yield f"{said(child)} is {child.winfo_height()} high and wants {child.winfo_reqheight()}"
    for one, other in combinations(shown, 2):
        panes = any(isinstance(widget, Panes) for widget in (one, other))  # what stands in them lies over them
        if not panes and "place" not in (one.winfo_manager(), other.winfo_manager()) and overlap(edges(one), edges(other)):
            yield f"{said(one)} and {said(other)} lie over each other"


def edges(widget: tk.Misc) -> Edges:
    """Left, top, right and bottom on the screen."""
    left, top = widget.winfo_rootx(), widget.winfo_rooty()
    return left, top, left + widget.winfo_width(), top + widget.winfo_height()


def overlap(one: Edges, other: Edges) -> bool:
    """Whether two places share more than an edge."""
    across = min(one[2], other[2]) - max(one[0], other[0])
    down = min(one[3], other[3]) - max(one[1], other[1])
    return across > SLACK and down > SLACK


def said(widget: tk.Misc) -> str:
    """A widget by its path, and by its words if it has any."""
    words = f" “{widget.cget('text')}”" if isinstance(widget, WORDS) else ""
    return f"{widget}{words}"
