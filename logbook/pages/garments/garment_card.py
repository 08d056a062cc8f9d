"""What follows from the garment in hand, in the size shown at once and in the others when there is time for them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from logbook.craft.garments.body import GarmentSize, SizeMeasures
from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import GarmentInSize, Possible, work_out_possible
from logbook.craft.garments.plan import GarmentPlan
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import EDGING
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.lengths import Units, show_length
from logbook.craft.words.numbers import grouped
from logbook.errors import LogbookError, RefusedError
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.garments.garment_texts import ReadGarment, piece_key
from logbook.pages.garments.join_fix import JoinFix, fixes_of
from logbook.pages.garments.own_sizes import own_words
from logbook.pages.session import Session
from logbook.tasks.garment_words import GarmentProblem, doubt_of, notes, problems_of
from logbook.tasks.garments import GarmentAnswer, cloths_of, sizes_for
from logbook.tasks.money_words import price_words, sentence_of, time_words
from logbook.tasks.pieces import Basis

NOT_YET = "—"
NO_PIECES = "It has no pieces yet: “Add a piece” adds one."


@dataclass(frozen=True, slots=True)
class GarmentCard:
    """The garment in the size shown. ``answer`` has that size alone; None while not even its sizes are known, which ``missing``
    explains. ``fixes`` is what mends a problem, by its sentence, in the sizes that are worked out. ``values`` is what each
    measure of the piece chosen comes to, in words, and ``hints`` is what else is said of it; ``errors`` has a sentence for
    each text that stands in the way, by its name; ``refused`` one for each piece that can't be worked out yet.
    """

    sizes: tuple[str, ...] = ()
    size: str = ""
    answer: GarmentAnswer | None = None
    chosen: ShapedPiece | None = None
    headline: str = NOT_YET
    sentences: Sequence[str] = ()
    missing: Sequence[str] = ()
    problems: Sequence[GarmentProblem] = ()
    fixes: Mapping[str, JoinFix] = field(default_factory=dict)
    notes: Sequence[str] = ()
    values: Mapping[str, str] = field(default_factory=dict)
    hints: Mapping[str, str] = field(default_factory=dict)
    errors: Mapping[str, str] = field(default_factory=dict)
    refused: Mapping[str, str] = field(default_factory=dict)

    @property
    def garment(self) -> GarmentInSize | None:
        """Everything in the size shown."""
        return self.answer.numbers[0] if self.answer is not None else None

    @property
    def headline_of_size(self) -> str:
        """The headline, with the size it is of where there are several: ``S: 5 pieces, 308 g, 4 balls``."""
        return self.headline if len(self.sizes) < 2 or self.headline == NOT_YET else f"{self.size}: {self.headline}"

    @property
    def bad_pieces(self) -> frozenset[str]:
        """The pieces that something is wrong with."""
        return frozenset(self.refused) | {name for problem in self.problems for name in problem.pieces}


class GarmentMaker:
    """Makes the card; keeps what the logbook says of swatches until ``refresh``. Other sizes are worked out one a ``step``."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._known: dict[str, Basis] = {}
        self._plan: GarmentPlan | None = None
        self.sizes: tuple[GarmentSize, ...] = ()
        self._cloths: dict[str, Cloth] = {}
        self._swatches: dict[str, Swatch] = {}
        self._no_cloth: dict[str, str] = {}
        self._done: dict[str, Possible] = {}
        self._said: dict[str, tuple[GarmentProblem, ...]] = {}

    def refresh(self) -> None:
        """The logbook has changed: takes from it again."""
        self._known.clear()
        self._plan = None

    def card(self, form: GarmentForm, size: str) -> GarmentCard:
        """The card for the garment as typed, in the size of that name or the first."""
        read = form.read()
        try:
            self._take(read)
        except LogbookError as error:
            return GarmentCard(missing=(str(error),), errors=read.errors)
        shown = next((one for one in self.sizes if one.name == size), self.sizes[0])
        possible = self._possible(shown)
        answer = self._answer(shown, possible)
        chosen_name = form.piece_text("name") if form.piece else ""
        chosen = next((piece for piece in possible.garment.pieces if piece.name == chosen_name), None)
        units = self._session.units
        refused = {**self._no_cloth, **possible.pieces}
        values, hints, errors = self._values(read, form.piece, shown, units)
        problems = self._problems(shown, answer)
        missing = [refused[chosen_name]] if chosen_name in refused else [*refused.values(), *possible.joins.values()]
        return GarmentCard(
            sizes=tuple(one.name for one in self.sizes),
            size=shown.name,
            answer=answer,
            chosen=chosen,
            headline=NOT_YET if chosen_name and chosen is None else piece_headline(chosen) if chosen else whole_headline(answer),
            sentences=piece_sentences(chosen, units) if chosen else () if read.pieces else (NO_PIECES,),
            missing=missing,
            problems=problems,
            fixes=self.fixes(problems),
            notes=notes(answer, possible.garment, units),
            values=values,
            hints=hints,
            errors={**read.errors, **errors},
            refused=refused,
        )

    def fixes(self, problems: Sequence[GarmentProblem]) -> dict[str, JoinFix]:
        """What mends these problems of one size, in all sizes that are worked out yet and have them."""
        return fixes_of(problems, self._said, [size.name for size in self.sizes])

    def step(self) -> bool:
        """Works out one more size; False if all are."""
        for size in self.sizes:
            if size.name not in self._said:
                self._problems(size, self._answer(size, self._possible(size)))
                return True
        return False

    @property
    def bad_sizes(self) -> frozenset[str]:
        """The sizes, of those worked out yet, in which something is wrong."""
        return frozenset(name for name, said in self._said.items() if said or self._done[name].pieces or self._done[name].joins)

    def in_sizes(self) -> list[tuple[GarmentInSize, tuple[GarmentProblem, ...]]]:
        """Those worked out yet, in their order, with what is wrong."""
        return [(self._done[one.name].garment, self._said.get(one.name, ())) for one in self.sizes if one.name in self._done]

    def whole(self) -> GarmentAnswer:
        """The garment in all its sizes. Raises RefusedError, in one sentence, if something is missing."""
        if self._plan is None:
            raise RefusedError("There is nothing to write down yet: add a piece.")
        while self.step():
            pass
        if not self._plan.pieces:
            raise RefusedError("There is nothing to write down yet: add a piece.")
        for size in self.sizes:
            done = self._done[size.name]
            why = next(iter((*self._no_cloth.values(), *done.pieces.values(), *done.joins.values())), None)
            if why is not None:
                raise RefusedError(why)
        numbers = tuple(self._done[size.name].garment for size in self.sizes)
        return GarmentAnswer(self._plan, self.sizes, self._cloths, self._swatches, numbers)

    def _take(self, read: ReadGarment) -> None:
        """Another plan: nothing that was worked out of the one before holds any more."""
        if read.plan == self._plan:
            return
        self._plan = None
        self.sizes = sizes_for(read.plan, self._session.book)
        self._plan = read.plan
        self._no_cloth = {}

        def refused(piece: str, error: RefusedError) -> None:
            self._no_cloth[piece] = str(error)

        self._cloths, self._swatches = cloths_of(read.plan, self._session.book, self._known, refused)
        self._done.clear()
        self._said.clear()

    def _possible(self, size: GarmentSize) -> Possible:
        if size.name not in self._done:
            assert self._plan is not None
            self._done[size.name] = work_out_possible(self._plan, size, self._cloths)
        return self._done[size.name]

    def _answer(self, size: GarmentSize, possible: Possible) -> GarmentAnswer:
        assert self._plan is not None
        return GarmentAnswer(self._plan, (size,), self._cloths, self._swatches, (possible.garment,))

    def _problems(self, size: GarmentSize, answer: GarmentAnswer) -> tuple[GarmentProblem, ...]:
        if size.name not in self._said:
            self._said[size.name] = problems_of(answer, answer.numbers[0], self._session.units)
        return self._said[size.name]

    def _values(self, read: ReadGarment, number: int, size: GarmentSize, units: Units) -> tuple[dict[str, str], ...]:
        """What the measures of a piece come to, what else is said of each, and a sentence for each that comes to nothing."""
        values: dict[str, str] = {}
        hints: dict[str, str] = {}
        errors: dict[str, str] = {}
        piece = read.pieces.get(number)
        measures = SizeMeasures(read.plan, size)
        for measure in piece.kind.measures if piece is not None else ():
            key = piece_key(number, measure)
            if key in read.errors or piece is None:
                continue
            try:
                mm = measures.get(piece, measure)
            except LogbookError as error:
                errors[key] = str(error)
            else:
                values[measure] = "" if mm is None else show_length(mm, units)
                doubt = "" if mm is None else doubt_of(mm, units)
                own = own_words(read.plan.sizes.typed, piece.name, measure)
                hints[measure] = " ".join(filter(None, (f"It {doubt}" if doubt else "", own)))
        return values, hints, errors


def piece_headline(piece: ShapedPiece) -> str:
    """``Chain 36, 90 rows``."""
    rows = f"{piece.rows} {'round' if piece.in_round else 'row'}{'' if piece.rows == 1 else 's'}"
    if piece.planned.shape == EDGING:
        return f"Pick up {piece.foundation}, {rows}"
    if not piece.foundation:
        return f"From the middle, {rows}"
    begin = f"{piece.foundation} stitches" if piece.chain is None else f"Chain {piece.chain}"
    return f"{begin}, {rows}"


def piece_sentences(piece: ShapedPiece, units: Units) -> tuple[str, ...]:
    """What comes out of a piece: its stitches, its width and length, how sure that is."""
    first, last = piece.levels[0], piece.levels[-1]
    counts = f"{first.stitches} stitches" if first.stitches == last.stitches else f"{first.stitches} to {last.stitches} stitches"
    wide = show_length(last.width_mm, units)
    if first.stitches not in (0, last.stitches):
        wide = f"{show_length(first.width_mm, units)} at the start, {wide} at the end"
    sure = "" if piece.give_or_take_mm is None else f", give or take {show_length(piece.give_or_take_mm, units)}"
    return (f"{counts}; {wide}{sure}; {show_length(piece.rows * piece.row_mm, units)} long.",)


def whole_headline(answer: GarmentAnswer) -> str:
    """``2 pieces, 412 g``."""
    garment = answer.numbers[0]
    pieces = sum(piece.planned.alike for piece in garment.pieces if piece.planned.shape != EDGING)
    if not pieces:
        return NOT_YET
    grams = sum(of.needed.grams for of in garment.yarn)
    balls = [of.needed.balls for of in garment.yarn]
    said = f"{pieces} piece{'' if pieces == 1 else 's'}"
    if grams:
        said += f", {grouped(grams)} g"
    if balls and all(one is not None for one in balls):
        count = sum(one or 0 for one in balls)
        said += f", {count} ball{'' if count == 1 else 's'}"
    return said


def yarn_sentences(garment: GarmentInSize, alone: bool) -> list[str]:
    """What the whole takes, yarn by yarn, its hours and its cost; not ``alone``: headed by the size."""
    said = []
    for of in garment.yarn:
        name = " ".join(part for part in (of.yarn, of.colour) if part) or "Yarn"
        metres = "" if of.needed.metres is None else f", {grouped(of.needed.metres)} m"
        balls = "" if of.needed.balls is None else f", {of.needed.balls} ball{'' if of.needed.balls == 1 else 's'}"
        said.append(f"{name}: {grouped(of.needed.grams)} g{metres}{balls}.")
    if garment.time is not None and garment.pieces:
        said.append(sentence_of(time_words(garment.time)))
    said += price_words(garment.price, garment.hours, garment.rate)
    return said if alone else [f"In {garment.name}: {said[0]}", *said[1:]] if said else []
