"""One who tries a pattern before it is handed out: which size, their own gauge, what came out and what they say."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from logbook.craft.pieces.made_fields import kept_readings
from logbook.craft.swatches.fields import FieldKind, LogField, Owner, one_of, read_text, size_in_cm


class TesterState(StrEnum):
    """How far they are."""

    ASKED = "asked"
    WORKING = "working"
    DONE = "done"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tester:
    """``piece`` or ``garment`` is the uid of what is tried. ``name`` may be initials. ``part`` is the piece of a garment that was
    measured ("": its first); width and length in mm, finished. ``readings`` are of what they made, as a cell of the log has them.
    """

    uid: str = ""
    name: str = ""
    piece: str = ""
    garment: str = ""
    size: str = ""
    state: str = TesterState.ASKED.value
    readings: str = ""
    part: str = ""
    width_mm: float | None = None
    length_mm: float | None = None
    said: str = ""


def _field(name: str, attribute: str, kind: FieldKind, read: Callable[[str], Any], expected: str) -> LogField:
    return LogField(name, Owner.TESTER, attribute, kind, read, expected)


TESTER_FIELDS: tuple[LogField, ...] = (
    _field("name", "name", FieldKind.TEXT, read_text, "a name or initials"),
    _field("size", "size", FieldKind.TEXT, read_text, "a size of the pattern"),
    _field("state", "state", FieldKind.TEXT, one_of(*TesterState), "asked, working or done"),
    _field("gauge", "readings", FieldKind.TEXT, kept_readings, "readings, like “16 sts = 10 cm; 20 rows = 10 cm”"),
    _field("part", "part", FieldKind.TEXT, read_text, "the piece that was measured"),
    _field("width cm", "width_mm", FieldKind.NUMBER, size_in_cm, "a length in cm"),
    _field("length cm", "length_mm", FieldKind.NUMBER, size_in_cm, "a length in cm"),
    _field("said", "said", FieldKind.TEXT, read_text, "text"),
)
"""Every field of a tester, once: form, sheet and mapping go by this table."""
