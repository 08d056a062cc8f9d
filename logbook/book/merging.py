"""Two logbooks that went their own ways, brought together record by record.

A kept change has a uid, and the state after it is the same wherever that uid is known. So the latest change that both know is
where the two were last alike; what only one side changed since is taken, what both changed alike is alike, what both changed
otherwise is a conflict, field by field. A merge keeps each change it takes under the uid it has over there (a number behind a
``+`` tells a second taking, after an undo), and what comes of putting both together is a change of its own behind it. What an
undone merge brought is known no more.
"""

import sqlite3
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import count
from typing import Any, Literal

from logbook.book.changes import Writing, row_of
from logbook.book.schema import NAMES, RECORDS
from logbook.craft.swatches.picture_names import names_text, picture_names

MERGE = "merge"
"""What the ``of`` of a merge's action says."""
Row = Mapping[str, Any]
Side = Literal["ours", "theirs"]
Point = tuple[str, str, str]
"""What a conflict is over: a table, a record's uid in it, and a field ("": the record itself; a name "twice": which keeps it)."""
Prefer = Side | Mapping[Point, Side]
"""Whose word goes: one side's throughout, or of each point."""
Place = tuple[str, str]
"""A table and a record's uid in it."""

_USES = {
    "swatch": (("yarn", "yarn"), ("stitch_pattern", "stitch_pattern")),
    "reading": (("swatch", "swatch"),),
    "piece": (("swatch", "swatch"), ("edge_swatch", "swatch")),
    "size": (("piece", "piece"),),
    "made_piece": (("piece", "piece"), ("swatch", "swatch")),
    "tester": (("piece", "piece"), ("garment", "garment")),
}
"""Which columns speak of which tables."""
PARTS = {"reading": "swatch", "size": "piece"}
"""Records that are part of another, named in that column."""


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two sides that say otherwise: of which record, in which field ("": the record itself, deleted on one side).

    ``twice``: it is a name that would stand twice, and ``ours`` and ``theirs`` are two records.
    """

    table: str
    record: str
    field: str
    ours: Any
    theirs: Any
    twice: bool = False

    @property
    def point(self) -> Point:
        """What it is over."""
        return self.table, self.record, f"{self.field} twice" if self.twice else self.field


@dataclass(frozen=True, slots=True)
class Taken:
    """One record of the other side: its state there, the uid of its last change, and what comes of both (None: not there)."""

    table: str
    record: str
    ours: Row | None
    theirs: Row | None
    last: str
    result: Row | None


@dataclass(slots=True)
class Merging:
    """What a merge would do: what is taken, and what must be asked."""

    taken: list[Taken] = field(default_factory=list)
    conflicts: list[Conflict] = field(default_factory=list)
    alike: int = 0


@dataclass(frozen=True, slots=True)
class _Step:
    """A change a side knows: the uid it has everywhere, and the state after it."""

    uid: str
    after: Row | None


class _Side:
    """One logbook: what it knows of every record, and what is there now."""

    def __init__(self, connection: sqlite3.Connection) -> None:
        self._connection = connection
        gone = _undone_merges(connection)
        self.last: dict[Place, str] = {}
        for table, record, uid, action in connection.execute(
            "SELECT record_table, record, uid, action FROM change ORDER BY position"
        ):
            if action not in gone:
                self.last[table, record] = _plain(uid)
        self._gone = gone

    def steps(self, place: Place) -> list[_Step]:
        """The changes of a record, in order, without those of undone merges."""
        rows = self._connection.execute(
            """SELECT change.uid, change.after, change.action, action.schema FROM change JOIN action ON action.uid = change.action
            WHERE change.record = ? AND change.record_table = ? ORDER BY change.position""",
            (place[1], place[0]),
        )
        return [
            _Step(_plain(uid), row_of(place[0], after, schema)) for uid, after, action, schema in rows if action not in self._gone
        ]

    def now(self, place: Place) -> Row | None:
        """The record as it is."""
        columns = RECORDS[place[0]]
        row = self._connection.execute(f"SELECT {', '.join(columns)} FROM {place[0]} WHERE uid = ?", (place[1],)).fetchone()
        return None if row is None else dict(zip(columns, row, strict=True))

    def places(self) -> Iterator[Place]:
        """Every record there is or ever was."""
        for table in RECORDS:
            yield from ((table, uid) for (uid,) in self._connection.execute(f"SELECT uid FROM {table}"))
        yield from self.last

    def parts(self, part: str, whole: str) -> list[str]:
        """The uids of the readings of a swatch, or the sizes of a piece."""
        return [uid for (uid,) in self._connection.execute(f"SELECT uid FROM {part} WHERE {PARTS[part]} = ?", (whole,))]

    def names(self, table: str) -> dict[str, str]:
        """The uid of every name in a table."""
        return dict(self._connection.execute(f"SELECT {NAMES[table]}, uid FROM {table}"))

    def users(self, table: str, uid: str) -> Iterator[Place]:
        """The records that speak of one."""
        for user, uses in _USES.items():
            for column, used in uses:
                if used == table:
                    rows = self._connection.execute(f"SELECT uid FROM {user} WHERE {column} = ?", (uid,))
                    yield from ((user, found) for (found,) in rows)


def plan_merge(ours: sqlite3.Connection, theirs: sqlite3.Connection, prefer: Prefer | None = None) -> Merging:
    """What merging ``theirs`` into ``ours`` comes to; conflicts are decided as ``prefer`` says, and are named all the same."""
    own, other = _Side(ours), _Side(theirs)
    plan = Merging()
    for place in dict.fromkeys(other.places()):
        mine, yours = own.now(place), other.now(place)
        if mine == yours:
            plan.alike += mine is not None
        elif place not in other.last or own.last.get(place) != other.last[place]:
            _weigh(plan, own, other, place, mine, yours, prefer)
    _parts_follow(plan, own, other, prefer)
    _keep_what_is_used(plan, own, other)
    _part_names(plan, own, prefer)
    return plan


def carry_out(writing: Writing, plan: Merging) -> None:
    """Writes what was planned, as one action: each record as it is over there, then what comes of both."""
    taken = sorted(plan.taken, key=lambda one: _ORDER[one.table])
    writing.put_together(
        (one.table, one.record, [(one.theirs, _free_uid(writing.connection, one.last)), (one.result, None)]) for one in taken
    )


_ORDER = {table: number for number, table in enumerate(RECORDS)}


def _weigh(
    plan: Merging, own: _Side, other: _Side, place: Place, mine: Row | None, yours: Row | None, prefer: Prefer | None
) -> None:
    """Decides one record that the two have otherwise."""
    ours, theirs = own.steps(place), other.steps(place)
    found, base = _last_alike(ours, theirs)
    if found and yours == base:
        plan.alike += 1  # only ours changed
        return
    last = theirs[-1].uid if theirs else ""
    if (found and mine == base) or (not found and mine is None and not ours):
        plan.taken.append(Taken(*place, mine, yours, last, yours))
        return
    result, conflicts = _together(place, mine, yours, base if found else None, prefer)
    plan.conflicts += conflicts
    plan.taken.append(Taken(*place, mine, yours, last, result))


def undecided(plan: Merging, prefer: Prefer | None) -> list[Conflict]:
    """The conflicts of a plan over which nothing has been said."""
    return [one for one in plan.conflicts if prefer is None or (isinstance(prefer, Mapping) and one.point not in prefer)]


def _is_theirs(prefer: Prefer | None, conflict: Conflict) -> bool:
    return (prefer.get(conflict.point) if isinstance(prefer, Mapping) else prefer) == "theirs"


def _last_alike(ours: Sequence[_Step], theirs: Sequence[_Step]) -> tuple[bool, Row | None]:
    """The latest state that both know: that of the latest change both have, or an equal one that both came to after all those."""
    there = {step.uid: number for number, step in enumerate(theirs)}
    here = {step.uid: number for number, step in enumerate(ours)}
    shared = [uid for uid in here if uid in there]
    if not shared:
        return False, None
    mine, yours = max(here[uid] for uid in shared), max(there[uid] for uid in shared)
    pairs = [
        (min(i, j), i + j, str(a.after), a.after)
        for i, a in enumerate(ours[mine + 1 :])
        for j, b in enumerate(theirs[yours + 1 :])
        if a.after == b.after
    ]
    if pairs:  # both sides find the same one, whichever of them merges
        return True, max(pairs, key=lambda pair: pair[:3])[3]
    best = max(shared, key=lambda uid: (here[uid] + there[uid], uid))
    return True, ours[here[best]].after


def _together(
    place: Place, mine: Row | None, yours: Row | None, base: Row | None, prefer: Prefer | None
) -> tuple[Row | None, list[Conflict]]:
    """Both sides' changes of one record, field by field."""
    if mine is None or yours is None:
        conflict = Conflict(*place, "", mine, yours)
        return (yours if _is_theirs(prefer, conflict) else mine), [conflict]
    result, conflicts = dict(mine), []
    for column in RECORDS[place[0]]:
        was, ours, theirs = (base or {}).get(column), mine[column], yours[column]
        if ours == theirs or (base is not None and theirs == was):
            continue
        if base is not None and ours == was:
            result[column] = theirs
            continue
        if column == "pictures":  # a name is one picture for ever, so both sides' are kept
            result[column] = names_text((*picture_names(ours), *picture_names(theirs)))
            continue
        conflicts.append(Conflict(*place, column, ours, theirs))
        if _is_theirs(prefer, conflicts[-1]):
            result[column] = theirs
    return result, conflicts


def _parts_follow(plan: Merging, own: _Side, other: _Side, prefer: Prefer | None) -> None:
    """A reading goes where its swatch goes, a size where its piece goes: where one side deleted the whole, its parts are not
    weighed by themselves. That the other side changed a part alone is a change of the whole, so it is asked.
    """
    results = {(one.table, one.record): one for one in plan.taken}
    for part, whole in PARTS.items():
        wholes = [place for place in {**own.last, **other.last} if place[0] == whole]
        for place in wholes:
            mine, yours = own.now(place), other.now(place)
            if (mine is None) == (yours is None):
                continue
            there, gone = (own, other) if yours is None else (other, own)
            if place not in gone.last or gone.last[place] in {step.uid for step in there.steps(place)}:
                continue  # it was never there, or that it was deleted has been weighed before
            parts = [(part, uid) for uid in there.parts(part, place[1])]
            asked = any((c.table, c.record, c.field) == (*place, "") for c in plan.conflicts)
            if not asked and any(_changed(there, gone, one) for one in parts):
                plan.conflicts.append(Conflict(*place, "", mine, yours))
                kept = yours if _is_theirs(prefer, plan.conflicts[-1]) else mine
                results[place] = Taken(*place, mine, yours, other.last.get(place, ""), kept)
            stays = (results[place].result if place in results else mine) is not None
            for one in parts:
                ours, theirs = own.now(one), other.now(one)
                result = (ours or theirs) if stays else None
                results[one] = Taken(*one, ours, theirs, other.last.get(one, ""), result)
    plan.taken = list(results.values())


def _changed(there: _Side, gone: _Side, place: Place) -> bool:
    """Whether a part that is there is not as the side that deleted it knew it last."""
    known = [step.after for step in gone.steps(place) if step.after is not None]
    return not known or there.now(place) != known[-1]


def _keep_what_is_used(plan: Merging, own: _Side, other: _Side) -> None:
    """What one side deleted and the other still speaks of stays: its deletion is not taken, or it comes back."""
    results = {(one.table, one.record): one for one in plan.taken}
    changed = True
    while changed:
        changed = False
        for place in list(_all_after(own, results)):
            row = results[place].result if place in results else own.now(place)
            for column, table in _USES.get(place[0], ()):
                used = (table, str(row[column])) if row and row[column] else None
                if used is None or _there(own, results, used):
                    continue
                back = own.now(used) or other.now(used) or _last_known(own, other, used)
                known = results.get(used)
                mine, theirs, last = (known.ours, known.theirs, known.last) if known else (own.now(used), other.now(used), "")
                results[used] = Taken(*used, mine, theirs, last or other.last.get(used, ""), back)
                changed = True
    plan.taken = list(results.values())


def _all_after(own: _Side, results: Mapping[Place, Taken]) -> Iterable[Place]:
    """The records that may speak of something that is not there: those taken, and those that speak of what is deleted."""
    for place, one in results.items():
        if one.result is not None:
            yield place
        else:
            yield from own.users(*place)


def _there(own: _Side, results: Mapping[Place, Taken], place: Place) -> bool:
    return (results[place].result if place in results else own.now(place)) is not None


def _last_known(own: _Side, other: _Side, place: Place) -> Row | None:
    """The record as it was before it was deleted."""
    for side in (own, other):
        for step in reversed(side.steps(place)):
            if step.after is not None:
                return step.after
    return None


def _part_names(plan: Merging, own: _Side, prefer: Prefer | None) -> None:
    """Names that would stand twice: asked, and by ``prefer`` the other side's, or ours, gets a number behind it."""
    for table, column in NAMES.items():
        names = own.names(table)
        coming = {one.record: one for one in plan.taken if one.table == table}
        for one in coming.values():
            if one.ours is not None and (one.result is None or one.result[column] != one.ours[column]):
                names.pop(one.ours[column], None)
        for uid, one in coming.items():
            if one.result is None:
                continue
            name = one.result[column]
            owner = names.get(name)
            if owner not in (None, uid):
                conflict = Conflict(table, uid, column, own.now((table, str(owner))), one.result, twice=True)
                plan.conflicts.append(conflict)
                _rename(plan, own, table, column, str(owner) if _is_theirs(prefer, conflict) else uid, names)
            names.setdefault(name, uid)


def _rename(plan: Merging, own: _Side, table: str, column: str, uid: str, names: dict[str, str]) -> None:
    for place, one in enumerate(plan.taken):
        if (one.table, one.record) == (table, uid) and one.result is not None:
            new = _free_name(one.result[column], names)
            plan.taken[place] = Taken(table, uid, one.ours, one.theirs, one.last, {**one.result, column: new})
            names[new] = uid
            return
    row = own.now((table, uid)) or {}
    new = _free_name(row[column], names)
    plan.taken.append(Taken(table, uid, row, row, "", {**row, column: new}))
    names[new] = uid


def _free_name(name: str, names: Mapping[str, str]) -> str:
    return next(new for number in count(2) if (new := f"{name} ({number})") not in names)


def _undone_merges(connection: sqlite3.Connection) -> frozenset[str]:
    """The merges that were undone and not done again, and every undoing and doing again of a merge."""
    merges = {uid for (uid,) in connection.execute("SELECT uid FROM action WHERE kind = 'do' AND of = ?", (MERGE,))}
    if not merges:
        return frozenset()
    last: dict[str, str] = {}
    turned = set()
    for uid, of, kind in connection.execute("SELECT uid, of, kind FROM action WHERE kind != 'do' ORDER BY position"):
        if of in merges:
            turned.add(uid)
            last[of] = kind
    return frozenset(turned | {uid for uid, kind in last.items() if kind == "undo"})


def _plain(uid: str) -> str:
    """The uid a change has everywhere."""
    return uid.partition("+")[0]


def _free_uid(connection: sqlite3.Connection, uid: str) -> str | None:
    """The uid to keep a change of the other side under; None: it has none."""
    if not uid:
        return None
    for number in count():
        tried = f"{uid}+{number}" if number else uid
        if connection.execute("SELECT 1 FROM change WHERE uid = ?", (tried,)).fetchone() is None:
            return tried
    return None
