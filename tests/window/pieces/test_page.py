"""The page of pieces through real key events."""

import tkinter as tk
import webbrowser
from dataclasses import replace
from pathlib import Path
from tkinter import filedialog

import pytest

from logbook.pages.session import Session
from logbook.tasks.pieces import planned_pieces
from logbook.window.canvas import DrawingCanvas
from logbook.window.look import Look
from logbook.window.pieces.page import PiecesPage
from logbook.window.pieces.shaping_dialog import show_shaping
from tests.support.dialogs import while_asked
from tests.support.display import scaled
from tests.support.screen import focused, hit, settle, write


@pytest.fixture
def page(root: tk.Tk, look: Look, session: Session) -> PiecesPage:
    root.geometry(f"{scaled(1366)}x{scaled(690)}+0+0")
    shown = PiecesPage(root, look, session)
    shown.frame.pack(fill="both", expand=True)
    settle(root)
    shown.first_focus()
    root.update()
    return shown


def names(session: Session) -> list[str]:
    return [piece.name for piece in planned_pieces(session.book)]


def test_a_piece_is_planned_by_keyboard_alone(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    hit(root, "<Control-n>")
    assert focused(root) is page.editor.fields["name"].input
    write(root, "Lace scarf")
    hit(root, "<Alt-c>")
    write(root, "L1")
    hit(root, "<Alt-a>")
    write(root, "46")
    (unit,) = page.editor.fields["width"].input.winfo_children()
    assert (unit.winfo_viewable(), unit["text"]) == (1, "cm")
    assert page.follow.headline["text"] == "Chain 100"
    hit(root, "<Control-s>")
    assert names(session) == ["Lace scarf", "Rib top", "Vest"]
    assert page.find.table.selected == (page.form.uid,)
    assert "disabled" in page.row.buttons["Save"].state()


def test_what_follows_is_never_stale(root: tk.Tk, page: PiecesPage) -> None:
    hit(root, "<Alt-b>", "<Control-a>")
    write(root, "100")
    assert page.follow.headline["text"] != "—"
    write(root, "x")
    assert page.follow.headline["text"] == "—"
    assert "is not a length" in page.follow.missing["text"]
    assert not page.follow.drawing.winfo_ismapped()
    hit(root, "<BackSpace>")
    settle(root)
    assert page.follow.drawing.winfo_ismapped()
    assert len(page.follow.drawing.find_all()) > 20


def test_walking_the_list_shows_each(root: tk.Tk, page: PiecesPage) -> None:
    assert page.editor.fields["name"].text == "Rib top"
    hit(root, "<Control-f>", "<Down>")
    assert page.follow.headline["text"] == "Chain 76, 62 rows"
    write(root, "rib")
    hit(root, "<Return>")
    assert page.editor.fields["name"].text == "Rib top"
    assert focused(root) is page.editor.fields["name"].input


def test_a_swatch_is_chosen_from_the_list_by_words(root: tk.Tk, page: PiecesPage) -> None:
    field = page.editor.fields["swatch"]
    hit(root, "<Alt-c>", "<Control-a>")
    write(root, "half")
    assert field.message["text"].startswith("↓ H")
    field.text = page.editor._swatches("swatch")[0]  # as the list would put it there
    field.input.event_generate("<<ComboboxSelected>>")
    root.update()
    assert field.text in ("H1", "H2")
    assert page.form.swatch_uid()


def test_copy_delete_and_revert(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    hit(root, "<Control-g>")
    assert page.editor.fields["name"].text == "Rib top, copy"
    hit(root, "<Control-s>")
    assert names(session) == ["Rib top", "Rib top, copy", "Vest"]
    hit(root, "<Control-d>")
    assert names(session) == ["Rib top", "Vest"]
    write(page.editor.fields["name"].input, "")
    page.editor.fields["name"].input.focus_force()
    write(root, "X")
    hit(root, "<Control-r>")
    assert not page.form.is_dirty


def test_what_is_missing_is_said_beside_its_field_on_saving(root: tk.Tk, page: PiecesPage) -> None:
    hit(root, "<Control-n>")
    write(root, "Bag")
    hit(root, "<Control-s>")
    assert focused(root) is page.editor.fields["swatch"].input
    assert page.editor.fields["swatch"].message["text"].startswith("✕ Choose the swatch")
    assert page.row.refusal["text"].startswith("✕ Not saved yet")


def test_shaping_is_written_and_copied(root: tk.Tk, look: Look, page: PiecesPage) -> None:
    seen: list[str] = []

    def act(dialog: tk.Toplevel) -> None:
        dialog.fields["end"].text = "97"  # type: ignore[attr-defined]
        dialog.update()
        seen.append(dialog.result["text"])  # type: ignore[attr-defined]
        hit(dialog, "<Alt-o>")
        dialog._copy.invoke()  # type: ignore[attr-defined]
        seen.append(dialog.clipboard_get())

    while_asked(root, act)
    show_shaping(root, look, page.card.answer)
    # 5 pairs over 58 rows: the first after half a gap of 11, then one gap of 11 and three of 12, 5 rows plain
    assert seen == ["Increase at both edges in row 6, in row 17, in every 12th row 3 times, then 5 rows even."] * 2


def test_printing_opens_a_page_of_its_own(root: tk.Tk, page: PiecesPage, monkeypatch: pytest.MonkeyPatch) -> None:
    opened: list[str] = []
    monkeypatch.setattr(webbrowser, "open", lambda address: opened.append(address) or True)
    hit(root, "<Control-p>")
    html = Path(opened[0].removeprefix("file://")).read_text("utf-8")
    assert "Rib top: chain 88, 58 rows" in html
    assert "From swatch R1" in html
    page.editor.fields["body"].text = ""
    hit(root, "<Control-p>")
    assert len(opened) == 1


def test_drawing_and_figures_are_saved(
    page: PiecesPage, session: Session, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    said: list[str] = []
    session.say = said.append
    for save, name in ((page.files.save_drawing, "rib.svg"), (page.files.save_workbook, "rib.xlsx")):
        monkeypatch.setattr(filedialog, "asksaveasfilename", lambda name=name, **_: str(tmp_path / name))
        save()
        assert (tmp_path / name).stat().st_size > 1000
    assert said == [f"Written to {tmp_path / name}." for name in ("rib.svg", "rib.xlsx")]


@pytest.mark.parametrize("percent", [100, 150, 200])
def test_nothing_is_cut_off_at_any_text_size(root: tk.Tk, look: Look, page: PiecesPage, percent: int) -> None:
    look.apply(percent=percent)
    settle(root)
    right = page.frame.winfo_rootx() + page.frame.winfo_width()
    for button in page.row.buttons.values():
        assert button.winfo_rootx() + button.winfo_width() <= right
        assert button.winfo_rooty() + button.winfo_height() <= root.winfo_rooty() + root.winfo_height()
    for view in (page.find, page.editor, page.follow):
        assert view.winfo_width() > 200
    assert not page.find.empty.winfo_ismapped()


def test_units_and_another_window_are_followed(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    session.change_settings(replace(session.settings, units="in"))
    slit = page.editor.fields["slit"]
    slit.input.focus_force()
    write(root, "3 1/2")
    hit(root, "<Tab>")
    assert slit.text == "3 1/2 in"  # what a bare number is read in
    slit.text = ""
    assert "in wide" in page.follow.sentences["text"]
    other = PiecesPage(tk.Frame(root), page.look, session)
    other.editor.fields["neck"].text = "30 cm"
    assert other.save()
    assert page.editor.fields["neck"].text == "30 cm"
    assert isinstance(page.follow.drawing, DrawingCanvas)


def test_each_underlined_letter_is_there_once(root: tk.Tk, page: PiecesPage) -> None:
    for folding in page.editor.sections.values():
        if not folding.is_open:
            folding.header.invoke()
    settle(root)
    letters = []

    def collect(place: tk.Misc) -> None:
        for child in place.winfo_children():
            if child.winfo_class() in ("TButton", "TLabel", "TCheckbutton", "TMenubutton") and child.winfo_manager():
                at = int(str(child.cget("underline")) or -1)
                letters.extend([str(child.cget("text"))[at].lower()] if at >= 0 else [])
            collect(child)

    collect(page.frame)
    assert len(letters) == len(set(letters)) > 10
    # Those of the menus and of the row of pages.
    assert not set(letters) & set("levhwit")


def test_everything_in_the_folds_counts(root: tk.Tk, page: PiecesPage) -> None:
    for folding in page.editor.sections.values():
        folding.header.invoke()
    fields, ticks = page.editor.fields, page.editor.boxes
    assert set(fields) | set(ticks) | {"sizes"} == set(page.form.texts)
    fields["side edging"].text = "2"
    assert page.card.answer is not None
    assert page.card.answer.plan.side_edging_mm == 20
    ticks["snap"].invoke()
    assert page.card.answer.plan.snap
    fields["hip"].text = "150"
    assert "hip measures 150.0 cm" in page.follow.warnings["text"]
    fields["finish"].text = "washed, pinned out"
    assert page.follow.headline["text"] == "—"  # this swatch was measured neither as worked nor pinned out
    assert "pinned out" in page.follow.missing["text"]


def test_short_fields_share_a_line_where_there_is_room_and_what_holds_stands_in_grey(
    root: tk.Tk, look: Look, page: PiecesPage
) -> None:
    root.geometry(f"{scaled(1500)}x{scaled(690)}+0+0")  # letters are a little wider at some dots per inch
    settle(root)
    fields = page.editor.fields
    assert fields["width"].input.winfo_rooty() == fields["body"].input.winfo_rooty()
    assert fields["ease"].input.winfo_rootx() == fields["length"].input.winfo_rootx()
    root.geometry(f"{scaled(1366)}x{scaled(690)}+0+0")
    look.apply(percent=200)
    settle(root)
    assert fields["width"].input.winfo_rooty() < fields["body"].input.winfo_rooty()
    assert fields["width"].input.winfo_rootx() == fields["body"].input.winfo_rootx()


def test_the_drawing_stands_under_the_headline(page: PiecesPage) -> None:
    places = [part.winfo_rooty() for part in (page.follow.headline, page.follow.drawing, page.follow.sentences)]
    assert places == sorted(places)
    assert page.follow.drawing.winfo_height() > 100
