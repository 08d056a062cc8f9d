"""The right of the page of swatches: the starting chain of the swatch in hand, and under it how sure that is."""

from collections.abc import Callable, Iterable, Mapping
from tkinter import ttk

from logbook.craft.swatches.swatch import Swatch
from logbook.pages.gauges.circumstances import Circumstances
from logbook.pages.pieces.plan_texts import FINISH
from logbook.pages.session import Session
from logbook.pages.swatches.chain_card import ChainMaker
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.window.gauges.sure_view import SureView
from logbook.window.look import Look
from logbook.window.swatches.chain_view import ChainView


class ChainSide:
    """Follows ``form``; ``on_fold`` gets the name of a section that is opened or closed, ``on_begin`` texts for the form."""

    def __init__(
        self,
        frame: ttk.Frame,
        look: Look,
        session: Session,
        form: SwatchForm,
        opened: Iterable[str],
        on_fold: Callable[[str, bool], object],
        on_begin: Callable[[Mapping[str, str]], object],
    ) -> None:
        self._session, self._form = session, form
        self._maker = ChainMaker(session)
        self.chain = ChainView(frame, look, lambda: session.units, opened, self.show, on_fold, on_begin)
        self.sure = SureView(self.chain.below, look, opened, self.known, on_fold, self.chain.folds)
        self.sure.grid(row=0, column=0, sticky="ew")

    def show(self) -> None:
        """Brings everything up to date with what is typed, in the form or above the chain."""
        self.chain.show(self._maker.card(self._form.typed(), self.chain.texts()))
        self.sure.show()

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
