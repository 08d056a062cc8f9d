"""A run as it was set: the numbers as published and the readings they came from, kept whatever is measured later."""

import json
from collections.abc import Iterator, Sequence
from dataclasses import asdict, dataclass
from typing import Any

from logbook.craft.sizes.size_run import SizeNumbers
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.lengths import Units, show_length


@dataclass(frozen=True, slots=True, kw_only=True)
class PublishedSize:
    """One size in numbers: lengths in mm, and each mark's name, the row or stitch it lies at the end of, and its true size."""

    name: str
    body_mm: float
    chain: int
    stitches: int
    edge_stitches: int
    rows: int | None
    width_mm: float
    length_mm: float | None
    around_mm: float | None
    marks: tuple[tuple[str, int, float], ...]
    grams: float | None
    balls: int | None

    @property
    def places(self) -> dict[str, int]:
        """Where each mark lies."""
        return {name: at for name, at, _ in self.marks}

    def true_mm(self, name: str) -> float | None:
        """What a marked opening really measures; None without that mark."""
        return next((true_mm for mark, _, true_mm in self.marks if mark == name), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class PublishedRun:
    """The whole run. ``date`` is the day it was set (ISO), ``tag`` its swatch; each reading as it was typed, by its condition.

    ``lines`` are the pattern's lines as they were.
    """

    date: str
    tag: str
    readings: tuple[str, ...]
    sizes: tuple[PublishedSize, ...]
    lines: str


def published_run(date: str, swatch: Swatch, sizes: Sequence[SizeNumbers], lines: str) -> PublishedRun:
    """The run of today."""
    return PublishedRun(
        date=date,
        tag=swatch.tag,
        readings=tuple(f"{taken.condition.words}: {taken.reading.text}" for taken in swatch.readings),
        sizes=tuple(size_to_publish(size) for size in sizes),
        lines=lines,
    )


def size_to_publish(size: SizeNumbers) -> PublishedSize:
    """One size's numbers."""
    piece = size.piece
    return PublishedSize(
        name=size.name,
        body_mm=size.body_mm,
        chain=piece.chain,
        stitches=piece.stitches,
        edge_stitches=piece.edge_stitches,
        rows=piece.rows,
        width_mm=piece.width.mm,
        length_mm=piece.length.mm if piece.length else None,
        around_mm=piece.fit.around_mm if piece.fit else None,
        marks=tuple((name, mark.at, mark.true_mm) for name, mark in piece.marks.items()),
        grams=piece.yarn.grams if piece.yarn else None,
        balls=piece.yarn.balls if piece.yarn else None,
    )


def run_text(run: PublishedRun) -> str:
    """The run as JSON text."""
    return json.dumps(asdict(run), ensure_ascii=False, allow_nan=False, separators=(",", ":"))


def run_of(text: str) -> PublishedRun:
    """The run again. Raises ValueError, TypeError or LookupError for a text that is none."""
    values: dict[str, Any] = dict(json.loads(text))
    sizes = tuple(PublishedSize(**(size | {"marks": tuple(map(_mark, size["marks"]))})) for size in values.pop("sizes"))
    return PublishedRun(**(values | {"readings": tuple(values["readings"])}), sizes=sizes)


def _mark(kept: Sequence[Any]) -> tuple[str, int, float]:
    name, at, true_mm = kept
    return str(name), int(at), float(true_mm)


def changes_since(published: Sequence[PublishedSize], today: Sequence[SizeNumbers], units: Units = Units.CM) -> tuple[str, ...]:
    """What of a published run would be otherwise today, a sentence for each size and number; sizes are matched by name."""
    now = {size.name: size_to_publish(size) for size in today}
    said = []
    for size in published:
        if size.name in now:
            said += [f"{size.name}: {change}." for change in _changes(size, now[size.name], units)]
        else:
            said.append(f"{size.name}: not in the run any more.")
    names = {size.name for size in published}
    return (*said, *(f"{name}: not in the published run." for name in now if name not in names))


def _changes(old: PublishedSize, new: PublishedSize, units: Units) -> Iterator[str]:
    for what, was, now in (
        ("chain", old.chain, new.chain),
        ("edge stitches", old.edge_stitches, new.edge_stitches),
        ("rows", old.rows, new.rows),
        ("width", _shown(old.width_mm, units), _shown(new.width_mm, units)),
        ("length", _shown(old.length_mm, units), _shown(new.length_mm, units)),
        *((name, old.places.get(name), new.places.get(name)) for name in {**old.places, **new.places}),
    ):
        if was != now:
            yield f"{what} {'none' if was is None else was}, today {'none' if now is None else now}"


def _shown(mm: float | None, units: Units) -> str | None:
    return None if mm is None else show_length(mm, units)
