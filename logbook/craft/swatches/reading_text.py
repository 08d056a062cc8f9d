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

_LONG_KINDS = r"(?:single|(?:half[\s-]+)?double)[\s-]+crochets?|(?:(?:half|double|triple)[\s-]+)?trebles?(?:[\s-]+crochets?)?"
KINDS = rf"(?:(?:f?sc|hdc|htr|dc|dtr|trtr|qtr|tr)s?|{_LONG_KINDS})"
ROW_REPEATS = r"(?:row|rnd|round)[\s-]*(?:repeats?|reps?)"
ROWS = r"rows?|rnds?|rounds?|rs?"
REPEATS = (
    r"(?:(?:pattern|patt?\.?|stitch|full|whole|complete)\s+)*(?:repeats?|reps?\.?)(?:\s+of\s+(?:the\s+)?(?:pattern|patt?\.?))?"
)
STITCHES = rf"(?:{KINDS}\s+)?(?:stit?ch(?:es)?|sts?\.?)|s|{KINDS}"
GAUGE_LENGTHS = {Units.CM: "10", Units.INCHES: "4"}
"""The length a gauge is counted over, as it is typed."""
ALIKE = 0.03
"""Two lengths said for one (10 cm / 4 in) are apart by no more than this part."""

_COUNTED = rf"(?:{ROW_REPEATS}|{ROWS}|{REPEATS}|{STITCHES})(?![a-z])"
_WORKED_IN = rf"(?:\s+(?:in|of)\s+(?:{KINDS}|patt(?:ern)?)(?![a-z]))?"
_HOW = r"(?:\s+(?:wide|high|tall|deep|long)(?![a-z])|\s+across(?=\s*[=:]))?"
_COUNT = rf"(?P<n>{NUMBER})\s*(?P<what>{_COUNTED}){_WORKED_IN}{_HOW}(?:\s*\(\s*{NUMBER}\s*(?:{STITCHES})\s*\))?"
_WHOLE = r"(?![.,]?\d|\s*[¼½¾⅛⅜⅝⅞⅓⅔]|\s+\d+\s*/\s*\d)"
"""After a number: it is not the beginning of another."""
_NO_UNIT = rf"(?!\s*{UNIT}(?!\s*\d))"
_JOIN = r"\s*(?P<join>x|×|\*|and|&|\+|by|,|/)\s*"
_COUNTS = (
    rf"(?:{_COUNT}(?:{_JOIN}(?P<n2>{NUMBER}){_WHOLE}\s*(?:(?P<what2>{_COUNTED}){_HOW}|{_NO_UNIT}))?"
    rf"|(?P<n3>{NUMBER})\s*(?:x|×|\*)\s*(?P<n4>{NUMBER}){_WHOLE}{_NO_UNIT})"
)
_COUNTING = r"in|over|across|per|to|/|on|for|within|@"
_SPANNING = r"=|:|≈|~|→|->|-|–|reach(?:es)?|measure[sd]?|makes?|gives?|equals?|comes?\s+to|is|are"
_ABOUT = r"(?:(?:approx(?:imately|\.)?|about|around|roughly|ca?\.)\s*)?"
_BETWEEN = rf"\s*(?P<between>(?:{_COUNTING}|{_SPANNING})(?![a-z])|)\s*(?:an?\s+)?{_ABOUT}"
_ALSO = rf"\s*(?:/|\(|\[|or|x|×|by)\s*{NUMBER}\s*(?:{UNIT})?\s*[)\]]?"
_LENGTH = rf"(?P<length>{NUMBER})\s*(?P<unit>{UNIT})?(?P<also>(?:{_ALSO}){{0,3}})\s*(?:sq(?:uared?|\.)?(?![a-z])|²)?"
_TAPE = rf"(?:\s*\(?\s*to\s+(?:the\s+)?(?P<fine>{NUMBER})?\s*(?P<fine_unit>{UNIT})\s*\)?)?"
_BESIDE = (
    r"in|with|using|on|over|after|before|measured|worked|when|wide|high|tall|deep|long|across|"
    r"(?:un)?(?:blocked|washed)"
)
_TAIL = rf"(?:(?:\s*,\s*|\s*\((?=[a-z\s]+\))|\s+(?=(?:{_BESIDE})(?![a-z])))(?!.*{NUMBER}\s*{_COUNTED})[^=]*[a-z]{{2}}[^=]*)?"
_HEAD = rf"\s*(?:(?:gauge|tension)\s*[:=]?\s*)?(?:(?:in\s+|over\s+)?(?:{KINDS}|patt(?:ern)?\.?)\s*[:,]\s*)?{_ABOUT}"
_ONE = r"(?P<each>per|/|(?:in|to)\s+(?:the|an?)|an?)"
_FORWARD = rf"{_HEAD}{_COUNTS}(?:{_BETWEEN}{_LENGTH}|\s*{_ONE}\s*(?P<one>{UNIT}))?{_TAPE}{_TAIL}\s*\.?\s*\Z"
_BACKWARD = rf"{_HEAD}(?:(?:over|in|per|to)\s+)?{_LENGTH}(?!(?<=\d)[\d.,]){_BETWEEN}{_COUNTS}{_TAIL}\s*\.?\s*\Z"
_NEXT = rf"(?:,|\band\b|&|\+|/)\s*(?={NUMBER}\s*{_COUNTED})"
_ANOTHER = rf"(?P<joint>/|\(|\[|or|x|×|by)\s*(?P<number>{NUMBER})\s*(?P<unit>{UNIT})?"
_LENGTH_ALONE = rf"[(\[]\s*({NUMBER}\s*(?:{UNIT})?)\s*[)\]](?=\s*\Z)"


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
        if _read(typed) is None:
            typed = re.sub(_LENGTH_ALONE, r"= \1", typed, flags=re.IGNORECASE)  # 22 rows (11.3 cm)
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
    if not length and said["join"] == "/" and not said["what2"] and said["n2"] == GAUGE_LENGTHS[units]:
        counts, length = counts[:1], said["n2"]  # 16 sts/10
        return WrittenReading(counts, True, length, "", None, found.end("n2"))
    if not length and said["join"] == "/" and not said["what2"]:
        return _after_a_slash(typed, said, found.end("n2"), units)
    if not length and not said.get("one") and len(counts) == 1:
        raise UnreadableError(_what_was_read(typed, units))
    unit = _said_alike(typed, (length, unit), said["also"] or "", units)
    between = (said["between"] or said.get("each") or "").lower()
    fine = (said["fine"] or "", said["fine_unit"]) if said.get("fine_unit") else None
    end = found.end("unit") if said["unit"] else found.end("length")
    return WrittenReading(counts, re.fullmatch(_COUNTING, between) is not None or bool(said.get("one")), length, unit, fine, end)


def _after_a_slash(typed: str, said: dict[str, str], end: int, units: Units) -> WrittenReading:
    """``16 sts/20`` are stitches and rows, ``22 rows/15.1`` a length. Raises UnreadableError where it may be either."""
    count, number = (said["n"], said["what"]), said["n2"]
    if not re.fullmatch(STITCHES, said["what"], re.IGNORECASE):
        return WrittenReading((count,), True, number, "", None, end)
    if not number.isdecimal():
        length = f"= {number} {units.value}"
        raise UnreadableError(f"“{typed[:60]}”: is {number} a length or rows? Write “{length}” or “x {number} rows”.")
    return WrittenReading((count, (number, "rows")), False, "", "", None, end)


def _read(typed: str, *, whole: bool = False) -> re.Match[str] | None:
    """The reading in ``typed``; ``whole``: with its length."""
    if len(typed) > _LONGEST:
        return None
    found = next((match for pattern in (_FORWARD, _BACKWARD) if (match := re.match(pattern, typed, re.IGNORECASE))), None)
    return None if found and whole and not (found["length"] or found.groupdict().get("one")) else found


def _said_alike(typed: str, first: tuple[str, str], also: str, units: Units) -> str:
    """The unit of the first length, which in ``10 x 10 cm`` is that of the second.

    Raises UnreadableError if the other lengths are no ways of saying the same.
    """
    lengths = [("", *first)]
    lengths += [
        (more["joint"].lower(), more["number"], more["unit"] or "") for more in re.finditer(_ANOTHER, also, re.IGNORECASE)
    ]
    for at in range(len(lengths) - 2, -1, -1):
        (joint, number, unit), (following, _, its) = lengths[at : at + 2]
        if not unit and following in ("x", "×", "by"):
            lengths[at] = (joint, number, its)
    if len(lengths) > 1:
        one, *more = (Fraction(read_number(number)) * unit_mm(unit, units) for _, number, unit in lengths)
        if not one or any(abs(other / one - 1) > ALIKE for other in more):
            raise UnreadableError(f"“{typed[:60]}” names two different lengths: leave one of them out.")
    return lengths[0][2]


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
