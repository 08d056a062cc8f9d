"""The assumptions as a form: per cent where the arithmetic has shares, cm where it has mm."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.fields import exact
from logbook.craft.words.numbers import in_mark, read_positive, read_whole
from logbook.pages.session import Session
from logbook.pages.text_reader import TextReader
from logbook.tasks.browsing import assumptions_of, save_assumptions


@dataclass(frozen=True, slots=True)
class AssumptionLine:
    """One assumption: its name in the craft, label with the letter of its key, unit, and text; on or off: TICKED or empty."""

    name: str
    label: str
    unit: str
    text: str
    is_tick: bool = False


@dataclass(frozen=True, slots=True)
class _Kind:
    label: str
    unit: str
    scale: float
    read: Callable[[str], float]
    may_be_empty: bool = False
    is_tick: bool = False

    def value(self, text: str) -> float | bool | None:
        """The assumption that ``text`` says. Raises UnreadableError."""
        if self.is_tick:
            return text == TICKED
        return None if self.may_be_empty and not text.strip() else self.read(text) * self.scale


TICKED = "yes"


def _shown(value: float | bool | None, scale: float) -> str:
    if isinstance(value, bool):
        return TICKED if value else ""
    return "" if value is None else in_mark(exact(round(value / scale, 6)))


def _number(what: str, most: float) -> Callable[[str], float]:
    return lambda text: read_positive(text, what, most)


_KINDS = {
    "tape_mm": _Kind("A &tape in cm is read to", "mm", 1, _number("a length in mm", 50)),
    "tape_inch_mm": _Kind("A tape in &inches is read to", "in", 25.4, _number("a length in inches", 2)),
    "count_step": _Kind(
        "A &count is read to", "of a stitch (empty: as it shows)", 1, _number("a part of a stitch", 1), may_be_empty=True
    ),
    "variation": _Kind("A &fabric varies from place to place by", "%", 0.01, _number("a share in per cent", 30)),
    "drift": _Kind("A &finished piece differs from its swatch by", "%", 0.01, _number("a share in per cent", 30)),
    "count_lean": _Kind("Count in how each maker’s own pieces come out, and what they use", "", 1, float, is_tick=True),
    "reserve": _Kind("Yarn kept in &reserve", "%", 0.01, _number("a share in per cent", 200)),
    "most_edge_stitches": _Kind("&Edge stitches at each side, at most", "", 1, lambda text: read_whole(text, "a count", 0, 20)),
    "hourly_rate": _Kind(
        "An &hour of work is counted at", "(empty: not counted)", 1, _number("an amount of money", 100_000), may_be_empty=True
    ),
}


class AssumptionForm:
    """The assumptions of one logbook, as texts."""

    def __init__(self, session: Session) -> None:
        self._session = session
        kept = assumptions_of(session.book)
        self.lines = tuple(
            AssumptionLine(name, kind.label, kind.unit, _shown(getattr(kept, name), kind.scale), kind.is_tick)
            for name, kind in _KINDS.items()
        )

    def errors(self, texts: Mapping[str, str]) -> dict[str, str]:
        """A sentence for each text that can't be read."""
        reader = TextReader(texts)
        for name, kind in _KINDS.items():
            reader.value(name, kind.value)
        return reader.errors

    def save(self, texts: Mapping[str, str]) -> None:
        """Keeps them. Raises LogbookError if that can't be."""
        values: dict[str, Any] = {name: kind.value(texts[name]) for name, kind in _KINDS.items()}
        wanted = replace(Assumptions(), **values)
        self._session.write(lambda: save_assumptions(self._session.book, wanted))
