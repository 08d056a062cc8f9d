"""What must hold of all records of a merge: parts go with their whole, what is used is there, no name stands twice."""

from collections.abc import Iterable, Mapping
from itertools import count

from logbook.book.merge_plan import Conflict, Merging, Place, Prefer, Row, Taken, is_theirs
from logbook.book.merge_sides import BookSide, last_alike
from logbook.book.tables import NAMES, PARTS, USES


def parts_follow(plan: Merging, own: BookSide, other: BookSide, prefer: Prefer | None) -> None:
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
            if place not in gone.last or last_alike(own.steps(place), other.steps(place)) == (True, None):
                continue  # it was never there, or both had it deleted before
            parts = [(part, uid) for uid in there.parts(part, place[1])]
            asked = any((c.table, c.record, c.field) == (*place, "") for c in plan.conflicts)
            if not asked and any(_changed(there, gone, one) for one in parts):
                plan.conflicts.append(Conflict(*place, "", mine, yours))
                kept = yours if is_theirs(prefer, plan.conflicts[-1]) else mine
                results[place] = Taken(*place, mine, yours, other.last.get(place, ""), kept)
            plan.conflicts = [one for one in plan.conflicts if (one.table, one.record) not in parts]
            stays = (results[place].result if place in results else mine) is not None
            for one in parts:
                ours, theirs = own.now(one), other.now(one)
                result, last = (ours or theirs) if stays else None, other.last.get(one, "")
                if result != ours or last not in {"", *(step.uid for step in own.steps(one))}:
                    results[one] = Taken(*one, ours, theirs, last, result)
    plan.taken = list(results.values())


def _changed(there: BookSide, gone: BookSide, place: Place) -> bool:
    """Whether a part that is there is not as it was when the side that deleted it was last alike."""
    known = {step.uid for step in gone.steps(place)}
    alike = [step.after for step in there.steps(place) if step.uid in known]
    return not alike or there.now(place) != alike[-1]


def keep_what_is_used(plan: Merging, own: BookSide, other: BookSide) -> None:
    """What one side deleted and the other still speaks of stays: its deletion is not taken, or it comes back."""
    results = {(one.table, one.record): one for one in plan.taken}
    changed = True
    while changed:
        changed = False
        for place in list(_all_after(own, results)):
            row = results[place].result if place in results else own.now(place)
            for column, table in USES.get(place[0], ()):
                used = (table, str(row[column])) if row and row[column] else None
                if used is None or _there(own, results, used):
                    continue
                back = own.now(used) or other.now(used) or _last_known(own, other, used)
                known = results.get(used)
                mine, theirs, last = (known.ours, known.theirs, known.last) if known else (own.now(used), other.now(used), "")
                results[used] = Taken(*used, mine, theirs, last or other.last.get(used, ""), back)
                changed = True
    plan.taken = list(results.values())


def _all_after(own: BookSide, results: Mapping[Place, Taken]) -> Iterable[Place]:
    """The records that may speak of something that is not there: those taken, and those that speak of what is deleted."""
    for place, one in results.items():
        if one.result is not None:
            yield place
        else:
            yield from own.users(*place)


def _there(own: BookSide, results: Mapping[Place, Taken], place: Place) -> bool:
    return (results[place].result if place in results else own.now(place)) is not None


def _last_known(own: BookSide, other: BookSide, place: Place) -> Row | None:
    """The record as it was before it was deleted."""
    for side in (own, other):
        for step in reversed(side.steps(place)):
            if step.after is not None:
                return step.after
    return None


def part_names(plan: Merging, own: BookSide, prefer: Prefer | None) -> None:
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
                _rename(plan, own, table, column, str(owner) if is_theirs(prefer, conflict) else uid, names)
            names.setdefault(name, uid)


def _rename(plan: Merging, own: BookSide, table: str, column: str, uid: str, names: dict[str, str]) -> None:
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
