"""How many to chain: the worked examples to the digit, every option, every refusal."""

import math
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.settings import Settings, save_settings
from tests.support.command_line import done, done_json, refused
from tests.support.sheets import write_sheet
from tests.support.written_gauges import WRITTEN_GAUGES

SHELLS = (
    "chain", "--gauge", "4 repeats = 15.1 cm", "--gauge", "4 repeats = 15.4 cm", "--gauge", "3 repeats = 11.5 cm",
    "--multiple", "6", "--plus", "1", "--extra-chains", "1",
)  # fmt: skip
PLAIN = ("chain", "--gauge", "20 sts = 10 cm", "--extra-chains", "0")
ANSWER = {
    "repeat_mm", "stitch_mm", "gauge_give_or_take", "piece_give_or_take", "condition", "washing", "target_mm", "options", "notes",
}  # fmt: skip
OPTION = {
    "repeats", "stitches", "chain", "width_mm", "difference_mm", "gauge_give_or_take_mm", "give_or_take_mm",
    "before_washing_mm", "recommended",
}  # fmt: skip


def best(answer: dict[str, Any], options: str = "options") -> dict[str, Any]:
    (found,) = (option for option in answer[options] if option["recommended"])
    return dict(found)


def chains(*arguments: str | Path) -> list[int]:
    return [option["chain"] for option in done_json(*arguments)["options"]]


class TestWorkedExamples:
    def test_the_gauge_of_three_spans(self) -> None:
        answer = done_json(*SHELLS, "--width", "46")
        assert round(answer["repeat_mm"], 2) == 38.18
        assert answer["stitch_mm"] == answer["repeat_mm"] / 6
        assert round(answer["gauge_give_or_take"], 4) == 0.0249
        assert round(answer["piece_give_or_take"], 3) == 0.056

    def test_the_gauge_of_one_count(self) -> None:
        answer = done_json("chain", "--gauge", "2.75 repeats in 10 cm", "--multiple", "6", "--stitch", "sc", "--width", "46")
        assert round(answer["repeat_mm"], 2) == 36.36
        assert round(answer["gauge_give_or_take"], 3) == 0.072

    def test_the_starting_chain(self) -> None:
        answer = done_json(*SHELLS, "--width", "46")
        shown = [(o["chain"], o["stitches"], o["repeats"], round(o["width_mm"] / 10, 1)) for o in answer["options"]]
        assert shown == [(62, 61, 10, 38.8), (68, 67, 11, 42.6), (74, 73, 12, 46.5), (80, 79, 13, 50.3)]
        assert best(answer)["chain"] == 74
        assert round(best(answer)["difference_mm"] / 10, 1) == 0.5
        assert round(best(answer)["gauge_give_or_take_mm"] / 10, 1) == 1.2
        assert round(best(answer)["give_or_take_mm"] / 10, 1) == 2.8

    def test_said_in_words(self) -> None:
        assert done(*SHELLS, "--width", "46").splitlines()[:3] == [
            "Chain 74: 46.5 cm (12 repeats, 73 base stitches; 0.5 cm wider than asked).",
            "The swatch says give or take 1.2 cm, a whole piece usually 2.8 cm.",
            "15.7 stitches in 10 cm, a repeat of 6 is 3.82 cm wide, washed, laid flat (give or take 2.5 %).",
        ]

    def test_the_same_from_the_logbook(self, wardrobe: Path) -> None:
        logged = done_json("chain", "--book", wardrobe, "--swatch", "LC-02", "--width", "46")
        by_hand = done_json(*SHELLS, "--width", "46")
        assert round(best(logged)["before_washing_mm"] / 10, 1) == 47.2
        for option in (*logged["options"], *by_hand["options"]):
            del option["before_washing_mm"], option["give_or_take_mm"]
        assert logged["options"] == by_hand["options"]
        # A made piece of the same hand has taught its drift: s² = (4·0.02² + ln²(51.1/50.27))/5, t(5) = 2.5706.
        assert logged["piece_give_or_take"] == pytest.approx(0.0497, abs=1e-4)
        assert by_hand["piece_give_or_take"] == pytest.approx(0.0555, abs=1e-4)
        assert (logged["washing"], logged["condition"]) == ("measured", "washed")


class TestJson:
    def test_has_the_promised_keys_and_no_others(self) -> None:
        answer = done_json(*SHELLS, "--width", "46")
        assert answer.keys() == ANSWER
        assert all(option.keys() == OPTION for option in answer["options"])
        assert all(isinstance(note, str) for note in answer["notes"])
        assert answer["target_mm"] == 460
        assert {type(best(answer)[key]) for key in ("repeats", "stitches", "chain")} == {int}

    def test_of_a_piece_worked_sideways(self) -> None:
        said = (*PLAIN, "--extra-chains", "1", "--rows-gauge", "20 rows = 10 cm", "--sideways", "--length", "50")
        answer = done_json(*said, "--width", "40.2")
        assert answer.keys() == ANSWER | {"rows_options"}
        chain, rows = (
            line.split() for line in done(*said, "--width", "40.2").splitlines() if line.split()[:1] in (["chain"], ["rows"])
        )
        assert ("length" in chain, "width" in chain, "width" in rows) == (True, False, True)
        assert all(row.keys() == {"rows", "width_mm", "difference_mm", "recommended"} for row in answer["rows_options"])
        assert answer["target_mm"] == 500
        assert best(answer)["chain"] == 101
        assert best(answer, "rows_options")["rows"] == 80
        assert math.isclose(best(answer, "rows_options")["difference_mm"], -2)

    def test_a_count_too_coarse_states_no_give_or_take(self) -> None:
        answer = done_json("chain", "--gauge", "1 repeat in 4 cm", "--multiple", "6", "--stitch", "sc", "--width", "46")
        assert answer["gauge_give_or_take"] is None
        assert {(o["gauge_give_or_take_mm"], o["give_or_take_mm"]) for o in answer["options"]} == {(None, None)}
        assert any("whole repeats reach" in note for note in answer["notes"])


class TestTargets:
    @pytest.mark.parametrize(
        ("options", "mm"),
        [
            ("--body 92", 460),
            ("--body 92 --ease 8", 500),
            ("--body 92 --ease 5cm --panels 4 --seam 0.5cm", 252.5),
            ("--body 92 --panels 1", 920),
            ("--body 92 --ease 5 --round", 970),
            ("--width 18in", 457.2),
            ("--width 460mm", 460),
        ],
    )
    def test_from_the_body(self, options: str, mm: float) -> None:
        assert math.isclose(done_json(*PLAIN, *options.split())["target_mm"], mm)

    @pytest.mark.parametrize(
        ("ease", "mm"),
        [
            ("-5cm", 435),
            ("−5cm", 435),
            ("-5 cm", 435),
            ("-50mm", 435),
            ("-6 %", 432.4),
            ("−6 %", 432.4),
            ("-6%", 432.4),
            ("-2in", 434.6),
            ('-2"', 434.6),
            ("-½ in", 453.65),
            ("- 5 cm", 435),
            ("-.5", 457.5),
            ("+5", 485),
        ],
    )
    @pytest.mark.parametrize("joined", [False, True])
    def test_a_value_that_begins_with_a_minus_reads(self, ease: str, mm: float, joined: bool) -> None:
        option = (f"--ease={ease}",) if joined else ("--ease", ease)
        assert math.isclose(done_json(*PLAIN, "--body", "92", *option)["target_mm"], mm)

    @settings(max_examples=40)
    @given(st.integers(-400, 400), st.sampled_from(["-", "−"]))
    def test_ease_is_added_whatever_its_sign(self, mm: int, minus: str) -> None:
        typed = f"{mm}mm".replace("-", minus)
        assert math.isclose(done_json(*PLAIN, "--body", "92", "--ease", typed)["target_mm"], (920 + mm) / 2)

    def test_an_edging_at_each_side_counts(self) -> None:
        answer = done_json(*PLAIN, "--width", "46", "--edging", "1.5cm")
        assert best(answer)["stitches"] == 86
        assert math.isclose(best(answer)["width_mm"], 460)


class TestRules:
    def test_extra_chains_from_the_first_stitch(self) -> None:
        asked = ("chain", "--gauge", "20 sts = 10 cm", "--width", "46")
        said = ("--first-stitch", "6", "--cover", "2")
        assert chains(*asked, *said) == chains(*asked, "--extra-chains", "3")
        assert chains(*asked, *said, "--extra-chains", "3") == chains(*asked, *said)
        assert best(done_json(*asked, "--first-stitch", "2"))["chain"] == 93
        for into in ("3", "6"):
            assert f"--first-stitch {into} needs --cover" in refused(2, *asked, "--first-stitch", into)

    def test_in_the_round(self) -> None:
        flat_plus = done_json(*SHELLS, "--width", "46", "--round")
        assert [o["chain"] for o in flat_plus["options"]] == [66, 72, 78, 84]
        assert any("is not used" in note for note in flat_plus["notes"])
        assert chains(*SHELLS, "--width", "46", "--round", "--round-plus", "2") == [62, 68, 74, 80]
        assert chains(*SHELLS, "--width", "46", "--round", "--joined-after-row-1") == [67, 73, 79, 85]

    def test_foundation_stitches_need_no_extra_chains(self) -> None:
        assert chains(*SHELLS, "--width", "46", "--foundation-stitches") == [61, 67, 73, 79]
        assert done(*SHELLS, "--width", "46", "--foundation-stitches").startswith("73 foundation stitches: 46.5 cm")

    @pytest.mark.parametrize(
        ("options", "chain"),
        [("", 80), ("--at-least", 81), ("--at-most", 80), ("--odd", 81), ("--even", 80), ("--even --at-least", 82)],
    )
    def test_what_may_be_asked_of_the_count(self, options: str, chain: int) -> None:
        assert best(done_json(*PLAIN, "--width", "40.2", *options.split()))["chain"] == chain

    def test_an_even_count_of_rows_worked_sideways(self) -> None:
        said = (*PLAIN, "--rows-gauge", "20 rows = 10 cm", "--sideways", "--length", "50.6", "--width", "40.4")
        assert best(done_json(*said), "rows_options")["rows"] == 81
        even = done_json(*said, "--even", "--at-least")
        assert best(even, "rows_options")["rows"] == 82
        assert best(even)["chain"] == 101

    def test_an_odd_chain_is_said_with_its_neighbours(self) -> None:
        answer = done_json(*PLAIN, "--even", "--chain", "91")
        assert [option["chain"] for option in answer["options"]] == [90, 92]
        assert answer["notes"][0] == "A chain of 91 does not give an even count of stitches: 90 or 92 would."


HDC = ("chain", "--gauge", "16 sts = 10 cm", "--width", "46")


class TestStitchesByName:
    def test_without_extra_chains_there_is_no_chain(self, wardrobe: Path, tmp_path: Path) -> None:
        for json in ([], ["--json"]):
            said = refused(2, *HDC, *json)
            assert "which stitch do the rows begin with" in said.lower()
            assert "--extra-chains" in said
        for command in ("piece", "sizes"):
            target = ("--width", "46") if command == "piece" else ("--chart", "women", "--ease", "5")
            workbook = tmp_path / f"{command}.xlsx"
            said = refused(2, command, "--gauge", "16 sts = 10 cm", *target, "--workbook", workbook)
            assert "--extra-chains" in said
            assert not workbook.exists()

    @pytest.mark.parametrize("where", [["--round"], ["--foundation-stitches"]])
    def test_where_no_chains_lift_a_stitch_none_are_asked(self, where: list[str]) -> None:
        assert chains(*HDC, *where) == [72, 73, 74, 75]

    def test_joined_after_row_1_they_are(self) -> None:
        assert "--extra-chains" in refused(2, *HDC, "--round", "--joined-after-row-1")

    @pytest.mark.parametrize(
        ("options", "chain"),
        [
            ("--stitch sc", 75),
            ("--stitch hdc", 76),
            ("--stitch dc", 76),
            ("--stitch tr", 77),
            ("--stitch dtr", 78),
            ("--stitch htr", 76),
            ("--stitch dc --terms uk", 75),
            ("--stitch htr --terms uk", 76),
            ("--stitch tr --terms uk", 76),
            ("--stitch dtr --terms uk", 77),
            ("--stitch trtr --terms uk", 78),
            ("--stitch hdc --first-stitch 3 --cover 1", 75),
            ("--stitch hdc --extra-chains 1", 75),
            ("--stitch dc --first-stitch 3", 76),
        ],
    )
    def test_a_stitch_brings_its_chains(self, options: str, chain: int) -> None:
        assert best(done_json(*HDC, *options.split()))["chain"] == chain

    def test_long_names(self) -> None:
        for name in ("half double crochet", "Half Double", "half treble crochet"):
            assert best(done_json(*HDC, "--stitch", name))["chain"] == 76

    @pytest.mark.parametrize(
        ("options", "named"),
        [
            ("--stitch hdc --terms uk", "“hdc” is a US name"),
            ("--stitch htr --terms us", "“htr” is a UK name"),
            ("--stitch shells", "“shells”"),
            ("--stitch hdc --extra-chains 5", "--stitch hdc"),
            ("--terms uk", "--terms"),
            ("--stitch hdc --terms fr", "fr"),
        ],
    )
    def test_what_is_no_stitch_is_refused(self, options: str, named: str) -> None:
        assert named in refused(2, *HDC, *options.split())

    def test_a_logged_swatch_that_does_not_know(self, tmp_path: Path) -> None:
        row = {"yarn": "Tarn", "hook mm": "4", "stitch pattern": "ribs", "multiple": "1", "stitches washed": "16 sts = 10 cm"}
        book = tmp_path / "vests.logbook"
        done("import", write_sheet(tmp_path / "sheet.csv", row | {"tag": "A-1"}), "--new", "--book", book)
        asked = ("chain", "--book", book, "--swatch", "A-1", "--width", "46")
        assert "--extra-chains" in refused(2, *asked)
        assert best(done_json(*asked, "--stitch", "hdc"))["chain"] == 76
        assert best(done_json(*asked, "--extra-chains", "3"))["chain"] == 77
        piece = done_json("piece", "--book", book, "--swatch", "A-1", "--width", "46", "--stitch", "hdc")
        assert piece["chain"] == 76

    def test_a_logged_swatch_that_knows_is_not_told_otherwise(self, wardrobe: Path) -> None:
        asked = ("chain", "--book", wardrobe, "--swatch", "LC-02", "--width", "46")
        assert "extra chains, 1" in refused(1, *asked, "--extra-chains", "2")


LACE = ("chain", "--gauge", "16 sts = 10 cm", "--multiple", "10", "--plus", "2", "--extra-chains", "2")


class TestTheOtherWayRound:
    def test_what_a_chain_makes(self) -> None:
        answer = done_json(*LACE, "--chain", "84")
        assert [option["chain"] for option in answer["options"]] == [74, 84, 94]
        assert (best(answer)["chain"], best(answer)["width_mm"], best(answer)["difference_mm"]) == (84, 512.5, 0)
        assert answer["target_mm"] == 512.5
        assert done(*LACE, "--chain", "84").startswith("84 chains make 51.2 cm (8 repeats, 82 base stitches).")

    def test_a_chain_that_the_multiple_does_not_allow(self) -> None:
        answer = done_json(*LACE, "--chain", "90")
        assert [option["chain"] for option in answer["options"]] == [84, 94]
        assert answer["notes"][0] == "90 is not a multiple of 10 plus 4: 84 or 94 would be."
        assert best(answer)["chain"] == 94
        assert done(*LACE, "--chain", "90").startswith("90 is not a multiple of 10 plus 4: 84 or 94 would be. 94 chains make")

    def test_the_least_chain_and_less(self) -> None:
        assert [option["chain"] for option in done_json(*LACE, "--chain", "14")["options"]] == [14, 24]
        assert done_json(*LACE, "--chain", "9")["notes"][0] == "9 chains are too few for one repeat: it takes at least 14."
        assert "too short" in refused(1, *LACE, "--chain", "2")

    def test_edging_and_the_round(self) -> None:
        assert best(done_json(*LACE, "--chain", "84", "--edging", "1"))["width_mm"] == 532.5
        assert best(done_json(*LACE, "--chain", "80", "--round"))["width_mm"] == 500

    def test_another_gauge(self) -> None:
        theirs = ("--their-gauge", "20 sts = 10 cm / 4 in", "--their-count", "90")
        answer = done_json(*HDC[:3], "--stitch", "hdc", *theirs)
        assert answer["target_mm"] == 450
        assert best(answer)["chain"] == 74
        assert answer["notes"][0] == "At their gauge, 20 sts = 10 cm / 4 in, 90 stitches make 45.0 cm."
        chains = done_json(*HDC[:3], "--stitch", "hdc", *theirs[:3], "chain 92")
        assert chains["notes"][0] == "At their gauge, 20 sts = 10 cm / 4 in, 92 chains (90 stitches) make 45.0 cm."
        assert chains["options"] == answer["options"]
        by_stitches, by_chains = (done_json(*HDC[:3], "--stitch", "hdc", "--chain", said) for said in ("113 sts", "ch 115"))
        assert by_stitches == by_chains
        repeats = done_json(*HDC[:3], "--stitch", "hdc", "--their-gauge", "4 repeats = 15 cm", "--their-count", "12")
        assert repeats["target_mm"] == 450

    @pytest.mark.parametrize(
        ("options", "named"),
        [
            ("--chain 84 --width 46", "--width"),
            ("--chain 84 --their-count 90", "--their-count"),
            ("--chain 0", "“0”"),
            ("--chain 84 --at-least", "--at-least"),
            ("--chain 84 --sideways", "--sideways"),
            ("--their-count 90", "--their-gauge"),
            ("--their-count 90 --width 46", "--their-gauge"),
        ],
    )
    def test_what_does_not_go_together(self, options: str, named: str) -> None:
        assert named in refused(2, *LACE, *options.split())

    def test_from_the_logbook(self, wardrobe: Path) -> None:
        answer = done_json("chain", "--book", wardrobe, "--swatch", "LC-02", "--chain", "74")
        assert [option["chain"] for option in answer["options"]] == [68, 74, 80]


class TestOneGaugeForBoth:
    def test_stitches_and_rows_in_one(self) -> None:
        said = ("--gauge", "16 x 20", "--stitch", "sc", "--sideways", "--length", "50", "--width", "40")
        both = done_json("chain", *said)
        assert best(both, "rows_options")["rows"] == 80
        assert best(both)["chain"] == 81


class TestWashing:
    @pytest.fixture
    def book(self, tmp_path: Path) -> Path:
        """One unwashed swatch of a yarn whose others became 2, 3 and 4 % narrower, and one of a yarn with no others."""
        common = {"yarn": "Tarn", "hook mm": "4", "stitch pattern": "single crochet", "multiple": "1", "extra chains": "1"}
        lent = [
            {**common, "tag": f"T-{n}", "stitches as worked": "50 sts = 20 cm", "stitches washed": f"50 sts = {20 - 0.2 * n} cm"}
            for n in (2, 3, 4)
        ]
        unwashed = {**common, "tag": "T-9", "stitches as worked": "40 sts = 20 cm"}
        alone = {**unwashed, "tag": "X-1", "yarn": "Scree"}
        book = tmp_path / "tarn.logbook"
        done("import", "--new", "--book", book, write_sheet(tmp_path / "tarn.csv", *lent, unwashed, alone))
        return book

    def test_borrowed(self, book: Path) -> None:
        answer = done_json("chain", "--book", book, "--swatch", "T-9", "--width", "46")
        assert (answer["washing"], answer["condition"]) == ("borrowed", "washed")
        change = math.log(0.98) + math.log(0.97) + math.log(0.96)
        assert math.isclose(answer["stitch_mm"], 5 * math.exp(change / 3))
        assert answer["gauge_give_or_take"] > done_json(*PLAIN, "--width", "46")["gauge_give_or_take"]
        assert math.isclose(best(answer)["before_washing_mm"], best(answer)["stitches"] * 5)
        assert answer["notes"][0] == "Washing taken from 3 swatches of this yarn (T-2, T-3, T-4): 3 % narrower."

    def test_unknown(self, book: Path) -> None:
        answer = done_json("chain", "--book", book, "--swatch", "X-1", "--width", "46")
        assert (answer["washing"], answer["condition"]) == ("unknown", "worked")
        assert answer["gauge_give_or_take"] is None
        assert answer["stitch_mm"] == 5
        assert "Accuracy unknown until washed and measured." in done("chain", "--book", book, "--swatch", "X-1", "--width", "46")


class TestUnits:
    def test_text_is_in_cm_whatever_the_settings(self) -> None:
        before = done(*SHELLS, "--width", "46")
        save_settings(Settings(units="in"))
        assert done(*SHELLS, "--width", "46") == before

    def test_inches_if_asked(self) -> None:
        text = done(*SHELLS, "--width", "18 in", "--inches")
        assert text.startswith("Chain 74: 18 1/4 in (12 repeats, 73 base stitches; 1/4 in wider than asked).")
        assert " cm" not in text


WRONG = [
    (["--width", "wide"], "“wide”"),
    (["--width", "-46"], "“-46”"),
    (["--width", "0"], "“0”"),
    (["--width"], "--width"),
    ([], "--width"),
    (["--width", "46", "--body", "92"], "--width"),
    (["--width", "46", "--ease", "5"], "--ease"),
    (["--width", "46", "--panels", "2"], "--panels"),
    (["--width", "46", "--seam", "0"], "--seam"),
    (["--body", "92", "--ease", "a bit"], "“a bit”"),
    (["--body", "92", "--panels", "0"], "“0”"),
    (["--body", "92", "--panels", "1.5"], "“1.5”"),
    (["--body", "92", "--seam", "-1"], "“-1”"),
    (["--body", "92", "--round", "--panels", "2"], "--panels"),
    (["--width", "46", "--round", "--edging", "1"], "--edging"),
    (["--width", "46", "--round", "--sideways", "--length", "50"], "--sideways"),
    (["--width", "46", "--round-plus", "1"], "--round-plus"),
    (["--width", "46", "--joined-after-row-1"], "--joined-after-row-1"),
    (["--width", "46", "--sideways"], "--length"),
    (["--width", "46", "--sideways", "--length", "50"], "--rows-gauge"),
    (["--width", "46", "--length", "50"], "--length"),
    (["--width", "46", "--rows-gauge", "20 rows = 10 cm"], "--rows-gauge"),
    (["--width", "46", "--at-least", "--at-most"], "--at-most"),
    (["--width", "46", "--odd", "--even"], "--even"),
    (["--width", "46", "--extra-chains", "4", "--first-stitch", "8", "--cover", "4"], "(4)"),
    (["--width", "46", "--cover", "1"], "skipped chains"),
    (["--width", "46", "--multiple", "0"], "“0”"),
    (["--width", "46", "--plus", "-1"], "“-1”"),
    (["--width", "46", "--swatch", "LC-02"], "--gauge"),
    (["--width", "46", "--gauge", "20 rows = 10 cm"], "“20 rows = 10 cm”"),
    (["--width", "46", "--gauge", "plenty"], "“plenty”"),
    (["--width", "46", "--gauge", "4 repeats = 15 cm"], "--multiple"),
    (["--wid", "46"], "--wid"),
    (["--width", "46", "--at", "5"], "--at"),
    (["--width", "46", "46"], "46"),
]


class TestRefusals:
    @pytest.mark.parametrize(("options", "named"), WRONG, ids=[" ".join(options) or "no target" for options, _ in WRONG])
    @pytest.mark.parametrize("json", [[], ["--json"]], ids=["text", "json"])
    def test_arguments_that_are_wrong_alone(self, options: list[str], named: str, json: list[str]) -> None:
        assert named in refused(2, *PLAIN, *options, *json)

    def test_a_gauge_is_needed(self) -> None:
        assert "--gauge" in refused(2, "chain", "--width", "46")

    @pytest.mark.parametrize(
        ("options", "named"),
        [
            (["--multiple", "6", "--odd", "--width", "46"], "multiple of 6"),
            (["--body", "4", "--ease", "-5"], "ease"),
        ],
    )
    def test_what_the_arithmetic_refuses(self, options: list[str], named: str) -> None:
        assert named in refused(1, *PLAIN, *options)

    def test_an_unknown_tag(self, wardrobe: Path) -> None:
        assert "“LC-99”" in refused(1, "chain", "--book", wardrobe, "--swatch", "LC-99", "--width", "46")
        assert "“-A1”" in refused(1, "chain", "--book", wardrobe, "--swatch", "-A1", "--width", "46")


def test_a_gauge_is_read_as_people_write_it() -> None:
    for plain, ways in WRITTEN_GAUGES.items():
        if "sts" in plain or "repeats" in plain:
            options = ("--multiple", "6", "--extra-chains", "1", "--width", "46")
            wanted = done_json("chain", "--gauge", plain.partition(";")[0], *options)
            for written in ways:
                assert done_json("chain", "--gauge", written, *options) == wanted, written
