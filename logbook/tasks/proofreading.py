"""Proofreading: the maker's finished text held against the numbers of a garment."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from logbook.craft.proofreading.judging import Found, Verdict, judged
from logbook.craft.proofreading.quantities import Kind, Quantity, quantities
from logbook.craft.proofreading.text_checks import Problem, problems_of
from logbook.craft.words.numbers import show_number
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.tasks.garment_files import written
from logbook.tasks.garments import GarmentAnswer
from logbook.tasks.written.garment import whole_pattern
from logbook.tasks.written.parts import plain_text

LARGEST_TEXT = 1_000_000
"""Characters: the longest pattern of a book is far shorter."""
_SECTIONS = ("Finished measurements", "Materials", "Gauge", "Tension", "Abbreviations", "Notes", "Making up", "Care and cautions")


@dataclass(frozen=True, slots=True)
class Proofread:
    """What came of proofreading: every quantity judged, and what the text contradicts itself in."""

    found: tuple[Found, ...]
    problems: tuple[Problem, ...]

    @property
    def faultless(self) -> bool:
        """Whether nothing differs and nothing is a problem."""
        return not self.problems and all(one.verdict is not Verdict.DIFFERS for one in self.found)


def read_text(path: Path) -> str:
    """The text of a file. Raises RefusedError, in one sentence, if it is none, empty or too long."""
    try:
        if path.is_file() and path.stat().st_size > 4 * LARGEST_TEXT:
            raise RefusedError(f"“{path.name}” is too long to be a pattern: the most is {LARGEST_TEXT:,} characters.")
        text = path.read_text("utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        why = error.strerror if isinstance(error, OSError) else "it is not text"
        raise RefusedError(f"“{path.name}” could not be read ({why}): give a text file.") from error
    if "\0" in text:
        raise RefusedError(f"“{path.name}” could not be read (it is not text): give a text file.")
    return require_text(text.replace("\r\n", "\n").replace("\r", "\n"), f"“{path.name}”")


def require_text(text: str, name: str = "The text") -> str:
    """The same text. Raises RefusedError if there is nothing in it or too much."""
    if not text.strip():
        raise RefusedError(f"{name} is empty: paste or save the pattern first.")
    if len(text) > LARGEST_TEXT:
        raise RefusedError(f"{name} is too long to be a pattern: the most is {LARGEST_TEXT:,} characters.")
    return text


def proofread(text: str, answer: GarmentAnswer) -> Proofread:
    """The text held against every number of the garment's whole pattern, in US and UK terms alike."""
    names = [size.name for size in answer.numbers]
    sections = (*(piece.name for piece in answer.plan.pieces), *_SECTIONS)
    own = quantities(text, len(names), sections)
    return Proofread(judged(own, _known(answer, sections), len(names)), problems_of(text, own, names))


def _known(answer: GarmentAnswer, sections: Sequence[str]) -> list[Quantity]:
    """The quantities of the whole pattern as the logbook writes it, lengths unrounded."""
    known: dict[tuple[object, ...], Quantity] = {}
    for terms in Terms:
        text = plain_text(answer.plan.name, whole_pattern(replace(written(answer, terms), exact=True)))
        for one in quantities(text, len(answer.numbers), sections):
            known.setdefault((one.section, one.kind, one.values, one.before, one.after, one.line), one)
        if terms is Terms.US:
            first = list(known.values())
    return first


def what_words(found: Found) -> str:
    """What a quantity was taken for: ``sleeve, stitches``."""
    one = found.known or found.quantity
    return ", ".join(part for part in (one.section, one.kind.value) if part)


def expected_words(found: Found) -> str:
    """What the logbook has there: ``62 (68, 80)``; "" where nothing is near."""
    if found.known is None:
        return ""
    shown = [_shown(value, found.quantity) for value in found.known.values]
    behind = f" {found.quantity.unit}" if found.quantity.unit else ""
    return (f"{shown[0]} ({', '.join(shown[1:])})" if len(shown) > 1 else shown[0]) + behind


def _shown(value: float | None, like: Quantity) -> str:
    if value is None:
        return "–"
    if like.kind is Kind.LENGTH:
        value /= {"cm": 10.0, "mm": 1.0}.get(like.unit, 25.4)
    elif like.unit == "yd":
        value /= 0.9144
    return show_number(value, 1 if like.unit == "cm" else 2)
