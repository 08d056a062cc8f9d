"""What a worked row offers to the row above it: places, in the order in which they will be met.

A place is the top of a stitch or one chain. Chains that lie side by side make a space (a "run"), which can be worked into as a
whole.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

CHAIN = "ch"
PICOT = "picot"
BLOCK = "block"
COUNTED_BLOCK = "block, its chains a stitch"
FOUNDATION = (0, 0)  # the run of a foundation chain: no space
HEIGHTS = {"sc": 1, "hdc": 2, "dc": 3, "tr": 4, "dtr": 5, "trtr": 6}  # in turning chains


@dataclass(frozen=True, slots=True)
class Place:
    """The top of one stitch, or one chain. Kinds are US abbreviations: ``dc``, ``sc2tog``, ``fpdc``, ``ch``, ``picot``.

    ``run``: for a chain, how many lie side by side in its space, and which of them it is (from 0).
    ``group``: (name, size, which) if it was made in one place together with others: a shell, a V-stitch; its name may be "".
    ``turning``: for a stitch that a turning chain stands for, how many chains are its height; else 0.
    """

    kind: str
    run: tuple[int, int] | None = None
    group: tuple[str, int, int] | None = None
    turning: int = 0

    @property
    def is_stitch(self) -> bool:
        return self.run is None and self.kind != PICOT

    def like(self, kind: str) -> bool:
        """Whether a pattern may call this place ``kind`` (``st``: any stitch). A dc2tog, a raised dc and a turning chain that
        counts as dc are called dc too; the chains of the foundation are called stitches as well as chains.
        """
        if kind == "st":
            return self.is_stitch or self.run == FOUNDATION
        if kind == "cl" and self.kind.endswith("tog"):
            return True
        return self.kind == kind or (self.is_stitch and plain(self.kind) == kind)


Row = tuple[Place, ...]


@lru_cache(maxsize=256)
def plain(kind: str) -> str:
    """The stitch without what was done to it: ``dc`` for ``fpdc``, ``bpdc`` and ``dc3tog``."""
    return re.sub(r"\A[fb]p|\d+tog\Z", "", kind)


@lru_cache(maxsize=4096)
def _place(kind: str, run: tuple[int, int] | None, group: tuple[str, int, int] | None, turning: int) -> Place:
    return Place(kind, run, group, turning)


@lru_cache(maxsize=4096)
def _mirrored(place: Place) -> Place:
    run, group = place.run, place.group
    return _place(
        place.kind,
        None if run is None else (run[0], run[0] - 1 - run[1]),
        None if group is None else (group[0], group[1], group[1] - 1 - group[2]),
        place.turning,
    )


def chains(count: int) -> Row:
    """A foundation of ``count`` chains. They are places to work into, but no space."""
    return (_place(CHAIN, FOUNDATION, None, 0),) * count


def mirrored(row: Sequence[Place]) -> Row:
    """The row as it is met from its other end."""
    return tuple(_mirrored(place) for place in reversed(row))


def from_other_side(row: Row, joined: bool) -> Row:
    """The row as it is met after turning; a joined round is met from its first stitch on all the same."""
    return row[:1] + mirrored(row[1:]) if joined else mirrored(row)


def settled(made: Sequence[Place]) -> Row:
    """The places as made, every chain told how many lie beside it."""
    row: list[Place] = []
    start = 0
    while start < len(made):
        place = made[start]
        if place.kind != CHAIN:
            row.append(place)
            start += 1
            continue
        end = start
        while end < len(made) and made[end].kind == CHAIN:
            end += 1
        size = end - start
        row.extend(_place(CHAIN, (size, at), made[start + at].group, 0) for at in range(size))
        start = end
    return tuple(row)


def new_place(kind: str, group: tuple[str, int, int] | None = None, turning: int = 0) -> Place:
    """A place just made; what kind of space its chains make is known when the row is done (see ``settled``)."""
    return _place(kind, None, group, turning)


def stitches(row: Sequence[Place]) -> int:
    """How many stitches: chains and picots are none, a turning chain that counts is one."""
    return sum(1 for place in row if place.is_stitch or counts_in_block(place))


def starts_space(place: Place) -> bool:
    """Whether a space begins with this place."""
    return place.run is not None and place.run[0] > 0 and place.run[1] == 0


def spaces(row: Sequence[Place]) -> int:
    """How many spaces: chains side by side are one."""
    return sum(1 for place in row if starts_space(place) and not counts_in_block(place))


def counts_in_block(place: Place) -> bool:
    """Whether a space begins here whose chains are counted as a stitch of their block."""
    return starts_space(place) and place.group is not None and place.group[0] == COUNTED_BLOCK
