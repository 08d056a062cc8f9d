"""Checks the counts that a text prints at its rows' ends, and its starting chains, against what the rows really hold."""

from collections.abc import Iterator
from dataclasses import dataclass

from logbook.craft.rows.courses import Courses, on_chain
from logbook.craft.rows.every_width import Misfit
from logbook.craft.rows.finding import Finder
from logbook.craft.rows.instructions import PrintedCount, WrittenPattern, WrittenRow
from logbook.craft.rows.laying import CHAINS_COUNT
from logbook.craft.rows.places import BLOCK, Row
from logbook.craft.rows.report import CLAIM, RowProblem
from logbook.craft.rows.sentences import Speaker

MOST_CHAINS = 5000  # longer starting chains are not laid one by one


@dataclass(frozen=True, slots=True)
class _Claim:
    """A printed count, and what the row holds at the first width and with each further one."""

    row: int
    name: str
    printed: PrintedCount
    first: int
    grows: int
    is_chain: bool = False

    def steps(self) -> tuple[int, ...] | None:
        """At which widths the row holds so many, one a size; None if at none."""
        found = []
        for number in self.printed.numbers:
            step, rest = divmod(number - self.first, self.grows) if self.grows else (0, number - self.first)
            if rest or step < 0:
                return None
            found.append(step)
        return tuple(found)


def wrong_counts(pattern: WrittenPattern, courses: Courses, speaker: Speaker) -> Iterator[RowProblem]:
    """A problem for each printed count that no width gives, or that another width gives than the counts before it."""
    claims = list(_claims(pattern, courses))
    if any(claim.steps() is None for claim in claims) and (found := list(_wrong_on_own_chain(pattern, courses, speaker))):
        yield from found
        return
    agreed: dict[int, tuple[tuple[int, ...], str]] = {}
    for claim in claims:
        steps = claim.steps()
        sizes = len(claim.printed.numbers)
        if steps is None and claim.is_chain and (wrong := _where_it_fails(claim, courses, speaker)) is not None:
            yield wrong
        elif steps is None:
            yield RowProblem(claim.row, _impossible(claim, speaker), claim.printed.span, kind=CLAIM)
        elif not claim.grows or not courses.multiple:
            continue
        elif sizes in agreed and agreed[sizes][0] != steps:
            yield RowProblem(claim.row, _disagreeing(claim, agreed[sizes], speaker), claim.printed.span, kind=CLAIM)
        else:
            agreed.setdefault(sizes, (steps, claim.name))


def _wrong_on_own_chain(pattern: WrittenPattern, courses: Courses, speaker: Speaker) -> Iterator[RowProblem]:
    """The counts that the rows do not hold on the chain that the text says; none if its first count speaks against that chain."""
    stated = pattern.chain_sizes
    if stated is None or len(stated.numbers) != 1 or courses.in_ring or not 1 < stated.numbers[0] < MOST_CHAINS:
        return
    chain = stated.numbers[0]
    laid = on_chain([course.row for course in courses.rows], courses.ways, chain)
    chains_count = bool(courses.ways.get(CHAINS_COUNT))
    agrees = False
    for course in laid.rows:
        for printed in course.row.counts:
            held = _held(course.made.at(0), printed, chains_count)
            if printed.numbers == (held,):
                agrees = True
            elif not agrees:
                return
            else:
                says = f"{course.row.name} says {speaker.quoted(printed.span)}, but on {chain} chains it holds {held}."
                yield RowProblem(course.row.number, says, printed.span, kind=CLAIM)
    if agrees and laid.stopped is not None and laid.misfit is not None:
        yield _stopped(laid.stopped, laid.misfit, chain, speaker)


def _where_it_fails(claim: _Claim, courses: Courses, speaker: Speaker) -> RowProblem | None:
    """The first row that does not work on the chain that the text says; None if that is not to be seen."""
    for number in claim.printed.numbers:
        if claim.grows and number >= claim.first and (number - claim.first) % claim.grows == 0:
            continue
        if number == claim.first or not 1 < number < MOST_CHAINS:
            continue
        laid = on_chain([course.row for course in courses.rows], courses.ways, number)
        if laid.stopped is not None and laid.misfit is not None:
            return _stopped(laid.stopped, laid.misfit, number, speaker)
    return None


def _stopped(row: WrittenRow, misfit: Misfit, chain: int, speaker: Speaker) -> RowProblem:
    why = speaker.misfit(row, misfit).replace(" at every width", "")
    return RowProblem(row.number, f"On {chain} chains, as the text says: {why}", misfit.trouble.span)


def _claims(pattern: WrittenPattern, courses: Courses) -> Iterator[_Claim]:
    chains_count = bool(courses.ways.get(CHAINS_COUNT))
    if pattern.chain_sizes is not None and courses.rows and not courses.in_ring:
        yield _Claim(
            courses.rows[0].row.number, "The starting chain", pattern.chain_sizes, courses.smallest, courses.multiple, True
        )
    for course in courses.rows:
        for printed in course.row.counts:
            first, second = (_held(course.made.at(step), printed, chains_count) for step in (0, 1))
            yield _Claim(course.row.number, course.row.name, printed, first, second - first)


def _held(row: Row, printed: PrintedCount, chains_count: bool) -> int:
    if printed.exact:
        return sum(place.kind == printed.wanted.kind for place in row)
    if printed.beside_groups:
        row = tuple(place for place in row if place.group is None or place.group[1] < 2 or place.group[0].startswith(BLOCK))
    return Finder(row, chains_count).left(0, printed.wanted)


def _impossible(claim: _Claim, speaker: Speaker) -> str:
    printed = speaker.quoted(claim.printed.span)
    if not claim.grows:
        return f"{claim.name} says {printed}, but holds {claim.first}."
    number = next(n for n in claim.printed.numbers if (n - claim.first) % claim.grows or n < claim.first)
    below = claim.first + max(number - claim.first, 0) // claim.grows * claim.grows
    return f"{claim.name} says {printed}, but {number} is at no width: {below} or {below + claim.grows} would be."


def _disagreeing(claim: _Claim, agreed: tuple[tuple[int, ...], str], speaker: Speaker) -> str:
    should = ", ".join(str(claim.first + claim.grows * step) for step in agreed[0])
    other = agreed[1].replace("The ", "the ", 1)
    return f"{claim.name} says {speaker.quoted(claim.printed.span)}, but where {other} fits it holds {should}."
