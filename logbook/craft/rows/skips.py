"""What a row passes over: ``sk next 2 dc and ch-1 sp``, ``sk (dc, ch 1, dc)``."""

from logbook.craft.rows.cursor import BREAKS, Cursor
from logbook.craft.rows.instructions import Instruction, Skip, Wanted
from logbook.craft.rows.place_kinds import ONE_STITCH_NAMES, replace_whole
from logbook.craft.rows.stitch_groups import StitchGroups
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.word import NUMBER, STITCH, TOGETHER


class Skips:
    """Reads what is skipped."""

    def __init__(self, targets: Targets, groups: StitchGroups) -> None:
        self.targets = targets
        self.groups = groups

    def skip(self, cur: Cursor, start: int) -> list[Instruction]:
        """What follows "skip", which stands at ``start``."""
        found: list[Instruction] = []
        while True:
            first = cur.accept("first") and not found
            cur.accept("next", "last")
            if cur.next_is("(", "[") and (close := cur.closing()) is not None:
                found += self._all_of(cur, close, first)
                return found
            count = None if self.targets.places.names_a_size(cur) else cur.number()
            if count is None and cur.accept("tch", "begch"):
                return [*found, Skip(Wanted("tch"), 1, cur.span_from(start))]
            wanted = replace_whole(self.targets.places.wanted_or_any(cur))
            if cur.next_is("fromhook"):
                cur.at += 1
            first = self.targets.at_base(cur) or self._where_it_stands(cur) or first
            if found == [] and cur.accept("behind"):
                cur.skip_clause("turn")
                return []  # "sk the sc behind FPdc": the stitch that it stands in front of, which it took
            if cur.accept("between"):
                return []  # "missing the dc between", said beside what is worked into
            found.append(Skip(wanted, count or 1, cur.span_from(start), first))
            start = cur.at + 1
            if cur.next_is(",") and cur.next_is("next", ahead=1) and not self._worked_into(cur):
                cur.at += 1
                continue  # "sk next ch-1 sp, next 18 dc and next ch-1 sp"
            if not (cur.next_is("and") and (cur.next_is("next", "first", "ch", ahead=1) or self._skips_on(cur))):
                return found
            cur.at += 1
            cur.accept("sk")

    @staticmethod
    def _where_it_stands(cur: Cursor) -> bool:
        """Steps over ``below``, ``under the ch-3``, ``closest to hook``, ``the chain comes out of``: the row's first stitch."""
        start = cur.at
        if cur.next_is("with") and cur.next_is("ch", "tch", "begch", ahead=1):
            cur.at += 2
            cur.accept("-")
            cur.number()
            return True
        if cur.next_is("under", "below", "beneath", "closest", "nearest") or (
            cur.next_is("ch") and cur.next_is("comes", "stands", ahead=1)
        ):
            cur.skip_clause("turn")
            if not any(word.sort in (STITCH, TOGETHER) for word in cur.words[start : cur.at]):
                return True
        cur.at = start
        return False

    def _all_of(self, cur: Cursor, close: int, first: bool) -> list[Instruction]:
        """``sk (dc, ch 1, dc)``: each of them."""
        start = cur.at
        made = self.groups.made(cur.inside(cur.at + 1, close))
        if made is None:
            raise cur.fail()
        cur.at = close + 1
        span = cur.span_from(start)
        return [Skip(Wanted(kind), 1, span, first and index == 0) for index, kind in enumerate(made.items)]

    @staticmethod
    def _worked_into(cur: Cursor) -> bool:
        """Whether the clause behind the comma makes something."""
        rest = cur.inside(cur.at + 1, len(cur.words))
        rest.skip_to(BREAKS)
        return any(word.text in ("in", "tog", "together", "over") for word in rest.words[: rest.at])

    def _skips_on(self, cur: Cursor) -> bool:
        """Whether ``and dc`` names one more that is skipped, and no stitch that is made."""
        ahead = 2 if cur.sort_is(NUMBER, 1) else 1
        if ahead == 2 and cur.next_is("-", ahead=2) and cur.next_is("ch", ahead=3) and cur.next_is("sp", ahead=4):
            ahead = 4  # "and 1-ch sp"
        if cur.next_is("sk", ahead=1):
            return False
        named = cur.word(ahead).sort in (STITCH, TOGETHER) or cur.next_is("st", "ch", "sp", *ONE_STITCH_NAMES, ahead=ahead)
        after = cur.word(ahead + 1)
        return named and after.text in ("", ",", ";", ".", ")", "]", "and")
