"""Those who try a pattern, by keys in their dialog."""

import tkinter as tk

import pytest

from logbook.pages.pieces.tester_form import TesterForm
from logbook.pages.session import Session
from logbook.tasks.pieces import planned_pieces
from logbook.tasks.testers import testers_of
from logbook.window.look import Look
from logbook.window.pieces.testers_dialog import TestersDialog
from tests.support.screen import focused, hit, press, write
from tests.window.pieces.test_sizes import session

__all__ = ["session"]


@pytest.fixture
def dialog(root: tk.Tk, look: Look, session: Session) -> TestersDialog:
    root.geometry("1366x690+0+0")
    form = TesterForm(session, planned_pieces(session.book)[0])
    shown = TestersDialog(root, look, session, form, lambda _: None)
    shown.open(shown.fields["name"].input)
    root.update()
    return shown


def names(session: Session) -> list[str]:
    return [tester.name for tester in testers_of(session.book, planned_pieces(session.book)[0])]


def test_one_is_typed_and_saved_by_keys(root: tk.Tk, dialog: TestersDialog, session: Session) -> None:
    assert dialog.delete_button.instate(["disabled"])
    assert dialog.save_button.instate(["disabled"])
    write(dialog, "Ida")
    hit(dialog, "<Alt-w>")
    write(dialog, "52")
    press(focused(root), "<Tab>")
    assert dialog.fields["width"].text == "52 cm"
    hit(dialog, "<Control-s>")
    assert names(session) == ["Ida"]
    assert dialog.save_button.instate(["disabled"])
    assert not dialog.table.across.winfo_ismapped()
    hit(dialog, "<Alt-d>")
    assert names(session) == []
    dialog.close()


def test_what_can_not_be_read_is_said_until_it_is_typed_anew(root: tk.Tk, dialog: TestersDialog, session: Session) -> None:
    hit(dialog, "<Alt-w>")
    write(dialog, "wide")
    hit(dialog, "<Control-s>")
    assert focused(root) is dialog.fields["name"].input
    assert dialog.fields["name"].said[0] == "✕ Give a name or initials."
    assert dialog.fields["width"].said[0].startswith("✕ ")
    write(dialog, "I")
    assert dialog.fields["name"].said[0] == ""
    assert names(session) == []
    dialog.close()
