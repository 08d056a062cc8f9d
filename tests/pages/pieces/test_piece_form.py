"""The piece in hand, and what follows from it."""

from logbook.craft.words.lengths import Units
from logbook.pages.pieces.piece_card import NOT_YET, PieceCard, PieceMaker
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.logging_swatches import delete_swatches
from logbook.tasks.pieces import delete_piece, planned_pieces
from tests.support.garments import uid_of


def form_of(session: Session, name: str) -> PieceForm:
    form = PieceForm(session)
    uid = next(piece.uid for piece in planned_pieces(session.book) if piece.name == name)
    assert form.show(uid)
    return form


def card_of(session: Session, form: PieceForm) -> PieceCard:
    return PieceMaker(session).card(form.read(), form.swatch_uid(), form.swatch_uid("edge swatch"))


def test_a_saved_piece_is_shown_and_worked_out(session: Session) -> None:
    form = form_of(session, "Vest")
    assert (form.title, form.is_dirty, form.swatch_words()) == ("Vest", False, "half double crochet, Heather, 4.5 mm")
    card = card_of(session, form)
    assert card.headline == "Chain 76, 62 rows"
    assert card.sentences[0] == "51.8 cm wide, 55.8 cm long."
    assert card.sizes[0] == ("width", "51.8 cm", "52.0 cm", "53.3 cm", "1.2 cm", "3.1 cm")
    assert ("armhole", "19.8 cm", "20.0 cm", "", "", "") in card.sizes
    assert card.sizes[-1][:2] == ("all round", "101.5 cm")
    assert card.body_width == "A panel is to be 52.0 cm wide."
    assert card.warnings == (
        "The neck is 47.6 cm round, but an adult’s head usually measures 56.0 cm: make it larger, or leave an opening.",
    )
    assert not set(card.warnings) & set(card.notes)
    assert card.draw is not None


def test_what_follows_follows_every_key_and_is_never_stale(session: Session) -> None:
    form, maker = form_of(session, "Vest"), PieceMaker(session)

    def shown() -> PieceCard:
        return maker.card(form.read(), form.swatch_uid(), form.swatch_uid("edge swatch"))

    assert shown().headline == "Chain 76, 62 rows"
    form.type_in("body", "100")
    assert shown().headline == "Chain 81, 62 rows"  # (1000 + 80)/2 + 10.5 = 550.5; /7 = 78.6: 79 stitches and 2
    form.type_in("body", "10o")
    assert (shown().headline, shown().answer, shown().draw) == (NOT_YET, None, None)
    assert "“10o” is not a length" in shown().missing
    form.type_in("body", "")
    assert "Type the finished width" in shown().missing
    form.type_in("width", "46")
    form.type_in("swatch", "L1")
    assert shown().headline.startswith("Chain 100,")
    form.type_in("swatch", "L")
    assert "“L” is found in 3 swatches" in shown().missing
    form.type_in("swatch", "R1")
    form.type_in("armhole", "70")
    assert "That armhole does not fit on the panel" in shown().missing


def test_a_rib_that_does_not_go_on_is_warned_of(session: Session) -> None:
    form = form_of(session, "Rib top")
    form.type_in("ease", "-30")
    assert "It does not go on that body." in card_of(session, form).warnings
    form.type_in("last row", "right side")
    assert any("choose even" in warning for warning in card_of(session, form).warnings)


def test_swatches_are_offered_by_words_and_taken_by_tag(session: Session) -> None:
    form = PieceForm(session)
    assert form.offered("heather rib") == ["R1 · sc rib · Heather · 4.5 mm"]
    assert len(form.offered("")) == 4
    assert form.offered("nothing like it") == []
    form.type_in("swatch", "R1 · sc rib · Heather · 4.5 mm")
    assert form.swatch_uid() == uid_of(session.book, "R1")
    assert form.swatch_tag() == "R1"
    assert form.offered(form.texts["swatch"]) == ["R1 · sc rib · Heather · 4.5 mm"]


def test_any_words_that_find_one_swatch_choose_it(session: Session) -> None:
    form = PieceForm(session)
    form.type_in("swatch", "rib heath 4.5")
    assert form.swatch_uid() == uid_of(session.book, "R1")
    assert (form.swatch_tag(), form.swatch_words()) == ("R1", "R1, sc rib, Heather, 4.5 mm")
    form.type_in("swatch", "heather")
    assert (form.swatch_uid(), form.swatch_tag(), form.swatch_words()) == ("", "heather", "")
    assert "is found in" in form.read().errors["swatch"]
    form.type_in("swatch", "nothing like it")
    assert form.read().errors["swatch"].startswith("There is no swatch “nothing like it”")


def test_saving_a_new_one_says_what_is_lacking_then_keeps_it(session: Session) -> None:
    form = PieceForm(session)
    assert set(form.save()) == {"name", "swatch"}
    for key, text in {"name": "Vest", "swatch": "L1"}.items():
        form.type_in(key, text)
    assert set(form.save()) == {"name", "width"}
    form.type_in("width", "46 cm")
    assert "another piece called “Vest”" in form.save()["name"]
    form.type_in("name", "Lace")
    form.type_in("edge stitches", "as needed")
    form.type_in("edge swatch", "H2")
    form.type_in("notes", "two alike")
    assert form.save() == {}
    assert (form.is_dirty, form.title) == (False, "Lace")
    kept = next(piece for piece in planned_pieces(session.book) if piece.name == "Lace")
    assert (kept.plan.width_mm, kept.plan.edge_stitches, kept.notes) == (460, None, "two alike")
    assert (kept.swatch, kept.edge_swatch) == (uid_of(session.book, "L1"), uid_of(session.book, "H2"))
    assert PieceForm(session).texts["head"] == "56 cm"


def test_what_a_form_does_not_show_is_kept_when_saving(session: Session) -> None:
    form = form_of(session, "Vest")
    before = form.saved
    form.type_in("armhole", "21")
    form.save()
    assert before is not None
    assert form.saved is not None
    assert (form.saved.sizes, form.saved.published) == (before.sizes, before.published)
    assert form.saved.plan.armhole_mm == 210


def test_same_again_is_a_copy_to_save_under_a_free_name(session: Session) -> None:
    form = form_of(session, "Vest")
    form.same_again()
    assert (form.texts["name"], form.uid, form.is_dirty) == ("Vest, copy", "", True)
    assert form.save() == {}
    assert [piece.name for piece in planned_pieces(session.book)] == ["Rib top", "Vest", "Vest, copy"]


def test_revert_and_changes_from_elsewhere(session: Session) -> None:
    form, other = form_of(session, "Vest"), form_of(session, "Vest")
    form.type_in("neck", "30")
    form.revert()
    assert (form.texts["neck"], form.is_dirty) == ("24 cm", False)
    other.type_in("neck", "30 cm")
    other.save()
    form.refresh()
    assert form.changed_elsewhere()
    form.revert()
    assert form.texts["neck"] == "30 cm"
    assert form.saved is not None
    delete_piece(session.book, form.saved)
    form.refresh()
    form.revert()
    assert form.title == "New piece"


def test_a_swatch_deleted_elsewhere_leaves_a_sentence(session: Session) -> None:
    form, maker = PieceForm(session), PieceMaker(session)
    form.type_in("swatch", "H2")
    form.type_in("width", "46")
    uid = form.swatch_uid()
    delete_swatches(session.book, [uid])
    assert "not in the logbook any more" in maker.card(form.read(), uid, "").missing


def test_units_change_what_is_shown_but_not_what_is_typed(session: Session) -> None:
    form = form_of(session, "Vest")
    session.settings = Settings(units="in")
    form.units_changed()
    assert (form.texts["body"], form.is_dirty) == ("94 cm", False)
    assert card_of(session, form).sizes[0][1] == "20 3/8 in"
    assert session.units is Units.INCHES
