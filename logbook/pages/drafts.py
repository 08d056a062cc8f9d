"""Drafts: of which form something is kept, and what of a draft that was left behind is offered again, field by field."""

from collections.abc import Mapping
from typing import NamedTuple

from logbook.craft.swatches.conditions import Condition
from logbook.tasks.drafts import NEW, Draft

SWATCHES, CHAIN, PIECES, MADE, PATTERNS = "swatches", "chain", "pieces", "made pieces", "stitch patterns"
GARMENTS, TESTERS, CHARTS = "garments", "testers", "body charts"
PAGE_OF = {SWATCHES: 0, CHAIN: 0, PIECES: 1, MADE: 1, GARMENTS: 1, TESTERS: 1, CHARTS: 1, PATTERNS: 2}
"""The number of the page on which a draft is taken up."""
_KINDS = {
    SWATCHES: "swatch", PIECES: "piece", GARMENTS: "garment", MADE: "made piece", TESTERS: "tester", PATTERNS: "stitch pattern",
    CHARTS: "body chart",
}  # fmt: skip
_LABELS = {f"readings {one.value}": f"readings {one.words}" for one in Condition} | {
    "sentence": "the chain, in words",
    "rows_text": "written rows",
}


def draft_of(page: str, uid: str, name: str, units: str, typed: Mapping[str, str], opened: Mapping[str, str]) -> Draft | None:
    """What is to be kept of a form; None if nothing is typed in it."""
    if typed == opened:
        return None
    return Draft(page, uid or NEW, name, units, dict(typed), dict(opened))


class OfferedField(NamedTuple):
    """One field of an offer: what was typed, and what the logbook holds now, which may be another text than when the record was
    taken in hand (``changed``)."""

    key: str
    label: str
    typed: str
    now: str
    changed: bool


class Offer:
    """``now`` are the texts of the record as the logbook has it: None for a new record, or one that is not there any more."""

    def __init__(self, draft: Draft, now: Mapping[str, str] | None) -> None:
        self.draft = draft
        if draft.is_new and now is not None and any(now.get(key, "").strip() != t.strip() for key, t in draft.typed.items()):
            now = None  # of the same name only; a new one that is equal was saved just before the end
        self._now = now
        self.fields = [
            OfferedField(key, label_of(key), text, there, now is not None and there.strip() != draft.opened.get(key, "").strip())
            for key, text in draft.typed.items()
            if text.strip() != draft.opened.get(key, "").strip()
            and text.strip() != (there := "" if now is None else now.get(key, "")).strip()
        ]

    @property
    def sentence(self) -> str:
        """What it is that was typed."""
        draft = self.draft
        if draft.page == CHAIN:
            return "This was typed for a starting chain when the program ended unexpectedly:"
        kind = _KINDS[draft.page]
        if draft.is_new:
            return f"A new {kind} was typed but not saved when the program ended unexpectedly:"
        gone = " It is not in the logbook any more, so it would be a new one." if self._now is None else ""
        return f"This was typed for the {kind} “{draft.name}” but not saved when the program ended unexpectedly.{gone}"

    def texts(self, keys: frozenset[str]) -> dict[str, str]:
        """The texts to type anew, with of the fields offered those in ``keys``; a new record gets all the others too."""
        offered = {field.key for field in self.fields}
        whole = self._now is None and self.draft.page != CHAIN
        return {key: text for key, text in self.draft.typed.items() if key in keys or (whole and key not in offered)}


def label_of(key: str) -> str:
    """What a field is called in an offer."""
    return _LABELS.get(key, key.replace("_", " "))


def told_now(field: OfferedField) -> str:
    """What is said beside what was typed."""
    there = f"“{field.now}”" if field.now.strip() else "nothing"
    if field.changed:
        return f"Changed in the logbook since: now {there}"
    return f"In the logbook: {there}" if field.now.strip() else ""
