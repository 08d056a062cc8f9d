"""What is said under a field."""

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Message:
    """A sentence under a field: an error keeps the form from being saved, a warning does not."""

    text: str
    kind: Literal["error", "warning", "good", "hint"]
