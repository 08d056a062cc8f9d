"""How many rows make a length.

    R = r0 + r·j + r1        H = R·p_row + ends

r0 set-up rows worked once, j groups of r rows that repeat, r1 closing rows; the ends are edgings and the foundation chain's own
4 mm. The options (see ``options``) are the whole j around the exact one; one may stop inside a group only where
the pattern says so.
"""

from dataclasses import dataclass

from logbook.craft.pieces.options import Choose, Count, Option, Parity, Pitch, options_for, whole_around
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.errors import RefusedError

FOUNDATION_MM = 4.0
"""Height of a foundation chain of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowRule:
    """How a row count comes of j groups, and whether the last row must be odd (right side) or even (wrong side).

    ``any_row``: the pattern lets one stop after any row; ``row_shares`` are then the heights of the group's rows relative to
    each other, if the pattern gives them (their mean counts as one row).
    """

    set_up: int = 0
    in_repeat: int = 1
    closing: int = 0
    parity: Parity = Parity.ANY
    choose: Choose = Choose.NEAREST
    any_row: bool = False
    row_shares: tuple[float, ...] = ()

    @staticmethod
    def of(pattern: StitchPattern) -> "RowRule":
        """What the pattern says of whole groups."""
        return RowRule(set_up=pattern.set_up_rows or 0, in_repeat=pattern.rows_in_repeat or 1, closing=pattern.closing_rows or 0)


def row_counts(target_mm: float, height: Pitch, rule: RowRule) -> tuple[Option, ...]:
    """The options for a length of ``target_mm``, shortest first, just one recommended.

    Raises RefusedError if the target is not above nought or no row count can be as the rule wants it.
    """
    if not target_mm > 0:
        raise RefusedError("The length must be more than 0.")
    if rule.in_repeat < 1 or rule.set_up < 0 or rule.closing < 0:
        raise RefusedError("The rows in a repeat must be at least 1; set-up and closing rows at least 0.")
    if rule.row_shares and (len(rule.row_shares) != rule.in_repeat or min(rule.row_shares) <= 0):
        raise RefusedError(f"Give the heights of all {rule.in_repeat} rows in a repeat, each more than 0.")
    beside = rule.set_up + rule.closing
    rows = _counts_around((target_mm - height.ends_mm) / height.mm, rule)
    counts = [Count(number, (number - beside) // rule.in_repeat, _stacked(number, rule)) for number in rows]
    return options_for(target_mm, height, counts, rule.choose)


def _counts_around(exact_rows: float, rule: RowRule) -> list[int]:
    beside = rule.set_up + rule.closing
    if rule.any_row and rule.row_shares:
        return _counts_by_height(exact_rows, rule)
    step = 1 if rule.any_row else rule.in_repeat
    if rule.parity is Parity.ANY:
        return [beside + step * j for j in whole_around((exact_rows - beside) / step, least=1)]
    first = next((n for n in (1, 2) if rule.parity.fits(beside + step * n)), None)
    if first is None:
        raise RefusedError(
            f"A pattern with {beside} set-up and closing rows and {step} in a repeat never ends on an {rule.parity} row: "
            "leave that out, or change the pattern's rows."
        )
    start = beside + step * first
    stride = step * 2 if step % 2 else step  # groups of an even number of rows never change the parity
    return [start + stride * j for j in whole_around((exact_rows - start) / stride, least=0)]


def _counts_by_height(exact_rows: float, rule: RowRule) -> list[int]:
    """Where a group's rows differ in height, the rows that end on both sides of the exact height, and one more each way.

    Inside a group the height strays from the row count by less than the group, so the search goes two groups either way.
    """
    least, near = rule.set_up + rule.closing + 1, round(exact_rows)
    reach = 2 * rule.in_repeat + 2
    rows = [n for n in range(max(least, near - reach), max(least, near) + reach) if rule.parity.fits(n)]
    below = [n for n in rows if _stacked(n, rule) <= exact_rows]
    return below[-2:] + rows[len(below) : len(below) + 2]


def _stacked(rows: int, rule: RowRule) -> float:
    """The height of ``rows`` rows in mean rows: inside a group the single rows may differ."""
    grouped = rows - rule.set_up - rule.closing
    inside = grouped % rule.in_repeat
    if not inside or not rule.row_shares:
        return rows
    mean = sum(rule.row_shares) / rule.in_repeat
    return rows - inside + sum(rule.row_shares[:inside]) / mean
