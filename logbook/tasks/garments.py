"""Garments of several pieces: worked out from a plan and the logbook's swatches, or from swatches given in the plan itself."""

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from logbook.book import garments as kept
from logbook.book.logbook import Logbook
from logbook.craft.garments.body import GarmentSize, sizes_of
from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import GarmentInSize, work_out_garment
from logbook.craft.garments.plan import Garment, GarmentPiece, GarmentPlan
from logbook.craft.garments.plan_file import plan_of
from logbook.craft.gauges.drift import drifts_of
from logbook.craft.sizes.body_chart import BodyChart
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.fields import FIELDS, LogField, Owner
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.swatch_fields import swatch_of
from logbook.errors import LogbookError, RefusedError
from logbook.sheets.limits import require_ordinary
from logbook.tasks.body_charts import BUILT_IN, chart_called
from logbook.tasks.pieces import Basis, basis_of_tag, gauges_on

LARGEST_PLAN = 5_000_000
"""Bytes: a plan of any garment is far smaller."""


@dataclass(frozen=True, slots=True)
class GarmentAnswer:
    """A garment worked out in its sizes, with the cloths of its pieces by name and the swatches they come from."""

    plan: GarmentPlan
    sizes: tuple[GarmentSize, ...]
    cloths: Mapping[str, Cloth]
    swatches: Mapping[str, Swatch]
    numbers: tuple[GarmentInSize, ...]


def read_plan(path: Path) -> GarmentPlan:
    """The plan in a file. Raises RefusedError, in one sentence, if it can't be read or is none."""
    try:
        require_ordinary(path, "the file of a plan")
        if path.is_file() and path.stat().st_size > LARGEST_PLAN:
            raise RefusedError(f"“{path.name}” is too large to be a plan: the most is {LARGEST_PLAN // 1_000_000} MB.")
        text = path.read_text("utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        why = error.strerror if isinstance(error, OSError) else "it is not text"
        raise RefusedError(f"“{path.name}” could not be read ({why}): give the file of a plan.") from error
    try:
        value = json.loads(text)
    except (ValueError, RecursionError) as error:
        where = f", line {error.lineno}" if isinstance(error, json.JSONDecodeError) else ""
        raise RefusedError(f"“{path.name}” is not a plan{where}: it must be JSON, as a saved plan is.") from error
    try:
        return plan_of(value)
    except LogbookError as error:
        raise RefusedError(f"“{path.name}”: {error}") from error


def garments(book: Logbook) -> list[Garment]:
    """All garments in the order of their names."""
    with book.reading() as connection:
        return list(kept.garments(connection).values())


def garment_called(book: Logbook, name: str) -> Garment:
    """The garment of that name. Raises RefusedError if there is none."""
    with book.reading() as connection:
        return kept.garment_called(connection, name)


def matching_garments(book: Logbook, words: str) -> list[str]:
    """The uids of the garments in which every word is found, or a part of a word."""
    with book.reading() as connection:
        return kept.matching_garments(connection, words)


def save_garment(book: Logbook, garment: Garment) -> str:
    """Saves a garment, new (no uid) or known, and returns its uid. Raises RefusedError; then nothing is written."""
    with book.writing(f"{'change' if garment.uid else 'plan'} {garment.name}") as writing:
        return kept.put_garment(writing, garment)


def keep(book: Logbook, plan: GarmentPlan) -> str:
    """Puts a plan into the logbook, in the place of a garment of that name. Raises RefusedError; then nothing is written."""
    known = next((garment for garment in garments(book) if garment.name == plan.name), None)
    return save_garment(book, Garment(plan=plan) if known is None else replace(known, plan=plan))


def delete_garment(book: Logbook, garment: Garment) -> None:
    """Deletes a garment; undo brings it back."""
    with book.writing(f"delete {garment.name}") as writing:
        kept.remove_garment(writing, garment.uid)


def needs_book(plan: GarmentPlan) -> bool:
    """Whether the plan speaks of swatches or a chart that only a logbook has."""
    tags = any(isinstance(piece.swatch, str) or piece.edge_swatch.strip() for piece in plan.pieces)
    return tags or bool(plan.sizes.chart and plan.sizes.chart not in BUILT_IN)


def work_out(plan: GarmentPlan, book: Logbook | None = None) -> GarmentAnswer:
    """The garment in all its sizes. Raises RefusedError, in one sentence, if it can't be."""
    sizes = sizes_for(plan, book)
    cloths, swatches = cloths_of(plan, book, {}, _raised)
    return GarmentAnswer(plan, sizes, cloths, swatches, work_out_garment(plan, sizes, cloths))


def sizes_for(plan: GarmentPlan, book: Logbook | None = None) -> tuple[GarmentSize, ...]:
    """The sizes of a plan. Raises RefusedError, in one sentence, if its chart does not have them or is not there."""
    chart: BodyChart | None = chart_called(plan.sizes.chart, book) if plan.sizes.chart else None
    return sizes_of(plan, chart)


def _raised(piece: str, error: RefusedError) -> None:
    raise error


def cloths_of(
    plan: GarmentPlan, book: Logbook | None, known: dict[str, Basis], refused: Callable[[str, RefusedError], None]
) -> tuple[dict[str, Cloth], dict[str, Swatch]]:
    """The cloth and the swatch of every piece by its name; ``refused`` hears of each piece that has none.

    ``known`` keeps what the logbook says of a swatch, by its tag, for the next time.
    """
    cloths, swatches = {}, {}
    for piece in plan.pieces:
        try:
            basis = _basis(piece, book, known)
            cloths[piece.name] = _cloth(piece, basis)
        except RefusedError as error:
            refused(piece.name, error)
        else:
            swatches[piece.name] = basis.swatch
    return cloths, swatches


def _basis(piece: GarmentPiece, book: Logbook | None, known: dict[str, Basis]) -> Basis:
    basis = _basis_of_fabric(piece, book, known)
    if not piece.edge_swatch.strip():
        return basis
    if book is None:
        raise RefusedError(f"The edges of “{piece.name}” are like the swatch {piece.edge_swatch}: name the logbook it is in.")
    return replace(basis, edge_swatch=_basis_of_tag(piece.edge_swatch, book, known).swatch)


def _basis_of_fabric(piece: GarmentPiece, book: Logbook | None, known: dict[str, Basis]) -> Basis:
    if isinstance(piece.swatch, Mapping):
        swatch = swatch_in_place(piece.swatch, f"“{piece.name}”")
        return Basis(swatch=swatch, assumed=Assumptions(), drift=drifts_of(Assumptions(), hand=swatch.worked_by))
    if not piece.swatch.strip():
        raise RefusedError(f"“{piece.name}” has no swatch yet: choose one by its tag.")
    if book is None:
        raise RefusedError(f"“{piece.name}” names the swatch {piece.swatch}: name the logbook it is in.")
    return _basis_of_tag(piece.swatch, book, known)


def _basis_of_tag(tag: str, book: Logbook, known: dict[str, Basis]) -> Basis:
    if tag not in known:
        known[tag] = basis_of_tag(book, tag)
    return known[tag]


def _cloth(piece: GarmentPiece, basis: Basis) -> Cloth:
    try:
        gauges = gauges_on(basis, other_hands=True)
    except RefusedError as refused:
        raise RefusedError(f"“{piece.name}”: {refused}") from refused
    swatch = basis.swatch
    return Cloth(
        gauges=gauges,
        colour=swatch.colour,
        flat=swatch.worked != "round",
    )


_SHORT = {"stitches": "stitches washed", "rows": "rows washed"}


def swatch_in_place(columns: Mapping[str, Any], where: str) -> Swatch:
    """A swatch of columns of the log; ``stitches`` and ``rows`` mean washed. Raises RefusedError, naming the column at fault."""
    by_name = {field.name: field for field in FIELDS}
    values: dict[LogField, Any] = {}
    for name, cell in columns.items():
        field = by_name.get(_SHORT.get(name, name))
        if field is None:
            raise RefusedError(f"The swatch of {where} has “{name}”, which is not a column of the log.")
        try:
            values[field] = field.value(str(cell))
        except LogbookError as error:
            raise RefusedError(f"“{name}” of the swatch of {where}: {error}") from error
    for owner, name, called in ((Owner.PATTERN, "stitch pattern", "the stitch"), (Owner.YARN, "yarn", "the yarn")):
        if any(field.owner is owner for field in values) and not values.get(by_name[name]):
            values[by_name[name]] = called
    return swatch_of(values)
