"""The page of swatches through real key events."""

import tkinter as tk

import pytest

from logbook.craft.swatches.conditions import Condition
from logbook.pages.session import Session
from logbook.pages.swatches.form_texts import readings_key
from logbook.tasks.browsing import swatch_in_hand, swatch_lines
from logbook.window.swatches.chain_view import THEIRS
from logbook.window.swatches.page import SwatchesPage
from tests.support.screen import focused, hit, wait_until, write

WASHED = readings_key(Condition.WASHED)


def tags(page: SwatchesPage) -> list[str]:
    by_uid = {line.uid: line.tag for line in page.swatches.lines}
    return [by_uid[uid] for uid in page.find.table.shown]


def answer(page: SwatchesPage, key: str) -> None:
    """Presses ``key`` in the question that is going to be asked."""

    def reply() -> None:
        dialogs = [child for child in page.frame.winfo_children() if isinstance(child, tk.Toplevel)]
        if dialogs and dialogs[0].winfo_viewable():
            (dialogs[0].focus_lastfor() or dialogs[0]).event_generate(key)
        else:
            page.frame.after(10, reply)

    page.frame.after(10, reply)


def take(page: SwatchesPage, tag: str) -> None:
    hit(page.frame, "<Control-f>")
    write(page.frame, tag)
    hit(page.frame, "<Return>")
    assert page.form.texts["tag"] == tag


def test_a_new_swatch_is_logged_found_and_gives_its_chain(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    hit(root, "<Control-n>")
    assert focused(root) is page.editor.fields["yarn"].input
    write(root, "Sandbar silk")
    hit(root, "<Alt-c>")
    write(root, "Shells")
    hit(root, "<Alt-o>")
    write(root, "4,5")
    hit(root, "<Alt-u>")
    write(root, "4 repeats = 15.1 cm")
    hit(root, "<Return>")
    write(root, "4 repeats = 15.4 cm")
    assert [row.says["text"] for row in page.editor.readings[WASHED].rows] == [
        "15.9",
        "15.6",
        "",
    ]
    assert page.editor.readings[WASHED].rows[2].example.winfo_ismapped()
    assert page.editor.readings[WASHED].rows[2].example["text"].endswith("4 repeats = 15.1 cm")
    hit(root, "<Control-s>")
    assert not page.form.is_dirty
    kept = swatch_in_hand(session.book, page.form.uid)
    assert kept is not None
    assert kept.yarn is not None
    assert (kept.yarn.name, kept.hook_mm, len(kept.readings)) == ("Sandbar silk", 4.5, 2)
    assert page.find.table.selected == (kept.uid,)
    hit(root, "<Control-f>")
    write(root, "ndbar")
    assert tags(page) == [kept.tag]
    assert page.find.find.message["text"] == "1 of 5 swatches"
    hit(root, "<Return>")
    assert focused(root) is page.chain.width.input
    write(root, "46")
    assert page.chain.headline["text"] == "Chain 74"
    assert page.chain.sentence["text"].startswith("46.4 cm: 12 repeats, 73 stitches, 0.4 cm wider than asked")


def test_a_find_text_that_would_hide_what_was_saved_is_cleared(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    hit(root, "<Control-g>")
    write(root, " two")
    hit(root, "<Alt-k>")
    write(root, "4 repeats = 15.5 cm")
    hit(root, "<Control-s>")
    assert page.find.find.text == ""
    assert "HC-03" in tags(page)
    assert page.find.table.selected == (page.form.uid,)


def test_the_worked_example_stands_on_the_page(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    write(root, "46")
    assert page.chain.headline["text"] == "Chain 74"
    assert page.chain.sentence["text"] == "46.5 cm: 12 repeats, 73 stitches, 0.5 cm wider than asked."
    assert page.chain.notes["text"].startswith("Before washing it measures 47.1 cm.")
    assert page.chain.options.copied().splitlines()[1].split("\t")[:3] == ["→ 74", "46.5 cm", "+0.5 cm"]


def test_nothing_stale_is_shown_while_typing(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    seen = []
    for key in ("4", "6", "x", "<BackSpace>", "<BackSpace>", "<BackSpace>"):
        if key.startswith("<"):
            hit(root, key)
        else:
            write(root, key)
        seen.append(page.chain.headline["text"])
        shown = bool(page.chain.drawing.find_all())
        assert shown is bool(page.chain.options.shown) is (page.chain.headline["text"] != "—")
    assert seen == ["Chain 8", "Chain 74", "—", "Chain 74", "Chain 8", "—"]
    assert page.chain.sentence["text"] == "Type the finished width, for example 46, or a number of chains."


def test_the_chain_follows_a_reading_before_it_is_saved(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    take(page, "HC-01")
    write(root, "46")
    hit(root, "<Alt-u>", "<Return>", "<Return>", "<Return>")
    write(root, "5 repeats")
    assert page.chain.headline["text"] == "—"
    assert page.chain.sentence["text"].startswith("In the form: “5 repeats”: read “5 repeats”")
    write(root, " = 18 cm")
    assert page.chain.headline["text"] == "Chain 74"
    assert page.editor.form.title == "Swatch HC-01 · not saved"


def test_a_wrong_field_gets_its_sentence_when_it_is_left(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    hook = page.editor.fields["hook mm"]
    hit(root, "<Alt-o>", "<Control-a>")
    write(root, "thick")
    assert not hook.said[0]
    hit(root, "<Tab>")
    assert hook.message["text"].startswith("✕ “thick” is not a hook")
    hit(root, "<Shift-Tab>", "<Control-a>")
    write(root, "4.5")
    assert not hook.said[0]


def test_saving_goes_to_the_first_field_at_fault_and_opens_its_section(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    page.form.type_in("strands", "two and a half")
    hit(root, "<Alt-y>")
    write(root, "x")
    hit(root, "<Control-s>")
    assert focused(root) is page.editor.fields["strands"].input
    assert page.editor.fields["strands"].message["text"].startswith("✕ “two and a half” is not a number of strands")
    assert page.row.refusal["text"] == "✕ Not saved yet: see the marked field."
    assert page.row.refusal.winfo_viewable()
    write(root, "2")
    assert not page.row.refusal.winfo_viewable()


def test_arrows_in_the_find_field_walk_through_the_list(root: tk.Tk, page: SwatchesPage) -> None:
    assert page.form.texts["tag"] == "MW-04"
    hit(root, "<Down>", "<Down>")
    assert page.form.texts["tag"] == "HC-02"
    hit(root, "<Up>")
    assert page.form.texts["tag"] == "MW-03"
    assert focused(root) is page.find.find.input
    write(root, "harbour")
    assert tags(page) == ["HC-02", "HC-01"]
    hit(root, "<Down>")
    assert page.form.texts["tag"] == "HC-02"
    hit(root, "<Escape>")
    assert tags(page) == ["MW-04", "MW-03", "HC-02", "HC-01"]
    assert page.find.table.selected == (page.form.uid,)


def test_filters_narrow_the_list_and_escape_takes_them_off(root: tk.Tk, page: SwatchesPage) -> None:
    hit(root, "<Control-f>", "<Tab>", "<Tab>", "<space>", "<Tab>")
    write(root, "cotton")
    assert tags(page) == ["HC-02", "HC-01"]
    hit(root, "<Tab>", "<Tab>")
    write(root, "4")
    assert tags(page) == ["HC-02"]
    write(root, "z")
    assert page.find._fields["hook"].message["text"].startswith("✕ “4z” is not a hook")
    hit(root, "<Escape>")
    assert len(tags(page)) == 4


def test_what_is_typed_is_never_lost_by_going_elsewhere(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    take(page, "HC-01")
    hit(root, "<Alt-y>", "<End>")
    write(root, " two")
    hit(root, "<Control-f>", "<Escape>")
    answer(page, "<Escape>")
    hit(root, "<Up>")
    assert page.form.texts["yarn"] == "Harbour cotton two"
    assert page.find.table.selected == (page.form.uid,)
    answer(page, "<Return>")
    hit(root, "<Up>")
    assert page.form.texts["tag"] == "HC-02"
    saved = next(line for line in swatch_lines(session.book) if line.tag == "HC-01")
    assert saved.yarn == "Harbour cotton two"
    assert page.settle()


def test_throwing_away_and_reverting_put_back_what_is_saved(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    hit(root, "<Alt-y>")
    write(root, "x")
    hit(root, "<Control-r>")
    assert page.editor.fields["yarn"].text == "Harbour cotton"
    write(root, "x")
    answer(page, "<Alt-d>")
    hit(root, "<Control-n>")
    assert page.form.title == "New swatch"


def test_the_same_again_and_delete(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    take(page, "HC-01")
    hit(root, "<Control-g>")
    assert page.editor.fields["yarn"].text == "Harbour cotton"
    assert page.form.texts["tag"] == "HC-03"
    assert page.find.table.selected == ()
    hit(root, "<Control-f>", "<Escape>", "<Up>")
    assert page.form.texts["tag"] == "HC-02"
    page.find.table.tree.focus_force()
    root.update()
    hit(root, "<Delete>")
    assert tags(page) == ["MW-04", "MW-03", "HC-01"]
    assert page.form.texts["tag"] == "HC-01"
    hit(root, "<Control-d>")
    assert [line.tag for line in swatch_lines(session.book)] == ["MW-04", "MW-03"]
    assert page.form.texts["tag"] == "MW-03"


def test_the_focus_goes_in_reading_order(root: tk.Tk, page: SwatchesPage) -> None:
    """From left to right column by column, and within one from top to bottom."""
    take(page, "HC-01")
    hit(root, "<Control-f>")
    views = (page.find, page.editor, page.chain, page.frame)
    order: list[tuple[int, str]] = []
    while not order or focused(root) is not page.find.find.input:
        place = str(focused(root))
        order.append((next(n for n, view in enumerate(views) if place.startswith(str(view))), place))
        assert len(order) < 60
        hit(root, "<Tab>")
    assert len(order) == len(set(order))
    assert [column for column, _ in order] == sorted(column for column, _ in order)
    assert {column for column, _ in order} == {0, 1, 2, 3}


def test_each_underlined_letter_is_there_once(page: SwatchesPage) -> None:
    letters = []

    def collect(place: tk.Misc) -> None:
        for child in place.winfo_children():
            if child.winfo_class() in ("TButton", "TLabel", "TCheckbutton", "TMenubutton") and child.winfo_ismapped():
                at = int(str(child.cget("underline")) or -1)
                letters.extend([str(child.cget("text"))[at].lower()] if at >= 0 else [])
            collect(child)

    collect(page.frame)
    assert len(letters) == len(set(letters)) > 10
    # Those of the menus and of the row of pages.
    assert not set(letters) & set("levhwti")


def test_an_option_that_is_chosen_is_the_one_explained(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    write(root, "46")
    page.chain.options.tree.focus_force()
    root.update()
    hit(root, "<Down>")
    assert page.chain.headline["text"] == "Chain 80"
    assert page.chain.sentence["text"].startswith("50.3 cm: 13 repeats")
    page.chain.start()
    write(root, "46.0")
    assert page.chain.headline["text"] == "Chain 74"


def test_a_body_measure_and_more_ways_are_reached(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    hit(root, "<Alt-b>")
    write(root, "90")
    hit(root, "<Tab>")
    write(root, "-4 %")
    assert page.chain.headline["text"] == "Chain 68"
    assert "disabled" in page.chain.width.input.state()  # type: ignore[attr-defined]
    hit(root, "<Alt-m>")
    page.chain._ticks["in_round"].set(True)
    page.chain._on_change()
    assert page.chain.headline["text"] == "Chain 138"


def test_what_does_not_count_beside_what_is_typed_cannot_be_typed(root: tk.Tk, page: SwatchesPage) -> None:
    def closed() -> set[str]:
        return {name for name, field in page.chain._fields.items() if "disabled" in field.input.state()}  # type: ignore[attr-defined]

    take(page, "HC-01")
    page.chain.take_up({"their_gauge": "20 sts = 10 cm", "their_count": "90", "body": "80"})
    root.update()
    assert closed() == {"width", "body", "ease", "panels", "seam"}
    page.chain.count.input.focus_force()
    root.update()
    write(root, "68")
    assert page.chain.headline["text"] == "68 chains make 42.6 cm"
    assert closed() == {"width", "their_gauge", "their_count", "body", "ease", "panels", "seam"}
    hit(root, "<BackSpace>", "<BackSpace>")
    assert closed() == {"width", "body", "ease", "panels", "seam"}


@pytest.mark.parametrize("key", ["<Alt-y>", "<Alt-a>"])
def test_a_field_that_is_reached_by_its_letter_can_be_seen(root: tk.Tk, page: SwatchesPage, key: str) -> None:
    hit(root, key)
    wait_until(root, lambda: focused(root).winfo_viewable())
    assert 0 <= focused(root).winfo_rooty() < root.winfo_rooty() + root.winfo_height()


def test_tab_after_the_last_field_does_not_come_to_delete_first(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    page.chain._foldings[THEIRS].show(True)
    page.chain._folded(THEIRS, True)
    page.chain._fields["their_count"].input.focus_force()
    root.update()
    names = {str(button): words for words, button in page.row.buttons.items()}
    passed: list[str] = []
    for _ in range(5):
        hit(root, "<Tab>")
        passed.append(names.get(str(focused(root)), ""))
    assert [words for words in passed if words][:2] == ["New", "Same again"]
