"""The form decides what is in hand, what comes with a name, what may be saved."""

import pytest

from logbook.book.tables import RECORDS
from logbook.craft.swatches.conditions import Condition
from logbook.pages.session import Session
from logbook.pages.swatches.chain_text import CHAIN
from logbook.pages.swatches.form_texts import readings_key
from logbook.pages.swatches.section_words import section_words
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.tasks.browsing import swatch_in_hand, swatch_lines
from logbook.tasks.keeping import check_book
from logbook.tasks.logging_swatches import delete_swatches

WORKED, WASHED = readings_key(Condition.WORKED), readings_key(Condition.WASHED)


@pytest.fixture
def form(session: Session) -> SwatchForm:
    form = SwatchForm(session, today=lambda: "2026-06-01")
    form.new()
    return form


def take(form: SwatchForm, session: Session, tag: str) -> None:
    assert form.show(next(line.uid for line in swatch_lines(session.book) if line.tag == tag))


def fill(form: SwatchForm, texts: dict[str, str]) -> None:
    for key, text in texts.items():
        form.type_in(key, text)


def test_a_new_swatch_is_offered_a_tag_and_today_and_is_clean(form: SwatchForm) -> None:
    assert (form.title, form.texts["tag"], form.texts["date"]) == ("New swatch", "S-01", "1 Jun 2026")
    assert not form.is_dirty
    form.type_in("yarn", " ")
    assert not form.is_dirty
    form.type_in("yarn", "H")
    assert form.is_dirty
    assert form.title == "New swatch · not saved"


def test_the_least_a_swatch_needs_is_saved(form: SwatchForm, session: Session) -> None:
    fill(form, {"yarn": "Newcomer", "hook mm": "G-6", WASHED: "14 sts x 11 rows = 10 cm"})
    assert form.save() == {}
    assert (form.title, form.is_dirty, form.hook_letter()) == ("Swatch S-01", False, "US G-6, UK 8")
    kept = swatch_in_hand(session.book, form.uid)
    assert kept is not None
    assert (kept.tag, kept.date, kept.hook_mm) == ("S-01", "2026-06-01", 4.0)
    assert [taken.reading.text for taken in kept.readings] == ["14 sts in 10 cm", "11 rows in 10 cm"]


def test_what_is_missing_or_wrong_is_said_field_by_field_and_nothing_is_written(form: SwatchForm, session: Session) -> None:
    assert set(form.save()) == {"yarn", "hook mm", WORKED}
    fill(form, {"stitch pattern": "Shells", "hook mm": "x", WASHED: "4 rep", "tag": "HC-01", "date": "May"})
    errors = form.save()
    assert set(errors) == {"hook mm", WORKED, WASHED, "tag", "date"}
    assert errors["hook mm"].startswith("“x” is not a hook")
    assert errors["tag"] == "Another swatch has the tag “HC-01”: choose another."
    assert len(swatch_lines(session.book)) == 4


def test_an_emptied_tag_is_offered_again(form: SwatchForm) -> None:
    fill(form, {"yarn": "Newcomer", "hook mm": "4", WASHED: "14 sts = 10 cm", "tag": ""})
    assert form.save() == {}
    assert form.texts["tag"] == "S-01"


def test_a_known_name_brings_its_details_and_takes_them_away_again(form: SwatchForm) -> None:
    brought = form.type_in("yarn", "Harbour cotton")
    assert brought["fibre"] == "cotton"
    assert form.hints()["yarn"] == ""
    assert section_words(form.texts, form.typed().swatch)["swatches.yarn"] == "class 3 light · 125 m in 50 g · cotton"
    assert form.type_in("yarn", "Harbour cotton 2")["fibre"] == ""
    assert form.hints()["yarn"] == "New yarn: saving adds it to the logbook."
    form.type_in("fibre", "hemp")
    assert form.type_in("yarn", "Harbour cotton") == {"yarn class": "3", "ball grams": "50", "ball metres": "125"}
    assert form.hints()["yarn"] == "Saving changes this yarn for all its swatches: fibre."


def test_a_pattern_keeps_what_the_form_does_not_speak_of(form: SwatchForm, session: Session) -> None:
    take(form, session, "MW-04")
    pattern = form.typed().swatch.pattern
    assert pattern is not None
    assert (pattern.half_plus, pattern.uid != "") == (1, True)
    assert form.hints()["stitch pattern"] == ""
    form.type_in("stitch pattern", "Single crochet")
    assert form.hints()["stitch pattern"] == ""


def test_the_same_again_shares_what_it_is_worked_of_but_no_measurement(form: SwatchForm, session: Session) -> None:
    take(form, session, "HC-01")
    fill(form, {"colour": "moss", "swatch grams": "12", "notes": "stiff"})
    form.same_again()
    texts = form.texts
    assert (texts["yarn"], texts["multiple"], texts["hook mm"], texts["colour"]) == ("Harbour cotton", "6", "4.5", "moss")
    assert (texts["swatch grams"], texts["notes"], texts[WASHED], texts["tag"]) == ("", "", "", "HC-03")
    assert (form.uid, form.is_dirty) == ("", False)


def test_revert_goes_back_to_what_is_saved(form: SwatchForm, session: Session) -> None:
    take(form, session, "HC-01")
    form.type_in(WASHED, "3 repeats = 11 cm")
    form.revert()
    assert form.texts[WASHED].startswith("4 repeats = 15.1 cm")
    assert not form.is_dirty


def test_it_notices_that_others_have_changed_the_swatch(form: SwatchForm, session: Session) -> None:
    take(form, session, "HC-01")
    assert not form.changed_elsewhere()
    delete_swatches(session.book, [form.uid])
    assert form.changed_elsewhere()


def test_a_basic_stitch_brings_its_chain_with_its_name(session: Session) -> None:
    form = SwatchForm(session)
    form.new()
    form.type_in("stitch pattern", "half double crochet")
    names = ("multiple", "plus", "extra chains", "first stitch in chain", "skipped chains cover", "terms")
    assert [form.texts[name] for name in names] == ["1", "0", "2", "3", "0", "US"]
    form.type_in("stitch pattern", "htr")
    assert [form.texts[name] for name in names] == ["1", "0", "2", "3", "0", "UK"]
    form.type_in("stitch pattern", "dc")
    assert [form.texts[name] for name in names] == ["1", "0", "2", "4", "1", "US"]
    form.type_in("terms", "UK")
    assert [form.texts[name] for name in names] == ["1", "0", "1", "2", "0", "UK"]
    form.type_in("extra chains", "3")
    form.type_in("stitch pattern", "shells")
    assert [form.texts[name] for name in names] == ["", "", "3", "", "", ""]


def test_a_reading_kept_as_nought_is_read_again_when_something_of_its_swatch_is_saved(form: SwatchForm, session: Session) -> None:
    """As the check of the logbook says. Kept so by whatever program."""
    take(form, session, "HC-01")
    columns = RECORDS["reading"]
    with session.book.writing("another program's") as writing:
        uid, *values = writing.connection.execute(
            f"SELECT uid, {', '.join(columns)} FROM reading WHERE swatch = ? ORDER BY rowid LIMIT 1", (form.uid,)
        ).fetchone()
        writing.put("reading", uid, dict(zip(columns, values, strict=True)) | {"number": 0.0})
    session.notice_others()
    assert len(check_book(session.book).problems) == 1
    take(form, session, "HC-01")
    form.type_in("notes", "looked at")
    assert form.save() == {}
    assert check_book(session.book, deep=True).problems == ()


def test_a_date_is_read_as_people_write_it(form: SwatchForm) -> None:
    form.type_in("date", "31 May 2026")
    assert (form.typed().swatch.date, form.typed().errors) == ("2026-05-31", {})
    form.type_in("date", "31 Foo 2026")
    assert "is not a date" in form.typed().errors["date"]


def test_another_chain_takes_along_the_turning_chain_that_only_the_one_before_said(form: SwatchForm) -> None:
    numbers = ("multiple", "plus", "extra chains", "first stitch in chain")
    fill(form, {"stitch pattern": "Fan lace", CHAIN: "multiple of 6 + 1, add 1"})
    assert [form.texts[key] for key in numbers] == ["6", "1", "1", ""]
    form.type_in(CHAIN, "10 + 4")
    assert [form.texts[key] for key in numbers] == ["10", "", "", ""]
    assert form.hints()[CHAIN] == "10 to a repeat, 4 more (chains)."
    form.type_in(CHAIN, "10 + 4, first dc in 4th ch")
    form.type_in("skipped chains cover", "1")
    assert [form.texts[key] for key in numbers] == ["10", "2", "", "4"]
    assert form.hints()[CHAIN] == "10 to a repeat, 4 more; k repeats are 10k + 2 base stitches."
    assert not form.typed().errors


def test_a_chain_that_cannot_be_read_leaves_no_numbers_of_its_beginning(form: SwatchForm) -> None:
    fill(form, {"stitch pattern": "Fan lace", CHAIN: "any number"})
    assert form.texts["multiple"] == "1"
    fill(form, {CHAIN: "any number plus two"})
    assert (form.texts["multiple"], form.texts["plus"]) == ("", "")
    assert form.typed().swatch.pattern is not None
    assert form.typed().swatch.pattern.multiple is None


def test_the_chain_of_a_basic_stitch_may_be_typed_anew(form: SwatchForm) -> None:
    fill(form, {"stitch pattern": "hdc", CHAIN: "even number"})
    assert form.texts["multiple"] == "2"
    assert not form.typed().errors
