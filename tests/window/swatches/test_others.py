"""The page beside others that write, on a logbook that is empty or can only be read."""

import tkinter as tk
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.book.logbook import Logbook, new_logbook
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.logging_swatches import delete_swatches, save_swatch
from logbook.window.look import Look
from logbook.window.swatches.page import SwatchesPage
from tests.support.screen import focused, hit, settle, write
from tests.support.swatches_page import page_on


def recolour(session: Session, uid: str, colour: str) -> None:
    """Somebody else changes a swatch."""
    found = swatch_in_hand(session.book, uid)
    assert found is not None
    save_swatch(session.book, replace(found, colour=colour))
    session.records_changed("somebody else")


def test_what_is_only_shown_follows_the_logbook(page: SwatchesPage, session: Session) -> None:
    uid = page.form.uid
    recolour(session, uid, "moss")
    assert page.form.texts["colour"] == "moss"
    delete_swatches(session.book, [uid])
    session.records_changed("somebody else")
    assert page.form.title == "New swatch"
    assert uid not in page.find.table.shown


def test_what_is_typed_stays_and_the_change_is_said(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    said: list[str] = []
    session.say = said.append
    hit(root, "<Alt-y>")
    write(root, "x")
    typed = page.form.texts["yarn"]
    recolour(session, page.form.uid, "moss")
    assert page.editor.fields["yarn"].text == typed
    assert page.form.texts["colour"] == ""
    assert said == ["This swatch was changed elsewhere in the meantime. What you typed is still here, not saved yet."]


def test_its_own_changes_are_told_to_others(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    told: list[object] = []
    session.on_records(told.append)
    hit(root, "<Alt-y>")
    write(root, "x")
    hit(root, "<Control-s>", "<Control-d>")
    assert told == [page, page]


def test_folded_sections_are_remembered(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    page.editor.sections["swatches.more"].header.invoke()
    assert session.settings.opened == ("swatches.more",)
    page.editor.sections["swatches.more"].header.invoke()
    assert session.settings.opened == ()


@pytest.fixture
def empty(tmp_path: Path) -> Session:
    opened = ("swatches.more", "swatches.filters", "swatches.body")
    return Session(new_logbook(tmp_path / "empty.logbook"), Settings(opened=opened))


def test_an_empty_logbook_says_what_belongs_there_and_offers_the_sample(root: tk.Tk, look: Look, empty: Session) -> None:
    opened: list[bool] = []
    empty.open_sample = lambda: opened.append(True)
    page = page_on(root, look, empty)
    assert focused(root) is page.editor.fields["yarn"].input
    assert page.find.sample.winfo_viewable()
    assert not page.find.table.winfo_viewable()
    look.apply(percent=200)
    settle(root)
    assert page.find.sample.winfo_reqwidth() <= page.find.winfo_width()
    hit(root, "<Alt-x>")
    assert opened == [True]
    assert page.chain.headline["text"] == "—"
    assert page.editor.fields["colour"].winfo_viewable()
    hit(root, "<Alt-y>")
    write(root, "First wool")
    hit(root, "<Alt-o>")
    write(root, "5")
    hit(root, "<Alt-k>")
    write(root, "14 sts x 11 rows = 10 cm")
    hit(root, "<Control-s>")
    settle(root)
    assert page.find.table.winfo_viewable()
    assert page.find.table.selected == (page.form.uid,)
    empty.book.close()


def test_a_logbook_that_can_only_be_read_turns_saving_off(root: tk.Tk, look: Look, session: Session, book: Logbook) -> None:
    session.book = replace(book, read_only=True)
    page = page_on(root, look, session)
    hit(root, "<Alt-y>")
    write(root, "x")
    states = {name: "disabled" in button.state() for name, button in page.row.buttons.items()}
    assert states == {"New": True, "Same again": True, "Save": True, "Revert": False, "Delete": True}
