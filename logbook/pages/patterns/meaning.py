"""What a stitch pattern means: the chains for 1 to 12 repeats, and the rows for as many groups."""

from collections.abc import Mapping
from dataclasses import dataclass

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.counting import counted

MOST = 12
CHAIN_KEYS = ("sentence", "multiple", "plus", "extra_chains", "first_stitch", "skip_cover", "half_plus")
ROW_KEYS = ("set_up_rows", "rows_in_repeat", "closing_rows")


@dataclass(frozen=True, slots=True)
class ChainLine:
    """Repeats as shown (``1``, ``1½``), base stitches and starting chain worked flat, and the chain joined into a ring.

    Half repeats have no ring: it takes whole ones.
    """

    repeats: str
    stitches: int
    chain: int
    ring: int | None


@dataclass(frozen=True, slots=True)
class Meaning:
    """``chain_rule`` and ``row_rule`` are short and to be shown large, ``—`` while something is missing or wrong.

    The notes then say what; the lines and the rows are empty then, so that nothing stale is shown.
    ``is_plain``: a repeat is a stitch.
    """

    chain_rule: str
    chain_notes: tuple[str, ...]
    chains: tuple[ChainLine, ...]
    row_rule: str
    row_notes: tuple[str, ...]
    is_plain: bool = False


def meaning_of(pattern: StitchPattern, problems: Mapping[str, str]) -> Meaning:
    """What ``pattern`` means, where ``problems`` (by field) leave it to be said."""
    chain_rule, chain_notes, chains = _chains(pattern, problems)
    row_rule, row_notes = _rows(pattern, problems)
    return Meaning(chain_rule, chain_notes, chains, row_rule, row_notes, pattern.multiple == 1)


def _chains(pattern: StitchPattern, problems: Mapping[str, str]) -> tuple[str, tuple[str, ...], tuple[ChainLine, ...]]:
    if any(key in problems for key in CHAIN_KEYS):
        return "—", ("Correct the marked field to see the chains.",), ()
    if pattern.multiple is None:
        return "—", ("Type the multiple to see the chains.",), ()
    extra = pattern.extra()
    if extra is None and pattern.first_stitch is not None:
        return "—", ("Type what the chains skipped before the first stitch count as: a stitch, or nothing.",), ()
    rule = _chain_rule(pattern.multiple, pattern.plus or 0, extra or 0)
    notes = []
    if pattern.plus is None:
        notes.append("No plus is given: 0 is used.")
    if extra is None:
        notes.append("No extra chains are given: none are used. They give the first stitch its height.")
    notes.append("With foundation stitches, work as many as the base stitches.")
    ring = "In the round, join the chain into a ring: whole repeats, without the plus."
    notes.append(ring if not extra else f"{ring} If row 1 is worked flat and then joined, chain {extra} more.")
    return rule, tuple(notes), tuple(_lines(pattern, pattern.multiple, extra or 0))


def _chain_rule(multiple: int, plus: int, extra: int) -> str:
    if multiple == 1:
        more = f"{extra} more than" if extra else "as many as"
        return f"Chain {more} the stitches you want"
    return f"Chain a multiple of {multiple}" + (f" plus {plus + extra}" if plus + extra else "")


def _lines(pattern: StitchPattern, multiple: int, extra: int) -> list[ChainLine]:
    lines = []
    for repeats in range(1, MOST + 1):
        stitches = multiple * repeats + (pattern.plus or 0)
        lines.append(ChainLine(str(repeats), stitches, stitches + extra, multiple * repeats))
        if pattern.half_plus is not None and repeats < MOST:
            half = multiple * repeats + multiple // 2 + pattern.half_plus
            lines.append(ChainLine(f"{repeats}½", half, half + extra, None))
    return lines


def _rows(pattern: StitchPattern, problems: Mapping[str, str]) -> tuple[str, tuple[str, ...]]:
    if any(key in problems for key in ROW_KEYS):
        return "—", ("Correct the marked field to see the rows.",)
    if pattern.rows_in_repeat is None:
        return "—", ("Type the rows in a repeat to see the rows.",)
    each, once = pattern.rows_in_repeat, (pattern.set_up_rows or 0) + (pattern.closing_rows or 0)
    rule = f"A multiple of {counted(each, 'row')}" + (f" plus {once}" if once else "")
    if each == 1:
        rule = f"Any number of rows, {once + 1} or more" if once else "Any number of rows"
    parts = [counted(pattern.set_up_rows, "set-up row")] if pattern.set_up_rows else []
    parts.append(f"{counted(each, 'row')} repeated")
    parts += [counted(pattern.closing_rows, "closing row")] if pattern.closing_rows else []
    counts = ", ".join(str(once + each * group) for group in range(1, MOST + 1))
    how = f"{', then '.join(parts)}."
    return rule, (how[0].upper() + how[1:], f"After 1 to {MOST} repeats: {counts} rows.")
