"""The list of garments and single pieces: a line for each, and for each piece of the garments that are open."""

from collections.abc import Callable, Iterator
from typing import NamedTuple

from logbook.craft.garments.garment import work_out_possible
from logbook.craft.garments.plan import Garment, GarmentPlan
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.words.numbers import grouped
from logbook.errors import LogbookError, RefusedError
from logbook.pages.garments.in_hand import InHand, chain_words, none_in_hand, said_of
from logbook.pages.session import Session
from logbook.tasks.at_home import name_key
from logbook.tasks.garment_words import stands_in_the_way
from logbook.tasks.garments import cloths_of, garments, matching_garments, sizes_for
from logbook.tasks.pieces import Basis, basis_of, matching_pieces, planned_pieces, work_out_piece
from logbook.tasks.size_runs import work_out_run

NEW = "new"
"""The key of a garment that is not saved yet."""
BESIDE_SIGN = "\N{EM SPACE}"
"""Before a name that has no sign to fold by, so that names stand beneath one another."""


class GarmentLine(NamedTuple):
    """A garment, a piece of it or a single piece as a line; ``key`` is its uid, or ``garment/number`` of a piece of a garment."""

    key: str
    garment: str
    is_piece: bool
    cells: tuple[str, str]


def piece_line_key(garment: str, number: int) -> str:
    """The key of a piece's line."""
    return f"{garment}/{number}"


class GarmentList:
    """All garments and single pieces of the logbook, by name; the garment ``in_hand`` stands there as it is typed."""

    def __init__(self, session: Session, in_hand: Callable[[], InHand] = none_in_hand) -> None:
        self._session, self.in_hand = session, in_hand
        self.garments: dict[str, Garment] = {}
        self.pieces: dict[str, PlannedPiece] = {}
        self.bad: dict[str, bool] = {}
        self._chains: dict[str, str] = {}
        self._of_pieces: dict[tuple[str, str], dict[str, str]] = {}
        self._known: dict[str, Basis] = {}
        self._open: set[str] = set()
        self.reload()

    def reload(self) -> None:
        """Takes them from the logbook again."""
        by_name = sorted(garments(self._session.book), key=lambda garment: name_key(garment.name))
        self.garments = {garment.uid: garment for garment in by_name}
        single = sorted(planned_pieces(self._session.book), key=lambda piece: name_key(piece.name))
        self.pieces = {piece.uid: piece for piece in single}
        self.bad.clear()
        self._chains.clear()
        self._of_pieces.clear()
        self._known.clear()
        self._checking = self._each_checked()

    def check(self) -> bool:
        """Works out one piece, or one garment that is open, to know its chains, or one size of one garment, to know whether
        something does not fit.

        False if all are known.
        """
        return self._one_opened() or next(self._checking, False)

    def _one_opened(self) -> bool:
        """Works out the chains of one garment whose pieces are shown, in the size that is in hand if it has that."""
        hand = self.in_hand()
        opened = (uid for uid in self.garments if uid in self._open and uid != hand.key)
        uid = next((uid for uid in opened if (uid, hand.size) not in self._of_pieces), None)
        if uid is None:
            return False
        self._of_pieces[uid, hand.size] = self._chains_of(self.garments[uid].plan, hand.size)
        return True

    def _chains_of(self, plan: GarmentPlan, size: str) -> dict[str, str]:
        """The chains of its pieces by name, of those that can be worked out, in the size of that name or the first."""
        book = self._session.book
        try:
            cloths, _ = cloths_of(plan, book, self._known, lambda piece, error: None)
            sizes = sizes_for(plan, book)
        except LogbookError:
            return {}
        shown = next((one for one in sizes if one.name == size), sizes[0])
        pieces = work_out_possible(plan, shown, cloths).garment.pieces
        return {piece.name: chain_words(piece.chain) for piece in pieces}

    def _each_checked(self) -> Iterator[bool]:
        for uid, piece in self.pieces.items():
            self._chains[uid] = self._chain(piece)
            yield True
        yield from self._each_garment_checked()

    def _chain(self, piece: PlannedPiece) -> str:
        """The starting chain; of a piece in several sizes the least and the most."""
        try:
            basis = basis_of(self._session.book, piece.swatch, piece.edge_swatch)
            if piece.sizes:
                sizes = work_out_run(basis, piece.plan, piece.sizes, piece.condition).run.sizes
                chains = sorted({size.piece.chain for size in sizes})
                return f"{chains[0]}–{chains[-1]}" if len(chains) > 1 else str(chains[0])
            return str(work_out_piece(basis, piece.plan, piece.condition).numbers.chain)
        except RefusedError:
            return "–"

    def _each_garment_checked(self) -> Iterator[bool]:
        missing: list[str] = []

        def refused(piece: str, _: RefusedError) -> None:
            missing.append(piece)

        for uid, garment in self.garments.items():
            missing.clear()
            plan = garment.plan
            try:
                cloths, _ = cloths_of(plan, self._session.book, self._known, refused)
                sizes = sizes_for(plan, self._session.book)
            except LogbookError:
                self.bad[uid] = True
                continue
            self.bad[uid] = bool(missing)
            for size in sizes:
                done = work_out_possible(plan, size, cloths)
                if done.pieces or done.joins or stands_in_the_way(done.garment):
                    self.bad[uid] = True
                    break
                yield True
            yield True

    def is_open(self, garment: str) -> bool:
        """Whether its pieces are shown."""
        return garment in self._open

    def fold(self, garment: str, is_open: bool) -> None:
        """Shows its pieces, or not."""
        if is_open:
            self._open.add(garment)
        else:
            self._open.discard(garment)

    def lines(self, words: str) -> tuple[list[GarmentLine], str]:
        """The lines of what every word is found in, and how many garments and single pieces that is, in words."""
        hand, book = self.in_hand(), self._session.book
        asked = bool(words.strip())
        several = [uid for uid in (matching_garments(book, words) if asked else self.garments) if uid in self.garments]
        single = [uid for uid in (matching_pieces(book, words) if asked else self.pieces) if uid in self.pieces]
        lines: list[GarmentLine] = []
        if hand.key == NEW and (hand.pieces or hand.name.strip()):
            lines += self._of_hand(hand)
        named = [(name_key(self.garments[uid].name), uid) for uid in several]
        named += [(name_key(self.pieces[uid].name), uid) for uid in single]
        for _, uid in sorted(named):
            if uid in self.pieces:
                name = BESIDE_SIGN + self.pieces[uid].name
                lines.append(GarmentLine(uid, uid, False, (name, self._chains.get(uid, ""))))
            else:
                lines += self._of_hand(hand) if uid == hand.key else self._saved(self.garments[uid], hand.size)
        counts = ((len(several), len(self.garments), "garment"), (len(single), len(self.pieces), "single piece"))
        return lines, ", ".join(_count(*one, asked) for one in counts if one[1]) or "Nothing yet"

    def _of_hand(self, hand: InHand) -> list[GarmentLine]:
        name = hand.name.strip() or "New garment"
        if not self.is_open(hand.key) or not hand.pieces:
            return [self._garment(hand.key, name, bool(hand.bad) or hand.some_size_bad, bool(hand.pieces))]
        pieces = [
            GarmentLine(
                piece_line_key(hand.key, number), hand.key, True, (f"     {'✕ ' if number in hand.bad else ''}{said}", chain)
            )
            for number, (said, chain) in hand.pieces.items()
        ]
        return [self._garment(hand.key, name, hand.some_size_bad and not hand.bad, True), *pieces]

    def _saved(self, garment: Garment, size: str) -> list[GarmentLine]:
        pieces, chains = garment.plan.pieces, self._of_pieces.get((garment.uid, size))
        line = self._garment(garment.uid, garment.name, self.bad.get(garment.uid, False), bool(pieces))
        if not self.is_open(garment.uid):
            return [line]
        return [
            line,
            *(
                GarmentLine(
                    piece_line_key(garment.uid, number),
                    garment.uid,
                    True,
                    (f"     {said_of(p.name, p.alike)}", "" if chains is None else chains.get(p.name, chain_words(None))),
                )
                for number, p in enumerate(pieces, 1)
            ),
        ]

    def _garment(self, key: str, name: str, bad: bool, has_pieces: bool) -> GarmentLine:
        sign = BESIDE_SIGN if not has_pieces else "▾ " if self.is_open(key) else "▸ "
        return GarmentLine(key, key, False, (f"{sign}{'✕ ' if bad else ''}{name}", ""))


def _count(found: int, there: int, what: str, asked: bool) -> str:
    whole = f"{grouped(there)} {what}{'' if there == 1 else 's'}"
    return f"{grouped(found)} of {whole}" if asked else whole
