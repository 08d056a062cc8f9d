"""Looking swatches up from the command line."""

import math
from pathlib import Path
from typing import Any

import pytest

from tests.support.command_line import done, done_json, refused
from tests.support.sheets import LEAST, read_rows, write_sheet

SWATCH = {
    "uid", "tag", "date", "yarn", "colour", "hook_mm", "stitch_pattern", "multiple", "plus", "extra_chains", "gauges",
}  # fmt: skip
GAUGE = {"condition", "direction", "pitch_mm", "give_or_take", "readings"}
SAMPLE = read_rows(Path(__file__).parents[2] / "sample_data" / "swatches.csv")


def tags(book: Path, *arguments: str) -> list[str]:
    return [one["tag"] for one in done_json("find", "--book", book, *arguments)]


def of_sample(**wanted: str) -> set[str]:
    return {row["tag"] for row in SAMPLE if all(part in row[column.replace("_", " ")] for column, part in wanted.items())}


def gauge(found: dict[str, Any], condition: str, direction: str) -> dict[str, Any]:
    (one,) = (g for g in found["gauges"] if (g["condition"], g["direction"]) == (condition, direction))
    return dict(one)


class TestJson:
    def test_has_the_promised_keys_and_no_others(self, wardrobe: Path) -> None:
        found = done_json("find", "--book", wardrobe)
        assert len(found) == len(SAMPLE)
        assert all(one.keys() == SWATCH for one in found)
        gauges = [g for one in found for g in one["gauges"]]
        assert all(g.keys() == GAUGE for g in gauges)
        assert {g["condition"] for g in gauges} == {"worked", "washed", "pinned", "sideways", "lengthwise", "hung"}
        assert {g["direction"] for g in gauges} == {"stitches", "rows"}

    def test_says_what_was_logged(self, wardrobe: Path) -> None:
        (found,) = done_json("find", "LC-02", "--hook", "4.5", "2024-09-21", "--book", wardrobe)
        gauges = found.pop("gauges")
        assert found == {
            "uid": "40397db9-637d-4fd9-91cf-ab0c53951040", "tag": "LC-02", "date": "2024-09-21", "yarn": "Limewalk Cotton",
            "colour": "ivory", "hook_mm": 4.5, "stitch_pattern": "shell stitch", "multiple": 6, "plus": 1, "extra_chains": 1,
        }  # fmt: skip
        washed = gauge({"gauges": gauges}, "washed", "stitches")
        assert math.isclose(washed["pitch_mm"], 420 / 66)  # 151 + 154 + 115 mm over 4 + 4 + 3 repeats of 6
        assert round(washed["give_or_take"], 4) == 0.0249
        assert washed["readings"] == 3

    def test_what_is_not_known_is_null_or_empty(self, tmp_path: Path) -> None:
        row = {
            "tag": "A-1",
            "yarn": "Harbour",
            "hook mm": "4",
            "stitches washed": "3 repeats in 10 cm",
            "rows washed": "2 rows in 3 cm",
        }
        book = tmp_path / "a.logbook"
        done("import", "--new", "--book", book, write_sheet(tmp_path / "a.csv", row))
        (found,) = done_json("find", "--book", book)
        assert (found["date"], found["colour"], found["stitch_pattern"]) == ("", "", "")
        assert (found["multiple"], found["plus"], found["extra_chains"]) == (None, None, None)
        # Repeats of a length nobody stated give no gauge of a stitch; two rows counted to a quarter are just fine enough.
        assert [(g["condition"], g["direction"]) for g in found["gauges"]] == [("washed", "rows")]

    def test_nothing_found_is_an_empty_list(self, wardrobe: Path) -> None:
        assert done_json("find", "no such swatch", "--book", wardrobe) == []


class TestFilters:
    def test_words_are_parts_of_words_without_case_and_accents(self, wardrobe: Path) -> None:
        assert set(tags(wardrobe, "NOEMIE")) == {row["tag"] for row in SAMPLE if "Noémie" in " ".join(row.values())}
        assert set(tags(wardrobe, "limew", "SHELL")) == of_sample(yarn="Limewalk", stitch_pattern="shell")
        assert tags(wardrobe, "limew SHELL") == tags(wardrobe, "shell", "limew")

    def test_signs_of_a_pattern_mean_themselves(self, wardrobe: Path) -> None:
        assert tags(wardrobe, "LC_02") == tags(wardrobe, "L%2") == []

    @pytest.mark.parametrize(
        ("arguments", "wanted"),
        [
            (["--yarn", "gorse"], of_sample(yarn="Gorsefold")),
            (["--stitch", "SHELL"], of_sample(stitch_pattern="shell")),
            (["--hook", "5.5"], {row["tag"] for row in SAMPLE if row["hook mm"] == "5.5"}),
            (["--hook", "5,5 mm"], {row["tag"] for row in SAMPLE if row["hook mm"] == "5.5"}),
            (["--class", "3"], {row["tag"] for row in SAMPLE if row["yarn class"] == "3"}),
            (["--condition", "hung"], {row["tag"] for row in SAMPLE if row["stitches hung"] or row["rows hung"]}),
            (["ivory", "--stitch", "shell", "--hook", "4.5"], {"LC-02", "LC-06"}),
        ],
        ids=lambda value: " ".join(value) if isinstance(value, list) else "",
    )
    def test_each(self, wardrobe: Path, arguments: list[str], wanted: set[str]) -> None:
        assert set(tags(wardrobe, *arguments)) == wanted != set()

    def test_newest_first(self, wardrobe: Path) -> None:
        dates = [one["date"] for one in done_json("find", "--book", wardrobe)]
        assert dates == sorted(dates, reverse=True)


class TestText:
    def test_a_table_and_how_many(self, wardrobe: Path) -> None:
        swatches, _, made = done("find", "LC-0", "shell", "--book", wardrobe).partition("\n\nmade piece")
        assert made
        heading, *rows = swatches.splitlines()
        assert heading.split()[:7] == ["tag", "date", "yarn", "colour", "hook", "stitch", "pattern"]
        assert heading.endswith("sts in 10 cm  rows in 10 cm")
        (line,) = (row for row in rows if row.startswith("LC-02"))
        assert "4.5 mm" in line
        assert "15.7 ± 2.5 %" in line
        assert rows[-1] == f"{len(rows) - 2} swatches found."

    def test_one_and_none(self, wardrobe: Path) -> None:
        assert done("find", "OA-05", "--book", wardrobe).endswith("\n\n1 swatch found.\n")
        assert done("find", "no such swatch", "--book", wardrobe) == "0 swatches found.\n"

    def test_a_gauge_that_is_not_of_the_washed_fabric_says_so(self, tmp_path: Path) -> None:
        row = {**LEAST, "tag": "A-1", "stitches washed": "", "stitches as worked": "20 sts = 10 cm"}
        book = tmp_path / "a.logbook"
        done("import", "--new", "--book", book, write_sheet(tmp_path / "a.csv", row))
        assert "(as worked)" in done("find", "--book", book)


@pytest.mark.parametrize(
    ("arguments", "named"),
    [
        (["--class", "8"], "“8”"),
        (["--class", "thick"], "“thick”"),
        (["--hook", "0"], "“0”"),
        (["--hook", "thin"], "“thin”"),
        (["--condition", "boiled"], "“boiled”"),
        (["--cond", "washed"], "--cond"),
        (["--yarn"], "--yarn"),
        (["--inches"], "--inches"),
    ],
    ids=" ".join,
)
def test_arguments_that_are_wrong_alone(wardrobe: Path, arguments: list[str], named: str) -> None:
    assert named in refused(2, "find", "--book", wardrobe, *arguments)


class TestMadePieces:
    def test_what_did_i_chain_for_that_one(self, wardrobe: Path) -> None:
        text = done("find", "tadeo", "--book", wardrobe)
        assert text.startswith("0 swatches found.")
        (line,) = (line for line in text.splitlines() if line.startswith("Usher's vest for Tadeo"))
        assert line.split()[4:10] == ["1X", "9", "Mar", "2025", "98", "63"]
        assert text.endswith("1 made piece found.\n")

    def test_by_what_its_swatch_is_found_by(self, wardrobe: Path) -> None:
        assert "2 made pieces found." in done("find", "usher", "--yarn", "limewalk", "--book", wardrobe)
        assert "made" not in done("find", "usher", "--yarn", "gorsefold", "--book", wardrobe)

    def test_json_stays_a_list_of_swatches(self, wardrobe: Path) -> None:
        assert done_json("find", "tadeo", "--book", wardrobe) == []
