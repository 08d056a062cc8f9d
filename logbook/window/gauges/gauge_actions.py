"""What can be done with gauges from the page of swatches: compare them, find near ones, choose a hook, copy the line.

Dialogs and what they decide are imported when they open, so that the window is there at once.
"""

from collections.abc import Callable
from dataclasses import dataclass
from tkinter import ttk
from typing import TYPE_CHECKING

from logbook.craft.swatches.swatch import gauges_of
from logbook.craft.words.numbers import grouped
from logbook.errors import LogbookError, RefusedError
from logbook.pages.session import Session
from logbook.window.keys import bind_keys
from logbook.window.look import Look
from logbook.window.menu_entries import Item
from logbook.window.message import tell
from logbook.window.printing import Printer

if TYPE_CHECKING:
    from logbook.craft.swatches.swatch import Swatch
    from logbook.pages.gauges.circumstances import Circumstances
    from logbook.pages.gauges.comparing import ComparedSwatches
    from logbook.tasks.browsing import Filters
    from logbook.tasks.nearest import LookedThrough
    from logbook.window.background import Report

AT_ONCE = 1000
"""So many swatches are looked through before the dialog opens; more with progress shown."""


@dataclass(frozen=True, slots=True)
class SwatchesOnPage:
    """What the page says of this moment: the swatch as typed with what is known, the swatches selected and their tags, the
    filters, how many swatches there are; and how it takes one in hand."""

    in_hand: "Callable[[], tuple[Swatch, Circumstances]]"
    selected: Callable[[], tuple[str, ...]]
    selected_tags: Callable[[], tuple[str, ...]]
    filters: "Callable[[], Filters]"
    count: Callable[[], int]
    take: Callable[[str], object]


class GaugeActions:
    """``entries`` of the menu *Swatch*, each with its key, while ``frame`` is shown."""

    def __init__(self, frame: ttk.Frame, look: Look, session: Session, page: SwatchesOnPage) -> None:
        self._frame, self.look, self._session, self._page = frame, look, session, page
        self._printer = Printer(session)
        self.entries = (
            Item("&Compare swatches…", "Mod-k", self.compare, lambda: page.count() > 0),
            Item("&Nearest gauge…", "Mod-b", self.nearest, lambda: page.count() > 0),
            Item("Which &hook…", "Mod-j", self.which_hook),
            Item("Copy gauge &line", "Mod-l", self.copy_line, lambda: bool(self._line())),
            Item("Print &tags…", "Mod-t", self.print_tags, lambda: bool(page.selected())),
        )
        for entry in self.entries:
            bind_keys(frame.winfo_toplevel(), entry.keys, entry.action, while_shown=frame)

    def compare(self) -> None:
        """Compares the selected swatches; with one selected the others' tags are typed."""
        from logbook.window.gauges.compare_dialog import show_comparison

        show_comparison(self._frame, self.look, self._page.selected_tags(), self._compared)

    def nearest(self) -> None:
        """Looks for near gauges among the swatches that the page's filters leave."""
        from logbook.tasks.nearest import FINISHED, look_through
        from logbook.window.progress import run_with_progress

        filters = self._page.filters()
        if self._page.count() <= AT_ONCE:
            self._show_nearest(look_through(self._session.book, filters))
            return

        def look(report: "Report") -> "LookedThrough":
            with self._session.book.again() as book:
                return look_through(book, filters, FINISHED)

        run_with_progress(self._frame, self.look, "Looking through the swatches …", look, self._show_nearest, self._say_why_not)

    def which_hook(self) -> None:
        """Which hook gives which gauge with the yarn and stitch in hand."""
        from logbook.pages.gauges.gauge_words import usual_condition
        from logbook.pages.gauges.hook_card import hook_card
        from logbook.window.gauges.hook_dialog import show_hooks

        swatch, known = self._page.in_hand()
        parts = [swatch.yarn.name if swatch.yarn else "", swatch.pattern.name if swatch.pattern else ""]
        title = ", ".join(["Which hook", *(part for part in parts if part)])
        units = self._session.units
        condition = usual_condition(gauges_of(swatch, known.assumed))
        show_hooks(
            self._frame,
            self.look,
            title,
            condition,
            lambda chosen, wanted: hook_card(swatch, known.others, chosen, known.assumed, wanted, units),
        )

    def copy_line(self) -> None:
        """Puts the gauge line of the swatch in hand on the clipboard and says it."""
        line = self._line(self._session.say)
        if line:
            self._frame.clipboard_clear()
            self._frame.clipboard_append(line)
            self._session.say(f"Copied: {line}")

    def _line(self, say: Callable[[str], object] = lambda why: None) -> str:
        """The gauge line of the swatch in hand; "" where there is none, and why that is so is said."""
        from logbook.pages.gauges.line_to_copy import line_to_copy

        swatch, known = self._page.in_hand()
        try:
            return line_to_copy(swatch, known.assumed, self._session.terms)
        except RefusedError as error:
            say(str(error))
            return ""

    def print_tags(self) -> None:
        """Opens a page with the tags of the selected swatches in the browser: to print, cut out and tie on."""
        from logbook.tasks.printed.tags import tag_sheet_of

        try:
            self._printer.show_page(tag_sheet_of(self._session.book, self._page.selected()), "tags.html")
        except RefusedError as error:
            self._session.say(str(error))

    def _compared(self, text: str) -> "ComparedSwatches | str":
        from logbook.pages.gauges.comparing import side_by_side
        from logbook.tasks.compare import compare

        tags = list(dict.fromkeys(tag.strip() for tag in text.replace(";", ",").split(",") if tag.strip()))
        if len(tags) < 2:
            return "Type the tags of two to six swatches, separated by commas, or select them in the list first."
        try:
            return side_by_side(compare(self._session.book, tags), self._session.units)
        except RefusedError as error:
            return str(error)

    def _show_nearest(self, through: "LookedThrough") -> None:
        from logbook.pages.gauges.gauge_words import usual_condition
        from logbook.pages.gauges.nearest import NearestGauge
        from logbook.tasks.browsing import Filters
        from logbook.window.gauges.nearest_dialog import show_nearest

        swatch, known = self._page.in_hand()
        filters, units = self._page.filters(), self._session.units
        among = f"Looked through: {grouped(len(through.found))} of {grouped(self._page.count())} swatches" + (
            ", those that Find and the filters show." if filters != Filters() else "."
        )
        condition = filters.condition or usual_condition(gauges_of(swatch, known.assumed))
        nearest = NearestGauge(through, swatch, known.assumed, units)
        show_nearest(self._frame, self.look, nearest, condition, units, among, self._page.take)

    def _say_why_not(self, error: Exception) -> None:
        if not isinstance(error, LogbookError):
            raise error
        tell(self._frame, self.look, str(error))
