"""Quantities of a text held against the known ones."""

import pytest

from logbook.craft.proofreading import judging
from logbook.craft.proofreading.judging import Verdict, judged
from logbook.craft.proofreading.quantities import quantities

KNOWN = quantities("Ch 62 (68, 80, 86).\nWork 71 (73, 75, 77) rows.\n62 (68, 80, 92) sts", 4, ())


def verdicts(text: str) -> list[tuple[Verdict, tuple[int, ...]]]:
    return [(one.verdict, one.entries) for one in judged(quantities(text, 4, ()), KNOWN, 4)]


def test_one_entry_off_comes_before_two_neighbours_swapped() -> None:
    assert verdicts("62 (68, 80, 93) sts") == [(Verdict.DIFFERS, (3,))]
    assert verdicts("68 (62, 80, 92) sts") == [(Verdict.DIFFERS, (0, 1))]
    assert verdicts("61 (69, 80, 92) sts") == [(Verdict.UNKNOWN, ())]


def test_two_neighbours_swapped_are_told_of_lengths_as_they_are_printed() -> None:
    known = quantities("92.550 (100.930, 112.070, 123.210) cm round", 4, ())
    (one,) = judged(quantities("92.5 (112, 101, 123) cm", 4, ()), known, 4)
    assert (one.verdict, one.entries) == (Verdict.DIFFERS, (1, 2))


def test_a_list_of_some_sizes_is_held_against_lists_of_as_many() -> None:
    known = quantities("Back\nDecrease 1 st.\n62 (68, 80, 92) sts", 4, ("Back",))
    (one,) = judged(quantities("Back\n59 (67, 75) sts", 4, ("Back",)), known, 4)
    assert one.verdict is Verdict.UNKNOWN
    marker = "Sizes L, 1X and 2X: a marker at the end of row {} for the armhole."
    known = quantities(marker.format("38 (37, 35)"), 4, ())
    (one,) = judged(quantities(marker.format("38 (30, 35)"), 4, ()), known, 4)
    assert (one.verdict, one.entries) == (Verdict.DIFFERS, (1,))


def test_what_is_said_again_is_judged_once_and_stands_in_its_own_place(monkeypatch: pytest.MonkeyPatch) -> None:
    judgements = []
    once = judging._judged

    def counted(*arguments: object) -> object:
        judgements.append(arguments)
        return once(*arguments)  # type: ignore[arg-type]

    monkeypatch.setattr(judging, "_judged", counted)
    text = "Row by row.\n\nCh 62 (68, 81, 86).\n\n" * 300
    found = judged(quantities(text, 4, ()), KNOWN, 4)
    assert [one.quantity.line for one in found] == list(range(3, 1203, 4))
    assert {one.verdict for one in found} == {Verdict.DIFFERS}
    assert len(judgements) < 4  # the first has other words before it
