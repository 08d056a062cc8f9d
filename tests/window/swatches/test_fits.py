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
from tests.support.fits import SCREENS, below, edges, overlap
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


@pytest.mark.parametrize("percent", [100, 200])
def test_the_find_field_has_its_label_beside_it_and_room_for_words(
    root: tk.Tk, look: Look, page: SwatchesPage, percent: int
) -> None:
    """What the list is sorted by stands beside it or beneath it."""
    root.geometry(room(96, percent))
    look.apply(percent=percent)
    settle(root)
    find, sort = page.find.find, page.find.sort
    assert find.label.winfo_rooty() < find.input.winfo_rooty() + find.input.winfo_height()
    assert find.label.winfo_rootx() + find.label.winfo_width() <= find.input.winfo_rootx()
    assert find.input.winfo_width() >= 12 * look.base.measure("0")
    assert not overlap(edges(find), edges(sort))
    assert sort.winfo_rootx() + sort.winfo_width() <= page.find.winfo_rootx() + page.find.winfo_width()


@pytest.mark.parametrize("percent", [100, 200])
@pytest.mark.parametrize(
    "tag", ["For-a-cardigan-with-many-buttons-that-was-tried-twice", "For a cardigan with many buttons, tried twice, " * 2]
)
def test_a_long_title_takes_two_lines_and_ends_in_an_ellipsis(
    root: tk.Tk, look: Look, page: SwatchesPage, tag: str, percent: int
) -> None:
    root.geometry(room(96, percent))
    look.apply(percent=percent)
    page.editor.say_title(f"Swatch {tag}", "21 Sep 2024 · ivory · dye lot 0417")
    settle(root)
    title, shown = page.editor._title, str(page.editor._title.cget("text"))
    assert title.winfo_height() < 3 * look.title.metrics("linespace")
    assert shown.endswith("…") or shown == f"Swatch {tag}"


def test_a_line_of_the_list_tells_hook_and_gauge_and_is_cut_by_an_ellipsis(root: tk.Tk, look: Look, page: SwatchesPage) -> None:
    table = page.find.table
    uid = next(line.uid for line in page.swatches.lines if line.tag == "HC-01")
    settle(root)
    assert table.tree.set(uid, "swatch").split("\n")[1].startswith("HC-01 · 4.5 mm · 15.7 sts")
    look.apply(percent=200)
    settle(root)
    lines = table.tree.set(uid, "swatch").split("\n")
    assert lines[1].endswith("…")
    assert all(look.base.measure(line) < table.tree.winfo_width() for line in lines)


def test_the_list_is_sorted_by_what_is_chosen(root: tk.Tk, page: SwatchesPage) -> None:
    newest = list(page.find.table.shown)
    menu = page.find.sort.nametowidget(page.find.sort.cget("menu"))
    menu.invoke("By tag")
    tags = [page.find.table.cells(key)[1] for key in page.find.table.shown]
    assert tags == sorted(tags)
    menu.invoke("Newest first")
    assert page.find.table.shown == newest


def test_the_menu_of_a_swatch_is_also_the_right_button_s(root: tk.Tk, page: SwatchesPage) -> None:
    words = [entry[0].replace("&", "") for entry in page.entries() if entry]
    assert words[:5] == ["New", "Same again", "Revert", "Save", "Delete"]
    assert "Which hook…" in words
    assert page.find.table.entries == page.entries


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


@pytest.mark.parametrize(("typed", "beside"), [("46", "cm"), ("46 cm", ""), ("18 1/4 in", ""), ("", "cm"), ("4.6 c", "")])
def test_a_unit_that_is_typed_does_not_stand_there_twice(page: SwatchesPage, typed: str, beside: str) -> None:
    page.chain.width.text = typed
    assert page.chain.width.unit["text"] == beside
