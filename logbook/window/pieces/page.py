"""The page of pieces: what is planned, the one in hand, what follows from it."""

import tkinter as tk
from collections.abc import Callable, Iterator, Mapping, Sequence
from tkinter import ttk

from logbook.pages.drafts import CHARTS, MADE, PIECES, TESTERS
from logbook.pages.pieces.piece_card import PieceCard, PieceMaker
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.session import Session
from logbook.tasks.drafts import Draft
from logbook.tasks.pieces import delete_piece
from logbook.window.find_list import FindActions
from logbook.window.garments.tree import GarmentTree
from logbook.window.look import Look
from logbook.window.menu_entries import Entry, Item
from logbook.window.pieces.file_actions import FileActions
from logbook.window.pieces.follow_view import FollowView
from logbook.window.pieces.form_view import FormView
from logbook.window.pieces.one_list import OneList
from logbook.window.pieces.sizes_side import PieceAround, SizesSide
from logbook.window.pieces.testers_side import TestersOnPage as TestersOf
from logbook.window.pieces.testers_side import TestersSide
from logbook.window.record_page import RecordPage

SHARES = (22, 33, 45)
"""Of the page's width, from left to right."""
LEAST_LINES = 18
"""Lines of text that the left pane is high, at least, where there is room for a button beside the lists."""


class PiecesPage(RecordPage):
    """Single pieces: a part of the page, which shares the list of ``one`` with the garments."""

    kind, drafts_as = "piece", PIECES
    panes_are = ("Pieces", "Form", "Your numbers")
    find: GarmentTree
    editor: FormView

    def __init__(self, parent: tk.Misc, look: Look, session: Session, one: OneList | None = None) -> None:
        self.one = one or OneList(session)
        self.form = PieceForm(session)
        if self.one.lines.pieces:
            self.form.show(next(iter(self.one.lines.pieces)))
        super().__init__(parent, look, session, self.form)
        self._maker = PieceMaker(session)
        self.card = PieceCard()
        opened = session.settings.opened
        self.left = ttk.Frame(self.frame, width=1, height=1)
        self.find = GarmentTree(self.left, look, self.one.lines, FindActions(self._select, self._go_to_form, self.delete))
        self.editor = FormView(self.frame, look, self.form, lambda: session.units, opened, self._changed, self._fold)
        self.files = FileActions(self.frame, look, session, self.form, lambda: self.card.answer)
        self.follow = FollowView(self.frame, look, self.files.shape)
        self.sizes = self._sizes_side()
        self.testers = TestersSide(self.frame, look, session, TestersOf(lambda: self.form.saved, self._written_to))
        self.find.grid(row=0, column=0, sticky="nsew")
        if self.one.begin_garment is not None:
            self.begin_button = ttk.Button(self.left, text="New garment…", command=self.one.begin_garment)
            look.grid(self.begin_button, row=1, column=0, sticky="w", pady=(1, 0))
            self.left.bind("<Configure>", lambda event: self._leave_room(event.height), add="+")
        self.left.columnconfigure(0, weight=1)
        self.left.rowconfigure(0, weight=1)
        self.left.grid_propagate(False)
        for place, view in enumerate((self.left, self.editor, self.follow)):
            self._place(view, place)
        self._arrange(SHARES)
        self.sizes.shown_anew()
        self.find.reload(self.form.uid)
        self._changed()

    def drafts(self) -> Iterator[Draft]:
        """What is typed in the form, for a made piece, in a body chart, and for a tester."""
        yield from super().drafts()
        for draft in (self.sizes.made_draft(), self.sizes.chart_draft(), self.testers.draft()):
            if draft is not None:
                yield draft

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """As every page, of made pieces and testers too."""
        if draft.page == TESTERS:
            return self.testers.texts(draft)
        if draft.page == CHARTS:
            return self.sizes.chart_texts(draft.typed["name"])
        return self.sizes.made_texts(draft.record) if draft.page == MADE else super().kept(draft)

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> bool:
        """As every page; a made piece or a tester is opened in a window of its own."""
        if draft.page == TESTERS:
            return self.testers.take_up(draft, texts)
        if draft.page == CHARTS:
            self.sizes.take_up_chart({**draft.typed, **texts})
            return True
        if draft.page != MADE:
            return super().take_up(draft, texts)
        self.sizes.take_up_made(draft.record, texts)
        return True

    def _sizes_side(self) -> SizesSide:
        around = PieceAround(
            save=self.save,
            answer=lambda: self.card.answer,
            words=lambda: self.find.find.text,
            changed=self._sizes_changed,
            shown_anew=self._shown_anew,
            reloaded=self._written_to,
            fold=self._fold,
        )
        side = SizesSide(
            self.frame, self.look, self.session, self.form, self._maker, self.files, around, self.follow.runs, self.left
        )
        self.find.find.variable.trace_add("write", lambda *_: side.look_up())
        return side

    def _written_to(self) -> None:
        """The views beside the form have written to the logbook: what is typed in it stays."""
        self._reload()
        if not self.form.is_dirty and self.form.changed_elsewhere():
            self.form.revert()
        self._changed()
        self.session.records_changed(self)

    def more_entries(self) -> Sequence[Entry]:
        """What the menu of its name holds besides."""
        begin = self.one.begin_garment
        first = () if begin is None else (Item("New &garment…", "", begin), None)
        return (*first, *self.files.entries, None, *self.sizes.entries, *self.testers.entries)

    def _leave_room(self, height: int) -> None:
        """In large text on a small screen the list needs the button's place; the menu has it too."""
        if height < LEAST_LINES * self.look.line:
            self.begin_button.grid_remove()
        else:
            self.begin_button.grid()

    @property
    def _name(self) -> str:
        return self.form.saved.name if self.form.saved else ""

    def _saved_words(self) -> str:
        return f"“{self._name}” is saved."

    def _not_saved(self, errors: Mapping[str, str]) -> str:
        return f"Not saved yet: {errors['sizes']}" if "sizes" in errors else super()._not_saved(errors)

    def _delete(self, uids: Sequence[str]) -> str:
        gone = self.form.saved
        assert gone is not None  # it is the one in hand
        self.session.write(lambda: delete_piece(self.session.book, gone))
        return f"“{gone.name}” is deleted. Undo brings it back."

    def _shown_anew(self) -> None:
        self.sizes.shown_anew()
        super()._shown_anew()

    def _changed(self) -> None:
        self._show_possible()
        read, sizes = self.form.read(), self.form.sizes()
        self.sizes.show(read, sizes)
        in_hand = self.sizes.plan_in_hand(read, sizes)
        swatch, edge = self.form.swatch_uid(), self.form.swatch_uid("edge swatch")
        self.card = self._maker.card(in_hand, swatch, edge, self.sizes.view.size_name, self.form.texts["notes"])
        self.follow.show(self.sizes.told_with(self.card))
        self.editor.say_body_width(self.card.body_width)

    def _sizes_changed(self) -> None:
        with self.follow.holding_runs():
            self._changed()

    def _select(self, uids: tuple[str, ...]) -> None:
        """The user chose another line; that of a garment or of a piece of it is opened on the other part."""
        if not uids or uids[0] in self.one.lines.pieces:
            super()._select(uids)
        elif not self.one.opened(uids[0]):
            self._mark()

    def open_line(self, key: str) -> None:
        """Takes in hand what stands in that line of the list."""
        self._show(key)
        self.find.reload(self.form.uid)

    def _show(self, uid: str) -> None:
        if uid in self.one.lines.pieces:
            super()._show(uid)
            self.follow.to_top()
        else:  # the last of the single pieces is deleted, and what stands next to it is a garment
            self._take_new(self.form.new)
            self.one.opened(uid)

    def _take_new(self, make: Callable[[], None]) -> None:
        super()._take_new(make)
        self.follow.to_top()

    def _reload(self) -> None:
        self.one.lines.reload()
        self.form.refresh()
        self._maker.refresh()
        self.sizes.reload()
        self.find.reload(self.form.uid)

    def _units_changed(self) -> None:
        self.form.units_changed()
        self._shown_anew()

    def _go_to_form(self) -> None:
        self.editor.start()
