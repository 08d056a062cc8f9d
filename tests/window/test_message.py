import tkinter as tk
from tkinter import ttk

from logbook.window.look import Look
from logbook.window.message import Answer, ask, tell
from tests.support.dialogs import while_asked

ANSWERS = [Answer("copy", "&Save a copy"), Answer("throw", "&Discard"), Answer("stay", "&Go on typing")]


def answered(root: tk.Tk, look: Look, *keys: str) -> str:
    def act(dialog: tk.Toplevel) -> None:
        for key in keys:
            (dialog.focus_get() or dialog).event_generate(key)
            if dialog.winfo_exists():
                dialog.update()

    while_asked(root, act)
    return ask(root, look, "This swatch is not saved.", ANSWERS, default="copy", escape="stay")


def test_every_answer_can_be_given_by_key(root: tk.Tk, look: Look) -> None:
    assert answered(root, look, "<Return>") == "copy"
    assert answered(root, look, "<Escape>") == "stay"
    assert answered(root, look, "<Alt-d>") == "throw"
    assert answered(root, look, "<Tab>", "<space>") == "throw"
    assert answered(root, look, "<Left>", "<Return>") == "stay"
    assert answered(root, look, "<Right>", "<Return>") == "throw"


def test_the_focus_returns_to_where_it_was(root: tk.Tk, look: Look) -> None:
    entry = ttk.Entry(root)
    entry.grid()
    entry.focus_force()
    root.update()
    answered(root, look, "<Escape>")
    root.update()
    assert root.focus_lastfor() is entry


def test_closing_the_window_is_escape_and_the_text_is_all_there(root: tk.Tk, look: Look) -> None:
    look.apply(percent=200)
    heard: list[bool] = []

    def act(dialog: tk.Toplevel) -> None:
        dialog.update()
        heard.append(dialog.winfo_width() >= dialog.winfo_reqwidth() and dialog.winfo_width() <= root.winfo_screenwidth())
        root.tk.call(*root.tk.splitlist(dialog.protocol("WM_DELETE_WINDOW")))

    while_asked(root, act)
    tell(root, look, "A sentence that goes on for rather longer than would fit beside a button, twice over. " * 3)
    assert heard == [True]
