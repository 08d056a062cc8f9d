"""One pattern in all sizes: each size is laid by itself, and what is wrong in some of them says in which."""

from collections.abc import Sequence
from dataclasses import replace

from logbook.craft.rows.instructions import PrintedCount, WrittenPattern
from logbook.craft.rows.report import Proof, RowProblem


def of_size(pattern: WrittenPattern, size: int) -> WrittenPattern:
    """The pattern with its counts and its starting chain of that size alone."""

    def alone(count: PrintedCount) -> PrintedCount:
        return replace(count, numbers=count.numbers[size : size + 1]) if len(count.numbers) == pattern.sizes else count

    rows = tuple(replace(row, counts=tuple(map(alone, row.counts))) for row in pattern.rows)
    chain = None if pattern.chain_sizes is None else alone(pattern.chain_sizes)
    return replace(pattern, rows=rows, chain_sizes=chain)


def in_all_sizes(proofs: Sequence[Proof]) -> Proof:
    """The first size's proof with the problems and remarks of all; those that not every size has name theirs."""
    return replace(
        proofs[0],
        problems=_gathered([proof.problems for proof in proofs]),
        remarks=_gathered([proof.remarks for proof in proofs]),
        sizes=tuple(proofs),
    )


def _gathered(by_size: Sequence[Sequence[RowProblem]]) -> tuple[RowProblem, ...]:
    found: dict[tuple[object, ...], list[tuple[int, RowProblem]]] = {}
    for size, problems in enumerate(by_size, 1):
        for problem in problems:
            found.setdefault((problem.row, problem.span, problem.kind), []).append((size, problem))
    gathered = []
    for having in found.values():
        problem = having[0][1]
        if len(having) < len(by_size) or len({each.says for _, each in having}) > 1:
            which = ", ".join(str(size) for size, _ in having)
            problem = replace(problem, says=f"Size {which} of {len(by_size)}: {problem.says}")
        gathered.append(problem)
    return tuple(sorted(gathered, key=lambda problem: problem.span.start))
