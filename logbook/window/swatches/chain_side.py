"""The right of the page of swatches: the starting chain of the swatch in hand, and under it how sure that is."""

from collections.abc import Callable, Iterable, Mapping
from functools import partial
from tkinter import ttk

from logbook.craft.swatches.swatch import Swatch
from logbook.pages.gauges.circumstances import Circumstances
from logbook.pages.pieces.plan_texts import FINISH
from logbook.pages.session import Session
from logbook.pages.swatches.chain_card import ChainMaker
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.window.gauges.sure_view import SureView
from logbook.window.look import Look
from logbook.window.swatches.begin_view import BeginView
from logbook.window.swatches.chain_view import ChainView


class ChainSide:
    """Follows ``form``; ``on_fold`` gets the name of a section that is opened or closed, ``on_begin`` texts for the form.

    ``is_empty`` says whether no swatch is logged yet, ``keep`` saves the form.
    """

    def __init__(
        self,
        frame: ttk.Frame,
        look: Look,
        session: Session,
        form: SwatchForm,
        opened: Iterable[str],
        on_fold: Callable[[str, bool], object],
        on_begin: Callable[[Mapping[str, str]], object],
        is_empty: Callable[[], bool],
        keep: Callable[[], object],
    ) -> None:
        self._session, self._form = session, form
        self._maker = ChainMaker(session)
        self.chain = ChainView(frame, look, lambda: session.units, opened, self.show, on_fold, on_begin)
        self.sure = SureView(self.chain.below, look, opened, self.known, on_fold, self.chain.folds)
        self.sure.grid(row=0, column=0, sticky="ew")
        self._begin: BeginView | None = None
        self._on_begin, self._is_empty, self._keep = on_begin, is_empty, keep
        self._look = look

    def show(self) -> None:
        """Brings everything up to date with what is typed, in the form or above the chain."""
        self._show_begin()
        self.chain.show(self._maker.card(self._form.typed(), self.chain.texts()))
        self.sure.show()

    def _show_begin(self) -> None:
        """What an empty logbook begins with is made when it is first wanted."""
        wanted = self._is_empty() and self._form.saved is None
        if wanted and self._begin is None:
            suggested = partial(self._form.suggested, "stitch pattern")
            place = self.chain
            self._begin = BeginView(place.above, place.beneath, self._look, suggested, self._on_begin, self._keep)
        self.chain.ask_for_chains(not wanted)
        if self._begin is not None:
            self._begin.show(self._form.texts, self._form.typed().errors, wanted=wanted)

    def refresh(self) -> None:
        """Takes from the logbook again what it lends and assumes."""
        self._maker.refresh()

    def known(self) -> tuple[Swatch, Circumstances]:
        """The swatch as typed, and what else bears upon its gauge."""
        swatch = self._form.typed().swatch
        known = Circumstances(
            others=self._maker.lenders(swatch),
            assumed=self._maker.assumed,
            drift=self._maker.drift.of(swatch.worked_by),
            finish=FINISH[self.chain.texts().finish],
            target_mm=self.chain.target_mm,
            units=self._session.units,
        )
        return swatch, known
