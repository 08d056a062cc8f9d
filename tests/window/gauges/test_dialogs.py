"""What is one key from the page of swatches, by keys alone."""

import tkinter as tk

import pytest

from logbook.book.logbook import Logbook
from logbook.pages.session import Session
from logbook.tasks.browsing import swatch_lines
from logbook.window.gauges import gauge_actions
from logbook.window.gauges.compare_dialog import CompareDialog
from logbook.window.gauges.hook_dialog import HookDialog
from logbook.window.gauges.nearest_dialog import NearestDialog
from logbook.window.look import Look
from logbook.window.palette import DARK
from logbook.window.swatches.page import SwatchesPage
from tests.support.screen import focused, hit, press, wait_until, write


def dialog(page: SwatchesPage) -> tk.Toplevel:
    found = [child for child in page.frame.winfo_children() if isinstance(child, tk.Toplevel)]
    assert len(found) == 1
    return found[0]


def gone(page: SwatchesPage) -> bool:
    return not any(isinstance(child, tk.Toplevel) for child in page.frame.winfo_children())


def take(page: SwatchesPage, tag: str) -> None:
    page.take(next(line.uid for line in page.swatches.lines if line.tag == tag))
    page.frame.update()


def test_nearest_gauge_finds_and_takes_in_hand(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    hit(root, "<Control-b>")
    shown = dialog(page)
    assert isinstance(shown, NearestDialog)
    assert focused(root) is shown.wanted.input
    assert "comes within 25 % of it" in shown.says["text"]
    write(root, "0 repeats")
    assert "but not over what length" in shown.wanted.message["text"]
    assert shown.table.shown == []
    shown.wanted.text = ""
    write(root, "1.3 repeats in 10 cm")
    first = shown.table.cells(shown.table.selected[0])
    assert first[1] == "MW-04"
    hit(root, "<Return>")
    assert gone(page)
    assert page.form.texts["tag"] == "MW-04"


def test_nearest_gauge_goes_by_the_filters_of_the_page(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    page.find.find.text = "harbour"
    hit(root, "<Control-b>")
    shown = dialog(page)
    assert isinstance(shown, NearestDialog)
    write(root, "16 sts in 10 cm")
    assert sorted(shown.table.cells(uid)[1] for uid in shown.table.shown) == ["HC-01", "HC-02"]
    hit(root, "<Escape>")
    assert gone(page)


def test_of_very_many_it_looks_beside_the_window(root: tk.Tk, page: SwatchesPage, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(gauge_actions, "AT_ONCE", 3)
    take(page, "HC-01")
    page.gauges.nearest()
    wait_until(root, lambda: any(isinstance(child, NearestDialog) for child in page.frame.winfo_children()))
    shown = dialog(page)
    assert isinstance(shown, NearestDialog)
    shown.wanted.text = "16 sts in 10 cm"
    assert shown.table.shown
    shown.close()


def test_which_hook_with_one_hook_says_which_to_try(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-02")
    hit(root, "<Control-j>")
    shown = dialog(page)
    assert isinstance(shown, HookDialog)
    assert "Only the 4 mm hook was tried with this yarn and stitch" in shown.answer["text"]
    assert not shown.table.winfo_ismapped()
    hit(root, "<Escape>")
    assert gone(page)


def test_compare_by_tags_typed(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    hit(root, "<Control-k>")
    shown = dialog(page)
    assert isinstance(shown, CompareDialog)
    assert focused(root) is shown.tags.input
    assert shown.table is None
    assert "Type the tags of two to six swatches" in shown.tags.message["text"]
    shown.tags.text = "HC-01, HC-02"
    root.update()
    assert shown.table is not None
    assert "HC-01 and HC-02" in shown.says["text"]
    shown.tags.text = "HC-01, HC-99"
    root.update()
    assert "HC-99" in shown.tags.message["text"]
    assert shown.table is None
    shown.close()


def test_the_comparison_grows_to_its_table(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    hit(root, "<Control-k>")
    shown = dialog(page)
    assert isinstance(shown, CompareDialog)
    shown.tags.text = "HC-01, HC-02"
    root.update()
    assert shown.table is not None
    tree = shown.table.tree
    wait_until(root, lambda: tree.winfo_rooty() + tree.winfo_height() <= shown.winfo_rooty() + shown.winfo_height())
    shown.close()


def test_compare_what_is_selected(root: tk.Tk, page: SwatchesPage) -> None:
    page.find.table.tree.focus_force()
    hit(root, "<Home>")
    hit(root, "<Shift-Down>")
    hit(root, "<Shift-Down>")
    assert len(page.find.table.selected) == 3
    hit(root, "<Control-k>")
    shown = dialog(page)
    assert isinstance(shown, CompareDialog)
    assert shown.table is not None
    assert focused(root) is shown.table.tree
    assert len(shown.table.columns) == 5
    shown.close()


def test_selecting_upwards_keeps_what_was_selected(root: tk.Tk, page: SwatchesPage) -> None:
    page.find.table.tree.focus_force()
    hit(root, "<End>")
    hit(root, "<Shift-Up>")
    assert len(page.find.table.selected) == 2


def test_the_gauge_line_is_copied_with_one_key(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    said: list[str] = []
    session.say = said.append
    take(page, "HC-01")
    hit(root, "<Control-l>")
    assert root.clipboard_get() == "Gauge: 2.6 repeats (15.7 sts) = 10 cm / 4 in in Shells, 4.5 mm hook, washed and laid flat"
    assert said[-1] == f"Copied: {root.clipboard_get()}"
    hit(root, "<Control-n>")
    hit(root, "<Control-l>")
    assert "there is no gauge to write down" in said[-1]


def test_how_sure_is_reckoned_only_when_opened_and_the_same_square_stands_below(root: tk.Tk, page: SwatchesPage) -> None:
    take(page, "HC-01")
    assert page.side.sure._said == []
    page.side.sure.sure.header.invoke()
    root.update()
    texts = [sentence["text"] for sentence in page.side.sure._said]
    assert texts[0] == "Stitches"
    assert "More readings do not make it smaller" in texts[1]
    assert "From as worked to washed, laid flat: stitches −1.5 %" in page.side.sure._figures["text"]
    page.chain.width.text = "46"
    root.update()
    assert "A swatch for 46.0 cm" in [sentence["text"] for sentence in page.side.sure._said]
    take(page, "MW-04")
    assert page.side.sure._figures["text"] == ""
    assert page.side.sure._scale["text"] == "10 × 10 cm washed"


def test_with_nothing_in_hand_every_key_has_an_answer(root: tk.Tk, page: SwatchesPage, session: Session) -> None:
    hit(root, "<Control-n>")
    page.side.sure.sure.header.invoke()
    for key in ("<Control-b>", "<Control-j>", "<Control-k>"):
        press(root, key)
        dialog(page)
        hit(root, "<Escape>")
        assert gone(page)
    press(root, "<Control-l>")


@pytest.mark.parametrize("size", [100, 150, 200])
@pytest.mark.parametrize("key", ["<Control-b>", "<Control-j>", "<Control-k>"])
def test_dialogs_fit_the_screen_at_every_text_size(
    root: tk.Tk, look: Look, page: SwatchesPage, book: Logbook, size: int, key: str
) -> None:
    look.apply(DARK, size)
    page.find.table.select([line.uid for line in swatch_lines(book)][:3])
    hit(root, key)
    shown = dialog(page)
    shown.update()
    assert shown.winfo_width() <= root.winfo_screenwidth()
    assert shown.winfo_height() <= root.winfo_screenheight()
    buttons = [child for child in shown.winfo_children()[1].winfo_children() if child.winfo_class() == "TButton"]
    for button in buttons:
        assert button.winfo_rooty() + button.winfo_height() <= shown.winfo_rooty() + shown.winfo_height()
        assert button.winfo_rootx() + button.winfo_width() <= shown.winfo_rootx() + shown.winfo_width()
    hit(root, "<Escape>")
    assert gone(page)


@pytest.mark.parametrize("size", [100, 150, 200])
def test_the_page_still_has_all_its_buttons_in_view(root: tk.Tk, look: Look, page: SwatchesPage, size: int) -> None:
    look.apply(DARK, size)
    root.update()
    for button in page.row.buttons.values():
        assert button.winfo_rootx() >= root.winfo_rootx()
        assert button.winfo_rootx() + button.winfo_width() <= root.winfo_rootx() + root.winfo_width()
        assert button.winfo_width() >= button.winfo_reqwidth()
    for place, widgets in {0: [page.find.find.input], 2: [page.chain.width.input, page.chain.headline]}.items():
        page.panes.bring(place)
        root.update()
        assert all(widget.winfo_viewable() for widget in (*widgets, page.editor.fields["yarn"].input))
