"""Finding swatches: words in one folded text per swatch (lower case, accents off), and filters."""

import re
import sqlite3
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from logbook.book.rows import rows_of
from logbook.book.swatch_lists import NEWEST_FIRST, WORKED_OF
from logbook.book.trouble import DamagedError
from logbook.book.wanted_words import Wanted, folded, wanted_words
from logbook.craft.swatches.conditions import Condition
from logbook.errors import RefusedError

_MOST_WORDS = 100  # SQLite joins a thousand conditions at most
_MOST_RANKED = 1000
_AT_A_TIME = 1000


def joined(parts: Sequence[str | float | None]) -> str:
    """What of a record is searched in, one below the other; numbers are in mm. Raises DamagedError if one is neither."""
    for part in parts:
        if part is not None and not isinstance(part, str | float):
            raise DamagedError(f"a text in it is {part!r}")
    return "\n".join(f"{part:g} mm" if isinstance(part, float) else part for part in parts if part)


@dataclass(frozen=True, slots=True, kw_only=True)
class Filters:
    """What a look-up asks for; the parts are joined by "and", empty ones ask nothing.

    ``words``: parts of words anywhere in the swatch. ``yarn`` and ``stitch``: parts of their names.
    """

    words: str = ""
    yarn: str = ""
    stitch: str = ""
    hook_mm: float | None = None
    yarn_class: int | None = None
    condition: Condition | None = None


_SEARCHED = (
    "swatch.uid", "swatch.tag", "swatch.date", "swatch.colour", "swatch.dye_lot", "swatch.hook_mm", "swatch.hook_note",
    "swatch.worked", "swatch.worked_by", "swatch.way_of_washing", "swatch.notes", "yarn.name", "yarn.fibre",
    "stitch_pattern.name",
)  # fmt: skip
_WORDS = f"SELECT {', '.join(_SEARCHED)} FROM {WORKED_OF}"


def refresh_words(connection: sqlite3.Connection, touched: Iterable[tuple[str, str]]) -> None:
    """Brings the folded text up to date after the records ``touched`` (table, uid) were written."""
    stale: dict[str, None] = {}
    for table, uid in touched:
        if table == "swatch":
            connection.execute("DELETE FROM swatch_words WHERE swatch = ?", (uid,))
            stale[uid] = None
        elif table in ("yarn", "stitch_pattern"):
            stale.update((swatch, None) for (swatch,) in connection.execute(f"SELECT uid FROM swatch WHERE {table} = ?", (uid,)))
    uids = list(stale)
    for start in range(0, len(uids), _AT_A_TIME):
        some = uids[start : start + _AT_A_TIME]
        connection.executemany(
            """INSERT INTO swatch_words (swatch, folded) VALUES (?, ?)
            ON CONFLICT (swatch) DO UPDATE SET folded = excluded.folded""",
            _folded_of(rows_of(connection, WORKED_OF, "swatch.uid", _SEARCHED, some, "swatch.rowid")),
        )


def words_agree(connection: sqlite3.Connection) -> bool:
    """Whether every swatch, and nothing else, has the folded text it should have."""
    kept = dict(connection.execute("SELECT swatch, folded FROM swatch_words"))
    return all(kept.pop(uid, None) == text for uid, text in _folded_of(connection.execute(_WORDS))) and not kept


def _folded_of(rows: Iterable[tuple[Any, ...]]) -> Iterator[tuple[str, str]]:
    for swatch, *parts in rows:
        yield swatch, folded(joined(parts))


def matching(connection: sqlite3.Connection, filters: Filters) -> list[str]:
    """The uids of the swatches that match, newest first, those without a date last; where words are asked, those whose tag or
    whole words they are before those where they are parts of words.
    """
    found = _matching(connection, filters, NEWEST_FIRST)
    wanted = wanted_words(filters.words)
    if not wanted or len(found) < 2:
        return found
    texts = dict(connection.execute("SELECT swatch, folded FROM swatch_words"))
    return sorted(found, key=lambda uid: _rank(texts[uid], wanted))


def folded_words(connection: sqlite3.Connection, uids: Sequence[str]) -> list[str]:
    """The folded text of each of these swatches, in their order; "" where there is none."""
    texts = dict(rows_of(connection, "swatch_words", "swatch", ("swatch", "folded"), uids))
    return [texts.get(uid, "") for uid in uids]


def ranks(connection: sqlite3.Connection, uids: Sequence[str], words: str) -> dict[str, int]:
    """How near swatches that were found by ``words`` come, as ``matching`` puts them in order; nothing where more than
    _MOST_RANKED were found, among which nobody looks for one yet.
    """
    wanted = wanted_words(words)
    if not wanted or not 2 <= len(uids) <= _MOST_RANKED:
        return {}
    return {uid: _rank(text, wanted) for uid, text in zip(uids, folded_words(connection, uids), strict=True)}


def _rank(text: str, wanted: Sequence[Wanted]) -> int:
    """0: a tag is asked for, 1: all are whole words, 2: parts of words. The tag is the first line of the folded text."""
    tag = (text.split("\n", 1)[0],)
    if any(tag in ways for ways in wanted):
        return 0
    whole = set(re.split(r"[^\w.-]+", text))
    return 1 if all(any(whole.issuperset(way) for way in ways) for ways in wanted) else 2


def matching_unordered(connection: sqlite3.Connection, filters: Filters) -> list[str]:
    """The same in any order, and of many swatches several times as quick: for a list that has an order of its own."""
    return _matching(connection, filters, "")


def _matching(connection: sqlite3.Connection, filters: Filters, order: str) -> list[str]:
    conditions, values = _conditions(filters)
    where = f"WHERE {' AND '.join(conditions)}" if conditions else ""
    tables = "swatch_words"
    if any(table in where + order for table in ("swatch.", "yarn.")):
        tables += " JOIN swatch ON swatch.uid = swatch_words.swatch LEFT JOIN yarn ON yarn.uid = swatch.yarn"
    rows = connection.execute(f"SELECT swatch_words.swatch FROM {tables} {where} {order}", values)
    names = _named(connection, filters)
    return [uid for (uid,) in rows if uid in names] if names is not None else [uid for (uid,) in rows]


def _conditions(filters: Filters) -> tuple[list[str], list[object]]:
    conditions: list[str] = []
    values: list[object] = []
    words = wanted_words(filters.words)
    if len(words) > _MOST_WORDS:
        raise RefusedError(f"That is {len(words)} words: look for {_MOST_WORDS} at most.")
    for word in words:
        ways = (" AND ".join("instr(swatch_words.folded, ?) > 0" for _ in way) for way in word)
        conditions.append(f"({' OR '.join(f'({way})' for way in ways)})")
        values += [part for way in word for part in way]
    if filters.hook_mm is not None:
        conditions.append("abs(swatch.hook_mm - ?) < 0.001")
        values.append(filters.hook_mm)
    if filters.yarn_class is not None:
        conditions.append("yarn.yarn_class = ?")
        values.append(filters.yarn_class)
    if filters.condition is not None:
        conditions.append("EXISTS (SELECT 1 FROM reading WHERE reading.swatch = swatch.uid AND reading.condition = ?)")
        values.append(filters.condition.value)
    return conditions, values


def _named(connection: sqlite3.Connection, filters: Filters) -> set[str] | None:
    """The swatches whose yarn and stitch names hold the wanted parts; None if no part is wanted. There are few names, so
    they are folded here and not kept folded."""
    found: set[str] | None = None
    for table, part in (("yarn", filters.yarn), ("stitch_pattern", filters.stitch)):
        if part.strip():
            wanted = folded(part.strip())
            uids = [uid for uid, name in connection.execute(f"SELECT uid, name FROM {table}") if wanted in folded(name)]
            marks = ", ".join("?" * len(uids))
            swatches = {s for (s,) in connection.execute(f"SELECT uid FROM swatch WHERE {table} IN ({marks})", uids)}
            found = swatches if found is None else found & swatches
    return found
