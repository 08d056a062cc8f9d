from logbook.craft.words.counting import counted, listed, ordinal, plural


def test_which_one() -> None:
    assert [ordinal(n) for n in (1, 2, 3, 4, 11, 12, 13, 21, 102, 111, 1013)] == [
        "1st", "2nd", "3rd", "4th", "11th", "12th", "13th", "21st", "102nd", "111th", "1013th",
    ]  # fmt: skip


def test_how_many() -> None:
    assert (counted(1, "row"), counted(0, "row"), counted(62, "row")) == ("1 row", "0 rows", "62 rows")
    assert (counted(12.5, "repeat"), counted(2.57, "repeat", 1)) == ("12.5 repeats", "2.6 repeats")
    assert (plural("edge stitch"), plural("swatch"), plural("chain")) == ("edge stitches", "swatches", "chains")


def test_several_names() -> None:
    assert [listed(names) for names in (["A"], ["A", "B"], ["A", "B", "C"])] == ["A", "A and B", "A, B and C"]
    assert listed(["A", "B"], "or") == "A or B"
