import tkinter as tk
from tkinter import font, ttk

import pytest

from logbook.window.card import Card
from logbook.window.look import Look
from logbook.window.palette import DARK, LIGHT
from logbook.window.styles import styled
from logbook.window.tick_box import TickBox
from tests.support.screen import settle


def size(root: tk.Tk, name: str) -> int:
    return abs(int(font.nametofont(name, root).cget("size")))


def test_text_size_scales_every_font_and_the_spacing_at_once_and_back(root: tk.Tk, look: Look) -> None:
    button = ttk.Button(root, text="Save")
    card = Card(root, look)
    look.grid(button, row=0, column=0, padx=(0, 3))
    card.grid()
    settle(root)
    before, line = button.winfo_height(), look.line
    small = {name: size(root, name) for name in ("TkDefaultFont", "TkTextFont", "ResultFont")}
    look.apply(percent=200)
    settle(root)
    assert all(size(root, name) == 2 * points for name, points in small.items())
    assert button.winfo_height() - before >= look.line - line > 0
    assert button.grid_info()["padx"] == (0, look.pixels(3))
    assert [str(p) for p in card["padding"]] == [str(look.pixels(4)), str(look.pixels(3))]
    look.apply(percent=100)
    settle(root)
    assert button.winfo_height() == before


def test_text_size_stays_within_its_limits_and_nothing_is_smaller_than_the_base(root: tk.Tk, look: Look) -> None:
    look.apply(percent=70)
    assert look.percent == 100
    look.apply(percent=900)
    assert look.percent == 200
    assert all(size(root, name) >= size(root, "TkDefaultFont") for name in ("TkSmallCaptionFont", "TkTooltipFont"))


def test_the_palette_reaches_what_is_open_and_what_is_opened_later(root: tk.Tk, look: Look) -> None:
    text, menu = tk.Text(root), tk.Menu(root, borderwidth=0)
    box = ttk.Combobox(root, values=("a", "b"))
    text.grid()
    box.grid()
    settle(root)
    listbox = str(root.tk.call("ttk::combobox::PopdownWindow", str(box))) + ".f.l"
    look.apply(DARK)
    later = tk.Text(root)
    for widget in (text, later):
        assert (str(widget["background"]), str(widget["foreground"])) == (DARK.surface, DARK.ink)
        assert str(widget["insertbackground"]) == DARK.ink
    assert (str(menu["background"]), int(menu["borderwidth"])) == (DARK.surface, 0)
    assert str(root.tk.call(listbox, "cget", "-background")) == DARK.surface
    assert str(root["background"]) == DARK.page
    assert look.style.lookup("TEntry", "insertcolor") == DARK.ink
    look.apply(LIGHT)
    assert str(text["background"]) == LIGHT.surface


@pytest.mark.parametrize("style", ["TButton", "TEntry", "TCombobox", "Accent.TButton", "Treeview"])
def test_a_focused_widget_has_a_ring(look: Look, style: str) -> None:
    assert look.style.lookup(style, "bordercolor", ["focus"]) == LIGHT.focus
    assert look.style.lookup(style, "lightcolor", ["focus"]) != look.style.lookup(style, "lightcolor")


def test_listeners_are_called_for_as_long_as_their_widget_lives(root: tk.Tk, look: Look) -> None:
    label = ttk.Label(root)
    heard: list[int] = []
    look.when_changed(label, lambda: heard.append(look.percent))
    look.apply(percent=150)
    label.destroy()
    look.apply(percent=200)
    assert heard == [100, 150]


def test_things_on_a_card_get_the_ground_of_the_card(root: tk.Tk, look: Look) -> None:
    inner = ttk.Frame(Card(root, look), style="Card.TFrame")
    assert styled(inner, "Muted.TLabel") == "Card.Muted.TLabel"
    assert styled(root, "Muted.TLabel") == "Muted.TLabel"
    assert look.style.lookup("Card.Muted.TLabel", "background") == LIGHT.surface
    assert look.style.lookup("Card.Muted.TLabel", "foreground") == LIGHT.muted


def test_the_sign_of_a_check_box_follows_state_and_size(root: tk.Tk, look: Look) -> None:
    variable = tk.BooleanVar(root, False)
    box = TickBox(root, look, "Use", variable, lambda: None)
    box.grid()
    settle(root)
    width = box.winfo_reqwidth()
    box.invoke()
    assert variable.get()
    look.apply(percent=200)
    settle(root)
    assert box.winfo_reqwidth() > 1.7 * width


def test_what_is_hidden_stays_hidden_and_keeps_its_gaps(root: tk.Tk, look: Look) -> None:
    label = ttk.Label(root, text="only now and then")
    look.grid(label, row=0, column=0, padx=(0, 3))
    label.grid_remove()
    look.apply(percent=200)
    assert not label.winfo_manager()
    label.grid()
    assert label.grid_info()["padx"] == (0, look.pixels(3))
    look.apply(percent=100)
