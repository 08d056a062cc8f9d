"""The names offered in the dialogs that ask where to save."""

import tkinter as tk
from typing import Any

import pytest

from logbook.window.file_dialogs import ask_where_to_save, file_name, named_today

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
