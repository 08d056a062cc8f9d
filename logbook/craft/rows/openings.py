"""What the chains at a row's beginning stand for.

The rules, the first that applies wins:

1. The text says it: ``(counts as dc and ch 2)``, ``(does not count)``; with ``throughout``, for all later rows that begin so.
2. ``ch 1`` never counts as a stitch.
3. The next stitch shows it: made in the first or the same stitch, the chains do not count; in the next, or after ``sk first
   st``, they do.
4. At the hook, the skipped chains count as a stitch when they are as many as its turning chain or more (dc in 4th, tr in 5th);
   what is beyond its height are chains over skipped chains, as the row's own repeat has them. Fewer count as nothing, and so
   does sc in 2nd.
5. Else both are possible: both are tried on all rows, and if both fit, the maker is asked.

Heights in turning chains: sc 1, hdc 2, dc 3, tr 4, dtr 5, trtr 6.
"""

from collections.abc import Iterator, Sequence

from logbook.craft.rows.asides import SaidToCount
from logbook.craft.rows.instructions import (
    NOTHING,
    Chain,
    Counts,
    First,
    FromHook,
    Instruction,
    Next,
    Opening,
    Repeat,
    Same,
    Skip,
    Work,
)
from logbook.craft.rows.places import HEIGHTS, plain


def turning_chain(chain: Chain, after: Sequence[Instruction], said: SaidToCount | None) -> Opening:
    """The opening that ``chain`` is, with what the row does next."""
    kind = _tall_stitch(after, chain.count)
    if said is not None:
        options: tuple[Counts, ...] = (_as_said(said, chain.count, kind),)
    elif chain.count == 1:
        options = (NOTHING,)
    else:
        counted = _counted(kind, chain.count)
        shown = _shown_by(after)
        options = (counted, NOTHING) if chain.count > 2 else (NOTHING, counted)
        options = options if shown is None else ((counted,) if shown else (NOTHING,))
    return Opening(chain.count, options, f"ch {chain.count}", chain.span, said=said is not None)


def at_hook(first: Work | Skip, body: Sequence[Instruction], said: SaidToCount | None) -> Opening:
    """The chains skipped before the first stitch of a row worked into the foundation chain."""
    skipped = first.into.chain - 1 if isinstance(first, Work) and isinstance(first.into, FromHook) else 0
    skipped = first.count if isinstance(first, Skip) else skipped
    kind = next((kind for kind in _stitches(body)), "sc")
    if said is not None:
        options: tuple[Counts, ...] = (_as_said(said, skipped, kind, hook=True),)
    else:
        options = _at_hook_options(skipped, kind, body)
    return Opening(skipped, options, "hook", first.span, at_hook=True, said=said is not None)


def _at_hook_options(skipped: int, kind: str, body: Sequence[Instruction]) -> tuple[Counts, ...]:
    height = HEIGHTS.get(plain(kind), 3)
    if height == 1 and skipped > 1:
        height = 3  # beside a low stitch a taller one is an arch or an edge: mostly a dc
        kind = "dc"
    elif height == 2 and skipped == 2:
        return NOTHING, Counts(kind, height=2)
    if skipped < height or height == 1:
        return (NOTHING,)
    beyond = skipped - height
    if beyond == 0:
        return (Counts(kind, height=height),)
    ways = [Counts(kind, made, beyond - made, height) for made in range(beyond)]
    own = [way for way in ways if (way.chains, way.over) in set(_arches(body))]
    even = [way for way in ways if way.chains == way.over]
    return tuple(own[:1] or even or ways)


def _arches(body: Sequence[Instruction]) -> Iterator[tuple[int, int]]:
    """(chains made, chains skipped) side by side in the row's own work."""
    for item, following in zip(body, [*body[1:], None], strict=True):
        if isinstance(item, Repeat):
            yield from _arches(item.body)
        elif isinstance(item, Chain) and isinstance(following, Skip):
            yield item.count, following.count
        elif isinstance(item, Skip) and isinstance(following, Chain):
            yield following.count, item.count
        elif isinstance(item, Skip):
            yield 0, item.count


def _as_said(said: SaidToCount, chains: int, kind: str, hook: bool = False) -> Counts:
    if not said.stitch:
        return NOTHING
    stitch = said.stitch if said.stitch != "st" else kind
    height = max(chains - said.chains - said.over, 0)
    if hook:
        height = min(height, HEIGHTS.get(plain(stitch), 3))
        return Counts(stitch, said.chains, said.over or max(chains - height - said.chains, 0), height)
    return Counts(stitch, said.chains, 0, height)


def counted_otherwise(opening: Opening, row: Sequence[Instruction]) -> Counts:
    """What a turning chain would count as if it were not as the next stitch shows."""
    if opening.options[0].stitch:
        return NOTHING
    return _counted(_tall_stitch(row, opening.chains), opening.chains)


def _counted(kind: str, chains: int) -> Counts:
    height = min(HEIGHTS[kind], chains)
    return Counts(kind, chains - height, 0, height)


def _tall_stitch(after: Sequence[Instruction], chains: int) -> str:
    """The stitch that so many chains most likely stand for: the row's first stitch, if they are high enough for it."""
    for made in _stitches(after):
        kind = plain(made)
        if 1 < HEIGHTS.get(kind, 0) <= chains + 1:
            return kind
    return "dc" if chains > 2 else "hdc"


def _stitches(items: Sequence[Instruction]) -> Iterator[str]:
    for item in items:
        if isinstance(item, Repeat):
            yield from _stitches(item.body)
        elif isinstance(item, Work):
            yield from (kind for kind in item.made.items if kind not in ("ch", "sl st", "picot"))


def _shown_by(after: Sequence[Instruction]) -> bool | None:
    """Whether the next stitch shows that the chains count; None if it shows nothing."""
    item = after[0] if after else None
    if isinstance(item, Repeat):
        inner = item.body[0]
        return None if inner.span == item.span else _shown_by(item.body)
    if isinstance(item, Skip):
        return True if item.first else None
    if isinstance(item, Work) and isinstance(item.into, First | Same):
        return False
    if isinstance(item, Work) and isinstance(item.into, Next) and item.into.wanted.kind not in ("sp", "group", "gap", "either"):
        return True
    return None
