"""How soon the program's window is there, as it is handed on: ``python -m tests.bench.starts [PROGRAM …]``.

Each PROGRAM is a file to start, a ``logbook.pyz`` or a frozen ``logbook``; the one installed here is measured beside them, in
turn, on a logbook of a thousand swatches, and a bare window of an entry and as many rows. Printed are minimum, median and maximum
of the time to a window that the X server shows, read every 10 ms, and the median beside that of the bare one. Wants xdotool.
Nothing is asserted.
"""

import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

from tests.bench.window import make
from tests.support.display import own_display

ROUNDS = 7
SWATCHES = 1_000
TITLE = "Swatch and gauge logbook"  # the end of it: xdotool finds no dash

BARE = f"""
import tkinter as tk
from tkinter import ttk
root = tk.Tk()
root.title("{TITLE}")
ttk.Style(root).theme_use("clam")
ttk.Entry(root).grid()
tree = ttk.Treeview(root, columns=("a", "b", "c"), show="headings")
for number in range({SWATCHES}):
    tree.insert("", "end", values=(number, "yarn", "stitch"))
tree.grid()
root.mainloop()
"""


def start_s(program: Sequence[str], environment: dict[str, str], logbook: Path) -> float:
    """Seconds from starting the process to the window, on a copy of ``logbook``."""
    with tempfile.TemporaryDirectory() as home:
        shutil.copy(logbook, home)  # under its name it is the usual one
        before = time.perf_counter()
        process = subprocess.Popen(program, env=environment | {"LOGBOOK_HOME": home}, cwd=home)
        search = ["xdotool", "search", "--onlyvisible", "--name", TITLE]
        while not subprocess.run(search, env=environment, capture_output=True).stdout:
            if process.poll() is not None:
                raise SystemExit(f"{' '.join(program)} ended with {process.returncode}.")
            time.sleep(0.01)
        took = time.perf_counter() - before
        process.kill()
        process.wait()
    return took


def main() -> None:
    programs = {"a bare window": [sys.executable, "-c", BARE], "installed": [sys.executable, "-P", "-m", "logbook"]}
    for path in sys.argv[1:]:
        programs[path] = [sys.executable, path] if path.endswith(".pyz") else [path]
    took: dict[str, list[float]] = {name: [] for name in programs}
    with own_display() as display, tempfile.TemporaryDirectory() as folder:
        environment = dict(os.environ) | {"DISPLAY": display}
        environment.pop("PYTHONDONTWRITEBYTECODE", None)  # as a user's second start finds the program
        environment["PYTHONPYCACHEPREFIX"] = f"{folder}/compiled"
        logbook = Path(folder) / "swatches.logbook"
        make(logbook, SWATCHES)
        for _ in range(ROUNDS + 1):  # the first fills the caches
            for name, program in programs.items():
                took[name].append(start_s(program, environment, logbook))
    floor = statistics.median(took["a bare window"][1:])
    for name, times in took.items():
        least, middle, most = min(times[1:]), statistics.median(times[1:]), max(times[1:])
        print(f"{name}: {1000 * least:.0f}, {1000 * middle:.0f}, {1000 * most:.0f} ms, {middle / floor:.2f} times the bare one")


if __name__ == "__main__":
    main()
