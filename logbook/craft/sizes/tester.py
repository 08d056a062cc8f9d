"""One who tries a pattern before it is handed out: which size, their own gauge, what came out and what they say."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from logbook.craft.pieces.made_fields import kept_readings
from logbook.craft.swatches.fields import Field, Kind, Owner, one_of, read_text, size_in_cm


class State(StrEnum):
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
    state: str = State.ASKED.value
    readings: str = ""
    part: str = ""
    width_mm: float | None = None
    length_mm: float | None = None
    said: str = ""


def _field(name: str, attribute: str, kind: Kind, read: Callable[[str], Any], expected: str) -> Field:
    return Field(name, Owner.TESTER, attribute, kind, read, expected)


TESTER_FIELDS: tuple[Field, ...] = (
    _field("name", "name", Kind.TEXT, read_text, "a name or initials"),
    _field("size", "size", Kind.TEXT, read_text, "a size of the pattern"),
    _field("state", "state", Kind.TEXT, one_of(*State), "asked, working or done"),
    _field("gauge", "readings", Kind.TEXT, kept_readings, "readings, like “16 sts = 10 cm; 20 rows = 10 cm”"),
    _field("part", "part", Kind.TEXT, read_text, "the piece that was measured"),
    _field("width cm", "width_mm", Kind.NUMBER, size_in_cm, "a length in cm"),
    _field("length cm", "length_mm", Kind.NUMBER, size_in_cm, "a length in cm"),
    _field("said", "said", Kind.TEXT, read_text, "text"),
)
"""Every field of a tester, once: form, sheet and mapping go by this table."""
