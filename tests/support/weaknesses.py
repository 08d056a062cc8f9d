"""Weaknesses that the hand must find: each takes away what the program does against one way Tk goes wrong."""

import tkinter as tk
from collections.abc import Callable

from logbook.window import draft_keeper, keyboard, main_window


def look_ups_raise() -> None:
    """A look-up of the focus raises on what Tk made by itself."""

    def known(place: tk.Misc, *question: object) -> tk.Misc | None:
        path = str(place.tk.call(*question))
        if ".popdown" in path or ".#" in path:
            raise KeyError(path)
        return place.nametowidget(path) if path else None

    keyboard._known = known


def reporter_raises() -> None:
    """A look-up raises, and showing that raises again, out of the reporter."""
    look_ups_raise()

    def report_unexpected(root: tk.Tk, *_: object) -> None:
        def report(*_: object) -> None:
            raise ValueError

        root.report_callback_exception = report

    main_window.report_unexpected = report_unexpected


def wheel_chooses() -> None:
    """The wheel over a drop-down that is not open chooses the next, as Tk has it."""
    from logbook.window import wheel

    wheel.install_wheel = lambda root: None
    main_window.install_wheel = lambda root: None  # type: ignore[attr-defined]


def titles_silent() -> None:
    """What stands over a form never says that something in it is not saved."""
    from logbook.pages.garments.garment_form import GarmentForm
    from logbook.pages.patterns.pattern_form import PatternForm
    from logbook.pages.pieces.piece_form import PieceForm
    from logbook.pages.swatches.swatch_form import SwatchForm

    for form in (GarmentForm, PatternForm, PieceForm, SwatchForm):
        form.title = property(lambda _: "In hand")  # type: ignore[assignment, method-assign]


def drafts_unwritten() -> None:
    """What is typed is kept nowhere but in the window."""
    draft_keeper.DraftKeeper._write = lambda self, file, drafts: None  # type: ignore[method-assign]


def drafts_late() -> None:
    """What is typed is kept every ten seconds."""
    draft_keeper.KEEP_MS = 10_000


WEAKNESSES: dict[str, Callable[[], None]] = {
    "look-ups": look_ups_raise,
    "reporter": reporter_raises,
    "wheel": wheel_chooses,
    "titles": titles_silent,
    "unwritten": drafts_unwritten,
    "late": drafts_late,
}
