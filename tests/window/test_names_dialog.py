"""The list of yarns, by keys."""

import tkinter as tk
from collections.abc import Callable

import pytest

from logbook.book.swatches import put_yarn
from logbook.craft.swatches.yarn import Yarn
from logbook.pages.session import Session
from logbook.tasks.known_names import NameOf, known_by_name
from logbook.tasks.undoing import undo
from logbook.window.look import Look
from logbook.window.names_dialog import NamesDialog
from tests.support.screen import focused, hit, press, write
from tests.support.wardrobe import book, session

__all__ = ["book", "session"]


@pytest.fixture
def opened(root: tk.Tk, look: Look, session: Session) -> Callable[[NameOf], NamesDialog]:
    root.geometry("1366x690+0+0")

    def make(kind: NameOf) -> NamesDialog:
        dialog = NamesDialog(root, look, session, kind, "")
        dialog.open(dialog.table.tree)
        root.update()
        return dialog

    return make


def rows(dialog: NamesDialog) -> list[tuple[str, ...]]:
    return [dialog.table.cells(key) for key in dialog.table.shown]


def test_a_yarn_is_merged_by_keys_after_saying_what_that_does(
    root: tk.Tk, opened: Callable[[NameOf], NamesDialog], session: Session
) -> None:
    dialog = opened(NameOf.YARN)
    assert rows(dialog) == [("Harbour cotton", "2"), ("Mérida wool", "2")]
    assert dialog.delete_button.instate(["disabled"])
    assert dialog.merge_button.instate(["disabled"])
    hit(dialog, "<Alt-i>")
    write(dialog, "merida wool")
    assert "2 swatches of “Harbour cotton” will belong to “Mérida wool”" in dialog.says.cget("text")
    press(focused(root), "<Return>")
    assert rows(dialog) == [("Mérida wool", "4")]
    undo(session.book)
    assert len(known_by_name(session.book, NameOf.YARN)) == 2
    dialog.close()


def test_a_name_that_is_taken_is_refused_and_stays_typed(root: tk.Tk, opened: Callable[[NameOf], NamesDialog]) -> None:
    dialog = opened(NameOf.YARN)
    hit(dialog, "<Alt-n>")
    dialog.name.text = "Mérida wool"
    press(focused(root), "<Return>")
    assert "There is another yarn of that name" in dialog.says.cget("text")
    assert dialog.name.text == "Mérida wool"
    dialog.name.text = "Quay cotton"
    press(focused(root), "<Return>")
    assert rows(dialog)[1] == ("Quay cotton", "2")
    dialog.close()


def test_patterns_that_may_not_be_merged_say_so(root: tk.Tk, opened: Callable[[NameOf], NamesDialog]) -> None:
    dialog = opened(NameOf.PATTERN)
    dialog.into.text = "Shells"  # into the ripple of 12, shells of 6
    assert dialog.says.cget("text").startswith("✕ “Shells” has multiple 6, “Ripple” 12")
    assert dialog.merge_button.instate(["disabled"])
    dialog.close()


def test_the_last_of_very_many_yarns_is_in_hand_and_in_sight(root: tk.Tk, look: Look, session: Session) -> None:
    with session.book.writing("many yarns") as writing:
        uids = [put_yarn(writing, Yarn(name=f"Yarn {number:03d}")) for number in range(600)]
    root.geometry("1366x690+0+0")
    dialog = NamesDialog(root, look, session, NameOf.YARN, uids[-1])
    dialog.open(dialog.table.tree)
    root.update()
    assert dialog.name.text == "Yarn 599"
    assert dialog.table.tree.bbox(uids[-1])
    dialog.close()
