"""The assumptions kept in the logbook; those never set have the values every logbook starts from."""

import sqlite3
from dataclasses import asdict, fields

from logbook.book.changes import Writing
from logbook.book.trouble import as_damage
from logbook.craft.swatches.assumptions import Assumptions


def assumptions(connection: sqlite3.Connection) -> Assumptions:
    """The assumptions in force."""
    known = {field.name: field.type for field in fields(Assumptions)}
    stored = {name: value for name, value in connection.execute("SELECT uid, value FROM assumption") if name in known}
    with as_damage("An assumption"):
        for name, whole in (("most_edge_stitches", int), ("count_lean", bool)):
            if name in stored:
                stored[name] = whole(stored[name])
    return Assumptions(**stored)


def put_assumptions(writing: Writing, wanted: Assumptions) -> None:
    """Keeps those that differ from the start, and forgets the others."""
    start = asdict(Assumptions())
    for name, value in asdict(wanted).items():
        if value == start[name]:
            writing.remove("assumption", name)
        else:
            writing.put("assumption", name, {"value": float(value)})
