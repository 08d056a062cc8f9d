"""The garments on the page of pieces: what is planned, the one in hand or a piece of it, what follows from it."""

import tkinter as tk
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from tkinter import ttk

from logbook.craft.garments.plan import GarmentPlan
from logbook.errors import RefusedError
from logbook.pages.drafts import GARMENTS, PIECES
from logbook.pages.garments.garment_card import GarmentCard, GarmentMaker
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.garments.garment_list import NEW, piece_line_key
from logbook.pages.garments.in_hand import InHand, in_hand
from logbook.pages.garments.join_fix import JoinFix
from logbook.pages.garments.pattern_said import pattern_said
from logbook.pages.session import Session
from logbook.tasks.drafts import Draft
from logbook.tasks.garments import delete_garment
from logbook.window.at_rest import AtRest
from logbook.window.button_bar import ButtonBar
from logbook.window.find_list import FindActions
from logbook.window.garments.dialogs import SINGLE_PIECE, ask_template
from logbook.window.garments.file_actions import FileActions, GarmentOnPage
from logbook.window.garments.follow_view import PATTERN, SIZES, FollowActions, FollowView
from logbook.window.garments.form_cards import GarmentAround, GarmentEditor
from logbook.window.garments.pattern_view import PatternActions
from logbook.window.garments.tree import GarmentTree
from logbook.window.keyboard import take_keyboard
from logbook.window.keys import bind_keys
from logbook.window.look import Look
from logbook.window.menu_entries import Item
from logbook.window.pieces.one_list import OneList
from logbook.window.pieces.testers_side import TestersOnPage as TestersOf
from logbook.window.pieces.testers_side import TestersSide
from logbook.window.record_page import RecordPage
from logbook.window.table import Entry

SHARES = (22, 33, 45)
"""Of the page's width, from left to right."""
MOVES = (("Move piece up", "Alt-Up", -1), ("Move piece down", "Alt-Down", 1))


class GarmentsPage(RecordPage):
    """A part of the page of pieces, which shares the list of ``one`` with the single pieces."""

    kind, drafts_as, panes_as = "garment", GARMENTS, PIECES
    panes_are = ("Garments", "Form", "Your numbers")
    find: GarmentTree
    editor: GarmentEditor

    def __init__(self, parent: tk.Misc, look: Look, session: Session, one: OneList | None = None) -> None:
        self.one = one or OneList(session)
        self.form = GarmentForm(session)
        self._maker = GarmentMaker(session)
        super().__init__(parent, look, session, self.form)
        self.card = GarmentCard()
        self._size = ""
        self._others = AtRest(self.frame, self._other_size, self._others_known)
        self.garments = self.one.lines
        self.garments.in_hand = self._in_hand
        if self.form.garments:
            first = next(iter(self.form.garments))
            self.form.show(first)
            self.garments.fold(first, True)
        self.left = self._left()
        around = GarmentAround(lambda: self.card, self._typed, self._structure_changed, self._fold, session.settings.opened)
        self.card = self._maker.card(self.form, "")
        self.editor = GarmentEditor(self.frame, look, self.form, around)
        on_page = GarmentOnPage(lambda: self.card, self.save, self.settle, self.take_plan, self._written_to, self._pattern_shown)
        self.files = FileActions(self.frame, look, session, self.form, self._maker, on_page)
        self.testers = TestersSide(self.frame, look, session, TestersOf(lambda: self.form.saved, self._written_to))
        self.follow = FollowView(
            self.frame,
            look,
            lambda: session.units,
            FollowActions(self._size_chosen, self._view_chosen, self._mend),
            PatternActions(self.files.copy, self.files.save_text, self.files.print),
        )
        for column, view in enumerate((self.left, self.editor, self.follow)):
            self._place(view, column)
        self._arrange(SHARES)
        self._changed()

    def _left(self) -> ttk.Frame:
        left = ttk.Frame(self.frame, width=1, height=1)
        left.grid_propagate(False)
        left.columnconfigure(0, weight=1)
        left.rowconfigure(0, weight=1)
        self.find = GarmentTree(left, self.look, self.garments, FindActions(self._select, self._go_to_form, self.delete))
        self.find.grid(row=0, column=0, sticky="nsew")
        self.find.moved = self._dragged
        for _, keys, by in MOVES:
            for widget in (self.find.table.tree, self.frame.winfo_toplevel()):  # the list takes Up and Down for itself
                bind_keys(widget, keys, partial(self.move_piece, by), while_shown=self.frame)
        bar = ButtonBar(left, self.look)
        self.look.grid(bar, row=1, column=0, sticky="ew", pady=(1, 0))
        self.add_button = bar.add("Add a piece", self.add_piece, underline=0)
        self.out_button = bar.add("Remove piece", self.take_piece_out, underline=3)
        return left

    def new(self) -> None:
        """Takes a new garment in hand, begun from what the user chooses."""
        if not self.settle():
            return
        single = self.one.begin_single
        begun = ask_template(self.frame.winfo_toplevel(), self.look, self.form.swatches, single=single is not None)
        if begun is not None and begun[0] == SINGLE_PIECE and single is not None:
            single()
        elif begun is not None:
            self.one.garments_shown()
            self.garments.fold(NEW, True)
            self._take_new(partial(self.form.begin, *begun))

    def open_line(self, key: str) -> None:
        """Takes in hand what stands in that line of the list."""
        self._show(key)

    def same_again(self) -> None:
        """Takes a new one like the one in hand."""
        self.garments.fold(NEW, True)
        super().same_again()

    def take_plan(self, plan: object) -> None:
        """Takes a new garment of that plan in hand, not saved."""
        assert isinstance(plan, GarmentPlan)
        self.garments.fold(NEW, True)
        self._take_new(partial(self.form.take_plan, plan))

    def add_piece(self) -> None:
        """Adds a piece to the garment in hand."""
        self.garments.fold(self._key_of_garment, True)
        self.form.add_piece()
        self._structure_changed()
        take_keyboard(self.editor.fields["name"].input)

    def _dragged(self, key: str, onto: str) -> None:
        """A piece was dropped on the line of another of its garment."""
        places = [piece_line_key(self._key_of_garment, number) for number in self.form.pieces]
        if key == self._key and onto in places:
            self.move_piece_to(places.index(onto))

    def take_piece_out(self) -> None:
        """Takes the piece chosen out of the garment; until that is saved, Revert brings it back."""
        if self.form.piece:
            self.form.take_piece_out()
            self._structure_changed()
            self.find.table.tree.focus_set()
            self.session.say("The piece is removed. Revert brings it back, until the garment is saved.")

    def move_piece(self, by: int) -> None:
        """Moves the piece chosen so many places down (negative: up) among the pieces of its garment."""
        if self.form.piece:
            self.move_piece_to(self.form.pieces.index(self.form.piece) + by)

    def move_piece_to(self, place: int) -> None:
        """Moves the piece chosen to that place, from 0; until that is saved, Revert brings the order back."""
        if self.form.move_piece(place):
            self._structure_changed()
            self.find.reload(self._key)

    def more_entries(self) -> Sequence[Entry]:
        """What the menu of its name holds besides."""
        moves = [Item(words, keys, partial(self.move_piece, by), partial(self._can_move, by)) for words, keys, by in MOVES]
        return [*self.files.entries, None, *moves, None, *self.testers.entries]

    def _can_move(self, by: int) -> bool:
        pieces = list(self.form.pieces)
        return bool(self.form.piece) and 0 <= pieces.index(self.form.piece) + by < len(pieces)

    def drafts(self) -> Iterator[Draft]:
        """What is typed in the form, and for a tester."""
        yield from super().drafts()
        if (draft := self.testers.draft()) is not None:
            yield draft

    @property
    def _name(self) -> str:
        return self.form.saved.name if self.form.saved else ""

    @property
    def _key_of_garment(self) -> str:
        return self.form.uid or NEW

    @property
    def _key(self) -> str:
        """The key of the line of what is in hand."""
        return piece_line_key(self._key_of_garment, self.form.piece) if self.form.piece else self._key_of_garment

    def _in_hand(self) -> InHand:
        return in_hand(self._key_of_garment, self.form, self.card, some_size_bad=bool(self._maker.bad_sizes))

    def _saved_words(self) -> str:
        return f"“{self.form.texts['name'].strip()}” is saved."

    def _delete(self, uids: Sequence[str]) -> str:
        gone = self.form.saved
        assert gone is not None  # it is the one in hand
        self.session.write(lambda: delete_garment(self.session.book, gone))
        return f"“{gone.name}” is deleted. Undo brings it back."

    def save(self) -> bool:
        """Saves what is typed; a garment that was new stays unfolded."""
        was_open = self.garments.is_open(self._key_of_garment)
        done = super().save()
        if done and was_open:
            self.garments.fold(self.form.uid, True)
            self._mark()
        return done

    def _select(self, uids: tuple[str, ...]) -> None:
        """The user chose another line: a piece of what is in hand, or of another garment; with something typed they may stay."""
        if not uids or uids[0] == self._key:
            return
        garment, _, piece = uids[0].partition("/")
        if garment in self.garments.pieces:
            if not self.one.opened(garment):
                self._mark()
            return
        if garment != self._key_of_garment:
            if not self.settle():
                self._mark()
                return
            if not self.form.show(garment):
                return
        self.form.piece = int(piece) if piece and int(piece) in self.form.pieces else 0
        self._changed()
        self.editor.show()

    def _show(self, uid: str) -> None:
        garment, _, piece = uid.partition("/")
        if self.form.show(garment):
            self.form.piece = int(piece) if piece else 0
            self._shown_anew()
        elif uid in self.garments.pieces:  # the last of the garments is deleted, and what stands next to it is a single piece
            self._take_new(self.form.new)
            self.one.opened(uid)

    def _mark(self) -> None:
        """The line of what is in hand is the one selected."""
        self.find.reload(self._key)

    def _take_new(self, make: Callable[[], None]) -> None:
        make()
        self._shown_anew()
        self.editor.start()

    def _shown_anew(self) -> None:
        self._changed()
        self.editor.show()

    def _typed(self) -> None:
        """A text is another."""
        self._changed()
        self.editor.say()

    def _structure_changed(self) -> None:
        """There are other pieces, or another one is chosen."""
        self._changed()
        self.editor.show()

    def _changed(self) -> None:
        self._show_possible()
        self.card = self._maker.card(self.form, self._size)
        self._size = self.card.size or self._size
        self.follow.show(self.card, self._maker.bad_sizes)
        self.find.reload(self._key)
        self.add_button.state(["!disabled" if not self.session.why_not_writable else "disabled"])
        self.out_button.state(["!disabled" if self.form.piece else "disabled"])
        self._others.soon()

    def _other_size(self) -> bool:
        """Works out another size than the one shown."""
        try:
            return self._maker.step() if self.card.sizes else False
        except RefusedError:
            return False

    def _others_known(self) -> None:
        self.card = replace(self.card, fixes=self._maker.fixes(self.card.problems))
        self.follow.show_sizes(self.card, self._maker.bad_sizes)
        self.follow.show_troubles(self.card)
        if self.follow.view == SIZES:
            self.follow.show_table(self.card, self._maker)
        elif self.follow.view == PATTERN:
            self._show_pattern()

    def _show_pattern(self) -> None:
        self.follow.pattern.show(*pattern_said(self.form.saved, self._maker, self.card, self.session.terms))

    def _pattern_shown(self) -> str:
        """The pattern as the view has it, brought up to date."""
        self._show_pattern()
        return self.follow.pattern.text

    def _size_chosen(self, name: str) -> None:
        self._size = name
        self._changed()
        self.editor.say()

    def _view_chosen(self, name: str) -> None:
        self.follow.show_view(name)
        self._changed()
        if name in (SIZES, PATTERN):
            self._others.now()

    def _mend(self, fix: JoinFix) -> None:
        fix.take(self.form, self.session.units)
        self._shown_anew()
        self.session.say(fix.done())

    def _written_to(self) -> None:
        """Something was written that the form does not show."""
        self._reload()
        if not self.form.is_dirty and self.form.changed_elsewhere():
            self.form.revert()
        self._shown_anew()
        self.session.records_changed(self)

    def _reload(self) -> None:
        self.form.refresh()
        self._maker.refresh()
        self.garments.reload()
        self.find.reload(self._key)

    def _records_changed(self, by: object) -> None:
        super()._records_changed(by)
        if by is not self:
            self.editor.say()  # a chart or a swatch that is another gives other measures

    def _settings_changed(self) -> None:
        super()._settings_changed()
        if self.follow.view == PATTERN:
            self._show_pattern()

    def _units_changed(self) -> None:
        self._maker.refresh()
        self._shown_anew()

    def _go_to_form(self) -> None:
        self.editor.start()
