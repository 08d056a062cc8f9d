"""The page of stitch patterns: what is known, the one in hand, what it means."""

import tkinter as tk
from collections.abc import Sequence

from logbook.pages.drafts import PATTERNS
from logbook.pages.patterns.pattern_form import PatternForm
from logbook.pages.patterns.pattern_list import PatternList
from logbook.pages.session import Session
from logbook.tasks.stitch_patterns import delete_pattern
from logbook.window.find_list import FindActions, FindRecords
from logbook.window.keys import bind_keys
from logbook.window.look import Look
from logbook.window.menu_entries import Item
from logbook.window.patterns.find_view import find_view
from logbook.window.patterns.form_view import FormView
from logbook.window.patterns.meaning_view import MeaningView
from logbook.window.printing import Printer
from logbook.window.record_page import RecordPage
from logbook.window.table import Entry

SHARES = (30, 36, 34)
"""Of the page's width, from left to right."""


class PatternsPage(RecordPage):
    """Finds, shows and writes down stitch patterns, and says what each means for a chain."""

    kind, drafts_as = "stitch pattern", PATTERNS
    panes_are = ("Stitch patterns", "Form", "What it means")
    find: FindRecords
    editor: FormView

    def __init__(self, parent: tk.Misc, look: Look, session: Session) -> None:
        self.patterns = PatternList(session)
        self.form = PatternForm(session)
        if self.patterns.lines:
            self.form.show(self.patterns.lines[0].uid)
        super().__init__(parent, look, session, self.form)
        actions = FindActions(self._select, self._go_to_form, self.delete)
        self.find = find_view(self.frame, look, self.patterns, actions)
        self.editor = FormView(self.frame, look, session, self.form, self._changed, self._fold)
        self.meaning = MeaningView(self.frame, look)
        for place, view in enumerate((self.find, self.editor, self.meaning)):
            self._place(view, place)
        self._arrange(SHARES)
        self._printer = Printer(session)
        bind_keys(self.frame.winfo_toplevel(), "Mod-p", self.print, while_shown=self.frame)
        self._mark()
        self._shown_anew()

    @property
    def _name(self) -> str:
        return self.form.saved.name if self.form.saved else ""

    def _saved_words(self) -> str:
        return self.form.saved_words()

    def _delete(self, uids: Sequence[str]) -> str:
        gone = self.form.saved
        assert gone is not None  # it is the one in hand
        self.session.write(lambda: delete_pattern(self.session.book, gone))
        return f"“{gone.name}” is deleted. Undo brings it back."

    def _shown_anew(self) -> None:
        super()._shown_anew()
        self.meaning.show_swatches(self.form.users())

    def _changed(self) -> None:
        self._show_possible()
        self.meaning.show(self.form.meaning())

    def _reload(self) -> None:
        self.patterns.reload()
        self.form.refresh()
        self.find.reload()
        self.meaning.show_swatches(self.form.users())
        self._mark()

    def _units_changed(self) -> None:
        """Nothing here has a length."""

    def more_entries(self) -> Sequence[Entry]:
        """What the menu of its name holds besides."""
        return (
            Item("&Print its page", "Mod-p", self.print, self._is_something),
            Item("Rename or &merge…", "", self.names),
        )

    def _is_something(self) -> bool:
        return bool(self.form.texts["name"].strip() or self.form.texts["rows_text"].strip())

    def print(self) -> None:
        """Opens the page of the pattern as typed in the browser."""
        from logbook.tasks.printed.pattern_page import pattern_page

        pattern = self.form.reading().pattern
        if not (pattern.name or pattern.rows_text):
            self.session.say("There is nothing to print yet: name the pattern, or write its rows.")
            return
        rule = self.form.meaning().chain_rule
        self._printer.show_page(pattern_page(pattern, f"{rule}." if pattern.multiple else ""), "pattern.html")

    def names(self) -> None:
        """The names of all stitch patterns, with the one in hand chosen: to rename or merge it."""
        from logbook.tasks.known_names import NameOf
        from logbook.window.names_dialog import show_names

        if self.settle():
            show_names(self.frame, self.look, self.session, NameOf.PATTERN, self.form.uid)

    def _go_to_form(self) -> None:
        self.editor.start()
