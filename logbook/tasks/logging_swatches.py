"""Logging swatches: save, delete, and what a form needs to offer."""

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from logbook.book import swatch_lists
from logbook.book import swatches as stored
from logbook.book.changes import Writing
from logbook.book.logbook import Logbook
from logbook.book.tags import next_tag
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, require_loggable
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.counting import counted
from logbook.tasks.at_home import name_key


def save_swatch(book: Logbook, swatch: Swatch) -> str:
    """Saves a swatch, new (no uid) or known, and returns its uid.

    Its yarn and stitch pattern go by their names: those the logbook knows take the details given here, others are made new.
    Raises RefusedError, in one sentence, if something compulsory is missing or its tag is taken; then nothing is written.
    """
    require_loggable(swatch)
    with book.writing(f"{'change' if swatch.uid else 'log'} swatch {swatch.tag}") as writing:
        yarn = swatch.yarn and kept_yarn(writing, swatch.yarn)
        pattern = swatch.pattern and kept_pattern(writing, swatch.pattern)
        return stored.put_swatch(writing, replace(swatch, yarn=yarn, pattern=pattern))


def kept_yarn(writing: Writing, yarn: Yarn) -> Yarn:
    """The yarn of that name with these details, written."""
    known = stored.yarn_named(writing.connection, yarn.name)
    uid = stored.put_yarn(writing, replace(yarn, uid=known.uid if known else ""))
    return replace(yarn, uid=uid)


def kept_pattern(writing: Writing, pattern: StitchPattern) -> StitchPattern:
    """The stitch pattern of that name with these details, written; what a swatch does not speak of stays as it is."""
    known = stored.pattern_named(writing.connection, pattern.name)
    if known is not None:
        pattern = replace(pattern, uid=known.uid, half_plus=known.half_plus, rows_text=known.rows_text, notes=known.notes)
    else:
        pattern = replace(pattern, uid="")
    return replace(pattern, uid=stored.put_stitch_pattern(writing, pattern))


def delete_swatches(book: Logbook, uids: Sequence[str]) -> None:
    """Deletes swatches with their readings in one step that undo takes back."""
    with book.reading() as connection:
        found = stored.swatches(connection, uids)
    if found:
        what = f"swatch {found[0].tag}" if len(found) == 1 else counted(len(found), "swatch")
        with book.writing(f"delete {what}") as writing:
            for swatch in found:
                stored.remove_swatch(writing, swatch.uid)


class Known(NamedTuple):
    """The yarns and stitch patterns of a logbook by their names, in the order of the alphabet."""

    yarns: dict[str, Yarn]
    patterns: dict[str, StitchPattern]


def known_in(book: Logbook) -> Known:
    """The yarns and stitch patterns a form may offer."""
    with book.reading() as connection:
        yarns = {yarn.name: yarn for yarn in stored.yarns(connection).values()}
        patterns = {pattern.name: pattern for pattern in stored.stitch_patterns(connection).values()}
    return Known(
        yarns={name: yarns[name] for name in sorted(yarns, key=name_key)},
        patterns={name: patterns[name] for name in sorted(patterns, key=name_key)},
    )


WRITTEN_AGAIN = ("colour", "dye_lot", "hook_note", "worked_by", "way_of_washing")
"""Texts of a swatch that are likely to be written again."""


def written_before(book: Logbook, name: str) -> tuple[str, ...]:
    """What was written before in the text ``name``, one of WRITTEN_AGAIN, in the order of the alphabet."""
    if name not in WRITTEN_AGAIN:
        raise ValueError(name)
    with book.reading() as connection:
        return tuple(sorted(swatch_lists.used(connection, name), key=name_key))


def offered_tag(book: Logbook, like: str = "") -> str:
    """A free tag to offer for a new swatch, following on from ``like``."""
    with book.reading() as connection:
        return next_tag(connection, like)
