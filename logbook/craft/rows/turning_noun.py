"""A turning chain by its names: ``tch``, ``beg ch-3``, ``3 skipped chs``."""

from logbook.craft.rows.cursor import BREAKS, Cursor


def turning_noun(cur: Cursor, take: bool = False) -> bool:
    """Whether a turning chain is named next (``tch``, ``beg ch-3``, ``ch-4 tch``, ``3 skipped chs``); steps over it if
    told.
    """
    start = cur.at
    cur.accept("beg", "last")
    found = cur.accept("tch", "begch")
    dashed = found and cur.word().start == cur.word(-1).end and cur.accept("-")
    if dashed or (found and cur.next_is(*BREAKS, "", "turn", "join", "and", ")", ahead=1)):
        cur.number()
    if not found:
        numbered = cur.number() is not None
        if cur.accept("skipped", "sk"):
            cur.number()
            found = cur.accept("ch")
        elif numbered and cur.accept("tch"):
            found = True
        elif cur.accept("ch") and (numbered or (cur.accept("-"), cur.number())[1] is not None):
            found = cur.accept("tch") or (take and not cur.next_is("sp"))
    if not (found and take):
        cur.at = start
    return found
