"""Proves written rows: the one entry from a text to all that its rows say of themselves."""

import re
from bisect import bisect_left
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from logbook.craft.rows.beyond import Beyond, beyond
from logbook.craft.rows.courses import Course, Courses, closes, fit_at_one_width, lay_all, leads_back
from logbook.craft.rows.dotted import undotted
from logbook.craft.rows.every_width import FittingSteps, Misfit
from logbook.craft.rows.in_every_size import in_all_sizes, of_size
from logbook.craft.rows.instructions import NEW_YARN, Work, WrittenPattern, WrittenRow
from logbook.craft.rows.laying import TIMES_IN_ALL
from logbook.craft.rows.lines import MOST_TEXT
from logbook.craft.rows.mend_search import likely_mends, mended, nearest
from logbook.craft.rows.mending import MendedRow
from logbook.craft.rows.places import Row, spaces, stitches
from logbook.craft.rows.printed_counts import wrong_counts
from logbook.craft.rows.reader import read
from logbook.craft.rows.report import CLAIM, DOES_NOT_FIT, NOT_UNDERSTOOD, Linear, Proof, RowCount, RowProblem
from logbook.craft.rows.sentences import Speaker
from logbook.craft.rows.starting_chain import misstated, with_chain
from logbook.craft.rows.unsaid_openings import questions, read_as
from logbook.craft.rows.ways import Tried, try_ways
from logbook.craft.words.counting import ordinal
from logbook.craft.words.decimal_commas import with_points
from logbook.craft.words.terms import Terms, terms_proved_by

ROWS_LOOKED_BACK = 40  # a group of more rows is told to be repeated by the text
OPEN = ("which", "edge")  # troubles that the text leaves open rather than gets wrong
COUNT_CHAINS = "If chains are meant to count as stitches, all rows fit: write “Each ch counts as a st.”"


def prove(text: str, terms: Terms | None = None, chains_count: bool | None = None, suggest: bool = True) -> Proof:
    """Reads and lays the rows of ``text``.

    ``terms``: what its stitches are named in; None: what the text proves, else US. ``chains_count``: whether chains count as
    stitches in "sk N sts" and "to last N sts"; None: as the text says, else not. ``suggest``: look for the nearest change that
    mends a trouble (some times the work of the proof itself).
    """
    first = _proving(text, terms, chains_count, suggest)
    if first.pattern.sizes == 1:
        return first.proof()
    sizes = range(first.pattern.sizes)
    return in_all_sizes([_proving(text, terms, chains_count, suggest and size == 0, size).proof() for size in sizes])


def fitting_rows(text: str, terms: Terms | None = None, chains_count: bool | None = None) -> Courses:
    """The rows of ``text`` as far as they are understood and fit, each laid onto the one below at every width."""
    found = _proving(text, terms, chains_count, suggest=False).tried().best
    named = text[: found.rows[0].row.span.start] if found.rows else ""
    return replace(found, wrong_side_first=bool(_WRONG_SIDE.search(named)))


_WRONG_SIDE = re.compile(r"[(\[]\s*(?:ws|wrong side)\b[^)\]\n]*[)\]]\s*[:.]?\s*\Z", re.IGNORECASE)


def _proving(text: str, terms: Terms | None, chains_count: bool | None, suggest: bool, size: int = 0) -> "_Proving":
    told = terms or _terms_of(text)
    pattern = read(undotted(with_points(text)), told or Terms.US, size)
    if pattern.sizes > 1:
        pattern = of_size(pattern, size)
    if chains_count is not None:
        pattern = replace(pattern, chains_count=chains_count)
    return _Proving(text, pattern, Speaker(text, told or Terms.US), suggest, told is None)


def _terms_of(text: str) -> Terms | None:
    """What the text says or proves; words for skipping prove nothing when the stitches speak against them."""
    text = text[:MOST_TEXT]
    said = re.search(r"\b(US|UK) terms?\b", text, re.IGNORECASE)
    if said:
        return Terms(said[1].upper())
    proved = terms_proved_by(text)
    parted = re.sub(r"(?<=\d)(?=[a-z])", " ", text, flags=re.IGNORECASE)  # "2htr"
    return proved or terms_proved_by(parted) or terms_proved_by(text.replace("sk", "").replace("miss", ""))


@dataclass(frozen=True, slots=True)
class _Proving:
    """One text on its way to its proof."""

    text: str
    pattern: WrittenPattern
    speaker: Speaker
    suggest: bool
    terms_unsaid: bool

    def tried(self) -> Tried:
        return try_ways(self.pattern, self._understood(), self.speaker)

    def proof(self) -> Proof:
        tried = self.tried()
        courses = tried.best
        problems = [RowProblem(fault.row, fault.says, fault.span, kind=NOT_UNDERSTOOD) for fault in self.pattern.faults]
        problems += self._troubles(tried)
        above = beyond(self.pattern, self._faulty(), courses.ways, self.speaker) if courses.fits else Beyond()
        problems += above.problems
        statements = [*self._of_reading(tried), *self._of_widths(courses)]
        back = None
        if courses.rows and not problems:
            back, more, said = self._leading_back(courses)
            problems += more
            statements += said
        wrong = wrong_counts(self.pattern, courses, self.speaker)
        problems += (replace(problem, suggestion=COUNT_CHAINS if tried.with_chains else "") for problem in wrong)
        problems = [self._as_sure(problem, problems) for problem in problems]
        problems += questions(tried, self.speaker)
        if courses.fits and not problems:
            problems += misstated(self.pattern.stated, courses, self.speaker)
        problems = sorted(problems, key=lambda problem: problem.span.start)
        return replace(
            self._filled_in(courses, back, problems, statements),
            notes=self.pattern.notes,
            remarks=tuple(self._passed(courses)),
            beyond=tuple(above.rows),
        )

    def _as_sure(self, problem: RowProblem, problems: list[RowProblem]) -> RowProblem:
        """A trouble behind words set aside that could be work is one of not understanding, up to the next count that holds."""
        if problem.kind not in (DOES_NOT_FIT, CLAIM) or not self.pattern.unsure:
            return problem
        named = {each.row for each in problems}
        row = next((row for row in self.pattern.rows if row.number == problem.row), None)
        end = row.span.end if row else problem.span.end
        sure = [each.span.end for each in self.pattern.rows if each.counts and each.number not in named and each.span.end < end]
        aside = [span for span in self.pattern.unsure if max(sure, default=0) <= span.start < end]
        if not aside:
            return problem
        says = f"{problem.says} {self.speaker.quoted(aside[-1])} was taken as a remark."
        return replace(problem, says=says, kind=NOT_UNDERSTOOD)

    def _understood(self) -> tuple[WrittenRow, ...]:
        """The rows up to the first that holds something not understood."""
        faulty = self._faulty()
        return self.pattern.rows[: faulty.index(True)] if True in faulty else self.pattern.rows

    def _faulty(self) -> list[bool]:
        """Which rows hold something not understood."""
        starts = sorted(fault.span.start for fault in self.pattern.faults)
        rows = self.pattern.rows
        return [bisect_left(starts, row.span.start) < bisect_left(starts, row.span.end + 1) for row in rows]

    def _filled_in(self, courses: Courses, back: int | None, problems: list[RowProblem], statements: list[str]) -> Proof:
        proof = Proof(self.speaker.terms, problems=tuple(problems), statements=tuple(statements), leads_back_to=back)
        if not courses.rows:
            return proof
        multiple = courses.multiple
        least = courses.smallest // multiple if multiple else 0
        proof = replace(proof, rows=tuple(_row_count(course, least) for course in courses.rows))
        if courses.rows[0].row.own_chain:
            return replace(proof, smallest=courses.rows[0].row.own_chain)
        if courses.in_ring or self._on_edge():
            return proof
        if multiple:
            proof = replace(proof, multiple=multiple, chain_constant=courses.smallest % multiple)
        return replace(with_chain(proof, courses), smallest=courses.smallest)

    def _on_edge(self) -> bool:
        """Whether row 1 is worked onto an edge of another piece, to which its yarn is joined."""
        first = self.pattern.rows[0].begins_with
        joined = bool(first) and isinstance(last := first[-1], Work) and last.made.name == NEW_YARN
        return (joined or self.pattern.on_edge) and self.pattern.chain_sizes is None

    def _troubles(self, tried: Tried) -> Iterator[RowProblem]:
        courses = tried.best
        for course in courses.rows:
            if course.now_and_then > 1:
                yield RowProblem(course.row.number, _now_and_then(course, courses.multiple), course.row.span)
        if courses.stopped is not None and courses.misfit is not None:
            row, misfit = courses.stopped, courses.misfit
            mended = COUNT_CHAINS if tried.with_chains else ""
            if self.suggest and not mended and not misfit.unproven and misfit.trouble.sort not in OPEN:
                mended = self._mended(courses)
            kind = NOT_UNDERSTOOD if misfit.unproven or misfit.trouble.sort in OPEN else DOES_NOT_FIT
            yield RowProblem(row.number, self.speaker.misfit(row, misfit), misfit.trouble.span, mended, kind)

    def _mended(self, courses: Courses) -> str:
        """The nearest change after which the whole text is proven; "" if none is."""
        for change in likely_mends(self._understood(), courses, self.speaker, lambda laid: self._back_to(laid) is not None):
            if prove(mended(self.text, change), self.speaker.terms, self.pattern.chains_count, suggest=False).proven:
                return _suggestion(change)
        return ""

    def _leading_back(self, courses: Courses) -> tuple[int | None, list[RowProblem], list[str]]:
        """(the row that follows the last one, troubles, statements)"""
        index = {course.row.number: at for at, course in enumerate(courses.rows)}
        first, last = self.pattern.repeat_from, self.pattern.repeat_to
        if first is not None and last is not None:
            if first not in index or last not in index or last < first:
                says = f"There is no row {first if first not in index else last} to repeat."
                return None, [RowProblem(last, says, self.pattern.repeat_span)], []
            return self._declared(courses, index[first], index[last])
        back = self._back_to(courses)
        if back is not None or len(courses.rows) < 2:
            return back, [], []
        return self._never_back(courses)

    def _back_to(self, courses: Courses) -> int | None:
        last = len(courses.rows) - 1
        for index in range(max(1, last - ROWS_LOOKED_BACK), last + 1):
            if closes(courses, last, index):
                return courses.rows[index].row.number
        return None

    def _declared(self, courses: Courses, first: int, last: int) -> tuple[int | None, list[RowProblem], list[str]]:
        row, end = courses.rows[first].row, courses.rows[last].row
        fit = leads_back(courses, last, first)
        if closes(courses, last, first):
            return row.number, [], []
        if isinstance(fit, FittingSteps):
            if fit.by == 1 or (fit.by, fit.first) == (0, 0):
                return None, [], [f"{row.name} fits onto {end.name}, but does not come out as it did: the rows are shaped."]
            says = f"{end.name} does not lead back to {row.name}, which fits onto it only at some widths."
        else:
            says = f"{end.name} does not lead back to {row.name}: {self.speaker.misfit(row, fit)}"
        return None, [RowProblem(end.number, says, self.pattern.repeat_span)], []

    def _never_back(self, courses: Courses) -> tuple[int | None, list[RowProblem], list[str]]:
        """No row leads back: said, or a trouble if one number less or more in the last row would make it, and nothing fits on
        it now.
        """
        last = len(courses.rows) - 1
        end = courses.rows[last].row
        fits = [leads_back(courses, last, at) for at in range(max(1, last - ROWS_LOOKED_BACK), last + 1)]
        if any(isinstance(fit, Misfit) and fit.unproven for fit in fits):
            return None, [], [f"Whether {end.name} leads back to an earlier row took too long to find out."]
        if any(isinstance(fit, FittingSteps) for fit in fits):
            return None, [], [f"The rows are shaped: {end.name} does not lead back to a row with the same count."]
        below = lay_all([course.row for course in courses.rows[:-1]], courses.ways)
        for change in () if end.counts or courses.multiple < 2 else nearest(end, 1, end.span, self.speaker):
            if not fit_at_one_width(below, [change.row], courses):
                continue
            laid = lay_all([change.row], courses.ways, below)
            back = self._back_to(laid) if laid.fits and laid.multiple == courses.multiple else None
            if back is not None and _ends_as_before(courses, laid, back) and self._proves(change, back):
                says = f"Nothing fits onto {end.name}, though with one number changed row {back} would follow it again."
                return None, [RowProblem(end.number, says, change.span, _suggestion(change))], []
        return None, [], [f"{end.name} does not lead back to an earlier row."]

    def _proves(self, change: MendedRow, back: int) -> bool:
        proof = prove(mended(self.text, change), self.speaker.terms, self.pattern.chains_count, suggest=False)
        return proof.proven and proof.leads_back_to == back

    def _of_reading(self, tried: Tried) -> Iterator[str]:
        courses = tried.best
        if self.terms_unsaid and re.search(r"\b(?:dc|tr|dtr)", self.text, re.IGNORECASE):
            yield "Read in US terms: no word of the rows says which terms they use."
        if courses.ways.get(TIMES_IN_ALL):
            yield "“Rep from * N times” is taken as N times in all: only so do the rows fit."
        yield from read_as(tried, self.speaker)

    def _of_widths(self, courses: Courses) -> Iterator[str]:
        if courses.rows and not courses.multiple and not courses.in_ring:
            yield f"The rows fit at one width only, {courses.smallest} chains."

    def _passed(self, courses: Courses) -> Iterator[RowProblem]:
        """Remarks: spaces that are passed over on the way to another, unsaid."""
        for course in courses.rows:
            for span in dict.fromkeys(span for span, _ in course.laid.passed):
                says = f"{course.row.name} passes over a space to reach {self.speaker.quoted(span)}; nothing says to skip it."
                yield RowProblem(course.row.number, says, span)


def _ends_as_before(courses: Courses, laid: Courses, back: int) -> bool:
    """Whether the last row laid is the same as the row before number ``back``: then it most likely was meant to be."""
    before = [course for course in courses.rows if course.row.number < back]
    return bool(before) and before[-1].made == laid.rows[-1].made


def _suggestion(change: MendedRow) -> str:
    return f"{change.row.name}: “{change.instead}” instead of “{change.was}” would fix it."


def _now_and_then(course: Course, multiple: int) -> str:
    return (
        f"{course.row.name} fits only at every {ordinal(course.now_and_then)} repeat of the rows below it: what they grow by and "
        f"what its own repeat takes do not divide each other. A multiple of {multiple} would be needed."
    )


def _row_count(course: Course, least: int) -> RowCount:
    row = course.row
    return RowCount(row.number, row.name, row.span, _linear(course, least, stitches), _linear(course, least, spaces))


def _linear(course: Course, least: int, count: Callable[[Row], int]) -> Linear:
    first = count(course.made.at(0))
    per = count(course.made.at(1)) - first
    return Linear(per, first - per * least)
