"""A technical editor who has nothing but the printed text of a pattern: it is read for one size, worked row by row, and every
number in it held against what came of the rows.

Knows nothing of the program: what is said here of patterns is what a crocheter knows.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

_NUMBER = r"(?:–|\d+(?:\.\d+)?(?: \d/\d)?)"
_LIST = re.compile(rf"({_NUMBER}) \(({_NUMBER}(?:, {_NUMBER})+)\)")


def sizes_in(text: str) -> list[str]:
    """The names of the sizes, in the order they are printed."""
    first, others = re.search(r"Sizes: (\S+) \(([^)]*)\)", text).groups()  # type: ignore[union-attr]
    return [first, *others.split(", ")]


def for_size(text: str, place: int, sizes: int) -> str:
    """The text with every list of sizes replaced by the number of one size."""

    def own(found: re.Match[str]) -> str:
        entries = [found[1], *found[2].split(", ")]
        return entries[place] if len(entries) == sizes else found[0]

    return _LIST.sub(own, text)


@dataclass
class Worked:
    """A piece as it was worked: the stitches of each row (row 0 first); of a yoke the stitches of its parts."""

    counts: list[int] = field(default_factory=list)
    shoulder: int | None = None
    parts: dict[str, int] = field(default_factory=dict)
    wrong: list[str] = field(default_factory=list)
    checked: int = 0

    def check(self, what: str, printed: int, worked: int) -> None:
        """Notes a number that is not what the rows give."""
        self.checked += 1
        if printed != worked:
            self.wrong.append(f"{what}: the text says {printed}, the rows give {worked}")


def worked_through(text: str, place: int) -> dict[str, Worked]:
    """Every piece of the pattern in one size, by the first word of its heading in small letters."""
    names = sizes_in(text)
    own = for_size(text, place, len(names))
    done: dict[str, Worked] = {}
    for part in own.split("\n\n"):
        heading, _, body = part.partition("\n")
        if found := re.match(r"(\w+)(?: \(.*?\))?, worked ", heading):
            name = found[1].lower()
            made = done[name] = Worked()
            if "raglan line" in body:
                _raglan(body, names[place], made)
            elif "worked on from" in heading:
                _goes_on(body, done["yoke"], made)
                _rows(body, names[place], made)
            else:
                _begin(body, made)
                _rows(body, names[place], made)
    return done


def _number(pattern: str, text: str) -> int | None:
    found = re.search(pattern, text, re.MULTILINE)
    return None if found is None else int(found[1])


def _begin(body: str, made: Worked) -> None:
    chain, stitches = _number(r"Ch (\d+)", body), _number(r"(\d+) sts in (?:row 1|the ring)", body)
    assert chain is not None
    assert stitches is not None
    if first := _number(r"into the (\d+)\w\w ch from the hook", body):
        counts = 1 if "count as a st" in body and "do not count as" not in body else 0
        made.check("stitches in row 1", stitches, chain - (first - 1) + counts)
    made.counts = [stitches]


def _how_often(words: str) -> int:
    return {"once": 1, "twice": 2}.get(words) or int(words.split()[0])


def rows_said(words: str, rows: int = 0) -> tuple[list[int], int]:
    """``in row 2, in every 4th row twice, then 3 rows even``: the rows, and how many are even behind them.

    ``2 in every row, and one more in row 3``: of ``rows`` rows.
    """
    at: list[int] = []
    if found := re.fullmatch(r"(?:(\d+) )?in every row(?:, and (?:one|once) more (.*?))?\.?", words):
        more, even = rows_said(found[2]) if found[2] else ([], 0)
        return sorted([*list(range(1, rows + 1)) * int(found[1] or 1), *more]), 0 if rows else even
    even = 0
    for part in words.rstrip(".").split(", "):
        if found := re.fullmatch(r"in (?:row|round) (\d+)", part):
            at.append(int(found[1]))
        elif found := re.fullmatch(r"in every (?:(\d+)\w\w )?(?:row|round) (.*)", part):
            for _ in range(_how_often(found[2])):
                at.append((at[-1] if at else 0) + int(found[1] or 1))
        elif found := re.fullmatch(r"then (\d+) (?:rows?|rounds?) even", part):
            even = int(found[1])
        else:
            raise AssertionError(f"“{part}” is not said so that one could work it")
    return at, even


def _shaped(body: str, name: str, begins: str) -> tuple[list[int], int] | None:
    """The rows of the shaping whose sentence begins so, from its sentence or from its table, and those even behind."""
    lines = body.splitlines()
    for number, line in enumerate(lines):
        if not line.startswith(begins):
            continue
        if not line.endswith("as follows:"):
            found = re.search(r"(in (?:row|round|every) .*)", line)
            assert found is not None, line
            return rows_said(found[1])
        for row in lines[number + 2 :]:
            cells = re.split(r"\s{2,}", row)
            if cells[0] == name:
                at, even = rows_said(cells[2])
                assert len(at) == int(cells[1]), f"{row}: {len(at)} times"
                return at, even
        raise AssertionError(f"no row for size {name} after “{line}”")
    return None


def _goes_on(body: str, yoke: Worked, made: Worked) -> None:
    if (there := _number(r"Continue over all (\d+) sts", body)) is not None:
        made.check("stitches on the hook", there, yoke.parts["body"])
        made.counts = [there]
        return
    found = re.search(r": (\d+) sts along its chains and the (\d+) sts left for the sleeve are (\d+) sts", body)
    assert found is not None
    added, left, every = map(int, found.groups())
    made.check("chains under the arm", added, yoke.parts["underarm"])
    made.check("stitches left of the sleeve", left, yoke.parts["left"])
    made.check("stitches of the sleeve", every, added + left)
    made.counts = [every]


def _raglan(body: str, name: str, made: Worked) -> None:
    _begin(body, made)
    found = re.search(r"(\d+) sts for the back, (\d+) for a sleeve, (\d+) for the front, (\d+) for the other", body)
    assert found is not None
    back, sleeve, front, other = map(int, found.groups())
    line = _number(r"a raglan line of (\d+) st", body) or 0
    made.check("stitches of the ring", made.counts[0], back + sleeve + front + other + 4 * line)
    rounds = _number(r"(\d+) rounds in all", body) or 0
    in_body, in_sleeves = (
        _shaped(body, name, f"Increase 1 st at both ends of {what}") for what in ("back and front", "each sleeve")
    )
    assert in_body is not None
    assert in_sleeves is not None
    for at, even in (in_body, in_sleeves):
        made.check("rounds of the yoke", rounds, at[-1] + even)
    for row in range(1, rounds + 1):
        made.counts.append(made.counts[-1] + 4 * (in_body[0].count(row) + in_sleeves[0].count(row)))
    table = body[body.index(f"\nSize {name}") :] if f"\nSize {name}" in body else body
    said: set[int] = set()
    for printed in re.finditer(r"round (\d+) +back (\d+) sts +front (\d+) sts +each sleeve (\d+) sts +(\d+) sts in all", table):
        row, *counts = map(int, printed.groups())
        if row in said or (said and row < max(said)):
            break
        said.add(row)
        more, in_sleeve = (2 * sum(at <= row for at in rows[0]) for rows in (in_body, in_sleeves))
        wanted = (back + more, front + more, sleeve + in_sleeve, made.counts[row])
        for what, one, other in zip(("back", "front", "sleeve", "all"), counts, wanted, strict=True):
            made.check(f"{what} after round {row}", one, other)
    made.check("rounds that increase", len(said), len({*in_body[0], *in_sleeves[0]}))
    made.check("stitches at the end", _number(r"rounds in all: (\d+) sts", body) or 0, made.counts[-1])
    under, left = _number(r"ch (\d+), work over the front", body) or 0, sleeve + 2 * len(in_sleeves[0])
    made.check("the other underarm", _number(r"ch (\d+), join", body) or 0, under)
    for which in ("a", "the other"):
        made.check(f"left for {which} sleeve", _number(rf"leave the next (\d+) sts for {which} sleeve", body) or 0, left)
    of_body = made.counts[-1] - 2 * left + 2 * under
    made.check("body", _number(r"join: (\d+) sts for the body", body) or 0, of_body)
    made.check("arm", _number(r"with its underarm has (\d+) sts", body) or 0, left + under)
    made.parts |= {"underarm": under, "left": left, "body": of_body}


def _rows(body: str, name: str, made: Worked) -> None:
    """Works the rows of a panel, half front or sleeve, and checks each count that is printed."""
    word = "round" if "rounds" in body else "row"
    rows = _number(rf"(\d+) {word}s in all\.", body) or _number(rf"^Work (\d+) {word}s\.", body)
    assert rows is not None, body
    change = [0] * (rows + 1)
    edges = 1 if "side edge" in body or "front edge" in body else 2
    for at, by in _edge_shaping(body, name, rows, made):
        change[at] += by
    if found := re.search(r"Row (\d+): leave (\d+) sts unworked at (?:the side|each) edge", body):
        change[int(found[1])] -= edges * int(found[2])
    parted = _neck(body, name, rows, edges, change, made)
    for row in range(1, rows + 1):
        made.counts.append(made.counts[-1] + change[row])
    _printed_counts(body, word, parted if edges == 2 else None, made)
    if (shoulder := _number(r": (\d+) sts for (?:the|each) shoulder", body)) is not None:
        made.shoulder = shoulder
        made.check("shoulder", shoulder, made.counts[-1] // edges)
    if (last := _number(r"(\d+) sts after the last", body)) is not None:
        made.check("stitches at the end", last, made.counts[-1])
    if found := re.search(r"Row (\d+): leave \d+ sts unworked at (?:the side|each) edge for the armhole: (\d+) sts", body):
        made.check("after the armhole", int(found[2]), made.counts[int(found[1])])


def _edge_shaping(body: str, name: str, rows: int, made: Worked) -> Iterator[tuple[int, int]]:
    for word, by in (("Increase", 2), ("Decrease", -2)):
        for where in ("at each edge", "at the beginning"):
            shaped = _shaped(body, name, f"{word} 1 st {where}")
            if shaped is not None:
                even = _number(r"Work (\d+) (?:row|round)s even", body) or 0
                made.check("rows in all", rows, (shaped[0][-1] if shaped[0] else 0) + shaped[1] + even)
                yield from ((row, by) for row in shaped[0])


def _neck(body: str, name: str, rows: int, edges: int, change: list[int], made: Worked) -> int | None:
    """Puts the changes of the neck in, and returns its first row."""
    if found := re.search(r"Row (\d+): leave the middle (\d+) sts", body) or re.search(
        r"Row (\d+): leave (\d+) sts unworked at the front edge", body
    ):
        first, left = int(found[1]), int(found[2])
    elif found := re.search(r"Row (\d+)(?:: divide| is the first row of the neck)", body):
        first, left = int(found[1]), 0
    else:
        return None
    change[first] -= left
    if (each := _number(r"neck edge in each of the next (\d+) rows?", body)) is not None:
        for row in range(first + 1, first + 1 + each):
            change[row] -= edges
    shaped = _shaped(body, name, "Decrease 1 st at the neck edge (counting")
    if shaped is not None:
        made.check("rows of the neck", rows - first + 1, shaped[0][-1] + shaped[1])
        for row in shaped[0]:
            change[first + row - 1] -= edges
    return first


def _printed_counts(body: str, word: str, parted: int | None, made: Worked) -> None:
    seen: set[int] = set()
    for found in re.finditer(rf"^(?:\w+ +)?{word} (\d+) +(\d+) sts$", body, re.MULTILINE):
        row, printed = int(found[1]), int(found[2])
        seen.add(row)
        made.check(f"after row {row}", printed, made.counts[row] // (2 if parted is not None and row >= parted else 1))
    if seen:
        changed = {row for row in range(1, len(made.counts)) if made.counts[row] != made.counts[row - 1]}
        made.check("rows with a count", len(seen), len(changed | seen))
    if found := re.search(r"Row (\d+): leave the middle .* (\d+) sts on each side", body):
        made.check("each side", int(found[2]), made.counts[int(found[1])] // 2)


def measured(text: str, place: int, made: Mapping[str, Worked]) -> list[str]:
    """The finished measurements that are not what rows and gauge give, to the rounding printed."""
    own = for_size(text, place, len(sizes_in(text)))
    gauge = re.search(r"([\d.]+) sts and ([\d.]+) rows = 10 cm", own)
    assert gauge is not None
    wrong = []
    for found in re.finditer(r"^(\w+), ([a-z ]+?) {2,}(.*?) cm / (.*?) in$", own, re.MULTILINE):
        piece, what, cm = made.get(found[1]), found[2], float(found[3])
        if piece is None:
            continue
        units, per = _units_of(piece, what, float(gauge[1]), float(gauge[2]))
        if units is None:
            continue
        exact, finest = units * 10 / per, units * 10 / per * 0.05 / per
        if abs(exact - cm) > 0.25 + finest + 0.01:
            wrong.append(f"{found[1]}, {what}: printed {cm}, the rows give {exact:.2f}")
        whole, _, part = found[4].partition(" ")
        inches = float(whole) + (int(part[0]) / int(part[2]) if part else 0)
        if abs(inches * 2.54 - cm) > 0.25 + 2.54 / 8 + 0.01:
            wrong.append(f"{found[1]}, {what}: {cm} cm are not {inches} in")
    return wrong


def _units_of(piece: Worked, what: str, stitches: float, rows: float) -> tuple[int | None, float]:
    if what == "length":
        return len(piece.counts) - 1, rows
    if what in ("width", "all round"):
        return max(piece.counts), stitches
    if what in ("neck round", "width at the start", "all round at the start"):
        return piece.counts[0], stitches
    if what.endswith("at the end"):
        return piece.counts[-1], stitches
    if what == "body round":
        return piece.parts["body"], stitches
    if what == "upper arm round":
        return piece.parts["left"] + piece.parts["underarm"], stitches
    return None, 1.0
