"""Logbooks for tests: a few swatches, or many, and all that one holds as a plain value to compare."""

import sqlite3
from dataclasses import replace
from pathlib import Path
from typing import Any

from logbook.book.changes import Writing
from logbook.book.logbook import Logbook, new_logbook
from logbook.book.pieces import put_made_piece, put_piece
from logbook.book.swatches import put_stitch_pattern, put_swatch, put_yarn, swatches
from logbook.book.tables import RECORDS
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import PlannedPiece, SizePlan
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.lengths import Ease

COTTON = Yarn(name="Étang cotton", fibre="cotton", yarn_class=3, ball_grams=50.0, ball_metres=125.5)
SHELLS = StitchPattern(name="Shells 100 %", multiple=6, plus=1, extra_chains=1, rows_text="Row 1: sc in 2nd ch")


def taken(text: str, condition: Condition = Condition.WASHED) -> tuple[TakenReading, ...]:
    """Typed readings, taken in one condition."""
    return tuple(TakenReading(condition, reading) for reading in read_readings(text))


def swatch(number: int = 1, **values: Any) -> Swatch:
    """A swatch told from others by its number, without yarn and pattern."""
    usual = {
        "tag": f"S-{number:02d}",
        "date": f"2026-05-{number % 28 + 1:02d}",
        "colour": "moss",
        "hook_mm": 4.0 + number % 5 / 2,
        "readings": taken(f"{number % 7 + 2} repeats = {15.1 + number % 10 / 10:.1f} cm; 22 rows = 15 cm"),
    }
    return Swatch(**(usual | values))


def put_worked(writing: Writing, number: int, **values: Any) -> str:
    """Puts a swatch of COTTON in SHELLS, which are put too if they are not there; returns its uid."""
    yarns = writing.connection.execute("SELECT uid FROM yarn WHERE name = ?", (COTTON.name,)).fetchone()
    patterns = writing.connection.execute("SELECT uid FROM stitch_pattern WHERE name = ?", (SHELLS.name,)).fetchone()
    yarn = replace(COTTON, uid=yarns[0] if yarns else put_yarn(writing, COTTON))
    pattern = replace(SHELLS, uid=patterns[0] if patterns else put_stitch_pattern(writing, SHELLS))
    return put_swatch(writing, swatch(number, yarn=yarn, pattern=pattern, **values))


def put_planned_and_made(writing: Writing, swatch_uid: str, number: int, notes: str = "") -> tuple[str, str]:
    """Puts a planned piece in two sizes and one made from it; returns their uids."""
    plan = PiecePlan(name=f"vest {number}", body_mm=920.5, length_mm=560.0 + number, row_shares=(1.0, 1.5))
    sizes = (SizePlan(name="S"), SizePlan(name="M", body_mm=980.0, ease=Ease(-50.0, 0.0)))
    piece = put_piece(writing, PlannedPiece(plan=plan, swatch=swatch_uid, notes=notes, sizes=sizes))
    made = MadePiece(name=f"mine {number}", piece=piece, swatch=swatch_uid, size="M", chain=74, washed_width_mm=465.25)
    return piece, put_made_piece(writing, made)


def small_book(path: Path, count: int = 3, backup_folder: Path | None = None) -> Logbook:
    """A new logbook with ``count`` swatches, each logged by an action of its own."""
    book = new_logbook(path, backup_folder)
    for number in range(1, count + 1):
        with book.writing(f"log S-{number:02d}") as writing:
            put_worked(writing, number)
    return book


def edit(book: Logbook, tag: str, /, **values: Any) -> None:
    """Changes some values of the swatch with that tag."""
    with book.writing(f"edit {tag}") as writing:
        (found,) = (one for one in swatches(writing.connection) if one.tag == tag)
        put_swatch(writing, replace(found, **values))


def records(connection: sqlite3.Connection) -> dict[str, list[tuple[Any, ...]]]:
    """Every row of every record table, and the search text."""
    tables = {table: ", ".join(("uid", *columns)) for table, columns in RECORDS.items()} | {"swatch_words": "swatch, folded"}
    return {name: connection.execute(f"SELECT {columns} FROM {name} ORDER BY 1").fetchall() for name, columns in tables.items()}


def held(book: Logbook) -> dict[str, list[tuple[Any, ...]]]:
    """``records`` of an open logbook."""
    with book.reading() as connection:
        return records(connection)
