"""Where several stitches go that are told to go all around or to the end together: ``1 sc, then inc, all around``."""

from logbook.craft.rows.cursor import BREAKS, Cursor
from logbook.craft.rows.instructions import Chain, Instruction, Repeat, ToEnd, Work


def behind_chains(items: list[Instruction]) -> int:
    """Where the work begins: behind a row's first chains."""
    return next((at for at, item in enumerate(items) if not isinstance(item, Chain)), len(items))


def all_of_these(cur: Cursor, items: list[Instruction], start: int, freely: set[int]) -> bool:
    """``1 sc, then inc, all around``: all of them again and again, where none of them says its place."""
    if not (cur.next_is("toend", "around") and cur.next_is(*BREAKS, "", "(", "[", "-", ahead=1) and cur.next_is(",", ahead=-1)):
        return False
    begin = behind_chains(items)
    body = items[begin:]
    free = all(isinstance(item, Work) and item.span.start in freely for item in body)
    if len(body) < 2 or not free:
        return False
    cur.at += 1
    items[begin:] = [Repeat(tuple(body), ToEnd(), cur.span_from(start))]
    return True


def all_of_them(items: list[Instruction], new: list[Instruction], freely: set[int]) -> list[Instruction]:
    """``sc, inc around``: both of them all around, where it is not said where the first one goes."""
    if not (len(new) == 1 and isinstance(new[0], Repeat) and isinstance(new[0].until, ToEnd) and len(new[0].body) == 1):
        return new
    only = new[0].body[0]
    begin = behind_chains(items)
    before = items[begin:]
    free = all(isinstance(item, Work) and item.span.start in freely for item in before)
    shapes = isinstance(only, Work) and (only.together or len(only.made.items) > 1) and only.span.start in freely
    if not (before and free and shapes):
        return new
    del items[begin:]
    return [Repeat((*before, only), ToEnd(), new[0].span)]


def says_again(cur: Cursor, items: list[Instruction]) -> bool:
    """Steps over ``, to end`` behind what goes to the end anyhow."""
    last = items[-1] if items else None
    if not (isinstance(last, Repeat) and isinstance(last.until, ToEnd) and cur.next_is("toend", "around")):
        return False
    if cur.next_is(*BREAKS, "", "turn", "join", "(", "[", "-", ahead=1):
        cur.at += 1
        return True
    return False
