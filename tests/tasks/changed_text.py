"""Patterns with one number changed, to see what proofreading finds: ``python -m tests.tasks.changed_text --count 300``.

Found is a change whose own entry is named (of a list with an entry too few: whose line is).
"""

import argparse
import random
import re
import tempfile
import textwrap
from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from pathlib import Path
from typing import NamedTuple

from logbook.craft.garments.plan_file import plan_of
from logbook.craft.proofreading.judging import Verdict
from logbook.craft.words.terms import Terms
from logbook.tasks.garment_files import pattern_text
from logbook.tasks.garments import GarmentAnswer, garments, work_out
from logbook.tasks.proofreading import Proofread, of_garment, proofread
from logbook.tasks.sampling import new_sample
from tests.tasks.written.test_garment import PLAN

DIGIT, SWAPPED, SHORT = "a digit", "two neighbours swapped", "one short"
APART, ROW = "cm and inches apart", "a row's count"
_ENTRY = re.compile(r"\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+")
_LIST = re.compile(r"(?<![\w.,/])\d+(?:\.\d+)? \([\d., –]+\)(?!\s*in\b)")
_INCHES = re.compile(r"(?<=cm / )[\d /]+(?: \([\d, /]+\))?(?= in\b)")
_CENTIMETRES = re.compile(r"(?<![\w.,/])\d[\d.]*(?: \([\d., ]+\))?(?= cm / )")
_COUNT = re.compile(
    r"(?<=  )[\d–]+(?: \([\d, –]+\))?(?= sts$)|(?<![\w.,/])\d+(?: \([\d, –]+\))?(?= sts in row 1|(?: rows)? in all)", re.M
)


class Change(NamedTuple):
    """A text with one change: of which kind, where it stands, and which entries (from 0; none: the list itself) are wrong."""

    kind: str
    text: str
    start: int
    end: int
    entries: tuple[int, ...]


def answer(sizes: tuple[str, ...] = ("S", "M", "L", "1X", "2X")) -> GarmentAnswer:
    """A jumper in so many sizes."""
    return work_out(plan_of({**PLAN, "sizes": {"chart": "women", "only": list(sizes)}}))


def changes(text: str, chance: random.Random, kinds: Sequence[str]) -> Iterator[Change]:
    """One change of each of these kinds, where the text has what it changes."""
    places = {
        **{kind: list(_LIST.finditer(text)) for kind in (DIGIT, SWAPPED, SHORT)},
        APART: [*_INCHES.finditer(text), *_CENTIMETRES.finditer(text)],
        ROW: list(_COUNT.finditer(text)),
    }
    for kind in kinds:
        for _ in range(1000):
            if not places[kind]:
                break
            found = chance.choice(places[kind])
            changed = _changed(found[0], kind, chance)
            if changed is not None and changed[0] != found[0]:
                new, entries = changed
                yield Change(
                    kind, text[: found.start()] + new + text[found.end() :], found.start(), found.start() + len(new), entries
                )
                break


def _changed(numbers: str, kind: str, chance: random.Random) -> tuple[str, tuple[int, ...]] | None:
    entries = list(re.finditer(rf"{_ENTRY.pattern}|–", numbers))
    if kind == SHORT:
        return None if len(entries) < 3 else (f"{numbers[: entries[-2].end()]})", ())
    if kind == SWAPPED:
        at = chance.randrange(len(entries) - 1)
        a, b = entries[at], entries[at + 1]
        return numbers[: a.start()] + b[0] + numbers[a.end() : b.start()] + a[0] + numbers[b.end() :], (at, at + 1)
    at = chance.choice([place for place, entry in enumerate(entries) if entry[0] != "–"])
    one = entries[at]
    new = _further(one[0], chance) if kind == APART else _digit(one[0], chance)
    return None if new is None else (numbers[: one.start()] + new + numbers[one.end() :], (at,))


def _digit(number: str, chance: random.Random) -> str | None:
    place = chance.choice([place for place, letter in enumerate(number) if letter.isdigit()])
    new = chance.choice([digit for digit in "0123456789" if digit != number[place]])
    return None if place == 0 and new == "0" else number[:place] + new + number[place + 1 :]


def _further(length: str, chance: random.Random) -> str:
    """A length that is 1 to 3 units more or less."""
    by = chance.choice((-3, -2, -1, 1, 2, 3))
    if "." in length:
        return f"{max(float(length) + by, 0.5):.1f}"
    whole, _, part = length.rpartition(" ") if "/" in length else (length, "", "")
    shown = max(int(whole or 0) + by, 1)
    return f"{shown} {part}" if Fraction(part or 0) else str(shown)


def named(read: Proofread, change: Change, names: Sequence[str]) -> bool:
    """Whether what was changed is named: its entries, or the list that is too short."""
    here = [
        one
        for one in read.found
        if one.verdict is Verdict.DIFFERS and one.quantity.start < change.end and change.start < one.quantity.end
    ]
    if change.kind == APART and _says(read, change, names):
        return True
    if change.entries:
        return any(one.entries == change.entries or (len(one.quantity.values) == 1 and bool(one.entries)) for one in here)
    line = change.text.count("\n", 0, change.start) + 1
    return bool(here) or any(problem.line == line for problem in read.problems)


def _says(read: Proofread, change: Change, names: Sequence[str]) -> bool:
    """Whether it is said that cm and inches are apart there, in that size of a list."""
    said = [problem.says for problem in read.problems if "same length" in problem.says]
    of = change.text[change.start : change.end]
    return any(of in says and ("(" not in of or says.endswith(f" in size {names[change.entries[0]]}.")) for says in said)


def rewritten(text: str, chance: random.Random) -> dict[str, str]:
    """The same numbers in other clothes."""
    paragraphs = text.split("\n\n")
    shuffled = paragraphs[1:]
    chance.shuffle(shuffled)
    return {
        "other brackets": re.sub(r" \(([\d., –/]+)\)", r"[\1]", text),
        "other order of paragraphs": "\n\n".join([paragraphs[0], *shuffled]),
        "re-flowed": "\n\n".join(
            "\n".join([part.split("\n", 1)[0], textwrap.fill(part.split("\n", 1)[1], 68)]) if "\n" in part else part
            for part in paragraphs
        ),
        "words around": "I made this for my sister, who has 3 cats.\n\n"
        + text
        + "\n\nShare what you made! It took me 12 evenings.\n",
        "words between": text.replace(
            "\n\nMaterials\n", "\n\nI worked mine by the window, in 2 weeks; take your time with the second half.\n\nMaterials\n"
        ).replace(". Fasten off.", ". Well done! Fasten off."),
        "semicolons": re.sub(r"\(([\d., –/]+)\)", lambda found: "(" + found[1].replace(", ", "; ") + ")", text),
    }


def alarms(right: GarmentAnswer, chance: random.Random) -> list[str]:
    """What is said against texts that are right."""
    text, said = pattern_text(right, Terms.US), []
    for name, same in {"unchanged": text, "UK terms": pattern_text(right, Terms.UK), **rewritten(text, chance)}.items():
        read = proofread(same, of_garment(right))
        said += [f"{name}: {one.quantity.text}" for one in read.found if one.verdict is Verdict.DIFFERS]
        said += [f"{name}: {problem.says}" for problem in read.problems]
    return said


def measure(right: GarmentAnswer, count: int, chance: random.Random) -> tuple[Counter[str], Counter[str], list[str]]:
    """How many of each kind of change were made and found, ``count`` in all, and those that were not."""
    made, found, missed = Counter[str](), Counter[str](), []
    texts = [pattern_text(right, terms) for terms in (Terms.US, Terms.UK)]
    kinds = [(DIGIT, SWAPPED, SHORT, APART, ROW)[number % 5] for number in range(count)]
    for number, kind in enumerate(kinds):
        for change in changes(texts[number % 2], chance, [kind]):
            made[kind] += 1
            is_named = named(proofread(change.text, of_garment(right)), change, [size.name for size in right.numbers])
            found[kind] += is_named
            if not is_named:
                line = change.text.count("\n", 0, change.start)
                missed.append(f"{kind}: {change.text[change.start : change.end]} in “{change.text.splitlines()[line]}”")
    return made, found, missed


def main() -> None:
    """Prints the figures of the jumper and of every garment of the sample."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=300)
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    chance = random.Random(arguments.seed)
    with tempfile.TemporaryDirectory() as folder, new_sample(Path(folder)) as book:
        every = [answer(), *(work_out(one.plan, book) for one in garments(book))]
    for right in every:
        made, found, missed = measure(right, arguments.count, chance)
        print(f"{right.plan.name}: {sum(found.values())} of {sum(made.values())} named at their entry")
        print(*(f"  {kind}: {found[kind]} of {made[kind]}" for kind in made), *(f"  missed: {one}" for one in missed), sep="\n")
        print(*(f"  false alarm: {one}" for one in alarms(right, chance)), sep="\n")


if __name__ == "__main__":
    main()
