import pytest

from logbook.craft.fit import panel_width
from logbook.craft.lengths import Ease, read_ease
from logbook.errors import RefusedError


def test_panels_share_body_ease_and_seams() -> None:
    # (88 + 5)/2 + 2·0.5 = 47.5 cm; in the round 93 cm
    assert panel_width(880, Ease(mm=50), 2, 5) == pytest.approx(475)
    assert panel_width(880, Ease(mm=50), 1, 0) == pytest.approx(930)
    assert panel_width(880, read_ease("-6 %"), 2, 0) == pytest.approx(413.6)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(RefusedError, match="at least 1 panel"):
        panel_width(880, Ease(), 0, 0)
    with pytest.raises(RefusedError, match="nothing would be left of the garment"):
        panel_width(880, Ease(mm=-880), 2, 0)
