"""What a merge of two logbooks would do: what is taken, and what must be asked."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

Row = Mapping[str, Any]
Side = Literal["ours", "theirs"]
Point = tuple[str, str, str]
"""What a conflict is over: a table, a record's uid in it, and a field ("": the record itself; a name "twice": which keeps it)."""
Prefer = Side | Mapping[Point, Side]
"""Whose word goes: one side's throughout, or of each point."""
Place = tuple[str, str]
"""A table and a record's uid in it."""


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two sides that say otherwise: of which record, in which field ("": the record itself, deleted on one side).

    ``twice``: it is a name that would stand twice, and ``ours`` and ``theirs`` are two records.
    """

    table: str
    record: str
    field: str
    ours: Any
    theirs: Any
    twice: bool = False

    @property
    def point(self) -> Point:
        """What it is over."""
        return self.table, self.record, f"{self.field} twice" if self.twice else self.field


@dataclass(frozen=True, slots=True)
class Taken:
    """One record of the other side: its state there, the uid of its last change, and what comes of both (None: not there)."""

    table: str
    record: str
    ours: Row | None
    theirs: Row | None
    last: str
    result: Row | None


@dataclass(slots=True)
class Merging:
    """What a merge would do: what is taken, and what must be asked."""

    taken: list[Taken] = field(default_factory=list)
    conflicts: list[Conflict] = field(default_factory=list)
    alike: int = 0


def undecided(plan: Merging, prefer: Prefer | None) -> list[Conflict]:
    """The conflicts of a plan over which nothing has been said."""
    return [one for one in plan.conflicts if prefer is None or (isinstance(prefer, Mapping) and one.point not in prefer)]


def is_theirs(prefer: Prefer | None, conflict: Conflict) -> bool:
    return (prefer.get(conflict.point) if isinstance(prefer, Mapping) else prefer) == "theirs"
