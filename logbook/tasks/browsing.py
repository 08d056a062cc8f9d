"""What a page lists: short lines of swatches and stitch patterns, and whole records by uid."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from logbook.book import swatch_lists
from logbook.book import swatches as stored
from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.assumptions import put_assumptions
from logbook.book.logbook import Logbook
from logbook.book.search import Filters as Filters
from logbook.book.search import matching, matching_unordered, ranks
from logbook.book.wanted_words import folded as folded
from logbook.book.wanted_words import has_all, wanted_words
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch


class SwatchLine(NamedTuple):
    """A swatch as a line of a list."""

    uid: str
    tag: str
    date: str
    yarn: str
    stitch: str
    hook_mm: float | None
    colour: str


def swatch_lines(book: Logbook) -> list[SwatchLine]:
    """All swatches, newest first."""
    with book.reading() as connection:
        return [SwatchLine(*row) for row in swatch_lists.lines(connection)]


def swatches_newest_first(book: Logbook) -> list[str]:
    """The uids of all swatches."""
    with book.reading() as connection:
        return swatch_lists.newest_first(connection)


def lines_of(book: Logbook, uids: Sequence[str]) -> list[SwatchLine]:
    """These swatches, in any order; those that are not there any more are left out."""
    with book.reading() as connection:
        return [SwatchLine(*row) for row in swatch_lists.lines_of(connection, uids)]


def first_swatch_lines(book: Logbook, most: int) -> list[SwatchLine]:
    """The newest ``most`` of them."""
    with book.reading() as connection:
        return [SwatchLine(*row) for row in swatch_lists.first_lines(connection, most)]


def owner_of_tag(book: Logbook, tag: str) -> str | None:
    """The uid of the swatch with this tag; None if none has it."""
    with book.reading() as connection:
        return swatch_lists.owner_of_tag(connection, tag)


def tags_of(book: Logbook, uids: Sequence[str]) -> tuple[str, ...]:
    """The tags of these swatches, in the same order."""
    with book.reading() as connection:
        tags = swatch_lists.tags_of(connection, uids)
        return tuple(tags[uid] for uid in uids if uid in tags)


def matching_swatches(book: Logbook, filters: Filters) -> list[str]:
    """The uids of the swatches that match, newest first."""
    with book.reading() as connection:
        return matching(connection, filters)


def matching_in_any_order(book: Logbook, filters: Filters) -> list[str]:
    """The same for a list that has an order of its own."""
    with book.reading() as connection:
        return matching_unordered(connection, filters)


def ranks_of(book: Logbook, uids: Sequence[str], words: str) -> dict[str, int]:
    """Of swatches found by words: 0 where a tag is asked for, 1 where all are whole words, 2 where they are parts of words."""
    with book.reading() as connection:
        return ranks(connection, uids, words)


def swatch_in_hand(book: Logbook, uid: str) -> Swatch | None:
    """One swatch whole; None if it is not there any more."""
    with book.reading() as connection:
        return next(iter(stored.swatches(connection, [uid])), None)


def whole_swatches(book: Logbook, uids: Sequence[str]) -> list[Swatch]:
    """These swatches whole; those that are not there any more are left out."""
    with book.reading() as connection:
        return stored.swatches(connection, uids)


def swatches_of_same_yarn(book: Logbook, swatch: Swatch) -> list[Swatch]:
    """All swatches of its yarn, itself included; none if it has no yarn in the logbook."""
    if swatch.yarn is None or not swatch.yarn.uid:
        return []
    with book.reading() as connection:
        return stored.swatches(connection, swatch_lists.swatches_of_yarn(connection, swatch.yarn.uid))


def assumptions_of(book: Logbook) -> Assumptions:
    """The assumptions in force in the logbook."""
    with book.reading() as connection:
        return kept_assumptions(connection)


def save_assumptions(book: Logbook, wanted: Assumptions) -> None:
    """Keeps the assumptions; undo brings the former ones back."""
    with book.writing("change the assumptions") as writing:
        put_assumptions(writing, wanted)


def pattern_list(book: Logbook) -> list[StitchPattern]:
    """All stitch patterns in the order of their names."""
    with book.reading() as connection:
        return list(stored.stitch_patterns(connection).values())


def swatches_of_pattern(book: Logbook, uid: str) -> list[SwatchLine]:
    """The swatches worked in a stitch pattern."""
    with book.reading() as connection:
        return [SwatchLine(*row) for row in swatch_lists.lines(connection, pattern=uid)]


def pattern_uses(book: Logbook) -> dict[str, int]:
    """How many swatches use each stitch pattern, by its uid; patterns that none uses are not there."""
    with book.reading() as connection:
        return swatch_lists.pattern_uses(connection)


def matching_patterns(patterns: Iterable[StitchPattern], words: str) -> list[str]:
    """The uids of the stitch patterns in whose name, rows or notes every one of the words is found, or a part of a word."""
    wanted = wanted_words(words)
    return [
        pattern.uid for pattern in patterns if has_all(folded(f"{pattern.name}\n{pattern.rows_text}\n{pattern.notes}"), wanted)
    ]
