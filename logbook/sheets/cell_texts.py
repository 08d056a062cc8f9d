"""The texts and whole numbers in the parts of a workbook, as its XML has them."""

import re

from logbook.sheets.zip_parts import DamagedZipError

_ESCAPED = re.compile(r"_x([0-9A-Fa-f]{4})_")
_WHOLE = re.compile(r"[0-9]{1,10}\Z")


class GatheredTexts:
    """Gathers the text of ``t`` elements, but for those in ``rPh``: they only tell how the text is said aloud."""

    def __init__(self) -> None:
        self._pieces: list[str] = []
        self._inside = self._aloud = False
        self.starts = {"t": lambda _: self._turn(not self._aloud, self._aloud), "rPh": lambda _: self._turn(False, True)}
        self.ends = {"t": lambda: self._turn(False, self._aloud), "rPh": lambda: self._turn(False, False)}

    def _turn(self, inside: bool, aloud: bool) -> None:
        self._inside, self._aloud = inside, aloud

    def clear(self) -> None:
        """Begins anew."""
        self._pieces.clear()
        self._inside = self._aloud = False

    def text(self, piece: str) -> None:
        """Takes characters, wherever they stand."""
        if self._inside:
            self._pieces.append(piece)

    def joined(self) -> str:
        """All of it, unescaped."""
        return unescaped("".join(self._pieces))


def unescaped(text: str) -> str:
    """``text`` with ``_x000D_`` and its like turned into the characters they stand for, and LF line ends."""
    plain = _ESCAPED.sub(lambda found: chr(int(found[1], 16)), text) if "_x" in text else text
    return plain.replace("\r\n", "\n").replace("\r", "\n")


def whole_number(text: str) -> int:
    """A number, a row or an index as a part has it. Raises DamagedZipError for anything else."""
    if not _WHOLE.match(text):
        raise DamagedZipError(f"“{text[:20]}” stands where a whole number belongs")
    return int(text)
