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
from dataclasses import dataclass, replace

from logbook.craft.rows.chain_sayings import SaidToCount
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
    works_of,
)
from logbook.craft.rows.place_kinds import ONE_STITCH_NAMES
from logbook.craft.rows.places import HEIGHTS, plain


@dataclass(frozen=True, slots=True)
class Shown:
    """What shows what a row's first chains stand for, beside its next stitch.

    ``joined_to``: the round is joined to its first chains ("chain") or its first stitch ("stitch"). ``earlier``: what as many
    chains stood for where an earlier row said it.
    """

    joined_to: str = ""
    earlier: Counts | None = None


def turning_chain(chain: Chain, after: Sequence[Instruction], said: SaidToCount | None, shown: Shown) -> Opening:
    """The opening that ``chain`` is, with what the row does next and what else shows what it stands for."""
    kind = _tall_stitch(after, chain.count)
    first = next(_stitches(after), kind)
    if said is not None and said.stitch == "st" and plain(first) not in HEIGHTS and first not in ONE_STITCH_NAMES:
        kind = first  # a stitch of the pattern's own
    settled = said is not None
    if said is not None:
        options: tuple[Counts, ...] = (_as_said(said, chain.count, kind),)
    elif chain.count == 1 and shown.joined_to != "chain":
        options = (NOTHING,)
    elif shown.joined_to == "chain":
        options = (_counted(kind, chain.count),)
    else:
        options, settled = _shown_options(chain, after, kind, shown)
    key = f"ch {chain.count}" + (f" as {options[0].stitch or 'nothing'}" if settled else "")
    lone = settled and len(options) == 1 and bool(options[0].stitch) and not options[0].chains
    if lone and _skips_one(after) and _goes_through(after):
        options = (replace(options[0], at_base=True), options[0])
        key += ", and one skipped"
    return Opening(chain.count, options, key, chain.span, said=said is not None, settled=settled)


def _skips_one(after: Sequence[Instruction]) -> bool:
    """Whether ``sk 1 st`` follows, which may be the next stitch or the one under the chains: ``3 ch, miss 1 tr``."""
    item = after[0] if after else None
    return isinstance(item, Skip) and not item.first and item.count == 1 and item.wanted.kind in ("st", *HEIGHTS)


def _goes_through(after: Sequence[Instruction]) -> bool:
    """Whether behind the skipped stitch every one is worked into."""
    item = after[1] if len(after) > 1 else None
    return isinstance(item, Repeat) and len(item.body) == 1 and isinstance(item.body[0], Work) and item.body[0].span == item.span


def _shown_options(chain: Chain, after: Sequence[Instruction], kind: str, shown: Shown) -> tuple[tuple[Counts, ...], bool]:
    """What the chains may count as, what is likelier first; and whether the first is to be taken without asking if it fits."""
    counted = _counted(kind, chain.count)
    likelier = (counted, NOTHING) if chain.count > 2 else (NOTHING, counted)
    by_next = _shown_by(after)
    if shown.earlier is not None:
        return ((counted, NOTHING) if shown.earlier.stitch else (NOTHING, counted)), True
    if by_next is None:
        return likelier, False
    if by_next:
        low = chain.count == 2 and HEIGHTS.get(plain(kind), 3) > 2  # ch 2 before a dc stands for it or for nothing
        return (likelier, False) if low else ((counted,), True)
    return ((NOTHING, counted), True) if _in_same(after) else ((NOTHING,), True)


def _in_same(after: Sequence[Instruction]) -> bool:
    """Whether one stitch more goes where the chains stand: they may be the first of two."""
    item = after[0] if after else None
    return isinstance(item, Work) and isinstance(item.into, First | Same) and len(item.made.items) == 1


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
    if kind == "tss":
        return (Counts(kind),)  # the loop on the hook is the first
    if height == 1 and skipped > 1:
        # beside a low stitch a taller one is an arch or an edge, mostly a dc; or all of them are a loop
        return *_at_hook_options(skipped, "dc", body), *_loop_at_hook(skipped, body)
    if height == 2 and skipped == 2:
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


def _loop_at_hook(skipped: int, body: Sequence[Instruction]) -> tuple[Counts, ...]:
    """All chains skipped as one loop, if the row makes such loops itself."""
    over = [under for chains, under in _arches(body) if chains == skipped and under < skipped]
    return (Counts("", skipped, over[0]),) if over else ()


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
    for work in works_of(items):
        yield from (kind for kind in work.made.items if kind not in ("ch", "sl st", "picot"))


def _shown_by(after: Sequence[Instruction]) -> bool | None:
    """Whether the next stitch shows that the chains count; None if it shows nothing."""
    item = after[0] if after else None
    if isinstance(item, Repeat):
        inner = item.body[0]
        return None if inner.span == item.span else _shown_by(item.body)
    if isinstance(item, Skip):
        return True if item.first else None
    if isinstance(item, Work) and isinstance(item.into, First | Same):
        wanted = item.into.wanted
        return None if wanted is not None and wanted.kind == "sp" else False
    if isinstance(item, Work) and isinstance(item.into, Next) and item.into.wanted.kind not in ("sp", "group", "gap", "either"):
        return True
    return None
