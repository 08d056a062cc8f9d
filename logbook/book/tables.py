"""The records of the logbook as the steps of the schema leave them: their tables, columns, names, and what speaks of what."""

from collections.abc import Mapping
from typing import Any

RECORDS: dict[str, tuple[str, ...]] = {
    "yarn": ("name", "fibre", "yarn_class", "ball_grams", "ball_metres", "ball_price", "currency"),
    "stitch_pattern": (
        "name", "multiple", "plus", "extra_chains", "first_stitch", "skip_cover", "half_plus", "set_up_rows",
        "rows_in_repeat", "closing_rows", "terms", "rows_text", "notes",
    ),
    "swatch": (
        "tag", "date", "yarn", "stitch_pattern", "colour", "dye_lot", "strands", "hook_mm", "hook_note",
        "foundation_hook_mm", "worked", "worked_by", "way_of_washing", "swatch_grams", "swatch_stitches", "swatch_rows",
        "notes", "hung_grams", "hung_clip_mm", "minutes", "pictures",
    ),
    "reading": (
        "swatch", "place", "condition", "number", "counted", "length_mm", "is_count", "inches", "finest", "text",
    ),
    "piece": ("name", "swatch", "edge_swatch", "condition", "plan", "notes", "published"),
    "size": (
        "piece", "place", "name", "body_mm", "ease_mm", "ease_share", "length_mm", "armhole_mm", "neck_mm", "slit_mm",
        "upper_arm_mm", "hip_mm", "head_mm",
    ),
    "made_piece": (
        "name", "piece", "swatch", "size", "date", "chain", "rows", "hook_mm", "predicted_width_mm", "predicted_length_mm",
        "worked_width_mm", "worked_length_mm", "washed_width_mm", "washed_length_mm", "fits", "notes", "worked_by", "yarn_used",
        "lot_used", "grams_used", "minutes", "changed", "predicted_grams", "predicted_minutes", "predicted_growth_mm",
        "worked_readings", "washed_readings", "wear", "pictures",
    ),
    "body_chart": ("name", "sizes"),
    "assumption": ("value",),
    "garment": ("name", "plan", "published", "notes", "position"),
    "tester": ("name", "piece", "garment", "size", "state", "readings", "part", "width_mm", "length_mm", "said"),
}  # fmt: skip
"""The tables whose every change is kept, with their columns beside uid."""

NAMES = {
    "yarn": "name", "stitch_pattern": "name", "swatch": "tag", "piece": "name", "garment": "name", "body_chart": "name",
}  # fmt: skip
"""The column of a table in which a name may stand only once."""

USES = {
    "swatch": (("yarn", "yarn"), ("stitch_pattern", "stitch_pattern")),
    "reading": (("swatch", "swatch"),),
    "piece": (("swatch", "swatch"), ("edge_swatch", "swatch")),
    "size": (("piece", "piece"),),
    "made_piece": (("piece", "piece"), ("swatch", "swatch")),
    "tester": (("piece", "piece"), ("garment", "garment")),
}
"""Which columns speak of which tables."""

PARTS = {"reading": "swatch", "size": "piece"}
"""Records that are part of another, named in that column."""

YOUNGER: Mapping[int, Mapping[str, Mapping[str, Any]]] = {
    2: {
        "yarn": {"ball_price": None, "currency": ""},
        "swatch": {"minutes": None},
        "made_piece": {
            "worked_by": "", "yarn_used": "", "lot_used": "", "grams_used": None, "minutes": None, "changed": "",
        },
    },
    4: {
        "swatch": {"pictures": ""},
        "made_piece": {
            "predicted_grams": None, "predicted_minutes": None, "predicted_growth_mm": None, "worked_readings": "",
            "washed_readings": "", "wear": "", "pictures": "",
        },
    },
}  # fmt: skip
"""The columns that a step added to a table that was there, each with what it holds in a record from before."""


def lifted(table: str, row: Mapping[str, Any], schema: int) -> dict[str, Any]:
    """A row kept under ``schema`` as the present one has it: younger columns hold what they began with.

    Raises ValueError if it has not the very columns its table had then.
    """
    younger: dict[str, Any] = {}
    for step, tables in YOUNGER.items():
        if step > schema:
            younger |= tables.get(table, {})
    if row.keys() != {column for column in RECORDS[table] if column not in younger}:
        raise ValueError(f"a {table} of schema {schema} has other columns")
    return {**row, **younger}


SWATCH_OF_TAKEN = """substr(before, 12, instr(before, '","place"') - 12)"""
"""The swatch's uid in the kept text of a reading that was taken out; the index goes by this very expression."""
