"""Garments: from the file's rows to the records of the craft and back.

A plan speaks of swatches by their tags, as its file does. Kept, it speaks of them by their uids, so that a new tag changes
nothing.
"""

import json
import sqlite3
from collections.abc import Callable, Mapping
from dataclasses import replace

from logbook.book.changes import Writing, new_uid
from logbook.book.testers import remove_testers
from logbook.book.trouble import as_damage
from logbook.book.wanted_words import folded, has_all, wanted_words
from logbook.craft.garments.plan import Garment, GarmentPlan
from logbook.craft.garments.plan_file import plan_of, plan_value
from logbook.errors import RefusedError


def garments(connection: sqlite3.Connection) -> dict[str, Garment]:
    """All garments by uid, in the order of their names. Raises DamagedError if one can't be read."""
    rows = connection.execute("SELECT uid, name, plan, published, notes FROM garment ORDER BY name").fetchall()
    tags = _tags(connection) if rows else {}
    return {uid: _garment(tags, uid, name, plan, published, notes) for uid, name, plan, published, notes in rows}


def garment_called(connection: sqlite3.Connection, name: str) -> Garment:
    """The garment of that name. Raises RefusedError, naming some there are, if there is none."""
    known = {garment.name: garment for garment in garments(connection).values()}
    if name not in known:
        there = f"the garments are {', '.join(list(known)[:8])}" if known else "there is none yet"
        raise RefusedError(f"There is no garment “{name}”: {there}.")
    return known[name]


def put_garment(writing: Writing, garment: Garment) -> str:
    """Writes a garment, new (no uid) or known, and returns its uid.

    Raises RefusedError if it has no name, another has that name, or a swatch is not in the logbook.
    """
    uid = garment.uid or new_uid()
    _require_name(writing.connection, garment.name, uid)
    uids = {tag: swatch for swatch, tag in _tags(writing.connection).items()}
    kept = plan_value(_with_swatches(garment.plan, lambda tag, where: _uid_of(uids, tag, where)))
    del kept["name"]
    text = json.dumps(kept, ensure_ascii=False, separators=(",", ":"))
    row = writing.connection.execute("SELECT position FROM garment WHERE uid = ?", (uid,)).fetchone()
    next_one = writing.connection.execute("SELECT coalesce(max(position), 0) + 1 FROM garment")
    position = row[0] if row else next_one.fetchone()[0]
    values = {"plan": text, "published": garment.published, "notes": garment.notes, "position": position}
    writing.put("garment", uid, {"name": garment.name, **values})
    return uid


def remove_garment(writing: Writing, uid: str) -> None:
    """Takes a garment out, and those who try it."""
    remove_testers(writing, uid)
    writing.remove("garment", uid)


def matching_garments(connection: sqlite3.Connection, words: str) -> list[str]:
    """The uids of the garments, by name, in whose words every one of ``words`` is found, or a part of a word."""
    wanted = wanted_words(words)
    return [uid for uid, garment in garments(connection).items() if has_all(folded(_words(garment)), wanted)]


def _words(garment: Garment) -> str:
    pieces = [text for piece in garment.plan.pieces for text in (piece.name, piece.shape, str(piece.swatch))]
    return "\n".join((garment.name, garment.plan.says, garment.notes, *pieces))


def _garment(tags: Mapping[str, str], uid: str, name: str, text: str, published: str | None, notes: str) -> Garment:
    with as_damage(f"The plan of “{name}”"):
        value = json.loads(text)
        if not isinstance(value, dict):
            raise ValueError("it is no plan")
    plan = plan_of({**value, "name": name}, whole=False)
    shown = _with_swatches(plan, lambda swatch, _: tags.get(swatch, ""))
    return Garment(uid=uid, plan=shown, published=published, notes=notes)


def _with_swatches(plan: GarmentPlan, named: Callable[[str, str], str]) -> GarmentPlan:
    """The plan with each swatch that it names called as ``named`` (swatch, piece) says."""
    pieces = []
    for piece in plan.pieces:
        swatch = piece.swatch
        if isinstance(swatch, str) and swatch:
            swatch = named(swatch, piece.name)
        edge = named(piece.edge_swatch, piece.name) if piece.edge_swatch else ""
        pieces.append(replace(piece, swatch=swatch, edge_swatch=edge))
    return replace(plan, pieces=tuple(pieces))


def _uid_of(uids: Mapping[str, str], tag: str, where: str) -> str:
    if tag not in uids:
        raise RefusedError(f"“{where}” names the swatch {tag}, which is not in the logbook: choose another.")
    return uids[tag]


def _tags(connection: sqlite3.Connection) -> dict[str, str]:
    return dict(connection.execute("SELECT uid, tag FROM swatch"))


def _require_name(connection: sqlite3.Connection, name: str, uid: str) -> None:
    if not name.strip():
        raise RefusedError("A garment needs a name: type one and save again.")
    row = connection.execute("SELECT uid FROM garment WHERE name = ?", (name,)).fetchone()
    if row is not None and row[0] != uid:
        raise RefusedError(f"There is another garment called “{name}”: choose another name.")
