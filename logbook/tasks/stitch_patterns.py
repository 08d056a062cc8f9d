"""Keeping stitch patterns."""

from logbook.book import swatch_lists
from logbook.book import swatches as stored
from logbook.book.logbook import Logbook
from logbook.craft.swatches.readings import Counted
from logbook.craft.swatches.stitch_pattern import StitchPattern


def save_pattern(book: Logbook, pattern: StitchPattern) -> str:
    """Saves a stitch pattern, new (no uid) or known, and returns its uid.

    Raises RefusedError, in one sentence, if it has no name, another has that name, or its chains disagree.
    """
    with book.writing(f"{'change' if pattern.uid else 'add'} stitch pattern {pattern.name}") as writing:
        return stored.put_stitch_pattern(writing, pattern)


def delete_pattern(book: Logbook, pattern: StitchPattern) -> None:
    """Deletes a stitch pattern; undo brings it back. Raises RefusedError while swatches use it."""
    with book.writing(f"delete stitch pattern {pattern.name}") as writing:
        stored.remove_stitch_pattern(writing, pattern.uid)


def tags_read_in(book: Logbook, pattern: StitchPattern, counted: Counted) -> list[str]:
    """The tags of the swatches worked in a stitch pattern with readings in ``counted``.

    The gauge of those in repeats changes with the pattern's multiple, of those in row repeats with its rows in a repeat.
    """
    with book.reading() as connection:
        return swatch_lists.tags_read_in(connection, pattern.uid, counted)
