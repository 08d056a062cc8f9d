"""A run as it was set: the numbers as published and the readings they came from, kept whatever is measured later."""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any

from logbook.craft.sizes.run_numbers import SizeFigures, figures_of
from logbook.craft.sizes.size_run import SizeNumbers
from logbook.craft.swatches.swatch import Swatch

KEPT = {
    "name": "size", "body_mm": "body", "chain": "chain", "stitches": "stitches", "edge_stitches": "edge stitches", "rows": "rows",
    "width_mm": "width", "length_mm": "length", "around_mm": "all round", "grams": "yarn", "balls": "balls",
}  # fmt: skip
"""What stands in the file of a size, by name, and the number that it is: that may get another name, what is kept may not."""
MARKS = {
    "slit": ("slit at", "slit"),
    "armhole": ("armhole at", "armhole"),
    "neck begins": ("neck begins at", "neck"),
    "neck ends": ("neck ends at", "neck"),
}
"""The marks kept besides, by name: the row or stitch each lies at the end of, and the true size of what it marks."""
_FIGURES = {*KEPT.values(), *(name for mark in MARKS.values() for name in mark)}


class UnknownNumberError(Exception):
    """A number of a published size that a younger version of the program knows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PublishedRun:
    """The whole run. ``date`` is the day it was set (ISO), ``tag`` its swatch; each reading as it was typed, by its condition.

    ``lines`` are the pattern's lines as they were.
    """

    date: str
    tag: str
    readings: tuple[str, ...]
    sizes: tuple[SizeFigures, ...]
    lines: str


def published_run(date: str, swatch: Swatch, sizes: Sequence[SizeNumbers], lines: str) -> PublishedRun:
    """The run of today."""
    return PublishedRun(
        date=date,
        tag=swatch.tag,
        readings=tuple(f"{taken.condition.words}: {taken.reading.text}" for taken in swatch.readings),
        sizes=tuple(to_publish(figures_of(size)) for size in sizes),
        lines=lines,
    )


def to_publish(figures: SizeFigures) -> SizeFigures:
    """What is kept of the numbers of a size."""
    return SizeFigures((name, figures[name]) for name in figures if name in _FIGURES)


def run_text(run: PublishedRun) -> str:
    """The run as JSON text."""
    values = asdict(run) | {"sizes": [_kept(size) for size in run.sizes]}
    return json.dumps(values, ensure_ascii=False, allow_nan=False, separators=(",", ":"))


def run_of(text: str) -> PublishedRun:
    """The run again. Raises ValueError, TypeError or LookupError for a text that is none, UnknownNumberError for what it says of
    a size beyond all that this version knows."""
    values: dict[str, Any] = dict(json.loads(text))
    sizes = tuple(map(_figures, values.pop("sizes")))
    return PublishedRun(**(values | {"readings": tuple(values["readings"])}), sizes=sizes)


def _kept(size: SizeFigures) -> dict[str, Any]:
    marks = [[mark, size[at], size[true]] for mark, (at, true) in MARKS.items() if size[at] is not None]
    return {kept: size[name] for kept, name in KEPT.items()} | {"marks": marks}


def _figures(kept: Mapping[str, Any]) -> SizeFigures:
    known = {*KEPT, "marks"}
    if kept.keys() > known:
        raise UnknownNumberError(min(kept.keys() - known))
    if kept.keys() != known:
        raise LookupError("not the numbers of a size")
    found = SizeFigures(dict.fromkeys(sorted(_FIGURES)))
    found.update((name, kept[key]) for key, name in KEPT.items())
    for mark, at, true_mm in kept["marks"]:
        found.update(zip(MARKS[mark], (int(at), float(true_mm)), strict=True))
    return found


def changes_since(published: Sequence[SizeFigures], today: Sequence[SizeFigures]) -> Iterator[tuple[SizeFigures, SizeFigures]]:
    """The sizes of a published run beside those of the same name today; of one that is not in both, the other is empty."""
    now = {size["size"]: size for size in today}
    names = {size["size"] for size in published}
    yield from ((size, now.get(size["size"], SizeFigures())) for size in published)
    yield from ((SizeFigures(), size) for name, size in now.items() if name not in names)
