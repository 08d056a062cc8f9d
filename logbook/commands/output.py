"""What a command writes to its two streams."""

import json
import re
from typing import Any, TextIO

_CONTROLS = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f]")


def print_json(value: Any) -> None:
    """One JSON value on standard output."""
    text = json.dumps(value, ensure_ascii=False, indent=2)
    print(_CONTROLS.sub(lambda found: f"\\u{ord(found[0]):04x}", text))


def print_text(text: str, file: TextIO | None = None, end: str = "\n") -> None:
    """A text on standard output, or ``file``. What would steer the terminal is spelled out: names and notes may hold anything."""
    print(_CONTROLS.sub(lambda found: f"\\x{ord(found[0]):02x}", text), file=file, end=end)
