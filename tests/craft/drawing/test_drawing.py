import pytest

from logbook.craft.drawing.drawing import Marker, arrow_head, corners


def test_an_arrow_head_has_its_tip_first_and_its_foot_behind() -> None:
    assert arrow_head((10, 0), (0, 0), 5) == ((10, 0), (5, 2), (5, -2))
    assert arrow_head((0, -3), (0, 9), 5)[0] == (0, -3)
    assert arrow_head((1, 1), (1, 1), 0) == ((1, 1), (1, 1), (1, 1))


@pytest.mark.parametrize(("kind", "count"), [("square", 4), ("triangle", 3)])
def test_markers_lie_around_their_place(kind: str, count: int) -> None:
    points = corners(Marker(50, 80, kind, "series1", 10))  # type: ignore[arg-type]
    assert len(points) == count
    assert min(x for x, _ in points) < 50 < max(x for x, _ in points)
    assert min(y for _, y in points) < 80 < max(y for _, y in points)
