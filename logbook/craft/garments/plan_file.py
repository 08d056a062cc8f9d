"""A garment's plan as plain values (what a JSON file holds), and back. What is not known is refused by its name."""

from collections.abc import Mapping, Sequence
from typing import Any

from logbook.craft.garments.plan import GarmentJoin, GarmentPiece, GarmentPlan, GarmentSizes, TypedSize, usual_alike
from logbook.craft.garments.shapes import CHOICES, EDGES, MEASURES, Shape, shape_called
from logbook.craft.sizes import body_chart
from logbook.craft.sizes.body_chart import End
from logbook.craft.swatches.fields import clean_text
from logbook.craft.words.counting import listed
from logbook.craft.words.numbers import read_positive
from logbook.errors import LogbookError, RefusedError

_GARMENT = ("name", "ease", "sizes", "pieces", "joins", "says", "other costs")
_PIECE = ("name", "shape", "swatch", "edge swatch", "alike", "worked", "seam", "measures", "says")
_JOIN = ("of", "edge", "to", "at")
_SIZES = ("chart", "only", "end")
_MOST = 200
"""Pieces, joins or sizes: more are no garment."""


def plan_of(value: Any, *, whole: bool = True) -> GarmentPlan:
    """The plan that a file's value says; unless it must be ``whole``, pieces and measures may be missing still.

    Raises RefusedError, in one sentence, naming what is not as it should be.
    """
    plan = _mapping(value, "The plan", _GARMENT)
    pieces = tuple(_piece(piece, number, whole) for number, piece in enumerate(_list(plan.get("pieces", []), "pieces"), 1))
    if whole and not pieces:
        raise RefusedError("The plan has no pieces: give at least one.")
    _require_names(pieces)
    joins = tuple(_join(join, number) for number, join in enumerate(_list(plan.get("joins", []), "joins"), 1))
    garment = GarmentPlan(
        name=_text(plan.get("name", ""), "The name of the garment"),
        ease=_text(plan.get("ease", ""), "The ease"),
        sizes=_sizes(plan.get("sizes", []), pieces),
        pieces=pieces,
        joins=joins,
        says=_text(plan.get("says", ""), "What the plan says"),
        other_costs=_costs(plan.get("other costs")),
    )
    for place, names in _places(garment):
        missing = next((name for name in names if garment.piece(name) is None), None)
        if missing is not None:
            raise RefusedError(f"{place} names the piece “{missing}”, which the plan does not have.")
    return garment


def plan_value(plan: GarmentPlan) -> dict[str, Any]:
    """The plan as plain values, from which ``plan_of`` makes it again."""
    value: dict[str, Any] = {"name": plan.name}
    if plan.ease:
        value["ease"] = plan.ease
    value["sizes"] = _sizes_value(plan.sizes)
    value["pieces"] = [_piece_value(piece) for piece in plan.pieces]
    if plan.joins:
        value["joins"] = [{"of": j.of, "edge": j.edge, "to": list(j.to), "at": j.at} for j in plan.joins]
    if plan.says:
        value["says"] = plan.says
    if plan.other_costs is not None:
        value["other costs"] = plan.other_costs
    return value


def _places(plan: GarmentPlan) -> list[tuple[str, Sequence[str]]]:
    """Every place that names other pieces."""
    found: list[tuple[str, Sequence[str]]] = [
        (f"Join {number}", (join.of, *join.to)) for number, join in enumerate(plan.joins, 1)
    ]
    return found + [(f"“{piece.name}”", [name for name, _ in piece.choice("along")]) for piece in plan.pieces]


def _piece(value: Any, number: int, whole: bool) -> GarmentPiece:
    where = f"Piece {number}"
    name = _text(_mapping(value, where).get("name", ""), f"The name of piece {number}").strip()
    if not name:
        raise RefusedError(f"{where} has no name: give it one.")
    where = f"“{name}”"
    shape = shape_called(_text(value.get("shape", ""), f"The shape of {where}"))
    said = _mapping(value, where, (*_PIECE, *shape.choices), of=f"a {shape.name}")
    worked = _text(said.get("worked", shape.ways[0]), f"How {where} is worked")
    if worked not in shape.ways:
        raise RefusedError(f"{where} can't be worked “{worked}”: a {shape.name} is worked {listed(shape.ways, 'or')}.")
    alike = said.get("alike", usual_alike(shape.name))
    if isinstance(alike, bool) or not isinstance(alike, int) or not 1 <= alike <= 1000:
        raise RefusedError(f"How many of {where} are alike must be a whole number from 1 to 1000.")
    return GarmentPiece(
        name=name,
        shape=shape.name,
        swatch=_swatch(said.get("swatch", ""), where),
        edge_swatch=_text(said.get("edge swatch", ""), f"The edge swatch of {where}"),
        alike=alike,
        worked=worked,
        seam=_text(said.get("seam", ""), f"The seam of {where}"),
        measures=_measures(said.get("measures", {}), where, shape, whole),
        choices={name: _choice(name, said[name], where) for name in shape.choices if name in said},
        says=_text(said.get("says", ""), f"What {where} says"),
    )


def _swatch(value: Any, where: str) -> str | Mapping[str, Any]:
    if not isinstance(value, dict):
        return _text(value, f"The swatch of {where}")
    for column, cell in value.items():
        if isinstance(cell, bool) or not isinstance(cell, str | int | float):
            raise RefusedError(f"The column “{column}” of the swatch of {where} must be a text or a number.")
    return dict(value)


def _measures(value: Any, where: str, shape: Shape, whole: bool) -> dict[str, str]:
    measures = _mapping(value, f"The measures of {where}", shape.measures, of=f"a {shape.name}", has="have")
    texts = {name: _text(text, f"The {name} of {where}") for name, text in measures.items()}
    missing = next((name for name in shape.needs if not texts.get(name, "").strip()), None)
    if whole and missing is not None:
        raise RefusedError(f"{where} has no {missing}: a {shape.name} needs {listed(shape.needs)}.")
    return {name: text for name, text in texts.items() if text.strip()}


def _choice(name: str, value: Any, where: str) -> Any:
    try:
        return CHOICES[name](value)
    except LogbookError as error:
        raise RefusedError(f"Couldn't read “{name}” of {where}: {str(error).rstrip('.')}.") from error


def _join(value: Any, number: int) -> GarmentJoin:
    where = f"Join {number}"
    said = _mapping(value, where, _JOIN)
    missing = next((name for name in _JOIN if name not in said), None)
    if missing is not None:
        raise RefusedError(f"{where} does not say “{missing}”: it needs of, edge, to and at.")
    to = said["to"] if isinstance(said["to"], list) else [said["to"]]
    if not to:
        raise RefusedError(f"{where} is joined to nothing: name the piece after “to”.")
    texts = {name: _text(said[name], f"“{name}” of join {number}") for name in ("of", "edge", "at")}
    for name in ("edge", "at"):
        if texts[name] not in EDGES:
            raise RefusedError(f"{where} names the edge “{texts[name][:40]}”: it is {listed(EDGES, 'or')}.")
    return GarmentJoin(
        of=texts["of"], edge=texts["edge"], at=texts["at"], to=tuple(_text(n, f"“to” of join {number}") for n in to)
    )


def _sizes(value: Any, pieces: Sequence[GarmentPiece]) -> GarmentSizes:
    if isinstance(value, list):
        return GarmentSizes(typed=_typed_sizes(value, pieces))
    said = _mapping(value, "The sizes", (*_SIZES, "typed"), of="they", has="have")
    end = said.get("end", End.MIDDLE.value)
    if end not in tuple(End):
        raise RefusedError(f"The sizes go by the “{end}” of a range: it is {listed(tuple(End), 'or')}.")
    return GarmentSizes(
        chart=_text(said.get("chart", ""), "The chart of the sizes"),
        only=tuple(_text(name, "A size") for name in _list(said.get("only", []), "only")),
        end=End(end),
        typed=_typed_sizes(_list(said.get("typed", []), "typed"), pieces),
    )


def _typed_sizes(value: Sequence[Any], pieces: Sequence[GarmentPiece]) -> tuple[TypedSize, ...]:
    sizes = tuple(_typed_size(size, number, pieces) for number, size in enumerate(value, 1))
    names = [size.name for size in sizes]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise RefusedError(f"The size “{twice}” is there twice: name each size once.")
    return sizes


def _typed_size(value: Any, number: int, pieces: Sequence[GarmentPiece]) -> TypedSize:
    by_name = {piece.name: piece for piece in pieces}
    known = ("size", "ease", "chest", *body_chart.MEASURES, *by_name)
    said = _mapping(value, f"Size {number}", known, of="a size")
    name = _text(said.get("size", ""), f"The name of size {number}").strip()
    if not name:
        raise RefusedError(f"Size {number} has no name: give it as “size”.")
    own: dict[str, dict[str, str]] = {}
    for piece in by_name.keys() & said.keys():
        where = f"“{piece}” of size {name}"
        measures = _mapping(said[piece], where, by_name[piece].kind.measures, of=f"a {by_name[piece].shape}")
        own[piece] = {measure: _text(text, f"The {measure} of {where}") for measure, text in measures.items()}
    body = {
        "bust" if measure == "chest" else measure: _text(said[measure], f"The {measure} of size {name}")
        for measure in ("chest", *body_chart.MEASURES)
        if measure in said
    }
    ease = None if "ease" not in said else _text(said["ease"], f"The ease of size {name}")
    return TypedSize(name=name, measures=body, ease=ease, pieces=own)


def _require_names(pieces: Sequence[GarmentPiece]) -> None:
    names = [piece.name for piece in pieces]
    for name in names:
        if names.count(name) > 1:
            raise RefusedError(f"Two pieces are called “{name}”: give each a name of its own.")
        if name in (*body_chart.MEASURES, *MEASURES, "ease", "size", "chest"):
            raise RefusedError(f"A piece can't be called “{name}”, which is a measure: give it another name.")


def _piece_value(piece: GarmentPiece) -> dict[str, Any]:
    said = {"edge swatch": piece.edge_swatch, "seam": piece.seam, "says": piece.says}
    return {
        "name": piece.name,
        "shape": piece.shape,
        "swatch": piece.swatch if isinstance(piece.swatch, str) else dict(piece.swatch),
        **{name: text for name, text in said.items() if text},
        "alike": piece.alike,
        "worked": piece.worked,
        "measures": dict(piece.measures),
        **{name: _choice_value(name, value) for name, value in piece.choices.items()},
    }


def _choice_value(name: str, value: Any) -> Any:
    if name == "along":
        return [list(place) for place in value]
    return f"{value * 100:g} %" if name == "draw in" else value


def _sizes_value(sizes: GarmentSizes) -> Any:
    typed = [
        {"size": size.name, **({} if size.ease is None else {"ease": size.ease}), **size.measures}
        | {piece: dict(measures) for piece, measures in size.pieces.items()}
        for size in sizes.typed
    ]
    if not sizes.chart:
        return typed
    value: dict[str, Any] = {"chart": sizes.chart, "end": sizes.end.value}
    return value | ({"only": list(sizes.only)} if sizes.only else {}) | ({"typed": typed} if typed else {})


def _mapping(
    value: Any, where: str, known: Sequence[str] | None = None, *, of: str = "it", has: str = "has"
) -> Mapping[str, Any]:
    if not isinstance(value, dict):
        raise RefusedError(f"{where} must be an object with names and values.")
    unknown = None if known is None else next((key for key in value if key not in known), None)
    if unknown is not None:
        raise RefusedError(f"{where} {has} “{str(unknown)[:40]}”, which is not known: {of} may have {listed(known or ())}.")
    return value


def _list(value: Any, what: str) -> list[Any]:
    if not isinstance(value, list):
        raise RefusedError(f"“{what}” must be a list.")
    if len(value) > _MOST:
        raise RefusedError(f"“{what}” has {len(value)} entries: the most is {_MOST}.")
    return value


def _costs(value: Any) -> float | None:
    try:
        return None if value in (None, "") else read_positive(str(value), "the other costs")
    except LogbookError as error:
        raise RefusedError(f"The other costs of the plan: {error}") from error


def _text(value: Any, what: str) -> str:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise RefusedError(f"{what} must be a text.")
    try:
        return clean_text(str(value))
    except LogbookError as error:
        raise RefusedError(f"{what}: {error}") from error
