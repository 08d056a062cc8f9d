"""From a fresh clone and the README to the first chain of one's own: ``python -m tests.window.first_chain`` (wants git, the
package index that pip uses, Xvfb, openbox and xdotool).

The clone is installed by the very command of the README, and its program started in an empty home. From then on a real pointer
and real keys do what is shown in the window, at the pace of somebody who is not quick: a key every 0.3 s, 1.5 s to find a place
and click it. What is told is how long that takes, by the clock, until the chain stands there, and until it is kept as a swatch.
"""

import os
import re
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.support.hand import Hand, managed_screen
from tests.support.shown import TOP, Program, Shown, Widget

KEY_S, CLICK_S = 0.3, 1.5
STITCH, GAUGE, WIDTH, HOOK = "hdc", "16 sts = 10 cm", "46", "4.5"
CHAIN = "Chain 76"  # 46 cm are 73.6 stitches of 6.25 mm: 74, and 2 chains to turn
INSTALLED = "--installed"
FIELDS = ("TEntry", "TCombobox")


def install(clone: Path) -> float:
    """Does what the README says under “Run the program on the sample”, but for the start itself; seconds."""
    said = re.search(r"Run the program on the sample:\s+```sh\n(.*?)\n```", (TOP / "README.md").read_text("utf-8"), re.DOTALL)
    assert said is not None
    commands, _, start = said[1].rpartition(" && ")
    assert start.endswith("logbook --sample")
    began = time.monotonic()
    subprocess.run(["git", "clone", "-q", str(TOP), str(clone)], check=True)
    subprocess.run(commands, shell=True, cwd=clone, check=True, stdout=subprocess.DEVNULL)
    subprocess.run([str(clone / ".venv/bin/logbook"), "--version"], check=True, stdout=subprocess.DEVNULL)
    return time.monotonic() - began


class Newcomer:
    """Sees labels, points at what stands beside them, and types."""

    def __init__(self, hand: Hand, program: Program) -> None:
        self.hand, self.program = hand, program

    def click(self, place: Widget) -> None:
        time.sleep(CLICK_S)
        self.hand.click(*place.middle)

    def type(self, text: str) -> None:
        for letter in text:
            time.sleep(KEY_S)
            self.hand.type(letter)

    def fill(self, label: str, text: str) -> None:
        """The field beside the last label with this text: the right pane comes last."""
        shown = self.program.look()
        found = [widget for widget in shown.of_kind("TLabel") if widget.text == label][-1]
        self.click(next(w for w in shown.within(found.path.rpartition(".")[0]) if w.kind in FIELDS))
        self.type(text)


def says(shown: Shown, words: str) -> bool:
    return any(words in widget.text for widget in shown.of_kind("TLabel"))


def first_chain(display: str, home: Path) -> tuple[float, float]:
    """Seconds by the clock from the whole window to the first chain, and on to its swatch in the list."""
    program, hand = Program(display, home), Hand(display)
    try:
        program.at_rest()
        newcomer, began = Newcomer(hand, program), time.monotonic()
        newcomer.fill("Stitch", STITCH)
        newcomer.fill("Gauge", GAUGE)
        newcomer.fill("Finished width wanted", WIDTH)
        program.until(lambda now: says(now, CHAIN), CHAIN)
        chain = time.monotonic() - began
        newcomer.fill("Hook", HOOK)
        keep = program.look().button("Keep as a swatch")
        assert keep is not None
        newcomer.click(keep)
        program.until(lambda now: says(now, "1 swatch"), "the swatch in the list")
        return chain, time.monotonic() - began
    finally:
        hand.take_away()
        program.end()


def main() -> None:
    """Tells what it took."""
    with tempfile.TemporaryDirectory() as folder:
        clone = Path(folder) / "clone"
        installed = install(clone)
        print(f"Clone and installation: {installed:.0f} s.", flush=True)
        command = [sys.executable, "-m", "tests.window.first_chain", INSTALLED]
        subprocess.run(command, cwd=clone, env=os.environ | {"PYTHONPATH": str(clone)}, check=True)


def by_hand() -> None:
    """What is done in the window of the clone."""
    with tempfile.TemporaryDirectory() as folder, managed_screen(Path(folder)) as display:
        chain, kept = first_chain(display, Path(folder) / "home")
    print(f"By hand: {chain:.0f} s to “{CHAIN}”, {kept:.0f} s until it is kept as a swatch.")


if __name__ == "__main__":
    by_hand() if INSTALLED in sys.argv else main()
