"""Making up a garment: one sequence, as one would do it, from the joins and the edgings."""

from collections.abc import Iterator, Sequence

from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.joins import Joined, JoinVerdict
from logbook.craft.garments.plan import GarmentJoin
from logbook.craft.garments.shapes import EDGING, HALF_FRONT
from logbook.craft.words.counting import listed
from logbook.craft.words.printed_sizes import alike
from logbook.tasks.written.edging_lines import along_words, edge_words

_SIDES = ("side", "left side", "right side")


def making_up(sizes: Sequence[GarmentInSize], washed: str = "") -> tuple[str, ...]:
    """The steps: block; shoulders; neck edgings; sleeves to armholes; sides and sleeve seams; other joins and edgings; ends.

    ``washed``: how the swatch was (``" (wool cycle 30 °C)"``); "" where that is not known.
    """
    first = sizes[0]
    order = sorted(
        (number for number, join in enumerate(first.joins) if not join.goes_on), key=lambda number: _place(first.joins[number])
    )
    edgings = [piece for piece in first.pieces if piece.planned.shape == EDGING]
    at_neck = [piece for piece in edgings if any(edge.edge == "neck" for edge in piece.picked)]
    shoulders = [number for number in order if _place(first.joins[number]) == 0]
    steps = [_join(sizes, number) for number in shoulders]
    steps += [f"Work the {piece.name} along {along_words(piece)} as written above." for piece in at_neck]
    steps += [_join(sizes, number) for number in order if number not in shoulders]
    steps += list(_sleeve_seams(first))
    steps += [f"Work the {piece.name} along {along_words(piece)} as written above." for piece in edgings if piece not in at_neck]
    slits = [piece for piece in first.pieces if _has_slit(first, piece.name)]
    if slits:
        steps.append("Leave the sides open below the markers for the slit.")
    if not steps:
        return ("Weave in all ends.", f"Wash and dry it like the swatch{washed}, laid flat to the finished measurements.")
    first_of_all = f"Wash and dry all pieces like the swatch{washed}, laid flat to the finished measurements."
    return (first_of_all, *steps, "Weave in all ends.")


def does_not_fit(sizes: Sequence[GarmentInSize]) -> Iterator[str]:
    """A sentence for each join that does not fit, with the sizes in which it does not."""
    for number, join in enumerate(sizes[0].joins):
        bad = [size.name for size in sizes if size.joins[number].verdict is JoinVerdict.TROUBLE]
        if bad:
            where = f" in size {bad[0]}" if len(bad) == 1 else f" in sizes {listed(bad)}"
            yield f"{misfit_words(sizes[0], join.planned)}{where if len(sizes) > 1 else ''}."


def misfit_words(size: GarmentInSize, planned: GarmentJoin) -> str:
    """``The last row of each sleeve does not fit the armhole of the back and the front``, which is so of a join in trouble."""
    of = f"{edge_words(planned.edge)} of {_one(size, planned.of)}"
    to = listed([_one(size, name) for name in planned.to])
    return f"The {of} does not fit the {edge_words(planned.at)} of {to}"


def _place(join: Joined) -> int:
    if join.planned.edge == "shoulder" or join.planned.at == "shoulder":
        return 0
    if "armhole" in (join.planned.edge, join.planned.at):
        return 1
    return 2 if join.planned.edge in _SIDES and join.planned.at in _SIDES else 3


def _join(sizes: Sequence[GarmentInSize], number: int) -> str:
    """One join of all sizes."""
    joins = [size.joins[number] for size in sizes]
    planned = joins[0].planned
    of, to = _one(sizes[0], planned.of), listed([_one(sizes[0], name) for name in planned.to])
    rate = ", which does not fit yet" if any(one.verdict is JoinVerdict.TROUBLE for one in joins) else f", {_rate(joins)}"
    ease = ", easing it in" if any(one.verdict is JoinVerdict.EASE_IN for one in joins) else ""
    left = any(place == "armhole" for name in planned.to for place, _, _ in sizes[0].piece(name).left)
    marked = not left and any(_has_armhole(sizes[0], name) for name in planned.to)
    if planned.edge == planned.at == "shoulder":
        return f"Sew the shoulders of {of} and {to} together{rate}."
    if planned.edge in _SIDES and planned.at in _SIDES:
        up_to = " up to the armhole" if left else " up to the armhole markers" if marked else ""
        return f"Sew the sides of {of} and {to} together{up_to}{rate}."
    if planned.at == "armhole":
        where = ", from marker to marker" if marked else ""
        under = "; its straight rows meet the sts left unworked under the arm" if left else ""
        return (
            f"Sew the {edge_words(planned.edge)} of each {planned.of} to the armhole of {to}{where}, its middle at the shoulder"
            f"{rate}{ease}{under}."
        )
    return f"Sew the {edge_words(planned.edge)} of {of} to the {edge_words(planned.at)} of {to}{rate}{ease}."


def _one(size: GarmentInSize, name: str) -> str:
    return f"{'each' if size.piece(name).planned.alike > 1 else 'the'} {name}"


def _has_armhole(size: GarmentInSize, name: str) -> bool:
    edge = size.piece(name).edges.get("armhole")
    return edge is not None and edge.measure == "armhole"


def _rate(joins: Sequence[Joined]) -> str:
    """``5 sts to 4 rows``, in lists where sizes differ."""
    of, to = joins[0].a.along.value, joins[0].b_along
    if of == to and {join.rate for join in joins} == {(1, 1)}:
        return "stitch to stitch" if to == "stitches" else "row to row"
    units = {"stitches": "sts", "rows": "rows"}
    a, b = (alike(join.rate[side] for join in joins) for side in (0, 1))
    return f"{a} {units[of]} to {b} {units[to]}"


def _sleeve_seams(size: GarmentInSize) -> Iterator[str]:
    """Flat sleeves that are sewn into armholes have a seam of their own."""
    sleeves = {join.planned.of for join in size.joins if join.planned.at == "armhole"}
    sewn = {join.planned.of for join in size.joins if join.planned.edge in _SIDES}
    for piece in size.pieces:
        if piece.name in sleeves - sewn and "side" in piece.edges:
            side = ", in one with the side seam" if any(_place(join) == 2 for join in size.joins) else ""
            yield f"Sew the seam of each {piece.name}, row to row{side}."


def _has_slit(size: GarmentInSize, name: str) -> bool:
    piece = size.piece(name)
    return "slit" in piece.planned.measures and piece.planned.shape != HALF_FRONT
