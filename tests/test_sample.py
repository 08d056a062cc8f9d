"""The sample sheets, read with nothing but ``csv``: their form, and whether their figures hang together."""

import csv
import io
import re
from collections import defaultdict
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from logbook import sample
from logbook.craft.rows.proof import prove
from logbook.craft.words.terms import Terms
from logbook.errors import LogbookError
from tests.support.faults import FAULTS
from tests.support.sample_sheets import Row, sheet, written_rows

CONDITIONS = ["as worked", "washed", "pinned", "pulled sideways", "pulled lengthwise", "hung"]
YARN = ["yarn", "fibre", "yarn class", "ball grams", "ball metres"]
PATTERN = [
    "stitch pattern", "multiple", "plus", "extra chains", "first stitch in chain", "skipped chains cover",
    "set-up rows", "rows in repeat", "closing rows", "terms",
]  # fmt: skip
HEADING = [
    "uid", "tag", "date", *YARN, "colour", "dye lot", "strands", "hook mm", "hook note", "foundation hook mm",
    *PATTERN, "worked", "worked by", "way of washing", "swatch grams", "swatch stitches", "swatch rows", "notes",
    *(f"{direction} {condition}" for condition in CONDITIONS for direction in ("stitches", "rows")),
    "hung grams", "hung clip cm", "half-repeat plus", "written rows", "minutes", "ball price", "currency", "pictures",
]  # fmt: skip

ROWS = sheet(sample.SWATCHES)[1]
BY_TAG = {row["tag"]: row for row in ROWS}


def amount(text: str) -> float:
    """A number, or a whole one and a fraction: ``3 5/16``."""
    return sum(float(part.split("/")[0]) / float((part + "/1").split("/")[1]) for part in text.split())


def millimetres(length: str) -> float:
    for unit, mm in (("mm", 1.0), ("cm", 10.0), ("inch", 25.4), ("in", 25.4), ('"', 25.4)):
        if length.endswith(unit):
            return mm * amount(length.removesuffix(unit).replace(",", "."))
    raise AssertionError(f"no unit: {length}")


def places(row: Row, column: str) -> Iterator[tuple[float, float]]:
    """Each reading as how many base stitches or rows, and over how many mm."""
    for text in filter(None, row[column].split("; ")):
        found = re.fullmatch(r"([\d.]+) ([a-z ]+?)(?: = | in | per )(.+?)(?: to 1/2 cm)?", text)
        assert found, f"{row['tag']}, {column}: {text}"
        count, unit, length = found.groups()
        if column.startswith("stitches"):
            repeat = row["multiple"]
            sizes = {"repeat": repeat, "repeats": repeat, "sts": "1", "stitches": "1", "sc": "1"}
        else:
            sizes = {"rows": "1", "row repeats": row["rows in repeat"]}
        assert unit in sizes, f"{row['tag']}, {column}: {text}"
        yield float(count) * int(sizes[unit]), millimetres("1 inch" if length == "inch" else length)


def pitch(row: Row, column: str) -> float:
    counts, lengths = zip(*places(row, column), strict=True)
    return sum(lengths) / sum(counts)


def both(row: Row, condition: str) -> tuple[float, float]:
    """The pitches of stitches and rows, of which neither may be missing."""
    return pitch(row, f"stitches {condition}"), pitch(row, f"rows {condition}")


def read(condition: str) -> list[Row]:
    found = [row for row in ROWS if row[f"stitches {condition}"] or row[f"rows {condition}"]]
    assert found, f"nothing was measured {condition}"
    return found


@pytest.mark.parametrize("name", [sample.SWATCHES, sample.FAULTY])
def test_byte_for_byte_a_sheet_with_bom_commas_crlf_and_every_cell_quoted(name: str) -> None:
    heading, rows = sheet(name)
    again = io.StringIO()
    writer = csv.writer(again, quoting=csv.QUOTE_ALL, lineterminator="\r\n")
    writer.writerow(heading)
    writer.writerows(row.values() for row in rows)
    assert (sample.folder() / name).read_bytes() == b"\xef\xbb\xbf" + again.getvalue().encode()
    assert not any("\r" in cell for row in rows for cell in row.values())


def test_every_yarn_has_one_price_and_some_swatches_their_minutes() -> None:
    prices = {(row["yarn"], row["ball price"], row["currency"]) for row in ROWS}
    assert len(prices) == len({row["yarn"] for row in ROWS})
    assert all(float(price) > 0 and currency for _, price, currency in prices)
    assert 10 < sum(bool(row["minutes"]) for row in ROWS) < len(ROWS)


def test_the_headings_are_the_columns_of_the_log() -> None:
    assert sheet(sample.SWATCHES)[0] == HEADING
    assert sheet(sample.FAULTY)[0] == [*HEADING, "shelf"]


def test_no_cell_of_the_swatches_can_be_taken_for_a_formula() -> None:
    cells = [cell for row in ROWS for cell in row.values()]
    assert not [cell for cell in cells if re.match(r"[=+\-@\t\r]", cell)]
    assert [cell for cell in cells if re.match(r"'[=+\-@]", cell)], "none that needed its apostrophe"


def hold_together(rows: list[Row]) -> None:
    for column in ("uid", "tag"):
        assert len({row[column] for row in rows}) == len(rows)
    defined: dict[tuple[str, str], list[str]] = {}
    for row in rows:
        assert re.fullmatch(r"[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}", row["uid"])
        assert 2024 <= date.fromisoformat(row["date"]).year <= 2026
        for kind in (YARN, PATTERN):
            record = [row[column] for column in kind]
            assert all(record), f"{row['tag']}: {record}"
            assert defined.setdefault((kind[0], record[0]), record) == record, row["tag"]
        extra, first, cover = (int(row[c]) for c in ("extra chains", "first stitch in chain", "skipped chains cover"))
        assert extra == first - 1 - cover, row["tag"]
        assert int(row["multiple"]) >= 1, row["tag"]
        assert int(row["plus"]) >= 0, row["tag"]
        assert row["yarn class"] in set("01234567")
        assert row["terms"] in {"US", "UK"}
        assert row["worked"] in {"flat", "round"}
        assert int(row["strands"]) >= 1
        assert float(row["hook mm"]) > 0
        assert all(float(row[c]) > 0 for c in ("swatch grams", "hung grams", "hung clip cm") if row[c]), row["tag"]
        for condition in CONDITIONS:
            for direction in ("stitches", "rows"):
                assert all(count > 0 and mm > 0 for count, mm in places(row, f"{direction} {condition}"))


def test_every_swatch_is_whole_and_no_two_contradict() -> None:
    hold_together(ROWS)


def test_the_scenario_is_as_wide_as_it_should_be() -> None:
    assert 38 <= len(ROWS) <= 45
    assert len({row["yarn"] for row in ROWS}) == 6
    assert len({row["worked by"] for row in ROWS}) == 2
    assert {"single crochet", "half double crochet", "double crochet", "V-stitch", "shell stitch", "ripple", "mesh",
            "moss stitch"} <= {row["stitch pattern"] for row in ROWS}  # fmt: skip
    assert {row["worked"] for row in ROWS} == {"flat", "round"}
    assert any("\n" in row["notes"] for row in ROWS)


def test_a_swatch_has_whole_repeats_and_whole_groups_of_rows() -> None:
    for row in ROWS:
        plus = int(row["plus"]) if row["worked"] == "flat" else 0
        assert (int(row["swatch stitches"]) - plus) % int(row["multiple"]) == 0, row["tag"]
        once = int(row["set-up rows"]) + int(row["closing rows"])
        assert (int(row["swatch rows"]) - once) % int(row["rows in repeat"]) == 0, row["tag"]


def test_no_reading_reaches_past_the_swatch() -> None:
    for row in ROWS:
        for condition in CONDITIONS:
            for direction in ("stitches", "rows"):
                for count, _ in places(row, f"{direction} {condition}"):
                    assert count < int(row[f"swatch {direction}"]), row["tag"]


def test_the_worked_example_is_there_to_the_letter() -> None:
    row = BY_TAG["LC-02"]
    assert row["stitches washed"] == "4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm"
    assert [row[column] for column in PATTERN[:6]] == ["shell stitch", "6", "1", "1", "2", "0"]
    assert row["hook mm"] == "4.5"
    assert pitch(row, "stitches washed") * 6 == pytest.approx(38.18, abs=0.01)


def test_places_of_one_fabric_differ_by_a_little_and_by_much_in_one_swatch() -> None:
    torn = set()
    for row in ROWS:
        for condition in CONDITIONS:
            for direction in ("stitches", "rows"):
                column = f"{direction} {condition}"
                for count, mm in places(row, column):
                    if abs(mm / count / pitch(row, column) - 1) > 0.045:
                        torn.add((row["tag"], column))
    assert torn == {("WM-05", "stitches as worked")}


def test_pulling_one_way_takes_from_the_other() -> None:
    for row in read("pulled sideways"):
        stitch, height = both(row, "washed")
        pulled_stitch, pulled_height = both(row, "pulled sideways")
        assert 1.04 < pulled_stitch / stitch < 1.4, row["tag"]
        assert 0.8 < pulled_height / height < 1, row["tag"]
    for row in read("pulled lengthwise"):
        stitch, height = both(row, "washed")
        pulled_stitch, pulled_height = both(row, "pulled lengthwise")
        assert 0.8 < pulled_stitch / stitch < 1, row["tag"]
        assert 1.04 < pulled_height / height < 1.5, row["tag"]


def test_pinning_widens_and_hanging_lengthens() -> None:
    for row in read("pinned"):
        assert 1.03 < pitch(row, "stitches pinned") / pitch(row, "stitches washed") < 1.15, row["tag"]
    for row in read("hung"):
        stitch, height = both(row, "washed")
        hung_stitch, hung_height = both(row, "hung")
        assert hung_stitch < stitch, row["tag"]
        assert 1.02 < hung_height / height < 1.12, row["tag"]
        width_cm = int(row["swatch stitches"]) * stitch / 10
        assert 0.8 * width_cm < float(row["hung clip cm"]) < width_cm, row["tag"]
        assert float(row["hung grams"]) > 0


def test_a_yarn_changes_alike_each_time_it_is_washed() -> None:
    changes = defaultdict(list)
    for row in read("washed"):
        if row["stitches as worked"]:
            for direction in ("stitches", "rows"):
                change = pitch(row, f"{direction} washed") / pitch(row, f"{direction} as worked")
                changes[row["yarn"], direction].append(change)
    assert len(changes) == 12
    for key, ratios in changes.items():
        assert max(ratios) - min(ratios) < 0.06, key
    mean = {key: sum(ratios) / len(ratios) for key, ratios in changes.items()}
    assert mean["Limewalk Cotton", "rows"] < 0.97, "cotton shrinks in length"
    assert mean["Gorsefold Wool", "stitches"] > 1.01, "wool blooms"
    for grows in ("Weirside Merino", "Sallowbank Bamboo", "Owlbarn Alpaca"):
        assert 1.05 < mean[grows, "rows"] < 1.1, grows


def test_washing_can_be_borrowed_where_it_was_not_measured() -> None:
    unwashed = [row for row in ROWS if not row["stitches washed"]]
    assert len(unwashed) >= 5
    for row in unwashed:
        lenders = [other for other in read("washed") if other["stitches as worked"]]
        assert [o for o in lenders if all(o[c] == row[c] for c in ("yarn", "way of washing"))], row["tag"]


def test_four_hooks_one_with_a_single_count_and_the_stitch_grows_with_the_hook() -> None:
    tried = sorted(
        (float(row["hook mm"]), pitch(row, "stitches washed"), row["stitches washed"])
        for row in read("washed")
        if (row["yarn"], row["stitch pattern"], row["worked by"]) == ("Limewalk Cotton", "shell stitch", "Noémie")
    )
    hooks, pitches, texts = zip(*tried, strict=True)
    assert hooks == (4, 4.5, 5, 5.5)
    assert list(pitches) == sorted(set(pitches))
    assert texts[-1] == "2.25 repeats in 10 cm"


def test_a_count_too_coarse_to_state_a_give_or_take() -> None:
    assert BY_TAG["GW-05"]["stitches as worked"] == "1 repeat in 9 cm"
    assert not any(BY_TAG["GW-05"][f"stitches {condition}"] for condition in CONDITIONS[1:])


def test_plain_single_crochet_lies_in_the_class_of_its_yarn() -> None:
    in_10_cm = {"1": (21, 32), "2": (16, 20), "3": (12, 17), "4": (11, 14)}
    plain = [row for row in ROWS if row["stitch pattern"] == "single crochet" and row["strands"] == "1"]
    assert plain
    for row in plain:
        low, high = in_10_cm[row["yarn class"]]
        assert low <= 100 / pitch(row, "stitches as worked") <= high, row["tag"]


def test_swatches_weigh_what_their_area_and_yarn_say() -> None:
    """Yarn in a stitch, in widths of that stitch: sc about 5 to 6, dc 9 to 10, with chains between fewer."""
    weighed = [row for row in read("as worked") if row["swatch grams"]]
    for row in weighed:
        worked = int(row["swatch stitches"]) * int(row["swatch rows"])
        metres = float(row["swatch grams"]) * float(row["ball metres"]) / float(row["ball grams"])
        widths = 1000 * metres / int(row["strands"]) / worked / pitch(row, "stitches as worked")
        assert 4 < widths < 11, f"{row['tag']}: {widths:.1f}"
        if row["stitch pattern"] == "single crochet":
            assert 5 < widths < 6.5, f"{row['tag']}: {widths:.1f}"
    assert len(weighed) > 35


WRITTEN = written_rows()
SPOILT = {
    "single crochet": ("each sc across", "each sc to last 2 sc", 2),
    "ribbing, sc in back loops": ("BLO of first sc, sc", "BLO of first sc, sk 1 sc, ch 1, sc in next ch, sc", 2),
    "half double crochet": ("first hdc and in each hdc across", "first hdc and in each sc across", 2),
    "double crochet": ("across to tch, dc in top of tch", "across to tch", 2),
    "V-stitch": ("V-st across, dc in top of tch", "V-st across", 2),
    "shell stitch": ("*sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc", "*sk 2 dc, 5 dc in next sc, sk 1 dc, sc in next dc", 3),
    "ripple": ("sc in next 4 sts, sc3tog, sc in next 4 sts, 3 sc", "sc in next 4 sts, sc3tog, sc in next 3 sts, 3 sc", 2),
    "mesh": ("dc in 3rd ch of tch", "dc in 4th ch of tch", 2),
    "moss stitch": ("to last 2 sc, ch 1, sk 1 sc, sc", "to last sc, ch 1, sc", 3),
}
"""What stands in the rows, what an altered twin has instead, and the row its trouble is named in."""


@pytest.mark.parametrize("name", sorted({row["stitch pattern"] for row in ROWS} | set(WRITTEN)))
def test_the_rows_of_a_stitch_pattern_are_proven_and_agree_with_its_figures(name: str) -> None:
    row = next(row for row in ROWS if row["stitch pattern"] == name)
    proof = prove(WRITTEN[name], Terms(row["terms"]))
    assert proof.proven
    assert proof.leads_back_to is not None
    chain = (proof.multiple, proof.plus, proof.extra_chains, proof.first_stitch, proof.skip_cover)
    assert chain == tuple(int(row[column]) for column in PATTERN[1:6])
    once, repeated = int(row["set-up rows"]), int(row["rows in repeat"])
    assert (proof.leads_back_to, len(proof.rows), row["closing rows"]) == (once + 1, once + repeated, "0")


@pytest.mark.parametrize("name", WRITTEN)
def test_the_altered_twin_of_written_rows_is_caught_in_the_row_that_fails(name: str) -> None:
    was, instead, caught_in = SPOILT[name]
    assert was in WRITTEN[name]
    assert [problem.row for problem in prove(WRITTEN[name].replace(was, instead, 1), suggest=False).problems][:1] == [caught_in]


BAD = {number for number, _ in FAULTS}
FAULTY_HEADING, FAULTY_ROWS = sheet(sample.FAULTY)
GOOD_ROWS = [row for number, row in enumerate(FAULTY_ROWS, start=2) if number not in BAD]


def test_the_list_of_faults_speaks_of_the_faulty_sheet() -> None:
    assert len(set(FAULTS)) == len(FAULTS)
    assert all(1 <= number <= len(FAULTY_ROWS) + 1 and column in FAULTY_HEADING for number, column in FAULTS)
    assert len(BAD) > 15


def test_the_rows_without_a_fault_are_good() -> None:
    assert len(GOOD_ROWS) >= 5
    hold_together(GOOD_ROWS)


@pytest.mark.parametrize("number", sorted(BAD - {1}))
def test_a_row_with_a_fault_spoils_the_good_ones(number: int) -> None:
    with pytest.raises((AssertionError, ValueError)):
        hold_together([*GOOD_ROWS, FAULTY_ROWS[number - 2]])


def test_the_sample_is_found_beside_or_inside_the_package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    package = tmp_path / "logbook"
    monkeypatch.setattr(sample, "_PACKAGE", package)
    sample.folder.cache_clear()
    with pytest.raises(LogbookError, match=r"no swatches\.csv"):
        sample.folder()
    for place in (tmp_path / "sample_data", package / "sample_data"):
        place.mkdir(parents=True)
        (place / sample.SWATCHES).touch()
        sample.folder.cache_clear()
        assert sample.folder() == place
    sample.folder.cache_clear()
