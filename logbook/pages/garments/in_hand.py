"""The garment in hand as the list shows it: each of its pieces as it is typed, and whether something of it does not fit."""

from collections.abc import Collection, Mapping
from typing import NamedTuple

from logbook.pages.garments.garment_card import GarmentCard
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.garments.garment_texts import piece_key


class InHand(NamedTuple):
    """The garment in hand as it is typed, in the ``size`` shown: its pieces by number, each with what is said of it and
    its chain.
    """

    key: str
    name: str
    pieces: Mapping[int, tuple[str, str]]
    bad: Collection[int] = ()
    some_size_bad: bool = False
    size: str = ""


def none_in_hand() -> InHand:
    """No garment is."""
    return InHand("", "", {})


def in_hand(key: str, form: GarmentForm, card: GarmentCard, *, some_size_bad: bool) -> InHand:
    """What is typed in ``form``, with the chains that ``card`` came to; ``key`` is that of the garment's line."""
    chains = {piece.name: piece.chain for piece in card.garment.pieces} if card.garment is not None else {}
    pieces, bad = {}, []
    for number in form.pieces:
        name = form.texts[piece_key(number, "name")].strip()
        alike = form.texts[piece_key(number, "alike")].strip()
        chain = chains.get(name)
        said = said_of(name, int(alike)) if alike.isdecimal() and len(alike) < 5 else name or "a piece"
        pieces[number] = (said, chain_words(chain))
        if name in card.bad_pieces:
            bad.append(number)
    return InHand(key, form.texts["name"], pieces, bad, some_size_bad, card.size)


def chain_words(chain: int | None) -> str:
    """What stands under *Chain*, also where none is made or known."""
    return "–" if chain is None else str(chain)


def said_of(name: str, alike: int) -> str:
    """``sleeve, 2 alike``."""
    return f"{name or 'a piece'}, {alike} alike" if alike > 1 else name or "a piece"
