"""The sizes of a piece and what was made of it, through real key events.

The swatch is 38.18 mm a repeat of 6, plus 1, extra chain 1; two panels, ease 5 cm: bodies of 78.5, 83.5, 94, 104 and 114.5 cm
make chains 68 (68, 80, 86, 92): 114.5 + 5 is 59.75 cm a panel, 91 stitches are 57.91, 97 are 61.73.
"""

import tkinter as tk
import webbrowser
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from tkinter import filedialog

import openpyxl
import pytest

from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.body_charts import chart_texts
from logbook.tasks.keeping import new_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.pieces import made_pieces, planned_pieces, save_piece
from logbook.window.look import Look
from logbook.window.pieces.page import PiecesPage
from tests.support.dialogs import while_asked
from tests.support.display import scaled
from tests.support.screen import focused, hit, settle, write
from tests.support.size_runs import BUSTS, PLAN, SWATCH


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    with new_book(tmp_path / "a.logbook", keep_backups=False) as book:
        uid = save_swatch(book, replace(SWATCH, uid=""))
        save_piece(book, PlannedPiece(plan=PLAN, swatch=uid, sizes=BUSTS))
        yield Session(book, Settings())


@pytest.fixture
def page(root: tk.Tk, look: Look, session: Session) -> PiecesPage:
    root.geometry(f"{scaled(1366)}x{scaled(690)}+0+0")
    shown = PiecesPage(root, look, session)
    shown.frame.pack(fill="both", expand=True)
    settle(root)
    shown.first_focus()
    root.update()
    return shown


def chains(page: PiecesPage) -> list[str]:
    return [str(page.sizes.view.table.tree.set(key, "chain")) for key in page.sizes.view.table.shown]


def piece(session: Session, name: str = PLAN.name) -> PlannedPiece:
    return next(one for one in planned_pieces(session.book) if one.name == name)


def test_from_a_logged_swatch_to_the_copied_lines_of_five_sizes(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    keys = 0

    def typed(text: str) -> None:
        nonlocal keys
        keys += len(text)
        write(root, text)

    def pressed(*which: str) -> None:
        nonlocal keys
        keys += len(which)
        hit(root, *which)

    def chart(dialog: tk.Toplevel) -> None:
        nonlocal keys
        hit(dialog, "<Alt-e>")
        for size, bust in (("XS", "78.5"), ("S", "83.5"), ("M", "94"), ("L", "104"), ("1X", "114.5")):
            write(dialog, size)
            hit(dialog, "<Tab>")
            write(dialog, bust)
            hit(dialog, "<Return>")
            keys += len(size) + len(bust) + 2
        hit(dialog, "<Alt-t>")
        keys += 3

    pressed("<Control-n>")
    typed("Ferry vest")
    pressed("<Alt-c>")
    typed("S1")
    pressed("<Alt-b>", "<Tab>")
    typed("5")
    pressed("<Alt-o>", "<Shift-Tab>")
    typed("56")
    while_asked(root, chart)
    pressed("<Control-b>")
    settle(root)
    assert chains(page) == ["68", "68", "80", "86", "92"]
    pressed("<Control-l>")
    lines = root.clipboard_get().splitlines()
    assert lines[0] == "Ferry vest"
    assert "XS (S, M, L, 1X)" in lines
    assert "Ch 68 (68, 80, 86, 92)." in lines
    pressed("<Control-s>")
    assert [size.name for size in piece(session, "Ferry vest").sizes] == ["XS", "S", "M", "L", "1X"]
    # At two keys a second, which is slow typing, this is well within two minutes.
    assert keys < 120


def test_the_same_ones_are_named_and_one_button_parts_them(root: tk.Tk, page: PiecesPage) -> None:
    view = page.sizes.view
    assert view.same["text"] == "! A and B come out the same."
    (button,) = (child for child in view.remedies.winfo_children() if child.winfo_class() == "TButton")
    button.invoke()  # type: ignore[attr-defined]
    settle(root)
    assert chains(page) == ["64", "70", "76", "88"]
    assert not view.same.winfo_ismapped()
    assert page.editor.fields["edge stitches"].text == "1"
    assert page.form.is_dirty


def test_a_size_is_typed_and_the_table_follows(root: tk.Tk, page: PiecesPage) -> None:
    view = page.sizes.view
    view.fields["body"].input.focus_force()
    hit(root, "<Control-a>")
    write(root, "94")
    assert chains(page) == ["80", "68", "80", "86"]
    assert page.follow.headline["text"].startswith("A: Chain 80")
    write(root, "x")
    assert chains(page) == ["–", "–", "–", "–"]
    assert "is not a body measure" in view.missing["text"]
    assert "is not a body measure" in view.size_row.message["text"]
    assert page.follow.headline["text"] == "—" or not page.card.answer
    hit(root, "<BackSpace>")
    view.table.walk(3)
    settle(root)
    assert page.follow.headline["text"].startswith("D: Chain 86")
    assert view.fields["body"].text == "104 cm"


def test_the_first_size_is_renamed_before_anything_else_is_typed_of_it(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    save_piece(session.book, replace(piece(session), sizes=()))
    session.records_changed(None)
    settle(root)
    view = page.sizes.view
    page.sizes.folding.show(True)
    view.add()
    settle(root)
    write(root, "S")
    hit(root, "<Tab>")
    write(root, "86")
    settle(root)
    assert (view.fields["size"].text, view.fields["body"].text) == ("S", "86")
    assert page.form.is_dirty
    assert len(view.table.shown) == 1


@pytest.mark.parametrize("typed", ["x", "<BackSpace>", "1"])
def test_the_field_that_is_typed_in_stays_where_it_is(root: tk.Tk, look: Look, page: PiecesPage, typed: str) -> None:
    """Also while there are no numbers, and what stands above it goes away."""
    root.geometry(f"{scaled(1366)}x{scaled(500)}")
    settle(root)
    field = page.sizes.view.fields["body"].input
    field.focus_force()
    settle(root)
    hit(root, "<Control-a>")
    top = field.winfo_rooty()
    for key in (typed, "4", "<BackSpace>"):
        write(root, key) if len(key) == 1 else hit(root, key)
        settle(root)
        assert abs(field.winfo_rooty() - top) < look.line


@pytest.mark.parametrize(("begin", "steps"), [(0, (1, 1, 1, -1, -1, -1)), (3, (-1, -1, -1, 1, 1, 1))])
def test_the_sizes_stay_where_they_are_when_another_is_chosen(
    root: tk.Tk, page: PiecesPage, session: Session, begin: int, steps: tuple[int, ...]
) -> None:
    saved = piece(session)
    plan = replace(PLAN, hip_mm=950.0)
    save_piece(session.book, replace(saved, plan=plan))
    session.records_changed(None)
    settle(root)
    table, follow = page.sizes.view.table, page.follow
    heights, tops = [], []
    table.walk(begin)
    follow.to_top()
    settle(root)
    for step in (0, *steps):
        table.walk(step)
        settle(root)
        heights.append(sum(one.winfo_height() for one in (follow.warnings, follow.sentences) if one.winfo_ismapped()))
        tops.append(follow.runs.winfo_rooty())
    assert len(set(heights)) > 1
    assert max(tops) - min(tops) <= 1  # Tk scrolls to whole pixels


def test_the_sizes_stay_where_they_are_when_the_piece_is_saved_and_another_begins_at_its_top(
    root: tk.Tk, page: PiecesPage
) -> None:
    canvas, runs = page.follow._scrolled.canvas, page.follow.runs
    page.follow._scrolled.scroll_lines(8)
    page.editor.fields["width"].input.focus_force()
    hit(root, "<Control-a>")
    write(root, "47")
    settle(root)
    before = runs.winfo_rooty()
    assert canvas.yview()[0] > 0
    hit(root, "<Control-s>")
    settle(root)
    assert not page.form.is_dirty
    assert abs(runs.winfo_rooty() - before) <= 1
    hit(root, "<Control-g>")
    settle(root)
    assert canvas.yview()[0] == 0


def test_sizes_are_added_and_taken_out(root: tk.Tk, page: PiecesPage) -> None:
    view = page.sizes.view
    view.add()
    root.update()
    assert focused(root) is view.fields["size"].input
    write(root, "E")
    assert view.size_name == "E"
    assert len(chains(page)) == 5
    view.remove()
    view.remove()
    assert [row["size"] for row in view._rows] == ["A", "B", "C"]
    for _ in range(3):
        view.remove()
    assert "No sizes yet" in view.missing["text"]
    assert "disabled" in view.remove_button.state()
    assert page.follow.headline["text"] == "—"


def test_a_run_is_set_shown_as_it_was_and_taken_back(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    hit(root, "<Control-t>")
    settle(root)
    assert piece(session).published is not None
    assert "Today it would be the same." in page.sizes.view.set_words["text"]
    page.editor.fields["edge stitches"].text = "1"
    changes = page.sizes.view.changes
    assert ("A", "chain", "68", "64") in [changes.cells(key) for key in changes.shown]
    settle(root)
    assert changes.winfo_ismapped()
    hit(root, "<Control-l>")
    assert "Ch 68 (68, 80, 86)." in root.clipboard_get()
    hit(root, "<Control-s>")
    assert piece(session).published is not None
    page.sizes.files.unset()
    assert piece(session).published is None
    assert not page.sizes.view.set_words.winfo_ismapped()


def test_what_is_typed_stays_when_a_run_is_set(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    page.editor.fields["notes"].text = "for the ferry"
    hit(root, "<Control-t>")
    assert (piece(session).notes, piece(session).published is not None) == ("for the ferry", True)
    assert not page.form.is_dirty


def test_the_run_is_printed_and_saved(
    root: tk.Tk, page: PiecesPage, session: Session, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[str] = []
    monkeypatch.setattr(webbrowser, "open", lambda address: opened.append(address) or True)
    hit(root, "<Control-Shift-P>")
    html = Path(opened[0].removeprefix("file://")).read_text("utf-8")
    assert "Ch 68 (68, 80, 86)." in html
    assert "From swatch S1: shell stitch" in html
    for save, name in ((page.sizes.files.save_lines, "lines.txt"), (page.sizes.files.save_workbook, "run.xlsx")):
        monkeypatch.setattr(filedialog, "asksaveasfilename", lambda name=name, **_: str(tmp_path / name))
        save()
    assert "Ch 68 (68, 80, 86)." in (tmp_path / "lines.txt").read_text("utf-8")
    assert openpyxl.load_workbook(tmp_path / "run.xlsx").sheetnames == ["Sizes", "Drawing", "Lines"]


def texts_in(widget: tk.Misc) -> list[str]:
    """The lines of all that is shown in it."""
    own = str(widget["text"]).splitlines() if widget.winfo_class() == "TLabel" and widget.winfo_ismapped() else []
    return [*own, *(line for child in widget.winfo_children() for line in texts_in(child))]


def test_what_is_said_of_the_sizes_stands_there_once(root: tk.Tk, page: PiecesPage) -> None:
    root.update()
    lines = [line for line in texts_in(page.follow) if line.endswith(".") and len(line) > 30]
    assert any("usually differs from its swatch" in line for line in lines)
    assert sorted(lines) == sorted(set(lines))
    assert page.card.notes, "the size in hand keeps its own, for the print"


def test_a_chart_is_edited_kept_and_taken(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    said: list[str] = []

    def act(dialog: tk.Toplevel) -> None:
        dialog.table.show(["size", "bust"], [["A", ""]])  # type: ignore[attr-defined]
        dialog.table._cells[0][1].set("wide")  # type: ignore[attr-defined]
        said.append(dialog.fault["text"])  # type: ignore[attr-defined]
        assert "disabled" in dialog.take_button.state()  # type: ignore[attr-defined]
        dialog.name.text = "chorus"  # type: ignore[attr-defined]
        dialog.clipboard_clear()
        dialog.clipboard_append("A\t78.5\nB\t94\n")
        dialog.table.start()  # type: ignore[attr-defined]
        dialog.update()
        hit(dialog, "<Control-v>")
        hit(dialog, "<Alt-s>")
        said.append(dialog.says["text"])  # type: ignore[attr-defined]
        hit(dialog, "<Alt-t>")

    while_asked(root, act)
    page.sizes.choose_chart()
    assert said[0].startswith("✕ Row 2 of the chart, column bust: “wide”")
    assert said[1] == "The body chart “chorus” is saved."
    assert "chorus" in chart_texts(session.book)
    assert chains(page) == ["68", "80"]
    hit(root, "<Control-r>")
    assert len(chains(page)) == 4


def logged(root: tk.Tk, page: PiecesPage, session: Session, fill: Callable[[tk.Toplevel], None]) -> MadePiece:
    """What was made of size C, once ``fill`` has filled and saved its form."""
    page.sizes.view.table.walk(2)
    while_asked(root, fill)
    hit(root, "<Control-m>")
    (made,) = made_pieces(session.book)
    return made


def test_what_was_made_is_logged_beside_its_plan(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    def log(dialog: tk.Toplevel) -> None:
        assert dialog.fields["chain"].text == "80"  # type: ignore[attr-defined]
        hit(dialog, "<Alt-a>")
        write(dialog, "51.8")
        hit(dialog, "<Alt-s>")

    made = logged(root, page, session, log)
    assert (made.name, made.chain, made.washed_width_mm) == ("Boathouse vest, C", 80, 518)
    assert "Width: predicted 50.3 cm, measured 51.8 cm (+1.5 cm, +3 %)." in page.sizes.made_words["text"]
    assert any("learned from 1 piece" in line for line in texts_in(page.follow))
    assert page.sizes.made.table.shown == [made.uid]

    def delete(dialog: tk.Toplevel) -> None:
        hit(dialog, "<Alt-d>")

    page.sizes.made.table.select([made.uid])
    while_asked(root, delete)
    page.sizes.made._open()
    assert made_pieces(session.book) == []
    assert not page.sizes.made.winfo_ismapped()


def test_a_made_piece_of_another_size_than_was_looked_at(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    def log(dialog: tk.Toplevel) -> None:
        hit(dialog, "<Alt-z>", "<Control-a>")
        write(dialog, "D")
        hit(dialog, "<Alt-s>")

    made = logged(root, page, session, log)
    assert (made.name, made.size, made.chain) == ("Boathouse vest, D", "D", 86)


def test_a_made_piece_that_lacks_something_stays_open(root: tk.Tk, page: PiecesPage, session: Session) -> None:
    def log(dialog: tk.Toplevel) -> None:
        dialog.fields["name"].text = ""  # type: ignore[attr-defined]
        dialog.save_button.invoke()  # type: ignore[attr-defined]
        assert focused(dialog) is dialog.fields["name"].input  # type: ignore[attr-defined]
        assert dialog.fields["name"].message["text"].startswith("✕ Name it")  # type: ignore[attr-defined]

    page.editor.fields["name"].text = "something typed, so it is one on its own"
    while_asked(root, log)
    page.sizes.log_made()
    assert made_pieces(session.book) == []


@pytest.mark.parametrize("percent", [100, 200])
def test_nothing_is_cut_off(root: tk.Tk, look: Look, page: PiecesPage, percent: int) -> None:
    look.apply(percent=percent)
    settle(root)
    right = page.follow.winfo_rootx() + page.follow.winfo_width()
    view = page.sizes.view
    for widget in (*view.fields.values(), view.chart_button, view.remove_button, view.copy_button, view.table):
        assert widget.winfo_rootx() + widget.winfo_width() <= right, widget
