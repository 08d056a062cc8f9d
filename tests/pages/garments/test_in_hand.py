"""The garment in hand as the list shows it, as it is typed."""

from logbook.pages.garments.garment_card import GarmentMaker
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.garments.garment_texts import piece_key
from logbook.pages.garments.in_hand import InHand, in_hand
from logbook.pages.session import Session


def shown(session: Session, form: GarmentForm) -> InHand:
    return in_hand("new", form, GarmentMaker(session).card(form, "M"), some_size_bad=False)


def test_each_piece_with_its_chain_and_those_that_are_wrong(session: Session) -> None:
    form = GarmentForm(session)
    form.begin("cardigan", "H1")
    form.type_in("name", "Quay")
    whole = shown(session, form)
    places = {form.texts[piece_key(number, "name")]: number for number in form.pieces}
    said, chain = whole.pieces[places["sleeve"]]
    assert (whole.key, whole.name, said) == ("new", "Quay", "sleeve, 2 alike")
    assert int(chain) > 20
    assert not whole.bad
    form.type_in(piece_key(places["back"], "width"), "(bust + ")
    form.type_in(piece_key(places["sleeve"], "alike"), "two")
    typed = shown(session, form)
    assert places["back"] in typed.bad
    assert typed.pieces[places["back"]] == ("back", "–")
    assert typed.pieces[places["sleeve"]][0] == "sleeve"
