"""Garments on the page of pieces, through key events."""

import tkinter as tk
import webbrowser
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.craft.garments.plan import Garment
from logbook.craft.garments.templates import template
from logbook.pages.session import Session
from logbook.tasks.body_charts import save_chart
from logbook.tasks.garment_publishing import published, published_drawing, published_page, published_workbook
from logbook.tasks.garments import garments, save_garment
from logbook.tasks.undoing import undo
from logbook.window.dialog import Dialog
from logbook.window.garments.page import GarmentsPage
from logbook.window.look import Look
from logbook.window.pieces.both import PiecesAndGarments
from tests.support.dialogs import while_asked
from tests.support.display import scaled
from tests.support.fits import edges, layout_faults
from tests.support.screen import focused, hit, settle, wait_until, write
from tests.support.whole_window import chosen_file


@pytest.fixture
def page(root: tk.Tk, look: Look, session: Session) -> GarmentsPage:
    root.geometry(f"{scaled(1366)}x{scaled(690)}+0+0")
    shown = GarmentsPage(root, look, session)
    shown.frame.pack(fill="both", expand=True)
    settle(root)
    shown.first_focus()
    root.update()
    return shown


def begin(root: tk.Tk, page: GarmentsPage, name: str = "cardigan", tag: str = "H1") -> None:
    page.form.begin(name, tag)
    page.garments.fold("new", True)
    page._shown_anew()
    page.editor.start()
    root.update()
    write(root, "Quay")


def test_a_new_garment_is_begun_from_a_template(root: tk.Tk, page: GarmentsPage, session: Session) -> None:
    while_asked(root, lambda dialog: hit(dialog, "<Alt-b>"))
    hit(root, "<Control-n>")
    write(root, "Quay")
    assert page.follow.headline["text"] == "—"  # its swatches are still to be chosen
    for place in (1, 2):
        page.find.table.tree.selection_set(f"new/{place}")
        root.update()
        hit(root, "<Alt-c>")
        write(root, "H1")
    assert page.follow.headline["text"].startswith("Chain ")
    hit(root, "<Control-s>")
    assert [garment.name for garment in garments(session.book)] == ["Quay"]


def test_a_piece_that_gets_another_shape_keeps_the_keyboard_for_the_very_next_key(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page, "empty")
    assert page.follow.sentences["text"] == "It has no pieces yet: “Add a piece” adds one."
    page.add_piece()
    root.update()
    page.editor.fields["shape"].input.focus_force()
    root.update()
    page.editor.fields["shape"].text = "tapered panel"  # its card is made and shown within that, as within the key
    assert focused(page.editor) is page.editor.fields["shape"].input
    assert "end width" in page.editor.fields


def test_a_piece_is_chosen_typed_in_and_saved(root: tk.Tk, page: GarmentsPage, session: Session) -> None:
    begin(root, page)
    hit(root, "<Control-s>")
    assert page.find.table.selected == (page.form.uid,)
    page.find.table.tree.selection_set(f"{page.form.uid}/3")
    root.update()
    assert page.editor.fields["end width"].text == "2 × armhole of back"
    before = page.follow.headline["text"]
    page.editor.fields["length"].input.focus_force()
    hit(root, "<Control-a>")
    write(root, "50")
    assert page.follow.headline["text"] != before
    assert str(page.editor.fields["length"].unit["text"]) == "50.0 cm"  # type: ignore[index]
    hit(root, "<Control-s>")
    assert garments(session.book)[0].plan.pieces[2].measures["length"] == "50"
    assert page.form.piece == 3
    session.write(lambda: undo(session.book))
    session.records_changed(None)
    assert page.editor.fields["length"].text == "arm length"


def unit(page: GarmentsPage, key: str) -> str:
    """What stands after a field."""
    return str(page.editor.fields[key].unit["text"])  # type: ignore[index]


def test_what_a_measure_comes_to_follows_an_undo(root: tk.Tk, page: GarmentsPage, session: Session) -> None:
    begin(root, page, "two-panel top")
    page.form.type_in("piece 1: length", "56")
    assert page.save()
    page.form.type_in("piece 1: length", "60")
    assert page.save()
    page.find.table.tree.selection_set(f"{page.form.uid}/2")
    root.update()
    assert (page.editor.fields["length"].text, unit(page, "length")) == ("length of back", "60.0 cm")
    session.write(lambda: undo(session.book))
    session.records_changed(None)
    assert page.card.chosen is not None
    assert unit(page, "length") == "56.0 cm"


def test_what_a_measure_comes_to_follows_a_chart_that_is_another(root: tk.Tk, page: GarmentsPage, session: Session) -> None:
    session.write(lambda: save_chart(session.book, "women", "size; bust; armhole depth\nonly; 90; 18"))
    begin(root, page, "two-panel top")
    page.find.table.tree.selection_set("new/1")
    root.update()
    assert unit(page, "armhole") == "20.0 cm"
    session.write(lambda: save_chart(session.book, "women", "size; bust; armhole depth\nonly; 90; 19"))
    session.records_changed(None)
    assert unit(page, "armhole") == "21.0 cm"


@pytest.mark.parametrize("other", ["new", "new/3"])
def test_a_field_left_when_another_card_is_shown_says_nothing_of_its_part(root: tk.Tk, page: GarmentsPage, other: str) -> None:
    """As where the window manager hands a click on late."""
    begin(root, page)
    page.find.table.tree.selection_set("new/1")
    root.update()
    behind = page.editor.fields["swatch"]
    page.find.table.tree.selection_set(other)
    root.update()
    before = dict(page.form.texts)
    behind.text = "H2"  # its list was still open
    behind.input.event_generate("<FocusOut>")
    root.update()
    assert page.form.texts == before


def test_the_keyboard_goes_with_the_card_to_that_of_another_part(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    page.find.table.tree.selection_set("new/1")
    root.update()
    page.editor.fields["swatch"].input.focus_force()
    root.update()
    page.find.table.tree.selection_set("new")
    root.update()
    assert focused(root) is page.editor.fields["name"].input


def test_the_swatch_of_the_edges_is_chosen_in_the_form(root: tk.Tk, page: GarmentsPage, session: Session) -> None:
    begin(root, page, tag="L1")
    page.find.table.tree.selection_set("new/3")
    root.update()
    ends = page.editor.fields["edge swatch"]
    ends.input.focus_force()
    write(root, "R2")
    page.editor.fields["name"].input.focus_force()
    root.update()
    assert "There is no swatch “R2”" in str(ends.message["text"])  # type: ignore[index]
    before = page.follow.headline["text"], page.card.garment
    ends.text = "R1"
    root.update()
    assert page.card.garment != before[1]
    hit(root, "<Control-s>")
    assert [piece.edge_swatch for piece in garments(session.book)[0].plan.pieces] == ["", "", "R1", ""]
    page.find.table.tree.selection_set(f"{page.form.uid}/1")
    root.update()
    assert "edge swatch" not in page.editor.fields, "a panel has no stitches of its own at its edges"


def test_where_there_is_little_room_the_button_stands_beneath_its_trouble(root: tk.Tk, look: Look, page: GarmentsPage) -> None:
    begin(root, page, "two-panel top")
    page.form.type_in("piece 2: length", "50")
    page._shown_anew()
    wait_until(root, lambda: [str(button["text"]) for button in page.follow._fixes.values()] == ["Work 6 rows more in all sizes"])
    (button,) = page.follow._fixes.values()
    assert int(button.grid_info()["column"]) == 2
    look.apply(percent=200)
    page.panes.bring(2)
    settle(root)
    (button,) = page.follow._fixes.values()
    assert int(button.grid_info()["column"]) == 1
    assert button.winfo_ismapped()
    assert button.winfo_x() + button.winfo_width() <= page.follow.troubles.winfo_width()


def test_a_trouble_has_a_button_that_takes_its_remedy(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    page.form.type_in("piece 3: end width", "30 cm")
    page._shown_anew()
    wait_until(root, lambda: [str(button["text"]) for button in page.follow._fixes.values()] == ["Make it fit in all sizes"])
    (button,) = page.follow._fixes.values()
    button.invoke()
    root.update()
    assert not page.follow._fixes
    assert "end width of sleeve" in page.form.texts["own sizes"]
    page.find.table.tree.selection_set("new/3")
    root.update()
    said = page.editor.fields["end width"].message
    assert said is not None
    assert str(said["text"]).startswith("These sizes have their own: XS ")


def test_the_numbers_of_all_pieces_are_whole_in_a_narrow_place(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    page._view_chosen("Numbers")
    root.update()
    table = page.follow.numbers.pieces
    assert table.tree.xview() == (0.0, 1.0)
    assert not table.across.winfo_ismapped()
    shown = [str(key) for key in table.tree.cget("displaycolumns")]
    assert shown[:5] == ["piece", "chain", "stitches", "rows", "width"]
    assert str(table.tree.heading("width", "text")) == "End width"


@pytest.mark.parametrize(("percent", "height"), [(100, 690), (200, 690), (200, 520)])
def test_the_numbers_and_the_rows_of_a_piece_lie_in_their_place(
    root: tk.Tk, look: Look, page: GarmentsPage, percent: int, height: int
) -> None:
    """The rows fill it in small text, and in large they scroll with what is above them."""
    begin(root, page, "hat")
    page._view_chosen("Numbers")
    page.find.table.tree.selection_set("new/1")
    settle(root)
    look.apply(percent=percent)
    root.geometry(f"{scaled(1366)}x{scaled(height)}+0+0")
    settle(root)
    page.panes.bring(2)
    settle(root)
    numbers = page.follow.numbers
    assert layout_faults(numbers) == []
    assert numbers.rows.tree.xview() == (0.0, 1.0)
    assert len(numbers.rows.tree.get_children()) > 5
    assert int(numbers.rows.tree.cget("height")) >= 5
    bottom = numbers.rows.winfo_rooty() + numbers.rows.winfo_height()
    if percent == 100:
        assert bottom <= numbers.canvas.winfo_rooty() + numbers.canvas.winfo_height() < bottom + look.line + look.pixels(2)


@pytest.mark.parametrize("view", ["Numbers", "Sizes"])
def test_in_a_low_place_what_is_looked_at_is_in_view_before_what_is_said_of_it(
    root: tk.Tk, look: Look, page: GarmentsPage, view: str
) -> None:
    begin(root, page, "hat")
    page.find.table.tree.selection_set("new/1")
    settle(root)
    page._view_chosen(view)
    settle(root)
    assert page.follow.sentences.winfo_viewable()
    look.apply(percent=200)
    root.geometry(f"{scaled(1000)}x{scaled(520)}+0+0")
    settle(root)
    page.panes.bring(2)
    settle(root)
    assert not page.follow.sentences.winfo_viewable()
    assert page.follow.headline.winfo_viewable() == (view == "Numbers")
    said = page.follow._at_the_end[view]
    table = page.follow.numbers.pieces if view == "Numbers" else page.follow._size_table
    assert said.winfo_viewable()
    assert str(said["text"]) == str(page.follow._says) != ""
    assert edges(table)[3] <= edges(said)[1]
    assert layout_faults(page.follow) == []


def test_the_other_sizes_follow_by_themselves(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    page.form.type_in("piece 3: end width", "30 cm")
    page._changed()
    wait_until(root, lambda: str(page.follow.sizes.buttons["5X"]["text"]) == "✕ 5X")
    page.follow.sizes.buttons["M"].invoke()
    hit(root, "<Right>")
    assert page.card.size == "L"
    page._view_chosen("Sizes")
    wait_until(root, lambda: len(page.follow._size_table.shown) == 9)


def test_an_empty_garment_shows_its_one_size_whole_and_nothing_to_scroll(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    wait_until(root, page.follow.all.winfo_ismapped)
    begin(root, page, "empty")
    wait_until(root, lambda: page.follow._drawing.inside.winfo_reqheight() < 10)
    page._view_chosen("Sizes")
    wait_until(root, lambda: page.follow._size_table.shown == ["one size"])
    size = page.follow._size_table.tree.column("Size", "width")
    assert int(size) > page.follow.look.base.measure("one size")


def test_the_pattern_is_written_copied_printed_and_published(
    root: tk.Tk, page: GarmentsPage, session: Session, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    begin(root, page)
    hit(root, "<Control-s>")
    page._view_chosen("Pattern")
    wait_until(root, lambda: page.follow.pattern.text.startswith("Quay\n"))
    area = page.follow.pattern.area
    assert area.get("1.0", "end-1c") == f"{page.follow.pattern.says}\n\n{page.follow.pattern.text}"
    area.focus_force()
    hit(root, "<Control-a>")
    assert area.selection_get() == page.follow.pattern.text, "what is said of it is not part of it"
    page.follow.pattern.buttons["Copy the pattern"].invoke()
    assert root.clipboard_get() == page.follow.pattern.text
    opened: list[str] = []
    monkeypatch.setattr(webbrowser, "open", lambda url: opened.append(url) or True)
    hit(root, "<Control-p>")
    assert "<svg" in Path(opened[0].removeprefix("file://")).read_text("utf-8")
    page.files.publish()
    text = page.follow.pattern.text
    page.form.type_in("piece 1: length", "70 cm")
    page._changed()
    page._show_pattern()
    assert page.follow.pattern.text == text
    assert "Now: " in page.follow.pattern.says
    hit(root, "<Control-p>")
    printed = Path(opened[-1].removeprefix("file://")).read_text("utf-8")
    before = published(garments(session.book)[0])
    assert before is not None
    assert printed == published_page(before, session.terms, session.units)
    for save, suffix in ((page.files.save_page, "html"), (page.files.save_drawing, "svg"), (page.files.save_workbook, "xlsx")):
        target = tmp_path / f"a.{suffix}"
        chosen_file(monkeypatch, target)
        save()
        assert target.stat().st_size > 1000
    assert (tmp_path / "a.html").read_text("utf-8") == printed
    assert (tmp_path / "a.svg").read_text("utf-8") == published_drawing(before, page.card.size, session.units)
    assert (tmp_path / "a.xlsx").read_bytes() == published_workbook(before, session.terms)


def test_pieces_fold_and_are_added_and_taken_out(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    assert [key for key in page.find.table.shown if key.startswith("new")] == [
        "new",
        *(f"new/{number}" for number in range(1, 5)),
    ]
    page.find.table.tree.focus_force()
    root.update()
    hit(root, "<Left>")
    assert not any(key.startswith("new/") for key in page.find.table.shown)
    hit(root, "<Right>")
    page.add_piece()
    root.update()
    assert focused(root) is page.editor.fields["name"].input
    assert page.find.table.selected == ("new/5",)
    page.take_piece_out()
    assert page.find.table.selected == ("new",)


@pytest.fixture
def both(root: tk.Tk, look: Look, session: Session) -> PiecesAndGarments:
    """The page with both kinds: the garment “Quay”, the single pieces “Rib top” and “Vest”."""
    save_garment(session.book, Garment(plan=replace(template("two-panel top", "H1"), name="Quay")))
    page = PiecesAndGarments(root, look, session)
    page.frame.pack(fill="both", expand=True)
    root.geometry(f"{scaled(1366)}x{scaled(690)}+0+0")
    settle(root)
    page.first_focus()
    root.update()
    return page


def lines(both: PiecesAndGarments) -> list[str]:
    table = both.part.find.table
    return [table.cells(key)[0].strip() for key in table.shown]


def test_garments_and_single_pieces_stand_in_one_list(root: tk.Tk, both: PiecesAndGarments, session: Session) -> None:
    assert both.part is both.pieces
    assert lines(both) == ["▸ Quay", "Rib top", "Vest"]
    assert str(both.pieces.find.find.message["text"]) == "1 garment, 2 single pieces"  # type: ignore[index]
    both.pieces.find.table.tree.focus_force()
    hit(root, "<Up>")
    assert both.part is both.garments
    assert focused(root) is both.garments.find.table.tree, "the arrow keys go on"
    assert both.garments.form.saved is not None
    assert "pieces.garments" in session.settings.opened
    hit(root, "<Right>")
    assert lines(both) == ["▾ Quay", "back", "front", "Rib top", "Vest"]
    for _ in range(3):
        hit(root, "<Down>")
    assert both.part is both.pieces
    assert lines(both) == ["▾ Quay", "back", "front", "Rib top", "Vest"]
    assert both.pieces.form.texts["name"] == "Rib top"
    assert both.pieces.find.table.selected == (both.pieces.form.uid,)
    wait_until(root, lambda: both.pieces.find.table.cells(both.pieces.form.uid)[1] not in ("", "–"))


def test_words_find_both_kinds_and_stay_from_one_to_the_other(root: tk.Tk, both: PiecesAndGarments) -> None:
    write(root, "h1")
    assert lines(both) == ["▸ Quay", "Vest"]
    both.pieces.find.clear()
    write(root, "quay")
    assert lines(both) == ["▸ Quay"]
    hit(root, "<Down>")
    assert both.part is both.garments
    assert both.garments.find.find.text == "quay"
    assert focused(root) is both.garments.find.find.input


def test_what_is_typed_is_asked_about_before_the_other_kind_is_shown(
    root: tk.Tk, both: PiecesAndGarments, monkeypatch: pytest.MonkeyPatch
) -> None:
    both.pieces.editor.fields["name"].text = "Other top"
    quay = both.pieces.find.table.shown[0]
    asked = []
    monkeypatch.setattr("logbook.window.record_page.ask_of_unsaved", lambda *about: asked.append(about[-1]) or "stay")
    both.pieces.find.table.tree.selection_set(quay)
    root.update()
    assert asked == ["Rib top"]
    assert both.part is both.pieces
    assert both.pieces.find.table.selected == (both.pieces.form.uid,)


def test_a_garment_is_begun_beside_a_single_piece_and_a_single_piece_beside_a_garment(
    root: tk.Tk, both: PiecesAndGarments
) -> None:
    while_asked(root, lambda dialog: hit(dialog, "<Alt-b>"))
    both.pieces.begin_button.invoke()
    assert both.part is both.garments
    assert both.garments.form.saved is None
    both.garments.revert()
    while_asked(root, choose_single_piece)
    both.garments.new()
    assert both.part is both.pieces
    assert both.pieces.form.saved is None


def choose_single_piece(dialog: Dialog) -> None:
    for _ in range(7):
        hit(dialog, "<Right>")
    hit(dialog, "<Alt-b>")


def test_once_the_last_of_a_kind_is_deleted_its_neighbour_is_in_hand(root: tk.Tk, both: PiecesAndGarments) -> None:
    both.pieces.find.table.tree.selection_set(both.pieces.find.table.shown[0])
    root.update()
    both.garments.delete()
    root.update()
    assert both.part is both.pieces
    assert both.pieces.form.texts["name"] == "Rib top"
    assert both.garments.form.saved is None


@pytest.mark.parametrize("percent", [100, 200])
def test_nothing_of_the_form_is_cut_off(root: tk.Tk, look: Look, page: GarmentsPage, percent: int) -> None:
    begin(root, page)
    look.apply(percent=percent)
    settle(root)
    place = page.editor.card._scrolled
    assert place.inside.winfo_reqwidth() <= max(place.canvas.winfo_width(), 1) + 2


def test_a_plan_goes_out_as_a_file_and_comes_in_as_a_new_garment(
    root: tk.Tk, page: GarmentsPage, session: Session, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    begin(root, page)
    hit(root, "<Control-s>")
    saved = page.form.read().plan
    left = chosen_file(monkeypatch, tmp_path / "quay.json", tmp_path / "quay.txt", tmp_path / "quay.svg", tmp_path / "quay.json")
    page.files.save_plan()
    page.files.save_text()
    page.files.save_drawing()
    assert (tmp_path / "quay.txt").read_text("utf-8").startswith("Quay\n")
    assert "<svg" in (tmp_path / "quay.svg").read_text("utf-8")
    page.files.take_in()
    assert not left
    assert page.form.saved is None
    assert page.form.read().plan == saved
    assert "another garment" in page.form.save()["name"]


def test_the_same_in_another_yarn_is_a_new_garment(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page, "two-panel top")
    assert page.save(), page.row.refusal["text"]

    def answer(dialog: tk.Toplevel) -> None:
        write(dialog, "H2")
        hit(dialog, "<Alt-t>")

    while_asked(root, answer)
    page.files.other_yarn()
    assert page.form.saved is None
    assert page.form.texts["name"] == "Quay, copy"
    assert {piece.swatch for piece in page.form.read().plan.pieces} == {"H2"}


def test_the_pieces_of_a_garment_that_is_brought_back_have_their_chains(
    root: tk.Tk, page: GarmentsPage, session: Session
) -> None:
    begin(root, page, "two-panel top")
    page.form.type_in("name", "Pier")
    assert page.save()
    page._size_chosen("M")
    pier = page.form.uid
    chains = [line.cells[1] for line in page.garments.lines("")[0] if line.is_piece]
    assert len(chains) == 2
    assert all(chain.isdecimal() for chain in chains)
    begin(root, page)
    assert page.save()
    page.garments.fold(page.form.uid, False)

    def of_pier() -> list[str]:
        return [line.cells[1] for line in page.find._lines if line.is_piece and line.garment == pier]

    wait_until(root, lambda: of_pier() == chains)  # of one that is open beside the one in hand
    page.find.table.tree.selection_set(pier)
    root.update()
    page.delete()
    assert of_pier() == []
    session.write(lambda: undo(session.book))
    session.records_changed(None)
    wait_until(root, lambda: of_pier() == chains)
    page._size_chosen("5X")
    wait_until(root, lambda: of_pier() != chains and all(of_pier()))
    assert all(int(new) > int(old) for new, old in zip(of_pier(), chains, strict=True))


def test_a_garment_with_a_trouble_is_marked_wherever_it_stands(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    page.form.type_in("piece 3: end width", "30 cm")
    assert page.save()
    begin(root, page, "two-panel top")
    page.form.type_in("name", "Pier")
    assert page.save()
    names = [garment.name for garment in page.garments.garments.values()]
    assert names == ["Pier", "Quay"]
    page.garments.fold(page.form.uid, False)
    wait_until(root, lambda: any(line.cells[0] == "▾ ✕ Quay" for line in page.garments.lines("")[0]))
    assert page.garments.lines("")[0][0].cells[0] == "▸ Pier"


def test_each_underlined_letter_is_there_once(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    for key in ("new", "new/1", "new/2", "new/3", "new/4"):
        page.find.table.tree.selection_set(key)
        root.update()
        letters = list(underlined(root))
        assert len(letters) == len(set(letters)), (key, sorted(letters))


def underlined(place: tk.Misc) -> Iterator[str]:
    """The underlined letters that can be seen."""
    for child in place.winfo_children():
        if child.winfo_ismapped() and not isinstance(child, tk.Menu | tk.Toplevel):
            if "underline" in (child.keys() or ()) and int(child.cget("underline")) >= 0:
                yield str(child.cget("text"))[int(child.cget("underline"))].lower()
            yield from underlined(child)


def test_a_pasted_text_is_proofread_in_place(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    text = page._pattern_shown()
    spoilt = text.replace("Ch ", "Ch 9", 1)
    page.files._pasted[page.form.uid] = spoilt
    page.files.proofread()
    root.update()
    dialog = next(child for child in root.winfo_children() if isinstance(child, Dialog) and not child.modal)
    try:
        area = next(
            child for frame in dialog.inside.winfo_children() for child in frame.winfo_children() if isinstance(child, tk.Text)
        )
        hit(root, "<F3>")
        first = area.index("insert")
        assert area.tag_ranges("trouble")
        assert area.tag_nextrange("at", first)
        hit(root, "<Shift-F3>")
        area.replace("1.0", "end", text)
        wait_until(root, lambda: not area.tag_ranges("trouble"))
    finally:
        hit(root, "<Escape>")
    assert page.files._pasted[page.form.uid].strip() == text.strip()


def test_pieces_are_moved_by_key_and_dragged(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    tree = page.find.table.tree

    def names() -> list[str]:
        return [page.form.texts[f"piece {number}: name"] for number in page.form.pieces]

    tree.selection_set("new/3")
    root.update()
    tree.focus_force()
    root.update()
    hit(root, "<Alt-Up>")
    assert names() == ["back", "sleeve", "front", "band"]
    assert page.find.table.selected == ("new/2",)
    hit(root, "<Alt-Down>")
    assert names() == ["back", "front", "sleeve", "band"]
    (x, y, _, height), (_, top, _, _) = tree.bbox("new/3"), tree.bbox("new/1")
    for event, at in (("<Button-1>", y), ("<B1-Motion>", top), ("<ButtonRelease-1>", top)):
        tree.event_generate(event, x=x + 80, y=at + height // 2)
        root.update()
    assert names() == ["sleeve", "back", "front", "band"]
    assert page.find.table.selected == ("new/1",)


def test_a_joins_name_takes_the_room_that_the_other_columns_leave_and_two_lines_before_it_is_cut(
    root: tk.Tk, page: GarmentsPage
) -> None:
    begin(root, page)
    settle(root)
    tree = page.follow.joins.tree
    names = [tree.set(row, "join") for row in tree.get_children()]
    assert " ".join(names[-1].split()) == "end of sleeve – armhole of back and front"
    assert not any("…" in name for name in names)
    assert names[0] == "shoulder: front – back"  # what has room in one line stands in one
    widths = {name: int(tree.column(name, "width")) for name in ("letter", "join", "one", "other", "verdict")}
    verdicts = [part for row in tree.get_children() for part in tree.set(row, "verdict").split("\n")]
    widest = max(map(page.look.base.measure, verdicts))
    assert widest < widths["verdict"] < widest + 40
    assert sum(widths.values()) <= tree.winfo_width()


def test_the_rounds_of_a_piece_worked_round_stand_under_round(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page, "hat")
    page._view_chosen("Numbers")
    tops = page.follow.numbers.rows
    assert tops.columns[0].heading == "Row"
    page.find.table.tree.selection_set("new/1")
    settle(root)
    assert page.follow.numbers.words["text"].startswith("Every round of the ")
    assert page.follow.numbers.rows.tree.heading("row", "text") == "Round"
    assert page.follow.numbers.rows.shown


def test_where_there_is_little_height_sizes_and_pattern_have_it_without_the_headline(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    for height, views in ((690, ()), (300, ("Sizes", "Pattern"))):
        root.geometry(f"{scaled(1366)}x{scaled(height)}+0+0")
        for view in ("Drawing", "Numbers", "Sizes", "Pattern"):
            page._view_chosen(view)
            settle(root)
            assert page.follow.headline.winfo_ismapped() == (view not in views), (height, view)


def test_the_headline_says_its_size_where_the_sizes_to_step_through_are_not_shown(root: tk.Tk, page: GarmentsPage) -> None:
    begin(root, page)
    for view in ("Drawing", "Numbers", "Sizes", "Pattern"):
        page._view_chosen(view)
        settle(root)
        named = page.follow.headline["text"].startswith(f"{page.card.size}: ")
        assert named == (view in ("Sizes", "Pattern")) == (not page.follow.sizes.winfo_ismapped()), view


def test_in_a_narrow_place_sizes_say_whether_they_fit_before_cost_and_hours(root: tk.Tk, look: Look, page: GarmentsPage) -> None:
    begin(root, page)
    page._view_chosen("Sizes")
    look.apply(percent=200)
    settle(root)
    page.panes.bring(2)
    settle(root)
    shown = [str(name) for name in page.follow._size_table.tree["displaycolumns"]]
    assert shown == ["Size", "Yarn", "Balls", "Joins"]
