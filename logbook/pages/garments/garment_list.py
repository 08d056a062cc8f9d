"""The list of garments: a line for each, and for each piece of those that are open."""

from collections.abc import Callable, Collection, Iterator, Mapping
from typing import NamedTuple

from logbook.craft.garments.garment import work_out_possible
from logbook.craft.garments.plan import Garment
from logbook.craft.words.numbers import grouped
from logbook.errors import LogbookError, RefusedError
from logbook.pages.session import Session
from logbook.tasks.at_home import name_key
from logbook.tasks.garment_words import stands_in_the_way
from logbook.tasks.garments import cloths_of, garments, matching_garments, sizes_for
from logbook.tasks.pieces import Basis

NEW = "new"
"""The key of a garment that is not saved yet."""


class GarmentLine(NamedTuple):
    """A garment or a piece as a line of the list; ``key`` is the garment's, or ``garment/number`` of a piece."""

    key: str
    garment: str
    is_piece: bool
    cells: tuple[str, str]


class InHand(NamedTuple):
    """The garment in hand as it is typed: its pieces by number, each with what is said of it."""

    key: str
    name: str
    pieces: Mapping[int, tuple[str, str]]
    bad: Collection[int] = ()
    some_size_bad: bool = False


def piece_line_key(garment: str, number: int) -> str:
    """The key of a piece's line."""
    return f"{garment}/{number}"


class GarmentList:
    """All garments of the logbook, by name; that in hand stands there as it is typed."""

    def __init__(self, session: Session, in_hand: Callable[[], InHand]) -> None:
        self._session, self._in_hand = session, in_hand
        self.garments: dict[str, Garment] = {}
        self.bad: dict[str, bool] = {}
        self._open: set[str] = set()
        self.reload()

    def reload(self) -> None:
        """Takes them from the logbook again."""
        by_name = sorted(garments(self._session.book), key=lambda garment: name_key(garment.name))
        self.garments = {garment.uid: garment for garment in by_name}
        self.bad.clear()
        self._checking = self._each_checked()

    def check(self) -> bool:
        """Works out one size of one garment, to know whether something does not fit; False if all are known."""
        return next(self._checking, False)

    def _each_checked(self) -> Iterator[bool]:
        known: dict[str, Basis] = {}
        missing: list[str] = []

        def refused(piece: str, _: RefusedError) -> None:
            missing.append(piece)

        for uid, garment in self.garments.items():
            missing.clear()
            plan = garment.plan
            try:
                cloths, _ = cloths_of(plan, self._session.book, known, refused)
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
        """The lines of the garments in which every word is found, and how many garments that is, in words."""
        hand = self._in_hand()
        found = matching_garments(self._session.book, words) if words.strip() else list(self.garments)
        lines: list[GarmentLine] = []
        if hand.key == NEW and (hand.pieces or hand.name.strip()):
            lines += self._of_hand(hand)
        for uid in found:
            if uid == hand.key:
                lines += self._of_hand(hand)
            elif uid in self.garments:
                lines += self._saved(self.garments[uid])
        whole = len(self.garments)
        count = "1 garment" if whole == 1 else f"{grouped(whole)} garments"
        return lines, f"{len(found)} of {count}" if words.strip() else count

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

    def _saved(self, garment: Garment) -> list[GarmentLine]:
        pieces = garment.plan.pieces
        line = self._garment(garment.uid, garment.name, self.bad.get(garment.uid, False), bool(pieces))
        if not self.is_open(garment.uid):
            return [line]
        return [
            line,
            *(
                GarmentLine(piece_line_key(garment.uid, number), garment.uid, True, (f"     {said_of(p.name, p.alike)}", ""))
                for number, p in enumerate(pieces, 1)
            ),
        ]

    def _garment(self, key: str, name: str, bad: bool, has_pieces: bool) -> GarmentLine:
        sign = "" if not has_pieces else "▾ " if self.is_open(key) else "▸ "
        return GarmentLine(key, key, False, (f"{sign}{'✕ ' if bad else ''}{name}", ""))


def said_of(name: str, alike: int) -> str:
    """``sleeve, 2 alike``."""
    return f"{name or 'a piece'}, {alike} alike" if alike > 1 else name or "a piece"
