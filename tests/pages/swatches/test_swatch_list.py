"""What a look-up leaves of the list."""

import pytest

from logbook.pages.session import Session
from logbook.pages.swatches.swatch_list import CLASS_CHOICES, FindTexts, SwatchList, cells, sort_keys, two_lines
from logbook.tasks import word_search
from logbook.tasks.browsing import SwatchLine


def tags(swatches: SwatchList, texts: FindTexts) -> list[str]:
    uids = swatches.find(texts).uids
    return [line.tag for line in swatches.lines if uids is None or line.uid in uids]


@pytest.mark.parametrize(
    ("texts", "expected"),
    [
        (FindTexts(), ["MW-04", "MW-03", "HC-02", "HC-01"]),
        (FindTexts(words="merida"), ["MW-04", "MW-03"]),
        (FindTexts(words=" SHELL harb "), ["HC-01"]),
        (FindTexts(words="%"), []),
        (FindTexts(yarn="cotton", stitch="crochet"), ["HC-02"]),
        (FindTexts(hook="H"), ["MW-04", "MW-03"]),
        (FindTexts(hook="4,5 mm"), ["HC-01"]),
        (FindTexts(yarn_class=CLASS_CHOICES[4]), ["HC-02", "HC-01"]),
        (FindTexts(condition="washed, laid flat", yarn="wool"), ["MW-04"]),
    ],
)
def test_words_and_filters_go_together(session: Session, texts: FindTexts, expected: list[str]) -> None:
    assert tags(SwatchList(session), texts) == expected


def test_the_number_found_is_said(session: Session) -> None:
    swatches = SwatchList(session)
    assert swatches.find(FindTexts()).count == "4 swatches"
    assert swatches.find(FindTexts(words="harbour")).count == "2 of 4 swatches"
    assert swatches.find(FindTexts(words="harbour")).uids is not None


def test_of_many_what_is_found_is_told_as_it_is_found(session: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(word_search, "SLICE", 1)
    swatches = SwatchList(session)
    found = [(len(one.uids or ()), one.count, one.still_looking) for one in swatches.found(FindTexts(words="merida"))]
    assert [number for number, _, _ in found[:-1]] != [2, 2, 2, 2], "all at once"
    assert found[-2:] == [(2, "2 and more of 4 swatches", True), (2, "2 of 4 swatches", False)]


def test_a_hook_that_is_none_gets_a_sentence_and_filters_nothing(session: Session) -> None:
    found = SwatchList(session).find(FindTexts(hook="thick", words="harbour"))
    assert found.errors["hook"].startswith("“thick” is not a hook")
    assert found.count == "2 of 4 swatches"


def test_a_line_says_what_tells_a_swatch(session: Session) -> None:
    *_, line = SwatchList(session).lines
    assert cells(line) == (
        "Harbour cotton · Shells\nHC-01 · 4.5 mm · May 2026",
        "HC-01",
        "Harbour cotton",
        "Shells",
        "4.5 mm",
        "1 May 2026",
        "",
    )
    assert sort_keys(line)[-1] is None
    assert sort_keys(line)[4] == 4.5


def test_the_gauge_of_a_line_is_that_of_the_finished_fabric(session: Session) -> None:
    swatches = SwatchList(session)
    uids = {line.tag: line.uid for line in swatches.lines}
    gauges = swatches.gauges([uids["HC-01"]])
    assert gauges == {uids["HC-01"]: "15.7 sts washed"}
    own = ("HC-01", "Harbour cotton", "Shells", "4.5 mm", "2026-05-01", "")
    assert two_lines(own, "15.7 sts washed") == "Harbour cotton · Shells\nHC-01 · 4.5 mm · 15.7 sts washed · May 2026"


def test_whole_words_come_before_parts_of_words(session: Session) -> None:
    swatches = SwatchList(session)
    ranks = swatches.find(FindTexts(words="mw-03")).ranks
    assert ranks == {}  # one alone needs no order
    found = swatches.find(FindTexts(words="r"))
    assert set(found.ranks.values()) == {2}
    found = swatches.find(FindTexts(words="wool"))
    assert [found.ranks[uid] for uid in found.uids or ()] == [1, 1]


def test_names_are_sorted_without_case_or_accents_where_the_system_has_no_order() -> None:
    names = ["Zephyr", "Éclair", "brume", "Aran", ""]
    lines = [SwatchLine(uid=name, tag=name, date="", yarn=name, stitch="", hook_mm=None, colour="") for name in names]
    in_order = sorted(lines, key=lambda line: str(sort_keys(line)[0]))
    assert [line.uid for line in in_order] == ["", "Aran", "brume", "Éclair", "Zephyr"]
    assert sort_keys(lines[-1])[2:] == (None, None, None, None, None)
