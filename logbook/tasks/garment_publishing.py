"""A garment that is published: its numbers stay as published, whatever is measured later."""

from dataclasses import replace
from datetime import date

from logbook.book import garments as kept
from logbook.book.logbook import Logbook
from logbook.craft.garments.plan import Garment
from logbook.craft.garments.published import Change, Published, changes, published_of, published_text
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.tasks.garment_files import pattern_text
from logbook.tasks.garments import GarmentAnswer
from logbook.tasks.note_words import in_all_sizes


def publish(book: Logbook, garment: Garment, answer: GarmentAnswer, day: str = "") -> Garment:
    """Keeps a saved garment as published today (or on that ISO day); the garment with it is returned."""
    texts = {terms.value: pattern_text(answer, terms) for terms in Terms}
    text = published_text(day or date.today().isoformat(), texts, answer.numbers)
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
        raise RefusedError(f"{what}: take a backup back, or publish it anew.") from error


def would_change(before: Published, answer: GarmentAnswer) -> tuple[str, ...]:
    """What would be otherwise now, as sentences, each said once with its sizes."""
    found: dict[str, list[str]] = {size: [] for size in (*before.sizes, *(one.name for one in answer.numbers))}
    for change in changes(before, answer.numbers):
        found[change.size].append(_sentence(change))
    return tuple(in_all_sizes([(size, tuple(said)) for size, said in found.items()]))


def _sentence(change: Change) -> str:
    if change.what in ("size", "piece"):
        what = "this size" if change.what == "size" else f"“{change.piece}”"
        return f"{what[:1].upper()}{what[1:]} is {'new' if change.now else 'not in the plan any more'}."
    begins = {"chain": "chain", "first": "stitches at the start", "last": "stitches at the end", "rows": "rows"}[change.what]
    now, was = ("none" if number is None else str(number) for number in (change.now, change.was))
    return f"“{change.piece}” would have {_counted(now, begins)} ({was} as published)."


def _counted(number: str, what: str) -> str:
    return f"chain {number}" if what == "chain" else f"{number} {what}"


def _put(book: Logbook, label: str, garment: Garment) -> Garment:
    with book.writing(label) as writing:
        kept.put_garment(writing, garment)
    return garment
