"""The measures of a piece in one list, for its form, the columns of a run, a body chart and the command line."""

from typing import NamedTuple


class Measure(NamedTuple):
    """A length that is wanted of a piece: its name on forms and as an option, and the field of the plan that it is.

    ``chart`` is the measure of a body chart that a size takes it from ("": none), ``help`` what the command line says of it ("":
    an option that other commands have too).
    """

    name: str
    field: str
    chart: str = ""
    help: str = ""


WIDTH = Measure("width", "width_mm")
OF_A_SIZE = (
    Measure("body", "body_mm"),
    Measure("length", "length_mm"),
    Measure("armhole", "armhole_mm", help="depth of the armhole from the top"),
    Measure("neck", "neck_mm", help="width of the neck"),
    Measure("slit", "slit_mm", help="length of a slit from the bottom"),
    Measure("upper arm", "upper_arm_mm", "upper arm", "round the upper arm, which must go through the armhole"),
    Measure("hip", "hip_mm", "hip", "round the hip, which must go through the hem"),
    Measure("head", "head_mm", "head", "round the head, which must go through the neck (56 cm)"),
)
"""Those that a size may have otherwise than the piece."""
OF_A_PIECE = (WIDTH, *OF_A_SIZE)
