"""A scroll bar that is there only while there is something to scroll."""

from tkinter import ttk


def show_bar(bar: ttk.Scrollbar, first: float, last: float) -> None:
    """For a widget's ``yscrollcommand`` or ``xscrollcommand``: moves the gridded ``bar``, or takes it away.

    To keep its place free, so that nothing changes its width when it comes, is up to the layout.
    """
    bar.set(first, last)
    if float(first) > 0 or float(last) < 1:
        bar.grid()
    else:
        bar.grid_remove()
