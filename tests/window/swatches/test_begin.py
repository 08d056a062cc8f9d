"""An empty logbook begins with a chain; and a chain typed instead of a width."""

import tkinter as tk
from pathlib import Path

import pytest

from logbook.pages.session import Session
from logbook.pages.swatches.begin import GAUGE, STITCH
from logbook.settings import Settings
from logbook.tasks.browsing import swatch_lines
from logbook.tasks.keeping import new_book
from logbook.window.look import Look
from logbook.window.swatches.page import SwatchesPage
from tests.support.display import scaled
from tests.support.fits import edges, layout_faults
from tests.support.screen import focused, hit, settle, write
from tests.support.swatches_page import page_on


def test_three_things_answer_at_once_and_become_the_first_swatch(root: tk.Tk, look: Look, tmp_path: Path) -> None:
    with new_book(tmp_path / "a.logbook") as book:
        session = Session(book, Settings())
        root.geometry(f"{scaled(1366)}x{scaled(690)}+0+0")
        page = page_on(root, look, session)
        begin = page.side._begin
        assert begin is not None
        begin.fields[STITCH].input.focus_force()
        root.update()
        write(root, "dc")
        begin.fields[GAUGE].input.focus_set()
        root.update()
        write(root, "16 sts = 10 cm")
        page.chain.width.input.focus_set()
        root.update()
        write(root, "46")
        assert page.chain.headline["text"] == "Chain 76"
        begin.keep.invoke()
        assert focused(root) is page.editor.fields["hook mm"].input  # the one thing that a swatch wants besides
        write(root, "4.5")
        begin.keep.invoke()
        root.update()
        assert [line.stitch for line in swatch_lines(book)] == ["dc"]
        assert not begin.keep.winfo_ismapped()
        assert page.chain.count.winfo_ismapped()


@pytest.mark.parametrize(("percent", "height"), [(100, 690), (200, 690), (200, 520)])
def test_answer_and_button_are_in_view_whatever_is_asked_above_them(
    root: tk.Tk, look: Look, tmp_path: Path, percent: int, height: int
) -> None:
    """Where room is short what is asked scrolls, and the field with the keyboard is brought into view."""
    with new_book(tmp_path / "a.logbook") as book:
        root.geometry(f"{scaled(1000)}x{scaled(height)}+0+0")
        look.apply(percent=percent)
        page = page_on(root, look, Session(book, Settings()))
        assert layout_faults(page.find) == []
        page.panes.bring(2)
        settle(root)
        assert layout_faults(page.chain) == []
        begin = page.side._begin
        assert begin is not None
        card = edges(page.chain)
        for widget in (page.chain.width, page.chain.headline, begin.keep):
            assert edges(widget)[3] <= card[3]
        above = page.chain._above
        for field in begin.fields.values():
            field.input.focus_force()
            settle(root)
            assert above.winfo_rooty() <= edges(field.input)[1]
            assert edges(field.input)[3] <= above.winfo_rooty() + above.winfo_height()


def test_a_chain_typed_says_what_it_makes_and_cleared_the_width_is_back(root: tk.Tk, page: SwatchesPage) -> None:
    hit(root, "<Control-f>")
    write(root, "HC-01")
    hit(root, "<Return>")
    write(root, "46")
    page.chain.count.input.focus_set()
    root.update()
    write(root, "68")
    assert page.chain.headline["text"] == "68 chains make 42.6 cm"
    assert "disabled" in page.chain.width.input.state()  # type: ignore[attr-defined]
    hit(root, "<BackSpace>", "<BackSpace>")
    assert page.chain.headline["text"] == "Chain 74"
    assert "disabled" not in page.chain.width.input.state()  # type: ignore[attr-defined]


def test_a_gauge_half_typed_is_no_error_and_moves_nothing(root: tk.Tk, look: Look, tmp_path: Path) -> None:
    with new_book(tmp_path / "a.logbook") as book:
        root.geometry(f"{scaled(1366)}x{scaled(690)}+0+0")
        page = page_on(root, look, Session(book, Settings()))
        gauge = page.side._begin.fields[GAUGE]  # type: ignore[union-attr]
        gauge.input.focus_force()
        root.update()
        width = page.chain.width.input.winfo_rooty()
        write(root, "16 st")
        assert page.chain.width.input.winfo_rooty() == width
        hit(root, "<Tab>")
        root.update()
        assert gauge.message is not None
        assert gauge.message["text"].startswith("✕ “16 st”")
        assert page.chain.width.input.winfo_rooty() > width
