"""Ends from outside: in a window that nobody touches what is to be done before is done, and then the process ends as it would."""

import os
import signal
import subprocess
import sys

import pytest

from logbook.window.ending import TICK_MS

PROGRAM = f"""
import signal
import tkinter
signal.signal(signal.SIGHUP, signal.SIG_DFL)  # whoever runs the tests may be deaf to it
from logbook.window.ending import Ending

root = tkinter.Tk()
Ending(root, lambda: print("kept", flush=True))
root.after({2 * TICK_MS + 50}, lambda: print("idle", flush=True))
root.mainloop()
"""


@pytest.mark.skipif(os.name != "posix", reason="signals as on Unix")
def test_a_signal_reaches_an_idle_window(screen: str) -> None:
    signals = (signal.SIGTERM, signal.SIGHUP)
    programs = [subprocess.Popen([sys.executable, "-c", PROGRAM], stdout=subprocess.PIPE, text=True) for _ in signals]
    try:
        for program, number in zip(programs, signals, strict=True):
            assert program.stdout is not None
            assert program.stdout.readline() == "idle\n"
            program.send_signal(number)
        for program, number in zip(programs, signals, strict=True):
            assert program.communicate(timeout=20)[0] == "kept\n"
            assert program.returncode == -number
    finally:
        for program in programs:
            program.kill()
            program.communicate()
