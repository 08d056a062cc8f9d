"""One row's words into instructions. What is not understood is named with its place; nothing is guessed."""

from dataclasses import replace

from logbook.craft.rows.all_around import all_of_them, all_of_these, behind_chains, says_again
from logbook.craft.rows.beginnings import Beginnings, from_nth
from logbook.craft.rows.beside import Beside
from logbook.craft.rows.brackets import Brackets, how_deep, unbracketed
from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor, NotUnderstoodError
from logbook.craft.rows.doings import Doings
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    NEW_YARN,
    First,
    Instruction,
    Next,
    OtherSide,
    Repeat,
    Skip,
    Span,
    ToLast,
    Work,
    works_of,
)
from logbook.craft.rows.kinds import with_kind
from logbook.craft.rows.leading_words import leads_in, words_before_work
from logbook.craft.rows.one_for_each import one_for_each
from logbook.craft.rows.only_says import only_says
from logbook.craft.rows.own_stitches import OwnStitches
from logbook.craft.rows.placing import Placing
from logbook.craft.rows.rests import onto_rest
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.said_beside import SaidBeside
from logbook.craft.rows.skips import Skips
from logbook.craft.rows.slip_stitches import SlipStitches
from logbook.craft.rows.star_repeats import STARS, StarRepeats
from logbook.craft.rows.stitches import Stitches
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.word import NUMBER

DEEPEST = 40  # brackets in brackets


class Phrases:
    """Reads the phrases of one row. ``own``: the stitches that the pattern itself describes."""

    def __init__(self, own: OwnStitches, in_round: bool) -> None:
        self.own = own
        self.row = RowWords()
        self.targets = Targets(own.made)
        self.in_round = in_round
        self.sized = False  # numbers stand in several sizes
        self.starts: Skip | None = None  # where row 1 is said to begin, which may be told behind its work
        self.stitches = Stitches(own.made, self.targets, own.placed)
        self.skips = Skips(self.targets, self.stitches.groups)
        self.beside = Beside(self.row, self.targets)
        self.said = SaidBeside(own, self.row, self.targets, self.stitches.groups, self.beside)
        self.doings = Doings(own, self.row, self.targets, self.stitches)
        self.placing = Placing(self.row, self.targets, self.stitches)
        self.slips = SlipStitches(self.row, self.targets, self.stitches, in_round)
        self.beginnings = Beginnings(self.row, self.targets)
        self.stars = StarRepeats(self.targets, self._phrase, self.sequence)
        self.brackets = Brackets(self.row, self.targets, self.stitches, self.said, self.doings, self.sequence)

    def read(self, cur: Cursor, kind_below: str, first: bool = False, ring: bool = False) -> RowWords:
        """All of it. ``kind_below``: the stitch that an increase is of, if this row names none. ``ring``: one was made before."""
        self.sized = any(word.sizes for word in cur.words)
        self.targets.in_round = self.in_round
        self.targets.loop_is_ring = first and (self.in_round or ring)
        self.doings.first_row = first
        self.targets.in_ring = any(word.text == "ring" for word in cur.words)
        cur = onto_rest(unbracketed(cur), self.row, self.in_round)
        if not first:
            cur = from_nth(cur)
        if how_deep(cur) > DEEPEST:
            self.row.faults.append(("too many brackets inside brackets", cur.span_from(0) if cur.words else Span(0, 0)))
            return self.row
        self.row.items = with_kind(self.sequence(cur, self.row.items), kind_below)
        if self.starts is not None and self.starts in self.row.items:
            self.row.items.remove(self.starts)
            self.row.items.insert(behind_chains(self.row.items) if self.starts.first else 0, self.starts)
        self._of_a_part()
        self._leaves_last()
        _first_is_next(self.row.items)
        if self.stitches.in_all is not None and not self.row.counts:
            self.row.counts = (self.stitches.in_all,)
        if any("tss" in work.made.items for work in works_of(self.row.items)):
            self.row.counts = tuple(
                replace(count, wanted=ANY_STITCH) if count.wanted.kind == "sp" else count for count in self.row.counts
            )  # loops on the hook
        if self.placing.into_ring:
            self.row.items = [self.placing.in_the_ring(item) for item in self.row.items]
        return self.row

    def _leaves_last(self) -> None:
        """``sl st in first 3 sts, … sc in each st to last 3 sts, turn`` leaves those as it left the first."""
        first, last = self.row.items[:1], self.row.items[-1:]
        slips = [item for item in first if isinstance(item, Work) and item.made.items == ("sl st",)]
        ends = [item.until for item in last if isinstance(item, Repeat) and isinstance(item.until, ToLast)]
        if self.row.turn_after and not self.row.leaves_rest and slips and ends:
            self.row.leaves_rest, self.row.leaves = True, ends[0].count

    def _of_a_part(self) -> None:
        """Leaves out a count that stands between the row's stitches: it is of those before it."""
        works = [work.span.start for work in works_of(self.row.items) if work.made.items != ("sl st",)]
        if self.row.counts and works and min(works) < self.row.counts[0].span.start < max(works):
            self.row.notes += [count.span for count in self.row.counts]
            self.row.counts = ()

    def sequence(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        """Phrase after phrase up to the last word, onto ``items``."""
        stars: dict[str, int] = {}
        opened: dict[str, Span] = {}
        while cur.more():
            start = cur.at
            if cur.accept(*BREAKS, "and", "but", "-", "/") or (self.sized and self._none_in_this_size(cur)):
                continue
            if says_again(cur, items) or leads_in(cur, self.row) or all_of_these(cur, items, start, self.stitches.freely):
                continue
            if cur.next_is("corner") and cur.next_is(":", "of", ahead=1):
                cur.at += 2
                continue
            try:
                if cur.word().text in STARS and items and self.said.starred_count(cur):
                    continue
                if cur.word().text in STARS and cur.word().text != "**" and cur.word().text in stars:
                    self.stars.close(cur, items, stars)
                elif cur.word().text in STARS:
                    stars[cur.word().text] = len(items)
                    opened[cur.word().text] = Span(cur.word().start, cur.word().end)
                    cur.at += 1
                elif cur.next_is("rep") and cur.next_is("(", "[", "{", ahead=1):
                    cur.at += 1
                    items.extend(self._phrase(cur, items))
                elif (ahead := self.brackets.told_before(cur)) is not None:
                    items.append(ahead)
                elif cur.next_is("rep"):
                    self.stars.repeat(cur, items, stars)
                elif not self._says_where_or_why(cur, items):
                    self._add_phrase(cur, items, start)
            except NotUnderstoodError as error:
                failed_at = cur.at
                if not error.says and only_says(cur, start, not _works(self.row.items)):
                    self.row.notes.append(cur.span_from(start))
                    self.row.unsure.append(cur.span_from(start))
                    continue
                cur.at = max(failed_at, start + 1)
                cur.skip_to(BREAKS)
                whole = cur.span_from(start)
                self.row.faults.append((error.says, error.span if error.says else whole))
        unused = [opened[star] for star in stars if star != "**"]
        self.row.faults += [("no “rep from” goes back to it", span) for span in unused]
        return items

    def _says_where_or_why(self, cur: Cursor, items: list[Instruction]) -> bool:
        """Takes where the row begins anyhow, or what a phrase is for."""
        begins = cur.next_is("starting", "beginning", "begin", "start", "beg", "missing")
        return (begins and self.beginnings.where_begun(cur)) or (cur.next_is("for", "to") and bool(items) and self.said.why(cur))

    def _add_phrase(self, cur: Cursor, items: list[Instruction], start: int) -> None:
        new = self.placing.placed(self._phrase(cur, items), items)
        new = all_of_them(items, new, self.stitches.freely)
        if not any(word.text == "next" for word in cur.words[start : cur.at]):
            new = self.placing.where_moved_to(new, items)
        if not one_for_each(items, new, cur.word(start - 1 - cur.at).text == "and"):
            items.extend(new)

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

    def _phrase(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        """One phrase behind ``items``: what stands in brackets, beside the work or before it, else what is worked."""
        start = cur.at
        self._tell_what_is_done(items)
        if cur.word().text in CLOSING:
            return self.brackets.bracket(cur, items)
        kinds = (
            *(self._yarn, self._said_beside, self._ring, self._even, self._behind_leading_words, self._beginning),
            self.placing.last_of_each,
        )
        for read in kinds:
            if (found := read(cur, items)) is not None:
                return found
        return self._worked(cur, items, start)

    def _tell_what_is_done(self, items: list[Instruction]) -> None:
        """Tells those that read places and stitches what the row has done so far."""
        works = [item for item in items if isinstance(item, Work)]
        self.targets.items = self.row.items
        self.targets.at_hook = self.doings.first_row and not _works(self.row.items)
        self.stitches.together.nothing_yet = (
            bool(works)
            and all(work.made.name == NEW_YARN for work in works)
            and not any(isinstance(item, Repeat) for item in items)
        )

    def _yarn(self, cur: Cursor, items: list[Instruction]) -> list[Instruction] | None:
        """``insert hook in next bar, yo``, ``join B with sl st in any corner``."""
        if cur.next_is("insert") and (pulled := self.doings.hook_inserted(cur)) is not None:
            return pulled
        return None if _works(items) else self.doings.yarn_joined(cur)

    def _said_beside(self, cur: Cursor, items: list[Instruction]) -> list[Instruction] | None:
        """``ch 3 counts as dc``, ``turn``: only the chains are work."""
        chain = self.said.chain_said(cur, items)
        if chain is not None:
            return [chain]
        return [] if self.said.says_what_counts(cur, items) or self.beside.takes(cur, items) else None

    def _ring(self, cur: Cursor, items: list[Instruction]) -> list[Instruction] | None:
        """``make a magic ring,`` before what goes into it, ``magic ring with 6 sc``."""
        if items:
            return None
        if cur.next_is("ring") and cur.next_is(*BREAKS, "and", "", ahead=1):
            cur.at += 1
            return []
        return self.doings.ring_of(cur) if self.doings.first_row else None

    def _even(self, cur: Cursor, items: list[Instruction]) -> list[Instruction] | None:
        """``work even in sc``, ``1 row of sc``."""
        start = cur.at
        told = cur.accept("even", "straight") or self.doings.row_of(cur, items)
        return self.doings.even(cur, start) if told else None

    def _behind_leading_words(self, cur: Cursor, items: list[Instruction]) -> list[Instruction] | None:
        """``ending with sc in last st``: the phrase behind such words."""
        leading = words_before_work(cur, items)
        cur.at += leading
        return self._phrase(cur, items) if leading else None

    def _beginning(self, cur: Cursor, items: list[Instruction]) -> list[Instruction] | None:
        """``beg ch of 3``, ``start with a magic ring``, ``starting in 2nd ch from hook``."""
        if not items and (chain := self.beginnings.turning_chain(cur)) is not None:
            return [chain]
        if self.beginnings.at_ring(cur):
            return []
        starts = self.beginnings.at_hook(cur)
        self.starts = starts or self.starts
        return [starts] if starts is not None else None

    def _worked(self, cur: Cursor, items: list[Instruction], start: int) -> list[Instruction]:
        """Stitches, chains and skips, and where they go."""
        if cur.accept("otherside"):
            return [OtherSide(cur.span_from(start))]
        if cur.word().text in self.own.steps:
            return self.doings.steps(cur)
        if cur.next_is("fsc", "fhdc", "fdc") or (cur.sort_is(NUMBER) and cur.next_is("fsc", "fhdc", "fdc", ahead=1)):
            return self.doings.foundation(cur)
        if cur.accept("sk"):
            return self.skips.skip(cur, start)
        if (together := self.stitches.together.in_words(cur, start)) is not None:
            return together
        chain = self.stitches.groups.chain(cur)
        if chain is not None:
            if cur.next_is("to") and cur.next_is("turn", ahead=1):
                cur.at += 2
            return [chain]
        if cur.next_is("in", "next", "each") and (placed := self.placing.place_first(cur, items, start)) is not None:
            return placed
        cur.at = start
        if cur.sort_is(NUMBER) and cur.word().value == 1 and cur.next_is("slst", ahead=1):
            cur.at += 1
        if cur.accept("slst"):
            return self.slips.slip_stitch(cur, items, start)
        return self.stitches.phrase(cur, start)


def _works(items: list[Instruction]) -> bool:
    return any(isinstance(item, Work | Repeat) for item in items)


def _first_is_next(items: list[Instruction]) -> None:
    """``[sc in first st, inc in next st] 6 times``: at a row's beginning the first stitch is the next one."""
    at = behind_chains(items)
    repeat = items[at] if at < len(items) else None
    if isinstance(repeat, Repeat) and isinstance(work := repeat.body[0], Work) and isinstance(work.into, First):
        items[at] = replace(repeat, body=(replace(work, into=Next(work.into.wanted)), *repeat.body[1:]))
