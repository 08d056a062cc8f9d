"""Ends of every kind while something is typed by a real hand: what was typed up to two seconds before is offered again.

The program runs under a window manager on a screen of its own. Real keys type into a form, a second line follows at once, and
two seconds after the first the program is ended: by a signal, or by killing the X server under it. It is started again, and must
offer the first line; taken up again it must stand in its field, and be what is then saved. What came in the last two seconds is
counted as well.

    python -m tests.faults.drafts --count 20
    python -m tests.faults.drafts --count 3 --weakness unwritten      (no draft is written; or "late": every ten seconds)
"""

import argparse
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path

from logbook.book.logbook import open_logbook
from logbook.tasks.sampling import new_sample
from tests.support.display import Display
from tests.support.hand import Hand, managed_screen, missing
from tests.support.shown import Program, Shown, Widget, ready

ENDS = ("kill -9", "kill -15", "kill -1", "X server killed")
UP_TO_S = 2.0
PLACES = {
    "swatches": ("ctrl+1", "Yarn"),
    "pieces": ("ctrl+2", "Name"),
    "patterns": ("ctrl+3", "Name"),
    "chain": ("ctrl+1", "Finished width wanted"),
}
"""Where is typed: the keys of the page, and the label of a field of it."""
OFFERED_WITHIN_S = 8.0


@dataclass(slots=True)
class Result:
    """How often, by the way of the end, what was typed two seconds before was offered, and what was typed at the very end."""

    tries: dict[str, int] = field(default_factory=lambda: dict.fromkeys(ENDS, 0))
    offered: dict[str, int] = field(default_factory=lambda: dict.fromkeys(ENDS, 0))
    last_too: dict[str, int] = field(default_factory=lambda: dict.fromkeys(ENDS, 0))
    faults: list[str] = field(default_factory=list)


def run(count: int, weakness: str = "", seed: int = 0, ends: Sequence[str] = ENDS) -> Result:
    """Ends the program ``count`` times in each of the ways ``ends``."""
    chance, result = random.Random(seed), Result()
    with tempfile.TemporaryDirectory(prefix="drafts-") as name:
        folder = Path(name)
        with new_sample(folder) as sample:
            content = sample.path.read_bytes()
        for end in ends:
            for number in range(count):
                place, before = chance.choice(sorted(PLACES)), len(result.faults)
                home = folder / f"{end.split()[-1]}-{number}"
                (home / "kept").mkdir(parents=True)
                (home / "kept" / "swatches.logbook").write_bytes(content)
                try:
                    _try(home, end, place, weakness, chance, result)
                except (AssertionError, EOFError, OSError, subprocess.TimeoutExpired) as error:
                    result.faults.append(f"{end}, {place}: {str(error).partition(';')[0] or type(error).__name__}")
                print(f"{end}, {place}: {result.faults[-1] if len(result.faults) > before else 'offered'}", flush=True)
                if weakness and result.faults:
                    return result
    return result


def _try(home: Path, end: str, place: str, weakness: str, chance: random.Random, result: Result) -> None:
    """One end, and the start after it."""
    typed, last = chance.choice(("river", "sand", "moths", "cloud")), chance.choice(("two", "nine"))
    with managed_screen(_folder(home, "screen")) as display:
        _type_and_end(display, home, end, place, (typed, last), weakness)
    with managed_screen(_folder(home, "screen 2")) as display:
        _start_again(display, home, end, place, (typed, last), result)
    result.tries[end] += 1


def _folder(home: Path, name: str) -> Path:
    folder = home / name
    folder.mkdir()
    return folder


def _type_and_end(display: Display, home: Path, end: str, place: str, texts: tuple[str, str], weakness: str) -> None:
    keys, label = PLACES[place]
    with _program(display, home, weakness) as (program, hand):
        program.until(ready, "the window")
        hand.key(keys)
        entry = _resting(program, label)
        hand.click(*entry.middle)
        program.until(lambda shown: shown.focus == entry.path, "the keyboard in the field")
        hand.type(texts[0])
        began = time.monotonic()
        program.until(lambda shown: texts[0] in _text(shown, label), "what was typed")
        hand.type(texts[1])
        time.sleep(max(0.0, UP_TO_S - (time.monotonic() - began)))
        if end == "X server killed":
            os.kill(display.process, signal.SIGKILL)
        else:
            program.signal(int(end.split("-")[1]))
        program.until_ended()


def _start_again(display: str, home: Path, end: str, place: str, texts: tuple[str, str], result: Result) -> None:
    label = PLACES[place][1]
    what = f"{end}, {place}"
    with _program(display, home) as (program, hand):
        program.until(ready, "the window")
        try:
            shown = program.until(_offers, "the offer", OFFERED_WITHIN_S)
        except AssertionError:
            result.faults.append(f"{what}: nothing was offered")
            return
        said = " ".join(widget.text for widget in shown.within(shown.dialogs[-1].path))
        if texts[0] not in said:
            result.faults.append(f"{what}: {texts[0]} was not offered but: {said}")
            return
        result.offered[end] += 1
        result.last_too[end] += "".join(texts) in said
        hand.key("Return")
        shown = program.until(lambda shown: not shown.dialogs and texts[0] in _text(shown, label), "the text in its field")
        if place != "chain":
            program.until(lambda shown: shown.focus and shown.focus != ".", "the keyboard back in the window")
            hand.key("ctrl+s")
            program.until(
                lambda shown: any("saved." in w.text or "Saved." in w.text for w in shown.of_kind("TLabel")), "the saving"
            )
        with suppress(AssertionError):  # the tool may miss the window that it closes
            hand.key("ctrl+q")
        program.until_ended()
        said_by_it = [line for line in program.unexpected().splitlines() if not line.startswith("X connection to")]
        result.faults.extend(f"{what}: {line}" for line in said_by_it)
    if left := [path for path in (home / "kept" / "drafts").rglob("*") if path.is_file()]:
        result.faults.append(f"{what}: left behind: {left}")
    open_logbook(home / "kept" / "swatches.logbook").close()  # raises if it is not sound
    if place != "chain" and texts[0].encode() not in (home / "kept" / "swatches.logbook").read_bytes():
        result.faults.append(f"{what}: taken up, but not saved")


@contextmanager
def _program(display: str, home: Path, weakness: str = "") -> Iterator[tuple[Program, Hand]]:
    program, hand = Program(display, home, weakness=weakness), Hand(display)
    try:
        yield program, hand
    finally:
        program.end()
        hand.take_away()


def _offers(shown: Shown) -> bool:
    """Whether the offer stands there and holds the keyboard."""
    buttons = [widget.path for widget in shown.of_kind("TButton") if widget.text == "Bring it back"]
    return bool(shown.dialogs) and shown.focus in buttons


def _entry(shown: Shown, label: str) -> Widget | None:
    """The field that this label is of."""
    fields = [widget.path.rpartition(".")[0] for widget in shown.of_kind("TLabel", "Label") if widget.text == label]
    entries = [widget for widget in shown.of_kind("TEntry", "TCombobox") if widget.path.rpartition(".")[0] in fields]
    return entries[0] if entries else None


def _resting(program: Program, label: str) -> Widget:
    """The field, when the page is drawn and nothing moves any more."""
    before: list[Widget | None] = [None]

    def rests(shown: Shown) -> bool:
        before.append(_entry(shown, label))
        return ready(shown) and before[-1] is not None and before[-1] == before[-2] == before[-5:][0]

    program.until(rests, f"the field {label}")
    assert before[-1] is not None
    return before[-1]


def _text(shown: Shown, label: str) -> str:
    entry = _entry(shown, label)
    return entry.text if entry is not None else ""


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=20)
    parser.add_argument("--seed", type=int, default=0)
    parser.add_argument("--weakness", default="", choices=("", "unwritten", "late"))
    asked = parser.parse_args()
    signal.signal(signal.SIGHUP, signal.SIG_DFL)  # started by nohup, the program would not heed it either
    if lacking := missing():
        print(f"can't run here: a real hand needs {' and '.join(lacking)}")
        return 3
    result = run(asked.count, asked.weakness, asked.seed)
    for end in ENDS:
        tries, offered, last = result.tries[end], result.offered[end], result.last_too[end]
        print(f"{end}: {tries} times; offered again what was typed 2 s before: {offered}; also what came after: {last}")
    print(*result.faults, sep="\n")
    return 1 if result.faults else 0


if __name__ == "__main__":
    sys.exit(main())
