"""The ttk styles on the theme clam: every colour set, or a dark desktop would show white on white.

A style for things on a card begins with ``Card.``; ``styled`` finds the right one for a place.
"""

import tkinter as tk
from tkinter import ttk
from typing import Any, Protocol

from logbook.window.palette import Palette

TWO_LINES = "TwoLines.Treeview"
"""A table whose rows have two lines of text."""
CELL_PADDING = 1.5
"""Units at either side of what stands in a cell of a table."""


class StylesLook(Protocol):
    """What the styles need of the look."""

    style: ttk.Style
    palette: Palette

    @property
    def line(self) -> int:
        """Pixels of a line of text."""

    def pixels(self, units: float) -> int:
        """Units of space in pixels."""


def styled(parent: tk.Misc, style: str) -> str:
    """The style for a widget in ``parent``: that of a card if ``parent`` lies on one."""
    place: tk.Misc | None = parent
    while place is not None and not isinstance(place, tk.Tk | tk.Toplevel):
        if isinstance(place, ttk.Frame) and "Card." in str(place.cget("style")):
            return f"Card.{style}"
        place = place.master
    return style


def style_all(look: StylesLook) -> None:
    p = look.palette
    look.style.configure(
        ".",
        background=p.page,
        foreground=p.ink,
        bordercolor=p.outline,
        lightcolor=p.page,
        darkcolor=p.page,
        troughcolor=p.page,
        fieldbackground=p.surface,
        selectbackground=p.accent,
        selectforeground=p.on_accent,
        insertcolor=p.ink,
        focuscolor=p.focus,
        font="TkDefaultFont",
    )
    look.style.map(".", foreground=[("disabled", p.muted)], background=[], bordercolor=[])
    _style_grounds(look)
    _style_buttons(look)
    _style_fields(look)
    _style_table(look)
    _style_rest(look)


def _style_grounds(look: StylesLook) -> None:
    """Frames and labels, on the page and, with the prefix ``Card.``, on the surface of a card."""
    p, configure = look.palette, look.style.configure
    configure("Card.TFrame", background=p.surface)
    configure("Outlined.Card.TFrame", relief="solid", borderwidth=1, bordercolor=p.line)
    kinds: dict[str, dict[str, Any]] = {
        "": {},
        "Muted.": {"foreground": p.muted},
        "Title.": {"font": "TitleFont"},
        "Section.": {"font": "TkHeadingFont"},
        "Result.": {"font": "ResultFont", "foreground": p.accent},
        "Error.": {"foreground": p.error},
        "Warning.": {"foreground": p.warning},
        "Good.": {"foreground": p.good},
    }
    for kind, options in kinds.items():
        configure(f"{kind}TLabel", **options)
        configure(f"Card.{kind}TLabel", background=p.surface)
    configure("Example.TLabel", background=p.surface, foreground=p.muted, padding=0)
    for ground, colour in (("", p.page), ("Card.", p.surface)):
        configure(f"{ground}TCheckbutton", padding=look.pixels(1), background=colour)
        look.style.map(f"{ground}TCheckbutton", background=[("active", colour)])


def _style_buttons(look: StylesLook) -> None:
    p, style = look.palette, look.style
    padding = (look.pixels(4), look.pixels(0.8))
    _style_button(look, "TButton", (p.button, p.button_hover, p.button_pressed), p.ink, p.outline, p.focus)
    accent = (p.accent, p.accent_hover, p.accent_pressed)
    _style_button(look, "Accent.TButton", accent, p.on_accent, p.accent, p.on_accent)
    style.configure("TButton", padding=padding, anchor="center", justify="center", width=-8)
    for ground, colour in (("", p.page), ("Card.", p.surface)):
        bare = (colour, p.button_hover, p.button_pressed)
        name = f"{ground}Fold.TButton"
        _style_button(look, name, bare, p.ink, colour, p.focus)
        style.configure(name, anchor="w", justify="left", font="TkHeadingFont", padding=(look.pixels(1), look.pixels(0.6)))
    _style_button(look, "TMenubutton", (p.button, p.button_hover, p.button_pressed), p.ink, p.outline, p.focus)
    style.configure("TMenubutton", padding=padding, arrowcolor=p.ink, arrowsize=look.pixels(1.5))
    style.configure("List.TMenubutton", padding=(look.pixels(1.5), look.pixels(1)))


def _style_button(look: StylesLook, name: str, grounds: tuple[str, str, str], ink: str, border: str, inner_ring: str) -> None:
    """The ring of a focused button is two pixels: the border in the focus colour and a line inside it."""
    plain, hover, pressed = grounds
    p = look.palette
    look.style.configure(
        name, background=plain, foreground=ink, bordercolor=border, lightcolor=plain, darkcolor=plain, focuscolor=plain
    )
    edges = [("focus", inner_ring), ("pressed", pressed), ("active", hover)]
    look.style.map(
        name,
        background=[("disabled", p.page), ("pressed", pressed), ("active", hover)],
        foreground=[("disabled", p.muted)],
        bordercolor=[("disabled", p.line), ("focus", p.focus)],
        lightcolor=[("disabled", p.page), *edges],
        darkcolor=[("disabled", p.page), *edges],
        focuscolor=[("pressed", pressed), ("active", hover)],
        relief=[],
    )


def _style_fields(look: StylesLook) -> None:
    p, style = look.palette, look.style
    style.layout("Field.TFrame", [("Entry.field", {"sticky": "nswe"})])
    for name in ("TEntry", "TCombobox", "TSpinbox", "Field.TFrame"):
        style.configure(
            name,
            padding=(look.pixels(1.5), look.pixels(1)),
            foreground=p.ink,
            fieldbackground=p.surface,
            background=p.surface,
            bordercolor=p.outline,
            lightcolor=p.surface,
            darkcolor=p.surface,
            insertcolor=p.ink,
            insertwidth=max(1, look.pixels(0.3)),
            arrowcolor=p.ink,
            arrowsize=look.pixels(4),
        )
        inner = [("focus", p.focus), ("invalid", p.error), ("disabled", p.page)]
        style.map(
            name,
            fieldbackground=[("disabled", p.page), ("invalid", p.error_field), ("readonly", p.surface)],
            background=[("disabled", p.page), ("active", p.button_hover)],
            foreground=[("disabled", p.muted)],
            selectbackground=[("!focus", p.unfocused)],
            selectforeground=[("!focus", p.ink)],
            bordercolor=[("focus", p.focus), ("invalid", p.error)],
            lightcolor=inner,
            darkcolor=inner,
            arrowcolor=[("disabled", p.muted)],
        )


def _style_table(look: StylesLook) -> None:
    p, style = look.palette, look.style
    style.configure(
        "Treeview",
        background=p.surface,
        fieldbackground=p.surface,
        foreground=p.ink,
        bordercolor=p.line,
        lightcolor=p.surface,
        darkcolor=p.surface,
        rowheight=look.line + look.pixels(2),
        padding=0,
    )
    style.configure(TWO_LINES, rowheight=2 * look.line + look.pixels(2))
    style.map(
        "Treeview",
        background=[("selected focus", p.selection), ("selected", p.unfocused)],
        foreground=[("selected", p.ink), ("disabled", p.muted)],
        bordercolor=[("focus", p.focus)],
        lightcolor=[("focus", p.focus)],
        darkcolor=[("focus", p.focus)],
    )
    style.configure(
        "Treeview.Heading",
        background=p.page,
        foreground=p.ink,
        font="TkHeadingFont",
        padding=(look.pixels(1.5), look.pixels(0.8)),
        bordercolor=p.line,
        lightcolor=p.page,
        darkcolor=p.page,
        relief="raised",
    )
    style.map("Treeview.Heading", background=[("active", p.button_hover)], relief=[])
    style.configure("Treeview.Cell", padding=(look.pixels(CELL_PADDING), 0))


def _style_rest(look: StylesLook) -> None:
    p, style = look.palette, look.style
    for way in ("Vertical", "Horizontal"):
        thumb = f"{way}.Scrollbar.thumb"
        sticky = "ns" if way == "Vertical" else "ew"
        style.layout(
            f"{way}.TScrollbar",
            [(f"{way}.Scrollbar.trough", {"sticky": sticky, "children": [(thumb, {"sticky": "nswe"})]})],
        )
        name = f"{way}.TScrollbar"
        style.configure(name, background=p.outline, troughcolor=p.page, bordercolor=p.page, gripcount=0)
        style.configure(name, lightcolor=p.outline, darkcolor=p.outline, arrowsize=look.pixels(3))
        edges = [("disabled", p.page), ("active", p.muted)]
        style.map(name, background=edges, lightcolor=edges, darkcolor=edges)
        # In a field or on a card, a bar that has nothing to scroll is not seen either.
        unseen = [("disabled", p.surface)]
        edges = [*unseen, ("active", p.muted)]
        style.map(f"Card.{name}", background=edges, lightcolor=edges, darkcolor=edges, troughcolor=unseen, bordercolor=unseen)
    style.configure("TSeparator", background=p.line)
    style.configure("TPanedwindow", background=p.page)
    style.configure("Sash", lightcolor=p.page, bordercolor=p.line, sashthickness=look.pixels(2), gripcount=0)
    style.configure("Horizontal.TProgressbar", background=p.accent, troughcolor=p.button_pressed)
    style.configure("Horizontal.TProgressbar", bordercolor=p.line, lightcolor=p.accent, darkcolor=p.accent)
    style.configure("Horizontal.TProgressbar", thickness=look.pixels(3))
    style.configure("TNotebook", bordercolor=p.line, lightcolor=p.page, darkcolor=p.page, tabmargins=0)
    style.configure("TNotebook.Tab", padding=(look.pixels(4), look.pixels(1.2)), background=p.page)
    style.configure("TNotebook.Tab", bordercolor=p.line, lightcolor=p.page, darkcolor=p.page, foreground=p.muted)
    style.map(
        "TNotebook.Tab",
        background=[("selected", p.surface), ("active", p.button_hover)],
        foreground=[("selected", p.ink)],
        lightcolor=[("selected", p.accent)],
        darkcolor=[("selected", p.surface)],
        expand=[],
        padding=[],
    )
