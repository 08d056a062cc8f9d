"""Garments under a real hand: the garment, its pieces of several shapes, and each view of what follows."""

import pytest

from tests.support.by_hand import (
    GARMENT,
    PIECE,
    choose_in_every_drop_down,
    click_line,
    drop_what_is_typed,
    open_by_click,
    open_every_drop_down_and_every_menu,
    press_every_button,
    turn_the_wheel_over_everything,
    use_every_list,
)
from tests.support.hand import WHEEL_UP
from tests.support.shown import Shown, Widget
from tests.support.user import User

VIEWS = ("Numbers", "Sizes", "Pattern", "Drawing")


def choose_flat(user: User, text: str) -> Shown:
    """Clicks that one of a row of choices."""
    user.click(next(w for w in user.program.look().of_kind("TRadiobutton") if w.text == text))
    return user.program.still()


def form(shown: Shown) -> Widget:
    return next(w for w in shown.of_kind("Canvas") if "partcard" in w.path)


def garments(user: User) -> None:
    user.page(2)
    click_line(user, GARMENT)
    user.program.at_rest()


@pytest.mark.long
def test_everything_of_a_garment(user: User) -> None:
    garments(user)
    turn_the_wheel_over_everything(user)
    drop_downs, menus = open_every_drop_down_and_every_menu(user)
    assert drop_downs >= 4, "those of the joins too"
    assert menus >= 4 * 8
    drop_what_is_typed(user)
    for view in VIEWS:
        choose_flat(user, view)
        assert use_every_list(user) > 0
    assert {"Add a piece", "Remove piece", "Joins"} <= press_every_button(user)


@pytest.mark.long
def test_everything_of_a_piece_of_each_shape(user: User) -> None:
    garments(user)
    click_line(user, PIECE)
    turn_the_wheel_over_everything(user)
    drop_downs, _ = open_every_drop_down_and_every_menu(user, [user.field("Shape").path], every_field=False)
    assert drop_downs >= 2
    drop_what_is_typed(user)
    shapes = open_by_click(user, user.field("Shape").path).more["rows"]
    user.press("Escape")
    assert len(shapes) >= 7
    boxes = 0
    for number, shape in enumerate(shapes):
        row = open_by_click(user, user.field("Shape").path).more["rows"][number]
        user.hand.click(*row["at"])
        name = shape["row"]
        user.program.until(lambda now: not now.lists and any(w.text == name for w in now.of_kind("TCombobox")), name)  # noqa: B023
        shown = user.program.still()
        boxes += choose_in_every_drop_down(user, ".", [w.path for w in shown.of_kind("TCombobox") if w.text == name])
        user.hand.wheel(*(form(shown).box[0] + 3, form(shown).box[1] + 3), WHEEL_UP, 12)
    assert boxes > len(shapes), "the necks, and the ways to work"
    drop_what_is_typed(user)
    assert {"Add a piece", "Remove piece"} <= press_every_button(user)
