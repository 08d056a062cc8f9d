"""Finding swatches by words and filters."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.book.logbook import Logbook
from logbook.book.search import Filters, joined, matching
from logbook.book.swatches import put_stitch_pattern, put_swatch, put_yarn, remove_swatch, swatches
from logbook.book.trouble import DamagedError
from logbook.book.undo import undo
from logbook.book.wanted_words import folded
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.notation import Notation, written_in
from logbook.errors import RefusedError
from tests.support.books import edit, small_book, swatch, taken

NOTES = {
    "A": "50% wool_blend", "B": r"back\slash", "C": "Größe 38, naïve", "D": "505 woolxblend", "E": "Ångström ﬁne ½",
    "F": "x' OR '1'='1",
}  # fmt: skip


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with small_book(tmp_path / "a.logbook", 0) as made:
        with made.writing("log") as writing:
            for number, (tag, notes) in enumerate(NOTES.items(), 1):
                put_swatch(writing, swatch(number, tag=tag, date=f"2026-05-0{number}", notes=notes))
        yield made


def found(book: Logbook, **asked: object) -> str:
    """The tags found, in order."""
    with book.reading() as connection:
        uids = matching(connection, Filters(**asked))  # type: ignore[arg-type]
        return "".join(one.tag for one in swatches(connection, uids))


@pytest.mark.parametrize(
    ("words", "tags"),
    [
        ("", "FEDCBA"), ("   ", "FEDCBA"), ("%", "A"), ("_", "A"), ("50%", "A"), ("0_", ""), ("wool_", "A"), ("\\", "B"),
        ("k\\s", "B"), ("groesse", ""), ("grosse", "C"), ("GRÖSSE", "C"), ("naive", "C"), ("näive", "C"), ("angstrom", "E"),
        ("fine", "E"), ("wool 50", "DA"), ("50 wool blend", "DA"), ("wool rust", ""), ("moss wool", "DA"), ("oo", "DA"),
        ("4,5", "FA"), ("4,5 mm wool", "A"),
        ("'", "F"), ("' OR '1'='1", "F"), ('"', ""), ("4.5 mm", "FA"), ("x" * 100_000, ""), ("\0", ""), ("wool " * 5000, "DA"),
    ],
)  # fmt: skip
def test_words_are_parts_of_words_all_of_them_accents_and_signs_plain(book: Logbook, words: str, tags: str) -> None:
    assert found(book, words=words) == tags


def test_too_many_words_and_what_is_no_text(book: Logbook) -> None:
    with pytest.raises(RefusedError, match="2000 words"):
        found(book, words=" ".join(str(number) for number in range(2000)))
    with pytest.raises(RefusedError, match=r"U\+DCFF"):
        found(book, words="\udcff")


def test_folding() -> None:
    for text, plain in (("Étoile", "etoile"), ("ẞtraße", "sstrasse"), ("㎒", "mhz"), ("ﬀ", "ff"), ("İ", "i")):
        assert folded(text) == plain
        assert folded(plain) == plain


def test_filters(book: Logbook) -> None:
    with book.writing("log") as writing:
        yarn = Yarn(name="Étang 100%", yarn_class=0)
        yarn = replace(yarn, uid=put_yarn(writing, yarn))
        pattern = StitchPattern(name="Shells_6", multiple=6)
        pattern = replace(pattern, uid=put_stitch_pattern(writing, pattern))
        pulled = taken("4 repeats = 20 cm", Condition.SIDEWAYS)
        put_swatch(writing, swatch(9, tag="Y", date="2026-05-21", yarn=yarn, pattern=pattern, hook_mm=5.5, readings=pulled))
        put_swatch(writing, swatch(10, tag="Z", date="", yarn=yarn, hook_mm=3.75))
    assert found(book, yarn="etang") == "YZ"
    assert found(book, yarn="0%") == "YZ"
    assert found(book, stitch="s_6") == "Y"
    assert found(book, stitch="s_6", yarn="etang") == "Y"
    assert found(book, stitch="s6") == ""
    assert found(book, hook_mm=3.75) == "Z"
    assert found(book, yarn_class=0) == "YZ"
    assert found(book, condition=Condition.SIDEWAYS) == "Y"
    assert found(book, condition=Condition.WASHED, yarn="etang", words="moss", hook_mm=3.75, yarn_class=0) == "Z"
    assert found(book)[-1] == "Z", "without a date: last"


def test_the_text_follows_every_change(book: Logbook) -> None:
    with book.writing("log") as writing:
        yarn = Yarn(name="Limewalk")
        yarn = replace(yarn, uid=put_yarn(writing, yarn))
        uid = put_swatch(writing, swatch(9, tag="Y", yarn=yarn))
    assert found(book, words="limewalk") == "Y"
    with book.writing("rename") as writing:
        put_yarn(writing, replace(yarn, name="Gorsefold"))
    assert (found(book, words="limewalk"), found(book, words="gorsefold")) == ("", "Y")
    undo(book)
    assert (found(book, words="limewalk"), found(book, words="gorsefold")) == ("Y", "")
    edit(book, "Y", yarn=None)
    assert found(book, words="limewalk") == ""
    with book.writing("remove") as writing:
        remove_swatch(writing, uid)
    assert "Y" not in found(book)
    undo(book)
    assert "Y" in found(book)


def test_a_tag_comes_first_then_whole_words_then_parts_of_words(book: Logbook) -> None:
    with book.writing("log") as writing:
        for number, (tag, notes) in enumerate({"lace-1": "", "I": "lace", "J": "lacework", "K": "lace hem"}.items(), 11):
            put_swatch(writing, swatch(number, tag=tag, date=f"2026-06-{number}", notes=notes))
        put_swatch(writing, swatch(20, tag="lace", date="2020-01-01", notes=""))
    assert found(book, words="lace") == "laceKIJlace-1"
    assert found(book, words="LACE hem") == "K"


def test_what_is_searched_in_and_is_no_text_any_more_is_damage() -> None:
    assert joined(["lace", None, 4.5, ""]) == "lace\n4.5 mm"
    with pytest.raises(DamagedError, match="a text in it is 5"):
        joined(["lace", 5])


@pytest.mark.parametrize(
    ("words", "tags"),
    [
        ("3 May 2026", "C"), ("3. May 2026", "C"), ("3rd May 2026", "C"), ("May 3, 2026", "C"), ("3.5.2026", "C"),
        ("03/05/2026", "C"), ("2026/5/3", "C"), ("2026-05-03", "C"), ("3-5-26", "C"), ("3 may", "C"), ("May 3", "C"),
        ("may 2026", "FEDCBA"), ("2026 May", "FEDCBA"), ("May 20", "FEDCBA"), ("May 202", "FEDCBA"), ("5/2026", "FEDCBA"),
        ("Jun 2026", ""), ("31 May 2026", ""), ("May 2025", ""),
        ("naive 3 May 2026", "C"), ("wool May 2026", "DA"), ("3 maypole 2026", ""), ("wool 505", "D"), ("3 May 2026 wool", ""),
    ],
)  # fmt: skip
def test_dates_are_found_as_people_write_them(book: Logbook, words: str, tags: str) -> None:
    assert found(book, words=words) == tags


def test_a_date_in_figures_is_read_as_at_home_and_in_notes_as_it_stands_there(book: Logbook) -> None:
    with book.writing("log") as writing:
        put_swatch(writing, swatch(9, tag="Y", date="2026-03-05", notes="washed 12 Mar, 7/8/2026"))
    assert found(book, words="3/5/2026") == "C"
    with written_in(Notation(month_first=True)):
        assert found(book, words="3/5/2026") == "Y"
    assert found(book, words="12 mar") == found(book, words="7/8/2026") == "Y"
