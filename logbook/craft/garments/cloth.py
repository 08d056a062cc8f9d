"""What a piece of a garment is made of."""

from dataclasses import dataclass

from logbook.craft.pieces.piece_gauges import PieceGauges


@dataclass(frozen=True, slots=True, kw_only=True)
class Cloth:
    """A swatch's gauges with its colour; ``minutes`` a stitch takes, and what a ball costs (None: not known)."""

    gauges: PieceGauges
    colour: str = ""
    minutes: float | None = None
    ball_price: float | None = None
    currency: str = ""
    flat: bool = True
