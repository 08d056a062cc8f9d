"""Menus and lists that are open."""

import tkinter as tk
from tkinter import ttk

from logbook.window.menu_bar import RECORDS
from tests.every_picture.pages import garments_part, swatches
from tests.every_picture.stage import Scene, Stage
from tests.pictures import everything, patterns, pieces
from tests.support.screen import settle


def menus(stage: Stage) -> None:
    """Each menu of the window, those of records filled for the page shown."""
    swatches(stage)
    bar = stage.window.menu._bar
    for place in range((bar.index("end") or 0) + 1):
        label = str(bar.entrycget(place, "label"))
        menu = bar.nametowidget(str(bar.entrycget(place, "menu")))
        if label in (one.replace("&", "") for one in RECORDS):
            {"Swatch": swatches, "Piece": garments_part}.get(label, lambda one: patterns(one.root, one.window))(stage)
        stage.menu(f"menu {label}", menu)
    pieces(stage.root, stage.window)
    stage.menu("menu Piece, of a single one", bar.nametowidget(str(bar.entrycget(3, "menu"))))


def lists(stage: Stage) -> None:
    """What drops down from a field, and what Tk shows while a file is chosen."""
    swatches(stage)
    for key in ("yarn", "stitch pattern"):
        drop_down(stage, f"list of {key}", stage.page.editor.fields[key].input)
    pieces(stage.root, stage.window)
    drop_down(stage, "list of pieces' swatches", stage.page.part.editor.fields["swatch"].input)


def drop_down(stage: Stage, name: str, field: tk.Misc) -> None:
    """A picture of the list of a field."""
    box = (
        field
        if isinstance(field, ttk.Combobox)
        else next(one for one in everything(field.master) if isinstance(one, ttk.Combobox))
    )
    box.focus_force()
    box.update()
    box.event_generate("<Down>")
    settle(stage.root)
    stage.shoot(name)
    box.tk.call("ttk::combobox::Unpost", box)
    settle(stage.root)


SCENES: tuple[Scene, ...] = (menus, lists)
