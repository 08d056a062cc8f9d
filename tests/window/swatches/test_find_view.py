"""The list of very many swatches, looked through in slices."""

import tkinter as tk

import pytest

from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks import word_search
from logbook.window.swatches import find_view
from logbook.window.swatches.page import SwatchesPage
from tests.support.screen import press, type_text, wait_until


@pytest.fixture(autouse=True)
def in_slices_of_one(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(word_search, "SLICE", 1)
    monkeypatch.setattr(find_view, "AT_ONCE_S", 0.0)


def tags(page: SwatchesPage) -> list[str]:
    return [page.find.table.cells(uid)[1] for uid in page.find.table.shown]


def test_what_is_found_comes_by_and_by_and_the_last_key_holds(root: tk.Tk, page: SwatchesPage) -> None:
    page.find.find.text = "harbour"
    assert page.find.find.said[0] == "0 and more of 4 swatches"
    page.find.find.text = "merida"
    assert "and more of" in page.find.find.said[0]
    wait_until(root, lambda: page.find.find.said[0] == "2 of 4 swatches")
    assert tags(page) == ["MW-04", "MW-03"]
    page.find.find.text = "merida 04"
    wait_until(root, lambda: page.find.find.said[0] == "1 of 4 swatches")
    assert tags(page) == ["MW-04"]
    press(page.find.find.input, "<Down>")
    assert page.form.texts["tag"] == "MW-04"
    press(page.find.find.input, "<Escape>")
    wait_until(root, lambda: page.find.find.said[0] == "4 swatches")
    type_text(page.find.find.input, "nothing")
    wait_until(root, lambda: page.find.find.said[0] == "0 of 4 swatches. Esc shows all again.")


def test_a_swatch_found_again_keeps_its_gauge(root: tk.Tk, page: SwatchesPage) -> None:
    tree = page.find.table.tree
    uid = next(uid for uid in page.find.table.shown if "sts" in tree.set(uid, "swatch"))
    before = tree.set(uid, "swatch")
    page.find.find.text = "no such swatch"
    wait_until(root, lambda: page.find.find.said[0].startswith("0 of 4"))
    press(page.find.find.input, "<Escape>")
    wait_until(root, lambda: page.find.find.said[0] == "4 swatches")
    wait_until(root, lambda: tree.exists(uid) and tree.set(uid, "swatch") == before)


def test_the_gauges_in_the_list_follow_the_units(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    tree = page.find.table.tree
    uid = next(uid for uid in page.find.table.shown if page.find.table.cells(uid)[1] == "HC-01")
    page._show(uid)
    wait_until(root, lambda: "15.7 sts" in tree.set(uid, "swatch"))
    session.change_settings(Settings(units="in"))
    wait_until(root, lambda: tree.exists(uid) and "16 sts" in tree.set(uid, "swatch"))
    assert page.find.table.selected == (uid,)
