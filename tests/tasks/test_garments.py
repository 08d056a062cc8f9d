"""Garments worked out from the logbook's swatches."""

from dataclasses import replace
from pathlib import Path

import pytest

from logbook.craft.garments.plan_file import plan_of
from logbook.tasks.garments import work_out
from tests.support.garments import garment_book


def test_the_edges_of_a_piece_go_by_the_swatch_chosen_for_them(tmp_path: Path) -> None:
    measures = {"start width": "30 cm", "end width": "45 cm", "length": "40 cm"}
    sleeve = {"name": "sleeve", "shape": "tapered panel", "swatch": "L1", "measures": measures}
    plan = plan_of({"name": "g", "pieces": [sleeve]})
    own = replace(plan, pieces=(replace(plan.pieces[0], edge_swatch="L1"),))
    other = replace(plan, pieces=(replace(plan.pieces[0], edge_swatch="R1"),))
    with garment_book(tmp_path / "a.logbook") as book:
        answers = [work_out(each, book) for each in (own, other)]
    made = [answer.numbers[0].pieces[0] for answer in answers]
    edges = [answer.cloths["sleeve"].gauges.edge for answer in answers]
    assert edges[0] is not None
    assert edges[1] is not None
    assert edges[0].stitch_mm != edges[1].stitch_mm
    for piece, edge, answer in zip(made, edges, answers, strict=True):
        assert edge is not None
        multiple = answer.cloths["sleeve"].gauges.pattern.multiple or 1
        each = (piece.counts[-1] - piece.foundation) // 2 % multiple
        whole = piece.counts[-1] - 2 * each
        assert piece.widths[-1] == pytest.approx(whole * piece.stitch_mm + 2 * each * edge.stitch_mm)
    assert made[0].widths[-1] != made[1].widths[-1]
