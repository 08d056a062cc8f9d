"""A garment's plan as the texts of its form, and the plan that typed texts say.

The texts of the garment stand by their own names, those of its pieces as ``piece 2: width``, those of its joins as
``join 1: of``. A piece keeps its number for as long as the garment is in hand; one that is taken out has no texts any more.
Choices and ticks are texts too.
"""

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from logbook.craft.garments.formulas import measure_of
from logbook.craft.garments.plan import Garment, GarmentJoin, GarmentPiece, GarmentPlan, GarmentSizes, usual_alike
from logbook.craft.garments.shapes import CHOICES, EDGES, MEASURES, shape_called
from logbook.craft.sizes import body_chart
from logbook.craft.sizes.body_chart import End
from logbook.craft.swatches.fields import exact, read_text
from logbook.craft.words.counting import listed
from logbook.craft.words.lengths import Ease, Units, read_ease
from logbook.craft.words.numbers import NUMBER, in_mark, read_positive, read_whole
from logbook.errors import UnreadableError
from logbook.pages.garments.own_sizes import read_sizes, sizes_text
from logbook.pages.text_reader import TextReader

Texts = Mapping[str, str]
TICKED = "yes"
NO_CHART = "none"
ENDS = {"low end": End.LOW, "middle": End.MIDDLE, "high end": End.HIGH}
GARMENT_KEYS = ("name", "ease", "chart", "only", "range", "own sizes", "other costs", "says", "notes")
PIECE_KEYS = ("name", "shape", "swatch", "edge swatch", "alike", "worked", "seam", "says", *MEASURES, *CHOICES)
JOIN_KEYS = ("of", "edge", "at", "to")
TAKEN_NAMES = frozenset((*body_chart.MEASURES, *MEASURES, "ease", "size", "chest"))
"""What no piece may be called."""
FLAGS = ("right side rows", "whole repeats", "exact")


@dataclass(frozen=True, slots=True)
class ReadGarment:
    """The plan as far as it can be read. ``errors`` has a sentence for each text that can't, ``lacking`` for what is still to be
    typed before the garment can be saved; ``pieces`` are the pieces that could be read, by their numbers, and ``joins`` the
    numbers of those that could, in the order of the plan's.
    """

    plan: GarmentPlan
    errors: Mapping[str, str]
    lacking: Mapping[str, str]
    pieces: Mapping[int, GarmentPiece] = field(default_factory=dict)
    joins: tuple[int, ...] = ()


def piece_key(number: int, key: str) -> str:
    """The name of a piece's text."""
    return f"piece {number}: {key}"


def join_key(number: int, key: str) -> str:
    """The name of a join's text."""
    return f"join {number}: {key}"


def numbers_in(texts: Texts, of: str, telling: str) -> list[int]:
    """The numbers of the pieces, or joins, there are."""
    found = (re.fullmatch(rf"{of} (\d+): {telling}", key) for key in texts)
    return sorted(int(match[1]) for match in found if match is not None and texts[match[0]])


def texts_of(garment: Garment) -> dict[str, str]:
    """The texts that say a garment."""
    plan = garment.plan
    texts = {
        "name": plan.name,
        "ease": plan.ease,
        "chart": plan.sizes.chart or NO_CHART,
        "only": ", ".join(plan.sizes.only),
        "range": next(word for word, end in ENDS.items() if end is plan.sizes.end),
        "own sizes": sizes_text(plan.sizes.typed),
        "other costs": "" if plan.other_costs is None else in_mark(exact(plan.other_costs)),
        "says": plan.says,
        "notes": garment.notes,
    }
    for number, piece in enumerate(plan.pieces, 1):
        texts |= piece_texts(number, piece)
    for number, join in enumerate(plan.joins, 1):
        texts |= join_texts(number, join)
    return texts


def piece_texts(number: int, piece: GarmentPiece) -> dict[str, str]:
    """The texts of a piece by their full names."""
    swatch = piece.swatch if isinstance(piece.swatch, str) else json.dumps(dict(piece.swatch), ensure_ascii=False)
    said = {
        "name": piece.name,
        "shape": piece.shape,
        "swatch": swatch,
        "edge swatch": piece.edge_swatch,
        "alike": str(piece.alike),
        "worked": piece.worked,
        "seam": piece.seam,
        "says": piece.says,
        **{name: _choice_text(name, piece.choices[name]) for name in CHOICES if name in piece.choices},
        **piece.measures,
    }
    return {piece_key(number, key): said.get(key, "") for key in PIECE_KEYS}


def join_texts(number: int, join: GarmentJoin) -> dict[str, str]:
    """The texts of a join by their full names."""
    said = {"of": join.of, "edge": join.edge, "at": join.at, "to": ", ".join(join.to)}
    return {join_key(number, key): text for key, text in said.items()}


def read_garment(texts: Texts, units: Units) -> ReadGarment:
    """Reads the texts; a length without a unit is in ``units``."""
    return _Reader(texts, units).read()


class _Reader:
    """Reads the garment, its pieces and its joins."""

    def __init__(self, texts: Texts, units: Units) -> None:
        self._texts, self._units = texts, units
        self._reader = TextReader(texts)
        self._errors = self._reader.errors
        self._lacking: dict[str, str] = {}
        self._pieces: dict[int, GarmentPiece] = {}

    def read(self) -> ReadGarment:
        for number in numbers_in(self._texts, "piece", "shape"):
            piece = self._piece(number)
            if piece is not None:
                self._pieces[number] = piece
        joins = {number: join for number in numbers_in(self._texts, "join", "of") if (join := self._join(number)) is not None}
        for key in ("name", "says", "notes"):
            self._try(key, lambda text: read_text(text))
        plan = GarmentPlan(
            name=self._text("name"),
            ease=self._try("ease", self._ease) or "",
            sizes=GarmentSizes(
                chart="" if self._text("chart") == NO_CHART else self._text("chart"),
                only=tuple(name.strip() for name in re.split("[,;]", self._text("only")) if name.strip()),
                end=ENDS.get(self._text("range"), End.MIDDLE),
                typed=self._try("own sizes", lambda text: read_sizes(text, tuple(self._pieces.values()))) or (),
            ),
            pieces=tuple(self._pieces.values()),
            joins=tuple(joins.values()),
            says=self._text("says"),
            other_costs=self._try("other costs", lambda text: read_positive(text, "an amount of money")),
        )
        for number, piece in self._pieces.items():
            self._check_formulas(plan, number, piece)
        if not plan.name:
            self._lacking["name"] = "Name the garment, for example “Quay cardigan”."
        return ReadGarment(plan, self._errors, self._lacking, self._pieces, tuple(joins))

    def _text(self, key: str) -> str:
        return self._texts.get(key, "").strip()

    def _try(self, key: str, read: Any) -> Any:
        return self._reader.read(key, read) if key in self._texts else None

    def _ease(self, text: str) -> str:
        whole = with_unit(text, self._units)
        read_ease(whole)
        return whole

    def _piece(self, number: int) -> GarmentPiece | None:
        """None for one that has no name of its own."""
        key = {name: piece_key(number, name) for name in PIECE_KEYS}
        name, shape = self._text(key["name"]), shape_called(self._text(key["shape"]))
        if not name:
            self._lacking[key["name"]] = "Name the piece, for example “back”."
            return None
        if any(piece.name == name for piece in self._pieces.values()):
            self._errors[key["name"]] = f"Two pieces are called “{name}”: give each a name of its own."
            return None
        if name in TAKEN_NAMES:
            self._errors[key["name"]] = f"“{name}” is a measure: give the piece another name."
            return None
        self._try(key["name"], read_text)
        self._try(key["says"], read_text)
        alike = self._try(key["alike"], lambda text: read_whole(text, "a number of pieces", 1, 1000))
        worked = self._text(key["worked"])
        return GarmentPiece(
            name=name,
            shape=shape.name,
            swatch=self._try(key["swatch"], _swatch) or "",
            edge_swatch=self._text(key["edge swatch"]),
            alike=alike or usual_alike(shape.name),
            worked=worked if worked in shape.ways else shape.ways[0],
            seam=self._try(key["seam"], self._seam) or "",
            measures={m: with_unit(text, self._units) for m in shape.measures if (text := self._text(key[m]))},
            choices={c: value for c in shape.choices if (value := self._choice(key[c], c)) is not None},
            says=self._text(key["says"]),
        )

    def _seam(self, text: str) -> str:
        return with_unit(text, self._units)

    def _choice(self, key: str, name: str) -> Any:
        text = self._text(key)
        if name == "mirrored":
            return None
        if name in FLAGS:
            return True if text == TICKED else None
        return self._try(key, (lambda said: CHOICES[name](_places(said))) if name == "along" else CHOICES[name])

    def _join(self, number: int) -> GarmentJoin | None:
        key = {name: join_key(number, name) for name in JOIN_KEYS}
        names = [piece.name for piece in self._pieces.values()]
        to = _pieces_named(self._text(key["to"]), names)
        planned = GarmentJoin(of=self._text(key["of"]), edge=self._text(key["edge"]), at=self._text(key["at"]), to=to)
        gone = next((name for name in (planned.of, *to) if name not in names), None)
        if not to or not planned.edge or not planned.at:
            self._lacking[key["to"]] = "Choose which edge it is joined to, and of which piece."
            return None
        if gone is not None:
            self._errors[key["of" if gone == planned.of else "to"]] = (
                f"There is no piece “{gone[:40]}”: the pieces are {listed(names)}."
            )
            return None
        return planned

    def _check_formulas(self, plan: GarmentPlan, number: int, piece: GarmentPiece) -> None:
        names = [*body_chart.MEASURES, "chest", "ease"]
        names += [f"{measure} of {one.name}" for one in plan.pieces for measure in one.kind.measures]
        for measure, text in piece.measures.items():
            try:
                measure_of(text, names, _some_length)
            except UnreadableError as error:
                self._errors[piece_key(number, measure)] = str(error)


def _some_length(name: str) -> float | Ease:
    return Ease(mm=100.0) if name == "ease" else 1000.0


def with_unit(text: str, units: Units) -> str:
    """A bare number with the unit that is meant; anything else as it is."""
    return f"{text} in" if units is Units.INCHES and re.fullmatch(rf"[-−+]?\s*{NUMBER}", text) else text


def _swatch(text: str) -> str | Mapping[str, Any]:
    """A tag; or, in braces, the columns of a swatch given in place."""
    if not text.startswith("{"):
        return text
    try:
        value = json.loads(text)
    except ValueError as error:
        raise UnreadableError("The swatch written into the plan can't be read: choose a logged swatch by its tag.") from error
    return {str(column): cell for column, cell in value.items()}


def _pieces_named(text: str, known: Sequence[str]) -> tuple[str, ...]:
    """``back, front`` or ``back and front``; a piece that is known may have a comma or an "and" in its own name."""
    own = "|".join(re.escape(name) for name in sorted(known, key=len, reverse=True))
    parted = r"\s*(?:,|\band\b|\Z)\s*"
    return tuple(name for name in re.findall(rf"((?:{own})(?={parted})|.+?){parted}", text) if name)


def _places(text: str) -> list[list[str]]:
    """``neck of back, front of front`` as pairs of piece and edge; a piece may have a comma in its name."""
    places = []
    edges = "|".join(map(re.escape, EDGES))
    for part in filter(None, (part.strip() for part in re.split(rf",(?=\s*(?:(?:{edges})\s+of\b|\Z))", text))):
        edge, of, piece = part.partition(" of ")
        if not of or edge.strip() not in EDGES:
            raise UnreadableError(f"“{part[:40]}” is not an edge of a piece: type it like “neck of back, front of front”.")
        places.append([piece.strip(), edge.strip()])
    return places


def _choice_text(name: str, value: Any) -> str:
    if name == "along":
        return ", ".join(f"{edge} of {piece}" for piece, edge in value)
    if name == "draw in":
        return f"{in_mark(f'{value * 100:g}')} %" if value else ""
    return (TICKED if value else "") if isinstance(value, bool) else str(value)


def copy_of(garment: Garment, names: Iterator[str]) -> Garment:
    """A copy to change and save, under the first of ``names``, not published."""
    return replace(garment, uid="", plan=replace(garment.plan, name=next(names)), published=None)


def renumbered(texts: Texts, pieces: Sequence[int], joins: Sequence[int]) -> dict[str, str]:
    """The texts under the numbers that pieces and joins have once they are saved: those there are, counted from 1."""
    new = {f"piece {old}": f"piece {number}" for number, old in enumerate(pieces, 1)}
    new |= {f"join {old}": f"join {number}" for number, old in enumerate(joins, 1)}
    found = {}
    for key, text in texts.items():
        of, colon, name = key.partition(": ")
        found[f"{new.get(of, of)}{colon}{name}"] = text
    return found


def with_pieces_at(texts: Texts, places: Mapping[int, int]) -> dict[str, str]:
    """The texts of the pieces under other numbers, by the numbers they have."""
    found = {}
    for key, text in texts.items():
        of, colon, name = key.partition(": ")
        kind, _, number = of.partition(" ")
        if kind == "piece" and colon and int(number) in places:
            found[piece_key(places[int(number)], name)] = text
    return found


def with_piece_names(texts: Texts, old: str, new: str) -> dict[str, str]:
    """The texts in which other pieces, joins and sizes call a piece by its new name, where they called it by the old one."""
    if not old or not new:
        return {}
    word = re.compile(rf"(?<!\w){re.escape(old)}(?!\w)")
    of = re.compile(rf"\bof {re.escape(old)}(?!\w)")
    changed: dict[str, str] = {}
    for key, text in texts.items():
        if key.startswith("join ") and key.rpartition(": ")[2] in ("of", "to"):
            changed[key] = word.sub(lambda _: new, text)
        elif key == "own sizes" or key.rpartition(": ")[2] in (*MEASURES, "along"):
            changed[key] = of.sub(lambda _: f"of {new}", text)
    return {key: text for key, text in changed.items() if text != texts[key]}
