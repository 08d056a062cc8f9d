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


def test_a_double_click_in_a_hurry_is_on_the_row_under_the_pointer(root: tk.Tk, look: Look) -> None:
    made = Made(root, look)
    opened: list[tuple[str, ...]] = []
    made.table.on_double_click(lambda: opened.append(made.table.selected))
    press(made.tree, "<Down>")
    left, top, _, height = made.tree.bbox("k4")  # type: ignore[misc]
    for y in (top + height // 2, 8):
        for event in ("<Button-1>", "<ButtonRelease-1>") * 2:
            made.tree.event_generate(event, x=left + 20, y=y)
    root.update()
    assert opened == [("k4",)]


def test_a_text_wider_than_its_column_ends_in_an_ellipsis_and_is_copied_whole(root: tk.Tk, look: Look) -> None:
    made = Made(root, look)
    name = "Waistband of the chorus skirt, second version"

    def shown() -> str:
        return str(made.tree.set("k2", "tag"))

    made.table.replace_row(Row("k2", (name, "7.0"), (name, 7.0)))
    root.geometry("240x300")
    wait_until(root, lambda: shown().endswith("…"))
    room = made.tree.column("tag", "width")
    assert look.base.measure(shown()) <= room - 2 * (look.pixels(1.5) + 4)  # Tk would cut the ellipsis itself
    made.table.select(["k2"])
    assert name in made.table.copied()
    root.geometry("900x300")
    wait_until(root, lambda: shown() == name)


def test_each_line_of_a_summary_is_cut_by_itself(root: tk.Tk, look: Look) -> None:
    table = Table(root, look, (Column("both", "", 8, grow=True, summary=True),))
    table.pack(fill="both", expand=True)
    root.geometry("240x300")
    table.set_rows([Row("k", ("Waistband of the chorus skirt, second version\nmade: chain 14",), ("",))])
    wait_until(root, lambda: "…" in str(table.tree.set("k", "both")))
    first, second = str(table.tree.set("k", "both")).split("\n")
    assert first.endswith("…")
    assert second == "made: chain 14"


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
    assert made.table.marks.mark.winfo_ismapped()
    made.tree.yview_moveto(1)
    root.update()
    assert not made.table.marks.mark.winfo_ismapped()


def test_nothing_is_left_waiting_once_it_is_gone(root: tk.Tk, look: Look) -> None:
    root.update()
    waiting = set(root.tk.splitlist(root.tk.call("after", "info")))
    table = Table(root, look, COLUMNS)
    table.pack(fill="both", expand=True)
    table.set_rows([row(1)])
    assert set(root.tk.splitlist(root.tk.call("after", "info"))) > waiting
    table.destroy()
    assert set(root.tk.splitlist(root.tk.call("after", "info"))) == waiting


MANY = 5_000


def in_sight(made: Made) -> list[str]:
    """The keys of the rows that are to be seen, from top to bottom."""
    tree, found = made.tree, []
    for y in range(made.tree.bbox(made.tree.identify_row(60))[1] % 20 + 24, tree.winfo_height(), 5):  # type: ignore[index]
        key = str(tree.identify_row(y))
        if key and key not in found:
            found.append(key)
    return found


def keys(first: int, last: int) -> list[str]:
    return [f"k{n}" for n in range(first, last)]


def shown_whole(root: tk.Tk, made: Made) -> bool:
    """Whether what is in sight are rows without a gap, with their own texts and stripes."""
    root.update()
    seen = in_sight(made)
    first = made.table.shown.index(seen[0])
    alike = [str(made.tree.set(key, "tag")) == row(int(key[1:])).cells[0] for key in seen]
    odd = [("odd" in made.tree.item(key)["tags"]) == bool((first + place) % 2) for place, key in enumerate(seen)]
    return seen == list(made.table.shown[first : first + len(seen)]) and all(alike) and all(odd)


def test_of_very_many_rows_those_near_are_real_and_keys_go_through_all(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, MANY)
    assert len(made.tree.get_children()) < MANY / 10
    press(made.tree, "<End>")
    assert (made.table.selected, made.tree.selection()) == (("k4999",), ("k4999",))
    assert shown_whole(root, made)
    assert made.tree.bbox("k4999")
    press(made.tree, *["<Prior>"] * 20)
    (here,) = made.table.selected
    assert made.tree.bbox(here)
    assert shown_whole(root, made)
    press(made.tree, "<Shift-Home>")
    assert made.table.selected == tuple(keys(0, int(here[1:]) + 1))
    assert shown_whole(root, made)
    for _ in range(3):
        press(made.tree, "<Down>")
    assert made.table.selected == ("k3",)
    press(made.tree, "<Control-a>")
    assert len(made.table.selected) == MANY
    press(made.tree, "<End>")
    for _ in range(300):
        made.table.walk(-1)
    assert made.table.selected == ("k4699",)
    assert shown_whole(root, made)


def test_the_wheel_and_the_bar_go_through_very_many_rows(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, MANY)
    before = in_sight(made)[0]
    for _ in range(60):
        made.tree.yview_scroll(9, "units")
        root.update_idletasks()
    assert shown_whole(root, made)
    assert in_sight(made)[0] == f"k{int(before[1:]) + 540}"
    for share in (0.5, 0.99, 0.2):
        made.table._real.scroll("moveto", str(share))
        assert shown_whole(root, made)
        assert in_sight(made)[0] == f"k{round(share * MANY)}"
        assert made.table.down.get()[0] == pytest.approx(share, abs=0.001)
    made.table._real.scroll("moveto", "1.0")
    assert shown_whole(root, made)
    assert in_sight(made)[-1] == "k4999"


def click(made: Made, key: str, event: str = "Button-1") -> None:
    x, y, _, height = made.tree.bbox(key)  # type: ignore[misc]
    for one in (event, event.replace("Button", "ButtonRelease")):
        made.tree.event_generate(f"<{one}>", x=int(x) + 20, y=int(y) + int(height) // 2)
    made.table.update()


def test_a_stretch_from_a_click_to_one_far_below_is_chosen_whole(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, MANY)
    click(made, "k2")
    made.table._real.scroll("moveto", "0.4")
    root.update()
    click(made, "k2005", "Shift-Button-1")
    assert made.heard[-1] == tuple(keys(2, 2006))
    click(made, "k2003", "Control-Button-1")
    assert made.table.selected == (*keys(2, 2003), "k2004", "k2005")
    click(made, "k2004")
    assert made.heard[-1] == made.table.selected == ("k2004",)


def test_what_is_selected_outlives_a_filter_and_other_rows(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, MANY)
    made.table.select(["k4000"])
    root.update()
    assert made.tree.bbox("k4000")
    made.table.show_only(keys(0, 10))
    assert (made.tree.selection(), made.table.selected) == ((), ("k4000",))
    made.table.show_only(keys(3000, MANY))
    root.update()
    assert made.tree.bbox("k4000")
    made.table.set_rows(row(n) for n in range(1, MANY))
    root.update()
    assert made.tree.selection() == ("k4000",)
    made.table.sort_by("width")
    root.update()
    assert made.tree.selection() == ("k4000",)
    assert made.tree.bbox("k4000")
    assert made.heard == []


def test_what_is_selected_while_there_is_no_room_is_at_the_top_when_there_is(root: tk.Tk, look: Look) -> None:
    made = Made(root, look, MANY)
    root.geometry("300x30")
    root.update()
    for key in ("k0", "k3000", "k0"):
        made.table.select([key])
        root.geometry("300x400")
        root.update()
        assert in_sight(made)[0] == key
        root.geometry("300x30")
        root.update()


def test_a_row_that_is_chosen_before_the_table_is_drawn_is_in_sight(root: tk.Tk, look: Look) -> None:
    for chosen, seen in (("k0", (0.0,)), ("k39", (0.5, 1.0))):
        table = Table(root, look, COLUMNS, lambda _: None)
        table.grid(sticky="nsew")
        table.set_rows(row(n) for n in range(40))
        table.select([chosen])
        root.update()
        first, _ = table.tree.yview()
        assert seen[0] <= first <= seen[-1]
        assert table.tree.bbox(chosen)
        table.destroy()


def test_columns_that_grow_leave_the_others_their_width(root: tk.Tk, look: Look) -> None:
    root.geometry("500x200+0+0")
    columns = [Column("name", "Name", 30, grow=True, least=6), Column("width", "Width", 16, least=6)]
    table = Table(root, look, columns)
    root.columnconfigure(0, weight=1)
    table.grid(sticky="nsew")
    root.update()
    assert int(table.tree.column("width", "width")) > int(table.tree.column("width", "minwidth"))
    assert table.tree.xview() == (0.0, 1.0)
    assert not table.across.winfo_ismapped()
