"""The tables of the logbook file, as steps. A step never changes once it is released: what comes later is a new step.

Every record carries a uid. ``action`` is one thing the user did, ``change`` what it did to one record: the whole record before
and after, as JSON (NULL: it was not there). That serves undo, history and a later merge of two logbooks. ``swatch_words`` is
derived: the folded text that search looks in.

A piece's ``plan`` is one JSON text of all that is wanted. It is only ever read whole, never looked for; and what a later
version of the arithmetic knows besides then changes neither this table nor the kept changes of it. What a size says otherwise
are columns, since a run is a table of them. ``published`` is the run as it was set, as JSON text. A body chart's ``sizes`` are
its table as typed, a size a line and its cells parted by ``;``, the heading first. A garment's ``plan`` is
one JSON text too. The readings of a made piece and of a tester are text as a cell of the log has it, ``wear`` a line for each
day it was measured. ``pictures`` names files beside the logbook by what they hold (``pictures.py``).

``counter`` of the logbook is raised by every writing transaction, so that two states of one logbook can be told and put in order
whatever any clock says. Every change has a digest of itself and of all before it, and the logbook that of the last
(``running_digest.py``). An action carries the schema it was written under: its changes are lifted when they are read.
"""

import sqlite3
from collections.abc import Callable, Mapping, Sequence

from logbook.book.gauges import put_gauges
from logbook.book.running_digest import reckon_anew
from logbook.book.tables import SWATCH_OF_TAKEN

APPLICATION_ID = 0x53574742  # "SWGB"

_STEP_1 = (
    "CREATE TABLE logbook (uid TEXT PRIMARY KEY) STRICT",
    """CREATE TABLE yarn (
        uid TEXT PRIMARY KEY, name TEXT NOT NULL UNIQUE, fibre TEXT NOT NULL, yarn_class INTEGER,
        ball_grams REAL, ball_metres REAL
    ) STRICT""",
    """CREATE TABLE stitch_pattern (
        uid TEXT PRIMARY KEY, name TEXT NOT NULL UNIQUE, multiple INTEGER, plus INTEGER, extra_chains INTEGER,
        first_stitch INTEGER, skip_cover INTEGER, half_plus INTEGER, set_up_rows INTEGER, rows_in_repeat INTEGER,
        closing_rows INTEGER, terms TEXT NOT NULL, rows_text TEXT NOT NULL, notes TEXT NOT NULL
    ) STRICT""",
    """CREATE TABLE swatch (
        uid TEXT PRIMARY KEY, tag TEXT NOT NULL UNIQUE, date TEXT NOT NULL,
        yarn TEXT REFERENCES yarn (uid) DEFERRABLE INITIALLY DEFERRED,
        stitch_pattern TEXT REFERENCES stitch_pattern (uid) DEFERRABLE INITIALLY DEFERRED,
        colour TEXT NOT NULL, dye_lot TEXT NOT NULL, strands INTEGER, hook_mm REAL, hook_note TEXT NOT NULL,
        foundation_hook_mm REAL, worked TEXT NOT NULL, worked_by TEXT NOT NULL, way_of_washing TEXT NOT NULL,
        swatch_grams REAL, swatch_stitches REAL, swatch_rows REAL, notes TEXT NOT NULL, hung_grams REAL, hung_clip_mm REAL
    ) STRICT""",
    "CREATE INDEX swatch_of_yarn ON swatch (yarn)",
    "CREATE INDEX swatch_of_stitch_pattern ON swatch (stitch_pattern)",
    """CREATE TABLE reading (
        uid TEXT PRIMARY KEY, swatch TEXT NOT NULL REFERENCES swatch (uid) DEFERRABLE INITIALLY DEFERRED,
        place INTEGER NOT NULL, condition TEXT NOT NULL, number REAL NOT NULL, counted TEXT NOT NULL, length_mm REAL NOT NULL,
        is_count INTEGER NOT NULL, inches INTEGER NOT NULL, finest REAL, text TEXT NOT NULL
    ) STRICT""",
    "CREATE INDEX reading_of_swatch ON reading (swatch, place)",
    """CREATE TABLE piece (
        uid TEXT PRIMARY KEY, name TEXT NOT NULL UNIQUE,
        swatch TEXT NOT NULL REFERENCES swatch (uid) DEFERRABLE INITIALLY DEFERRED,
        edge_swatch TEXT REFERENCES swatch (uid) DEFERRABLE INITIALLY DEFERRED,
        condition TEXT NOT NULL, plan TEXT NOT NULL, notes TEXT NOT NULL, published TEXT
    ) STRICT""",
    "CREATE INDEX piece_of_swatch ON piece (swatch)",
    "CREATE INDEX piece_of_edge_swatch ON piece (edge_swatch)",
    """CREATE TABLE size (
        uid TEXT PRIMARY KEY, piece TEXT NOT NULL REFERENCES piece (uid) DEFERRABLE INITIALLY DEFERRED,
        place INTEGER NOT NULL, name TEXT NOT NULL, body_mm REAL, ease_mm REAL, ease_share REAL, length_mm REAL,
        armhole_mm REAL, neck_mm REAL, slit_mm REAL, upper_arm_mm REAL, hip_mm REAL, head_mm REAL
    ) STRICT""",
    "CREATE INDEX size_of_piece ON size (piece, place)",
    """CREATE TABLE made_piece (
        uid TEXT PRIMARY KEY, name TEXT NOT NULL,
        piece TEXT REFERENCES piece (uid) DEFERRABLE INITIALLY DEFERRED,
        swatch TEXT REFERENCES swatch (uid) DEFERRABLE INITIALLY DEFERRED,
        size TEXT NOT NULL, date TEXT NOT NULL, chain INTEGER, rows INTEGER, hook_mm REAL,
        predicted_width_mm REAL, predicted_length_mm REAL, worked_width_mm REAL, worked_length_mm REAL,
        washed_width_mm REAL, washed_length_mm REAL, fits TEXT NOT NULL, notes TEXT NOT NULL
    ) STRICT""",
    "CREATE INDEX made_piece_of_piece ON made_piece (piece)",
    "CREATE INDEX made_piece_of_swatch ON made_piece (swatch)",
    "CREATE TABLE body_chart (uid TEXT PRIMARY KEY, name TEXT NOT NULL UNIQUE, sizes TEXT NOT NULL) STRICT",
    "CREATE TABLE assumption (uid TEXT PRIMARY KEY, value REAL NOT NULL) STRICT",
    """CREATE TABLE action (
        position INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE, at TEXT NOT NULL, label TEXT NOT NULL,
        kind TEXT NOT NULL CHECK (kind IN ('do', 'undo', 'redo')), of TEXT
    ) STRICT""",
    """CREATE TABLE change (
        position INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
        action TEXT NOT NULL REFERENCES action (uid) DEFERRABLE INITIALLY DEFERRED,
        record_table TEXT NOT NULL, record TEXT NOT NULL, before TEXT, after TEXT
    ) STRICT""",
    "CREATE INDEX change_of_action ON change (action)",
    "CREATE INDEX change_of_record ON change (record)",
    "CREATE TABLE swatch_words (swatch TEXT PRIMARY KEY, folded TEXT NOT NULL) STRICT",
)

_STEP_2 = (
    "ALTER TABLE logbook ADD COLUMN counter INTEGER NOT NULL DEFAULT 0",
    "ALTER TABLE logbook ADD COLUMN digest BLOB NOT NULL DEFAULT x''",
    "ALTER TABLE action ADD COLUMN schema INTEGER NOT NULL DEFAULT 1",
    "ALTER TABLE change ADD COLUMN digest BLOB NOT NULL DEFAULT x''",
    "UPDATE logbook SET counter = (SELECT coalesce(max(position), 0) FROM action)",
    "ALTER TABLE yarn ADD COLUMN ball_price REAL",
    "ALTER TABLE yarn ADD COLUMN currency TEXT NOT NULL DEFAULT ''",
    "ALTER TABLE swatch ADD COLUMN minutes REAL",
    "ALTER TABLE made_piece ADD COLUMN worked_by TEXT NOT NULL DEFAULT ''",
    "ALTER TABLE made_piece ADD COLUMN yarn_used TEXT NOT NULL DEFAULT ''",
    "ALTER TABLE made_piece ADD COLUMN lot_used TEXT NOT NULL DEFAULT ''",
    "ALTER TABLE made_piece ADD COLUMN grams_used REAL",
    "ALTER TABLE made_piece ADD COLUMN minutes REAL",
    "ALTER TABLE made_piece ADD COLUMN changed TEXT NOT NULL DEFAULT ''",
    """CREATE TABLE garment (
        uid TEXT PRIMARY KEY, name TEXT NOT NULL UNIQUE, plan TEXT NOT NULL, published TEXT, notes TEXT NOT NULL,
        position INTEGER NOT NULL
    ) STRICT""",
)

_STEP_3 = (
    """CREATE TABLE swatch_gauges (
        swatch TEXT PRIMARY KEY, arithmetic INTEGER NOT NULL, multiple INTEGER, rows_in_repeat INTEGER, sums TEXT NOT NULL
    ) STRICT""",
    f"CREATE INDEX change_took_reading ON change ({SWATCH_OF_TAKEN}) WHERE record_table = 'reading' AND after IS NULL",
)

_STEP_4 = (
    "ALTER TABLE swatch ADD COLUMN pictures TEXT NOT NULL DEFAULT ''",
    "ALTER TABLE made_piece ADD COLUMN predicted_grams REAL",
    "ALTER TABLE made_piece ADD COLUMN predicted_minutes REAL",
    "ALTER TABLE made_piece ADD COLUMN predicted_growth_mm REAL",
    "ALTER TABLE made_piece ADD COLUMN worked_readings TEXT NOT NULL DEFAULT ''",
    "ALTER TABLE made_piece ADD COLUMN washed_readings TEXT NOT NULL DEFAULT ''",
    "ALTER TABLE made_piece ADD COLUMN wear TEXT NOT NULL DEFAULT ''",
    "ALTER TABLE made_piece ADD COLUMN pictures TEXT NOT NULL DEFAULT ''",
    """CREATE TABLE tester (
        uid TEXT PRIMARY KEY, name TEXT NOT NULL,
        piece TEXT REFERENCES piece (uid) DEFERRABLE INITIALLY DEFERRED,
        garment TEXT REFERENCES garment (uid) DEFERRABLE INITIALLY DEFERRED,
        size TEXT NOT NULL, state TEXT NOT NULL, readings TEXT NOT NULL, part TEXT NOT NULL, width_mm REAL, length_mm REAL,
        said TEXT NOT NULL
    ) STRICT""",
    "CREATE INDEX tester_of_piece ON tester (piece)",
    "CREATE INDEX tester_of_garment ON tester (garment)",
)

STEPS = (_STEP_1, _STEP_2, _STEP_3, _STEP_4)
"""Each step's statements, first to last; the schema's number is how many have been taken."""

_AFTER: Mapping[int, Callable[[sqlite3.Connection], None]] = {2: reckon_anew}
"""What a step does besides, that no statement can."""


def _keep_gauges(connection: sqlite3.Connection) -> None:
    if connection.execute("SELECT 1 FROM swatch LIMIT 1").fetchone():
        put_gauges(connection)


_AT_LAST: Mapping[int, Callable[[sqlite3.Connection], None]] = {3: _keep_gauges}
"""What is to be done when every step was taken: it reads records by the columns they have today."""


def take_steps(connection: sqlite3.Connection, steps: Sequence[Sequence[str]], taken: int = 0) -> None:
    """Takes those of ``steps`` after the first ``taken``, in the caller's transaction."""
    for number, step in enumerate(steps[taken:], start=taken + 1):
        for statement in step:
            connection.execute(statement)
        if number in _AFTER:
            _AFTER[number](connection)
    for number, work in _AT_LAST.items():
        if taken < number <= len(steps):
            work(connection)
    connection.execute(f"PRAGMA user_version = {len(steps)}")
