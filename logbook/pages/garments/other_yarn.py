"""The same garment in another yarn: other swatches for it, and the old numbers beside the new ones."""

from collections.abc import Mapping
from dataclasses import replace
from typing import NamedTuple

from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.plan import GarmentPlan
from logbook.errors import LogbookError
from logbook.pages.garments.garment_card import yarn_sentences
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.session import Session
from logbook.pages.swatches.swatch_choice import tag_of
from logbook.tasks.garments import work_out

HEADINGS = ("Size", "Piece", "Chain", "now", "Stitches", "now", "Rows", "now")


class OldBesideNew(NamedTuple):
    """Old beside new: a row for each piece in each size, what each takes of yarn, and what stands in the way."""

    rows: tuple[tuple[str, ...], ...] = ()
    yarn: tuple[str, ...] = ()
    error: str = ""


class OtherYarn:
    """``tags`` are the swatches of the garment in hand; for each another may be chosen."""

    def __init__(self, session: Session, form: GarmentForm) -> None:
        self._session, self.form = session, form
        plan = form.read().plan
        self.tags = tuple(dict.fromkeys(p.swatch for p in plan.pieces if isinstance(p.swatch, str) and p.swatch))
        self._before = plan

    def plan(self, chosen: Mapping[str, str]) -> GarmentPlan:
        """The plan with the swatches chosen (old tag → typed), under a name of its own."""
        tags = {old: tag_of(new) for old, new in chosen.items() if new.strip()}
        return replace(self.form.with_swatches(tags), name=self.form.free_name())

    def beside(self, chosen: Mapping[str, str]) -> OldBesideNew:
        """Both worked out."""
        unknown = next((said for text in chosen.values() if (said := self.form.swatches.unknown(text))), "")
        if unknown:
            return OldBesideNew(error=unknown)
        try:
            old, new = (work_out(plan, self._session.book).numbers for plan in (self._before, self.plan(chosen)))
        except LogbookError as error:
            return OldBesideNew(error=str(error))
        rows = [row for was, now in zip(old, new, strict=True) for row in _rows(was, now)]
        middle = len(old) // 2
        yarn = [
            f"{which}: {' '.join(takes)}"
            for which, size in (("Before", old[middle]), ("Now", new[middle]))
            if (takes := yarn_sentences(size, len(old) == 1))
        ]
        return OldBesideNew(tuple(rows), tuple(yarn))


def _rows(was: GarmentInSize, now: GarmentInSize) -> list[tuple[str, ...]]:
    rows = []
    for old, new in zip(was.pieces, now.pieces, strict=True):
        chains = ["–" if piece.chain is None else str(piece.chain) for piece in (old, new)]
        ends = [str(piece.counts[-1]) for piece in (old, new)]
        rows.append((was.name, old.name, *chains, *ends, str(old.rows), str(new.rows)))
    return rows
