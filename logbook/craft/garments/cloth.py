"""What a piece of a garment is made of."""

from dataclasses import dataclass

from logbook.craft.pieces.piece_gauges import PieceGauges


@dataclass(frozen=True, slots=True, kw_only=True)
class Cloth:
    """A swatch's gauges with its colour; ``flat``: it was not worked in the round."""

    gauges: PieceGauges
    colour: str = ""
    flat: bool = True
