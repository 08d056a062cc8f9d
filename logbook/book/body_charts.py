"""The body charts a maker keeps, by name."""

import sqlite3

from logbook.book.changes import Writing, new_uid
from logbook.craft.sizes.body_chart import BodyChart, chart_of_text
from logbook.errors import RefusedError


def chart_texts(connection: sqlite3.Connection) -> dict[str, str]:
    """The charts as they were typed, by name, in the order of the alphabet."""
    return dict(connection.execute("SELECT name, sizes FROM body_chart ORDER BY name"))


def put_chart(writing: Writing, name: str, text: str) -> BodyChart:
    """Keeps a chart under its name, in the place of one of that name. Raises RefusedError or UnreadableError if it is none."""
    if not name.strip():
        raise RefusedError("A body chart needs a name: type one and save again.")
    chart = chart_of_text(name, text)
    known = writing.connection.execute("SELECT uid FROM body_chart WHERE name = ?", (name,)).fetchone()
    writing.put("body_chart", known[0] if known else new_uid(), {"name": name, "sizes": text})
    return chart


def remove_chart(writing: Writing, name: str) -> None:
    """Takes a chart out; what is not there is left so."""
    known = writing.connection.execute("SELECT uid FROM body_chart WHERE name = ?", (name,)).fetchone()
    if known:
        writing.remove("body_chart", known[0])
