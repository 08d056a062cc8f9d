"""Which fields of a draft are offered again, and what is typed when they are taken up."""

from logbook.pages.drafts import CHAIN, SWATCHES, Offer, draft_of, told_now
from logbook.pages.swatches.chain_texts import ChainTexts
from logbook.tasks.drafts import NEW, Draft

OPENED = {"yarn": "Rook Wool", "colour": "red", "notes": ""}


def draft(record: str = "uid", **typed: str) -> Draft:
    return Draft(SWATCHES, record, "RW-01" if record != NEW else "", "cm", OPENED | typed, OPENED)


def test_nothing_typed_is_no_draft() -> None:
    assert draft_of(SWATCHES, "uid", "RW-01", "cm", OPENED, dict(OPENED)) is None
    kept = draft_of(SWATCHES, "", "", "cm", OPENED | {"notes": "x"}, OPENED)
    assert kept is not None
    assert kept.is_new


def test_only_what_was_typed_is_offered() -> None:
    offer = Offer(draft(colour="blue"), OPENED)
    (field,) = offer.fields
    assert (field.key, field.typed, field.now, field.changed) == ("colour", "blue", "red", False)
    assert offer.texts(frozenset({"colour"})) == {"colour": "blue"}
    assert offer.texts(frozenset()) == {}
    assert "“RW-01”" in offer.sentence


def test_what_the_logbook_holds_otherwise_since_is_said() -> None:
    (field,) = Offer(draft(colour="blue"), OPENED | {"colour": "green"}).fields
    assert field.changed
    assert told_now(field) == "Changed in the logbook since: now “green”"


def test_what_was_saved_just_before_the_end_is_not_offered() -> None:
    assert not Offer(draft(colour="blue"), OPENED | {"colour": "blue"}).fields
    assert not Offer(draft(NEW, colour="blue"), OPENED | {"colour": "blue"}).fields
    assert Offer(draft(NEW, colour="blue"), OPENED | {"colour": "green"}).fields


def test_a_new_record_and_one_that_is_gone_come_whole() -> None:
    for record in (NEW, "uid"):
        offer = Offer(draft(record, colour="blue", notes="soft"), None)
        assert offer.texts(frozenset({"colour"})) == {"yarn": "Rook Wool", "colour": "blue"}
    assert "any more" in Offer(draft(notes="soft"), None).sentence


def test_a_wish_is_offered_as_typed() -> None:
    typed = ChainTexts(width="46", in_round=True).as_typed()
    offer = Offer(Draft(CHAIN, NEW, "", "cm", typed, ChainTexts().as_typed()), None)
    assert {field.key for field in offer.fields} == {"width", "in_round"}
    assert offer.texts(frozenset({"width"})) == {"width": "46"}
