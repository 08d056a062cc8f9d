"""A pasted text held against the numbers of a garment or a run: what of it is marked, and which mark comes next."""

from collections.abc import Sequence
from dataclasses import dataclass

from logbook.craft.proofreading.judging import FoundQuantity, Verdict
from logbook.craft.proofreading.text_checks import TextProblem
from logbook.craft.proofreading.text_lines import TextLines
from logbook.craft.words.counting import counted
from logbook.errors import RefusedError
from logbook.tasks.proofreading import Held, Proofread, agreement_words, expected_words, proofread, require_text, what_words

TROUBLE, UNKNOWN = "trouble", "unknown"
NOTHING_YET = "Paste the finished text of the pattern here: what differs from the logbook is marked in it."


@dataclass(frozen=True, slots=True)
class MarkedText:
    """A stretch of the text from ``start`` up to ``end``, and what is said of it. ``sort``: ``trouble`` or ``unknown``."""

    start: int
    end: int
    sort: str
    says: str


@dataclass(frozen=True, slots=True)
class Marked:
    """All marks in their order, and one sentence on the whole."""

    marks: tuple[MarkedText, ...]
    says: str

    @property
    def troubles(self) -> tuple[MarkedText, ...]:
        """Those that are gone through with the keys."""
        return tuple(mark for mark in self.marks if mark.sort == TROUBLE)


def marked(text: str, held: Held) -> Marked:
    """What is marked in ``text``. A text that is empty or too long has no marks and a sentence."""
    if not text.strip():
        return Marked((), NOTHING_YET)
    try:
        read = proofread(require_text(text), held)
    except RefusedError as error:
        return Marked((), str(error))
    marks = [_of_number(one) for one in read.found if one.verdict is not Verdict.AGREES]
    lines = TextLines(text)
    marks += [_of_problem(lines, problem) for problem in read.problems]
    return Marked(tuple(sorted(marks, key=lambda mark: (mark.start, mark.end))), _on_the_whole(read))


def _of_number(one: FoundQuantity) -> MarkedText:
    quantity = one.quantity
    if one.verdict is Verdict.UNKNOWN:
        return MarkedText(quantity.start, quantity.end, UNKNOWN, f"“{quantity.text}” is not in the logbook.")
    says = f"“{quantity.text}” differs: the logbook has {expected_words(one)} ({what_words(one)})."
    return MarkedText(quantity.start, quantity.end, TROUBLE, says)


def _of_problem(lines: TextLines, problem: TextProblem) -> MarkedText:
    if problem.end:
        return MarkedText(problem.start, problem.end, TROUBLE, problem.says)
    start = lines.start(problem.line)
    return MarkedText(start, start + max(len(lines[problem.line]), 1), TROUBLE, problem.says)


def _on_the_whole(read: Proofread) -> str:
    verdicts = [one.verdict for one in read.found]
    differing, unknown = verdicts.count(Verdict.DIFFERS), verdicts.count(Verdict.UNKNOWN)
    said = [f"{differing} differ{'s' if differing == 1 else ''}."] if differing else []
    said += [f"{counted(len(read.problems), 'problem')} in the text itself."] if read.problems else []
    said += [f"{unknown} {'is' if unknown == 1 else 'are'} not in the logbook."] if unknown else []
    if verdicts and not said:
        said = ["Nothing differs."]
    return " ".join([agreement_words(read), *said])


def next_mark(marks: Sequence[tuple[int, int]], at: int, back: bool = False) -> int | None:
    """The index of the next of these stretches (start, end) behind ``at``, or before it, round and round; None: there is none."""
    if not marks:
        return None
    places = range(len(marks))
    if back:
        return max((place for place in places if marks[place][0] < at), default=len(marks) - 1)
    return min((place for place in places if marks[place][0] > at), default=0)
