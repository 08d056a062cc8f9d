"""Two logbooks that went their own ways, brought together record by record.

A kept change has a uid, and the state after it is the same wherever that uid is known. So the latest change that both know is
where the two were last alike; what only one side changed since is taken, what both changed alike is alike, what both changed
otherwise is a conflict, field by field. A merge keeps each change it takes under the uid it has over there (a number behind a
``+`` tells a second taking, after an undo), and what comes of putting both together is a change of its own behind it. What an
undone merge brought is known no more.
"""

import sqlite3
from itertools import count

from logbook.book.changes import Writing
from logbook.book.merge_plan import Conflict, Merging, Place, Prefer, Row, Taken, is_theirs
from logbook.book.merge_sides import BookSide, last_alike
from logbook.book.merge_together import keep_what_is_used, part_names, parts_follow
from logbook.book.tables import RECORDS
from logbook.craft.swatches.picture_names import names_text, picture_names


def plan_merge(ours: sqlite3.Connection, theirs: sqlite3.Connection, prefer: Prefer | None = None) -> Merging:
    """What merging ``theirs`` into ``ours`` comes to; conflicts are decided as ``prefer`` says, and are named all the same."""
    own, other = BookSide(ours), BookSide(theirs)
    plan = Merging()
    for place in dict.fromkeys(other.places()):
        mine, yours = own.now(place), other.now(place)
        if mine == yours:
            plan.alike += mine is not None
        elif place not in other.last or own.last.get(place) != other.last[place]:
            _weigh(plan, own, other, place, mine, yours, prefer)
    parts_follow(plan, own, other, prefer)
    keep_what_is_used(plan, own, other)
    part_names(plan, own, prefer)
    return plan


def carry_out(writing: Writing, plan: Merging) -> None:
    """Writes what was planned, as one action: each record as it is over there, then what comes of both."""
    taken = sorted(plan.taken, key=lambda one: _ORDER[one.table])
    writing.put_together(
        (one.table, one.record, [(one.theirs, _free_uid(writing.connection, one.last)), (one.result, None)]) for one in taken
    )


_ORDER = {table: number for number, table in enumerate(RECORDS)}


def _weigh(
    plan: Merging, own: BookSide, other: BookSide, place: Place, mine: Row | None, yours: Row | None, prefer: Prefer | None
) -> None:
    """Decides one record that the two have otherwise."""
    ours, theirs = own.steps(place), other.steps(place)
    found, base = last_alike(ours, theirs)
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


def _together(
    place: Place, mine: Row | None, yours: Row | None, base: Row | None, prefer: Prefer | None
) -> tuple[Row | None, list[Conflict]]:
    """Both sides' changes of one record, field by field."""
    if mine is None or yours is None:
        conflict = Conflict(*place, "", mine, yours)
        return (yours if is_theirs(prefer, conflict) else mine), [conflict]
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
        if is_theirs(prefer, conflicts[-1]):
            result[column] = theirs
    return result, conflicts


def _free_uid(connection: sqlite3.Connection, uid: str) -> str | None:
    """The uid to keep a change of the other side under; None: it has none."""
    if not uid:
        return None
    for number in count():
        tried = f"{uid}+{number}" if number else uid
        if connection.execute("SELECT 1 FROM change WHERE uid = ?", (tried,)).fetchone() is None:
            return tried
    return None
