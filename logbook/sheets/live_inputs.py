"""What the live numbers of pieces and sizes begin with: gauge, pattern and fit, to be changed in the sheet."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from logbook.craft.pieces.length import FOUNDATION_MM
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.starting_chain import ChainRule
from logbook.craft.swatches.conditions import Direction
from logbook.sheets.cells import PERCENT, TENTHS, WHOLE, Content, Formula

SHOWN = 10
"""Repeats or rows that the gauge is said by."""


class Input(NamedTuple):
    """One line: ``is_input`` where it is typed and not worked out."""

    key: str
    label: str
    content: Content
    numbers: str = TENTHS
    is_input: bool = True
    note: str = ""


class LiveInputs:
    """The inputs of a plan. ``edges``: edge stitches are taken; ``by_rows``: rows are counted."""

    def __init__(self, plan: PiecePlan, gauges: PieceGauges, rule: ChainRule, *, edges: bool, by_rows: bool) -> None:
        self._plan, self._gauges, self._rule, self._edges, self._by_rows = plan, gauges, rule, edges, by_rows

    def all_from(self, first: int) -> list[Input]:
        """Every input; the first of them stands in row ``first``."""
        gauges, rule = self._gauges, self._rule
        stitch = gauges.stitches
        found = [
            Input("repeats", "repeats measured", SHOWN, "General"),
            Input("reach", "they reach, cm", stitch.pitch_mm * rule.multiple * SHOWN / 10, "0.00"),
            Input("multiple", "multiple: stitches in a repeat", rule.multiple, WHOLE),
            Input("plus", "plus: base stitches besides whole repeats", rule.stitches_beside, WHOLE),
            Input("extra", "extra chains", rule.chains_beside or 0, WHOLE),
        ]
        if self._edges and gauges.edge is not None:
            found += [
                Input("edge_mm", "one edge stitch, mm", gauges.edge.stitch_mm, "0.00"),
                Input("edge_extra", "extra chains with edge stitches", self._edge_extra(), WHOLE),
            ]
        if self._by_rows and gauges.rows is not None:
            found += [
                Input("rows_measured", "rows measured", SHOWN, "General"),
                Input("rows_reach", "they reach, cm", gauges.rows.pitch_mm * SHOWN / 10, "0.00"),
                Input("set_up", "set-up rows", gauges.pattern.set_up_rows or 0, WHOLE),
                Input("in_repeat", "rows in a repeat", gauges.pattern.rows_in_repeat or 1, WHOLE),
                Input("closing", "closing rows", gauges.pattern.closing_rows or 0, WHOLE),
            ]
        found += self._before_inputs()
        found += self._fit_inputs()
        found += self._sure_inputs()
        found.append(
            Input("stitch", "one stitch, mm", Formula("{reach}*10/{repeats}/{multiple}", stitch.pitch_mm), "0.00", is_input=False)
        )
        if self._by_rows and gauges.rows is not None:
            found.append(
                Input("row", "one row, mm", Formula("{rows_reach}*10/{rows_measured}", gauges.rows.pitch_mm), "0.00", False)
            )
        seam = self._seam(found)
        places = {one.key: f"$B${first + place}" for place, one in enumerate([*found, *seam])}
        return [_placed(one, places) for one in (*found, *seam)]

    def _edge_extra(self) -> int:
        edge = self._gauges.edge
        return 0 if edge is None or edge.extra_chains is None or self._rule.foundation_stitches else edge.extra_chains

    def _before_inputs(self) -> list[Input]:
        gauges = self._gauges
        edge, rows = (gauges.edge if self._edges else None), (gauges.rows if self._by_rows else None)
        return [
            Input(key, label, mm, "0.00")
            for key, label, mm in (
                ("stitch_before", "one stitch before washing, mm", gauges.stitches.before_washing_mm),
                ("edge_before", "one edge stitch before washing, mm", edge.before_washing_mm if edge else None),
                ("row_before", "one row before washing, mm", rows.before_washing_mm if rows else None),
            )
            if mm is not None
        ]

    def _fit_inputs(self) -> list[Input]:
        plan = self._plan
        return [
            Input("panels", "panels round the body", plan.panels_joined, WHOLE),
            Input("side", "edging at each side, cm", plan.side_edging_mm / 10),
            Input("top", "edging at the top, cm", plan.top_edging_mm / 10),
            Input("bottom", "edging at the bottom, cm", plan.bottom_edging_mm / 10),
            Input("shoulder_seam", "a shoulder seam takes, cm", plan.shoulder_seam_mm / 10),
            Input("foundation", "the chain's own height, cm", FOUNDATION_MM / 10 if plan.foundation_chain else 0.0),
        ]

    def _sure_inputs(self) -> list[Input]:
        gauges, yarn = self._gauges, self._gauges.yarn
        found = []
        if self._across_gauge_sure() is not None:
            found.append(Input("sure", "the swatch says give or take", self._across_gauge_sure(), PERCENT))
            if self._edges and gauges.edge is not None and gauges.edge.give_or_take is not None:
                found.append(Input("edge_sure", "give or take of the edge stitch", gauges.edge.give_or_take, PERCENT))
            across = gauges.drift.of(Direction.ROWS if self._plan.sideways else Direction.STITCHES)
            found.append(Input("drift", "a whole piece differs by up to", across.give_or_take, PERCENT))
        if gauges.weight is not None and self._by_rows:
            found.append(Input("weight", "100 stitches of one row weigh, g", gauges.weight.grams * 100, "0.000"))
            used = gauges.drift.grams.factor - 1
            if used:
                found.append(Input("used", "yarn used beyond the swatch, as learned", used, PERCENT))
            found.append(Input("reserve", "yarn kept in reserve", gauges.assumptions.reserve, PERCENT))
            if yarn.ball_grams:
                found.append(Input("ball_g", "a ball weighs, g", yarn.ball_grams, "General"))
            if yarn.ball_grams and yarn.ball_metres:
                found.append(Input("ball_m", "a ball holds, m", yarn.ball_metres, "General"))
        if gauges.minutes_a_stitch is not None and self._by_rows:
            took = gauges.minutes_a_stitch * gauges.drift.minutes.factor
            found.append(Input("minutes", "100 stitches take, minutes", took * 100, "0.0"))
        return found

    def _across_gauge_sure(self) -> float | None:
        gauges = self._gauges
        if self._plan.sideways:
            return gauges.rows.give_or_take if gauges.rows else None
        edge_known = not self._edges or gauges.edge is None or gauges.edge.give_or_take is not None
        return gauges.stitches.give_or_take if edge_known else None

    def _seam(self, before: Sequence[Input]) -> list[Input]:
        """What a seam takes from each joined edge: a length that was said, or a share of the stitch across it."""
        plan, gauges = self._plan, self._gauges
        pitch = gauges.pitch(plan.round_body) if any(one.key == "row" or not plan.sideways for one in before) else 0.0
        value = plan.seam_allowance(pitch) / 10
        if plan.seam_mm is None and plan.seam and not plan.in_round and value:
            share = plan.seam_allowance(1.0)
            across = "{row}" if plan.sideways else "{stitch}"
            return [
                Input(
                    "seam", f"a {plan.seam} seam takes from each edge, cm", Formula(f"{share}*{across}/10", value), "0.00", False
                )
            ]
        return [Input("seam", "a seam takes from each edge, cm", value, "0.00")]


def _placed(one: Input, places: Mapping[str, str]) -> Input:
    if not isinstance(one.content, Formula):
        return one
    return one._replace(content=Formula(one.content.text.format(**places), one.content.value))
