import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.words.lengths import Ease, Units
from logbook.pages.pieces.size_texts import KEYS, read_sizes, rows_of, sizes_text, text_of

tenths = st.integers(1, 20_000).map(lambda tenth: tenth / 10)
optional = st.none() | tenths
wishes = st.builds(
    SizePlan,
    name=st.text("SMLX123 –", min_size=1).map(str.strip).filter(bool),
    body_mm=optional,
    ease=st.none() | st.builds(Ease, mm=st.integers(-500, 500).map(float)),
    length_mm=optional,
    armhole_mm=optional,
    neck_mm=optional,
    slit_mm=optional,
    upper_arm_mm=optional,
    hip_mm=optional,
    head_mm=optional,
)


@given(st.lists(wishes, max_size=5, unique_by=lambda wish: " ".join(wish.name.split())), st.sampled_from(Units))
def test_sizes_read_back_as_they_were(sizes: list[SizePlan], units: Units) -> None:
    read = read_sizes(sizes_text(sizes, units), units)
    assert not read.errors
    for was, now in zip(sizes, read.plans, strict=True):
        assert now.name == " ".join(was.name.split())
        assert now.ease == was.ease
        for field in ("body_mm", "length_mm", "armhole_mm", "neck_mm", "slit_mm", "upper_arm_mm", "hip_mm", "head_mm"):
            before, after = getattr(was, field), getattr(now, field)
            assert (before is None) == (after is None)
            assert before is None or abs(before - after) < 1e-6


def test_each_text_at_fault_has_its_sentence() -> None:
    read = read_sizes("M;wide\n;90\nM;94;a bit", Units.CM)
    assert {place: sentence.split("”")[0] for place, sentence in read.errors.items()} == {
        (0, "body"): "“wide",
        (1, "size"): "Name the size, for example M.",
        (2, "size"): "The size “M",
        (2, "ease"): "“a bit",
    }


def test_a_cell_keeps_to_its_place() -> None:
    row = dict.fromkeys(KEYS, "") | {"size": "M; L\nXL", "neck": "24"}
    (again,) = rows_of(text_of([row]))
    assert again == row | {"size": "M L XL"}


@pytest.mark.parametrize("names", [("",), ("S", ""), ("", "S"), ("", "")])
def test_a_size_of_which_nothing_stands_typed_yet_is_still_there(names: tuple[str, ...]) -> None:
    rows = [dict.fromkeys(KEYS, "") | {"size": name} for name in names]
    assert rows_of(text_of(rows)) == rows


def test_no_sizes_are_no_text() -> None:
    assert sizes_text((), Units.CM) == ""
    assert read_sizes("", Units.CM).plans == ()
