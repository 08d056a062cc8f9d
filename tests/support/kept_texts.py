"""What the form of a record shows when it is taken from the logbook anew."""

from collections.abc import Callable, Mapping
from typing import Any

from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.patterns.pattern_form import PatternForm
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.session import Session
from logbook.pages.swatches.swatch_form import SwatchForm

PATTERN = "stitch pattern"
_FORMS: dict[str, Callable[[Session], Any]] = {
    "swatch": SwatchForm,
    "piece": PieceForm,
    "garment": GarmentForm,
    PATTERN: PatternForm,
}


def kept_texts(session: Session, kind: str, uid: str) -> Mapping[str, str] | None:
    """Its texts by the names of the fields; None if there is no such record."""
    form = _FORMS[kind](session)
    return form.texts if form.show(uid) else None
