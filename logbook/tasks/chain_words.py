"""An option of a starting chain in a maker's words."""

from logbook.craft.gauges.washing import Washing
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import Units, show_difference, show_length


def repeats_words(repeats: float, multiple: int) -> str:
    """``12 repeats, ``, or "" for plain stitches, where a repeat is a stitch."""
    if multiple == 1:
        return ""
    return f"{counted(repeats, 'repeat')}, "


def begin_words(chain: int | None, *, foundation_stitches: bool) -> str:
    """``Chain 74``, or ``74 foundation stitches``, which make chain and row 1 in one."""
    return f"{chain} foundation stitches" if foundation_stitches else f"Chain {chain}"


WIDE = ("wider than asked", "narrower than asked", "as wide as asked")
LONG = ("longer than asked", "shorter than asked", "as long as asked")


def apart_words(difference_mm: float, units: Units, words: tuple[str, str, str] = WIDE) -> str:
    """``0.5 cm wider than asked``, or ``as wide as asked`` where it rounds to nought."""
    more, less, same = words
    shown = show_difference(difference_mm, units)
    if not shown.startswith(("+", "−")):
        return same
    return f"{shown[1:]} {more if difference_mm > 0 else less}"


def sureness_words(swatch_mm: float | None, piece_mm: float | None, units: Units, washing: Washing) -> str:
    """``the swatch says give or take 1.2 cm, a whole piece usually 2.8 cm``, or why that is not known."""
    if washing is Washing.UNKNOWN:
        return "accuracy unknown until washed and measured"
    if swatch_mm is None or piece_mm is None:
        return "accuracy unknown: the count is too coarse to tell"
    return f"the swatch says give or take {show_length(swatch_mm, units)}, a whole piece usually {show_length(piece_mm, units)}"
