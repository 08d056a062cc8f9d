"""Proofreading: the maker's finished text held against the numbers of a garment."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import NamedTuple

from logbook.craft.garments.published import Published
from logbook.craft.proofreading.judging import FoundQuantity, Verdict, judged
from logbook.craft.proofreading.quantities import Quantity, QuantityKind, quantities
from logbook.craft.proofreading.rows_in_text import rows_problems
from logbook.craft.proofreading.text_checks import TextProblem, problems_of
from logbook.craft.sizes.published_run import PublishedRun
from logbook.craft.words.numbers import grouped, show_number
from logbook.craft.words.printed_sizes import sized
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.tasks import garment_publishing, set_runs
from logbook.tasks.garment_files import written
from logbook.tasks.garments import GarmentAnswer, garment_called, garments, work_out
from logbook.tasks.keeping import Logbook
from logbook.tasks.pieces import planned_pieces
from logbook.tasks.written.garment import whole_pattern
from logbook.tasks.written.parts import plain_text

LARGEST_TEXT = 1_000_000
"""Characters: the longest pattern of a book is far shorter."""
MOST_NUMBERS = 20_000
"""Numbers and lists: a garment in nine sizes has some hundreds."""
_NO_NUMBERS = "No numbers of a pattern were found in this text."
_SECTIONS = ("Finished measurements", "Materials", "Gauge", "Tension", "Abbreviations", "Notes", "Making up", "Care and cautions")


@dataclass(frozen=True, slots=True)
class Proofread:
    """What came of proofreading: every quantity judged, and what the text contradicts itself in."""

    found: tuple[FoundQuantity, ...]
    problems: tuple[TextProblem, ...]

    @property
    def faultless(self) -> bool:
        """Whether nothing differs and nothing is a problem."""
        return not self.problems and all(one.verdict is not Verdict.DIFFERS for one in self.found)


def read_text(path: Path) -> str:
    """The text of a file. Raises RefusedError, in one sentence, if it is none, empty or too long."""
    try:
        if path.is_file() and path.stat().st_size > 4 * LARGEST_TEXT:
            raise RefusedError(f"“{path.name}” is too long to be a pattern: the most is {grouped(LARGEST_TEXT)} characters.")
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
        raise RefusedError(f"{name} is too long to be a pattern: the most is {grouped(LARGEST_TEXT)} characters.")
    return text


class Held(NamedTuple):
    """What a text is held against: the sizes' names, the headings of its sections, and the pattern as the logbook has it."""

    names: tuple[str, ...]
    sections: tuple[str, ...]
    pattern: str


def of_garment(answer: GarmentAnswer) -> Held:
    """A garment as it is worked out now, lengths unrounded."""
    text = plain_text(answer.plan.name, whole_pattern(replace(written(answer, Terms.US), exact=True)))
    return Held(tuple(size.name for size in answer.numbers), _sections(piece.name for piece in answer.plan.pieces), text)


def of_published(before: Published) -> Held:
    """A garment as it was published: no later reading or plan moves it."""
    pieces = dict.fromkeys(name for size in before.sizes.values() for name in size)
    return Held(
        tuple(before.sizes), _sections(pieces), before.texts.get(Terms.US.value, "") or next(iter(before.texts.values()), "")
    )


def of_set_run(run: PublishedRun) -> Held:
    """A size run as it was set."""
    return of_run((str(size["size"]) for size in run.sizes), run.lines)


def of_run(names: Iterable[str], lines: str) -> Held:
    """A size run by the lines that are written for it."""
    return Held(tuple(names), _SECTIONS, lines)


def _sections(pieces: Iterable[str]) -> tuple[str, ...]:
    return (*pieces, *_SECTIONS)


def held_called(book: Logbook, name: str) -> Held:
    """What a text is held against by the name of a garment, else of a set run; what was published where it was.

    Raises RefusedError, in one sentence, if there is neither.
    """
    run = next((piece for piece in planned_pieces(book) if piece.name == name and piece.published is not None), None)
    if run is not None and all(garment.name != name for garment in garments(book)):
        set_run = set_runs.published(run)
        assert set_run is not None
        return of_set_run(set_run)
    garment = garment_called(book, name)
    before = garment_publishing.published(garment)
    return of_garment(work_out(garment.plan, book)) if before is None else of_published(before)


def proofread(text: str, held: Held) -> Proofread:
    """The text held against every number of the pattern, and its rows proven. Raises RefusedError if it has too many numbers."""
    own = quantities(text, len(held.names), held.sections)
    if len(own) > MOST_NUMBERS:
        raise RefusedError(
            f"The text has {grouped(len(own))} numbers, the most is {grouped(MOST_NUMBERS)}: proofread it in several parts."
        )
    known = list(_known(held))
    problems = [*problems_of(text, own, held.names), *rows_problems(text, held.sections)]
    return Proofread(judged(own, known, len(held.names)), tuple(sorted(problems, key=lambda problem: problem.line)))


def _known(held: Held) -> Iterator[Quantity]:
    """The quantities of the pattern, each once."""
    seen: set[tuple[object, ...]] = set()
    for one in quantities(held.pattern, len(held.names), held.sections):
        key = (one.section, one.kind, one.values, one.before, one.after, one.line)
        if key not in seen:
            seen.add(key)
            yield one


def agreement_words(read: Proofread) -> str:
    """``12 of 14 numbers and lists agree.``, or that there are none."""
    agreeing = sum(one.verdict is Verdict.AGREES for one in read.found)
    return f"{agreeing} of {len(read.found)} numbers and lists agree." if read.found else _NO_NUMBERS


def what_words(found: FoundQuantity) -> str:
    """What a quantity was taken for: ``sleeve, stitches``."""
    one = found.known or found.quantity
    return ", ".join(part for part in (one.section, one.kind.value) if part)


def expected_words(found: FoundQuantity) -> str:
    """What the logbook has there: ``62 (68, 80)``; "" where nothing is near."""
    if found.known is None:
        return ""
    shown = [_shown(value, found.quantity) for value in found.known.values]
    behind = f" {found.quantity.unit}" if found.quantity.unit else ""
    return sized(shown) + behind


def _shown(value: float | None, like: Quantity) -> str:
    if value is None:
        return "–"
    if like.kind is QuantityKind.LENGTH:
        value /= {"cm": 10.0, "mm": 1.0}.get(like.unit, 25.4)
    elif like.unit == "yd":
        value /= 0.9144
    return show_number(value, 1 if like.unit == "cm" else 2)
