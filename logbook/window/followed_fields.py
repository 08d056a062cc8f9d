"""The fields of a form as they are typed in and left: what is wrong with one is said when it was left, not while one types."""

from collections.abc import Callable, Iterable, Mapping

from logbook.window.field import LabelledField


class FollowedFields:
    """Fields by the names of their texts. ``typed`` gets the name of one in which the user has typed, ``left`` of one that the
    keyboard has left."""

    def __init__(self, typed: Callable[[str], object], left: Callable[[str], object]) -> None:
        self.fields: dict[str, LabelledField] = {}
        self._on_typed, self._on_left = typed, left
        self._showing = False
        self._leaving = ""
        self._left: set[str] = set()
        self._lacking: Mapping[str, str] = {}

    def follow(self, key: str, field: LabelledField) -> LabelledField:
        """Keeps a field that was made."""
        self.fields[key] = field
        field.variable.trace_add("write", lambda *_: self._typed(key))
        field.input.bind("<FocusOut>", lambda _: self._leave(key), add="+")
        return field

    def show(self, texts: Mapping[str, str]) -> None:
        """Puts these texts into the fields, which is not typing; where they stand already the cursor stays."""
        self._showing = True
        for key, field in self.fields.items():
            if field.text != texts[key]:
                field.text = texts[key]
        self._showing = False

    def begin(self) -> None:
        """Another record is in the form: nothing is at fault yet."""
        self._left.clear()
        self._lacking = {}

    def lack(self, errors: Mapping[str, str]) -> None:
        """These stand in the way of saving, until something is typed there."""
        self._lacking = errors

    def leave(self, keys: Iterable[str]) -> None:
        """What is wrong with these is said from now on."""
        self._left.update(keys)

    def was_left(self, key: str) -> bool:
        """Whether the keyboard has left the field since something was typed in it."""
        return key in self._left

    def fault(self, key: str, error: str | None) -> str:
        """What is to be said to be wrong with a field: what stands in the way of saving, or once it was left its ``error``."""
        return self._lacking.get(key) or (error if key in self._left and error else "")

    def lacks(self, key: str) -> bool:
        """Whether it stands in the way of saving, as was said when that was tried."""
        return key in self._lacking

    def touched(self, key: str) -> None:
        """Something else stands there now."""
        if key != self._leaving:  # what is put in order when it is left was left nonetheless
            self._left.discard(key)
        self._lacking = {name: error for name, error in self._lacking.items() if name != key}

    def _typed(self, key: str) -> None:
        if not self._showing:
            self._on_typed(key)

    def _leave(self, key: str) -> None:
        self._left.add(key)
        self._leaving = key
        self._on_left(key)
        self._leaving = ""
