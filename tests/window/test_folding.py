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


def test_a_long_title_goes_on_in_another_line_where_there_is_too_little_room(root: tk.Tk, look: Look) -> None:
    root.columnconfigure(0, weight=1)
    folding, _ = made(root, False)
    folding.grid(sticky="ew")
    settle(root)
    wide, high = folding.header.winfo_reqwidth(), folding.header.winfo_reqheight()
    for percent in (100, 200):
        look.apply(percent=percent)
        root.geometry(f"{wide - 10}x300")
        settle(root)
        assert folding.header.winfo_reqwidth() <= folding.header.winfo_width() < wide
        assert folding.header.winfo_reqheight() > high
        assert folding.header.cget("text").split() == ["▸", "More", "about", "the", "yarn"]
    press(folding.header, "<Alt-m>")
    assert folding.is_open
    look.apply(percent=100)
    root.geometry(f"{wide + 10}x300")
    settle(root)
    assert folding.header.cget("text") == "▾ More about the yarn"
