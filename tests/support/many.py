"""Logbooks of any number of swatches: the sample's over and over, each logged by an action of its own."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import count
from pathlib import Path

from logbook import sample
from logbook.book.changes import Writing
from logbook.book.connection import transaction
from logbook.book.derived import refresh_derived
from logbook.book.logbook import Logbook, new_logbook, open_logbook
from logbook.book.swatches import put_stitch_pattern, put_swatch, put_yarn, swatches
from logbook.craft.swatches.swatch import Swatch
from logbook.tasks.importing import import_into_new

ROUNDS_OF_A_YARN = 4
"""So often the sample goes round before its yarns get other names: a yarn has a few dozen swatches, not thousands."""


def sample_swatches(folder: Path) -> list[Swatch]:
    """The sample's swatches with their readings; ``folder`` is for a logbook to read them into."""
    path = folder / "sample.logbook"
    import_into_new(path, sample.folder() / sample.SWATCHES)
    with open_logbook(path) as book, book.reading() as connection:
        found = swatches(connection)
    path.unlink()
    return found


def swatches_again(originals: Sequence[Swatch]) -> Iterator[Swatch]:
    """The same without end, each with a tag and a date of its own, and yarns whose names change now and then."""
    for number in count():
        round_, place = divmod(number, len(originals))
        one = originals[place]
        batch = round_ // ROUNDS_OF_A_YARN
        yarn = one.yarn and replace(one.yarn, uid="", name=f"{one.yarn.name} {batch:04d}" if batch else one.yarn.name)
        pattern = one.pattern and replace(one.pattern, uid="")
        date = f"20{number % 27:02d}-{1 + number // 27 % 12:02d}-{1 + number // 324 % 28:02d}"
        yield replace(one, uid="", tag=f"N-{number + 1:06d}", date=date, yarn=yarn, pattern=pattern)


def built(path: Path, many: int, originals: Sequence[Swatch]) -> Logbook:
    """A new logbook of so many; open. The actions are those of logging each, but share transactions, which is what takes long."""
    book = new_logbook(path)
    coming = swatches_again(originals)
    yarns: dict[str, str] = {}
    patterns: dict[str, str] = {}
    for start in range(0, many, 1000):
        with transaction(book.connection):
            for _ in range(min(1000, many - start)):
                one = next(coming)
                writing = Writing(book.connection, f"log {one.tag}", now=book.now)
                _put(writing, one, yarns, patterns)
                refresh_derived(book.connection, writing.touched)
                writing.seal()
    return book


def _put(writing: Writing, one: Swatch, yarns: dict[str, str], patterns: dict[str, str]) -> None:
    """The swatch, and its yarn and pattern where they are new."""
    yarn, pattern = one.yarn, one.pattern
    if yarn and yarn.name not in yarns:
        yarns[yarn.name] = put_yarn(writing, yarn)
    if pattern and pattern.name not in patterns:
        patterns[pattern.name] = put_stitch_pattern(writing, pattern)
    yarn = yarn and replace(yarn, uid=yarns[yarn.name])
    pattern = pattern and replace(pattern, uid=patterns[pattern.name])
    put_swatch(writing, replace(one, yarn=yarn, pattern=pattern))
