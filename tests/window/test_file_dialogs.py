"""The names offered in the dialogs that ask where to save."""

import tkinter as tk
from pathlib import Path
from tkinter import filedialog, ttk
from typing import Any

import pytest

from logbook.window.file_dialogs import _begun, ask_where_to_save, file_name, named_today
from logbook.window.keyboard import focused
from logbook.window.look import Look
from logbook.window.palette import DARK, LIGHT, Palette
from tests.support.screen import wait_until

WORKBOOK, CSV = ("Workbook", "*.xlsx"), ("CSV", "*.csv")


def asked(root: tk.Tk, monkeypatch: pytest.MonkeyPatch, **options: Any) -> dict[str, Any]:
    """What the dialog is asked with."""
    found: dict[str, Any] = {}
    monkeypatch.setattr("tkinter.filedialog.asksaveasfilename", lambda **said: found.update(said) or "")
    ask_where_to_save(parent=root, **options)
    return found


def test_a_name_is_offered_with_the_ending_of_its_kind(root: tk.Tk, monkeypatch: pytest.MonkeyPatch) -> None:
    said = asked(root, monkeypatch, kinds=[WORKBOOK], name="Vest 1/2")
    assert (said["initialfile"], said["defaultextension"]) == ("Vest 1-2.xlsx", ".xlsx")


def test_of_two_kinds_the_one_chosen_gives_the_ending(root: tk.Tk, monkeypatch: pytest.MonkeyPatch) -> None:
    said = asked(root, monkeypatch, kinds=[WORKBOOK, CSV], name="log v1.2")
    assert (said["initialfile"], said["defaultextension"]) == ("log v1-2", "")


def test_names_that_no_system_takes() -> None:
    assert file_name(' Top "Ellen": 1/2. ') == "Top -Ellen-- 1-2"
    assert file_name("...") == ""
    assert len(file_name("x" * 300)) == 80


def test_a_name_with_the_day_sorts_by_it() -> None:
    name, _, day = named_today("my vests").rpartition(" ")
    assert name == "my vests"
    assert len(day) == len("2026-11-28")


def test_the_keyboard_comes_back_where_the_window_beneath_did_not_get_it(root: tk.Tk, monkeypatch: pytest.MonkeyPatch) -> None:
    """A window manager may give it to nobody, or elsewhere, when the dialog goes."""
    field = ttk.Entry(root)
    field.grid()
    field.focus_force()
    root.update()
    another = tk.Tk()
    wait_until(another, another.winfo_viewable)
    another.focus_force()
    wait_until(root, lambda: focused(root) is None)

    monkeypatch.setattr("tkinter.filedialog.asksaveasfilename", lambda **_: "")
    ask_where_to_save(parent=root, kinds=[WORKBOOK])
    wait_until(root, lambda: focused(root) is field)
    another.destroy()


@pytest.mark.parametrize("palette", [DARK, LIGHT])
def test_the_list_of_files_has_the_colours_of_the_palette(root: tk.Tk, look: Look, palette: Palette, tmp_path: Path) -> None:
    if root.tk.call("tk", "windowingsystem") != "x11":
        pytest.skip("the system has a dialog of its own")
    for name in ("one.csv", "two.csv"):
        (tmp_path / name).touch()
    look.apply(palette=palette)
    seen: list[str] = []

    def look_at(path: str) -> None:
        names = [
            item for item in root.tk.splitlist(root.tk.call(path, "find", "all")) if root.tk.call(path, "type", item) == "text"
        ]
        seen.append(str(root.tk.call(path, "cget", "-background")))
        seen.extend(str(root.tk.call(path, "itemcget", item, "-fill")) for item in names)

    def canvas_in(path: str) -> str:
        below = [str(child) for child in root.tk.splitlist(root.tk.call("winfo", "children", path))]
        return path if root.tk.call("winfo", "class", path) == "Canvas" else next(filter(None, map(canvas_in, below)), "")

    def walk() -> None:
        dialog = ".__tk_filedialog"
        canvas = canvas_in(dialog) if root.tk.getboolean(root.tk.call("winfo", "exists", dialog)) else ""
        if not canvas or not root.tk.call(canvas, "find", "all"):
            root.after(20, walk)
            return
        for selected in ("0", "1"):  # what was selected is as the others again
            root.tk.call(f"{dialog}.contents.icons", "selection", "clear", "0", "end")
            root.tk.call(f"{dialog}.contents.icons", "selection", "set", selected)
        look_at(canvas)
        root.tk.eval(f"::tk::dialog::file::CancelCmd {dialog}")

    root.after(20, walk)
    filedialog.askopenfilename(parent=root, **{**_begun(root), "initialdir": str(tmp_path)})
    assert seen == [palette.surface, palette.ink, palette.on_accent]
