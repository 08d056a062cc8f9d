"""The menu: every entry with its keys, and the marks of what is chosen."""

import tkinter as tk
from collections.abc import Callable
from dataclasses import replace
from functools import cached_property, partial
from pathlib import Path
from typing import TYPE_CHECKING

from logbook.settings import Settings
from logbook.window.keys import accelerator, bind_keys, split_mnemonic
from logbook.window.menu_entries import Item, add_entries, add_entry, always, state
from logbook.window.open_window import OpenWindow
from logbook.window.undo_actions import UndoActions

if TYPE_CHECKING:
    from logbook.window.book_actions import BookActions

TEXT_SIZES = (100, 125, 150, 175, 200)
_STEP = 25
RECORDS = ("Swatch", "&Piece", "Stitch pattern")
"""The menus of the pages' records, in the order of the pages."""
PLUS, MINUS = ("plus", "equal", "KP_Add"), ("minus", "KP_Subtract")


class MenuBar:
    """The menu of one window."""

    def __init__(self, window: OpenWindow) -> None:
        self._window = window
        self._root = window.root
        self._undo = UndoActions(window)
        self._chosen: dict[str, tk.Variable] = {}
        self._entries: dict[tk.Menu, dict[int, Item]] = {}
        self._bar = tk.Menu(self._root, tearoff=False, borderwidth=0)
        self._recent = tk.Menu(self._bar, tearoff=False)
        self._build_book_menu()
        self._undo.menu = self._build_edit_menu()
        self._build_record_menus()
        self._build_view_menu()
        self._build_help_menu()
        self._root.configure(menu=self._bar)

    @cached_property
    def books(self) -> "BookActions":
        """What the entries do; imported when the first is chosen, so that the window is there at once."""
        from logbook.window.book_actions import BookActions

        return BookActions(self._window)

    def book_shown(self) -> None:
        """Brings recent files and marks up to date."""
        self._recent.delete(0, "end")
        for path in self._window.settings.recent:
            self._recent.add_command(label=path, command=partial(self._open_path, Path(path)))
        self._mark()

    def _open_path(self, path: Path) -> None:
        self.books.open_path(path)

    def _build_book_menu(self) -> None:
        menu = self._menu("&Logbook")
        self._entry(menu, "&New…", lambda: self.books.new(), "Mod-Shift-n")
        self._entry(menu, "&Open…", lambda: self.books.open(), "Mod-o")
        menu.add_cascade(label="Open recent", menu=self._recent, underline=5)
        self._entry(menu, "Open the sa&mple", lambda: self.books.open_sample())
        menu.add_separator()
        self._entry(menu, "&Import a sheet…", lambda: self.books.import_sheet(), "Mod-i", self._is_open)
        self._entry(menu, "&Paste rows of a sheet…", lambda: self.books.paste_rows(), "Mod-Shift-v", self._is_open)
        self._entry(menu, "&Export to a sheet…", lambda: self.books.export_sheet(), "Mod-e", self._is_open)
        self._entry(menu, "Mer&ge another logbook…", lambda: self.books.merge(), possible=self._is_open)
        self._entry(menu, "Save a &copy…", lambda: self.books.save_copy(), possible=self._is_open)
        menu.add_separator()
        self._entry(menu, "&Yarns…", lambda: self.books.yarns(), possible=self._is_open)
        menu.add_separator()
        self._entry(menu, "&Backups…", lambda: self.books.backups(), possible=self._is_open)
        self._entry(menu, "C&heck the logbook", lambda: self.books.check(), possible=self._is_open)
        self._entry(menu, "&Assumptions…", lambda: self.books.assumptions(), possible=self._is_open)
        menu.add_separator()
        self._entry(menu, "&Quit", self._window.leave, "Mod-q")
        menu.configure(postcommand=partial(self._show_possible, menu))

    def _build_edit_menu(self) -> tk.Menu:
        menu = self._menu("&Edit")
        self._entry(menu, "&Undo", self._undo.undo, "Mod-z", self._undo.can_undo)
        self._entry(menu, "&Redo", self._undo.redo, "Mod-Shift-z", self._undo.can_redo)
        menu.add_separator()
        self._entry(menu, "&Changes of this record…", self._undo.history, "Mod-h", self._undo.has_history)
        self._entry(menu, "&Unsaved work…", self._window.drafts.offer, possible=self._is_open)
        menu.configure(postcommand=partial(self._show_possible, menu))
        return menu

    def _build_record_menus(self) -> None:
        """What can be done with a record, in a menu of its name; filled when it is opened, for it is the page that knows."""
        for number, label in enumerate(RECORDS):
            menu = self._menu(label)
            menu.configure(postcommand=partial(self._fill, menu, number))

    def _fill(self, menu: tk.Menu, number: int) -> None:
        menu.delete(0, "end")
        if self._window.session is None:
            return
        page = self._window.made_page(number)
        add_entries(menu, [entry and entry._replace(action=partial(self._do, number, entry.action)) for entry in page.entries()])

    def _do(self, number: int, action: Callable[[], object]) -> None:
        """On the page it belongs to."""
        if self._window.tabs.index("current") != number:
            self._window.page_at(number)
        action()

    def _build_view_menu(self) -> None:
        menu = self._menu("&View")
        sizes = tk.Menu(menu, tearoff=False)
        for size in TEXT_SIZES:
            self._choice(sizes, f"{size} %", "text_size", size)
        menu.add_cascade(label="Text size", menu=sizes, underline=0)
        for label, step, signs in (("&Larger text", _STEP, PLUS), ("&Smaller text", -_STEP, MINUS)):
            resize = partial(self._resize, step)
            words, underline = split_mnemonic(label)
            shown = accelerator(self._root, f"Mod-{signs[0]}")
            menu.add_command(label=words, underline=underline, command=resize, accelerator=shown)
            for sign in signs:
                bind_keys(self._root, f"Mod-{sign}", resize)
                bind_keys(self._root, f"Mod-Shift-{sign}", resize)  # on many keyboards the plus is a shifted key
        for names in (
            (("L&ight", "palette", "light"), ("&Dark", "palette", "dark")),
            (("&cm", "units", "cm"), ("i&nches", "units", "in")),
            (("&US terms", "terms", "us"), ("U&K terms", "terms", "uk")),
            (
                ("Numbers &as on this computer", "numbers", "system"),
                ("Numbers like 12.&5", "numbers", "point"),
                ("Numbers like 1&2,5", "numbers", "comma"),
            ),
        ):
            menu.add_separator()
            for label, setting, value in names:
                self._choice(menu, label, setting, value)

    def _build_help_menu(self) -> None:
        menu = self._menu("&Help")
        self._entry(menu, "&A first walk through", lambda: self.books.help(), "F1")
        self._entry(menu, "Written &rows", lambda: self.books.rows_help())
        self._entry(menu, "&Keys", lambda: self.books.keys())
        self._entry(menu, "About this &program", lambda: self.books.about())

    def _menu(self, label: str) -> tk.Menu:
        menu = tk.Menu(self._bar, tearoff=False)
        words, underline = split_mnemonic(label)
        self._bar.add_cascade(label=words, underline=underline, menu=menu)
        return menu

    def _entry(
        self, menu: tk.Menu, label: str, action: Callable[[], object], keys: str = "", possible: Callable[[], bool] = always
    ) -> None:
        entry = Item(label, keys, action, possible)
        add_entry(menu, entry)
        self._entries.setdefault(menu, {})[menu.index("end") or 0] = entry
        if keys:
            bind_keys(self._root, keys, action)

    def _show_possible(self, menu: tk.Menu) -> None:
        """What can't be done now is grey."""
        for place, entry in self._entries[menu].items():
            menu.entryconfigure(place, state=state(entry))

    def _is_open(self) -> bool:
        return self._window.session is not None

    def _choice(self, menu: tk.Menu, label: str, setting: str, value: str | int) -> None:
        words, underline = split_mnemonic(label)
        variable = self._chosen.setdefault(setting, tk.StringVar(self._root))
        menu.add_radiobutton(
            label=words,
            underline=underline,
            variable=variable,
            value=str(value),
            command=lambda: self._change(replace(self._window.settings, **{setting: value})),  # type: ignore[arg-type]
        )

    def _resize(self, step: int) -> None:
        size = min(max(self._window.settings.text_size + step, TEXT_SIZES[0]), TEXT_SIZES[-1])
        self._change(replace(self._window.settings, text_size=size))

    def _change(self, settings: Settings) -> None:
        if self._window.session is not None:
            self._window.session.change_settings(settings)
        self._mark()

    def _mark(self) -> None:
        for setting, variable in self._chosen.items():
            value = str(getattr(self._window.settings, setting))
            variable.set("light" if (setting, value) == ("palette", "system") else value)
