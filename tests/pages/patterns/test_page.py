"""The page of stitch patterns without a screen."""

import pytest

from logbook.errors import RefusedError
from logbook.pages.patterns.page import StitchPatterns
from logbook.pages.session import Session
from logbook.tasks.browsing import pattern_list
from logbook.tasks.stitch_patterns import delete_pattern, save_pattern
from logbook.tasks.undoing import undo


@pytest.fixture
def page(session: Session) -> StitchPatterns:
    return StitchPatterns(session)


def uid_of(page: StitchPatterns, name: str) -> str:
    return next(line.uid for line in page.lines if line.name == name)


def taken(page: StitchPatterns, name: str) -> StitchPatterns:
    page.take(uid_of(page, name))
    return page


def test_the_list_says_the_multiple_and_how_many_swatches(page: StitchPatterns) -> None:
    assert [(line.name, line.in_short, line.swatches) for line in page.lines] == [
        ("Shells", "6 plus 1", 2),
        ("Étoile mesh", "2 plus 1", 0),
    ]


@pytest.mark.parametrize(
    ("words", "found"),
    [("etoile", ["Étoile mesh"]), ("HEM shel", ["Shells"]), ("shells mesh", []), ("", ["Shells", "Étoile mesh"])],
)
def test_find_by_parts_of_words_in_name_and_notes(page: StitchPatterns, words: str, found: list[str]) -> None:
    names = {line.uid: line.name for line in page.lines}
    assert sorted(names[uid] for uid in page.matching(words)) == sorted(found)
    assert page.number_found(words) == ("2 stitch patterns" if not words else f"{len(found)} of 2 stitch patterns")


def test_a_new_pattern_is_typed_saved_and_undone(page: StitchPatterns) -> None:
    page.take("")
    assert (page.title, page.unsaved) == ("New stitch pattern", False)
    page.type("name", "Fans")
    page.type("sentence", "multiple of 10 plus 1")
    page.type("first_stitch", "2nd")
    assert page.unsaved
    assert page.messages()["extra_chains"].text == "Extra chains: 1, as the first stitch says."
    assert page.save() == "Saved."
    assert not page.unsaved
    assert page.title == "Fans"
    assert page.saved.uid == uid_of(page, "Fans")
    undo(page.session.book)
    page.session.records_changed(None)
    assert [line.name for line in page.lines] == ["Shells", "Étoile mesh"]
    assert not page.saved.uid
    assert not page.unsaved


def test_a_changed_multiple_names_the_swatches_whose_gauge_it_changes(page: StitchPatterns) -> None:
    taken(page, "Shells").type("multiple", "8")
    message = page.messages()["multiple"]
    assert (message.kind, message.text) == ("warning", "Saving this changes the gauge of AB-01, read in repeats.")
    assert page.save() == "Saved. This has changed the gauge of AB-01, read in repeats."
    assert "multiple" not in page.messages()


def test_rows_in_a_repeat_change_no_gauge_read_in_rows(page: StitchPatterns) -> None:
    taken(page, "Shells").type("rows_in_repeat", "4")
    assert not [one for one in page.messages().values() if one.kind != "hint"]


def test_the_swatches_that_use_it(page: StitchPatterns) -> None:
    assert [line.tag for line in taken(page, "Shells").users()] == ["AB-01", "AB-02"]
    assert taken(page, "Étoile mesh").users() == []


def test_a_name_that_is_taken_is_said_at_once_and_refused(page: StitchPatterns) -> None:
    taken(page, "Étoile mesh").type("name", " Shells ")
    assert "another stitch pattern called “Shells”" in page.messages()["name"].text
    with pytest.raises(RefusedError, match="another stitch pattern"):
        page.save()


def test_a_pattern_without_a_name_is_not_saved_and_stays_typed(page: StitchPatterns) -> None:
    page.take("")
    page.type("multiple", "6")
    assert "name" not in page.messages()
    with pytest.raises(RefusedError, match="needs a name"):
        page.save()
    assert page.texts["multiple"] == "6"


def test_revert_shows_what_is_saved(page: StitchPatterns) -> None:
    taken(page, "Shells").type("multiple", "9")
    page.revert()
    assert (page.texts["multiple"], page.unsaved) == ("6", False)


def test_delete_takes_the_next_in_hand_and_is_refused_while_swatches_use_it(page: StitchPatterns) -> None:
    assert "undo brings it back" in taken(page, "Étoile mesh").delete()
    assert page.title == "Shells"
    with pytest.raises(RefusedError, match="AB-01, AB-02"):
        page.delete()


def test_what_others_change_is_shown_unless_something_is_typed(page: StitchPatterns) -> None:
    book = page.session.book
    mesh = next(p for p in pattern_list(book) if p.name == "Étoile mesh")
    taken(page, "Étoile mesh").type("notes", "Airy.")
    delete_pattern(book, mesh)
    page.session.records_changed(None)
    assert (page.saved.uid, page.texts["notes"], page.texts["name"]) == ("", "Airy.", "Étoile mesh")
    page.save()
    shells = next(p for p in pattern_list(book) if p.name == "Shells")
    taken(page, "Shells")
    save_pattern(book, type(shells)(uid=shells.uid, name="Shells", multiple=12))
    page.session.records_changed(None)
    assert page.texts["multiple"] == "12"
