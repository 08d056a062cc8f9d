"""The window under a real pointer and real keys, with a window manager: every drop-down, menu, button, row and dialog of it.

What the hand does is done outside the program, which runs as a user starts it; what is shown it tells by itself.
"""

from collections.abc import Iterator
from contextlib import suppress
from itertools import product

import pytest

from tests.support.hand import RIGHT, WHEEL_DOWN, WHEEL_LEFT, WHEEL_UP
from tests.support.shown import Shown, Widget
from tests.support.user import FIELDS, User

PAGES = (1, 2, 3)


def stops(user: User) -> Iterator[Widget]:
    """Each place of the page that Tab comes to, once, the folded parts opened on the way."""
    seen: set[str] = set()
    shown = user.program.look()
    while shown.focus not in seen:
        seen.add(shown.focus)
        shown = user.program.until(lambda now: now.at(now.focus), f"seeing where the keyboard is, {shown.focus},")
        here = shown.at(shown.focus)
        assert here is not None
        if here.text.startswith("▸"):
            user.press("space")
            user.program.at_rest()  # Tab passes by what is not drawn yet
        yield here
        if user.program.look().focus != here.path:
            user.click(here)
        shown = user.press("Tab")


@pytest.mark.long
@pytest.mark.parametrize("page", PAGES)
def test_everything_on_a_page(user: User, page: int) -> None:
    turn_the_wheel_over_everything(user, page)
    open_every_drop_down_and_every_menu_from_every_field(user)
    press_every_button_heading_row_fold_and_tick(user, page)


def open_every_drop_down_and_every_menu_from_every_field(user: User) -> None:
    """Of the fields of a kind the first opens every menu, the others one each."""
    drop_downs = menus = 0
    kinds: set[str] = set()
    for stop in stops(user):
        if stop.kind in FIELDS:
            menus += open_menus(user, stop, every=stop.kind not in kinds)
            kinds.add(stop.kind)
        if stop.kind == "TCombobox":
            drop_downs += 1
            choose_by_key(user, stop.path)
            choose_by_click(user, stop.path)
    assert drop_downs >= 2
    assert menus >= 2 * 8


def open_menus(user: User, field: Widget, *, every: bool) -> int:
    """Opens the first menu of the bar, or each, while the field has the keyboard, and goes back to it."""
    bar = user.program.look().bar
    assert bar is not None
    user.hand.click(*bar.more["entries"][0]["at"])
    user.program.until(lambda now: now.menus, "a menu")
    others = bar.more["entries"][1:] if every else []
    for _ in others:
        assert user.press("Right").menus
    user.all_closed()
    shown = user.program.until(lambda now: now.focus == field.path, f"the keyboard back in {field.path}")
    left = shown.at(field.path)
    assert left is not None
    assert left.text == field.text
    return 1 + len(others)


def choose_in_every_drop_down(user: User, window: str) -> None:
    for box in user.program.look().within(window):
        if box.kind == "TCombobox" and not box.text.endswith("…"):  # that one does something, and is as before
            choose_by_click(user, box.path)
            choose_by_key(user, box.path)


def choose_by_key(user: User, path: str) -> None:
    user.hand.key("Down")
    listed = user.program.until(lambda now: now.lists, f"the list of {path}").lists[0]
    user.hand.key("End", "Return")
    shown = user.program.until(lambda now: not now.lists and now.focus == path, f"the choice of {path}")
    box = shown.at(path)
    assert box is not None
    assert not listed.more["rows"] or box.text


def choose_by_click(user: User, path: str) -> None:
    box = user.program.look().at(path)
    assert box is not None
    x, y, width, height = box.box
    user.hand.click(x + width - height // 2, y + height // 2)
    shown = user.program.until(lambda now: now.lists, f"the list of {path}")
    listed = shown.lists[0]
    shown_box = shown.at(path)
    assert shown_box is not None
    top, bottom = listed.box[1], listed.box[1] + listed.box[3]
    assert abs(top - (shown_box.box[1] + shown_box.box[3])) < 8 or abs(bottom - shown_box.box[1]) < 8, "the list hangs in the air"
    if listed.more["rows"]:
        row = listed.more["rows"][0]
        user.hand.click(*row["at"])
    else:
        user.hand.key("Escape")
    shown = user.program.until(lambda now: not now.lists and now.focus == path, f"the choice of {path}")
    chosen = shown.at(path)
    assert chosen is not None
    assert not listed.more["rows"] or row["row"].startswith(chosen.text[:3])


def turn_the_wheel_over_everything(user: User, page: int) -> None:
    """It changes nothing but what is in view."""
    shown = user.page(page)
    before = texts(shown)
    for widget in shown.of_kind("TCombobox", "TEntry", "Text", "TCheckbutton", "TButton", "TNotebook"):
        for button in (WHEEL_DOWN, WHEEL_UP, WHEEL_LEFT):
            user.hand.wheel(*widget.middle, button)
    user.hand.wheel(*shown.of_kind("TCombobox")[0].middle, WHEEL_DOWN, 2, "shift")
    assert_kept(before, user.program.look())
    user.choose("View")
    inches = next(entry for entry in user.program.look().menus[0].more["entries"] if entry["label"] == "inches")
    for button in (WHEEL_DOWN, WHEEL_UP, WHEEL_LEFT):
        user.hand.wheel(*inches["at"], button)
    assert user.program.look().menus
    user.all_closed()
    assert_kept(before, user.program.look())


def assert_kept(before: dict[str, str], now: Shown) -> None:
    """What is still in view says what it said."""
    after = texts(now)
    common = before.keys() & after.keys()
    assert common
    assert {path: after[path] for path in common} == {path: before[path] for path in common}


def texts(shown: Shown) -> dict[str, str]:
    return {w.path: w.text for w in shown.widgets if w.kind in FIELDS}


def press_every_button_heading_row_fold_and_tick(user: User, page: int) -> None:
    shown = user.page(page)
    for table in shown.of_kind("Treeview"):
        for heading in table.more["headings"]:
            user.click(tuple(heading["at"]))
        for row in table.more["rows"][:3]:
            user.click(tuple(row["at"]))
            user.click(tuple(row["at"]), RIGHT)
            user.all_closed()
            user.hand.click(*row["at"], times=2)
            user.all_closed()
    buttons = [w.path for w in user.program.look().of_kind("TButton", "TCheckbutton", "TRadiobutton", "TMenubutton")]
    for path in buttons:
        button = user.program.look().at(path)
        if button is not None and not button.off:
            user.click(button)
            user.all_closed()
            drop_what_is_typed(user)


def drop_what_is_typed(user: User) -> None:
    shown = user.program.look()
    revert = shown.button("Revert")
    if revert is not None and not revert.off:
        user.click(revert)


DIALOGS: tuple[tuple[int, tuple[str, ...]], ...] = (
    (1, ("Logbook", "New…")),
    (1, ("Logbook", "Open…")),
    (1, ("Logbook", "Import a sheet…")),
    (1, ("Logbook", "Export to a sheet…")),
    (1, ("Logbook", "Save a copy…")),
    (1, ("Logbook", "Backups…")),
    (1, ("Logbook", "Assumptions…")),
    (1, ("Edit", "Changes of this record…")),
    (2, ("Edit", "Changes of this record…")),
    (1, ("Help", "A first walk through")),
    (1, ("Help", "Written rows")),
    (1, ("Help", "Keys")),
    (1, ("Help", "About this program")),
    (1, ("ctrl+b",)),
    (1, ("ctrl+j",)),
    (2, ("ctrl+j",)),
    (2, ("ctrl+b",)),
    (2, ("ctrl+m",)),
)
"""A page, and the entries of the menu, or the keys, that lead to the dialog."""


def escape(user: User, shown: Shown) -> None:
    """What was chosen on the way may be asked for."""
    user.hand.key("Escape")
    at_end = user.program.until(lambda now: not now.dialogs or len(now.dialogs) > len(shown.dialogs), "its end, or a question")
    discard = at_end.button("Discard")
    if discard is not None and at_end.dialogs:
        user.click(discard)


def press_return(user: User, _: Shown) -> None:
    user.hand.key("Return")
    user.all_closed()


def close(user: User, _: Shown) -> None:
    """Once more, where the window manager did not see yet which window is in front; the one behind does not close."""
    user.hand.key("alt+F4")
    with suppress(AssertionError):
        user.program.until(lambda now: not now.dialogs, "its end", 3)
        return
    user.hand.key("alt+F4")


def click_outside(user: User, shown: Shown) -> None:
    """The keyboard stays with the dialog: Escape still closes it."""
    x, y, _, height = next(w for w in shown.widgets if w.path == ".").box
    dialog = shown.dialogs[-1]
    user.click((x + 4, y + height - 4))
    if dialog.more.get("modal", True):
        user.program.until(lambda now: now.focus.startswith(dialog.path), f"the keyboard back in {dialog.path}")
    user.hand.key("Escape")


@pytest.mark.long
def test_each_dialog_is_left_in_each_way(user: User) -> None:
    for leave, (page, labels) in product((escape, press_return, close, click_outside), DIALOGS):
        if leave is click_outside and labels[0] == "Help" and labels[1] != "About this program":
            continue  # these stay open beside the work
        user.page(page)
        if "+" in labels[0]:
            user.hand.key(labels[0])
        else:
            user.choose(*labels)
        shown = user.program.until(lambda now: now.dialogs and now.focus.startswith(now.dialogs[-1].path), " ".join(labels))
        if leave is escape:
            choose_in_every_drop_down(user, shown.dialogs[-1].path)
        leave(user, shown)
        user.program.until(lambda now: not now.dialogs and now.focus, f"the end of {labels[-1]}")
        user.nothing_unexpected()


def test_help_stays_open_beside_the_work(user: User) -> None:
    user.hand.key("F1")
    shown = user.program.until(lambda now: now.dialogs, "the walk through")
    x = shown.dialogs[0].box[0]
    find = user.program.until(lambda now: now.of_kind("TEntry"), "the page beneath").of_kind("TEntry")[0]
    left, top, _, height = find.box
    assert left + 10 < x
    user.hand.click(left + 10, top + height // 2)
    user.program.until(lambda now: now.focus == find.path, "the keyboard in the page beneath")
    assert user.program.look().dialogs
    user.hand.type("shell")
    user.program.until(lambda now: any(w.text == "shell" for w in now.of_kind("TEntry")), "the typed text")
    user.hand.key("F1")
    user.program.until(lambda now: now.focus.startswith(".!dialog"), "the walk through again")
    assert len(user.program.look().dialogs) == 1
    user.hand.key("Escape")
    user.program.until(lambda now: not now.dialogs, "its end")


def test_return_after_delete_and_alt_with_a_letter(user: User) -> None:
    """Return deletes no more; the letter marks the text, to be typed over."""
    listed = [row["row"] for row in user.program.look().of_kind("Treeview")[0].more["rows"]]
    delete = user.program.look().button("Delete")
    assert delete is not None
    user.click(delete)
    user.program.until(lambda now: "deleted" in " ".join(w.text for w in now.of_kind("TLabel")), "the deletion")
    user.press("Return", "Return", "space")
    left = {row["row"] for row in user.program.look().of_kind("Treeview")[0].more["rows"]}
    assert len(set(listed) - left) == 1
    assert user.field("Yarn").text
    user.press("alt+y")
    user.hand.type("river sand")
    user.program.until(lambda _: user.field("Yarn").text == "river sand", "the typed text alone")


def test_sizes_and_leaving_with_something_typed(user: User) -> None:
    user.press("alt+y")
    user.hand.type("river sand")
    user.program.until(lambda _: user.field("Yarn").text == "river sand", "the typed text")
    x, y, width, _ = next(w for w in user.program.look().widgets if w.kind == "Menu").box
    user.hand.click(x + width // 2, y - 9, times=2)
    for width, height in ((800, 500), (1920, 1080), (1000, 700)):
        user.hand.resize_active(width, height)
        user.program.until(lambda now: abs(now.widgets[0].box[2] - width) < 40, f"{width} wide")  # noqa: B023
    user.hand.key("alt+F4")
    user.program.until(lambda now: now.dialogs, "the question")
    user.hand.key("Escape")
    user.program.until(lambda now: not now.dialogs, "staying")
    assert user.field("Yarn").text == "river sand"
    user.hand.key("alt+F4")
    user.program.until(lambda now: now.dialogs and now.focus.startswith(now.dialogs[0].path), "the question")
    user.hand.key("alt+s")
    assert user.program.until_ended() == 0
