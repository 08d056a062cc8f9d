"""The yarns and stitch patterns of a logbook by name: renamed, merged into one another, deleted where no swatch uses them."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from enum import Enum
from typing import Any, NamedTuple

from logbook.book import swatch_lists
from logbook.book import swatches as stored
from logbook.book.changes import Writing
from logbook.book.logbook import Logbook
from logbook.craft.swatches.as_one import as_one, lost, why_not_one
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.counting import counted, listed
from logbook.errors import RefusedError
from logbook.tasks.at_home import name_key


class NameOf(Enum):
    """What is known by name; the value is the word for one."""

    YARN = "yarn"
    PATTERN = "stitch pattern"


class Named(NamedTuple):
    """One of them, and how many swatches use it."""

    record: Yarn | StitchPattern
    swatches: int


class _Way(NamedTuple):
    """How a kind is read and written; ``of_swatch`` is what a swatch calls it."""

    all: Callable[[Any], Mapping[str, Any]]
    uses: Callable[[Any], Mapping[str, int]]
    put: Callable[[Writing, Any], str]
    remove: Callable[[Writing, str], None]
    users: Callable[[Any, str], list[str]]
    of_swatch: str


_WAYS = {
    NameOf.YARN: _Way(
        stored.yarns,
        swatch_lists.yarn_uses,
        stored.put_yarn,
        stored.remove_yarn,
        swatch_lists.swatches_of_yarn,
        "yarn",
    ),
    NameOf.PATTERN: _Way(
        stored.stitch_patterns,
        swatch_lists.pattern_uses,
        stored.put_stitch_pattern,
        stored.remove_stitch_pattern,
        swatch_lists.swatches_of_pattern,
        "pattern",
    ),
}
_WORDS = {"yarn_class": "class", "ball_grams": "weight of a ball", "ball_metres": "length of a ball",
    "ball_price": "price of a ball", "first_stitch": "first stitch", "skip_cover": "what skipped chains count as",
    "half_plus": "plus for half a repeat", "rows_text": "written rows"}  # fmt: skip


def known_by_name(book: Logbook, kind: NameOf) -> dict[str, Named]:
    """All of a kind by uid, in the order of the alphabet, great and small letters alike."""
    way = _WAYS[kind]
    with book.reading() as connection:
        records, uses = way.all(connection), way.uses(connection)
    in_order = sorted(records.items(), key=lambda item: name_key(item[1].name))
    return {uid: Named(record, uses.get(uid, 0)) for uid, record in in_order}


def rename(book: Logbook, kind: NameOf, uid: str, name: str) -> None:
    """Gives it another name, for all its swatches. Raises RefusedError if another has that name, or it is not there any more."""
    way = _WAYS[kind]
    with book.writing(f"rename {kind.value} to {name}") as writing:
        way.put(writing, replace(_there(writing, kind, uid), name=name))


def what_merging_does(book: Logbook, kind: NameOf, uid: str, into: str) -> str:
    """What ``merge`` would do, in a sentence or two. Raises RefusedError if it would be refused."""
    known = known_by_name(book, kind)
    if uid not in known or into not in known:
        raise _gone(kind)
    (other, swatches), (kept, _) = known[uid], known[into]
    _require_alike(kept, other)
    named = counted(swatches, "swatch") if swatches else "No swatch"
    goes = f"{named} of “{other.name}” will belong to “{kept.name}”" if swatches else f"No swatch uses “{other.name}”"
    keeps = lost(kept, other)
    words = listed([_WORDS.get(name, name.replace("_", " ")) for name in keeps]) if keeps else ""
    return f"{goes}, and “{other.name}” is taken off the list." + (f" “{kept.name}” keeps its own {words}." if words else "")


def merge(book: Logbook, kind: NameOf, uid: str, into: str) -> int:
    """All swatches of ``uid`` are of ``into`` from now on, ``uid`` goes; one step of undo. Returns how many swatches that are.

    ``into`` takes what it does not say itself. Raises RefusedError if they are one, if one is not there any more, or if readings
    in repeats would come to mean something else.
    """
    way = _WAYS[kind]
    known = known_by_name(book, kind)
    if uid not in known or into not in known:
        raise _gone(kind)
    if uid == into:
        raise RefusedError(f"That is the same {kind.value}: choose another to merge it into.")
    label = f"merge {kind.value} {known[uid].record.name} into {known[into].record.name}"
    with book.writing(label) as writing:
        other, kept = _there(writing, kind, uid), _there(writing, kind, into)
        _require_alike(kept, other)
        one = as_one(kept, other)
        way.put(writing, one)
        users = stored.swatches(writing.connection, way.users(writing.connection, uid))
        for swatch in users:
            stored.put_swatch(writing, replace(swatch, **{way.of_swatch: one}))
        way.remove(writing, uid)
    return len(users)


def delete_unused(book: Logbook, kind: NameOf, uid: str) -> None:
    """Takes it out; undo brings it back. Raises RefusedError while swatches use it."""
    way = _WAYS[kind]
    known = known_by_name(book, kind)
    if uid not in known:
        raise _gone(kind)
    with book.writing(f"delete {kind.value} {known[uid].record.name}") as writing:
        way.remove(writing, uid)


def _there(writing: Writing, kind: NameOf, uid: str) -> Any:
    record = _WAYS[kind].all(writing.connection).get(uid)
    if record is None:
        raise _gone(kind)
    return record


def _gone(kind: NameOf) -> RefusedError:
    return RefusedError(f"That {kind.value} is not in the logbook any more: choose again.")


def _require_alike(kept: Any, other: Any) -> None:
    differs = why_not_one(kept, other)
    if differs is not None:
        name, read_in, mine, theirs = differs
        raise RefusedError(
            f"“{kept.name}” has {name.replace('_', ' ')} {mine}, “{other.name}” {theirs}: what was measured in {read_in} would "
            "come to another gauge. Make the two agree first, or keep both."
        )
