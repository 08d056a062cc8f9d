"""The form of the garment in hand: its texts as they are typed, which of its pieces and joins is chosen, and saving it."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

from logbook.craft.garments.plan import Garment, GarmentJoin, GarmentPiece, GarmentPlan, usual_alike
from logbook.craft.garments.shapes import PANEL, TAPERED, shape_called
from logbook.craft.garments.templates import new_piece, template
from logbook.craft.garments.usual_joins import usual_joins
from logbook.pages.garments import garment_texts as said
from logbook.pages.garments.garment_texts import ReadGarment, join_key, piece_key
from logbook.pages.pieces.plan_texts import taken_unit
from logbook.pages.session import Session
from logbook.pages.swatches.swatch_choice import SwatchChoice
from logbook.pages.typed_since import typed_since
from logbook.tasks.body_charts import chart_texts
from logbook.tasks.drafts import Draft
from logbook.tasks.garments import garments, save_garment
from logbook.tasks.pieces import copy_names

NEW = Garment(plan=GarmentPlan(name=""))


class GarmentForm:
    """One garment in hand, new or saved. ``texts`` are changed through ``type_in`` and what adds or takes out alone.

    ``piece`` and ``join`` are the numbers of those chosen, 0 for none: then the form is that of the whole garment.
    """

    def __init__(self, session: Session) -> None:
        self._session = session
        self.swatches = SwatchChoice(session)
        self.saved: Garment | None = None
        self.piece = self.join = 0
        self._named = self._swatch = ""
        self._called: dict[str, str] = {}
        self._start = NEW
        self.refresh()
        self.new()

    def refresh(self) -> None:
        """Takes garments and swatches from the logbook again; what is typed stays."""
        self._garments = {garment.uid: garment for garment in garments(self._session.book)}
        self.swatches.refresh()

    @property
    def garments(self) -> Mapping[str, Garment]:
        """All garments of the logbook, by uid."""
        return self._garments

    @property
    def charts(self) -> tuple[str, ...]:
        """What sizes may come from."""
        return (said.NO_CHART, *chart_texts(self._session.book))

    @property
    def uid(self) -> str:
        """The uid of the garment in hand, "" for a new one."""
        return self.saved.uid if self.saved else ""

    @property
    def title(self) -> str:
        """What is in hand, in words."""
        name = self.saved.name if self.saved else "New garment"
        if self.piece:
            name = f"{self.piece_text('name') or 'A piece'} of {self.texts['name'].strip() or 'the new garment'}"
        return f"{name} · not saved" if self.is_dirty else name

    @property
    def is_dirty(self) -> bool:
        """Whether something is typed that is not saved."""
        return any(text.strip() != self._clean.get(key, "").strip() for key, text in self.texts.items())

    @property
    def opened(self) -> Mapping[str, str]:
        """The texts as they were when it was taken in hand."""
        return {key: self._clean.get(key, "") for key in self.texts}

    @property
    def pieces(self) -> list[int]:
        """The numbers of its pieces."""
        return said.numbers_in(self.texts, "piece", "shape")

    @property
    def joins(self) -> list[int]:
        """The numbers of its joins."""
        return said.numbers_in(self.texts, "join", "of")

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """The texts of the draft's garment, or of a new one's namesake, as the logbook has it; None: there is none."""
        if draft.is_new:
            named = (one for one in self._garments.values() if one.name == draft.typed.get("name", "").strip())
            found = next(named, None)
        else:
            found = self._garments.get(draft.record)
        return said.texts_of(found) if found is not None else None

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> None:
        """Takes the draft's garment in hand, or a new one where there is none, with these texts typed."""
        if draft.is_new or not self.show(draft.record):
            self.new()
        self.texts |= texts
        for number in self.pieces:
            self.texts |= {key: "" for name in said.PIECE_KEYS if (key := piece_key(number, name)) not in self.texts}
        for number in self.joins:
            self.texts |= {key: "" for name in said.JOIN_KEYS if (key := join_key(number, name)) not in self.texts}

    def type_in(self, key: str, text: str) -> None:
        """Takes the text of one field as it stands now; what calls a piece by its name follows that."""
        before = self.texts.get(key, "").strip()
        self.texts[key] = text
        if key.startswith("piece ") and key.endswith(": name"):
            self._call(key, before, text.strip())

    def _call(self, key: str, before: str, name: str) -> None:
        """What calls a piece by its name calls it by the new one; while that is none, or another's, by the last of its own."""
        old = self._called.setdefault(key, before)
        others = {text.strip() for other, text in self.texts.items() if other != key and re.fullmatch(r"piece \d+: name", other)}
        if name and name != old and not {name, old} & (others | said.TAKEN_NAMES):
            self.texts |= said.with_piece_names(self.texts, old, name)
            self._called[key] = name

    def piece_text(self, key: str) -> str:
        """A text of the piece chosen."""
        return self.texts.get(piece_key(self.piece, key), "").strip()

    def taken_unit(self, ease: str) -> str:
        """The unit that an ease typed without one is read in; "" where there is nothing to say."""
        return taken_unit(ease, self._session.units)

    def read(self) -> ReadGarment:
        """The plan as it stands typed."""
        read = said.read_garment(self.texts, self._session.units)
        wrong = {}
        pieces = []
        for number, piece in read.pieces.items():
            for key in ("swatch", "edge swatch") if piece.kind.edge_stitches else ("swatch",):
                name = piece_key(number, key)
                if isinstance(piece.swatch, str) and (unknown := self.swatches.unknown(self.texts[name])):
                    wrong[name] = unknown
            swatch = self.swatches.tag(piece.swatch) if isinstance(piece.swatch, str) else piece.swatch
            pieces.append(replace(piece, swatch=swatch, edge_swatch=self.swatches.tag(piece.edge_swatch)))
        by_number = dict(zip(read.pieces, pieces, strict=True))
        plan = replace(read.plan, pieces=tuple(pieces))
        return replace(read, plan=plan, pieces=by_number, errors={**wrong, **read.errors})

    def show(self, uid: str) -> bool:
        """Takes a saved garment in hand; False if it is not there any more."""
        found = self._garments.get(uid)
        if found is not None:
            self._take(found, found)
        return found is not None

    def new(self) -> None:
        """Takes an empty garment in hand."""
        self._take(None, NEW)

    def begin(self, name: str, swatch: str) -> None:
        """Takes a new garment in hand, from a template and with one swatch for all its pieces; not saved."""
        self.take_plan(template(name, swatch))
        self._swatch = swatch

    def take_plan(self, plan: GarmentPlan) -> None:
        """Takes a new garment of that plan in hand, not saved."""
        self._take(None, Garment(plan=plan))
        self._clean = said.texts_of(NEW)

    def same_again(self) -> None:
        """Takes a copy of the saved garment in hand, under a free name and not saved yet."""
        if self.saved is not None:
            names: Iterator[str] = copy_names(self.saved.name, (one.name for one in self._garments.values()))
            self.take_plan(said.copy_of(self.saved, names).plan)

    def revert(self) -> None:
        """Goes back to what is saved, or for a new garment to an empty form."""
        chosen = self.piece
        if self.saved is None or not self.show(self.uid):
            self.new()
        self.piece = chosen if chosen in self.pieces else 0

    def save(self) -> Mapping[str, str]:
        """Saves what is typed; then it is the garment in hand. What stands in the way comes back, a sentence a text.

        Raises RefusedError for what is no field's fault; nothing is lost then. What is typed while it waits stays, not saved.
        """
        read, before = self.read(), dict(self.texts)
        errors = {**read.lacking, **self._taken(read.plan.name), **read.errors}
        if errors:
            return errors
        garment = replace(self._start, uid=self.uid, plan=read.plan, notes=self.texts["notes"].strip())
        uid = self._session.write(lambda: save_garment(self._session.book, garment))
        since = typed_since({**dict.fromkeys(self.texts, ""), **before}, self.texts)
        chosen = list(read.pieces).index(self.piece) + 1 if self.piece in read.pieces else 0
        self.refresh()
        self.show(uid)
        self.piece = chosen
        self.texts |= said.renumbered(since, list(read.pieces), read.joins)
        return {}

    def changed_elsewhere(self) -> bool:
        """Whether the logbook holds this garment otherwise now than when it was taken in hand; after ``refresh``."""
        return self.saved is not None and self._garments.get(self.uid) != self.saved

    def add_piece(self, shape: str = PANEL) -> None:
        """Adds a piece after the last, from the swatch of the one chosen or the last, and chooses it."""
        plan = self.read().plan
        like = self.piece or (self.pieces[-1] if self.pieces else 0)
        swatch = self.texts.get(piece_key(like, "swatch"), self._swatch)
        kind = shape_called(shape)
        name = self._named = new_piece(shape, plan)
        planned = GarmentPiece(name=name, shape=shape, alike=_usual_number(shape), worked=kind.ways[0])
        number = self._next("piece")
        self.texts |= {**said.piece_texts(number, planned), piece_key(number, "swatch"): swatch}
        self.piece = number

    def move_piece(self, to: int) -> bool:
        """Moves the piece chosen to that place among the pieces, from 0; whether it moved."""
        order = self.pieces
        if self.piece not in order or not 0 <= to < len(order) or order.index(self.piece) == to:
            return False
        moved = [number for number in order if number != self.piece]
        moved.insert(to, self.piece)
        places = dict(zip(moved, order, strict=True))
        self.texts |= said.with_pieces_at(self.texts, places)
        self.piece = places[self.piece]
        return True

    def take_piece_out(self) -> None:
        """Takes the piece chosen out, and the joins that name it."""
        name = self.piece_text("name")
        for number in self.joins:
            to = [one.strip() for one in self.texts[join_key(number, "to")].split(",")]
            if self.texts[join_key(number, "of")].strip() == name or to == [name]:
                self._clear("join", number)
            elif name in to:
                self.texts[join_key(number, "to")] = ", ".join(one for one in to if one != name)
        self._clear("piece", self.piece)
        self.piece = 0

    def change_shape(self) -> None:
        """The piece chosen has another shape now: how it is worked, and how many are alike, are as usual there; and its name, if
        it was not typed.
        """
        kind = shape_called(self.piece_text("shape"))
        if self.piece_text("worked") not in kind.ways:
            self.texts[piece_key(self.piece, "worked")] = kind.ways[0]
        self.texts[piece_key(self.piece, "alike")] = str(_usual_number(kind.name))
        if self.piece_text("name") == self._named:
            plan = self.read().plan
            others = tuple(piece for piece in plan.pieces if piece.name != self._named)
            self._named = new_piece(kind.name, replace(plan, pieces=others))
            self.type_in(piece_key(self.piece, "name"), self._named)

    def add_join(self) -> None:
        """Adds a join, of the piece chosen or the first, and chooses it."""
        names = [self.texts[piece_key(number, "name")].strip() for number in self.pieces]
        number = self._next("join")
        of = self.piece_text("name") or (names[0] if names else "")
        to = next((name for name in names if name != of), of)
        self.texts |= said.join_texts(number, GarmentJoin(of=of, edge="side", to=(to,), at="side"))
        self.join = number

    def take_join_out(self) -> None:
        """Takes the join chosen out."""
        self._clear("join", self.join)
        self.join = 0

    def take_usual_joins(self) -> int:
        """Adds the joins that such pieces usually get and that are not there yet; how many that were."""
        plan = self.read().plan
        known = {(join.of, join.edge, join.at) for join in plan.joins}
        new = [join for join in usual_joins(plan) if (join.of, join.edge, join.at) not in known]
        for join in new:
            self.texts |= said.join_texts(self._next("join"), join)
        return len(new)

    def with_swatches(self, tags: Mapping[str, str]) -> GarmentPlan:
        """The plan as typed with other swatches (old tag → new tag)."""
        plan = self.read().plan
        pieces = [
            replace(
                piece,
                swatch=tags.get(piece.swatch, piece.swatch) if isinstance(piece.swatch, str) else piece.swatch,
                edge_swatch=tags.get(piece.edge_swatch, piece.edge_swatch),
            )
            for piece in plan.pieces
        ]
        return replace(plan, pieces=tuple(pieces))

    def free_name(self) -> str:
        """A name for one like that in hand."""
        return next(copy_names(self.texts["name"].strip() or "Garment", (one.name for one in self._garments.values())))

    def _next(self, of: str) -> int:
        telling = "shape" if of == "piece" else "of"
        used = (re.fullmatch(rf"{of} (\d+): {telling}", key) for key in self.texts)
        return max((int(match[1]) for match in used if match is not None), default=0) + 1

    def _clear(self, of: str, number: int) -> None:
        for key in self.texts:
            if key.startswith(f"{of} {number}: "):
                self.texts[key] = ""

    def _taken(self, name: str) -> dict[str, str]:
        if any(one.name == name and uid != self.uid for uid, one in self._garments.items()):
            return {"name": f"There is another garment called “{name}”: choose another name."}
        return {}

    def _take(self, saved: Garment | None, shown: Garment) -> None:
        self.saved, self._start = saved, shown
        self.texts = said.texts_of(shown)
        self._clean = dict(self.texts)
        self._called.clear()
        self._swatch = ""
        self.piece = self.join = 0


def _usual_number(shape: str) -> int:
    """How many of a piece one begins with: sleeves come in pairs, as half fronts do."""
    return 2 if shape == TAPERED else usual_alike(shape)
