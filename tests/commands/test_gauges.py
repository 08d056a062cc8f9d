"""``nearest``, ``compare`` and ``hooks`` from the command line.

``hooks`` is held against values worked out by hand. Four swatches of plain stitches, hooks 4, 4.5 and 5 mm measured at three
places by spans that agree, 6 mm by a single count:

three spans of 10 stitches: ν = 6, s = √(4·0.02²/6), t(6) = 2.446912, so the fabric's part is 2.446912·0.0163299/√3 = 2.30697 %;
the tape's is 1/(√6·length in mm): 0.680414 %, 0.628074 %, 0.591664 %
one count of 12.5 in 10 cm: t(4) = 2.776445, 2.776445·2 % = 5.55289 %; √3·0.25/(√12·12.5) = 1 %

hook   stitch    give or take U    w = 1/((U/2)² + 0.02²)
4.0    6.0 mm    2.405219 %        1836.119
4.5    6.5 mm    2.390939 %        1841.910
5.0    6.9 mm    2.381634 %        1845.684
6.0    8.0 mm    5.642215 %         836.215

XᵀWX = | 6359.92824   9784.58690 |   XᵀWy = | 12041.41356 |   det = 684595.54
       | 9784.58690  15160.97865 |          | 18599.57228 |
slope 0.689002, at ln hook 0: 0.833313;  χ² = 0.352353, c² = (4 + 0.352353)/6 = 0.725392
5.5 mm: e^(0.833313 + 0.689002·1.704748) = 7.447573 mm; 2.446912·√(0.725392·(0.000414076 + 0.0004)) = 5.946168 %
8 mm:   9.641269 mm, 11.928114 %: not known
"""

from pathlib import Path

import pytest

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.tasks.browsing import save_assumptions
from logbook.tasks.keeping import new_book
from logbook.tasks.logging_swatches import save_swatch
from tests.support.command_line import done, done_json, refused

TRIED = (
    (4.0, "10 sts = 6 cm; 10 sts = 6 cm; 10 sts = 6 cm"),
    (4.5, "10 sts = 6.5 cm; 10 sts = 6.5 cm; 10 sts = 6.5 cm"),
    (5.0, "10 sts = 6.9 cm; 10 sts = 6.9 cm; 10 sts = 6.9 cm"),
    (6.0, "12.5 sts in 10 cm"),
)


@pytest.fixture
def hooks_book(tmp_path: Path) -> Path:
    with new_book(tmp_path / "hooks.logbook", keep_backups=False) as book:
        for number, (hook, text) in enumerate(TRIED, 1):
            readings = tuple(TakenReading(Condition.WASHED, one) for one in read_readings(text))
            yarn, pattern = Yarn(name="Harbour"), StitchPattern(name="single crochet", multiple=1)
            save_swatch(book, Swatch(tag=f"H-{number}", yarn=yarn, pattern=pattern, hook_mm=hook, readings=readings))
        save_assumptions(book, Assumptions(count_step=0.25))  # the figures by hand take counts as read to a quarter
        return book.path


class TestHooks:
    def test_four_hooks_agree_with_the_hand(self, hooks_book: Path) -> None:
        answer = done_json("hooks", "--book", hooks_book, "--yarn", "harbour", "--stitch", "single")
        hooks = {one["hook_mm"]: one for one in answer["hooks"]}
        assert hooks[5.5]["repeat_mm"] == pytest.approx(7.447573, abs=1e-6)
        assert hooks[5.5]["give_or_take_mm"] == pytest.approx(7.447573 * 0.05946168, abs=1e-6)
        assert hooks[4]["repeat_mm"] == pytest.approx(5.980314, abs=1e-6)
        assert (hooks[4]["tried"], hooks[5.5]["tried"]) == (True, False)
        assert (hooks[8]["known"], hooks[8]["repeat_mm"], hooks[8]["give_or_take_mm"]) == (False, None, None)
        assert all(one.keys() == {"hook_mm", "repeat_mm", "give_or_take_mm", "tried", "known"} for one in answer["hooks"])
        assert any("not known" in note for note in answer["notes"])

    def test_one_hook_refuses_in_one_sentence(self, hooks_book: Path) -> None:
        assert "log one first" in refused(1, "hooks", "--book", hooks_book, "--yarn", "harbour", "--condition", "worked")
        assert "No swatch of that yarn" in refused(1, "hooks", "--book", hooks_book, "--yarn", "nowhere")


class TestCompare:
    def test_two_that_differ_by_hand(self, hooks_book: Path) -> None:
        answer = done_json("compare", "--book", hooks_book, "H-1", "H-3")
        (one,) = answer["differences"]
        # ln(6/6.9) = −0.13976, √(0.02405219² + 0.02381634²) = 0.0338486
        assert one["ratio"] == pytest.approx(6 / 6.9)
        assert one["give_or_take"] == pytest.approx(0.0338486, abs=1e-7)
        assert one["differ"] is True
        assert "H-1 and H-3 differ" in done("compare", "--book", hooks_book, "H-1", "H-3")

    def test_an_unknown_tag_is_named(self, hooks_book: Path) -> None:
        assert "H-9" in refused(1, "compare", "--book", hooks_book, "H-1", "H-9")


class TestNearest:
    def test_nearest_first_with_how_far_off(self, hooks_book: Path) -> None:
        found = done_json("nearest", "--book", hooks_book, "--stitches", "15")
        assert [one["tag"] for one in found] == ["H-2", "H-3", "H-1", "H-4"]
        # 100/15 = 6.6667 mm: ln(6.5/6.6667) = −0.0253178
        assert found[0]["off"] == pytest.approx(0.0253178, abs=1e-7)

    def test_a_date_among_the_words_is_read_as_find_reads_it(self, wardrobe: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        def tags(date: str) -> list[str]:
            return [one["tag"] for one in done_json("nearest", "--book", wardrobe, "--stitches", "13.5", date)]

        monkeypatch.setenv("LC_TIME", "en_US.UTF-8")
        assert (tags("10/5/2024"), tags("5/10/2024")) == (["LC-05"], [])
        monkeypatch.setenv("LC_TIME", "en_GB.UTF-8")
        assert (tags("10/5/2024"), tags("5/10/2024")) == ([], ["LC-05"])
