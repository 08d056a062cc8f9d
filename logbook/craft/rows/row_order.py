"""Rows put in order: those between rows that are written out, numbers from 1, and what is missing or comes twice."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from logbook.craft.rows.instructions import Fault
from logbook.craft.rows.lines import MOST_ROWS, called
from logbook.craft.rows.row_words import ReadRow


def filled(rows: list[ReadRow], every: Iterable[tuple[str, ReadRow]]) -> list[ReadRow]:
    """``Row 2 and all even rows``: with the even rows between those that are written out. ``every``: which, and as what row."""
    written = {row.number for row in rows}
    highest = max(written, default=0)
    found = list(rows)
    for which, row in every:
        step = 1 if which in ("following", "remaining", "subsequent") else 2
        for number in range(row.number + step, highest + 1, step):
            if number not in written:
                found.append(ReadRow(replace(row.part, name=called(row.part, number)), number, row.words))
                written.add(number)
    return found


def numbered_from_1(rows: list[ReadRow]) -> list[ReadRow]:
    """Set-up rows are number 0, if row 1 follows; else the first row is row 1."""
    if len(rows) > 1 and rows[0].number == 0 and rows[1].number == 2:
        return [replace(rows[0], number=1), *rows[1:]]
    if len(rows) > 1 and rows[0].number == 0 and not rows[1].part.numbers:
        return [replace(row, number=row.number + 1) for row in rows]
    return rows


def in_order(rows: list[ReadRow], faulty: set[int]) -> tuple[list[ReadRow], list[Fault]]:
    """The rows in order, no more than are looked at, and a fault for each that is missing or comes twice; rows that are
    ``faulty`` anyway are not named again.
    """
    faults = list(_come_twice(rows))
    found = sorted(rows, key=lambda row: row.number)
    if len(found) > MOST_ROWS:
        faults.append(Fault(MOST_ROWS + 1, f"Only the first {MOST_ROWS} rows are looked at.", found[MOST_ROWS].part.span))
        del found[MOST_ROWS:]
    faulty = faulty | {fault.row for fault in faults}
    before = 0
    for row in found:
        if row.number not in (before + 1, 0 if before == 0 else before + 1) and row.number not in faulty:
            faults.append(_order_fault(row, before))
        before = row.number
    return found, faults


def _come_twice(rows: list[ReadRow]) -> Iterator[Fault]:
    several = {row.number for row in rows if len(row.part.numbers) > 1}
    alone = 0
    for row in rows:
        if row.number not in several and row.part.numbers == (row.number,):
            if row.number <= alone:
                yield _order_fault(row, alone)
            alone = row.number


def _order_fault(row: ReadRow, before: int) -> Fault:
    says = f"Row {row.number} comes after row {before}." if before else f"The rows begin with row {row.number}."
    says += " Number the rows one after the other, or write the missing one."
    return Fault(row.number, says, row.part.span)
