"""Planned pieces: worked out from a swatch, saved, copied, deleted, found."""

import sqlite3
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import chain, count

from logbook.book import pieces as kept
from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.logbook import Logbook
from logbook.book.swatch_lists import swatches_of_yarn
from logbook.book.swatches import swatch_of_tag, swatch_there, swatches
from logbook.craft.gauges.drift import Drifts, drifts_of
from logbook.craft.pieces.edge_stitches import EdgeStitch
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.notes import Note, Plain
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges, gauges_for
from logbook.craft.pieces.piece_notes import gauge_remarks, remarks_on, warnings_on
from logbook.craft.pieces.piece_numbers import work_out
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.sizes.body_chart import is_childs_size
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.gauge import gauge_of
from logbook.craft.swatches.readings import Reading
from logbook.craft.swatches.stitch_pattern import StitchPattern, with_first_stitch
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.tasks.drift import learnt_drift


@dataclass(frozen=True, slots=True, kw_only=True)
class Basis:
    """What a piece is reckoned from: its swatch, the ``others`` of the yarn, who may lend washing and edge stitches, and the
    swatch chosen for the edges (None: none chosen). ``edge`` is an edge stitch said by hand instead.
    """

    swatch: Swatch
    others: tuple[Swatch, ...] = ()
    edge_swatch: Swatch | None = None
    edge: EdgeStitch | None = None
    assumed: Assumptions
    drift: Drifts


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceAnswer:
    """A piece worked out: its plan, the gauges it was reckoned with, its numbers, and what is to be said beside them: warnings,
    which must not be overlooked, and remarks.
    """

    plan: PiecePlan
    gauges: PieceGauges
    numbers: PieceNumbers
    warnings: tuple[Note, ...]
    remarks: tuple[Note, ...]

    @property
    def notes(self) -> tuple[Note, ...]:
        """All that is to be said."""
        return (*self.warnings, *self.remarks)


def gauges_on(basis: Basis, condition: Condition = Condition.WASHED, *, other_hands: bool = False) -> PieceGauges:
    """What the basis says of a piece. Raises RefusedError, in one sentence, if a swatch lacks what is needed.

    ``other_hands``: it is written down for others, so that the lean of the hand that worked the swatch is not counted in.
    """
    drift = basis.drift.for_other_hands() if other_hands else basis.drift
    gauges = gauges_for(basis.swatch, basis.others, drift, basis.assumed, condition, basis.edge_swatch)
    return (gauges if basis.edge is None else replace(gauges, edge=basis.edge)).leaning()


def work_out_piece(basis: Basis, plan: PiecePlan, condition: Condition = Condition.WASHED) -> PieceAnswer:
    """The piece of ``plan``. Raises RefusedError, in one sentence, if it can't be."""
    return piece_with(gauges_on(basis, condition), basis.swatch, plan)


def piece_with(gauges: PieceGauges, swatch: Swatch, plan: PiecePlan) -> PieceAnswer:
    """The piece of ``plan`` from gauges that are worked out already. Raises RefusedError, in one sentence, if it can't be."""
    return answer_for(swatch, plan, gauges, work_out(plan, gauges))


def answer_for(swatch: Swatch, plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers) -> PieceAnswer:
    """A piece worked out, with all that is to be said beside it."""
    caution = (Plain.CHILDRENS_WEAR,) if is_childs_size(plan.name) else ()
    return PieceAnswer(
        plan=plan,
        gauges=gauges,
        numbers=numbers,
        warnings=(*caution, *warnings_on(plan, gauges, numbers)),
        remarks=(*remarks_on(gauges, numbers), *gauge_remarks(swatch, plan, gauges, rows=numbers.rows is not None)),
    )


def basis_by_hand(
    gauge: Iterable[Reading],
    rows_gauge: Iterable[Reading],
    pattern: StitchPattern,
    edge_gauge: Iterable[Reading] = (),
    edge_extra_chains: int | None = None,
) -> Basis:
    """Readings said by hand, which are taken as those of the finished fabric. Raises RefusedError as ``gauge_of``."""
    readings = tuple(TakenReading(Condition.WASHED, reading) for reading in (*gauge, *rows_gauge))
    return with_edge_gauge(
        Basis(swatch=Swatch(pattern=pattern, readings=readings), assumed=Assumptions(), drift=drifts_of(Assumptions())),
        edge_gauge,
        edge_extra_chains,
    )


def basis_of_tag(
    book: Logbook,
    tag: str,
    edge_gauge: Iterable[Reading] = (),
    begins: StitchPattern | None = None,
    edge_extra_chains: int | None = None,
) -> Basis:
    """The swatch with that tag and what goes with it; ``begins`` says the first stitch where its stitch pattern does not.

    Raises RefusedError if there is none.
    """
    with book.reading() as connection:
        uid = swatch_of_tag(connection, tag).uid
    basis = basis_of(book, uid)
    if begins is not None:
        pattern = with_first_stitch(basis.swatch.pattern or StitchPattern(), begins)
        basis = replace(basis, swatch=replace(basis.swatch, pattern=pattern))
    return with_edge_gauge(basis, edge_gauge, edge_extra_chains)


def basis_of(book: Logbook, swatch: str, edge_swatch: str = "") -> Basis:
    """The swatch of that uid and what goes with it; ``edge_swatch`` is the uid of the one chosen for the edges ("": none).

    Raises RefusedError, in one sentence, if one is not there any more.
    """
    with book.reading() as connection:
        return basis_in(connection, swatch, edge_swatch)


def basis_in(connection: sqlite3.Connection, swatch: str, edge_swatch: str = "") -> Basis:
    """``basis_of`` from an open connection."""
    own = swatch_there(connection, swatch)
    others = tuple(swatches(connection, swatches_of_yarn(connection, own.yarn.uid)) if own.yarn else ())
    return Basis(
        swatch=own,
        others=others,
        edge_swatch=swatch_there(connection, edge_swatch) if edge_swatch else None,
        assumed=kept_assumptions(connection),
        drift=learnt_drift(connection).of_swatch(own, others),
    )


def with_edge_gauge(basis: Basis, edge_gauge: Iterable[Reading], extra_chains: int | None = None) -> Basis:
    """The same with edge stitches as these readings say. ``extra_chains``: their own; None: as many as the pattern's."""
    readings = tuple(edge_gauge)
    if not readings:
        return basis
    gauge = gauge_of(readings, 1, basis.assumed)
    own = basis.swatch.pattern.extra() if basis.swatch.pattern else None
    extra = extra_chains if extra_chains is not None else own or 0
    edge = EdgeStitch(stitch_mm=gauge.pitch_mm, give_or_take=gauge.give_or_take, extra_chains=extra, by_hand=True)
    return replace(basis, edge=edge)


def planned_pieces(book: Logbook) -> list[PlannedPiece]:
    """All planned pieces in the order of their names."""
    with book.reading() as connection:
        return list(kept.planned_pieces(connection).values())


def made_pieces(book: Logbook) -> list[MadePiece]:
    """All made pieces, the newest first."""
    with book.reading() as connection:
        return list(kept.made_pieces(connection).values())


def matching_pieces(book: Logbook, words: str) -> list[str]:
    """The uids of the planned and made pieces in which every word is found, or a part of a word."""
    with book.reading() as connection:
        return kept.matching_pieces(connection, words)


def save_piece(book: Logbook, piece: PlannedPiece) -> str:
    """Saves a planned piece, new (no uid) or known, and returns its uid.

    Raises RefusedError, in one sentence, if it has no name or swatch, or another piece has its name; then nothing is written.
    """
    with book.writing(f"{'change' if piece.uid else 'plan'} {piece.name}") as writing:
        return kept.put_piece(writing, piece)


def delete_piece(book: Logbook, piece: PlannedPiece) -> None:
    """Deletes a planned piece with its sizes; undo brings it back. Raises RefusedError while a made piece comes from it."""
    with book.writing(f"delete {piece.name}") as writing:
        kept.remove_piece(writing, piece.uid)


def copy_of(piece: PlannedPiece, taken: Iterable[str]) -> PlannedPiece:
    """A copy to change and save: the same plan and sizes under a name that is not among ``taken``, not set yet."""
    name = next(copy_names(piece.name, taken))
    sizes = tuple(replace(size, uid="") for size in piece.sizes)
    return replace(piece, uid="", plan=replace(piece.plan, name=name), published=None, sizes=sizes)


def copy_names(name: str, taken: Iterable[str]) -> Iterator[str]:
    """Names for copies that are not among ``taken``: ``Vest, copy``, ``Vest, copy 2`` and so on."""
    known = set(taken)
    yield from (new for new in chain([f"{name}, copy"], (f"{name}, copy {number}" for number in count(2))) if new not in known)
