"""The page of stitch patterns through real key events."""

import tkinter as tk

import pytest

from logbook.pages.session import Session
from logbook.tasks.browsing import pattern_list
from logbook.window.field_row import FieldRow
from logbook.window.keys import MnemonicLabel
from logbook.window.look import Look
from logbook.window.patterns.page import PatternsPage
from tests.support.screen import press, type_text, wait_until


@pytest.fixture
def page(root: tk.Tk, look: Look, session: Session) -> PatternsPage:
    root.geometry("1300x700+0+0")
    shown = PatternsPage(root, look, session)
    shown.frame.pack(fill="both", expand=True)
    root.update()
    return shown


def uid_of(page: PatternsPage, name: str) -> str:
    return next(line.uid for line in page.patterns.lines if line.name == name)


def answer(page: PatternsPage, key: str) -> None:
    """Presses ``key`` in the question that is going to be asked."""

    def reply() -> None:
        dialogs = [child for child in page.frame.winfo_toplevel().winfo_children() + page.frame.winfo_children()
                   if isinstance(child, tk.Toplevel)]  # fmt: skip
        if dialogs and dialogs[0].winfo_viewable():
            (dialogs[0].focus_lastfor() or dialogs[0]).event_generate(key)
        else:
            page.frame.after(10, reply)

    page.frame.after(10, reply)


def test_a_new_pattern_by_keyboard_alone(root: tk.Tk, page: PatternsPage, session: Session) -> None:
    page.first_focus()
    press(root.focus_get() or root, "<Control-n>")
    fields = page.editor.fields
    assert root.focus_get() is fields["name"].input
    type_text(fields["name"].input, "Fans")
    press(fields["name"].input, "<Tab>")
    type_text(root.focus_get() or root, "multiple of 10 plus 1, add 1 for the base chain")
    assert [fields[key].text for key in ("multiple", "plus", "extra_chains")] == ["10", "1", "1"]
    assert page.meaning.chain_rule["text"] == "Chain a multiple of 10 plus 2"
    assert page.meaning.chains.tree.item("12")["values"] == [12, 122, 121, 120]
    press(root.focus_get() or root, "<Control-s>")
    assert "Fans" in [pattern.name for pattern in pattern_list(session.book)]
    assert page.find.table.selected == (uid_of(page, "Fans"),)
    assert "disabled" in page.row.buttons["Save"].state()


def test_a_half_typed_sentence_is_no_error_until_it_is_left(root: tk.Tk, page: PatternsPage) -> None:
    sentence = page.editor.fields["sentence"]
    type_text(sentence.input, "multi")
    assert "multiple of 6" in sentence.message["text"]
    assert "invalid" not in sentence.input.state()  # type: ignore[attr-defined]
    assert page.meaning.chain_rule["text"] == "—"
    press(sentence.input, "<Tab>")
    wait_until(root, lambda: sentence.message["text"].startswith("✕"))
    assert "invalid" in sentence.input.state()  # type: ignore[attr-defined]


def test_walking_the_list_shows_each_and_saves_nothing_typed_unasked(root: tk.Tk, page: PatternsPage) -> None:
    press(page.find.find.input, "<Down>", "<Down>")
    assert page.editor.fields["name"].text == "Voilé mesh"
    press(page.editor.fields["plus"].input, "<End>")
    type_text(page.editor.fields["plus"].input, "5")
    answer(page, "<Escape>")
    press(page.find.table.tree, "<Up>")
    assert page.editor.fields["plus"].text == "15"
    assert page.find.table.selected == (uid_of(page, "Voilé mesh"),)
    answer(page, "<Alt-d>")
    press(page.find.table.tree, "<Up>")
    assert page.editor.fields["name"].text == "Shells"
    press(page.editor.fields["plus"].input, "<End>")
    type_text(page.editor.fields["plus"].input, "0")
    answer(page, "<Return>")
    assert page.settle()
    assert page.form.saved is not None
    assert page.form.saved.plus == 10


def test_find_filters_the_list_and_escape_clears(root: tk.Tk, page: PatternsPage) -> None:
    type_text(page.find.find.input, "voile")
    assert page.find.table.shown == [uid_of(page, "Voilé mesh")]
    assert page.find.find.message["text"] == "1 of 2 stitch patterns"
    press(page.find.find.input, "<Down>")
    assert page.editor.fields["name"].text == "Voilé mesh"
    press(page.find.find.input, "<Escape>")
    assert len(page.find.table.shown) == 2


def test_what_cannot_be_saved_is_said_and_the_keyboard_goes_there(root: tk.Tk, page: PatternsPage) -> None:
    press(page.find.find.input, "<Control-n>")
    first_stitch, name = (page.editor.fields[key] for key in ("first_stitch", "name"))
    type_text(first_stitch.input, "x")
    press(first_stitch.input, "<Control-s>")
    assert root.focus_get() is name.input
    assert name.said[0].startswith("✕ Name the stitch pattern")
    type_text(name.input, "Fans")
    press(name.input, "<Control-s>")
    assert root.focus_get() is first_stitch.input
    assert page.row.refusal["text"] == "✕ Not saved yet: see the marked field."
    press(first_stitch.input, "<Alt-r>")
    assert not page.form.is_dirty


def test_the_same_again_is_a_copy_to_be_named_and_saved(root: tk.Tk, page: PatternsPage, session: Session) -> None:
    press(page.find.find.input, "<Control-g>")
    assert root.focus_get() is page.editor.fields["name"].input
    assert (page.editor.fields["name"].text, page.editor.fields["multiple"].text) == ("Shells, copy", "6")
    press(page.editor.fields["name"].input, "<Control-s>")
    assert [pattern.name for pattern in pattern_list(session.book)] == ["Shells", "Shells, copy", "Voilé mesh"]


def test_delete_is_refused_while_swatches_use_it(root: tk.Tk, page: PatternsPage) -> None:
    press(page.find.table.tree, "<Delete>")
    assert "AB-01, AB-02" in page.row.refusal["text"]
    press(page.find.table.tree, "<Down>", "<Delete>")
    assert [line.name for line in page.patterns.lines] == ["Shells"]


def test_messages_of_a_row_of_fields_share_a_line(root: tk.Tk, page: PatternsPage) -> None:
    multiple = page.editor.fields["multiple"]
    below = page.editor.fields["first_stitch"].winfo_rooty()
    press(multiple.input, "<End>", "<BackSpace>")
    type_text(multiple.input, "8")
    assert page.editor.fields["first_stitch"].winfo_rooty() == below  # nothing moves while one types
    press(multiple.input, "<Tab>")
    row = multiple.master
    assert isinstance(row, FieldRow)
    assert row.message is not None
    assert row.message["text"] == "! Saving this changes the gauge of AB-01, read in repeats."
    assert row.message.winfo_viewable()
    assert page.editor.fields["first_stitch"].winfo_rooty() > below


@pytest.mark.parametrize("percent", [100, 150, 200])
def test_no_field_is_cut_and_the_buttons_are_in_view(root: tk.Tk, look: Look, page: PatternsPage, percent: int) -> None:
    root.geometry("1366x700+0+0")
    look.apply(percent=percent)
    for _ in range(3):
        root.update()
    right = page.editor.winfo_rootx() + page.editor.winfo_width()
    for field in page.editor.fields.values():
        assert field.winfo_rootx() + field.winfo_width() <= right
    for button in page.row.buttons.values():
        assert button.winfo_rooty() + button.winfo_height() <= root.winfo_rooty() + root.winfo_height()


def test_every_letter_leads_to_one_place_and_none_to_a_menu_or_a_page(page: PatternsPage) -> None:
    letters = []
    places: list[tk.Misc] = [page.frame]
    while places:
        place = places.pop()
        places += place.winfo_children()
        if isinstance(place, MnemonicLabel) or place.winfo_class() == "TButton":
            at = int(place.cget("underline"))
            letters += [str(place.cget("text"))[at].lower()] if at >= 0 else []
    assert len(letters) == len(set(letters))
    assert not set(letters) & set("levhwt")


ROWS = "sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * to end"


def test_rows_are_proven_while_they_are_typed(root: tk.Tk, page: PatternsPage) -> None:
    press(page.find.find.input, "<Control-n>")
    rows = page.editor.written_rows
    rows.area.insert("1.0", ROWS[:-3])
    root.update()
    assert rows.message["text"].startswith("! ")
    type_text(rows.area, "end")
    rows.area.insert("end", "")
    root.update()
    assert rows.text == ROWS
    assert rows.message["text"].startswith("✓ Every row fits on a multiple of 6 plus 2 chains")
    assert [page.editor.fields[key].text for key in ("multiple", "plus", "extra_chains", "first_stitch")] == [
        "6",
        "1",
        "1",
        "2nd",
    ]
    assert page.meaning.chain_rule["text"] == "Chain a multiple of 6 plus 2"
    drawn = [rows.beside.itemcget(item, "text") for item in rows.beside.find_all()]
    assert drawn == ["6k + 1 sts"]


def test_without_a_chart_no_room_is_kept_for_one(root: tk.Tk, page: PatternsPage) -> None:
    chart = page.editor.chart
    press(page.find.find.input, "<Control-n>")
    page.editor.written_rows.area.insert("1.0", ROWS)
    wait_until(root, chart.drawing.winfo_ismapped)
    page.editor.written_rows.area.delete("1.0", "end")
    wait_until(root, lambda: not chart.drawing.winfo_ismapped() and chart.winfo_height() < 10)


def test_what_is_not_understood_is_marked_in_the_text(root: tk.Tk, page: PatternsPage) -> None:
    rows = page.editor.written_rows
    rows.area.insert("1.0", ROWS.replace("5 dc", "5 quux"))
    root.update()
    marked = [str(place) for place in rows.area.tag_ranges("trouble")]
    assert "quux" in rows.area.get(marked[0], marked[1])
    assert "quux" in rows.message["text"]


OPEN = "Notes: none.\nRnd 1: Ch 3, 11 dc in ring.\nRnd 2: Ch 1, sc in each dc around, join."


def test_what_the_text_leaves_open_is_answered_by_a_button(root: tk.Tk, page: PatternsPage) -> None:
    page.new()
    rows = page.editor.written_rows
    rows.area.insert("1.0", OPEN)
    wait_until(root, lambda: bool(rows.choices.winfo_children()))
    buttons = [child for row in rows.choices.winfo_children() for child in row.winfo_children()]
    assert [button["text"] for button in buttons] == ["Write “(counts as dc)”", "Write “(does not count)”"]
    buttons[0].invoke()
    wait_until(root, lambda: not rows.choices.winfo_children())
    assert rows.text == OPEN.replace("Ch 3", "Ch 3 (counts as dc)")
    assert [str(place) for place in rows.area.tag_ranges("note")] == ["1.0", "1.12"]


def test_with_large_text_the_counts_stand_below_the_rows(root: tk.Tk, look: Look, page: PatternsPage) -> None:
    page.editor.written_rows.text = ROWS
    root.geometry("760x690+0+0")
    look.apply(percent=200)
    wait_until(root, lambda: page.editor.written_rows.below["text"])
    assert page.editor.written_rows.below["text"] == "Row 1: 6k + 1 sts"
    assert not page.editor.written_rows.beside.winfo_ismapped()


def test_which_stitch_the_rows_begin_with_is_chosen_on_the_page(root: tk.Tk, page: PatternsPage) -> None:
    press(page.find.find.input, "<Control-n>")
    sentence = page.editor.fields["sentence"]
    type_text(sentence.input, "multiple of 2")
    assert not page.editor.begins.winfo_viewable()
    press(sentence.input, "<Tab>")
    wait_until(root, page.editor.begins.winfo_viewable)
    button = next(one for one in page.editor.begins.winfo_children() if one["text"] == "hdc")
    button.focus_force()
    press(button, "<space>")
    wait_until(root, lambda: not page.editor.begins.winfo_viewable())
    assert root.focus_get() is sentence.input
    assert page.meaning.chain_rule["text"] == "Chain a multiple of 2 plus 2"


def test_a_sentence_taken_away_is_what_the_rows_say(root: tk.Tk, page: PatternsPage) -> None:
    press(page.find.find.input, "<Control-n>")
    sentence, rows = page.editor.fields["sentence"], page.editor.written_rows
    rows.text = "Row 1: sc in 4th ch from hook, *ch 1, sk next ch, sc in next ch; rep from * to end"
    wait_until(root, lambda: sentence.text != "")
    sentence.input.focus_force()
    press(sentence.input, "<Control-a>", "<Delete>")
    assert sentence.text == ""
    press(sentence.input, "<Tab>")
    wait_until(root, lambda: sentence.text == "multiple of 2, add 2 for the base chain")
    assert page.meaning.chain_rule["text"] == "Chain a multiple of 2 plus 2"


def test_of_a_plain_stitch_no_repeats_are_counted(root: tk.Tk, page: PatternsPage) -> None:
    press(page.find.find.input, "<Control-n>")
    sentence = page.editor.fields["sentence"]
    type_text(sentence.input, "any number of sts, add 2")
    wait_until(root, lambda: page.meaning.chains.tree.cget("displaycolumns") == ("chain", "stitches", "ring"))
    press(sentence.input, "<Control-a>")
    type_text(sentence.input, "multiple of 6 sts, add 2")
    wait_until(root, lambda: page.meaning.chains.tree.cget("displaycolumns")[0] == "repeats")
