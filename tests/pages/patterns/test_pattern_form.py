"""The form of a stitch pattern without a screen."""

import pytest

from logbook.pages.patterns.pattern_form import PatternForm
from logbook.pages.session import Session
from logbook.tasks.browsing import pattern_list
from logbook.tasks.stitch_patterns import delete_pattern, save_pattern
from logbook.tasks.undoing import undo


@pytest.fixture
def form(session: Session) -> PatternForm:
    return PatternForm(session)


def uid_of(session: Session, name: str) -> str:
    return next(pattern.uid for pattern in pattern_list(session.book) if pattern.name == name)


def taken(form: PatternForm, session: Session, name: str) -> PatternForm:
    assert form.show(uid_of(session, name))
    return form


def names(session: Session) -> list[str]:
    return [pattern.name for pattern in pattern_list(session.book)]


def test_a_new_pattern_is_typed_saved_and_undone(form: PatternForm, session: Session) -> None:
    assert (form.title, form.is_dirty) == ("New stitch pattern", False)
    form.type_in("name", "Fans")
    form.type_in("sentence", "multiple of 10 plus 1")
    form.type_in("first_stitch", "2nd")
    assert form.is_dirty
    assert form.messages()["extra_chains"].text == "Extra chains: 1, as the first stitch says."
    assert form.save() == {}
    assert form.saved_words() == "“Fans” is saved."
    assert (form.title, form.is_dirty, form.uid) == ("Fans", False, uid_of(session, "Fans"))
    undo(session.book)
    form.refresh()
    assert names(session) == ["Shells", "Voilé mesh"]
    assert (form.saved, form.is_dirty) == (None, False)


def test_a_changed_multiple_names_the_swatches_whose_gauge_it_changes(form: PatternForm, session: Session) -> None:
    taken(form, session, "Shells").type_in("multiple", "8")
    message = form.messages()["multiple"]
    assert (message.kind, message.text) == ("warning", "Saving this changes the gauge of AB-01, read in repeats.")
    assert form.save() == {}
    assert form.saved_words() == "“Shells” is saved. This has changed the gauge of AB-01, read in repeats."
    assert "multiple" not in form.messages()


def test_rows_in_a_repeat_change_no_gauge_read_in_rows(form: PatternForm, session: Session) -> None:
    taken(form, session, "Shells").type_in("rows_in_repeat", "4")
    assert not [one for one in form.messages().values() if one.kind != "hint"]


def test_the_swatches_that_use_it(form: PatternForm, session: Session) -> None:
    assert [line.tag for line in taken(form, session, "Shells").users()] == ["AB-02", "AB-01"]
    assert taken(form, session, "Voilé mesh").users() == []


def test_a_name_that_is_taken_is_said_at_once_and_refused(form: PatternForm, session: Session) -> None:
    taken(form, session, "Voilé mesh").type_in("name", " Shells ")
    assert "another stitch pattern called “Shells”" in form.reading().problems["name"]
    assert "another stitch pattern" in form.save()["name"]


def test_a_pattern_without_a_name_is_not_saved_and_stays_typed(form: PatternForm, session: Session) -> None:
    form.type_in("multiple", "6")
    assert "name" not in form.reading().problems
    assert form.save() == {"name": "Name the stitch pattern, for example “shell stitch”."}
    assert form.texts["multiple"] == "6"


def test_revert_shows_what_is_saved(form: PatternForm, session: Session) -> None:
    taken(form, session, "Shells").type_in("multiple", "9")
    form.revert()
    assert (form.texts["multiple"], form.is_dirty) == ("6", False)


def test_the_same_again_is_a_copy_under_a_free_name_that_is_not_saved(form: PatternForm, session: Session) -> None:
    taken(form, session, "Shells").same_again()
    assert (form.saved, form.is_dirty, form.texts["name"], form.texts["multiple"]) == (None, True, "Shells, copy", "6")
    assert form.save() == {}
    assert names(session) == ["Shells", "Shells, copy", "Voilé mesh"]


def test_what_is_typed_of_a_pattern_that_others_delete_stays_as_a_new_one(form: PatternForm, session: Session) -> None:
    mesh = next(pattern for pattern in pattern_list(session.book) if pattern.name == "Voilé mesh")
    taken(form, session, "Voilé mesh").type_in("notes", "Airy.")
    delete_pattern(session.book, mesh)
    form.refresh()
    assert (form.uid, form.texts["notes"], form.texts["name"]) == ("", "Airy.", "Voilé mesh")
    assert form.save() == {}
    assert names(session) == ["Shells", "Voilé mesh"]


def test_what_others_change_is_noticed(form: PatternForm, session: Session) -> None:
    shells = next(pattern for pattern in pattern_list(session.book) if pattern.name == "Shells")
    taken(form, session, "Shells")
    save_pattern(session.book, type(shells)(uid=shells.uid, name="Shells", multiple=12))
    form.refresh()
    assert form.changed_elsewhere()
    form.revert()
    assert (form.texts["multiple"], form.changed_elsewhere()) == ("12", False)
