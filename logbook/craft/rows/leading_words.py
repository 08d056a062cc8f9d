"""Words that lead to work and are none: ``decrease at both ends as follows:``, ``ending with``."""

from collections.abc import Sequence
from itertools import pairwise

from logbook.craft.rows.beside import begins_work
from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor
from logbook.craft.rows.instructions import Instruction
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.star_repeats import STARS
from logbook.craft.rows.word import NUMBER, STITCH, TOGETHER


def leads_in(cur: Cursor, row: RowWords) -> bool:
    """Steps over ``decrease at both ends as follows:``, which tells nothing that does not follow."""
    start = cur.at
    while cur.more() and not cur.next_is(*BREAKS, *CLOSING, *STARS):
        if cur.next_is("as") and cur.next_is("follows", "below", ahead=1):
            if any(word.sort in (STITCH, TOGETHER) and after.text == "in" for word, after in pairwise(cur.words[start : cur.at])):
                break
            cur.at += 2
            row.notes.append(cur.span_from(start))
            row.unsure.append(cur.span_from(start))
            return True
        cur.at += 1
    cur.at = start
    return False


def words_before_work(cur: Cursor, items: Sequence[Instruction]) -> int:
    """How many words stand before the work: 2 of ``ending with sc``, 1 of ``with sc``, else 0. ``items``: done before it."""
    ahead = 2 if cur.next_is("with", "by", ahead=1) else 1
    if cur.next_is("with"):
        return 1 if begins_work(cur, 1) else 0
    if cur.next_is("ending", "finish"):
        work = cur.word(1).sort in (NUMBER, STITCH, TOGETHER) or cur.next_is("ch", "sk", "inc", "dec", "(", ahead=1)
        return ahead if items and (ahead == 2 or work) else 0
    starts = cur.next_is("start", "begin", "starting", "beg") and cur.word(ahead).sort in (NUMBER, STITCH)
    return ahead if starts else 0
