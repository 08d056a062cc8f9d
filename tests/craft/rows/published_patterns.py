"""The patterns in ``published``: written as patterns are published, with counts worked out by hand and an altered twin each.

A pattern begins with ``# its name``. ``fits: 6 2`` (multiple and chain constant, which may be larger than the multiple), ``fits: one 26`` (one width) or ``fits: none`` (no
starting chain); or ``chains: 60 66``, a starting chain for each size (0: none). ``counts``: stitches and after ``/`` spaces of
each row, in k = (chains − constant) / multiple, or one a size. ``twin``: the row that is named when ``old => new`` is changed (``/``
is a new line). Below ``--`` stands the text.
"""

import re
from pathlib import Path
from typing import NamedTuple

from logbook.craft.rows.proof import COUNT_CHAINS, prove
from logbook.craft.rows.report import Linear, Proof

FOLDER = Path(__file__).parent / "published"


class Published(NamedTuple):
    kind: str
    name: str
    fits: tuple[int, int] | int | None
    chains: tuple[int, ...]
    counts: dict[int, tuple[str, ...]]
    twin_row: int
    twin: str
    text: str

    @property
    def sized(self) -> bool:
        return bool(self.chains)


def published() -> list[Published]:
    """All of them, file by file."""
    return [
        _read(path.stem, block)
        for path in sorted(FOLDER.glob("*.txt"))
        for block in re.split(r"(?m)^# ", path.read_text("utf-8"))[1:]
    ]


def _read(kind: str, block: str) -> Published:
    head, text = block.split("\n--\n", 1)
    name, *lines = head.splitlines()
    said = dict(line.split(": ", 1) for line in lines)
    text = text.rstrip() + "\n"
    row, change = said["twin"].split(" | ", 1)
    old, new = (part.replace("/", "\n") if part.count("/") else part for part in change.split(" => "))
    assert old in text, f"{name}: {old!r} does not stand there"
    fits = said.get("fits", "none")
    return Published(
        kind,
        name,
        None if fits == "none" else int(fits[4:]) if fits.startswith("one ") else _least_constant(fits)[0],
        tuple(map(int, said.get("chains", "").split())),
        _counts(said["counts"], _least_constant(fits)[1]),
        int(row),
        text.replace(old, new, 1),
        text,
    )


def _least_constant(fits: str) -> tuple[tuple[int, int], int]:
    """``6 8`` → ((6, 2), 1): the constant less than the multiple, and by how many k are fewer then."""
    numbers = [int(number) for number in fits.split() if number.isdigit()]
    if len(numbers) != 2:
        return (0, 0), 0
    more, constant = divmod(numbers[1], numbers[0])
    return (numbers[0], constant), more


def _counts(written: str, fewer: int) -> dict[int, tuple[str, ...]]:
    found: dict[int, tuple[str, ...]] = {}
    for part in written.split("; "):
        rows, counts = part.split(": ")
        first, _, last = rows.partition("-")
        for row in range(int(first), int(last or first) + 1):
            found[row] = tuple(_written_for(count, fewer) for count in counts.split())
    return found


def _written_for(count: str, fewer: int) -> str:
    """``4k+3/k`` said for k that are so many fewer."""
    if not fewer or "k" not in count:
        return count
    several = [_linear(each) for each in count.split("/")]
    return "/".join(f"{each.per_repeat}k{each.constant - each.per_repeat * fewer:+}" for each in several)


def _linear(text: str) -> Linear:
    times, constant = re.fullmatch(r"(?:(\d*)k)?([+-]?\d+)?", text).groups()  # type: ignore[union-attr]
    return Linear((int(times) if times else 1) if "k" in text else 0, int(constant or 0))


def differences(pattern: Published, proof: Proof) -> list[str]:
    """Where ``proof`` says something else than the pattern's writer worked out; [] if all is as it should be."""
    if pattern.sized:
        return [
            each for at in range(len(pattern.chains)) for each in _of_size(pattern, proof.sizes[at] if proof.sizes else proof, at)
        ]
    found = []
    if proof.smallest is None:
        fits: object = None
    else:
        fits = proof.smallest if proof.multiple is None else (proof.multiple, proof.chain_constant)
    if fits != pattern.fits:
        found.append(f"fits {fits}, not {pattern.fits}")
    for row in proof.rows:
        if row.row not in pattern.counts:
            found.append(f"row {row.row} is none of its rows")
            continue
        count, _, space = pattern.counts[row.row][0].partition("/")
        if (row.stitches, row.spaces) != (_linear(count), _linear(space or "0")):
            found.append(f"row {row.row} {row.stitches}/{row.spaces}, not {count}/{space or 0}")
    return found


def _of_size(pattern: Published, proof: Proof, size: int) -> list[str]:
    found = []
    chain = pattern.chains[size]
    k = 0 if proof.multiple is None else (chain - (proof.chain_constant or 0)) // proof.multiple
    if chain and (proof.smallest != chain if proof.multiple is None else (chain - (proof.chain_constant or 0)) % proof.multiple):
        found.append(f"size {size + 1} fits {proof.multiple}, {proof.smallest}, not {chain}")
    for row in proof.rows:
        if row.row not in pattern.counts:
            found.append(f"row {row.row} is none of its rows")
            continue
        count, _, space = pattern.counts[row.row][size].partition("/")
        if (row.stitches.at(k), row.spaces.at(k)) != (int(count), int(space or "0")):
            found.append(f"size {size + 1} row {row.row} {row.stitches.at(k)}/{row.spaces.at(k)}, not {count}/{space or 0}")
    return found


def outcome(pattern: Published) -> tuple[str, str]:
    """(how the text as written came out, how its altered twin did); what would mend the twin is not looked for, see ``mends``"""
    proof = prove(pattern.text)
    wrong = differences(pattern, proof)
    kinds = {problem.kind for problem in proof.problems}
    if not proof.problems:
        whole = "wrong" if wrong or not proof.rows else "read"
    elif "not understood" in kinds:
        whole = "not understood"
    elif kinds == {"asked"}:
        whole = "asked"
    else:
        whole = "false alarm"
    twin = prove(pattern.twin, suggest=False)
    rows = {problem.row for problem in twin.problems}
    named = "proven" if not twin.problems else "named" if pattern.twin_row in rows else "elsewhere"
    return whole, named


def mends(text: str) -> list[bool]:
    """For each mend that is offered for ``text``, whether the whole text is proven with it."""
    found = []
    for problem in prove(text).problems:
        offered = re.search(r"“(?P<instead>[^”]*)” instead of “(?P<was>[^”]*)” would fix it", problem.suggestion)
        if offered is not None:
            words = r"\s+".join(map(re.escape, offered["was"].split()))
            places = [place.span() for place in re.finditer(words, text)]
            found.append(
                any(prove(text[:start] + offered["instead"] + text[end:], suggest=False).proven for start, end in places)
            )
        elif problem.suggestion == COUNT_CHAINS:
            found.append(prove(text + "\nEach ch counts as a st.\n", suggest=False).proven)
    return found


def main() -> None:
    tally: dict[str, dict[str, int]] = {}
    for pattern in published():
        whole, named = outcome(pattern)
        by = tally.setdefault(pattern.kind, {})
        by[whole] = by.get(whole, 0) + 1
        by[f"twin {named}"] = by.get(f"twin {named}", 0) + 1
        if whole != "read" or named != "named":
            proof, twin = prove(pattern.text), prove(pattern.twin)
            print(f"\n[{pattern.kind}] {pattern.name}: {whole}; twin {named}")
            if whole != "read":
                for problem in proof.problems:
                    print(f"   {problem.row} {problem.kind}: {problem.says} {problem.suggestion}")
            for each in differences(pattern, proof):
                print("   ", each)
            if named != "named":
                for problem in twin.problems:
                    print(f"   twin: {problem.row} {problem.kind}: {problem.says}")
    print()
    for kind, by in tally.items():
        print(kind, by)
    total: dict[str, int] = {}
    for by in tally.values():
        for key, count in by.items():
            total[key] = total.get(key, 0) + count
    print("all", total)
    offered = [mend for pattern in published() for mend in mends(pattern.twin)]
    print(f"mends offered for the twins: {len(offered)}, that do not mend: {offered.count(False)}")


if __name__ == "__main__":
    main()
