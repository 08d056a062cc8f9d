"""The dialogs that ask for a file: they begin in the user's documents, go on where the last one ended, and hide dot-files."""

import os
import re
import tkinter as tk
from pathlib import Path
from tkinter import filedialog
from typing import Any

_last: dict[str, str] = {}
"""The folder that the last answer was in, for as long as the program runs."""


def ask_where_to_save(*, parent: tk.Misc, **options: Any) -> str:
    """The path to write to; "" if the user thought better of it."""
    return _remembered(filedialog.asksaveasfilename(parent=parent, **_begun(parent), **options))


def ask_what_to_open(*, parent: tk.Misc, **options: Any) -> str:
    """The path of a file that is there; "" if the user thought better of it."""
    return _remembered(filedialog.askopenfilename(parent=parent, **_begun(parent), **options))


def ask_folder(*, parent: tk.Misc, **options: Any) -> str:
    """A folder; "" if the user thought better of it."""
    return str(filedialog.askdirectory(parent=parent, **_begun(parent), **options) or "")


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
    if str(parent.tk.call("tk", "windowingsystem")) == "x11":
        parent.tk.eval(
            "catch {tk_getOpenFile -none}\n"  # loads what holds the variables
            "namespace eval ::tk::dialog::file {variable showHiddenBtn 1; variable showHiddenVar 0}"
        )
    folder = _last.get("folder") or documents()
    return {"initialdir": str(folder)} if folder and Path(folder).is_dir() else {}


def _remembered(chosen: Any) -> str:
    path = str(chosen or "")
    if path:
        _last["folder"] = str(Path(path).parent)
    return path
