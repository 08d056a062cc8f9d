"""Where a row says that it begins: ``start with a magic ring``, ``starting in 2nd ch from hook``."""

from contextlib import suppress

from logbook.craft.rows.cursor import BREAKS, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import First, Next, Same, Skip, Wanted
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.words import NUMBER, ORDINAL


class Beginnings:
    """Reads such phrases."""

    def __init__(self, row: RowWords, targets: Targets) -> None:
        self.row = row
        self.targets = targets

    @staticmethod
    def at_ring(cur: Cursor) -> bool:
        """Steps over ``start with a magic ring``."""
        start = cur.at
        cur.at += 1
        if cur.accept("with", "in", "by") and cur.accept("ring") and cur.next_is(*BREAKS, ""):
            return True
        cur.at = start
        return False

    @staticmethod
    def at_hook(cur: Cursor) -> Skip | None:
        """``starting in 2nd ch from hook``: the chains before it are skipped; None if it is something else."""
        start = cur.at
        if cur.accept("starting", "beginning", "begin", "start"):
            cur.accept("with", "in", "at")
            which = cur.ordinal()
            if which is not None and cur.accept("ch") and cur.accept("fromhook") and which > 1:
                return Skip(Wanted("ch"), which - 1, cur.span_from(start))
        cur.at = start
        return None

    def where_begun(self, cur: Cursor) -> bool:
        """Steps over ``starting in same st as join``: where the row begins anyhow."""
        start = cur.at
        cur.at += 1
        if cur.accept("in", "with", "at"):
            cur.accept("joining", "join")
            where: object = None
            if cur.sort_is(ORDINAL):
                cur.at += 1
                where = First(self.targets.places.wanted_or_any(cur))
                if cur.next_is("fromhook"):
                    where = None
            else:
                with suppress(NotUnderstoodError):
                    where = self.targets.target(cur)
            while cur.accept("as", "join", "joining", "slst", "at", "baseof", "ch", "-") or (
                cur.sort_is(NUMBER) and cur.next_is("-", ahead=-1)
            ):
                cur.at += 1 if cur.sort_is(NUMBER) else 0
            if isinstance(where, Same | First) or (isinstance(where, Next) and where.count == 1):
                self.row.notes.append(cur.span_from(start))
                return True
        cur.at = start
        return False
