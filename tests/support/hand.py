"""A real hand: pointer and keys through the X server, on a screen of its own with a window manager on it.

Nothing here knows a widget. What the hand does reaches the program as what a user does, with the window manager in between.
"""

import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from tests.support.display import DPI, SIZE, Display, display_server

TOOLS = ("Xvfb", "openbox", "xdotool", "stdbuf")
LEFT, MIDDLE, RIGHT, WHEEL_UP, WHEEL_DOWN, WHEEL_LEFT, WHEEL_RIGHT = range(1, 8)
MANAGER = """<?xml version="1.0"?>
<openbox_config xmlns="http://openbox.org/3.4/rc">
<focus><focusNew>yes</focusNew></focus>
<placement><policy>Smart</policy></placement>
<theme><name>Clearlooks</name><titleLayout>NLC</titleLayout></theme>
<desktops><number>1</number></desktops>
<keyboard><keybind key="A-F4"><action name="Close"/></keybind></keyboard>
<mouse>
<context name="Client">
<mousebind button="Left" action="Press"><action name="Focus"/><action name="Raise"/></mousebind>
<mousebind button="Right" action="Press"><action name="Focus"/><action name="Raise"/></mousebind>
</context>
<context name="Titlebar">
<mousebind button="Left" action="Press"><action name="Focus"/><action name="Raise"/></mousebind>
<mousebind button="Left" action="Drag"><action name="Move"/></mousebind>
<mousebind button="Left" action="DoubleClick"><action name="ToggleMaximize"/></mousebind>
</context>
<context name="Close"><mousebind button="Left" action="Click"><action name="Close"/></mousebind></context>
</mouse>
</openbox_config>
"""
"""Ways of the window manager that are the same wherever it runs: the keyboard follows a click, a double click on the title takes
all of the screen or gives it back, Alt+F4 closes."""


def missing() -> list[str]:
    """What a hand needs and this machine lacks."""
    return [tool for tool in TOOLS if shutil.which(tool) is None]


@contextmanager
def managed_screen(folder: Path, size: tuple[int, int] = SIZE) -> Iterator[Display]:
    """A display with a window manager on it; ``folder`` gets its files, the picture of the screen among them."""
    rules = folder / "openbox.xml"
    rules.write_text(MANAGER, "utf-8")
    # A server that has lost its last client would begin anew, and the manager with it.
    with display_server(24, size, DPI, "-noreset", "-fbdir", str(folder)) as display:
        env = os.environ | {"DISPLAY": display, "XDG_CACHE_HOME": str(folder)}
        command = ["openbox", "--sm-disable", "--config-file", str(rules)]
        manager = subprocess.Popen(command, env=env, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        try:
            while subprocess.run(["xdotool", "get_num_desktops"], env=env, capture_output=True).returncode:
                assert manager.poll() is None, "the window manager has ended"
            yield display
        finally:
            manager.terminate()
            manager.wait()


@pytest.fixture(scope="session")
def real_hand() -> None:
    """Where a hand can't be had the test is skipped."""
    if lacking := missing():
        pytest.skip(f"a real hand needs {' and '.join(lacking)}")


@pytest.fixture(scope="session")
def hands_screen(real_hand: None, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """A display with a window manager."""
    with managed_screen(tmp_path_factory.mktemp("screen")) as display:
        yield display


class Hand:
    """Moves the pointer and presses buttons and keys on one display; each call returns when the X server has it."""

    def __init__(self, display: str) -> None:
        self._env = env = os.environ | {"DISPLAY": display}
        command = ["stdbuf", "-oL", "xdotool", "-"]
        self._tool = subprocess.Popen(
            command, env=env, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
        )
        assert self._tool.stdin is not None
        assert self._tool.stdout is not None
        self._say, self._heard = self._tool.stdin, self._tool.stdout

    def move(self, x: int, y: int) -> None:
        self._do(f"mousemove {x} {y}")

    def click(self, x: int, y: int, button: int = LEFT, times: int = 1) -> None:
        self._do(f"mousemove {x} {y}", *[f"mousedown {button}", f"mouseup {button}"] * times)

    def two_clicks(self, x: int, y: int, then_x: int, then_y: int) -> None:
        """On two places, in a hurry."""
        self._do(
            *(line for at in ((x, y), (then_x, then_y)) for line in ("mousemove {} {}".format(*at), "mousedown 1", "mouseup 1"))
        )

    def click_and_key(self, x: int, y: int, name: str) -> None:
        """The key before what the click does can be seen."""
        self._do(f"mousemove {x} {y}", "mousedown 1", "mouseup 1", f"key --delay 0 {name}")

    def press(self, x: int, y: int) -> None:
        """The left button goes down, and stays so until ``let_go``."""
        self._do(f"mousemove {x} {y}", "mousedown 1")

    def let_go(self) -> None:
        self._do("mouseup 1")

    def drag(self, x: int, y: int, to_x: int, to_y: int) -> None:
        halfway = f"mousemove {(x + to_x) // 2} {(y + to_y) // 2}"
        self._do(f"mousemove {x} {y}", "mousedown 1", halfway, f"mousemove {to_x} {to_y}", "mouseup 1")

    def wheel(self, x: int, y: int, button: int = WHEEL_DOWN, notches: int = 1, holding: str = "") -> None:
        turns = [f"mousedown {button}", f"mouseup {button}"] * notches
        held = [f"keydown {holding}", *turns, f"keyup {holding}"] if holding else turns
        self._do(f"mousemove {x} {y}", *held)

    def key(self, *names: str) -> None:
        """Names of keys such as ``ctrl+s`` or ``Tab``."""
        self._do(*(f"key --delay 0 {name}" for name in names))

    def type(self, text: str) -> None:
        assert "'" not in text, "the tool has no way to say it"
        self._do(f"type --delay 0 -- '{text}'")

    def resize_active(self, width: int, height: int) -> None:
        """As the edge of the window that has the keyboard, drawn by the pointer, would."""
        # Not by the tool that stays: it would keep the window in mind, and send it all further keys.
        subprocess.run(["xdotool", "getactivewindow", "windowsize", str(width), str(height)], env=self._env, check=True)

    def take_away(self) -> None:
        self._say.close()
        self._tool.wait()
        self._heard.close()

    def _do(self, *lines: str) -> None:
        self._say.write("\n".join([*lines, "getdisplaygeometry"]) + "\n")
        self._say.flush()
        assert self._heard.readline(), f"the hand is gone: {lines}"
