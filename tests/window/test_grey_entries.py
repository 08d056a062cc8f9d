"""What can't be done now is grey in the menus, and its keys say why."""

import tkinter as tk

import pytest

from logbook.window.main_window import MainWindow
from tests.support.screen import settle
from tests.support.whole_window import said, session_of, window

__all__ = ["window"]


def opened(window: MainWindow, label: str) -> dict[str, bool]:
    """The entries of a menu of the bar as it opens, and whether each can be chosen."""
    bar = window.menu._bar
    place = next(at for at in range((bar.index("end") or 0) + 1) if bar.entrycget(at, "label") == label)
    menu = window.root.nametowidget(bar.entrycget(place, "menu"))
    window.root.tk.call(str(menu.cget("postcommand")))
    return states(menu)


def states(menu: tk.Menu) -> dict[str, bool]:
    places = range((menu.index("end") or 0) + 1)
    return {
        str(menu.entrycget(at, "label")): str(menu.entrycget(at, "state")) != "disabled"
        for at in places
        if menu.type(at) == "command"
    }


def test_undo_and_redo_are_grey_while_there_is_nothing_to_turn(window: MainWindow) -> None:
    page = window.page_at(0)
    settle(window.root)
    while opened(window, "Edit")["Undo"]:
        window.menu._undo.undo()
    window.menu._undo.undo()
    assert "nothing to undo" in said(window)
    assert opened(window, "Edit")["Redo"]
    window.menu._undo.redo()
    assert opened(window, "Edit")["Undo"]
    assert opened(window, "Edit")["Changes of this record…"] == (page.record_in_hand() is not None)


def test_where_no_logbook_is_open_only_opening_one_is_left(window: MainWindow) -> None:
    window.show_none("It is gone.")
    entries = opened(window, "Logbook")
    assert {label for label, can_be in entries.items() if can_be} >= {"New…", "Open…", "Open the sample", "Quit"}
    assert not any(entries[label] for label in ("Import a sheet…", "Export to a sheet…", "Save a copy…", "Yarns…", "Backups…"))
    assert not any(opened(window, "Edit").values())


def test_a_new_record_can_be_saved_but_not_deleted(window: MainWindow) -> None:
    page = window.page_at(0)
    settle(window.root)
    assert opened(window, "Swatch")["Delete"]
    assert not opened(window, "Swatch")["Save"]
    page.new()  # type: ignore[attr-defined]
    settle(window.root)
    entries = opened(window, "Swatch")
    assert not any(entries[label] for label in ("Delete", "Same again", "Revert", "Copy gauge line", "Print tags…"))
    assert entries["New"]


@pytest.mark.parametrize(
    ("label", "never"), [("Piece", ("Testers…", "No longer published")), ("Stitch pattern", ("Print its page",))]
)
def test_the_other_pages_alike(window: MainWindow, label: str, never: tuple[str, ...]) -> None:
    page = window.page_at(1 if label == "Piece" else 2)
    settle(window.root)
    page.part.new()  # type: ignore[attr-defined]
    settle(window.root)
    entries = opened(window, label)
    assert not any(entries[entry] for entry in (*never, "Delete", "Revert"))
    assert entries["New"]


def test_the_right_button_offers_the_same(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    page = window.page_at(0)
    settle(window.root)
    table = page.find.table  # type: ignore[attr-defined]
    monkeypatch.setattr(table._with_entries, "tk_popup", lambda *_: None)
    table._pop_up(0, 0)
    assert states(table._with_entries) == opened(window, "Swatch")
    session_of(window).book.read_only = True
    page._changed()  # type: ignore[attr-defined]
    table._pop_up(0, 0)
    assert not states(table._with_entries)["Delete"]
