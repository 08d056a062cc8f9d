"""Answers as JSON (lengths in mm) and as text."""

import math
from collections.abc import Sequence
from typing import Any

from logbook.craft.gauges.over_length import number_over, over_length
from logbook.craft.gauges.washing import FinishedGauge
from logbook.craft.pieces.fit import Fit
from logbook.craft.pieces.options import Option
from logbook.craft.pieces.time_and_money import yarn_cost
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.words.lengths import Units, show_length, show_small
from logbook.craft.words.numbers import fixed
from logbook.tasks.chain import ChainAnswer
from logbook.tasks.find import FoundSwatch
from logbook.tasks.note_words import said
from logbook.tasks.pieces import PieceAnswer


def swatch_json(found: FoundSwatch) -> dict[str, Any]:
    """A swatch with its gauges."""
    swatch, pattern = found.swatch, found.swatch.pattern
    return {
        "uid": swatch.uid,
        "tag": swatch.tag,
        "date": swatch.date,
        "yarn": swatch.yarn.name if swatch.yarn else "",
        "colour": swatch.colour,
        "hook_mm": swatch.hook_mm,
        "stitch_pattern": pattern.name if pattern else "",
        "multiple": pattern.multiple if pattern else None,
        "plus": pattern.plus if pattern else None,
        "extra_chains": pattern.extra() if pattern else None,
        "gauges": [
            {
                "condition": condition.value,
                "direction": direction.value,
                "pitch_mm": gauge.pitch_mm,
                "give_or_take": gauge.give_or_take,
                "readings": gauge.readings,
            }
            for (condition, direction), gauge in found.gauges.items()
        ],
    }


def chain_json(answer: ChainAnswer) -> dict[str, Any]:
    """The answer of ``chain``; ``rows_options`` only for a piece worked sideways."""
    value: dict[str, Any] = {
        "repeat_mm": answer.repeat_mm,
        "stitch_mm": answer.stitch_mm,
        "gauge_give_or_take": answer.finished.give_or_take,
        "piece_give_or_take": answer.drift.give_or_take,
        "condition": answer.finished.condition.value,
        "washing": answer.finished.washing.value,
        "target_mm": answer.target_mm,
        "options": [_option_json(option) for option in answer.options],
    }
    if answer.rows:
        value["rows_options"] = [
            {
                "rows": row.count,
                "width_mm": row.mm,
                "difference_mm": row.difference_mm,
                "recommended": row.recommended,
            }
            for row in answer.rows
        ]
    value["notes"] = list(said(answer.notes))
    return value


def piece_json(answer: PieceAnswer, units: Units) -> dict[str, Any]:
    """The answer of ``piece``; ``give_or_take_mm`` is the width's."""
    numbers, length = answer.numbers, answer.numbers.length
    fit, yarn = numbers.fit, numbers.yarn
    stretched = fit is not None and fit.stretch_needed is not None
    return {
        "chain": numbers.chain,
        "stitches": numbers.stitches,
        "repeats": _plain(numbers.repeats),
        "edge_stitches": numbers.edge_stitches,
        "rows": numbers.rows,
        "width_mm": numbers.width.mm,
        "length_mm": length.mm if length else None,
        "give_or_take_mm": numbers.width.give_or_take_mm,
        "length_give_or_take_mm": length.give_or_take_mm if length else None,
        "before_washing_mm": {
            "width": numbers.width.before_washing_mm,
            "length": length.before_washing_mm if length else None,
        },
        "marks": [{"name": name, mark.direction.one: mark.at, "true_mm": mark.true_mm} for name, mark in numbers.marks.items()],
        "grams": yarn.grams if yarn else None,
        "balls": yarn.balls if yarn else None,
        "hours": numbers.time.hours if numbers.time else None,
        "hours_give_or_take": numbers.time.give_or_take_hours if numbers.time else None,
        "cost": yarn_cost(answer.gauges.yarn, yarn.balls if yarn else None),
        "currency": answer.gauges.yarn.currency or None,
        "stretch": _stretch_json(fit) if fit and stretched else None,
        "notes": list(said(answer.notes, units)),
    }


def _stretch_json(fit: Fit) -> dict[str, Any]:
    """``give``, ``share`` and ``verdict`` are null where the swatch was not pulled; ``share`` too where it gave nothing."""
    share = fit.share if fit.share is not None and math.isfinite(fit.share) else None
    return {"needed": fit.stretch_needed, "give": fit.give, "share": share, "verdict": fit.verdict}


def _plain(repeats: float) -> float:
    """A whole number as such."""
    return int(repeats) if float(repeats).is_integer() else repeats


def _option_json(option: Option) -> dict[str, Any]:
    return {
        "repeats": _plain(option.repeats),
        "stitches": option.count,
        "chain": option.chain,
        "width_mm": option.mm,
        "difference_mm": option.difference_mm,
        "gauge_give_or_take_mm": option.gauge_give_or_take_mm,
        "give_or_take_mm": option.give_or_take_mm,
        "before_washing_mm": option.before_washing_mm,
        "recommended": option.recommended,
    }


def table(headings: Sequence[str], rows: Sequence[Sequence[str]], right: Sequence[int] = ()) -> str:
    """Columns of text under their headings; those in ``right`` are aligned to the right."""
    lines = [headings, *rows]
    widths = [max(len(line[i]) for line in lines) for i in range(len(headings))]
    aligned = [
        [cell.rjust(width) if i in right else cell.ljust(width) for i, (cell, width) in enumerate(zip(line, widths, strict=True))]
        for line in lines
    ]
    return "\n".join("  ".join(line).rstrip() for line in aligned)


def give_or_take(mm: float | None, units: Units) -> str:
    """``± 1.2 cm``, or "not known"."""
    return "not known" if mm is None else f"± {show_length(mm, units)}"


def per_cent(share: float | None) -> str:
    """``2.5 %``, or "not known"."""
    return "not known" if share is None else f"{fixed(share * 100, 1)} %"


def gauge_sentence(finished: FinishedGauge, repeat: int, units: Units) -> str:
    """``15.7 stitches in 10 cm, a repeat of 6 is 3.82 cm wide, washed, laid flat (give or take 2.5 %).``"""
    start = f"{number_over(finished.pitch_mm, units)} stitches in {over_length(units)[1]}"
    if repeat > 1:
        start += f", a repeat of {repeat} is {show_small(finished.pitch_mm * repeat, units)} wide"
    known = "" if finished.give_or_take is None else f" (give or take {per_cent(finished.give_or_take)})"
    return f"{start}, {finished.condition.words}{known}."


def gauge_words(gauge: Gauge) -> str:
    """``15.7 ± 2.5 %``: how many lie in 10 cm."""
    return number_over(gauge.pitch_mm, Units.CM) + ("" if gauge.give_or_take is None else f" ± {per_cent(gauge.give_or_take)}")
