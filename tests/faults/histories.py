"""What makers do in two logbooks that were one, step by step, and the states that come of it."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from hypothesis import strategies as st

from logbook.book.logbook import Logbook
from logbook.book.tables import RECORDS
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import Yarn
from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.importing import import_into
from logbook.tasks.logging_swatches import delete_swatches, save_swatch
from logbook.tasks.undoing import undo
from tests.support.books import taken
from tests.support.sheets import LEAST, write_sheet

Place = tuple[str, str]
Rows = Mapping[Place, Mapping[str, Any]]
Step = tuple[str, str, str]


def histories(steps: int) -> st.SearchStrategy[list[Step]]:
    """What a maker does, one after the other: what, to which swatch, with which word."""
    what = ("colour", "notes", "hook", "readings", "delete", "add", "import", "undo")
    one = st.tuples(st.sampled_from(what), st.sampled_from(("H1", "H2", "L1", "R1", "N", "M")), st.sampled_from("xyz"))
    return st.lists(one, max_size=steps)


def rows(book: Logbook) -> Rows:
    """Every record of a logbook by its table and uid."""
    with book.reading() as connection:
        return {
            (table, uid): dict(zip(columns, values, strict=True))
            for table, columns in RECORDS.items()
            for uid, *values in connection.execute(f"SELECT uid, {', '.join(columns)} FROM {table}")
        }


@dataclass(slots=True)
class History:
    """A logbook, and all states that its records have been in since ``begin``."""

    book: Logbook
    begin: Rows
    been: dict[Place, list[Mapping[str, Any] | None]] = field(default_factory=lambda: defaultdict(list))

    def act(self, steps: Sequence[Step], who: str) -> None:
        now = self.begin
        for number, step in enumerate(steps):
            act(self.book, step, who, first=not number)
            then = rows(self.book)
            for place in {**now, **then}:
                if now.get(place) != then.get(place):
                    self.been[place].append(then.get(place))
            now = then


def act(book: Logbook, step: Step, who: str, *, first: bool) -> None:
    """Does one step; of a swatch that there is not, ``add`` and ``import`` make one."""
    what, tag, word = step
    with book.reading() as connection:
        found = connection.execute("SELECT uid FROM swatch WHERE tag = ?", (tag,)).fetchone()
    swatch = swatch_in_hand(book, found[0]) if found else None
    if what == "undo":
        if not first:
            undo(book)
    elif what == "import":
        known = {"uid": swatch.uid} if swatch else {}
        sheet = write_sheet(book.path.with_suffix(".csv"), {**LEAST, **known, "tag": tag, "colour": word}, {**LEAST, "tag": ""})
        import_into(book, sheet, good_rows_only=True)
    elif swatch is None:
        if what == "add":
            save_swatch(
                book,
                Swatch(
                    tag=tag, yarn=Yarn(name=f"{tag} yarn"), hook_mm=4.0, notes=f"{who}{word}", readings=taken("20 sts = 10 cm")
                ),
            )
    elif what == "delete":
        delete_swatches(book, [swatch.uid])
    elif what == "hook":
        save_swatch(book, replace(swatch, hook_mm=2.0 + "xyz".index(word)))
    elif what == "readings":
        more = taken(f"{20 + 'xyz'.index(word)} sts = 11 cm")
        save_swatch(book, replace(swatch, readings=(*swatch.readings[:-1], *more) if word == "x" else (*swatch.readings, *more)))
    elif what in ("colour", "notes"):
        save_swatch(book, replace(swatch, **{what: word}))  # type: ignore[arg-type]
    else:
        save_swatch(book, replace(swatch, uid="", tag=f"{tag} {who}{word}{len(rows(book))}"))
