"""Two yarns, or two stitch patterns, that turn out to be one: what the one that is kept takes from the other."""

from dataclasses import fields, replace
from typing import Any, TypeVar

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.yarn import Yarn

Known = TypeVar("Known", bound=Yarn | StitchPattern)

_TOGETHER = (
    ("ball_grams", "ball_metres"),
    ("ball_price", "currency"),
    ("multiple", "plus", "half_plus"),
    ("extra_chains", "first_stitch", "skip_cover"),
    ("set_up_rows", "rows_in_repeat", "closing_rows"),
    ("terms", "rows_text"),
)
"""What is only right together: all of it is taken, or none."""
_READ_IN = {"multiple": "repeats", "rows_in_repeat": "row repeats"}
"""What readings are counted in hangs on these: of two that differ in them, readings would come to mean something else."""


def as_one(kept: Known, other: Known) -> Known:
    """``kept`` with what it does not say itself taken from ``other``."""
    taken: dict[str, Any] = {}
    for group in _groups(kept):
        if not any(_said(kept, name) for name in group):
            taken |= {name: getattr(other, name) for name in group}
    return replace(kept, **taken)


def lost(kept: Known, other: Known) -> tuple[str, ...]:
    """The names of what ``other`` says otherwise than ``kept``, which is not taken."""
    one = as_one(kept, other)
    names = (name for group in _groups(kept) for name in group)
    return tuple(name for name in names if _said(other, name) and getattr(one, name) != getattr(other, name))


def why_not_one(kept: Known, other: Known) -> tuple[str, str, int, int] | None:
    """(``multiple``, ``repeats``, of ``kept``, of ``other``): readings in repeats would change; None: they may be one."""
    for name, counted in _READ_IN.items():
        mine, theirs = getattr(kept, name, None), getattr(other, name, None)
        if mine is not None and theirs is not None and mine != theirs:
            return name, counted, mine, theirs
    return None


def _groups(kept: Yarn | StitchPattern) -> list[tuple[str, ...]]:
    """Every field but uid and name, alone or with those it is only right with."""
    names = [field.name for field in fields(kept) if field.name not in ("uid", "name")]
    groups = [group for group in _TOGETHER if group[0] in names]
    grouped = {name for group in groups for name in group}
    return [*groups, *((name,) for name in names if name not in grouped)]


def _said(known: Yarn | StitchPattern, name: str) -> bool:
    return getattr(known, name) not in (None, "")
