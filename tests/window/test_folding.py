import tkinter as tk

from logbook.window.folding import Folding
from logbook.window.look import Look
from tests.support.screen import press, settle


def made(root: tk.Tk, is_open: bool) -> tuple[Folding, list[bool]]:
    heard: list[bool] = []
    folding = Folding(root, "&More about the yarn", is_open, heard.append)
    folding.grid()
    tk.Label(folding.inside, text="inside").grid()
    settle(root)
    return folding, heard


def test_it_starts_as_told_and_says_so_by_its_sign(root: tk.Tk, look: Look) -> None:
    opened, _ = made(root, True)
    closed, _ = made(root, False)
    assert opened.inside.winfo_ismapped()
    assert not closed.inside.winfo_ismapped()
    assert opened.header["text"] == "▾ More about the yarn"
    assert closed.header["text"] == "▸ More about the yarn"


def test_space_return_and_its_letter_fold_it(root: tk.Tk, look: Look) -> None:
    folding, heard = made(root, False)
    for key, is_open in (("<space>", True), ("<Return>", False), ("<Alt-m>", True)):
        press(folding.header, key)
        assert folding.is_open is is_open
        assert folding.inside.winfo_ismapped() == is_open
    assert heard == [True, False, True]
