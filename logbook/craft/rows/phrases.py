"""One row's words into instructions. What is not understood is named with its place; nothing is guessed."""

from dataclasses import replace

from logbook.craft.rows.asides import SaidToCount, is_remark, name_made, printed_counts, said_to_count
from logbook.craft.rows.beside import Beside, joined_to
from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor, NotUnderstoodError
from logbook.craft.rows.doings import Doings
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    Chain,
    Instruction,
    Made,
    Next,
    OtherSide,
    Repeat,
    Ring,
    Span,
    ToEnd,
    Work,
    works_of,
)
from logbook.craft.rows.kinds import with_kind
from logbook.craft.rows.own_stitches import OwnStitches
from logbook.craft.rows.place_kinds import ONE_STITCH_NAMES
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.skips import Skips
from logbook.craft.rows.star_repeats import STARS, StarRepeats
from logbook.craft.rows.stitches import Stitches
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.words import NUMBER

LONGEST_SAYING = 30  # words in "beg ch-3 counts as dc and ch 1 throughout"
DEEPEST = 40  # brackets in brackets


class Phrases:
    """Reads the phrases of one row. ``own``: the stitches that the pattern itself describes."""

    def __init__(self, own: OwnStitches, in_round: bool) -> None:
        self.own = own
        self.row = RowWords()
        self.targets = Targets(own.made)
        self.in_round = in_round
        self.stitches = Stitches(own.made, self.targets)
        self.skips = Skips(self.targets, self.stitches)
        self.beside = Beside(self.row, self.targets)
        self.doings = Doings(own, self.row, self.targets, self.stitches)
        self.stars = StarRepeats(self.targets, self._phrase, self.sequence)
        self._into_ring = False  # what says no place goes into the ring

    def read(self, cur: Cursor, kind_below: str) -> RowWords:
        """All of it. ``kind_below``: the stitch that an increase is of, if this row names none."""
        if _depth(cur) > DEEPEST:
            self.row.faults.append(("brackets stand in brackets too deep", cur.span_from(0) if cur.words else Span(0, 0)))
            return self.row
        self.row.items = with_kind(self.sequence(cur, self.row.items), kind_below)
        if any("tss" in work.made.items for work in works_of(self.row.items)):
            self.row.counts = tuple(
                replace(count, wanted=ANY_STITCH) if count.wanted.kind == "sp" else count for count in self.row.counts
            )  # loops on the hook
        if self._into_ring:
            self.row.items = [self._in_the_ring(item) for item in self.row.items]
        return self.row

    def _in_the_ring(self, item: Instruction) -> Instruction:
        if isinstance(item, Repeat):
            return replace(item, body=tuple(map(self._in_the_ring, item.body)))
        if isinstance(item, Work) and isinstance(item.into, Next) and item.span.start in self.stitches.unplaced:
            return replace(item, made=Made(item.made.items * item.into.count, item.made.name), into=Ring())
        return item

    def sequence(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        """Phrase after phrase up to the last word, onto ``items``."""
        stars: dict[str, int] = {}
        opened: dict[str, Span] = {}
        while cur.more():
            if cur.accept(*BREAKS, "and", "-") or self._none_in_this_size(cur):
                continue
            start = cur.at
            try:
                if cur.word().text in STARS and cur.word().text != "**" and cur.word().text in stars:
                    self.stars.close(cur, items, stars)
                elif cur.word().text in STARS:
                    stars[cur.word().text] = len(items)
                    opened[cur.word().text] = Span(cur.word().start, cur.word().end)
                    cur.at += 1
                elif cur.next_is("rep"):
                    self.stars.repeat(cur, items, stars)
                else:
                    items.extend(self._placed(self._phrase(cur, items), items))
            except NotUnderstoodError as error:
                cur.at = max(cur.at, start + 1)
                cur.skip_to(BREAKS)
                whole = cur.span_from(start)
                self.row.faults.append((error.says, error.span if error.says else whole))
        unused = [opened[star] for star in stars if star != "**"]
        self.row.faults += [("no “rep from” goes back to it", span) for span in unused]
        return items

    @staticmethod
    def _none_in_this_size(cur: Cursor) -> bool:
        """Steps over ``sc in next 0 (1, 2) sts`` where it is none."""
        rest = cur.inside(cur.at, len(cur.words))
        rest.skip_to(BREAKS)
        depth = 0
        for word in cur.words[cur.at : cur.at + rest.at]:
            depth += (word.text in CLOSING) - (word.text in CLOSING.values())
            if not depth and word.sizes and not word.value and not cur.next_is("rep"):
                cur.at += rest.at
                return True
        return False

    def _placed(self, new: list[Instruction], items: list[Instruction]) -> list[Instruction]:
        """Refuses ``dc, ch 1, dc in next st``, which could mean one place or two."""
        if len(items) > 1 and new and isinstance(new[0], Work) and new[0].span.start not in self.stitches.unplaced:
            before = items[-2]
            if isinstance(items[-1], Chain) and isinstance(before, Work) and before.span.start in self.stitches.unplaced:
                span = Span(before.span.start, new[0].span.end)
                raise NotUnderstoodError(span, "put what goes into one place in brackets, or say where each stitch goes")
        return new

    def _bracket(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        start, close = cur.at, cur.closing()
        if close is None:
            raise NotUnderstoodError(Span(cur.word().start, cur.words[-1].end), "this bracket is never closed")
        inside = cur.inside(cur.at + 1, close)
        cur.at = close + 1
        made = self.stitches.made(cur.inside(start + 1, close))
        if cur.sort_is(NUMBER) and cur.next_is("more", ahead=1):
            cur.skip_to(BREAKS)
            raise NotUnderstoodError(cur.span_from(start), "say how often in all")
        times = self.targets.times(cur)
        if made is None and cur.next_is("in") and inside.accept("slst") and inside.accept(","):
            return self.doings.led_to(cur, inside, start)
        if made is not None and (cur.next_is("in") or (cur.next_is("each") and cur.next_is("in", ahead=1))):
            repeated = Made(made.items * (times.count if times else 1), made.name)
            return self.stitches.work(cur, repeated, start)
        if made == Made(("picot",)):
            cur.accept("for")
            cur.accept("picot")
            return [Work(made, Next(ANY_STITCH, 0), cur.span_from(start))]
        if times is None and self._aside(inside, items, start):
            return []
        ahead = cur.at
        cur.accept(",", ";")
        until = times or (self.targets.until(cur) if not cur.accept("rep") else self.targets.until(cur) or ToEnd())
        if until is None:
            cur.at = ahead
            raise NotUnderstoodError(cur.span_from(start), "it is not said where this goes, or how often")
        body = self.sequence(inside, [])
        if not body:
            raise NotUnderstoodError(cur.span_from(start))
        return [Repeat(tuple(body), until, cur.span_from(start))]

    def _aside(self, inside: Cursor, items: list[Instruction], start: int) -> bool:
        """Takes what stands in brackets beside the work; False if it is work."""
        said = said_to_count(inside)
        if said is not None:
            self._note(said, items)
            return True
        counts = printed_counts(inside, self.targets)
        if counts:
            self.row.counts = counts
            return True
        name = name_made(inside, lambda text: not text.isdigit() and text not in ONE_STITCH_NAMES)
        if name and items and isinstance(items[-1], Work):
            self._name(name, items)
            return True
        if self.beside.leaves(inside) and not inside.more():
            return True
        inside.at = 0
        if is_remark(inside):
            self.row.notes.append(inside.span_from(inside.at) if not inside.more() else _all_of(inside))
            return True
        return False

    def _note(self, said: SaidToCount, items: list[Instruction]) -> None:
        beside = items[-1].span.start if items else -1
        self.row.said[beside] = said

    def _name(self, name: str, items: list[Instruction]) -> None:
        work = items[-1]
        if isinstance(work, Work):
            self.own.made.setdefault(name, Made(work.made.items, name))
            items[-1] = replace(work, made=Made(work.made.items, name))

    def _phrase(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        start = cur.at
        if cur.word().text in CLOSING:
            return self._bracket(cur, items)
        if cur.next_is("insert") and (pulled := self.doings.hook_inserted(cur)) is not None:
            return pulled
        if self._says_what_counts(cur, items) or self.beside.takes(cur, items):
            return []
        if cur.next_is("ring") and cur.next_is(*BREAKS, "", ahead=1) and not items:
            cur.at += 1  # "make a magic ring," before what goes into it
            return []
        if cur.accept("even", "straight"):
            return self.doings.even(cur, start)
        if cur.accept("otherside"):
            return [OtherSide(cur.span_from(start))]
        if cur.word().text in self.own.steps:
            return self.doings.steps(cur)
        if cur.next_is("fsc", "fhdc", "fdc") or (cur.sort_is(NUMBER) and cur.next_is("fsc", "fhdc", "fdc", ahead=1)):
            return self.doings.foundation(cur)
        if cur.accept("sk"):
            return self.skips.skip(cur, start)
        chain = self.stitches.chain(cur)
        if chain is not None:
            return [chain]
        if cur.next_is("in", "next", "each") and (placed := self._place_first(cur, items, start)) is not None:
            return placed
        cur.at = start
        if cur.accept("slst"):
            return self._slip_stitch(cur, items, start)
        return self.stitches.phrase(cur, start)

    def _place_first(self, cur: Cursor, items: list[Instruction], start: int) -> list[Instruction] | None:
        """``in first st work 2 sc``; ``… and in each ch across``, which goes on as before it; None if it is neither."""
        before = items[-1] if items else None
        goes_on = cur.next_is("and", ahead=-1) and isinstance(before, Work)
        if not cur.accept("in"):
            if not (goes_on and cur.next_is("next", "each")):
                return None
        elif cur.next_is(*BREAKS, "toend"):
            return []  # "in back loops only," alone: which loop is worked changes no place
        where = self.targets.target(cur)
        if goes_on and isinstance(before, Work):
            return self.stitches.works(cur, before.made, start, where)
        cur.accept(",")
        if isinstance(where, Ring) and not items:
            self._into_ring = True
            return []
        if cur.word().text in CLOSING and (close := cur.closing()) is not None:
            made = self.stitches.made(cur.inside(cur.at + 1, close))
            cur.at = close + 1
        else:
            made = self.stitches.made_once(cur)
        if made is None or cur.next_is("in", "next", "each", "times") or cur.sort_is(NUMBER):
            raise NotUnderstoodError(cur.span_from(start))
        return self.stitches.works(cur, made, start, where)

    def _says_what_counts(self, cur: Cursor, items: list[Instruction]) -> bool:
        end = cur.at
        while end < min(len(cur.words), cur.at + LONGEST_SAYING) and cur.words[end].text not in (";", ".", "(", ")"):
            end += 1
        said = said_to_count(cur.inside(cur.at, end))
        if said is None:
            return False
        self._note(said, items)
        cur.at = end
        return True

    def _slip_stitch(self, cur: Cursor, items: list[Instruction], start: int) -> list[Instruction]:
        """A slip stitch that joins the round makes nothing; one before the row's first chains only moves along."""
        worked = any(isinstance(item, Work | Repeat) for item in items)
        if len(items) > 1 and isinstance(items[-1], Chain) and self.stitches.closes_picot(cur):
            items.pop()
            return [Work(Made(("picot",)), Next(ANY_STITCH, 0), cur.span_from(start))]
        rest = cur.inside(cur.at, len(cur.words))
        rest.skip_to(BREAKS)
        clause = [word.text for word in cur.words[cur.at : cur.at + rest.at]]
        closes = self.in_round and clause[:2] and any(text in ("first", "begch", "topof", "tch") for text in clause[:5])
        if worked and ("join" in clause or closes or clause[:1] == ["to"]):
            self.row.joined_at = len(items)
            self.row.joins_to = joined_to(cur.words[cur.at : cur.at + rest.at])
            cur.at += rest.at
            return []
        if cur.next_is("toend") and (cur.next_is("first", "next", "last", ahead=1) or cur.sort_is(NUMBER, 1)):
            cur.at += 1  # "across next 4 sts"
        cur.accept("to")
        if not worked and cur.accept("next"):
            cur.at -= 1
        made = Made(("sl st",))
        if cur.next_is("in") or cur.next_is(*BREAKS, "and", ""):
            return self.stitches.work(cur, made, start)
        return self.stitches.works(cur, made, start, self.targets.target(cur))


def _depth(cur: Cursor) -> int:
    """How deep brackets stand in brackets."""
    deepest = depth = 0
    for word in cur.words:
        depth += (word.text in CLOSING) - (word.text in CLOSING.values())
        deepest = max(deepest, depth)
    return deepest


def _all_of(cur: Cursor) -> Span:
    return Span(cur.words[0].start, cur.words[-1].end) if cur.words else Span(0, 0)
