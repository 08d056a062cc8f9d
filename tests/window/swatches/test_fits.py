"""On a screen of 1366 × 768 nothing of the page is cut, at any text size."""

import tkinter as tk
from collections.abc import Sequence
from tkinter import ttk

import pytest

from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.window.folding import Folding
from logbook.window.keys import MnemonicLabel
from logbook.window.look import Look
from logbook.window.swatches.page import SwatchesPage
from tests.support.fits import SCREENS, below
from tests.support.screen import settle

TAKEN_BY_SHELL = 1.02, 1.4
"""Inches of the height that title bar, menu, row of pages and foot take: of themselves, and in addition where text is doubled."""


def room(dpi: int, percent: int) -> str:
    """What the window leaves for a page when it fills such a screen."""
    width, height = SCREENS[dpi]
    always, doubled = TAKEN_BY_SHELL
    return f"{width - 26}x{height - round(dpi * (always + doubled * (percent - 100) / 100))}+0+0"


@pytest.mark.parametrize("dpi", SCREENS, indirect=True)
@pytest.mark.parametrize("percent", [100, 150, 200])
def test_nothing_is_cut(root: tk.Tk, look: Look, page: SwatchesPage, session: Session, dpi: int, percent: int) -> None:
    page.chain.width.text = "46"
    root.geometry(room(dpi, percent))
    look.apply(percent=percent)
    for folding in [widget for widget in below(page.frame) if isinstance(widget, Folding)]:
        if not folding.is_open:
            folding.header.invoke()
    settle(root)
    if page.panes.hidden is None:
        check(root, look, page, (page.find, page.editor, page.chain))
        return
    page.panes.bring(0)
    settle(root)
    check(root, look, page, (page.find, page.editor))
    page.panes.bring(2)
    settle(root)
    check(root, look, page, (page.editor, page.chain))


def check(root: tk.Tk, look: Look, page: SwatchesPage, views: Sequence[tk.Widget]) -> None:
    """Nothing of these is cut, and what is needed most is in sight."""
    for view in views:
        right, bottom = view.winfo_rootx() + view.winfo_width(), view.winfo_rooty() + view.winfo_height()
        assert bottom <= page.row.buttons["Save"].winfo_rooty()
        for widget in below(view):
            if widget.winfo_viewable():
                assert widget.winfo_rootx() + widget.winfo_width() <= right, widget
                if isinstance(widget, ttk.Label | ttk.Button | ttk.Checkbutton) and str(widget.cget("text")).strip():
                    assert widget.winfo_reqwidth() <= widget.winfo_width() + 1, (widget, widget.cget("text"))
                if isinstance(widget, MnemonicLabel):
                    lines = widget.cget("text").split() if widget.winfo_height() >= 2 * look.line else [widget.cget("text")]
                    assert all(look.base.measure(line) <= widget.winfo_width() for line in lines), lines
            if isinstance(widget, tk.Canvas):
                edge = widget.winfo_rootx() + widget.winfo_width()
                cut = [one for one in below(widget) if one.winfo_viewable() and one.winfo_rootx() + one.winfo_width() > edge]
                assert not cut, [(str(one), one.winfo_width()) for one in cut]
    for name, button in page.row.buttons.items():
        assert button.winfo_rootx() >= page.frame.winfo_rootx(), name
        assert button.winfo_rooty() + button.winfo_height() <= root.winfo_rooty() + root.winfo_height()
    needed = {page.find: [page.find.find.input], page.editor: [page.editor.fields["yarn"].input]}
    needed[page.chain] = [page.chain.width.input, page.chain.headline]  # type: ignore[index]
    assert all(wanted.winfo_viewable() for view in views for wanted in needed[view])  # type: ignore[index]


def test_a_short_list_of_columns_still_tells_swatches_apart(root: tk.Tk, look: Look, page: SwatchesPage) -> None:
    tree = page.find.table.tree
    assert "tag" in tree.cget("displaycolumns")
    look.apply(percent=200)
    settle(root)
    assert [str(name) for name in tree.cget("displaycolumns")] == ["swatch"]
    look.apply(percent=100)
    settle(root)
    assert [str(name) for name in tree.cget("displaycolumns")][:3] == ["tag", "yarn", "stitch"]


def test_the_text_size_changes_what_is_shown_at_once(root: tk.Tk, look: Look, page: SwatchesPage, session: Session) -> None:
    before = page.chain.headline.winfo_reqheight()
    look.apply(percent=200)
    root.update()
    assert page.chain.headline.winfo_reqheight() > 1.7 * before


def test_inches_change_what_is_shown_and_read_at_once(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    page._show(next(line.uid for line in page.swatches.lines if line.tag == "HC-01"))
    page.chain.width.text = "18 1/8"
    assert page.chain.headline["text"] == "Chain 32"
    session.change_settings(Settings(units="in"))
    assert page.chain.headline["text"] == "Chain 74"
    assert page.chain.sentence["text"].startswith("18 1/4 in")
    assert page.chain.width.unit["text"] == "in"
