"""A garment that is published: its numbers and documents stay as published, whatever is measured or planned later."""

import base64
import io
import zlib
from dataclasses import replace
from datetime import date

from logbook.book import garments as kept
from logbook.book.logbook import Logbook
from logbook.craft.garments.garment_drawing import without_faults
from logbook.craft.garments.plan import Garment
from logbook.craft.garments.published import ChangedNumber, Published, changes, published_of, published_text
from logbook.craft.words.dates import date_words
from logbook.craft.words.lengths import Units
from logbook.craft.words.notation import COMMA, POINT, Notation, written_in
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.tasks.garment_files import garment_svg, garment_workbook, pattern_html, pattern_text
from logbook.tasks.garments import GarmentAnswer
from logbook.tasks.note_words import in_all_sizes


def publish(book: Logbook, garment: Garment, answer: GarmentAnswer, day: str = "") -> Garment:
    """Keeps a saved garment as published today (or on that ISO day); the garment with it is returned."""
    on = date.fromisoformat(day) if day else date.today()
    texts = {terms.value: pattern_text(answer, terms) for terms in Terms}
    text = published_text(on.isoformat(), texts, answer.numbers, _documents(answer, on))
    return _put(book, f"publish {garment.name}", replace(garment, published=text))


def take_back(book: Logbook, garment: Garment) -> Garment:
    """Forgets what was published; undo brings it back."""
    return _put(book, f"take back what was published of {garment.name}", replace(garment, published=None))


def published(garment: Garment) -> Published | None:
    """The garment as it was published; None if it was not. Raises RefusedError if what is kept can't be read."""
    if garment.published is None:
        return None
    try:
        return published_of(garment.published)
    except (ValueError, TypeError, LookupError, AttributeError) as error:
        what = f"What was published of “{garment.name}” can't be read"
        raise RefusedError(f"{what}: restore a backup, or publish it again.") from error


def published_page(before: Published, terms: Terms, units: Units) -> str:
    """The page to print as it was published. Raises RefusedError if none was kept."""
    return _document(before, _page_name(terms, units))


def published_drawing(before: Published, size: str, units: Units) -> str:
    """The drawing of one size as it was published. Raises RefusedError if none was kept."""
    return _document(before, _drawing_name(size, units))


def published_workbook(before: Published, terms: Terms) -> bytes:
    """The workbook as it was published. Raises RefusedError if none was kept."""
    return base64.b85decode(_document(before, _workbook_name(terms)))


def _page_name(terms: Terms, units: Units) -> str:
    return f"page {terms} {units}"


def _drawing_name(size: str, units: Units) -> str:
    return f"drawing {units} {size}"


def _workbook_name(terms: Terms) -> str:
    return f"workbook {terms}"


def _documents(answer: GarmentAnswer, on: date) -> dict[str, str]:
    """Everything that is handed on, by its name."""
    found: dict[str, str] = {}
    for units in Units:
        found |= {_page_name(terms, units): pattern_html(answer, terms, units, on) for terms in Terms}
        found |= {
            _drawing_name(size.name, units): garment_svg(answer, without_faults(size), units, on) for size in answer.numbers
        }
    for terms in Terms:
        stream = io.BytesIO()
        garment_workbook(answer, terms, stream, on.isoformat(), published=True)
        found[_workbook_name(terms)] = base64.b85encode(stream.getvalue()).decode()
    return found


def _document(before: Published, name: str) -> str:
    try:
        kept = before.documents()
    except (ValueError, TypeError, zlib.error) as error:
        raise RefusedError("What was published can't be read: restore a backup, or publish it again.") from error
    if name not in kept:
        what, _, which = name.partition(" ")
        of = f" of size {which.split(' ', 1)[1]}" if what == "drawing" and kept else ""
        published_on = f"this was published on {date_words(before.date)}"
        raise RefusedError(f"No {what}{of} was kept when {published_on}: its text was. Publish it again.")
    return kept[name]


def would_change(before: Published, answer: GarmentAnswer) -> tuple[str, ...]:
    """What would be otherwise now, as sentences, each said once with its sizes."""
    found: dict[str, list[str]] = {size: [] for size in (*before.sizes, *(one.name for one in answer.numbers))}
    for change in changes(before, answer.numbers):
        found[change.size].append(_sentence(change))
    said = tuple(in_all_sizes([(size, tuple(said)) for size, said in found.items()]))
    if said or all(_reads_so(answer, Terms(terms), text) for terms, text in before.texts.items()):
        return said
    return ("Its text would read differently: yarn, gauge, measurements or making up.",)


def _reads_so(answer: GarmentAnswer, terms: Terms, text: str) -> bool:
    """Whether the pattern reads like this text, written with either decimal mark."""
    for mark in (POINT, COMMA):
        with written_in(Notation(mark)):
            if pattern_text(answer, terms) == text:
                return True
    return False


def _sentence(change: ChangedNumber) -> str:
    if change.what in ("size", "piece"):
        what = "this size" if change.what == "size" else f"“{change.piece}”"
        return f"{what[:1].upper()}{what[1:]} is {'new' if change.now else 'not in the plan any more'}."
    if change.what == "levels":
        return f"“{change.piece}” would be shaped in other rows."
    begins = {"chain": "chain", "first": "stitches at the start", "last": "stitches at the end", "rows": "rows"}[change.what]
    now, was = ("none" if number is None else str(number) for number in (change.now, change.was))
    return f"“{change.piece}” would have {_counted(now, begins)} ({was} as published)."


def _counted(number: str, what: str) -> str:
    return f"chain {number}" if what == "chain" else f"{number} {what}"


def _put(book: Logbook, label: str, garment: Garment) -> Garment:
    with book.writing(label) as writing:
        kept.put_garment(writing, garment)
    return garment
