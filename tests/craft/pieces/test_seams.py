import pytest

from logbook.craft.pieces.seams import SEAMS, seam_called
from logbook.errors import RefusedError


def test_what_seams_take_and_need() -> None:
    mattress = seam_called(" Mattress stitch ")
    assert mattress.allowance_mm(8) == pytest.approx(6)  # half a stitch to one: three quarters of 8 mm
    assert mattress.thread_mm(400) == pytest.approx(1300)  # 2.5·40 cm and two tails of 15 cm
    assert seam_called("whip stitch").allowance_mm(8) == 0
    assert seam_called("single crochet").allowance_mm(8) == pytest.approx(2)
    assert [seam.thread for seam in SEAMS] == [3, 2.5, 4, 6]


def test_an_unknown_seam_names_the_known_ones() -> None:
    with pytest.raises(RefusedError, match="“glue” is not a seam known here: it is whip stitch, mattress stitch"):
        seam_called("glue")
