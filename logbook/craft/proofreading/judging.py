"""Each quantity of a text held against the known ones: it agrees, differs, or nothing of its kind is near.

A quantity differs (a) if the words beside it, or heading and noun, name one known quantity and an entry is not its; or (b) if all
entries but one are those of one known quantity (with four sizes or more), all but two (with seven or more, or two neighbours
swapped). With three sizes or fewer, and for single numbers, (a) alone. Lists without brackets can only agree.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from logbook.craft.proofreading.quantities import Quantity, QuantityKind

_SAME_WORDS = 0.75
"""The share of a known quantity's words beside it that must stand beside another for the two to be one."""


class Verdict(StrEnum):
    """What came of holding a quantity against the known ones."""

    AGREES = "agrees"
    DIFFERS = "differs"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class FoundQuantity:
    """A quantity of the text and the known one it was held against (None: nothing near); ``entries``: those that differ."""

    quantity: Quantity
    verdict: Verdict
    known: Quantity | None = None
    entries: tuple[int, ...] = ()


def judged(text: Sequence[Quantity], known: Sequence[Quantity], sizes: int) -> tuple[FoundQuantity, ...]:
    """Every quantity of a text, in its order, judged by the known ones. What is said again in the same words is judged once."""
    rows = _row_by_row(text, known, sizes)
    near: dict[tuple[object, ...], list[Quantity]] = {}
    before: dict[tuple[object, ...], FoundQuantity] = {}
    every = []
    for one in text:
        row = rows.get(one.start)
        like = (one.kind, len(one.values))
        if like not in near:
            near[like] = [other for other in known if _comparable(one, other, sizes)]
        same = (one.kind, one.values, one.step, one.bare, one.section, one.before, one.after, row and row.start)
        if same not in before:
            before[same] = _judged(one, near[like], row, sizes)
        every.append(replace(before[same], quantity=one))
    return tuple(every)


def _row_by_row(text: Sequence[Quantity], known: Sequence[Quantity], sizes: int) -> dict[int, Quantity]:
    """Where the same words stand beside several numbers, as in the rows of a table, each with the known one of its place.

    Only if there are as many here as known, and most of them are the same.
    """
    here, there = _by_words(text), _by_words(known)
    found: dict[int, Quantity] = {}
    for words, own in here.items():
        others = there.get(words, [])
        if len(own) == len(others) > 1 and all(_comparable(a, b, sizes) for a, b in zip(own, others, strict=True)):
            equal = sum(_equal(a, b) for a, b in zip(own, others, strict=True))
            if equal * 2 > len(own):
                found |= {a.start: b for a, b in zip(own, others, strict=True)}
    return found


def _by_words(every: Sequence[Quantity]) -> dict[tuple[object, ...], list[Quantity]]:
    groups: dict[tuple[object, ...], list[Quantity]] = {}
    for one in every:
        groups.setdefault((one.kind, one.section, one.before[-2:], one.after[:2]), []).append(one)
    return groups


def _judged(one: Quantity, near: Sequence[Quantity], row: Quantity | None, sizes: int) -> FoundQuantity:
    if row is not None:
        return FoundQuantity(one, Verdict.AGREES, row) if _equal(one, row) else _differs(one, row)
    here = [other for other in near if not one.section or not other.section or other.section == one.section]
    equal = next((other for other in (*here, *near) if _equal(one, other)), None)
    if one.bare:
        return FoundQuantity(one, Verdict.AGREES, equal) if equal else FoundQuantity(one, Verdict.UNKNOWN)
    named = _named_by_words(one, here)
    if named is not None and not _equal(one, named) and not (equal is not None and _alike(one, equal) >= _alike(one, named)):
        return _differs(one, named)
    if equal is not None:
        return FoundQuantity(one, Verdict.AGREES, equal)
    if named is None and one.section:
        named = _only(other for other in here if other.section == one.section)
    if named is None and len(one.values) > 1:
        named = _near(one, here, sizes) or _near(one, near, sizes)
    return FoundQuantity(one, Verdict.UNKNOWN) if named is None else _differs(one, named)


def _differs(one: Quantity, known: Quantity) -> FoundQuantity:
    return FoundQuantity(one, Verdict.DIFFERS, known, tuple(_off(one, known)))


def _comparable(one: Quantity, other: Quantity, sizes: int) -> bool:
    """The same kind, and as many entries (a single number stands for all sizes)."""
    fewer, more = sorted((len(one.values), len(other.values)))
    return one.kind is other.kind and (fewer == more or (fewer == 1 and more == sizes))


def _values(one: Quantity, count: int) -> tuple[float | None, ...]:
    return one.values if len(one.values) == count else one.values * count


def _off(one: Quantity, known: Quantity, most: int | None = None) -> list[int]:
    """The entries (from 0) of ``one`` that are not those of ``known``: lengths and yarn to half of what is written.

    ``most``: where there are more, no more than one more is looked for.
    """
    count = max(len(one.values), len(known.values))
    near = one.step / 2 + 1e-6 if one.kind in (QuantityKind.LENGTH, QuantityKind.YARN) else 1e-9
    off = []
    for place, (a, b) in enumerate(zip(_values(one, count), _values(known, count), strict=True)):
        if (a is None or b is None or abs(a - b) > near) and a is not b:
            off.append(place)
            if most is not None and len(off) > most:
                break
    return off


def _equal(one: Quantity, known: Quantity) -> bool:
    return not _off(one, known, most=0)


def _alike(one: Quantity, other: Quantity) -> float:
    """The share of the words beside ``other`` that stand beside ``one`` too."""
    words = [*other.before, *other.after]
    if not words:
        return 0.0
    before, after = list(one.before), list(one.after)
    same = 0
    for word in other.before:
        if word in before:
            before.remove(word)
            same += 1
    for word in other.after:
        if word in after:
            after.remove(word)
            same += 1
    return same / len(words)


def _named_by_words(one: Quantity, here: Sequence[Quantity]) -> Quantity | None:
    """The one known quantity beside which the same words stand."""
    scored = [(_alike(one, other), other) for other in here]
    best = max((score for score, _ in scored), default=0.0)
    return None if best < _SAME_WORDS else _only(other for score, other in scored if score > best - 0.1)


def _only(known: Iterable[Quantity]) -> Quantity | None:
    """The known quantity if all of them have the same values."""
    every = list(known)
    return every[0] if every and all(other.values == every[0].values for other in every) else None


def _near(one: Quantity, known: Sequence[Quantity], sizes: int) -> Quantity | None:
    """The known list of which all entries but one, or two, are those of ``one``."""
    if sizes < 4:
        return None
    like = [other for other in known if len(other.values) == len(one.values)]
    offs = [(other, _off(one, other, most=2)) for other in like]
    but_one = (other for other, off in offs if len(off) == 1)
    but_two = (other for other, off in offs if len(off) == 2 and (sizes >= 7 or _swapped(one, other, off)))
    return next(but_one, None) or next(but_two, None)


def _swapped(one: Quantity, other: Quantity, off: Sequence[int]) -> bool:
    first, second = off
    if second != first + 1:
        return False
    back = list(one.values)
    back[first], back[second] = back[second], back[first]
    return _equal(replace(one, values=tuple(back)), other)
