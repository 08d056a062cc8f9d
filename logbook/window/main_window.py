"""The one window: a row of pages, a menu, a line that says what was done last."""

import time
import tkinter as tk
from collections.abc import Collection
from dataclasses import replace
from functools import partial
from tkinter import ttk
from typing import Any

from logbook.craft.words.notation import write_in
from logbook.pages.session import Session
from logbook.settings import Settings, save_settings
from logbook.tasks.at_home import notation_of
from logbook.tasks.error_log import error_log
from logbook.tasks.keeping import Logbook
from logbook.window.coming_forward import ComingForward
from logbook.window.draft_keeper import DraftKeeper
from logbook.window.icon import draw_icon
from logbook.window.idle_backups import IdleBackups
from logbook.window.keyboard import install_keyboard, keep_behind
from logbook.window.keys import bind_keys, install_keys, install_mnemonics, split_mnemonic
from logbook.window.look import Look
from logbook.window.menu_bar import MenuBar
from logbook.window.own_events import on_itself
from logbook.window.page import Page
from logbook.window.pages import PAGES
from logbook.window.palette import DARK, LIGHT
from logbook.window.place import PlaceKeeper
from logbook.window.sentence import Sentence
from logbook.window.unexpected import report_unexpected
from logbook.window.watch import Watch
from logbook.window.wheel import install_wheel

PROGRAM_NAME = "Swatch and gauge logbook"
SAMPLE = "This is a fresh copy of the sample: try what you like, nothing of it is kept."
SAID_FOR_S = 8.0
"""So long a sentence in the line at the foot stands at least."""
PATIENCE_S = 0.1
"""How long the window may stand still while another program writes; between such tries it goes on for SHORTEST_WAIT_MS."""
SHORTEST_WAIT_MS = 100


class MainWindow:
    """Holds the root, the look and the session of the logbook shown; ``work`` runs until the user leaves."""

    def __init__(self, root: tk.Tk, settings: Settings) -> None:
        self.root = root
        root.title(PROGRAM_NAME)
        self._icon = draw_icon(root)
        self.look = Look(root)
        self.settings = settings
        self.session: Session | None = None
        self._pages: dict[int, Page] = {}
        self._down = False
        self._apply_settings()
        on_itself(root, "<Destroy>", self._end_waiting)
        install_keyboard(root, self._begin)
        install_keys(root)
        install_mnemonics(root)
        install_wheel(root)
        self.watch = Watch(self)
        self.backups = IdleBackups(self)
        self._forward = ComingForward(root)
        report_unexpected(root, self.look, error_log(), self.watch.deal_with)
        self._place = PlaceKeeper(root, settings.place)
        self._build()
        self.drafts = DraftKeeper(self)
        self.menu = MenuBar(self)
        keep_behind(root, self.leave)

    def _build(self) -> None:
        self.root.columnconfigure(0, weight=1)
        self.root.rowconfigure(0, weight=1)
        self.tabs: Any = ttk.Notebook(self.root)  # the stubs know only half of it
        self.look.grid(self.tabs, row=0, column=0, sticky="nsew", padx=2, pady=(1, 0))
        self.tabs.enable_traversal()
        self._said_at = time.monotonic()
        for event in ("<KeyPress>", "<ButtonPress>"):
            self.root.bind(event, lambda _: self._forget_said(), add="+")
        self.tabs.bind("<<NotebookTabChanged>>", lambda _: self._page_chosen())
        self._said = Sentence(self.root, style="Muted.TLabel")
        self.look.grid(self._said, row=1, column=0, sticky="ew", padx=3, pady=(0.5, 1))
        for number in range(len(PAGES)):
            bind_keys(self.root, f"Mod-{number + 1}", partial(self.tabs.select, number))

    def show(self, book: Logbook, *, is_sample: bool = False) -> None:
        """Shows a logbook; the one shown before is closed."""
        self._leave_book()
        book.wait_for_others(PATIENCE_S)
        self.session = Session(
            book,
            self.settings,
            is_sample=is_sample,
            say=self.say,
            pause=self._pause,
            open_sample=lambda: self.menu.books.open_sample(),
        )
        self.session.on_settings(self._settings_changed)
        for name, _ in PAGES:
            words, underline = split_mnemonic(name)
            self.tabs.add(ttk.Frame(self.tabs), text=words, underline=underline)
        self._book_shown(self.session)

    def go_on_with(self, book: Logbook) -> None:
        """Goes on with a copy or a backup of the logbook that is shown; what is typed on the pages stays."""
        if self.session is None or not self._pages:
            self.show(book)
            return
        book.wait_for_others(PATIENCE_S)
        self.session.go_on_with(book)
        self._book_shown(self.session)

    def show_none(self, why: str) -> None:
        """Shows that no logbook is open, and why; the one shown before is closed."""
        self._leave_book()
        self.session = None
        self.drafts.end()
        self._forward.end()
        self.root.title(PROGRAM_NAME)
        self.say(f"{why} Logbook → Open shows another one.")

    def _leave_book(self) -> None:
        if self.session is not None:
            self.session.book.close()
        self._take_down_pages()

    def _book_shown(self, session: Session) -> None:
        name = "Sample" if session.is_sample else session.book.path.name
        self.root.title(f"{name}{' (read only)' if session.book.read_only else ''} – {PROGRAM_NAME}")
        if not session.is_sample:
            recent = self.settings.with_recent(str(session.book.path))
            if recent != self.settings:
                session.change_settings(recent)
        self.menu.book_shown()
        self.say(session.why_not_writable or session.book.warning or (SAMPLE if session.is_sample else f"{name} is open."))
        self.watch.book_shown()
        self.drafts.book_shown(session)
        self._forward.book_shown(None if session.is_sample else session.book)
        self.backups.book_shown()

    def _take_down_pages(self) -> None:
        for tab in self.tabs.tabs():
            self.tabs.forget(tab)
        for page in self._pages.values():
            page.frame.destroy()
        self._pages.clear()

    def say(self, sentence: str) -> None:
        """Shows a sentence in the line at the foot of the window, until it is old and something else is done."""
        self._said.configure(text=sentence or " ")
        self._said_at = time.monotonic()

    def _forget_said(self) -> None:
        """What was said some time ago need not be true any more; of the sample that nothing is kept stays true."""
        if time.monotonic() - self._said_at > SAID_FOR_S:
            self._said.configure(text=SAMPLE if self.session is not None and self.session.is_sample else " ")

    @property
    def pages(self) -> Collection[Page]:
        """Those that were looked at yet."""
        return self._pages.values()

    def page_at(self, number: int) -> Page:
        """Shows a page."""
        self.tabs.select(number)
        self.root.update()  # now, and not when something else has got the keyboard
        return self._pages[number]

    def page_in_hand(self) -> Page | None:
        """The page that is shown, or the part of it that is."""
        page = self._pages.get(self.tabs.index("current")) if self.tabs.tabs() else None
        return page.part if page is not None else None

    def settle(self) -> bool:
        """Lets each page, the one shown first, see to what is typed and not saved; False: the user stays on one that has it."""
        if self.session is not None and self.session.waiting:
            return False  # what is being saved must stay in hand until it is
        shown = self.tabs.index("current") if self.tabs.tabs() else None
        for number, page in sorted(self._pages.items(), key=lambda item: item[0] != shown):
            if not page.settle():
                self.tabs.select(number)
                return False
        return True

    def work(self, note: str | None) -> int:
        """Runs until the window is left."""
        self.root.deiconify()
        if note:
            self.say(note)
        self.root.after_idle(self._begin)
        self.root.mainloop()
        return 0

    def leave(self) -> None:
        """Ends the program, if nothing typed would be lost by it."""
        if self.settle():
            self.drafts.end()  # any other way of closing down leaves what is typed behind
            self.close_down()

    def cut_short(self) -> None:
        """The program is made to end: what is typed is kept for the next window, and nobody is asked."""
        self.drafts.keep_now()
        self.drafts.end(leave=True)
        self._forward.end()
        self._keep_settings()
        if self.session is not None:
            self.session.book.close()

    def close_down(self) -> None:
        """Closes the logbook, keeps the settings and takes the window down; once is enough."""
        if self._down:
            return
        self._down = True
        self._keep_settings()
        self.root.withdraw()
        self.watch.end()
        self.drafts.end(leave=True)
        self._forward.end()
        self.backups.end()
        if self.session is not None:
            self.session.book.close()
        self.root.destroy()

    def _end_waiting(self) -> None:
        """Of what waits for its time nothing comes any more: what it would call goes with the window."""
        for waiting in self.root.tk.splitlist(self.root.tk.call("after", "info")):
            self.root.after_cancel(waiting)

    def _begin(self) -> None:
        """The keyboard goes where work on the page begins."""
        page = self.page_in_hand()
        if page is not None:
            page.first_focus()

    def _page_chosen(self) -> None:
        """Pages are made when they are first looked at, so that the window is there at once."""
        if self.session is None or not self.tabs.tabs():
            return
        self.made_page(self.tabs.index("current")).first_focus()

    def made_page(self, number: int) -> Page:
        """A page of the logbook that is shown, made now if it was not looked at yet."""
        assert self.session is not None
        if number not in self._pages:
            holder = self.root.nametowidget(self.tabs.tabs()[number])
            page = PAGES[number][1](holder, self.look, self.session)
            page.frame.pack(fill="both", expand=True)
            self._pages[number] = page
        return self._pages[number]

    def _settings_changed(self) -> None:
        assert self.session is not None
        self.settings = self.session.settings
        write_in(notation_of(self.settings))
        self._apply_settings()
        self._keep_settings()

    def _apply_settings(self) -> None:
        palette = DARK if self.settings.palette == "dark" else LIGHT
        if (palette, self.settings.text_size) != (self.look.palette, self.look.percent):
            self.look.apply(palette, self.settings.text_size)

    def _keep_settings(self) -> None:
        self.settings = replace(self.settings, place=self._place.place)
        try:
            save_settings(self.settings)
        except OSError as error:
            self.say(f"Your settings could not be kept ({error.strerror}); everything else is as it was.")

    def _pause(self) -> None:
        """Waits a moment for another writer, while the window goes on."""
        over = tk.BooleanVar(self.root, False)
        self.root.after(SHORTEST_WAIT_MS, lambda: over.set(True))
        self.root.wait_variable(over)
