"""What the button beside a join that does not fit does: its remedy in each size in which it does not fit, in one change."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from logbook.craft.garments.remedies import JoinRemedy
from logbook.craft.words.counting import counted, listed
from logbook.craft.words.lengths import MM_PER_INCH, Units, show_length
from logbook.craft.words.numbers import fixed
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.garments.garment_texts import piece_key
from logbook.pages.garments.own_sizes import sizes_text, with_own_measure
from logbook.tasks.garment_words import GarmentProblem

_MOST_NAMED = 3
"""So many sizes are named on a button; of more it is said how many."""


@dataclass(frozen=True, slots=True)
class JoinFix:
    """The remedies of one join by size; ``of`` are the names of all sizes there are."""

    remedies: tuple[tuple[str, JoinRemedy], ...]
    of: tuple[str, ...]

    def words(self, units: Units) -> str:
        """``Work 12 rows more in all sizes``: what the button does, and where if there are several sizes."""
        said = {_change(remedy, units) for _, remedy in self.remedies}
        change = said.pop() if len(said) == 1 else "Make it fit"
        return f"{change} {where}" if (where := self._where()) else change

    def done(self) -> str:
        """What was done, as a sentence."""
        where = f" {self._where()}" if self._where() else ""
        return f"The form is changed so that it fits{where}; it is not saved yet."

    def _where(self) -> str:
        names = [name for name, _ in self.remedies]
        if len(self.of) == 1:
            return ""
        if len(names) == len(self.of):
            return "in all sizes"
        return f"in {listed(names)}" if len(names) <= _MOST_NAMED else f"in {counted(len(names), 'size')}"

    def take(self, form: GarmentForm, units: Units) -> None:
        """Types it into the form: into the piece where one measure mends all sizes, else as each size's own measure."""
        read = form.read()
        said = {(remedy.piece, remedy.measure, _text(remedy, units)) for _, remedy in self.remedies}
        everywhere = len(said) == 1 and len(self.remedies) == len(self.of)
        sizes = read.plan.sizes.typed
        own = {(size.name, piece, measure) for size in sizes for piece, own in size.pieces.items() for measure in own}
        for name, remedy in self.remedies:
            if not everywhere or (name, remedy.piece, remedy.measure) in own:
                sizes = with_own_measure(sizes, name, remedy.piece, remedy.measure, _text(remedy, units))
        if everywhere:
            piece, measure, text = said.pop()
            number = next(number for number, one in read.pieces.items() if one.name == piece)
            form.type_in(piece_key(number, measure), text)
        if sizes != read.plan.sizes.typed:
            form.type_in("own sizes", sizes_text(sizes))


def fixes_of(
    problems: Sequence[GarmentProblem], said: Mapping[str, Sequence[GarmentProblem]], sizes: Sequence[str]
) -> dict[str, JoinFix]:
    """By the sentence of each problem that has a remedy; ``said`` has the problems of the sizes that are worked out, by name."""
    found = {}
    for problem in (one for one in problems if one.remedy is not None):
        of_join = [
            (name, next((one.remedy for one in said.get(name, ()) if one.join == problem.join and one.remedy), None))
            for name in sizes
        ]
        remedies = tuple((name, remedy) for name, remedy in of_join if remedy is not None)
        found[problem.sentence] = JoinFix(remedies, tuple(sizes))
    return found


def _text(remedy: JoinRemedy, units: Units) -> str:
    return f"{fixed(remedy.mm / 10, 2)} cm" if units is Units.CM else f"{fixed(remedy.mm / float(MM_PER_INCH), 3)} in"


def _change(remedy: JoinRemedy, units: Units) -> str:
    if not remedy.more:
        return f"Use {show_length(remedy.mm, units)}"
    unit = counted(abs(remedy.more), "stitch" if remedy.along == "stitches" else "row")
    return f"Work {unit} {'more' if remedy.more > 0 else 'fewer'}"
