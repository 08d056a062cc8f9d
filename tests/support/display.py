"""A screen of our own, of known size and dots per inch, for tests, pictures and measurements."""

import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager

DPI = int(os.environ.get("LOGBOOK_TEST_DPI", "96"))
"""A run of the tests at other than 96 dots per inch is asked for by ``LOGBOOK_TEST_DPI``."""


def scaled(pixels: int) -> int:
    """As many pixels as show what that many show at 96 dots per inch, where text is larger."""
    return pixels * max(DPI, 96) // 96


SIZE = (scaled(1366), scaled(768))
"""A screen on which as much has room as on one of 1366 by 768 pixels at 96 dots per inch."""


class Display(str):
    """The name of a display, and the number of the process that serves it."""

    process: int


@contextmanager
def display_server(depth: int = 24, size: tuple[int, int] = SIZE, dpi: int = DPI, *options: str) -> Iterator[Display]:
    """An Xvfb with a free number."""
    reading, writing = os.pipe()
    screen = ["-screen", "0", f"{size[0]}x{size[1]}x{depth}", "-dpi", str(dpi)]
    command = ["Xvfb", "-displayfd", str(writing), *screen, "-nolisten", "tcp", *options]
    server = subprocess.Popen(command, pass_fds=[writing], stderr=subprocess.DEVNULL)
    os.close(writing)
    try:
        with os.fdopen(reading) as numbers:
            display = Display(f":{numbers.readline().strip()}")
        display.process = server.pid
        yield display
    finally:
        server.terminate()
        server.wait()


@contextmanager
def own_display(depth: int = 24, size: tuple[int, int] = SIZE, dpi: int = DPI) -> Iterator[str]:
    """An Xvfb with a free number, named in DISPLAY meanwhile; where there is none, the display at hand (may be "").

    One of our own so that what runs side by side does not take the keyboard from each other, nor from the user, and finds the
    same room whatever the user's screen is like.
    """
    before = os.environ.get("DISPLAY", "")
    if shutil.which("Xvfb") is None:
        yield before
        return
    with display_server(depth, size, dpi) as own:
        os.environ["DISPLAY"] = own
        try:
            yield own
        finally:
            os.environ.pop("DISPLAY")
            if before:
                os.environ["DISPLAY"] = before
