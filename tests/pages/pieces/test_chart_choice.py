import pytest

from logbook.errors import LogbookError
from logbook.pages.pieces.chart_choice import ENDS, ChartChoice
from logbook.pages.session import Session


def test_the_womens_chart_to_begin_with(session: Session) -> None:
    choice = ChartChoice(session)
    assert choice.names == ("women", "men", "children", "heads")
    bodies = {end: choice.sizes(choice.texts["women"], end, "bust", "").plans[0].body_mm for end in ENDS}
    assert bodies == {"the middle": 735, "the low end": 710, "the high end": 760}
    chosen = choice.sizes(choice.texts["women"], "the middle", "waist", "3")
    assert chosen.says == "9 sizes."
    assert (chosen.plans[0].body_mm, chosen.plans[0].armhole_mm) == (597.5, 187.5)


def test_childrens_sizes_show_the_caution(session: Session) -> None:
    chosen = ChartChoice(session).sizes("size; bust\nage 4; 58", "the middle", "bust", "")
    assert chosen.says.startswith("1 size. Babies' and children's wear: no cords")


@pytest.mark.parametrize(
    ("text", "deeper"), [("", ""), ("size; bust\nA; wide", ""), ("size; hip\nA; 90", ""), ("size; bust\nA; 90", "deep"),
                         ("size; bust\nA; 90", "3")],
)  # fmt: skip
def test_what_cannot_be_read_is_said(session: Session, text: str, deeper: str) -> None:
    chosen = ChartChoice(session).sizes(text, "the middle", "bust", deeper)
    assert chosen.error
    assert chosen.plans == ()


def test_a_chart_is_kept_and_taken_out(session: Session) -> None:
    choice = ChartChoice(session)
    assert choice.save("chorus", "size; bust\nA; 90") == "The body chart “chorus” is saved."
    assert choice.names == ("women", "men", "children", "heads", "chorus")
    choice.save("women", "size; bust\nonly; 90")
    assert choice.delete("women") == "The body chart “women” is as it first was. Undo brings yours back."
    assert "5X" in choice.texts["women"]
    assert choice.delete("chorus").startswith("The body chart “chorus” is deleted.")
    with pytest.raises(LogbookError):
        choice.save("chorus", "no chart")
