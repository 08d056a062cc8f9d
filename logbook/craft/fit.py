"""From a body measure to the width of a panel.

n panels go round (2; in the round 1), each joined edge taking a seam allowance a: T = (B + E)/n + 2a.
"""

from logbook.craft.lengths import Ease
from logbook.errors import RefusedError


def panel_width(body_mm: float, ease: Ease, panels: int, seam_mm: float) -> float:
    """The finished width in mm of one of ``panels`` equal panels; in the round (1 panel) no edge is joined and ``seam_mm`` is 0.

    Raises RefusedError if nothing is left of the garment.
    """
    around = body_mm + ease.of(body_mm)
    if panels < 1:
        raise RefusedError("A garment has at least 1 panel round the body.")
    if not around > 0:
        raise RefusedError("That ease is more than the body measures: nothing would be left of the garment.")
    return around / panels + 2 * seam_mm
