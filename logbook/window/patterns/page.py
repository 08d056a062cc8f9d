"""The page of stitch patterns: the list, the form of the one in hand, what it means."""

import tkinter as tk
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial
from tkinter import ttk

from logbook.craft.rows.report import Proof
from logbook.errors import RefusedError
from logbook.pages.drafts import PATTERNS, draft_of
from logbook.pages.patterns.page import StitchPatterns
from logbook.pages.patterns.proving import ToProve
from logbook.pages.session import Session
from logbook.tasks.drafts import Draft
from logbook.window.background import Background
from logbook.window.button_row import ButtonRow
from logbook.window.card import Card
from logbook.window.changed_elsewhere import may_save
from logbook.window.keys import bind_keys
from logbook.window.look import Look
from logbook.window.panes import Panes, Shares
from logbook.window.patterns.chart_view import ChartView
from logbook.window.patterns.form import PatternForm
from logbook.window.patterns.meaning_card import MeaningCard
from logbook.window.patterns.pattern_list import PatternList
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.table import Entry
from logbook.window.unsaved import ask_of_unsaved

SHARES = (0.30, 0.66)
"""Where the bars between list, form and meaning are, in the page's width."""

PAUSE_MS = 400
LONG_PAUSE_MS = 100


class PatternsPage:
    """A page of the window; what it decides is decided by ``StitchPatterns``."""

    def __init__(self, parent: tk.Misc, look: Look, session: Session) -> None:
        self.look, self.session = look, session
        self.page = StitchPatterns(session)
        self.frame = ttk.Frame(parent)
        self._pause = ""
        self._proving = False  # a proof is under way beside the window
        self._build()
        self.frame.bind("<Destroy>", lambda _: self._stop_pause(), add="+")
        session.on_records(lambda _: self._records_changed())
        if self.page.lines:
            self.page.take(self.page.lines[0].uid)
        self._show_record()
        self.list.show()
        self.list.mark()

    @property
    def part(self) -> "PatternsPage":
        """All of it."""
        return self

    def first_focus(self) -> None:
        """The find field."""
        self.panes.bring(0)
        self.list.find.input.focus_set()

    def record_in_hand(self) -> tuple[str, str] | None:
        """The saved pattern in hand."""
        saved = self.page.saved
        return (saved.name, saved.uid) if saved.uid else None

    def drafts(self) -> Iterator[Draft]:
        """What is typed in the form."""
        page, saved = self.page, self.page.saved
        draft = draft_of(PATTERNS, saved.uid, saved.name, self.session.units.value, page.texts, page.opened)
        if draft is not None:
            yield draft

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """As the form's."""
        return self.page.kept(draft)

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> bool:
        """Takes a draft's pattern in hand with these texts typed; False: what is typed now is to stay."""
        if not self.settle():
            return False
        self.page.take_up(draft, texts)
        self.list.mark()
        self._show_record()
        self.form.focus_on("name")
        return True

    def entries(self) -> Sequence[Entry]:
        """All that can be done with stitch patterns: the menu of that name, and the right button in the list."""
        return (*self.row.entries, None, ("Rename or &merge…", "", self.names))

    def names(self) -> None:
        """The names of all stitch patterns, with the one in hand chosen: to rename or merge it."""
        from logbook.tasks.known_names import Kind
        from logbook.window.names_dialog import show_names

        if self.settle():
            show_names(self.frame, self.look, self.session, Kind.PATTERN, self.page.saved.uid)

    def settle(self) -> bool:
        """Asks what to do with a form that is not saved; False: the user wants to stay."""
        if self.session.waiting:
            return False  # what is being saved stays in hand until it is
        while self.page.unsaved:  # again, if something was typed while it was being saved
            answer = ask_of_unsaved(self.frame, self.look, self.session, self.page.saved.name or "the new stitch pattern")
            if answer == "drop":
                self.revert()
                return True
            if answer != "save" or not self.save():
                return False
        return True

    def new(self) -> None:
        """An empty form."""
        if self.settle():
            self._take("")
            self.form.focus_on("name")

    def save(self) -> bool:
        """Saves the form; False, with the sentence shown and the keyboard in the field, if it can't be saved."""
        try:
            if not may_save(self.frame, self.look, self.session, self.page.changed_elsewhere, "This stitch pattern"):
                return False
        except RefusedError as error:
            self.row.refuse(str(error))
            return False
        if not self._attempt(self.page.save):
            problems = self.page.reading().problems
            wrong = [key for key in self.form.fields if key in problems]
            if wrong:
                self.row.refuse(f"Not saved yet: see the marked field{'s' * (len(wrong) > 1)}.")
            if wrong or not self.page.texts["name"].strip():
                self.form.focus_on(wrong[0] if wrong else "name")
            return False
        return True

    def revert(self) -> None:
        """Back to what is saved."""
        if self.session.waiting:
            return
        self.page.revert()
        self._show_record()

    def delete(self) -> None:
        """Deletes the pattern in hand; of a new one, what is typed."""
        if self.page.saved.uid:
            if self.settle():
                self._attempt(self.page.delete)
        else:
            self.revert()

    def _attempt(self, action: Callable[[], str]) -> bool:
        try:
            done = action()
        except RefusedError as error:
            self.row.refuse(str(error))
            return False
        self.row.take_back()
        self.session.say(done)
        return True

    def _choose(self, uid: str) -> None:
        if self.settle():
            self._take(uid)
        else:
            self.list.mark()

    def _take(self, uid: str) -> None:
        self.page.take(uid)
        self.list.mark()
        self._show_record()

    def _typed(self, key: str, text: str) -> None:
        self.page.type(key, text)
        self._show_texts()

    def _records_changed(self) -> None:
        if self.page.changed_elsewhere():
            self.session.say(
                "This stitch pattern was changed elsewhere in the meantime. What you typed is still here, not saved yet."
            )
        self.list.show()
        self._show_record()

    def _show_record(self) -> None:
        self.row.take_back()
        self.meaning.show_swatches(self.page.users())
        self._show_texts()

    def _show_texts(self) -> None:
        self.card_title.configure(text=self.page.title)
        self.form.show(self.page.texts)
        self.form.show_messages(self.page.messages())
        self._show_rows()
        self.meaning.show(self.page.meaning())
        writable = not self.session.why_not_writable
        if self.page.unsaved and not writable:
            self.row.refuse(self.session.why_not_writable)
        self.row.show_possible(
            {
                "New": writable,
                "Save": writable and self.page.unsaved,
                "Revert": self.page.unsaved,
                "Delete": writable and bool(self.page.saved.uid),
            }
        )

    def _show_rows(self) -> None:
        """Long rows are proven, and what would mend rows is looked for, beside the window when the typing pauses."""
        self.form.show_rows(self.page.rows())
        self.chart.follow(self.page.texts["rows_text"], self.page.texts["terms"])
        self._stop_pause()
        if self.page.to_prove is not None:
            self._pause = self.frame.after(PAUSE_MS if not self.page.proving else LONG_PAUSE_MS, self._prove)

    def _stop_pause(self) -> None:
        if self._pause:
            self.frame.after_cancel(self._pause)
        self._pause = ""

    def _prove(self) -> None:
        self._pause = ""
        wanted = self.page.to_prove
        if wanted is not None and not self._proving:
            self._proving = True
            Background(self.frame, lambda _: wanted.proof(), partial(self._proven, wanted), self._not_proven, lambda *_: None)

    def _proven(self, wanted: ToProve, proof: Proof) -> None:
        self._proving = False
        self.page.proven(wanted, proof)
        self._show_texts()

    def _not_proven(self, error: Exception) -> None:
        self._proving = False
        raise error

    def _build(self) -> None:
        self.panes = Panes(self.frame, self.look, ("Stitch patterns", "Form", "What it means"), self._keep_shares)
        self.panes.share(self.session.settings.panes.get(PATTERNS, SHARES))
        self.look.grid(self.panes, row=0, column=0, sticky="nsew", pady=(1, 1.5))
        self.frame.columnconfigure(0, weight=1)
        for column, name in enumerate(("list", "form", "meaning")):
            card = Card(self.frame, self.look, fills=True)
            self.panes.put(card, column)
            card.columnconfigure(0, weight=1)
            card.rowconfigure(1, weight=1)
            getattr(self, f"_build_{name}")(card)
        self.frame.rowconfigure(0, weight=1)
        self._build_row()

    def _keep_shares(self, shares: Shares) -> None:
        """The panes as the user dragged them, for the next window too."""
        settings = self.session.settings
        self.session.change_settings(replace(settings, panes={**settings.panes, PATTERNS: shares}))

    def _build_list(self, card: Card) -> None:
        self.list = PatternList(card, self.look, self.page, self._choose)
        self.list.grid(row=1, column=0, sticky="nsew")

    def _build_form(self, card: Card) -> None:
        self.card_title = Sentence(card, "", "Section.TLabel")
        self.card_title.grid(row=0, column=0, sticky="ew")
        scrolled = self._scrolled(card)
        self.form = PatternForm(scrolled.inside, self.look, self._typed)
        self.chart = ChartView(self.form, self.look, self.session, lambda: self.page.texts["name"])
        self.chart.grid(row=7, column=0, sticky="ew")
        self.chart.lift(self.form.written_rows)  # next after the rows, where Tab goes on to
        self.look.grid(self.form, row=0, column=0, sticky="ew", padx=(0, 2), pady=(2, 0))

    def _build_meaning(self, card: Card) -> None:
        Sentence(card, "What it means", "Section.TLabel").grid(row=0, column=0, sticky="ew")
        scrolled = self._scrolled(card)
        self.meaning = MeaningCard(scrolled.inside, self.look)
        self.look.grid(self.meaning, row=0, column=0, sticky="ew", padx=(0, 2))

    def _scrolled(self, card: Card) -> Scrolled:
        scrolled = Scrolled(card, self.look, 20)
        scrolled.grid(row=1, column=0, sticky="nsew")
        scrolled.inside.columnconfigure(0, weight=1)
        return scrolled

    def _build_row(self) -> None:
        commands = (
            ("&Delete", "Mod-d", self.delete),
            ("&New", "Mod-n", self.new),
            ("&Revert", "Mod-r", self.revert),
            ("&Save", "Mod-s", self.save),
        )
        self.row = ButtonRow(self.frame, self.look, self.session, commands)
        self.look.grid(self.row, row=1, column=0, sticky="ew", pady=(0, 1))
        self.list.table.entries = self.entries
        bind_keys(self.frame.winfo_toplevel(), "Mod-f", self.first_focus, while_shown=self.frame)
        self.list.table.tree.bind("<Delete>", lambda _: self.row.buttons["Delete"].invoke())
