"""Planned and made pieces: from the file's rows to the records of the craft and back."""

import sqlite3
from collections import defaultdict
from collections.abc import Iterable
from typing import Any

from logbook.book.changes import Writing, new_uid
from logbook.book.plan_text import plan_of, plan_text
from logbook.book.search import joined
from logbook.book.tables import RECORDS
from logbook.book.testers import remove_testers
from logbook.book.trouble import as_damage
from logbook.book.wanted_words import folded, has_all, wanted_words
from logbook.craft.gauges.drift import Taught
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.planned_piece import PlannedPiece, SizePlan
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Ease
from logbook.errors import RefusedError

_SIZE_COLUMNS = tuple(column for column in RECORDS["size"] if column not in ("piece", "place", "ease_mm", "ease_share"))
_MADE_COLUMNS = tuple(column for column in RECORDS["made_piece"] if column not in ("piece", "swatch"))


def planned_pieces(connection: sqlite3.Connection) -> dict[str, PlannedPiece]:
    """All planned pieces by uid, in the order of their names. Raises DamagedError if one can't be read."""
    sizes = _sizes(connection)
    rows = connection.execute("SELECT uid, name, swatch, edge_swatch, condition, plan, notes, published FROM piece ORDER BY name")
    found = {}
    for uid, name, swatch, edge, condition, plan, notes, published in rows:
        with as_damage(f"The piece “{name}”"):
            state = Condition(condition)
        found[uid] = PlannedPiece(
            uid=uid,
            plan=plan_of(name, plan),
            swatch=swatch,
            edge_swatch=edge or "",
            condition=state,
            notes=notes,
            published=published,
            sizes=tuple(sizes[uid]),
        )
    return found


def put_piece(writing: Writing, piece: PlannedPiece) -> str:
    """Writes a planned piece with its sizes and returns its uid.

    Raises RefusedError if it has no name, another has that name, or its swatch is not in the logbook (any more).
    """
    uid = piece.uid or new_uid()
    _require_name(writing.connection, piece.name, uid)
    _require_there(writing.connection, "swatch", piece.swatch)
    if piece.edge_swatch:
        _require_there(writing.connection, "swatch", piece.edge_swatch)
    values = {
        "name": piece.name,
        "swatch": piece.swatch,
        "edge_swatch": piece.edge_swatch or None,
        "condition": piece.condition.value,
        "plan": plan_text(piece.plan),
        "notes": piece.notes,
        "published": piece.published,
    }
    writing.put("piece", uid, values)
    _put_sizes(writing, uid, piece.sizes)
    return uid


def remove_piece(writing: Writing, uid: str) -> None:
    """Takes a planned piece, its sizes and those who try it out. Raises RefusedError while a made piece comes from it."""
    rows = writing.connection.execute("SELECT name FROM made_piece WHERE piece = ? ORDER BY name LIMIT 3", (uid,))
    if made := [name for (name,) in rows]:
        raise RefusedError(f"It has been made ({', '.join(made)}): delete that made piece first, or keep the plan.")
    _put_sizes(writing, uid, ())
    remove_testers(writing, uid)
    writing.remove("piece", uid)


def made_pieces(connection: sqlite3.Connection) -> dict[str, MadePiece]:
    """All made pieces by uid, the newest first."""
    rows = connection.execute(f"SELECT uid, piece, swatch, {', '.join(_MADE_COLUMNS)} FROM made_piece ORDER BY date DESC, name")
    return {
        uid: MadePiece(uid=uid, piece=piece or "", swatch=swatch or "", **dict(zip(_MADE_COLUMNS, rest, strict=True)))
        for uid, piece, swatch, *rest in rows
    }


def put_made_piece(writing: Writing, made: MadePiece) -> str:
    """Writes a made piece and returns its uid. Raises RefusedError if it has no name, or its plan or swatch is gone."""
    uid = made.uid or new_uid()
    if not made.name.strip():
        raise RefusedError("A made piece needs a name: type one and save again.")
    if any((amount := getattr(made, name)) is not None and amount <= 0 for name in _ABOVE_NOUGHT):
        raise RefusedError(f"Widths, lengths, grams and hours of “{made.name}” must be more than 0.")
    for table, record in (("piece", made.piece), ("swatch", made.swatch)):
        if record:
            _require_there(writing.connection, table, record)
    values = {column: getattr(made, column) for column in _MADE_COLUMNS}
    writing.put("made_piece", uid, values | {"piece": made.piece or None, "swatch": made.swatch or None})
    return uid


def remove_made_piece(writing: Writing, uid: str) -> None:
    """Takes a made piece out."""
    writing.remove("made_piece", uid)


def predicted_and_measured(connection: sqlite3.Connection) -> list[Taught]:
    """What every made piece that was measured teaches of the hand that made it: its own maker's, else that of its swatch.

    Of a piece worked sideways the stitches run up its length. What it used tells of the swatch's yarn and stitch, unless another
    yarn was really used. Raises DamagedError if its plan can't be read.
    """
    found = []
    for hand, name, plan, yarn, stitch, planned_of, used, *amounts in connection.execute(_MADE_SIZES):
        pairs = zip(amounts[::2], amounts[1::2], strict=True)
        across, up, grams, minutes = ((before, after) if before and after else None for before, after in pairs)
        if plan is not None and plan_of(name, plan).sideways:
            across, up = up, across
        if used and folded(used) != folded(planned_of or ""):
            yarn = stitch = ""
        if across or up or grams or minutes:
            found.append(Taught(hand, across, up, yarn or "", stitch or "", grams, minutes))
    return found


_MADE_SIZES = """SELECT coalesce(nullif(trim(made_piece.worked_by), ''), swatch.worked_by, ''), piece.name, piece.plan,
    swatch.yarn, swatch.stitch_pattern, yarn.name, trim(made_piece.yarn_used),
    predicted_width_mm, washed_width_mm, predicted_length_mm, washed_length_mm,
    predicted_grams, grams_used, predicted_minutes, made_piece.minutes
    FROM made_piece LEFT JOIN swatch ON swatch.uid = made_piece.swatch LEFT JOIN piece ON piece.uid = made_piece.piece
    LEFT JOIN yarn ON yarn.uid = swatch.yarn ORDER BY made_piece.rowid"""
_ABOVE_NOUGHT = (
    "predicted_width_mm", "washed_width_mm", "predicted_length_mm", "washed_length_mm", "predicted_grams", "grams_used",
    "predicted_minutes", "minutes",
)  # fmt: skip


_PLANNED_WORDS = """SELECT piece.uid, piece.name, piece.notes,
    (SELECT group_concat(size.name, ' ') FROM size WHERE size.piece = piece.uid), swatch_words.folded
    FROM piece LEFT JOIN swatch_words ON swatch_words.swatch = piece.swatch ORDER BY piece.name"""
_MADE_WORDS = """SELECT made_piece.uid, made_piece.name, made_piece.size, made_piece.date, made_piece.fits, made_piece.notes,
    made_piece.worked_by, made_piece.yarn_used, made_piece.lot_used, made_piece.changed, made_piece.wear, piece.name,
    swatch_words.folded FROM made_piece LEFT JOIN piece ON piece.uid = made_piece.piece
    LEFT JOIN swatch_words ON swatch_words.swatch = made_piece.swatch ORDER BY made_piece.date DESC, made_piece.name"""


def matching_pieces(connection: sqlite3.Connection, words: str) -> list[str]:
    """The uids of the planned pieces (by name), then of the made ones (newest first), in whose words every one of ``words`` is
    found, or a part of a word: name, sizes, notes, how it fits, and all that its swatch is found by.

    There are few of them, so they are folded here and not kept folded.
    """
    wanted = wanted_words(words)
    rows = [*connection.execute(_PLANNED_WORDS), *connection.execute(_MADE_WORDS)]
    return [uid for uid, *parts in rows if has_all(folded(joined(parts)), wanted)]


def _sizes(connection: sqlite3.Connection) -> dict[str, list[SizePlan]]:
    found: dict[str, list[SizePlan]] = defaultdict(list)
    columns = ", ".join(_SIZE_COLUMNS)
    rows = connection.execute(f"SELECT piece, uid, ease_mm, ease_share, {columns} FROM size ORDER BY piece, place")
    for piece, uid, ease_mm, ease_share, *rest in rows:
        ease = None if ease_mm is None else Ease(ease_mm, ease_share or 0.0)
        found[piece].append(SizePlan(uid=uid, ease=ease, **dict(zip(_SIZE_COLUMNS, rest, strict=True))))
    return found


def _put_sizes(writing: Writing, piece: str, sizes: Iterable[SizePlan]) -> None:
    """Sizes keep their uid by their place in the run, so that history can tell an edit from a new one."""
    rows = writing.connection.execute("SELECT uid FROM size WHERE piece = ? ORDER BY place", (piece,)).fetchall()
    known = [uid for (uid,) in rows]
    wanted = list(sizes)
    for place, size in enumerate(wanted):
        values: dict[str, Any] = {column: getattr(size, column) for column in _SIZE_COLUMNS}
        ease = {"ease_mm": size.ease and size.ease.mm, "ease_share": size.ease and size.ease.share}
        uid = known[place] if place < len(known) else new_uid()
        writing.put("size", uid, {"piece": piece, "place": place, **values, **ease})
    for uid in known[len(wanted) :]:
        writing.remove("size", uid)


def _require_name(connection: sqlite3.Connection, name: str, uid: str) -> None:
    if not name.strip():
        raise RefusedError("A piece needs a name: type one and save again.")
    row = connection.execute("SELECT uid FROM piece WHERE name = ?", (name,)).fetchone()
    if row is not None and row[0] != uid:
        raise RefusedError(f"There is another piece called “{name}”: choose another name.")


def _require_there(connection: sqlite3.Connection, table: str, uid: str) -> None:
    if not uid:
        raise RefusedError("A piece needs a swatch: choose one and save again.")
    if not connection.execute(f"SELECT 1 FROM {table} WHERE uid = ?", (uid,)).fetchone():
        raise RefusedError(f"The {table} it comes from is not in the logbook any more: choose another and save again.")
