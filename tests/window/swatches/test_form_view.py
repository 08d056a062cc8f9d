"""The form of a swatch."""

import tkinter as tk
from pathlib import Path

import pytest

from logbook.window.swatches.page import SwatchesPage
from tests.support.screen import settle


def test_pictures_take_no_room_from_the_daily_fields(
    root: tk.Tk, page: SwatchesPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    yarn = page.editor.fields["yarn"]
    settle(root)
    before = yarn.winfo_rooty()
    page.form.type_in("pictures", "a.png; b.png")
    page.editor.show()
    settle(root)
    assert yarn.winfo_rooty() == before
    assert "pictures" not in page.editor.fields
    assert page.editor.sections["swatches.more"]._holds.startswith("2 pictures")
    monkeypatch.setattr("logbook.window.pictures_field.ask_what_to_open", lambda **_: "")
    page.editor.add_picture()
    settle(root)
    assert page.editor.fields["pictures"].text == "a.png; b.png"
    assert page.editor.fields["pictures"].winfo_viewable()
