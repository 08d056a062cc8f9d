"""The page of swatches: what there is, the one in hand, the chain that follows from it."""

import tkinter as tk
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from typing import TYPE_CHECKING

from logbook.pages.drafts import CHAIN, SWATCHES, draft_of
from logbook.pages.session import Session
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.pages.swatches.swatch_list import SwatchList, filters_of
from logbook.tasks.browsing import tags_of
from logbook.tasks.drafts import Draft
from logbook.tasks.logging_swatches import delete_swatches
from logbook.window.find_list import FindActions
from logbook.window.gauges.gauge_actions import GaugeActions, SwatchesOnPage
from logbook.window.look import Look
from logbook.window.menu_entries import Item
from logbook.window.record_page import RecordPage
from logbook.window.swatches.find_view import FindView, SwatchActions
from logbook.window.table import Entry
from logbook.window.when_drawn import when_drawn

if TYPE_CHECKING:
    from logbook.window.swatches.chain_side import ChainSide
    from logbook.window.swatches.chain_view import ChainView
    from logbook.window.swatches.form_view import FormView

FILTERS = "swatches.filters"
SORT, WIDTH = "swatches.sort", "swatches.width"
"""What is remembered from one start to the next: the order of the list, and the width wanted last."""
SHARES = (413, 462, 475)
"""Of the page's width, from left to right."""


class SwatchesPage(RecordPage):
    """Finds, shows and logs swatches, and says what each makes of a width."""

    kind, drafts_as = "swatch", SWATCHES
    panes_are = ("Swatches", "Form", "Starting chain")
    find: FindView

    def __init__(self, parent: tk.Misc, look: Look, session: Session) -> None:
        self.swatches = SwatchList(session)
        self.form = SwatchForm(session)
        if self.swatches.newest is None or not self.form.show(self.swatches.newest):
            self.form.new()
        super().__init__(parent, look, session, self.form)
        self._editor: FormView | None = None
        self._side: ChainSide | None = None
        opened = session.settings.opened
        actions = FindActions(self._select, self._go_to_width, self.delete)
        fold, sorted_as = partial(self._fold, FILTERS), partial(self._remember, SORT)
        more = SwatchActions(self._go_to_readings, session.open_sample, fold, sorted_as)
        self.find = FindView(self.frame, look, self.swatches, lambda: self.form.known, actions, more, FILTERS in opened)
        if SORT in session.settings.remembered:
            self.find.sort_as(session.settings.remembered[SORT])
        on_page = SwatchesOnPage(
            in_hand=lambda: self.side.known(),
            selected=lambda: self.find.table.selected,
            selected_tags=lambda: tags_of(session.book, self.find.table.selected),
            filters=lambda: filters_of(self.find.texts())[0],
            count=lambda: self.swatches.count,
            take=self.take,
        )
        self.gauges = GaugeActions(self.frame, look, session, on_page)
        self._place(self.find, 0)
        self._arrange(SHARES)
        self._mark()
        self._changed()
        when_drawn(self.find, lambda: self.editor)

    @property
    def editor(self) -> "FormView":  # type: ignore[override]
        """The form, made when it is first wanted or when the list is drawn, which is not to wait for it; the chain follows."""
        if self._editor is None:
            from logbook.pages.picture_shelf import PictureShelf
            from logbook.window.swatches.form_view import FormView

            opened, shelf = self.session.settings.opened, PictureShelf(self.session)
            self._editor = FormView(self.frame, self.look, self.form, opened, self._changed, self._fold, shelf)
            self._place(self._editor, 1)
            self._editor.lift(self.find)  # next after the list, where Tab goes on to
            when_drawn(self._editor, lambda: self.side)
        return self._editor

    @property
    def side(self) -> "ChainSide":
        """The chain, made when it is first wanted or when the form is drawn."""
        if self._side is None:
            from logbook.window.swatches.chain_side import ChainSide

            opened = self.session.settings.opened
            self._side = ChainSide(
                self.frame,
                self.look,
                self.session,
                self.form,
                opened,
                self._fold,
                self.editor.put,
                lambda: not self.swatches.count,
                self.save,
            )
            self._place(self._side.chain, 2)
            self._side.chain.lift(self.editor)  # next after the form, where Tab goes on to
            width = self._side.chain.width
            width.text = self.session.settings.remembered.get(WIDTH, "")
            width.input.bind("<FocusOut>", lambda _: self._remember(WIDTH, self._with_unit(width.text)), add="+")
            self._side.show()
        return self._side

    def _with_unit(self, width: str) -> str:
        from logbook.pages.pieces.plan_texts import with_unit  # as late as the chain

        return with_unit(width, self.session.units)

    def _remember(self, name: str, text: str) -> None:
        """For the next start."""
        settings = self.session.settings
        if settings.remembered.get(name, "") != text:
            self.session.change_settings(settings.with_remembered(name, text))

    @property
    def chain(self) -> "ChainView":
        """The chain itself."""
        return self.side.chain

    def drafts(self) -> Iterator[Draft]:
        """What is typed in the form, and as a wanted width."""
        yield from super().drafts()
        if self._side is not None:
            from logbook.pages.swatches.chain_texts import ChainTexts  # as late as the chain

            typed, units = self._side.chain.texts().as_typed(), self.session.units.value
            began = ChainTexts().as_typed() | {"width": self.session.settings.remembered.get(WIDTH, "")}
            if self._with_unit(typed["width"]) == began["width"]:
                began["width"] = typed["width"]
            if (draft := draft_of(CHAIN, "", "", units, typed, began)) is not None:
                yield draft

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """As every page; the logbook keeps no chain."""
        return None if draft.page == CHAIN else super().kept(draft)

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> bool:
        """As every page; what was typed for a chain goes into its fields."""
        if draft.page != CHAIN:
            return super().take_up(draft, texts)
        self.chain.take_up(texts)
        return True

    def take(self, uid: str) -> None:
        """Takes another swatch in hand, unless what is typed is to stay."""
        if uid != self.form.uid and self.settle():
            self._show(uid)

    def more_entries(self) -> Sequence[Entry]:
        """What the menu of its name holds besides."""
        picture = Item("Add a p&icture…", "", lambda: self.editor.add_picture(), lambda: not self.session.why_not_writable)
        return (picture, *self.gauges.entries, None, Item("&Yarns…", "", self.yarns))

    def yarns(self) -> None:
        """The list of yarns, with that of the swatch in hand chosen."""
        from logbook.tasks.known_names import NameOf
        from logbook.window.names_dialog import show_names

        if self.settle():
            yarn = self.form.saved.yarn if self.form.saved else None
            show_names(self.frame, self.look, self.session, NameOf.YARN, yarn.uid if yarn else "")

    @property
    def _name(self) -> str:
        return self.form.saved.tag if self.form.saved else ""

    def save(self) -> bool:
        """As every page; and what hides the saved swatch in the list is asked for no more."""
        saved = super().save()
        if saved:
            self.find.reveal(self.form.uid)
        return saved

    def _saved_words(self) -> str:
        return f"Swatch {self._name} is saved."

    def _to_delete(self) -> Sequence[str]:
        return self.find.table.selected or super()._to_delete()

    def _delete(self, uids: Sequence[str]) -> str:
        self.session.write(lambda: delete_swatches(self.session.book, uids))
        count = "1 swatch is" if len(uids) == 1 else f"{len(uids)} swatches are"
        return f"{count} deleted. Undo brings back what was deleted."

    def _changed(self) -> None:
        self._show_possible()
        if self._side is not None:
            self._side.show()

    def _reload(self) -> None:
        self.swatches.reload()
        self.form.refresh()
        if self._side is not None:
            self._side.refresh()
        self.find.reload()
        self._mark()
        if self._editor is not None:
            self._editor.say()

    def _units_changed(self) -> None:
        self.form.refresh()
        self.find.reload()  # its gauges are over another length
        self._mark()
        if self._side is not None:
            self._side.chain.settings_changed()
        self.editor.say()
        self._changed()

    def _go_to_readings(self) -> None:
        self.editor.start_readings()

    def _go_to_width(self) -> None:
        self.panes.bring(2)
        self.chain.start()
