"""Making up a garment: one sequence, as one would do it, from the joins and the edgings."""

from collections.abc import Iterator, Sequence

from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.joins import Joined, Verdict
from logbook.craft.garments.shapes import EDGING, HALF_FRONT
from logbook.craft.words.counting import counted, listed
from logbook.tasks.written.edging_lines import along_words

_SIDES = ("side", "left side", "right side")


def making_up(sizes: Sequence[GarmentInSize]) -> tuple[str, ...]:
    """The steps: block; shoulders; neck edgings; sleeves to armholes; sides and sleeve seams; other joins and edgings; ends."""
    first = sizes[0]
    order = sorted(
        (number for number, join in enumerate(first.joins) if not join.goes_on), key=lambda number: _place(first.joins[number])
    )
    edgings = [piece for piece in first.pieces if piece.wish.shape == EDGING]
    at_neck = [piece for piece in edgings if any(edge.edge == "neck" for edge in piece.picked)]
    shoulders = [number for number in order if _place(first.joins[number]) == 0]
    steps = [_join([size.joins[number] for size in sizes]) for number in shoulders]
    steps += [f"Work the {piece.name} along {along_words(piece)} as written there." for piece in at_neck]
    steps += [_join([size.joins[number] for size in sizes]) for number in order if number not in shoulders]
    steps += list(_sleeve_seams(first))
    steps += [f"Work the {piece.name} along {along_words(piece)} as written there." for piece in edgings if piece not in at_neck]
    slits = [piece for piece in first.pieces if _has_slit(first, piece.name)]
    if slits:
        steps.append("Leave the sides open below the markers for the slit.")
    if not steps:
        return ("Weave in all ends.", "Wash and dry it as the swatch was, flat to the finished measurements.")
    washed = "Wash and dry all pieces as the swatch was, flat to the finished measurements, and let them dry before sewing."
    return (washed, *steps, "Weave in all ends.")


def _place(join: Joined) -> int:
    if join.wish.edge == "shoulder" or join.wish.at == "shoulder":
        return 0
    if "armhole" in (join.wish.edge, join.wish.at):
        return 1
    return 2 if join.wish.edge in _SIDES and join.wish.at in _SIDES else 3


def _join(joins: Sequence[Joined]) -> str:
    """One join of all sizes."""
    join = joins[0]
    of, to = join.wish.of, listed([f"the {name}" for name in join.wish.to])
    rates = {(one.rate, one.a.along, one.b_along) for one in joins}
    rate = f", {_rate(join)}" if len(rates) == 1 else ""
    ease = ", easing it in" if any(one.verdict is Verdict.EASE_IN for one in joins) else ""
    if join.wish.edge == join.wish.at == "shoulder":
        return f"Sew the shoulders of the {of} and {to} together{rate}."
    if join.wish.edge in _SIDES and join.wish.at in _SIDES:
        return f"Sew the sides of the {of} and {to} together up to the armhole markers{rate}."
    if join.wish.at == "armhole":
        return (
            f"Sew the {join.wish.edge} of each {of} to the armhole of {to}, from marker to marker, its middle at the shoulder"
            f"{rate}{ease}."
        )
    return f"Sew the {join.wish.edge} of the {of} to the {join.wish.at} of {to}{rate}{ease}."


def _rate(join: Joined) -> str:
    a, b = join.rate
    names = {"stitches": "st", "rows": "row"}
    if join.a.along.value == join.b_along and a == b:
        return "stitch to stitch" if join.b_along == "stitches" else "row to row"
    return f"{counted(a, names[join.a.along.value])} to {counted(b, names[join.b_along])}"


def _sleeve_seams(size: GarmentInSize) -> Iterator[str]:
    """Flat sleeves that are sewn into armholes have a seam of their own."""
    sleeves = {join.wish.of for join in size.joins if join.wish.at == "armhole"}
    sewn = {join.wish.of for join in size.joins if join.wish.edge in _SIDES}
    for piece in size.pieces:
        if piece.name in sleeves - sewn and "side" in piece.edges:
            side = ", in one with the side seam" if any(_place(join) == 2 for join in size.joins) else ""
            yield f"Sew the seam of each {piece.name}, row to row{side}."


def _has_slit(size: GarmentInSize, name: str) -> bool:
    piece = size.piece(name)
    return "slit" in piece.wish.measures and piece.wish.shape != HALF_FRONT
