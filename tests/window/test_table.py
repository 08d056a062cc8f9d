import tkinter as tk

import pytest

from logbook.window.look import Look
from logbook.window.table import Column, Row, Table
from tests.support.screen import press, wait_until

COLUMNS = [Column("tag", "Tag", 8, grow=True), Column("width", "Width mm", 8, "right")]


def row(number: int) -> Row:
    width = None if number == 3 else float(number * 7 % 10)
    return Row(f"k{number}", (f"T {number}", "" if width is None else f"{width:.1f}"), (f"t {number:06}", width))


class Made:
    def __init__(self, root: tk.Tk, look: Look, count: int = 10) -> None:
        self.heard: list[tuple[str, ...]] = []
        self.table = Table(root, look, COLUMNS, self.heard.append)
        root.rowconfigure(0, weight=1)
        root.columnconfigure(0, weight=1)
        self.table.grid(sticky="nsew")
        self.table.set_rows(row(n) for n in range(count))
        root.update()
        self.tree = self.table.tree


def test_clicking_a_heading_sorts_with_a_sign_and_empty_cells_last(root: tk.Tk, look: Look) -> None:
    made = Made(root, look)
    made.tree.event_generate("<Button-1>", x=made.tree.winfo_width() - 20, y=8)
    made.tree.event_generate("<ButtonRelease-1>", x=made.tree.winfo_width() - 20, y=8)
    root.update()
    assert made.table.shown == [f"k{n}" for n in (0, 6, 9, 2, 5, 8, 1, 4, 7, 3)]
    assert made.tree.heading("width")["text"] == "▲ Width mm"
    made.table.sort_by("width")
    assert made.table.shown == [f"k{n}" for n in (7, 4, 1, 8, 5, 2, 9, 6, 0, 3)]
    assert made.tree.heading("width")["text"] == "▼ Width mm"
    made.table.sort_by("width")
    assert made.table.shown == [f"k{n}" for n in range(10)]
    assert made.tree.heading("width")["text"] == "Width mm"
    assert tuple(str(k) for k in made.tree.get_children()) == tuple(made.table.shown)


def test_the_selection_outlives_sorting_and_hiding(root: tk.Tk, look: Look) -> None:
    made = Made(root, look)
    press(made.tree, "<Down>", "<Down>")
    assert made.heard == [("k0",), ("k1",)]
    made.table.sort_by("width")
    root.update()
    assert made.tree.selection() == ("k1",)
    made.table.show_only(["k2", "k5"])
    root.update()
    assert made.tree.selection() == ()
    assert made.table.selected == ("k1",)
    made.table.show_only(None)
    root.update()
    assert made.tree.selection() == ("k1",)
    assert made.heard == [("k0",), ("k1",)]


def test_the_nearest_come_first_and_within_them_the_sorting_holds(root: tk.Tk, look: Look) -> None:
    made = Made(root, look)
    made.table.sort_by("width")
    made.table.show_only(["k1", "k2", "k5", "k6"], {"k1": 0, "k2": 2, "k5": 1, "k6": 2})
    assert made.table.shown == ["k1", "k5", "k6", "k2"]
    made.table.sort_by("width")
    assert made.table.shown == ["k1", "k5", "k2", "k6"]
    made.table.show_only(["k1", "k2"])
    assert made.table.shown == ["k1", "k2"]


def test_a_row_chosen_while_another_is_hidden_replaces_it(root: tk.Tk, look: Look) -> None:
    made = Made(root, look)
    made.table.select(["k1"])
    made.table.show_only(["k2", "k5"])
    press(made.tree, "<Home>")
    made.table.show_only(None)
    root.update()
    assert made.tree.selection() == ("k2",)
    assert made.heard == [("k2",)]


def test_a_reload_keeps_the_selection_of_what_is_still_there(root: tk.Tk, look: Look) -> None:
    made = Made(root, look)
    made.table.select(["k4", "k5"])
    made.table.set_rows(row(n) for n in range(5))
    root.update()
    assert made.tree.selection() == made.table.selected == ("k4",)
    made.table.set_rows([])
    root.update()
    assert made.table.selected == ()
    press(made.tree, "<Down>", "<End>", "<Control-a>")
    assert made.heard == []


def test_keys_walk_and_select(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 200)

    def after(*keys: str) -> tuple[str, ...]:
        press(made.tree, *keys)
        return tuple(str(key) for key in made.tree.selection())

    assert after("<End>") == ("k199",)
    assert made.tree.bbox("k199")
    assert after("<Down>") == ("k199",)
    assert after("<Home>") == ("k0",)
    assert after("<Up>") == ("k0",)
    (after_page,) = after("<Next>")
    page = int(after_page[1:])
    assert 5 < page < 100
    assert after("<Next>") == (f"k{2 * page}",)
    assert after("<Prior>", "<Prior>") == ("k0",)
    assert after("<Down>", "<Shift-Down>", "<Shift-Down>") == ("k1", "k2", "k3")
    assert after("<Shift-Up>") == ("k1", "k2")
    assert after("<Shift-Home>") == ("k0", "k1")
    assert len(after("<Control-a>")) == 200


def test_rows_are_copied_as_shown_under_their_headings(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 3)
    made.table.set_rows([row(1), Row("odd", ("tab\there\nand line", "1.0"), ("x", 1.0))])
    press(made.tree, "<Control-a>", "<Control-c>")
    assert root.clipboard_get() == "Tag\tWidth mm\nT 1\t7.0\ntab here and line\t1.0\n"


def test_its_menu_sorts_and_names_the_keys(root: tk.Tk, look: Look) -> None:
    made = Made(root, look)
    labels = [made.table.menu.entrycget(i, "label") for i in (0, 1, 3, 4)]
    assert labels == ["Sort by Tag", "Sort by Width mm", "Copy rows", "Select all"]
    assert made.table.menu.entrycget(3, "accelerator") == "Ctrl+C"
    made.table.menu.invoke(1)
    assert made.table.shown[-1] == "k3"
    press(made.tree, "<Shift-F10>")
    assert made.table.menu.winfo_ismapped()
    made.table.menu.unpost()


@pytest.mark.parametrize("percent", [100, 200])
def test_rows_and_headings_have_room_for_their_text(root: tk.Tk, look: Look, percent: int) -> None:
    made = Made(root, look)
    look.apply(percent=percent)
    root.update()
    box = made.tree.bbox("k0")
    assert box
    assert box[3] == look.line + look.pixels(2)
    assert made.tree.column("width")["width"] > look.bold.measure("▲ Width mm")


def test_the_row_in_hand_is_marked_without_colour(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 100)
    press(made.tree, "<Down>")
    root.update()
    assert made.table.mark.winfo_ismapped()
    made.tree.yview_moveto(1)
    root.update()
    assert not made.table.mark.winfo_ismapped()


def test_rows_that_follow_later_are_there_for_whoever_asks(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 10)
    made.table.set_rows([row(n) for n in range(5_000)])
    assert len(made.tree.get_children()) < 5_000
    press(made.tree, "<End>")
    assert made.table.selected == ("k4999",)
    made.table.set_rows([row(n) for n in range(5_000)])
    assert made.table.selected == ("k4999",)
    made.table.show_only([f"k{n}" for n in range(0, 5_000, 2)])
    assert len(made.tree.get_children()) == 2_500
    made.table.show_only(None)
    assert list(made.tree.get_children()) == [f"k{n}" for n in range(5_000)]


def test_rows_follow_by_themselves(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, 1_000)
    wait_until(root, lambda: len(made.tree.get_children()) == 1_000)
    assert [str(made.tree.item(key)["values"][0]) for key in ("k0", "k999")] == [row(n).cells[0] for n in (0, 999)]
    assert "odd" in made.tree.item("k999")["tags"]
