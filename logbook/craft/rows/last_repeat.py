"""How the end of a row is told against the repeat before it: ``working last dc in tch``, ``ending with ch 3, join``."""

from collections.abc import Sequence

from logbook.craft.rows.cursor import Cursor
from logbook.craft.rows.instructions import Chain, Instruction, Last, Next, Skip, Skipped, Work
from logbook.craft.rows.word import NUMBER


def under_chains(body: Sequence[Instruction], instead: Sequence[Instruction]) -> Skip | None:
    """What the repeat's first chains stand over, where a row ends with those: ``ending with ch 3, join``; None if it does not."""
    if len(instead) != 1 or len(body) < 3:
        return None
    chain, skip, ends = body[0], body[1], instead[0]
    alike = isinstance(chain, Chain) and isinstance(ends, Chain) and chain.count == ends.count
    return skip if alike and isinstance(skip, Skip) else None


def leads_to_last(cur: Cursor, kinds: Sequence[str]) -> bool:
    """Steps over ``working last dc``, ``with the last one``, ``last dc goes`` before the place that it goes into."""
    start = cur.at
    while cur.accept("with", "placing", "and", "ending", "but", "put", "putting"):
        pass
    if cur.accept("last"):
        count = cur.word().value if cur.sort_is(NUMBER) else 1
        many = cur.sort_is(NUMBER) and count == len(kinds)
        cur.at += many
        named = cur.accept("one", "st") or cur.accept(*kinds) or cur.stitch() in kinds or (many and count == 1)
        named = named and (many or count == 1)
        while cur.accept("goes", "going", "is", "made", "being", "placed", "worked"):
            pass
        if named and cur.next_is("in", "topof"):
            return True
    cur.at = start
    return False


def takes_its_place(ends: Work, instead: Work) -> bool:
    """Whether a row's end is the repeat's own last stitch made elsewhere, or less of it in the last such place."""
    own, last = ends.into, instead.into
    if ends.made == instead.made:
        return not isinstance(own, Skipped)
    same_place = isinstance(own, Next) and isinstance(last, Last) and own.wanted == last.wanted and own.wanted.kind != "st"
    return same_place and set(ends.made.items) == set(instead.made.items)
