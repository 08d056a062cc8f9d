import tkinter as tk
from tkinter import ttk

import pytest

from logbook.window.keys import accelerator, bind_keys, split_mnemonic
from logbook.window.look import Look
from tests.support.screen import press, type_text


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("&Width", ("Width", 0)),
        ("Fi&nd", ("Find", 2)),
        ("Plain", ("Plain", -1)),
        ("Yarn & hook", ("Yarn & hook", -1)),
        ("End&", ("End&", -1)),
        ("", ("", -1)),
    ],
)
def test_split_mnemonic(text: str, expected: tuple[str, int]) -> None:
    assert split_mnemonic(text) == expected


def test_keys_run_and_never_with_a_shift_too_much(root: tk.Tk, look: Look) -> None:
    heard: list[str] = []
    bind_keys(root, "Mod-z", lambda: heard.append("undo"))
    bind_keys(root, "Mod-Shift-z", lambda: heard.append("redo"))
    bind_keys(root, "Mod-s", lambda: heard.append("save"))
    press(root, "<Control-z>", "<Control-Shift-Z>", "<Control-Shift-S>", "<F5>", "<Control-s>")
    assert heard == ["undo", "redo", "save"]
    assert accelerator(root, "Mod-Shift-z") == "Ctrl+Shift+Z"
    assert accelerator(root, "Mod-Prior") == "Ctrl+PgUp"


def test_return_presses_a_button_and_control_a_selects_all(root: tk.Tk, look: Look) -> None:
    heard: list[str] = []
    button = ttk.Button(root, text="Save", command=lambda: heard.append("saved"))
    entry = ttk.Entry(root)
    button.grid()
    entry.grid()
    root.update()
    press(button, "<Return>", "<KP_Enter>")
    assert heard == ["saved", "saved"]
    root.bind("<Return>", lambda _: heard.append("default"))
    press(button, "<Return>")
    press(entry, "<Return>")
    assert heard == ["saved", "saved", "saved", "default"]
    type_text(entry, "12,5")
    press(entry, "<Control-a>")
    assert entry.selection_get() == "12,5"


def test_alt_and_a_letter_press_only_what_can_be_seen(root: tk.Tk, look: Look) -> None:
    heard: list[str] = []
    hidden = ttk.Button(root, text="Save", underline=0, command=lambda: heard.append("hidden"))
    shown = ttk.Button(root, text="Save", underline=0, command=lambda: heard.append("shown"))
    off = ttk.Button(root, text="Export", underline=0, state="disabled", command=lambda: heard.append("off"))
    hidden.grid(row=0)
    hidden.grid_remove()
    shown.grid(row=1)
    off.grid(row=2)
    root.update()
    press(root, "<Alt-s>", "<Alt-S>", "<Alt-e>", "<Alt-q>")
    assert heard == ["shown", "shown"]


@pytest.mark.parametrize("kind", [ttk.Entry, ttk.Combobox])
def test_keys_of_the_program_do_not_edit_a_field_too(root: tk.Tk, look: Look, kind: type[ttk.Entry]) -> None:
    field = kind(root)
    field.grid()
    field.insert(0, "Limewalk")
    field.icursor(4)
    press(field, "<Control-d>", "<Control-h>", "<Control-k>", "<Control-t>")
    assert field.get() == "Limewalk"
