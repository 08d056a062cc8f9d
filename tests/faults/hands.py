"""Random clicks, double clicks, drags, turns of the wheel, keys and texts, by a real hand, over everything the window shows.

python -m tests.faults.hands --events 5000 --seed 1
python -m tests.faults.hands --events 5000 --seed 1 --empty --text-size 200     (an empty logbook, at twice the text size)
python -m tests.faults.hands --events 1500 --book FILE                          (a copy of that logbook)
python -m tests.faults.hands --events 2000 --weakness wheel                     (or look-ups, reporter, titles: must be found)
python -m tests.faults.hands --again FILE                                       (the events that a failed run printed)

After every twenty events: the program lives, nothing unexpected is written down, the keyboard is where it can be seen, the wheel
has changed no choice, and the page says that it is not saved if and only if it shows something else than the logbook holds. What
was said to be saved is looked up in the file at once. At the end, and whenever the hand has left the program, the logbook checks
as sound and every change that it held is still there. A failure is made shorter, to the fewest last events that still fail, and
printed with its seed.
"""

import argparse
import json
import os
import random
import shutil
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any, NamedTuple

from logbook.book.changes import changes_of_record
from logbook.book.logbook import open_logbook
from logbook.craft.words.notation import written_in
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.at_home import notation_of
from logbook.tasks.keeping import check_thoroughly, new_book
from logbook.tasks.sampling import new_sample
from tests.support.display import SIZE
from tests.support.hand import WHEEL_DOWN, WHEEL_UP, Hand, managed_screen, missing
from tests.support.kept_texts import kept_texts
from tests.support.shown import Program, Shown, Widget
from tests.support.telling import THOROUGHLY
from tests.support.weaknesses import WEAKNESSES

EVERY = 20
"""Events between looks at whether all is well."""
KEYS = (
    *("Tab",) * 8,
    *("shift+Tab", "Down", "Down", "Up", "Return", "Escape", "Escape", "space", "Left", "Right", "Home", "End", "Prior", "Next"),
    *("BackSpace", "Delete", "F1", "F10", "Menu", "shift+F10", "ctrl+a", "ctrl+c", "ctrl+v", "ctrl+x", "ctrl+z", "ctrl+shift+z"),
    *("ctrl+n", "ctrl+g", "ctrl+s", "ctrl+s", "ctrl+r", "ctrl+d", "ctrl+f", "ctrl+1", "ctrl+2", "ctrl+3", "ctrl+h", "ctrl+k"),
    *("ctrl+b", "ctrl+j", "ctrl+l", "ctrl+t", "ctrl+m", "ctrl+p", "ctrl+plus", "ctrl+minus", "alt+F4", "alt+Down"),
    *(f"alt+{letter}" for letter in "abcdefghiklmnoprstuwy"),
)
TEXTS = (
    *("46", "12,5 cm", "4 repeats = 15.1 cm", "16 sts x 20 rows = 10 cm", "shell", "river sand", "18 1/4 in", "-5 %", "nonsense"),
    *("0", "1e999", "2026-11-27", "Row 1: Sc in 2nd ch from hook, sc in each ch across, turn.", "a" * 300, "bust 96 + 5 %"),
)
PLACES = ("TButton", "TEntry", "TCombobox", "Text", "TCheckbutton", "TRadiobutton", "TMenubutton", "TSpinbox", "Treeview")
PLACES += ("Listbox", "Menu", "TNotebook", "TScrollbar", "Canvas", "TLabel")
WEIGHTS = {"TLabel": 1, "Canvas": 1, "TScrollbar": 1, "TNotebook": 1, "Menu": 3}
USUAL_WEIGHT = 4
LEAVING_S = 600
"""A large logbook is backed up when it is left, and the window is gone already."""

Event = tuple[str, Sequence[Any]]
"""What the hand does: the name of one of its ways, and what that takes."""


class Setting(NamedTuple):
    """What the hand is let loose on."""

    empty: bool = False
    text_size: int = 100
    weakness: str = ""
    size: tuple[int, int] = SIZE
    book: Path | None = None


class Failure(Exception):
    """What is wrong, in a sentence or two."""


def any_event(chance: random.Random, shown: Shown, size: tuple[int, int]) -> Event:
    """The next event: mostly on a widget, as a hand would, and sometimes anywhere."""
    x, y = any_place(chance, shown, size)
    way = chance.random()
    if way < 0.40:
        return "click", (x, y)
    if way < 0.45:
        return "click", (x, y, 3)
    if way < 0.50:
        return "click", (x, y, 1, 2)
    if way < 0.60:
        return "wheel", (x, y, chance.choice((4, 5, 5, 6, 7)), chance.randint(1, 4))
    if way < 0.63:
        return "drag", (x, y, *any_place(chance, shown, size))
    if way < 0.65:
        return "two_clicks", (x, y, *any_place(chance, shown, size))
    if way < 0.67:
        return "click_and_key", (x, y, chance.choice(KEYS))
    if way < 0.75:
        return "type", (chance.choice(TEXTS),)
    return "key", (chance.choice(KEYS),)


def any_place(chance: random.Random, shown: Shown, size: tuple[int, int]) -> tuple[int, int]:
    top = shown.dialogs[-1].path if shown.dialogs and chance.random() < 0.7 else "."
    widgets = [w for w in shown.within(top) if w.kind in PLACES] + shown.lists + shown.menus
    if not widgets or chance.random() < 0.15:
        return chance.randrange(size[0]), chance.randrange(size[1])
    weights = [WEIGHTS.get(w.kind, USUAL_WEIGHT) for w in widgets]
    x, y, width, height = chance.choices(widgets, weights)[0].box
    place = x + chance.randrange(max(1, width)), y + chance.randrange(max(1, height))
    return min(max(place[0], 0), size[0] - 1), min(max(place[1], 0), size[1] - 1)


class Round:
    """One program under one hand, on a logbook of its own; started again there whenever the hand has left it."""

    def __init__(self, display: str, folder: Path, setting: Setting) -> None:
        self._display, self._home, self._setting = display, folder, setting
        self.book = folder / "mine.logbook"
        if setting.book is not None:
            shutil.copyfile(setting.book, self.book)
        elif setting.empty:
            new_book(self.book).close()
        else:
            made = new_sample(folder)
            made.close()
            made.path.rename(self.book)
        kept = folder / "kept"
        kept.mkdir()
        (kept / "settings.json").write_text(json.dumps({"text_size": setting.text_size}), "utf-8")
        self.hand = Hand(display)
        self.saves = self.starts = 0
        self.actions: set[str] = set()
        self._start()

    def _start(self) -> None:
        self.program = Program(self._display, self._home, "--book", str(self.book), weakness=self._setting.weakness)
        self.starts += 1
        self.shown = self._look(lambda: self.program.until(lambda now: now.widgets and now.focus))

    def _look(self, look: Callable[[], Shown]) -> Shown:
        """What is shown; a program that was left is started again, one that died is a failure."""
        try:
            shown = look()
        except EOFError:
            return self._started_again()
        except AssertionError as error:
            raise Failure(f"Nothing is seen any more: {error}") from None
        except TimeoutError:
            if "in close_down" not in (busy := self.program.busy_with()):
                raise Failure(f"The program answers no more.\n{busy}") from None
            self.program.until_ended(LEAVING_S)
            return self._started_again()
        for saved in shown.saved:
            self._held(saved)
        return shown

    def _started_again(self) -> Shown:
        if self.program.ended:
            raise Failure(f"The program ended with {self.program.ended}. {self.program.unexpected()[-900:]}")
        self._left()
        self._start()
        return self.shown

    def _held(self, saved: dict[str, Any]) -> None:
        """What was said to be saved is in the file, for others to read."""
        ways = Settings(**saved["ways"])
        with open_logbook(Path(saved["book"])) as book, written_in(notation_of(ways)):  # the hand may have opened another
            there = kept_texts(Session(book, ways), saved["kind"], saved["uid"])
            changes = changes_of_record(book.connection, saved["uid"])
            if there is None and changes and changes[-1].after is None:
                return  # asked what to do with what was typed before deleting, the hand had it saved, and then it was deleted
            kept = there or {}
            said = {key: text.strip() for key, text in saved["texts"].items()}
            other = sorted(
                f"{key} {kept.get(key, '')!r}, said {text!r}" for key, text in said.items() if kept.get(key, "").strip() != text
            )
            if there is None:
                other = ["all of it"]
            if book.path == self.book:
                self.actions |= {uid for (uid,) in book.connection.execute("SELECT uid FROM action")}
        if other:
            raise Failure(f"Said to be saved, but not in the logbook: {saved['kind']} {saved['uid']}, {', '.join(other)}")
        self.saves += 1

    def do(self, event: Event) -> None:
        way, what = event
        if way == "wheel":
            self.shown = self._look(self.program.look)
        choices = {} if self.shown.lists else drop_downs(self.shown)
        getattr(self.hand, way)(*what)
        self.shown = self._look(self.program.look)
        if way == "wheel" and not self.shown.lists and (changed := other(choices, self.shown)):
            self._turn_again(what[0], what[1], changed)

    def _turn_again(self, x: int, y: int, changed: str) -> None:
        """A click that the window manager hands on late changes a choice as well, but not again with each turn of the wheel."""
        for button in (WHEEL_UP, WHEEL_DOWN):
            self.shown = self._look(self.program.look)
            choices = drop_downs(self.shown)
            self.hand.wheel(x, y, button)
            self.shown = self._look(self.program.look)
            if not self.shown.lists and other(choices, self.shown):
                raise Failure(f"The wheel changed {changed}.")

    def check(self) -> None:
        """Raises Failure if something is not as it must be."""
        if unexpected := self.program.unexpected():
            raise Failure(f"Unexpected: {unexpected[-1500:]}")
        if not keyboard_seen(self.shown):
            self._wait_for_keyboard()
        self.shown = self._look(lambda: self.program.look(THOROUGHLY))
        if self.shown.lies:
            raise Failure(f"Not honest about what is unsaved: {self.shown.lies}")

    def _wait_for_keyboard(self) -> None:
        """A key brings back what was scrolled away, and the window manager takes its time; a click on the empty screen leaves the
        keyboard nowhere, until the next one."""
        self.hand.key("Shift_L")
        deadline = time.monotonic() + 2
        while time.monotonic() < deadline:
            self.shown = self._look(self.program.look)
            if keyboard_seen(self.shown):
                return
        if self.shown.focus:
            lies = self._look(lambda: self.program.look(THOROUGHLY)).focus_lies
            raise Failure(f"The keyboard is where nobody sees it: {self.shown.focus} ({lies})")
        x, y = middle(self.shown)
        self.hand.click(x, y)
        self.shown = self._look(self.program.look)

    def end(self) -> None:
        """The program is ended as by a power cut, and the logbook looked at. Raises Failure."""
        self.check()
        self.program.end()
        self._left()

    def _left(self) -> None:
        self.program.end()
        if unexpected := self.program.unexpected():
            raise Failure(f"Unexpected: {unexpected[-1500:]}")
        check_thoroughly(self.book)
        with open_logbook(self.book) as book:
            lost = self.actions - {uid for (uid,) in book.connection.execute("SELECT uid FROM action")}
        if lost:
            raise Failure(f"{len(lost)} changes that were in the logbook are gone from it.")

    def take_away(self) -> None:
        self.program.end()
        self.hand.take_away()


def keyboard_seen(shown: Shown) -> bool:
    """Along the bar Tk shows the menu under the pointer while the one opened first keeps the keyboard; Escape closes either."""
    return shown.at(shown.focus) is not None or (bool(shown.menus) and shown.focus.startswith(".#"))


def drop_downs(shown: Shown) -> dict[str, str]:
    return {widget.path: widget.text for widget in shown.of_kind("TCombobox", "TSpinbox")}


def other(before: dict[str, str], shown: Shown) -> str:
    """A choice that is another than before, in words; "" if none is."""
    now = drop_downs(shown)
    changed = (f"{text!r} into {now[path]!r}" for path, text in before.items() if now.get(path, text) != text)
    return next(changed, "")


def middle(shown: Shown) -> tuple[int, int]:
    top: Widget = shown.dialogs[-1] if shown.dialogs else shown.widgets[0]
    return top.middle[0], top.box[1] + top.box[3] - 4


@contextmanager
def a_round(setting: Setting) -> Iterator[Round]:
    with tempfile.TemporaryDirectory(prefix="hands-", ignore_cleanup_errors=True) as folder:
        home = Path(folder) / "home"
        home.mkdir()
        with managed_screen(Path(folder), setting.size) as display:
            made = Round(display, home, setting)
            try:
                yield made
            finally:
                made.take_away()


def let_loose(setting: Setting, events: int, seed: int, seconds: float = 1e9) -> tuple[list[Event], str, Round]:
    """Lets the hand loose: what it did, what went wrong ("" if nothing), and the round."""
    chance, done = random.Random(seed), list[Event]()
    with a_round(setting) as made:
        end = time.monotonic() + seconds
        try:
            while len(done) < events and time.monotonic() < end:
                event = any_event(chance, made.shown, setting.size)
                done.append(event)
                made.do(event)
                if len(done) % EVERY == 0:
                    made.check()
            made.end()
        except Failure as failure:
            return done, str(failure), made
    return done, "", made


def fails_again(setting: Setting, tail: Sequence[Event]) -> str:
    """What goes wrong when these events are done from the start."""
    with a_round(setting) as made:
        try:
            for event in tail:
                made.do(event)
            made.check()
            made.end()
        except Failure as failure:
            return str(failure)
    return ""


def printed_events(text: str) -> list[Event]:
    """The events among the lines of a failed run."""
    found = list[Event]()
    for line in text.splitlines():
        way, _, what = line.strip().partition(" ")
        if line.startswith("  ") and way in ("type", "key"):
            found.append((way, (what,)))
        elif line.startswith("  ") and way in ("click", "two_clicks", "click_and_key", "drag", "wheel"):
            found.append((way, [int(one) if one.isdecimal() else one for one in what.split()]))
    return found


def shortest_tail(setting: Setting, done: Sequence[Event]) -> Sequence[Event] | None:
    """The fewest last events that still fail, to within a tenth; None if not even all of them do, done again."""
    fails, passes = None, 0
    length = 1
    while fails is None:
        length = min(length * 4, len(done))
        if fails_again(setting, done[-length:]):
            fails = length
        elif length == len(done):
            return None
        else:
            passes = length
    while fails - passes > max(1, fails // 10):
        half = (fails + passes) // 2
        if fails_again(setting, done[-half:]):
            fails = half
        else:
            passes = half
    return done[-fails:]


def main(arguments: Sequence[str] | None = None) -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--events", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=int(time.time()) % 100_000)
    parser.add_argument("--empty", action="store_true", help="on an empty logbook instead of the sample's content")
    parser.add_argument("--book", type=Path, metavar="FILE", help="on a copy of that logbook, of any size")
    parser.add_argument("--text-size", type=int, default=100)
    parser.add_argument("--again", type=Path, metavar="FILE", help="do the events that a failed run printed, once more")
    parser.add_argument("--size", default="x".join(map(str, SIZE)), help="of the screen")
    parser.add_argument("--weakness", choices=sorted(WEAKNESSES), default="")
    given = parser.parse_args(arguments)
    if lacking := missing():
        print(f"A real hand needs {' and '.join(lacking)}.")
        return 3
    width, height = map(int, given.size.split("x"))
    setting = Setting(given.empty, given.text_size, given.weakness, (width, height), given.book)
    if given.again:
        wrong = fails_again(setting, printed_events(given.again.read_text("utf-8")))
        print(wrong or "It does not fail again.")
        return 1 if wrong else 0
    done, wrong, made = let_loose(setting, given.events, given.seed)
    if not wrong:
        print(f"{len(done)} events (seed {given.seed}): 0 dead, 0 unexpected; {made.starts} starts, {made.saves} saves held")
        return 0
    print(f"After {len(done)} events (seed {given.seed}): {wrong}", flush=True)
    tail = shortest_tail(setting, done)
    print("It does not fail again from a fresh start." if tail is None else f"The last {len(tail)} events fail again:")
    for way, what in tail or done[-12:]:
        print(f"  {way} {' '.join(map(str, what))}")
    return 1


if __name__ == "__main__":
    os.environ.setdefault("PYTHONHASHSEED", "0")
    sys.exit(main())
