"""How a reading is written: ``16 sts = 10 cm / 4 in``, ``22 rows 11.3``, ``10 cm = 16 sts``, ``16 sts & 20 rows over 4"``.

Only the words are taken apart here; what they mean is ``readings.py``'s. Text that can't be read whole is refused by saying which
part of it was read and which was not.
"""

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from logbook.craft.words.lengths import UNIT, Units, unit_mm
from logbook.craft.words.numbers import NUMBER, read_number
from logbook.errors import UnreadableError

KINDS = r"(?:f?sc|hdc|htr|dc|dtr|trtr|qtr|tr)s?"
ROW_REPEATS = r"(?:row|rnd|round)[\s-]*(?:repeats?|reps?)"
ROWS = r"rows?|rnds?|rounds?|rs?"
REPEATS = r"(?:pattern\s+|patt?\.?\s+|stitch\s+)?(?:repeats?|reps?\.?)"
STITCHES = rf"stitch(?:es)?|sts?\.?|s|{KINDS}"
ALIKE = 0.03
"""Two lengths said for one (10 cm / 4 in) are apart by no more than this part."""

_COUNTED = rf"(?:{ROW_REPEATS}|{ROWS}|{REPEATS}|{STITCHES})(?![a-z])"
_COUNT = rf"(?P<n>{NUMBER})\s*(?P<what>{_COUNTED})(?:\s*\(\s*{NUMBER}\s*(?:{STITCHES})\s*\))?"
_NO_UNIT = rf"(?!\s*{UNIT}(?!\s*\d))"
_JOIN = r"\s*(?:x|×|\*|and|&|\+|by|,|/)\s*"
_COUNTS = (
    rf"(?:{_COUNT}(?:{_JOIN}(?P<n2>{NUMBER})(?!\d)\s*(?:(?P<what2>{_COUNTED})|{_NO_UNIT}))?"
    rf"|(?P<n3>{NUMBER})\s*(?:x|×|\*)\s*(?P<n4>{NUMBER})(?!\d){_NO_UNIT})"
)
_COUNTING = r"in|over|across|per|to|/|on|for"
_SPANNING = r"=|:|≈|~|-|–|reach(?:es)?|measures?|makes?|gives?|equals?|is|are"
_BETWEEN = rf"\s*(?P<between>(?:{_COUNTING}|{_SPANNING})(?![a-z])|)\s*(?:an?\s+)?"
_SAME = rf"(?:\s*(?P<joint>/|\(|\[|or|x|×|by)\s*(?P<length2>{NUMBER})\s*(?P<unit2>{UNIT})?\s*[)\]]?)?"
_LENGTH = rf"(?P<length>{NUMBER})\s*(?P<unit>{UNIT})?{_SAME}\s*(?:sq(?:uared?|\.)?(?![a-z])|²)?"
_TAPE = rf"(?:\s*\(?\s*to\s+(?:the\s+)?(?P<fine>{NUMBER})?\s*(?P<fine_unit>{UNIT})\s*\)?)?"
_TAIL = rf"(?:(?:\s*,\s*|\s+(?:in|with|using|on)\s+)(?!.*{NUMBER}\s*{_COUNTED})[^=]*[a-z]{{2}}[^=]*)?"
_HEAD = r"\s*(?:(?:gauge|tension)\s*[:=]?\s*)?"
_FORWARD = rf"{_HEAD}{_COUNTS}(?:{_BETWEEN}{_LENGTH}|\s*(?P<each>per|/|an?)\s*(?P<one>{UNIT}))?{_TAPE}{_TAIL}\s*\.?\s*\Z"
_BACKWARD = rf"{_HEAD}(?:over\s+)?{_LENGTH}(?!(?<=\d)[\d.,]){_BETWEEN}{_COUNTS}{_TAIL}\s*\.?\s*\Z"
_NEXT = rf"(?:,|\band\b|&|\+)\s*(?={NUMBER}\s*{_COUNTED})"


_LONGEST = 200
_PARTS = rf"{_HEAD}(?P<count>{NUMBER}\s*{_COUNTED})?{_BETWEEN}(?P<length>{NUMBER}\s*{UNIT})?\s*(?P<rest>.*)\Z"


class WrittenReading(NamedTuple):
    """A reading taken apart: (number, word of what was counted) once or twice, the word "" where none was written.

    ``counting``: the word between is one of counting (in, over, per …). ``length`` and ``unit`` are as typed, "" if not said;
    ``fine``: how finely the tape was read, as typed, None if not said. ``end`` is where the length ends in the text.
    """

    counts: tuple[tuple[str, str], ...]
    counting: bool
    length: str
    unit: str
    fine: tuple[str, str] | None
    end: int


def readings_apart(text: str) -> Iterator[str]:
    """The readings of a text, parted by ``;``, line breaks, or a comma or "and" after which something is counted anew."""
    for part in re.split(r"[;\n]", text):
        typed = " ".join(part.split())
        begin = 0
        for joint in re.finditer(_NEXT, typed[:_LONGEST], re.IGNORECASE):
            if _read(typed[begin : joint.start()], whole=True) and _read(typed[joint.end() :], whole=True):
                yield typed[begin : joint.start()].strip()
                begin = joint.end()
        if typed[begin:]:
            yield typed[begin:]


def taken_apart(typed: str, units: Units) -> WrittenReading:
    """One reading, ``typed`` on one line. Raises UnreadableError naming the part that was not read."""
    found = _read(typed)
    if found is None:
        raise UnreadableError(_what_was_read(typed, units))
    said = found.groupdict()
    counts: tuple[tuple[str, str], ...]
    if said["n3"]:
        counts = ((said["n3"], "sts"), (said["n4"], "rows"))
    else:
        counts = ((said["n"], said["what"]), *([(said["n2"], said["what2"] or "rows")] if said["n2"] else []))
    length, unit = said["length"] or "", said["unit"] or said.get("one") or ""
    if not length and not said.get("one") and len(counts) == 1:
        raise UnreadableError(_what_was_read(typed, units))
    if said["length2"]:
        unit = unit or (said["unit2"] if said["joint"].lower() in ("x", "×", "by") else "") or ""
        _require_alike(typed, (length, unit), (said["length2"], said["unit2"] or ""), units)
    between = (said["between"] or said.get("each") or "").lower()
    fine = (said["fine"] or "", said["fine_unit"]) if said.get("fine_unit") else None
    end = found.end("unit") if said["unit"] else found.end("length")
    return WrittenReading(counts, re.fullmatch(_COUNTING, between) is not None or bool(said.get("one")), length, unit, fine, end)


def _read(typed: str, *, whole: bool = False) -> re.Match[str] | None:
    """The reading in ``typed``; ``whole``: with its length."""
    if len(typed) > _LONGEST:
        return None
    found = next((match for pattern in (_FORWARD, _BACKWARD) if (match := re.match(pattern, typed, re.IGNORECASE))), None)
    return None if found and whole and not (found["length"] or found.groupdict().get("one")) else found


def _require_alike(typed: str, first: tuple[str, str], second: tuple[str, str], units: Units) -> None:
    """Raises UnreadableError if two lengths are no two ways of saying one."""
    one, other = (Fraction(read_number(number)) * unit_mm(unit, units) for number, unit in (first, second))
    if not one or abs(other / one - 1) > ALIKE:
        raise UnreadableError(f"“{typed[:60]}” names two different lengths: leave one of them out.")


def _what_was_read(typed: str, units: Units) -> str:
    length = "10 cm" if units is Units.CM else "4 in"
    shown, found = typed[:60], re.match(_PARTS, typed, re.IGNORECASE)
    if found is None or not found["count"]:
        number = re.match(rf"{_HEAD}({NUMBER})\s*(\S.*)?\Z", typed, re.IGNORECASE)
        if number is None:
            return f"Couldn't read “{shown}”: try “16 sts = {length}”."
        rest = f", but not “{number[2][:40]}”" if number[2] else ""
        return (
            f"“{shown}”: read “{number[1].strip()}”{rest}. Say what was counted, like “16 sts = {length}” or “22 rows = 15 cm”."
        )
    read = typed[: found.start("rest")].strip()
    if found["length"]:
        return f"“{shown}”: read “{read}”, but not “{found['rest'][:40]}”. Leave that out, or put it into the notes."
    if not found["rest"]:
        return f"“{shown}”: read “{found['count']}”, but not over what length. Add it, like “{found['count']} = {length}”."
    rest = typed[found.end("count") :].strip()[:40]
    return f"“{shown}”: read “{found['count']}”, but not “{rest}”. Write the length there, like “{found['count']} = {length}”."
