"""Written rows with each row's count in every size: ``Row 2: … (67 (67, 79, 85) sts)``."""

import re
from collections.abc import Sequence
from functools import lru_cache

from logbook.craft.rows.proof import prove
from logbook.craft.rows.report import Linear, Proof, RowCount
from logbook.craft.words.printed_sizes import alike
from logbook.craft.words.terms import Terms

_PRINTED = re.compile(r"\s*[(\[]\s*\d(?:[^()\[\]]|\([^()]*\))*[)\]][\s.]*\Z")
"""A count that the text prints at a row's end: what belongs into one place is never the last thing of a row."""


def rows_in_sizes(text: str, terms: Terms | None, base_stitches: Sequence[int]) -> tuple[str, ...]:
    """The lines of ``text``, the count of each row behind it, in sizes of so many base stitches (edge stitches not among them).

    With S base stitches the starting chain that the rows speak of is C = S + their extra chains, and k = (C − chain constant)
    / multiple. Counts that stand there already give way. Nothing where the rows are not proven or do not fit in every size: the
    page of the pattern says what is wrong with them.
    """
    proof = _proven(text, terms)
    repeats = _repeats(proof, base_stitches)
    if repeats is None:
        return ()
    ends: dict[int, list[RowCount]] = {}
    for row in proof.rows:
        ends.setdefault(row.span.end, []).append(row)
    written, at = "", 0
    for end, rows in sorted(ends.items()):
        start = rows[0].span.start
        named = text[max(text.rfind("\n", 0, start), text.rfind("/", 0, start)) + 1 : start].strip()
        written += text[at:start] + ("" if named else f"{rows[0].name}: ")
        written += f"{_PRINTED.sub('', text[start:end])} ({_counted(rows, repeats)})"
        at = end
    return tuple(line.strip() for line in (written + text[at:]).splitlines() if line.strip())


@lru_cache(maxsize=8)
def _proven(text: str, terms: Terms | None) -> Proof:
    """Kept, since the sizes change with every key and the rows seldom."""
    return prove(text, terms, suggest=False)


def _repeats(proof: Proof, base_stitches: Sequence[int]) -> list[int] | None:
    if not proof.proven or not proof.multiple or proof.chain_constant is None or proof.smallest is None:
        return None
    chains = [stitches + (proof.extra_chains or 0) for stitches in base_stitches]
    if any(chain < proof.smallest or (chain - proof.chain_constant) % proof.multiple for chain in chains):
        return None
    return [(chain - proof.chain_constant) // proof.multiple for chain in chains]


def _counted(rows: Sequence[RowCount], repeats: Sequence[int]) -> str:
    """One text may stand for several rows (``Row 3: as row 2``): if they come to different counts, each is named."""
    counts = {row.name: _count(row, repeats) for row in rows}
    if len(set(counts.values())) == 1:
        return counts[rows[0].name]
    return "; ".join(f"{name}: {count}" for name, count in counts.items())


def _count(row: RowCount, repeats: Sequence[int]) -> str:
    stitches = _in_sizes(row.stitches, repeats, "st")
    return f"{stitches}, {_in_sizes(row.spaces, repeats, 'sp')}" if any(row.spaces.at(k) for k in repeats) else stitches


def _in_sizes(linear: Linear, repeats: Sequence[int], one: str) -> str:
    counts = [linear.at(k) for k in repeats]
    return f"{alike(counts)} {one if set(counts) == {1} else one + 's'}"
