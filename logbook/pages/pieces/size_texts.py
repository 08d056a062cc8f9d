"""The sizes of a run as text, so that they are typed, saved and taken back with the rest of the form.

A line is a size, its cells parted by ``;`` in the order of ``KEYS``; what is empty is as in the plan. A size of which
nothing is typed yet is a line of one ``;``, for an empty line at the end would be none.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from logbook.craft.pieces.measures import OF_A_SIZE
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.words.lengths import Units, read_ease, read_size
from logbook.errors import UnreadableError
from logbook.pages.pieces.plan_texts import ease_text, length_text

LENGTHS = {measure.name: measure.field for measure in OF_A_SIZE}
KEYS = ("size", "body", "ease", *list(LENGTHS)[1:])
_PART = ";"

SizeTexts = dict[str, str]
"""The texts of one size by ``KEYS``."""


@dataclass(frozen=True, slots=True)
class ReadSizes:
    """The sizes; ``errors`` has a sentence for each text at fault, by its line (from 0) and key."""

    plans: tuple[SizePlan, ...]
    errors: Mapping[tuple[int, str], str]


def sizes_text(plans: Sequence[SizePlan], units: Units) -> str:
    """The text that says these sizes: read again it gives the same."""
    return text_of([_texts(plan, units) for plan in plans])


def rows_of(text: str) -> list[SizeTexts]:
    """The texts of every size."""
    lines = [line.split(_PART) for line in text.splitlines()]
    return [{key: cells[place].strip() if place < len(cells) else "" for place, key in enumerate(KEYS)} for cells in lines]


def text_of(rows: Sequence[Mapping[str, str]]) -> str:
    """The text of these sizes; a ``;`` or an end of line in a cell, where it can't stand, becomes a space."""
    cells = ((" ".join(row[key].replace(_PART, " ").split()) for key in KEYS) for row in rows)
    return "\n".join(_PART.join(line).rstrip(_PART) or _PART for line in cells)


def read_sizes(text: str, units: Units) -> ReadSizes:
    """Reads every size; lengths without a unit are in ``units``."""
    plans, errors = [], {}
    rows = rows_of(text)
    names = [row["size"] for row in rows]
    for place, row in enumerate(rows):
        plan, wrong = _read(row, units)
        if not row["size"]:
            wrong["size"] = "Name the size, for example M."
        elif row["size"] in names[:place]:
            wrong["size"] = f"The size “{row['size']}” comes twice: give each size its own name."
        plans.append(plan)
        errors.update({(place, key): sentence for key, sentence in wrong.items()})
    return ReadSizes(tuple(plans), errors)


def _texts(plan: SizePlan, units: Units) -> SizeTexts:
    texts = {key: length_text(getattr(plan, field), units) for key, field in LENGTHS.items()}
    ease = "" if plan.ease is None else ease_text(plan.ease, units) or "0 cm"
    return {"size": plan.name, "ease": ease, **texts}


def _read(row: SizeTexts, units: Units) -> tuple[SizePlan, dict[str, str]]:
    values: dict[str, Any] = {"name": row["size"]}
    wrong: dict[str, str] = {}
    readers: dict[str, tuple[str, Callable[[str], Any]]] = {
        key: (field, lambda text, key=key: read_size(text, units, f"a {key} measure"))  # type: ignore[misc]
        for key, field in LENGTHS.items()
    }
    readers["ease"] = ("ease", lambda text: read_ease(text, units))
    for key, (field, read) in readers.items():
        if row[key]:
            try:
                values[field] = read(row[key])
            except UnreadableError as error:
                wrong[key] = str(error)
    return SizePlan(**values), wrong
