"""What is to be said of a garment: troubles first, then remarks, as sentences."""

from dataclasses import dataclass

from logbook.craft.garments.all_round import all_round
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.joins import Joined, JoinVerdict
from logbook.craft.garments.plan import GarmentJoin
from logbook.craft.garments.remedies import JoinRemedy, remedy_for
from logbook.craft.garments.shaped_piece import PieceTrouble, ShapedPiece
from logbook.craft.garments.shapes import HALF_FRONT, PANEL, ROUND, YOKES
from logbook.craft.pieces.fit import ADULT_HEAD_MM
from logbook.craft.sizes.body_chart import is_childs_size
from logbook.craft.words.counting import counted, listed
from logbook.craft.words.lengths import Units, show_length
from logbook.craft.words.numbers import show_number
from logbook.tasks.garments import GarmentAnswer
from logbook.tasks.money_words import HANDS_CAUTION
from logbook.tasks.note_words import CHILDREN_CAUTION, part_measures

_ADULT_BUST_MM = 700.0
"""Below this round the chest a head is not taken for an adult's."""
_LARGEST_MM = 5000.0
"""No garment that is worn has a piece with a larger measure."""


@dataclass(frozen=True, slots=True)
class GarmentProblem:
    """A sentence about what stands in the way, its pieces, the remedy if one is known, and the join if it is about one."""

    sentence: str
    pieces: tuple[str, ...]
    remedy: JoinRemedy | None = None
    join: GarmentJoin | None = None


def problems(answer: GarmentAnswer, size: GarmentInSize, units: Units = Units.CM) -> tuple[str, ...]:
    """What stands in the way of one size, as sentences."""
    return tuple(problem.sentence for problem in problems_of(answer, size, units))


def problems_of(answer: GarmentAnswer, size: GarmentInSize, units: Units = Units.CM) -> tuple[GarmentProblem, ...]:
    """What stands in the way of one size: joins that do not fit with what would mend them, shaping, what does not go on."""
    said = [_join_problem(answer, size, join, units) for join in size.joins if join.verdict is JoinVerdict.TROUBLE]
    said += [
        GarmentProblem(_piece_sentence(piece, trouble), (piece.name,))
        for piece in size.pieces
        for trouble in piece.troubles
        if trouble.kind not in _REMARKS
    ]
    return (*said, *(GarmentProblem(sentence, ()) for sentence in _openings(size, units)))


def stands_in_the_way(size: GarmentInSize) -> bool:
    """Whether a join or a piece of one size has a trouble; quicker than to say which, and what would fix it."""
    joins = any(join.verdict is JoinVerdict.TROUBLE for join in size.joins)
    return joins or any(trouble.kind not in _REMARKS for piece in size.pieces for trouble in piece.troubles)


def notes(answer: GarmentAnswer, size: GarmentInSize, units: Units = Units.CM) -> tuple[str, ...]:
    """What else is to be said of one size."""
    too_large = [
        f"The {name} of “{piece.name}” {doubt}"
        for piece in size.pieces
        for name, mm in piece.wanted.items()
        if (doubt := doubt_of(mm, units))
    ]
    said = [_piece_sentence(piece, trouble) for piece in size.pieces for trouble in piece.troubles if trouble.kind in _REMARKS]
    said += _misses_its_ease(answer, size, units)
    said += [_eased(join, units) for join in size.joins if join.verdict is JoinVerdict.EASE_IN]
    if answer.plan.sizes.chart == "children" or is_childs_size(size.name) or is_childs_size(answer.plan.name):
        said.insert(0, CHILDREN_CAUTION)
    if any(piece.planned.shape in YOKES for piece in size.pieces):
        said.append("Front and back neck of the yoke are equally deep.")
    said += _round_by_flat(answer, size)
    unweighed = [piece for piece in size.pieces if answer.cloths[piece.name].gauges.weight is None]
    if unweighed:
        names = listed([f"“{piece.name}”" for piece in unweighed])
        several = len({str(piece.planned.swatch) for piece in unweighed}) > 1
        which = "each swatch" if several else "its swatch" if len(unweighed) == 1 else "their swatch"
        said.append(f"No yarn for {names}: weigh {which}, and count its stitches and rows.")
    if size.time is not None and size.pieces:
        said.append(HANDS_CAUTION)
    return tuple(dict.fromkeys((*too_large, *said)))


def doubt_of(mm: float, units: Units) -> str:
    """The rest of a sentence about a measure that is hardly meant; "" for any other."""
    return f"comes to {show_length(mm, units)}, more than any garment measures: check it." if mm > _LARGEST_MM else ""


def _round_by_flat(answer: GarmentAnswer, size: GarmentInSize) -> list[str]:
    """Of all pieces that are worked round from a swatch worked flat, once."""
    found = [piece for piece in size.pieces if piece.planned.worked == ROUND and answer.cloths[piece.name].flat]
    found = [piece for piece in found if piece.planned.shape != "edging"]
    if not found:
        return []
    names = listed([f"“{piece.name}”" for piece in found])
    several = len({str(piece.planned.swatch) for piece in found}) > 1
    whose = "its swatch was" if len(found) == 1 else "their swatches were" if several else "their swatch was"
    are = "is" if len(found) == 1 else "are"
    return [f"{names} {are} worked in the round, but {whose} worked flat: rounds often come out a little shorter."]


def rate_words(join: Joined) -> str:
    """``stitch to stitch`` or ``5 stitches to 4 rows``."""
    if join.goes_on:
        return "worked on"
    a, b = join.rate
    if join.a.along.value == join.b_along and a == b:
        return _one_to_one(join.b_along)
    return f"{_units(a, join.a.along.value)} to {_units(b, join.b_along)}"


def _one_to_one(along: str) -> str:
    return "stitch to stitch" if along == "stitches" else "row to row"


def _units(count: int, along: str) -> str:
    return counted(count, "stitch" if along == "stitches" else "row")


_REMARKS = ("ruffles", "cup")


def _join_problem(answer: GarmentAnswer, size: GarmentInSize, join: Joined, units: Units) -> GarmentProblem:
    planned, trouble = join.planned, join.trouble
    pieces = tuple(dict.fromkeys((planned.of, *planned.to)))
    to = listed([f"“{name}”" for name in planned.to])
    if trouble is not None and trouble.kind == "inset":
        has, needs = (show_length(float(trouble.figures[key]), units) for key in ("has", "needs"))
        inset_of = trouble.figures["piece"]
        said = f"The straight part of “{planned.of}” is {has}, but the inset of “{inset_of}” is {needs}"
        remedy = remedy_for(answer.plan, size.size, answer.cloths, join)
        if remedy is None:
            return GarmentProblem(f"{said}: make them the same.", (planned.of, str(inset_of)), join=planned)
        mended = f"{remedy.measure} of “{remedy.piece}” {show_length(remedy.mm, units)}"
        return GarmentProblem(f"{said}. What would fit: {mended}.", (planned.of, str(inset_of)), remedy, planned)
    if trouble is not None and trouble.kind == "counts differ":
        along = str(trouble.figures["along"])
        a, b = (_units(int(trouble.figures[key]), along) for key in ("a", "b"))
        sewn = f"sewn {_one_to_one(along)}, they must match"
        what = f"The {planned.edge} of “{planned.of}” has {a}, the {planned.at} of {to} {b}: {sewn}"
    else:
        a, b = show_length(join.a.mm, units), show_length(join.b_mm, units)
        what = f"The {planned.edge} of “{planned.of}” is {a}, the {planned.at} of {to} {b}: they do not fit"
    remedy = remedy_for(answer.plan, size.size, answer.cloths, join)
    if remedy is None:
        return GarmentProblem(f"{what}. {_no_remedy(answer, join)}", pieces, join=planned)
    more = _units(abs(remedy.more), remedy.along)
    change = f"{more} {'more' if remedy.more > 0 else 'fewer'} on “{remedy.piece}”"
    return GarmentProblem(
        f"{what}. What would fit: {change} ({remedy.measure} {show_length(remedy.mm, units)}).", pieces, remedy, planned
    )


def _no_remedy(answer: GarmentAnswer, join: Joined) -> str:
    """Why nothing is offered, and what is left to do."""
    names = dict.fromkeys((join.planned.of, *join.planned.to))
    repeats = max(answer.cloths[name].gauges.pattern.multiple or 1 for name in names)
    by = f", as the widths change by whole repeats of {repeats}" if repeats > 1 else ""
    measures = dict.fromkeys(
        (f"{join.a.measure} of “{join.planned.of}”", *(f"{join.b_measure} of “{name}”" for name in join.planned.to))
    )
    return f"No small change of one measure makes them fit{by}: change the {listed(list(measures))}."


def _piece_sentence(piece: ShapedPiece, trouble: PieceTrouble) -> str:
    figures = trouble.figures
    if trouble.kind == "too steep":
        rounds, stitches = int(figures["rounds"]), int(figures["stitches"])
        return (
            f"“{piece.name}”: the {figures['where']} would grow by more than two stitches at one place in a round; "
            f"{counted(rounds, 'round')} deeper or {counted(stitches, 'stitch')} more under the arm would help."
        )
    if trouble.kind == "too many in a round":
        return (
            f"“{piece.name}”: round {figures['round']} would gain {figures['stitches']} stitches on {figures['of']}; "
            "make the yoke deeper."
        )
    flat = show_number(float(figures["flat"]), 1)
    what = "will ruffle" if trouble.kind == "ruffles" else "will cup instead of lying flat"
    return f"“{piece.name}”: with {figures['each']} more a round the crown {what}; {flat} would lie flat."


def _misses_its_ease(answer: GarmentAnswer, size: GarmentInSize, units: Units) -> list[str]:
    """What comes out otherwise all round, by more than half a repeat, since its pieces go by whole repeats."""
    around = all_round(answer.plan, size)
    by_repeats = [piece for piece in size.pieces if (answer.cloths[piece.name].gauges.pattern.multiple or 1) > 1]
    names = [f"“{piece.name}”" for piece in by_repeats if abs(_off_width(piece)) > piece.stitch_mm]
    if around is None or not names or abs(around.mm - around.wanted_mm) <= around.repeat_mm / 2 + 1e-6:
        return []
    off = around.mm - around.wanted_mm
    comes, wanted, by = (show_length(mm, units) for mm in (around.mm, around.wanted_mm, abs(off)))
    bust = size.size.body.get("bust")
    ease = "" if bust is None else f" (ease {show_length(around.mm - bust, units)})"
    why = f"{listed(names)} {'is' if len(names) == 1 else 'are'} made of whole repeats"
    more = "more" if off > 0 else "less"
    return [f"All round it comes to {comes}{ease}, {by} {more} than the {wanted} asked for: {why}."]


def _off_width(piece: ShapedPiece) -> float:
    return max(piece.widths) - piece.wanted.get("width", max(piece.widths))


def _eased(join: Joined, units: Units) -> str:
    """What is longer is eased into what is shorter."""
    planned, off = join.planned, show_length(abs(join.difference_mm), units)
    one, other = f"{planned.edge} of “{planned.of}”", f"{planned.at} of {listed([f'“{name}”' for name in planned.to])}"
    longer, shorter = (one, other) if join.difference_mm > 0 else (other, one)
    return f"Ease the {longer} into the {shorter}: it is {off} longer."


def _openings(size: GarmentInSize, units: Units) -> list[str]:
    """What would not go over head, arm or hip."""
    body, said = size.size.body, []
    panels = [piece for piece in size.pieces if piece.planned.shape == PANEL and "neck" in piece.edges]
    opens = any(piece.planned.shape == HALF_FRONT for piece in size.pieces)
    yokes = [piece for piece in size.pieces if piece.planned.shape in YOKES]
    head = body.get("head", ADULT_HEAD_MM if body.get("bust", ADULT_HEAD_MM * 2) >= _ADULT_BUST_MM else None)
    neck = sum(piece.edges["neck"].mm * piece.planned.alike for piece in panels) or sum(yoke.edges["neck"].mm for yoke in yokes)
    if neck and head and not opens and (len(panels) + sum(p.planned.alike - 1 for p in panels) > 1 or yokes) and neck < head:
        said.append(_too_small("neck", neck, "head", head, units))
    arm = body.get("upper arm")
    for join in size.joins:
        if arm and join.planned.at == "armhole" and join.b_mm < arm:
            said.append(_too_small("armhole", join.b_mm, "upper arm", arm, units))
    hip = body.get("hip")
    hems = [piece for piece in size.pieces if piece.planned.shape in (PANEL, HALF_FRONT) and "shoulder" in piece.edges]
    hem = sum(piece.edges["start"].mm * piece.planned.alike for piece in hems if piece.planned.worked != "sideways")
    if hip and hem and not opens and len(hems) + sum(p.planned.alike - 1 for p in hems) > 1 and hem < hip:
        said.append(_too_small("hem", hem, "hip", hip, units))
    return said


def _too_small(name: str, mm: float, part: str, needs_mm: float, units: Units) -> str:
    measures = part_measures(part, needs_mm, units)
    return f"The {name} is {show_length(mm, units)} round, but {measures}: make it larger, or leave an opening."
