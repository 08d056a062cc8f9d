import tkinter as tk

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.settings import WindowPlace
from logbook.window.place import GRAB, PlaceKeeper, reachable
from tests.support.screen import wait_until

NUMBERS = st.integers(-100_000, 100_000)


@given(st.builds(WindowPlace, NUMBERS, NUMBERS, NUMBERS, NUMBERS, st.booleans()), st.integers(-3000, 3000))
def test_the_title_bar_can_always_be_grabbed(place: WindowPlace, left: int) -> None:
    found = reachable(place, left, 0, 1366, 768)
    assert 0 < found.width <= 1366
    assert 0 < found.height <= 768
    assert 0 <= found.y < 768
    assert min(found.x + found.width, left + 1366) - max(found.x, left) >= GRAB
    assert found.zoomed == place.zoomed


def test_a_good_place_is_left_alone() -> None:
    place = WindowPlace(900, 600, -200, 40, False)
    assert reachable(place, 0, 0, 1366, 768) == place


@pytest.mark.parametrize("place", [WindowPlace(700, 500, 30, 40, False), WindowPlace(700, 500, 9000, -900, False)])
def test_the_window_opens_there_and_its_place_is_followed(root: tk.Tk, place: WindowPlace) -> None:
    keeper = PlaceKeeper(root, place)
    wait_until(root, lambda: root.winfo_width() == 700)
    assert 0 <= root.winfo_x() <= root.winfo_screenwidth() - GRAB
    assert 0 <= root.winfo_y() < root.winfo_screenheight()
    root.geometry("800x450")
    wait_until(root, lambda: keeper.place.width == 800)
    assert keeper.place.height == 450
    assert not keeper.place.zoomed
