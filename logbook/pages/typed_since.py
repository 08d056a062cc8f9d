"""What is typed while a save waits, which the saved record knows nothing of: it is a change of its own."""

from collections.abc import Mapping

MEANWHILE = "What you typed in the meantime is not saved yet."


def typed_since(before: Mapping[str, str], now: Mapping[str, str]) -> dict[str, str]:
    """The texts of a form that are not any more what they were when saving began."""
    return {key: text for key, text in now.items() if text != before[key]}
