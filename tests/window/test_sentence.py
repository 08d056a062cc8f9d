"""A label that wraps."""

import tkinter as tk
from tkinter import font

import pytest

from logbook.window.look import Look
from logbook.window.sentence import Sentence
from tests.support.screen import settle


@pytest.fixture
def sentence(root: tk.Tk, look: Look) -> Sentence:
    made = Sentence(root, "Row 3 lands on a dc, not a sc. " * 60)
    made.place(x=0, y=0, width=1)
    settle(root)
    return made


def test_a_long_text_in_no_width_asks_for_no_endless_height(sentence: Sentence) -> None:
    assert sentence.winfo_reqheight() < 10_000


def test_no_line_is_cut_off_at_the_edge(root: tk.Tk, sentence: Sentence) -> None:
    sentence.place(width=300)
    settle(root)
    assert 300 - font.nametofont("TkDefaultFont", root).measure("comes ") < int(str(sentence.cget("wraplength"))) < 300


def test_a_number_stays_in_a_line_with_its_unit(root: tk.Tk, sentence: Sentence) -> None:
    said = "usually 2.3 cm ± 4 % in 10 rows, or 18 1/4 in"
    sentence.configure(text=said)
    assert sentence["text"] == sentence.cget("text") == said
    shown = str(root.tk.call(str(sentence), "cget", "-text"))
    assert shown.replace("\N{NO-BREAK SPACE}", "_").split(" ") == [
        "usually",
        "2.3_cm",
        "±_4_%",
        "in",
        "10",
        "rows,",
        "or",
        "18_1/4_in",
    ]
