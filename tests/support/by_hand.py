"""What a hand does with everything there is: each stop of Tab, each drop-down, menu, list, button and fold, and the ways out."""

from collections.abc import Callable, Collection, Iterator
from contextlib import suppress

from tests.support.hand import RIGHT, WHEEL_DOWN, WHEEL_LEFT, WHEEL_UP
from tests.support.shown import Shown, Widget
from tests.support.user import FIELDS, User

BUTTONS = ("TButton", "TCheckbutton", "TRadiobutton", "TMenubutton")
MOST_BUTTONS = 120
GARMENT, PIECE = 1, 2
"""The places of the first garment of the sample and of its first piece in the list; before them stands a single piece."""
DOES_SOMETHING = "…"
"""So ends what stands in a drop-down that does something and is as before; choosing there is tried by itself."""


def click_line(user: User, place: int) -> Shown:
    """Clicks that line of the one list of garments and single pieces."""
    table = next(w for w in user.program.look().of_kind("Treeview") if "garmenttree" in w.path and w.more["rows"])
    user.click(tuple(table.more["rows"][place]["at"]))
    return user.program.still()


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
            user.program.still()  # Tab passes by what is not drawn yet
        yield here
        if user.program.look().focus != here.path:
            user.click(here)
        shown = user.press("Tab")


def open_every_drop_down_and_every_menu(
    user: User, passed_by: Collection[str] = (), *, every_field: bool = True
) -> tuple[int, int]:
    """At each stop: its drop-down (but for those at these paths), a choice made by key and by click; every menu from the first
    stop of each kind, and with ``every_field`` from each other field one menu. How many drop-downs and menus there were."""
    drop_downs = menus = 0
    kinds: set[str] = set()
    for stop in stops(user):
        if stop.kind not in kinds or (every_field and stop.kind in FIELDS):
            menus += open_menus(user, stop, every=stop.kind not in kinds)
            kinds.add(stop.kind)
        if stop.kind == "TCombobox" and stop.path not in passed_by:
            drop_downs += 1
            choose_by_key(user, stop.path)
            choose_by_click(user, stop.path)
    return drop_downs, menus


def open_menus(user: User, stop: Widget, *, every: bool) -> int:
    """Opens the first menu of the bar, or each, while the stop has the keyboard, and goes back to it."""
    bar = user.program.look().bar
    assert bar is not None
    user.hand.click(*bar.more["entries"][0]["at"])
    user.program.until(lambda now: now.menus, "a menu")
    others = bar.more["entries"][1:] if every else []
    for _ in others:
        assert user.press("Right").menus
    user.all_closed()
    shown = user.program.until(lambda now: now.focus == stop.path, f"the keyboard back in {stop.path}")
    left = shown.at(stop.path)
    assert left is not None
    assert left.text == stop.text or stop.kind not in FIELDS  # a fold says that it is open now
    return 1 + len(others)


def choose_in_every_drop_down(user: User, window: str, passed_by: Collection[str] = ()) -> int:
    """An item of each that is in sight by click and by key, but of those at these paths; how many there were."""
    boxes = [box for box in user.program.look().within(window) if box.kind == "TCombobox" and box.path not in passed_by]
    for box in boxes:
        if not box.text.endswith(DOES_SOMETHING):
            choose_by_click(user, box.path)
            choose_by_key(user, box.path)
    return len(boxes)


def choose_by_key(user: User, path: str) -> None:
    user.hand.key("Down")
    listed = user.program.until(lambda now: now.lists, f"the list of {path}").lists[0]
    user.hand.key("End", "Return")
    shown = user.program.until(lambda now: not now.lists and now.focus == path, f"the choice of {path}")
    box = shown.at(path)
    assert box is not None
    assert not listed.more["rows"] or box.text or not listed.more["rows"][-1]["row"]


def open_by_click(user: User, path: str) -> Widget:
    """The list of a drop-down, which must hang at it."""
    box = user.program.look().at(path)
    assert box is not None
    x, y, width, height = box.box
    user.hand.click(x + width - height // 2, y + height // 2)
    shown = user.program.until(lambda now: now.lists, f"the list of {path}")
    listed, shown_box = shown.lists[0], shown.at(path)
    assert shown_box is not None
    top, bottom = listed.box[1], listed.box[1] + listed.box[3]
    assert abs(top - (shown_box.box[1] + shown_box.box[3])) < 8 or abs(bottom - shown_box.box[1]) < 8, "the list hangs in the air"
    return listed


def choose_by_click(user: User, path: str) -> None:
    rows = open_by_click(user, path).more["rows"]
    if rows:
        user.hand.click(*rows[0]["at"])
    else:
        user.hand.key("Escape")
    shown = user.program.until(lambda now: not now.lists and now.focus == path, f"the choice of {path}")
    chosen = shown.at(path)
    assert chosen is not None
    assert not rows or rows[0]["row"].startswith(chosen.text[:3])


def turn_the_wheel_over_everything(user: User) -> None:
    """It changes nothing but what is in view."""
    shown = user.program.look()
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


def use_every_list(user: User, window: str = ".", most: int = 3) -> int:
    """Clicks each heading; clicks the first rows with either button and twice. How many rows there were."""
    count = 0
    for path in [table.path for table in user.program.look().of_kind("Treeview") if table.path.startswith(window)]:
        table = user.program.still().at(path)  # as it is by now: a line of another list may have brought other rows
        if table is None:
            continue
        for heading in table.more["headings"]:
            user.click(tuple(heading["at"]))
        for row in table.more["rows"][:most]:
            count += 1
            user.click(tuple(row["at"]))
            user.program.still()  # what it leads to may have its own list there
            user.click(tuple(row["at"]), RIGHT)
            user.program.until(lambda now: now.menus, f"a menu of {table.path}")
            user.all_closed(window)
            user.hand.click(*row["at"], times=2)
            user.all_closed(window)
    return count


def press_every_button(user: User, passed_by: Collection[str] = ()) -> set[str]:
    """Each button, tick and fold of the page, also those that come into view by scrolling or opening a fold; the words on them.

    What opens is closed and what is typed dropped.
    """
    pressed: dict[str, str] = {}
    while (button := _next_button(user, pressed, passed_by)) is not None:
        assert len(pressed) < MOST_BUTTONS, "no end of buttons"
        pressed[button.path] = button.text
        if button.off:
            continue
        user.click(button)
        if button.text.startswith("▾ ") and (folded := user.program.look().at(button.path)) is not None:
            user.click(folded)  # open again, for what is in it
        user.all_closed()
        drop_what_is_typed(user)
    return {text.strip("▾▸ ") for text in pressed.values()}


def _next_button(user: User, pressed: Collection[str], passed_by: Collection[str]) -> Widget | None:
    """The first that was not pressed; where all in sight were, the forms are scrolled down."""
    while True:
        shown = user.program.look()
        for button in shown.of_kind(*BUTTONS):
            if button.path not in pressed and button.text not in passed_by and button.box[3] > 8:
                return button
        further = [w for w in shown.of_kind("Canvas") if ".!scrolled." in w.path and w.more["view"][1] < 1]
        if not further:
            return None
        for canvas in further:
            x, y, _, _ = canvas.box
            user.hand.wheel(x + 3, y + 3, WHEEL_DOWN, 4)


def drop_what_is_typed(user: User) -> None:
    revert = user.program.look().button("Revert")
    if revert is not None and not revert.off:
        user.click(revert)


def escape(user: User, shown: Shown) -> None:
    """What was chosen on the way may be asked for."""
    user.hand.key("Escape")
    at_end = user.program.until(lambda now: len(now.dialogs) != len(shown.dialogs), "its end, or a question")
    discard = at_end.button("Discard")
    if discard is not None and at_end.dialogs:
        user.click(discard)


def press_return(user: User, _: Shown) -> None:
    user.hand.key("Return")
    user.all_closed()


def close(user: User, _: Shown) -> None:
    """The window behind does not close."""
    press_until_gone(user, "alt+F4")


def click_outside(user: User, shown: Shown) -> None:
    """The keyboard stays with the dialog: Escape still closes it."""
    x, y, _, height = next(w for w in shown.widgets if w.path == ".").box
    dialog = shown.dialogs[-1]
    user.click((x + 4, y + height - 4))
    if dialog.more.get("modal", True):
        user.program.until(lambda now: now.focus.startswith(dialog.path), f"the keyboard back in {dialog.path}")
    press_until_gone(user, "Escape")


def press_until_gone(user: User, key: str) -> None:
    """Once more, where the window manager was not done yet with which window is in front."""
    for _ in range(3):
        user.hand.key(key)
        with suppress(AssertionError):
            user.program.until(lambda now: not now.dialogs, "its end", 3)
            return


WAYS_OUT: tuple[Callable[[User, Shown], None], ...] = (escape, press_return, close, click_outside)
