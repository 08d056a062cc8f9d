"""Swatches, yarns and stitch patterns go in and come out equal."""

from collections.abc import Iterator
from dataclasses import fields, replace
from pathlib import Path

import pytest

from logbook.book.logbook import Logbook
from logbook.book.swatches import (
    put_stitch_pattern,
    put_swatch,
    put_yarn,
    remove_stitch_pattern,
    remove_swatch,
    stitch_patterns,
    swatch_of_tag,
    swatches,
    yarns,
)
from logbook.book.tags import next_tag
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError
from tests.support.books import put_worked, small_book, swatch, taken

FULL_YARN = Yarn(
    name="Limewalk", fibre="cotton", yarn_class=3, ball_grams=50.5, ball_metres=125.25, ball_price=4.95, currency="EUR"
)
FULL_PATTERN = StitchPattern(
    name="Shells", multiple=6, plus=1, extra_chains=1, first_stitch=2, skip_cover=0, half_plus=4, set_up_rows=1, rows_in_repeat=2,
    closing_rows=1, terms="UK", rows_text="Row 1: …\nRow 2: …", notes="light",
)  # fmt: skip
FULL = Swatch(
    tag="AB-01", date="2026-05-31", colour="moss", dye_lot="007", strands=2, hook_mm=4.5, hook_note="wooden",
    foundation_hook_mm=5.0, worked="flat", worked_by="Noémie", way_of_washing="by hand", swatch_grams=12.25,
    swatch_stitches=37.0, swatch_rows=22.0,
    notes="two\nlines", hung_grams=80.0, hung_clip_mm=120.0, minutes=42.5,
    pictures=f"{'0' * 64}.png",
    readings=(
        *taken("4 repeats = 15.1 cm; 2.75 repeats in 10 cm; 22 rows = 15 cm to 1/2 cm; 14 sts = 4\"; 1/3 repeats in 10 cm"),
        *taken("3 row repeats = 9 cm", Condition.WORKED), *taken("9 sts = 10 cm", Condition.HUNG),
    ),
)  # fmt: skip


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with small_book(tmp_path / "a.logbook", 0) as made:
        yield made


def test_a_full_swatch_comes_out_equal(book: Logbook) -> None:
    empty = {one.name for one in fields(Swatch) if getattr(FULL, one.name) in ("", None, ())}
    assert empty == {"uid", "yarn", "pattern"}
    assert not [one.name for one in fields(StitchPattern) if getattr(FULL_PATTERN, one.name) in ("", None) and one.name != "uid"]
    with book.writing("log") as writing:
        yarn = replace(FULL_YARN, uid=put_yarn(writing, FULL_YARN))
        pattern = replace(FULL_PATTERN, uid=put_stitch_pattern(writing, FULL_PATTERN))
        mine = replace(FULL, yarn=yarn, pattern=pattern)
        mine = replace(mine, uid=put_swatch(writing, mine))
    with book.reading() as connection:
        assert yarns(connection) == {yarn.uid: yarn}
        assert stitch_patterns(connection) == {pattern.uid: pattern}
        assert swatches(connection) == [mine]
        assert swatch_of_tag(connection, " AB-01 ") == mine


def test_an_empty_one_too(book: Logbook) -> None:
    with book.writing("log") as writing:
        uid = put_swatch(writing, Swatch(tag="x"))
    assert swatches(book.connection) == [Swatch(uid=uid, tag="x")]


def test_in_the_order_asked_for_and_many_at_once(book: Logbook) -> None:
    with book.writing("log") as writing:
        uids = [put_worked(writing, number) for number in range(600)]
    with book.reading() as connection:
        assert [one.uid for one in swatches(connection)] == uids
        backwards = [*reversed(uids), "none"]
        assert [one.uid for one in swatches(connection, backwards)] == backwards[:-1]
        assert all(len(one.readings) == 2 for one in swatches(connection, backwards))
        assert swatches(connection, []) == []


def test_readings_keep_their_order_when_they_are_changed(book: Logbook) -> None:
    first, second, third = taken("4 repeats = 15.1 cm; 3 repeats = 11.5 cm; 22 rows = 15 cm")
    with book.writing("log") as writing:
        uid = put_swatch(writing, swatch(1, readings=(first, second)))
    for wanted in ((second, first), (third,), (), (first, second, third)):
        with book.writing("edit") as writing:
            put_swatch(writing, replace(swatches(writing.connection)[0], readings=wanted))
        assert swatches(book.connection, [uid])[0].readings == wanted


def test_what_is_used_stays(book: Logbook) -> None:
    with book.writing("log") as writing:
        uid = put_worked(writing, 1)
    (one,) = swatches(book.connection)
    assert one.pattern is not None
    with pytest.raises(RefusedError, match=r"Swatches still use it \(S-01\)"), book.writing("remove") as writing:
        remove_stitch_pattern(writing, one.pattern.uid)
    with book.writing("remove") as writing:
        remove_swatch(writing, uid)
        remove_stitch_pattern(writing, one.pattern.uid)
    assert [stitch_patterns(book.connection), swatches(book.connection)] == [{}, []]


def test_names_and_tags_are_one_each(book: Logbook) -> None:
    with book.writing("log") as writing:
        put_worked(writing, 1)
        put_yarn(writing, FULL_YARN)
    for put, one in ((put_swatch, swatch(1)), (put_yarn, FULL_YARN), (put_stitch_pattern, StitchPattern(name="Shells 100 %"))):
        with pytest.raises(RefusedError, match="There is another"), book.writing("twice") as writing:
            put(writing, one)  # type: ignore[operator]
    for put, one in ((put_swatch, swatch(1, tag=" ")), (put_yarn, Yarn()), (put_stitch_pattern, StitchPattern())):
        with pytest.raises(RefusedError, match="needs a"), book.writing("nameless") as writing:
            put(writing, one)  # type: ignore[operator]
    with pytest.raises(RefusedError, match="There is no swatch with the tag “no”"):
        swatch_of_tag(book.connection, "no")


def test_a_yarn_must_be_there(book: Logbook) -> None:
    for unknown in (Yarn(name="a"), Yarn(name="a", uid="x")):
        with pytest.raises(RefusedError, match="The yarn “a” is not in the logbook"), book.writing("log") as writing:
            put_swatch(writing, swatch(1, yarn=unknown))


@pytest.mark.parametrize(
    ("taken_tags", "like", "offered"),
    [([], "", "S-01"), (["S-01", "S-09"], "S-01", "S-10"), (["AB-03"], "AB-03", "AB-04"), (["AB-03"], "", "S-01"),
     (["S-²"], "S-01", "S-01"), (["S-99"], "", "S-100")],
)  # fmt: skip
def test_the_next_tag(book: Logbook, taken_tags: list[str], like: str, offered: str) -> None:
    with book.writing("log") as writing:
        for number, tag in enumerate(taken_tags):
            put_swatch(writing, swatch(number, tag=tag))
    assert next_tag(book.connection, like) == offered
