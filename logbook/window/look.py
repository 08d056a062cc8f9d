"""Fonts, spacing and colours of every widget, for a palette and a text size; can be applied again at any time."""

import sys
import tkinter as tk
from collections.abc import Callable
from tkinter import font, ttk
from typing import TYPE_CHECKING, Any

from logbook.window.own_events import on_all
from logbook.window.palette import LIGHT, Palette
from logbook.window.styles import style_all

if TYPE_CHECKING:
    from logbook.window.check_signs import CheckSigns

PLATFORM_FONTS = ("TkDefaultFont", "TkTextFont", "TkMenuFont", "TkHeadingFont", "TkCaptionFont", "TkFixedFont")
SMALL_FONTS = ("TkTooltipFont", "TkSmallCaptionFont", "TkIconFont")
SMALLEST_TEXT, LARGEST_TEXT = 100, 200

CHECK_SIGN = 4
"""Units."""
Gap = float | tuple[float, float]
"""Space in units of a fifth of a line of text: the same on both sides, or before and after."""


def be_sharp_on_windows() -> None:
    """Tells Windows that we scale by ourselves; to be called before the first ``Tk()``."""
    if sys.platform == "win32":
        import ctypes

        ctypes.windll.shcore.SetProcessDpiAwareness(1)


class Look:
    """How the program looks at present.

    ``palette`` holds the colours, ``percent`` is the share of the platform's text size, ``line`` the height of a line
    of plain text in pixels, ``letter`` the width of a 0 in it, ``unit`` a fifth of ``line``, in which all spacing is measured,
    ``label_edges`` what a label keeps free beside its words.
    """

    def __init__(self, root: tk.Misc) -> None:
        self.root = root
        self.palette: Palette = LIGHT
        self.percent = SMALLEST_TEXT
        self.style = ttk.Style(root)
        self.style.theme_use("clam")
        self._base = {name: int(font.nametofont(name, root).cget("size")) for name in PLATFORM_FONTS + SMALL_FONTS}
        base = font.nametofont("TkDefaultFont", root)
        self.base, self.bold = base, font.nametofont("TkHeadingFont", root)
        self.title, self.result = (font.Font(root, name=name, exists=False) for name in ("TitleFont", "ResultFont"))
        for own in (self.title, self.result, self.bold):
            own.configure(family=base.cget("family"), weight="bold")
        self._check_signs: CheckSigns | None = None
        self._listeners: dict[str, list[Callable[[], object]]] = {}
        # One binding for all of them: a binding each would be a good part of what it takes to make a widget.
        on_all(root, "<Destroy>", lambda path: self._listeners.pop(path, None))
        probe = ttk.Label(root)
        self.label_edges = probe.winfo_reqwidth()
        probe.destroy()
        self.apply()

    def need_check_signs(self) -> None:
        """To be called before a check box is made. The signs take as long as a good many widgets, so they wait for that."""
        if self._check_signs is None:
            from logbook.window.check_signs import CheckSigns

            self._check_signs = CheckSigns(self.root, self.style)
            self._check_signs.draw(self.palette, self.pixels(CHECK_SIGN))

    @property
    def unit(self) -> float:
        return self.line / 5

    @property
    def label_height(self) -> int:
        """Of a label with one line of plain text, in pixels."""
        return self.line + self.label_edges

    def pixels(self, units: float) -> int:
        """At least one pixel for anything above 0."""
        return max(1, round(units * self.unit)) if units > 0 else 0

    def apply(self, palette: Palette | None = None, percent: int | None = None) -> None:
        """Shows everything, open or not, in this palette and text size (100 to 200 per cent); None: as it is."""
        self.palette = palette or self.palette
        if percent is not None:
            self.percent = min(max(percent, SMALLEST_TEXT), LARGEST_TEXT)
        self._scale_fonts()
        self.line, self.letter = int(self.base.metrics("linespace")), int(self.base.measure("0"))
        if self._check_signs is not None:
            self._check_signs.draw(self.palette, self.pixels(CHECK_SIGN))
        style_all(self)
        self._set_defaults_of_plain_widgets()
        self._recolour(str(self.root))
        for listeners in list(self._listeners.values()):
            for listener in listeners:
                listener()

    def when_changed(self, widget: tk.Misc, listener: Callable[[], object]) -> None:
        """Calls ``listener`` now and after every change, for as long as ``widget`` lives."""
        self._listeners.setdefault(str(widget), []).append(listener)
        listener()

    def grid(self, widget: tk.Widget, *, padx: Gap = 0, pady: Gap = 0, **options: Any) -> None:
        """Grids ``widget`` with gaps in units that follow the text size; the options are those of ``grid``."""
        widget.grid(**options, padx=self._gap(padx), pady=self._gap(pady))

        def follow() -> None:
            hidden = not widget.winfo_manager()
            widget.grid_configure(padx=self._gap(padx), pady=self._gap(pady))
            if hidden:  # to configure what was taken out of the grid puts it back
                widget.grid_remove()

        self._listeners.setdefault(str(widget), []).append(follow)

    def _gap(self, gap: Gap) -> int | tuple[int, int]:
        return (self.pixels(gap[0]), self.pixels(gap[1])) if isinstance(gap, tuple) else self.pixels(gap)

    def _scale_fonts(self) -> None:
        normal = self._base["TkDefaultFont"]
        for name, size in self._base.items():
            size = size if abs(size) > abs(normal) else normal
            font.nametofont(name, self.root).configure(size=self._scaled(size))
        points = 1 if normal > 0 else -1
        self.title.configure(size=self._scaled(normal + 4 * points))
        self.result.configure(size=self._scaled(normal + 6 * points))

    def _scaled(self, size: int) -> int:
        return round(size * self.percent / 100)

    def _set_defaults_of_plain_widgets(self) -> None:
        for window_class, options in _plain_widgets(self.palette).items():
            for option, value in options.items():
                self.root.option_add(f"*{window_class}.{option}", value)
        self.root.option_add("*TCombobox*Listbox.font", "TkTextFont")
        for dialog in ("TkFDialog", "TkChooseDir"):  # asked for by the list of files, which draws its names on a canvas
            self.root.option_add(f"*{dialog}*Canvas.foreground", self.palette.ink)

    def _recolour(self, path: str) -> None:
        """Walks Tk's own tree of windows, since drop-down lists are unknown to tkinter."""
        call = self.root.tk.call
        options = _plain_widgets(self.palette).get(str(call("winfo", "class", path)))
        for option, value in (options or {}).items():
            if option == "borderWidth":  # no colour, and the bar of menus has one of its own
                continue
            call(path, "configure", f"-{option.lower()}", value)
        if call("winfo", "class", path) in ("TEntry", "TCombobox"):
            # Tk does not lay out the text of an entry anew when its named font grows.
            call(path, "configure", "-font", "TkTextFont")
        if path == str(self.root) or call("winfo", "class", path) == "Toplevel":
            call(path, "configure", "-background", self.palette.page)
        for child in self.root.tk.splitlist(call("winfo", "children", path)):
            self._recolour(str(child))


def _plain_widgets(p: Palette) -> dict[str, dict[str, str | int]]:
    """Class of a classic Tk widget → its options in the spelling of the option database."""
    selected: dict[str, str | int] = {"selectBackground": p.accent, "selectForeground": p.on_accent}
    text: dict[str, str | int] = {
        "background": p.surface,
        "foreground": p.ink,
        "borderWidth": 0,
        "highlightThickness": 0,
        "relief": "flat",
    }
    return {
        "Toplevel": {"background": p.page},
        "Canvas": {"background": p.surface, "highlightThickness": 0},
        "Text": text | selected | {"insertBackground": p.ink, "inactiveSelectBackground": p.unfocused},
        "Listbox": text | selected | {"activeStyle": "none"},
        "Menu": {
            "background": p.surface,
            "foreground": p.ink,
            "activeBackground": p.accent,
            "activeForeground": p.on_accent,
            "disabledForeground": p.muted,
            "selectColor": p.ink,
            "borderWidth": 1,
            "relief": "solid",
            "activeBorderWidth": 0,
        },
    }
