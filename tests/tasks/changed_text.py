"""Patterns with one number changed, to see what proofreading finds: ``python -m tests.tasks.changed_text --count 300``."""

import argparse
import random
import re
import textwrap
from collections import Counter
from collections.abc import Iterator

from logbook.craft.garments.plan_file import plan_of
from logbook.craft.proofreading.judging import Verdict
from logbook.craft.words.terms import Terms
from logbook.tasks.garment_files import pattern_text
from logbook.tasks.garments import GarmentAnswer, work_out
from logbook.tasks.proofreading import of_garment, proofread
from tests.tasks.written.test_garment import PLAN

_LIST = re.compile(r"(?<![\w.,/])\d+(?:\.\d+)? \([\d., –/]+\)")
_ENTRY = re.compile(r"\d+(?: \d+/\d+|\.\d+)?")


def answer(sizes: tuple[str, ...] = ("S", "M", "L", "1X", "2X")) -> GarmentAnswer:
    """A jumper in so many sizes."""
    return work_out(plan_of({**PLAN, "sizes": {"chart": "women", "only": list(sizes)}}))


def changes(text: str, chance: random.Random, count: int) -> Iterator[tuple[str, str, int]]:
    """(kind of change, the changed text, the line it is in), ``count`` of them."""
    lists = [found for found in _LIST.finditer(text) if "1/" not in found[0] and "3/4" not in found[0]]
    made = 0
    while made < count:
        kind = chance.choice(("a digit", "two neighbours swapped", "one short"))
        found = chance.choice(lists)
        changed = _changed(found[0], kind, chance)
        if changed is None or changed == found[0]:
            continue
        made += 1
        yield kind, text[: found.start()] + changed + text[found.end() :], text.count("\n", 0, found.start()) + 1


def _changed(numbers: str, kind: str, chance: random.Random) -> str | None:
    entries = list(_ENTRY.finditer(numbers))
    if kind == "two neighbours swapped":
        at = chance.randrange(len(entries) - 1)
        a, b = entries[at], entries[at + 1]
        if a[0] == b[0]:
            return None
        return numbers[: a.start()] + b[0] + numbers[a.end() : b.start()] + a[0] + numbers[b.end() :]
    if kind == "one short":
        if len(entries) < 3:
            return None
        return numbers[: entries[-2].end()] + ")"
    one = chance.choice(entries)
    digits = [place for place, letter in enumerate(one[0]) if letter.isdigit()]
    place = chance.choice(digits)
    new = chance.choice([digit for digit in "0123456789" if digit != one[0][place]])
    if place == 0 and new == "0":
        return None
    return numbers[: one.start() + place] + new + numbers[one.start() + place + 1 :]


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
        "semicolons": re.sub(r"\(([\d., –/]+)\)", lambda found: "(" + found[1].replace(", ", "; ") + ")", text),
    }


def measure(count: int, seed: int) -> tuple[Counter[str], Counter[str], list[str]]:
    """How many of each kind of change were made, and found in the right line; and false alarms in texts that are right."""
    chance, made, found = random.Random(seed), Counter[str](), Counter[str]()
    right = answer()
    text = pattern_text(right, Terms.US)
    for kind, changed, line in changes(text, chance, count):
        made[kind] += 1
        read = proofread(changed, of_garment(right))
        lines = {one.quantity.line for one in read.found if one.verdict is Verdict.DIFFERS}
        lines |= {problem.line for problem in read.problems}
        found[kind] += line in lines
    alarms = []
    for name, same in {"unchanged": text, "UK terms": pattern_text(right, Terms.UK), **rewritten(text, chance)}.items():
        read = proofread(same, of_garment(right))
        alarms += [f"{name}: {one.quantity.text}" for one in read.found if one.verdict is Verdict.DIFFERS]
        alarms += [f"{name}: {problem.says}" for problem in read.problems]
    return made, found, alarms


def main() -> None:
    """Prints the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=300)
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    made, found, alarms = measure(arguments.count, arguments.seed)
    for kind in made:
        print(f"{kind}: {found[kind]} of {made[kind]} named in their line")
    print(f"false alarms: {len(alarms)}", *alarms, sep="\n")


if __name__ == "__main__":
    main()
