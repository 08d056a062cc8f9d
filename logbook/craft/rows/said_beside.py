"""What is said in a row beside its work: what its chains count as, how many it makes, what a stitch is called, why."""

from dataclasses import replace

from logbook.craft.rows.asides import counts_in_brackets, is_remark, name_made, printed_counts
from logbook.craft.rows.beside import Beside, begins_work
from logbook.craft.rows.chain_sayings import SaidToCount, counted_by_parts, one_stitch, said_to_count
from logbook.craft.rows.cursor import BREAKS, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import Chain, Instruction, Made, Span, Work
from logbook.craft.rows.own_stitches import OwnStitches
from logbook.craft.rows.place_kinds import ONE_STITCH_NAMES
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.star_repeats import STARS
from logbook.craft.rows.stitch_groups import StitchGroups
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.word import NUMBER, STITCH, TOGETHER

LONGEST_SAYING = 30  # words in "beg ch-3 counts as dc and ch 1 throughout"
_LEADS_TO_SAYING = ("which", "this", "that", "it", "to", "will", "be", "is", "are", "being")
"""Words between chains and what they count as: ``ch 3, which is to count as``."""
_PARTS = ("side", "sides", "edge", "corner", "section", "sections", "petal", "rep", "point", "wedge")
"""What stitches are told of: ``3 dc each side``."""


class SaidBeside:
    """Takes sayings into ``row``. ``own``: the stitches that the pattern itself describes, or names."""

    def __init__(self, own: OwnStitches, row: RowWords, targets: Targets, groups: StitchGroups, beside: Beside) -> None:
        self._made, self._row, self._targets, self._groups, self._beside = own.made, row, targets, groups, beside

    def starred_count(self, cur: Cursor) -> bool:
        """Takes ``*20 sc*`` at the row's end."""
        inside = cur.inside(cur.at + 1, len(cur.words))
        inside.skip_to(STARS)
        close = cur.at + 1 + inside.at
        if not cur.sort_is(NUMBER, 1) or not any(word.text in STARS for word in cur.words[close:]):
            return False
        if any(word.text not in (".", "turn") for word in cur.words[close + 1 :]):
            return False
        counts = printed_counts(cur.inside(cur.at + 1, close), self._targets)
        if counts:
            self._row.counts, cur.at = counts, close + 1
        return bool(counts)

    def aside(self, inside: Cursor, items: list[Instruction], repeats: bool) -> bool:
        """Takes what stands in brackets beside the work; False if it is work."""
        return (
            self._skipped_are_space(inside)
            or self._chains_said(inside, items)
            or self._told_of_each_part(inside)
            or self._counted(inside, repeats)
            or self._same_place(inside)
            or (not repeats and self._says_beside(inside))
            or (not repeats and self._counted_behind_remark(inside))
            or self._named(inside, items)
            or self._leaves(inside)
            or (not repeats and self._place_explained(inside))
            or self._remark(inside, items)
            or (not repeats and self._in_other_words(inside))
        )

    def _chains_said(self, inside: Cursor, items: list[Instruction]) -> bool:
        """``counts as dc``, ``first dc and ch 1``: what the chains before it are."""
        said = said_to_count(inside)
        if said is None and items and isinstance(items[-1], Chain) and only_moves(items[:-1]):
            said = counted_by_parts(inside, items[-1].count) or one_stitch(inside, items[-1].count)
        if said is not None:
            self._note(said, items)
        return said is not None

    def _told_of_each_part(self, inside: Cursor) -> bool:
        """``3 dc each side``."""
        told = (
            inside.sort_is(NUMBER)
            and {"each", "per"} & {word.text for word in inside.words[2:-1]}
            and inside.words[-1].text in _PARTS
        )
        return bool(told) and self._set_aside(inside)

    def _counted(self, inside: Cursor, repeats: bool) -> bool:
        """``25 sc, 1 ch-5 sp for thumb``."""
        counts = counts_in_brackets(inside, self._targets) if not repeats else printed_counts(inside, self._targets)
        if counts:
            self._row.counts = counts
        return bool(counts)

    def _same_place(self, inside: Cursor) -> bool:
        """``same ch as first sc``."""
        same = inside.next_is("same") and len(inside.words) > 2 and not any(word.sort == NUMBER for word in inside.words)
        return same and self._set_aside(inside)

    def _says_beside(self, inside: Cursor) -> bool:
        """``mark the 4th``."""
        return self._beside.says_beside(inside) and self._set_aside(inside)

    def _counted_behind_remark(self, inside: Cursor) -> bool:
        """``1 st decreased - 19 sts``."""
        last = _last_part(inside)
        counts = printed_counts(last, self._targets) if last is not None else ()
        if counts:
            self._row.counts = counts
        return bool(counts)

    def _named(self, inside: Cursor, items: list[Instruction]) -> bool:
        """``V-st made``."""
        name = name_made(inside, lambda text: not text.isdigit() and text not in ONE_STITCH_NAMES)
        if not (name and items and isinstance(items[-1], Work)):
            return False
        self._name(name, items)
        return True

    def _leaves(self, inside: Cursor) -> bool:
        """``leave remaining sts unworked``."""
        inside.at = 0
        return (self._beside.leaves(inside) or self._beside.rest_is_left(inside)) and all(
            word.text == "." for word in inside.words[inside.at :]
        )

    def _place_explained(self, inside: Cursor) -> bool:
        """``center dc of shell`` behind ``sc in next dc``."""
        inside.at = 0
        placed = len(inside.words) > 1 and inside.words[0].sort != NUMBER
        placed = placed and self._targets.places.wanted(inside) is not None and not inside.more()
        return placed and self._set_aside(inside)

    def _remark(self, inside: Cursor, items: list[Instruction]) -> bool:
        """``right side``, ``inc row``, ``= dc2tog``, ``this is the front``."""
        inside.at = 0
        names_row = not items and {word.text for word in inside.words} <= {"inc", "dec", "row", "around", "first", "shoulder"}
        together = len(inside.words) == 2 and inside.words[0].text == "=" and inside.words[1].sort == TOGETHER
        states = any(word.text in ("is", "are") for word in inside.words) and not any(word.text == "in" for word in inside.words)
        if not (is_remark(inside) or names_row or together or states):
            return False
        self._row.notes.append(inside.span_from(inside.at) if not inside.more() else _all_of(inside))
        self._row.unsure += self._row.notes[-1:] if states or any(word.sort == NUMBER for word in inside.words) else []
        return True

    def _in_other_words(self, inside: Cursor) -> bool:
        """``or skip 1 and sc 1``: the same again."""
        says = inside.next_is("or", "ie", "i", "so", "because", "not") or (
            inside.next_is("one", "same", "this") and inside.next_is("that", "which", "same", "with", ahead=1)
        )
        if says:
            self._row.unsure.append(_all_of(inside))
        return says and self._set_aside(inside)

    def _set_aside(self, inside: Cursor) -> bool:
        """Keeps all of it as a note."""
        self._row.notes.append(_all_of(inside))
        return True

    def why(self, cur: Cursor) -> bool:
        """Steps over ``for the tip``, ``to even things out``: words of why, with nothing to make."""
        start = cur.at
        cur.skip_clause("turn", "noturn")
        clause = cur.words[start : cur.at]
        if len(clause) < 2 or any(
            word.sort in (NUMBER, STITCH, TOGETHER) or word.text in ("st", "ch", "sp", "slst", "sk") for word in clause
        ):
            cur.at = start
            return False
        self._row.notes.append(cur.span_from(start))
        self._row.unsure.append(cur.span_from(start))
        return True

    def chain_said(self, cur: Cursor, items: list[Instruction]) -> Chain | None:
        """``Ch 3 counts as dc, dc in next …`` at the row's beginning, where the chains are made and spoken of at once."""
        start = cur.at
        chain = self._groups.chain(cur) if only_moves(items) else None
        if chain is not None and cur.next_is(",") and cur.next_is(*_LEADS_TO_SAYING, "counts", ahead=1):
            return chain  # what follows the comma is read with these chains before it
        led = cur.at
        while chain is not None and cur.accept(*_LEADS_TO_SAYING):
            pass
        if chain is None or not cur.next_is("counts", "not", "=") or (led < cur.at and cur.next_is("not", "=")):
            cur.at = start
            return None
        if led < cur.at:
            cur.at = led
            if self.says_what_counts(cur, [chain]):
                return chain
            cur.at = start
            return None
        cur.at = start
        said = dict(self._row.said)
        if not self.says_what_counts(cur, items):
            return None
        after = cur.inside(cur.at, len(cur.words))
        while after.accept(*BREAKS, "turn", "and"):
            pass
        if self._groups.chain(after) is not None:
            cur.at, self._row.said = start, said
            return None  # a sentence before the row's own chains
        self._row.said = {**said, chain.span.start: next(reversed(self._row.said.values()))}
        return chain

    def says_what_counts(self, cur: Cursor, items: list[Instruction]) -> bool:
        """Takes ``which counts as dc and ch 1 throughout``; False if that is not said here."""
        start = cur.at
        if cur.next_is("sk"):
            return False
        if self._skipped_are_space(cur):
            return True
        if items and isinstance(items[-1], Chain):
            cur.accept("-")
            while cur.accept(*_LEADS_TO_SAYING):
                pass
        begin = end = cur.at
        ends = []
        while end < min(len(cur.words), begin + LONGEST_SAYING) and cur.words[end].text not in (";", ".", "(", ")"):
            ahead = end + 1 - cur.at
            breaks = cur.words[end].text in (",", "-", ":")
            works = (breaks or cur.words[end].text == "and") and (
                (begins_work(cur, ahead) and "ch" not in (cur.word(ahead).text, cur.word(ahead + 1).text))
                or cur.next_is("sk", *STARS, "turn", ahead=ahead)
            )
            if works:
                break
            if breaks:
                ends.append(end)
            end += 1
        for stop in (end, *reversed(ends)):
            said = _said(cur.inside(begin, stop))
            if said is not None:
                self._note(said, items)
                cur.at = stop
                return True
        cur.at = start
        return False

    def _skipped_are_space(self, cur: Cursor) -> bool:
        """Steps over ``the skipped chs are the ch-3 sp`` of a block, which they are anyhow."""
        start = cur.at
        cur.number()
        if cur.accept("skipped") and (cur.number(), cur.accept("ch"))[1] and cur.accept("are", "counts", "is", "made"):
            cur.accept("as", "for")
            wanted = self._targets.places.wanted(cur)
            if wanted is not None and wanted.kind == "sp":
                self._row.notes.append(cur.span_from(start))
                return True
        cur.at = start
        return False

    def _note(self, said: SaidToCount, items: list[Instruction]) -> None:
        beside = items[-1].span.start if items else -1
        self._row.said[beside] = said

    def _name(self, name: str, items: list[Instruction]) -> None:
        work = items[-1]
        if isinstance(work, Work):
            self._made.setdefault(name, Made(work.made.items, name))
            items[-1] = replace(work, made=Made(work.made.items, name))


def only_moves(items: list[Instruction]) -> bool:
    """Whether the row has done nothing yet but go to where it begins."""
    return all(isinstance(item, Work) and item.made.items == ("sl st",) for item in items)


def _said(cur: Cursor) -> SaidToCount | None:
    try:
        return said_to_count(cur)
    except NotUnderstoodError:
        return None


def _last_part(cur: Cursor) -> Cursor | None:
    """``19 sts`` of ``1 st decreased - 19 sts``: what stands behind the last dash or break, if only a remark stands before."""
    at = next((at for at in range(len(cur.words) - 1, 0, -1) if cur.words[at].text in ("-", ",", ";", ":", "=", ".")), 0)
    if not at or at + 1 == len(cur.words) or not is_remark(cur.inside(0, at)):
        return None
    return cur.inside(at + 1, len(cur.words))


def _all_of(cur: Cursor) -> Span:
    return Span(cur.words[0].start, cur.words[-1].end) if cur.words else Span(0, 0)
