"""The dialogs that ask for a file: they begin in the user's documents, go on where the last one ended, and hide dot-files."""

import os
import re
import tkinter as tk
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from tkinter import filedialog
from typing import Any

from logbook.window.file_list import colour_file_lists
from logbook.window.keyboard import take_back

MOST_LETTERS = 80
"""Of a name that is offered: file systems allow 255 bytes."""

_last: dict[str, str] = {}
"""The folder that the last answer was in, for as long as the program runs."""


def ask_where_to_save(*, parent: tk.Misc, kinds: Sequence[tuple[str, str]], name: str = "", **options: Any) -> str:
    """The path to write to, of one of the ``kinds`` (what it is called, ``*.ending``), offered under ``name``; "" if the user
    thought better of it. What is typed without an ending gets that of its kind."""
    ending = kinds[0][1].removeprefix("*")
    offered = file_name(name)
    if _is_x11(parent) and len([kind for _, kind in kinds if kind != "*"]) > 1:
        ending, offered = "", offered.replace(".", "-")  # an ending here would be that of every kind
    elif offered:
        offered += ending
    chosen = filedialog.asksaveasfilename(
        parent=parent, filetypes=kinds, defaultextension=ending, initialfile=offered, **_begun(parent), **options
    )
    return _remembered(parent, chosen)


def named_today(name: str) -> str:
    """A name for what is written out today, ``vests 2026-11-28``: names sort by date so."""
    return f"{name} {date.today().isoformat()}"


def file_name(name: str) -> str:
    """``name`` with what a usual system allows in no file name left out.

    >>> file_name('Top "Ellen": 1/2 ')
    'Top -Ellen-- 1-2'
    """
    return re.sub(r'[<>:"/\\|?*\x00-\x1f]', "-", name)[:MOST_LETTERS].strip(" .")


def ask_what_to_open(*, parent: tk.Misc, **options: Any) -> str:
    """The path of a file that is there; "" if the user thought better of it."""
    return _remembered(parent, filedialog.askopenfilename(parent=parent, **_begun(parent), **options))


def ask_folder(*, parent: tk.Misc, **options: Any) -> str:
    """A folder; "" if the user thought better of it."""
    return _answered(parent, filedialog.askdirectory(parent=parent, **_begun(parent), **options))


def documents() -> Path | None:
    """The user's folder for documents as the desktop has it, else their own folder; None where neither is there."""
    try:
        home = Path.home()
    except RuntimeError:
        return None
    config = Path(os.environ.get("XDG_CONFIG_HOME") or home / ".config")
    try:
        said = re.search(r'^XDG_DOCUMENTS_DIR="(.+)"', (config / "user-dirs.dirs").read_text("utf-8"), re.MULTILINE)
    except (OSError, UnicodeDecodeError):
        said = None
    named = [Path(said[1].replace("$HOME", str(home)))] if said else []
    return next((folder for folder in (*named, home / "Documents", home) if folder.is_dir()), None)


def _begun(parent: tk.Misc) -> dict[str, Any]:
    if _is_x11(parent):
        parent.tk.eval(
            "catch {tk_getOpenFile -none}\n"  # loads what holds the variables
            "namespace eval ::tk::dialog::file {variable showHiddenBtn 1; variable showHiddenVar 0}"
        )
        colour_file_lists(parent)
    folder = _last.get("folder") or documents()
    return {"initialdir": str(folder)} if folder and Path(folder).is_dir() else {}


def _is_x11(parent: tk.Misc) -> bool:
    return str(parent.tk.call("tk", "windowingsystem")) == "x11"


def _remembered(parent: tk.Misc, chosen: Any) -> str:
    path = _answered(parent, chosen)
    if path:
        _last["folder"] = str(Path(path).parent)
    return path


def _answered(parent: tk.Misc, chosen: Any) -> str:
    take_back(parent)  # not every window manager gives the keyboard to the window beneath
    return str(chosen or "")
