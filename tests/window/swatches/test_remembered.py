"""What is there again at the next start: the order of the list, and the width wanted last."""

import tkinter as tk

from logbook.pages.session import Session
from logbook.window.look import Look
from tests.support.display import scaled
from tests.support.screen import hit, write
from tests.support.swatches_page import page_on


def test_the_order_and_the_width_are_there_again(root: tk.Tk, look: Look, session: Session) -> None:
    root.geometry(f"{scaled(1366)}x{scaled(690)}+0+0")
    page = page_on(root, look, session)
    page.find.table_sort("By tag")
    page.chain.width.input.focus_force()
    root.update()
    write(root, "46")
    hit(root, "<Tab>")
    root.update()
    page.frame.destroy()
    again = page_on(root, look, Session(session.book, session.settings))
    tags = [again.find.table.cells(key)[1] for key in again.find.table.shown]
    assert tags == sorted(tags)
    assert again.chain.width.text == "46 cm"
    assert again.chain.headline["text"].startswith("Chain")
    assert not list(again.drafts())  # what is only remembered is not unsaved work
