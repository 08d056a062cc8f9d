"""Random written rows that fit by construction, and a plain laying of them that shares nothing with the program.

A row below is a list of things: a stitch's name, or a number for a space of so many chains. A row is a list of steps; ``text``
writes them as a pattern would, ``laid`` does them one after the other on a list.
"""

import random
from dataclasses import dataclass, field, replace

STITCHES = ("sc", "hdc", "dc", "tr")
MAKES = ("each", "many", "tog", "space")
Thing = str | int


class DoesNotFitError(Exception):
    """The row does not work on these stitches."""


@dataclass(frozen=True)
class Step:
    """``do``: each (one stitch in each of ``count`` places), many (``count`` in one), skip, tog, chain, space, skip space."""

    do: str
    count: int
    kind: str = ""  # the stitch made
    into: str = ""  # the stitch worked into, "st" for any
    size: int = 0  # chains of the space

    def text(self) -> str:
        into = f"next {self.into}" if self.count == 1 or self.do == "many" else f"next {self.count} {self.into}"
        times = f"{self.count} " if self.count > 1 else ""
        return {
            "each": f"{self.kind} in {into}",
            "many": f"{times}{self.kind} in {into}",
            "skip": f"sk {self.count} {self.into}",
            "tog": f"{self.kind}{self.count}tog",
            "chain": f"ch {self.count}",
            "space": f"{times}{self.kind} in next ch-{self.size} sp",
            "skip space": f"sk next ch-{self.size} sp",
        }[self.do]


@dataclass(frozen=True)
class Steps:
    """One row: its beginning, what is repeated until ``left`` stitches are left, its end."""

    opening: str  # what the row begins with; "" for row 1
    covers: bool  # the opening counts as dc and stands over the first stitch
    begin: tuple[Step, ...]
    again: tuple[Step, ...]
    left: int
    end: tuple[Step, ...]
    turn: bool
    hook: int = 0  # row 1: the chain of the first stitch

    def text(self) -> str:
        words = [self.opening] if self.opening else []
        words += [step.text() for step in self.begin]
        if self.hook:
            words[0] = words[0].replace("next ch", f"{self.hook}{'nd' if self.hook == 2 else 'th'} ch from hook")
        unit = "ch" if self.hook else "sts"
        words.append("*" + ", ".join(step.text() for step in self.again) + f"; rep from * to last {self.left} {unit}")
        words += [step.text() for step in self.end]
        return ", ".join(words) + ("" if self.turn else ", do not turn")


@dataclass
class Hand:
    below: list[Thing]
    made: list[Thing] = field(default_factory=list)
    just_skipped: bool = False

    def stitch(self, into: str) -> None:
        while self.below and isinstance(self.below[0], int):
            self.below.pop(0)
        if not self.below or (into != "st" and self.below[0] != into):
            raise DoesNotFitError
        self.below.pop(0)

    def space(self, size: int) -> None:
        while self.below and self.below[0] != size:
            if isinstance(self.below.pop(0), str) and self.just_skipped:
                raise DoesNotFitError
        if not self.below:
            raise DoesNotFitError
        self.below.pop(0)

    def make(self, kind: str, count: int = 1) -> None:
        self.made += [kind] * count

    def chain(self, count: int) -> None:
        if self.made and isinstance(self.made[-1], int):
            self.made[-1] += count
        else:
            self.made.append(count)

    def step(self, step: Step) -> None:
        if step.do == "chain":
            self.chain(step.count)
            return
        if step.do in ("each", "skip", "tog"):
            for _ in range(step.count):
                self.stitch("st" if step.do == "tog" else step.into)
                if step.do == "each":
                    self.make(step.kind)
            if step.do == "tog":
                self.make(step.kind)
        elif step.do == "many":
            self.stitch(step.into)
            self.make(step.kind, step.count)
        else:
            self.space(step.size)
            if step.do == "space":
                self.make(step.kind, step.count)
        if step.do in MAKES:
            self.just_skipped = False
        else:
            self.just_skipped = step.do == "skip"


def laid(row: Steps, below: list[Thing]) -> list[Thing]:
    """What the row makes, in the order the next row meets it. Raises DoesNotFitError."""
    hand = Hand(list(below))
    if row.hook:
        if len(hand.below) < row.hook - 1:
            raise DoesNotFitError
        del hand.below[: row.hook - 1]
        if row.hook == 4:
            hand.make("dc")
    if row.covers:
        hand.stitch("st")
        hand.make("dc")
    for step in row.begin:
        hand.step(step)
    while (left := sum(isinstance(thing, str) for thing in hand.below)) != row.left:
        if left < row.left:
            raise DoesNotFitError
        for step in row.again:
            hand.step(step)
    for step in row.end:
        hand.step(step)
    if hand.below:
        raise DoesNotFitError
    return hand.made[::-1] if row.turn else hand.made


def laid_on_chain(rows: list[Steps], chains: int) -> list[list[Thing]]:
    """All rows on a starting chain. Raises DoesNotFitError."""
    below: list[Thing] = ["ch"] * chains
    done = []
    for row in rows:
        below = laid(row, below)
        done.append(below)
    return done


def fits(rows: list[Steps], chains: int) -> bool:
    try:
        laid_on_chain(rows, chains)
    except DoesNotFitError:
        return False
    return True


# Rows that fit by construction.


def random_pattern(rng: random.Random, rows: int, widest: int = 8, most: int = 4) -> tuple[list[Steps], int, int]:
    """(rows that fit on ``multiple``·k + ``constant`` chains for every k ≥ 0, the multiple, the constant)

    ``widest``: the largest multiple; ``most``: so many stitches at most are told in one phrase.
    """
    hook = rng.choice((2, 2, 4))
    multiple = rng.randint(max(2, widest // 4), widest)
    begin, again, end = ["ch"] * rng.randint(1, 3), ["ch"] * multiple, ["ch"] * rng.randint(1, 3)
    constant = hook - 1 + len(begin) + len(end)
    return random_rows_on(rng, begin, again, end, rows, hook, most), multiple, constant


def random_rows_on(
    rng: random.Random, begin: list[Thing], again: list[Thing], end: list[Thing], rows: int, hook: int = 0, most: int = 4
) -> list[Steps]:
    """Rows that fit on ``begin``, ``again`` any number of times, and ``end``."""
    pattern = []
    for number in range(rows):
        row = _row(rng, begin, again, end, hook if number == 0 else 0, most)
        pattern.append(row)
        parts = [_made(row.begin, begin, row), _made(row.again, again, None), _made(row.end, end, None)]
        begin, again, end = [part[::-1] for part in parts[::-1]] if row.turn else parts
        begin, again, end = _seams_closed(begin, again, end)
    return pattern


def _made(steps: tuple[Step, ...], below: list[Thing], row: Steps | None) -> list[Thing]:
    hand = Hand(list(below))
    if row is not None and (row.covers or row.hook == 4):
        if row.covers:
            hand.stitch("st")
        hand.make("dc")
    for step in steps:
        hand.step(step)
    return hand.made


def _seams_closed(begin: list[Thing], again: list[Thing], end: list[Thing]) -> tuple[list[Thing], list[Thing], list[Thing]]:
    """Where a part begins with a space, the rest of that space is not at the end of the part before: rows are made so."""
    for before, after in ((begin, again), (again, again), (again, end), (begin, end)):
        assert not (isinstance(before[-1], int) and isinstance(after[0], int))
    return begin, again, end


def _row(rng: random.Random, begin: list[Thing], again: list[Thing], end: list[Thing], hook: int, most: int) -> Steps:
    covers = not hook and isinstance(begin[0], str) and rng.random() < 0.4
    opening = "" if hook else "ch 3 (counts as dc)" if covers else "ch 1"
    first: tuple[Step, ...] = (Step("many", rng.randint(1, 2), "dc", "ch"),) if hook else ()
    taken = 1 if hook or covers else 0
    steps = (*first, *_steps(rng, begin[taken:], bool(hook), most, starts=taken == 0))
    left = sum(isinstance(thing, str) for thing in end)
    turn = rng.random() < 0.8
    return Steps(
        opening, covers, steps, _steps(rng, again, bool(hook), most), left, _steps(rng, end, bool(hook), most), turn, hook
    )


def _steps(rng: random.Random, below: list[Thing], on_chain: bool, most: int, starts: bool = False) -> tuple[Step, ...]:
    """Steps that take just these places. They end with a stitch made, and ``starts`` begin with one: no chain is at a seam."""
    steps: list[Step] = []
    at = 0
    while at < len(below):
        step, taken = _step(rng, below, at, on_chain, most)
        if step.do.startswith("skip") and ((starts and not steps) or at + taken == len(below)):
            continue
        if steps and steps[-1].do in MAKES and step.do in MAKES and rng.random() < 0.3:
            steps.append(Step("chain", rng.randint(1, 4)))
        steps.append(step)
        at += taken
    return tuple(steps)


def _step(rng: random.Random, below: list[Thing], at: int, on_chain: bool, most: int) -> tuple[Step, int]:
    thing, kind = below[at], rng.choice(STITCHES)
    if isinstance(thing, int):
        last = at + 1 == len(below)
        if rng.random() < 0.5 or last:
            return Step("space", rng.randint(1, 3), kind, size=thing), 1
        return Step("skip space", 1, size=thing), 1
    alike = 1
    while at + alike < len(below) and below[at + alike] == thing:
        alike += 1
    count = rng.randint(1, min(alike, most))
    into = "ch" if on_chain else rng.choice((thing, thing, "st"))
    do = rng.choice(("each", "each", "many", "skip", "tog"))
    if do == "tog" and alike > 1:
        return Step("tog", 2, kind), 2
    if do == "skip" and alike >= count:
        return Step("skip", count, into=into), count
    if do == "each":
        return Step("each", count, kind, into), count
    return Step("many", rng.randint(1, 4), kind, into), 1


# One step spoilt.


def spoilt(rng: random.Random, rows: list[Steps]) -> list[Steps]:
    """The rows with one number, stitch or step changed."""
    number = rng.randrange(len(rows))
    row = rows[number]
    part = rng.choice(("begin", "again", "end", "left"))
    if part == "left":
        changed = replace(row, left=max(1, row.left + rng.choice((-1, 1, 2))))
    else:
        steps = list(getattr(row, part))
        if not steps:
            return spoilt(rng, rows)
        at = rng.randrange(len(steps))
        steps[at : at + 1] = _spoilt_step(rng, steps[at], is_edge=at in (0, len(steps) - 1))
        changed = replace(row, **{part: tuple(steps)})
    if changed == row:
        return spoilt(rng, rows)
    return [*rows[:number], changed, *rows[number + 1 :]]


def _spoilt_step(rng: random.Random, step: Step, is_edge: bool) -> list[Step]:
    if not is_edge and rng.random() < 0.2:
        return []
    if step.into in STITCHES and rng.random() < 0.2:
        return [replace(step, into=rng.choice(STITCHES))]
    if step.size and rng.random() < 0.5:
        return [replace(step, size=max(1, step.size + rng.choice((-1, 1))))]
    if step.do in ("tog", "skip space"):
        return [step]
    return [replace(step, count=max(1, step.count + rng.choice((-1, 1))))]
