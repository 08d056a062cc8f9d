"""The list of stitch patterns without a screen."""

import pytest

from logbook.pages.patterns.pattern_list import PatternList, cells
from logbook.pages.session import Session


@pytest.fixture
def patterns(session: Session) -> PatternList:
    return PatternList(session)


def test_it_says_the_multiple_and_how_many_swatches(patterns: PatternList) -> None:
    assert [(line.name, line.in_short, line.swatches) for line in patterns.lines] == [
        ("Shells", "6 plus 1", 2),
        ("Voilé mesh", "2 plus 1", 0),
    ]
    assert cells(patterns.lines[0]) == ("Shells\n6 plus 1 · 2 swatches", "Shells", "6 plus 1", "2")


@pytest.mark.parametrize(("words", "found"), [("voile", ["Voilé mesh"]), ("HEM shel", ["Shells"]), ("shells mesh", [])])
def test_find_by_parts_of_words_in_name_and_notes(patterns: PatternList, words: str, found: list[str]) -> None:
    names = {line.uid: line.name for line in patterns.lines}
    uids, count = patterns.find(words)
    assert [names[uid] for uid in uids or ()] == found
    assert count == f"{len(found)} of 2 stitch patterns"


def test_no_words_ask_for_nothing(patterns: PatternList) -> None:
    assert patterns.find(" ") == (None, "2 stitch patterns")
