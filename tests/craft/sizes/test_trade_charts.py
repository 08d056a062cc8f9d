"""The trade's charts: sizes rise, and measures hang together."""

from itertools import pairwise

import pytest

from logbook.craft.sizes.body_chart import BodyChart
from logbook.craft.sizes.trade_charts import TRADE_CHARTS


@pytest.mark.parametrize("chart", TRADE_CHARTS.values(), ids=TRADE_CHARTS)
def test_every_measure_rises_from_size_to_size(chart: BodyChart) -> None:
    for smaller, larger in pairwise(chart.sizes):
        assert set(smaller.ranges) == set(larger.ranges)
        for measure in smaller.ranges:
            assert (smaller.measure(measure) or 0) <= (larger.measure(measure) or 0), (larger.name, measure)


@pytest.mark.parametrize("name", ["women", "men", "children"])
def test_measures_hang_together(name: str) -> None:
    for size in TRADE_CHARTS[name].sizes:
        body = {measure: size.measure(measure) or 0 for measure in size.ranges}
        assert body["upper arm"] < body["bust"] / 2
        assert body["arm length"] < body["centre back to wrist"]
        assert body["cross back"] < body["bust"]
