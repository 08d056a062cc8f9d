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
    if "most_edge_stitches" in stored:
        with as_damage("An assumption"):
            stored["most_edge_stitches"] = int(stored["most_edge_stitches"])
    return Assumptions(**stored)


def put_assumptions(writing: Writing, wanted: Assumptions) -> None:
    """Keeps those that differ from the start, and forgets the others."""
    start = asdict(Assumptions())
    for name, value in asdict(wanted).items():
        if value == start[name]:
            writing.remove("assumption", name)
        else:
            writing.put("assumption", name, {"value": float(value)})
