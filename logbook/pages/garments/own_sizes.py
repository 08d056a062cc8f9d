"""A garment's own sizes as lines of text, so that they are typed, saved and taken back with the rest of the form.

    M: bust 96 cm; ease 6 cm; end width of sleeve 35 cm

A line is a size; what it says goes before the chart and before what a piece says.
"""

from collections.abc import Sequence
from dataclasses import replace

from logbook.craft.garments.plan import GarmentPiece, TypedSize
from logbook.craft.sizes.body_chart import MEASURES
from logbook.errors import UnreadableError

_EXAMPLE = "type it like “M: bust 96 cm; end width of sleeve 35 cm”"


def sizes_text(sizes: Sequence[TypedSize]) -> str:
    """The text that says these sizes: read again it gives the same."""
    return "\n".join(_line(size) for size in sizes)


def read_sizes(text: str, pieces: Sequence[GarmentPiece]) -> tuple[TypedSize, ...]:
    """The sizes. Raises UnreadableError naming what can't be read."""
    sizes = [_size(line, pieces) for line in text.splitlines() if line.strip()]
    names = [size.name for size in sizes]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise UnreadableError(f"The size “{twice}” is there twice: name each size once.")
    return tuple(sizes)


def with_own_measure(sizes: Sequence[TypedSize], size: str, piece: str, measure: str, text: str) -> tuple[TypedSize, ...]:
    """The sizes, with one measure of a piece said otherwise in one of them."""
    known = {one.name: one for one in sizes}
    before = known.get(size, TypedSize(name=size))
    own = {**before.pieces, piece: {**before.pieces.get(piece, {}), measure: text}}
    known[size] = replace(before, pieces=own)
    return tuple(known.values())


def own_words(sizes: Sequence[TypedSize], piece: str, measure: str) -> str:
    """Which sizes have a measure of a piece of their own, as a sentence; "" if none has."""
    own = [(size.name, size.pieces[piece][measure]) for size in sizes if measure in size.pieces.get(piece, {})]
    if not own:
        return ""
    if len(own) == 1:
        return "Size {} has its own: {}. It is under the garment’s “Sizes of your own”.".format(*own[0])
    listing = ", ".join(f"{name} {text}" for name, text in own)
    return f"These sizes have their own: {listing}. They are under the garment’s “Sizes of your own”."


def _line(size: TypedSize) -> str:
    ease = [] if size.ease is None else [f"ease {size.ease}"]
    body = [f"{name} {text}" for name, text in size.measures.items()]
    own = [f"{measure} of {piece} {text}" for piece, measures in size.pieces.items() for measure, text in measures.items()]
    return f"{size.name}: {'; '.join((*body, *ease, *own))}".rstrip()


def _size(line: str, pieces: Sequence[GarmentPiece]) -> TypedSize:
    name, colon, rest = line.partition(":")
    if not colon or not name.strip():
        raise UnreadableError(f"“{line.strip()[:40]}” is not a size: {_EXAMPLE}.")
    places = {f"{m} of {p.name}".casefold(): (p.name, m) for p in pieces for m in p.kind.measures}
    body: dict[str, str] = {}
    own: dict[str, dict[str, str]] = {}
    ease: str | None = None
    for part in filter(str.strip, rest.split(";")):
        said, value = _parted(part.strip(), (*places, *MEASURES, "chest", "ease"))
        if said == "ease":
            ease = value
        elif said in places:
            piece, measure = places[said]
            own.setdefault(piece, {})[measure] = value
        else:
            body["bust" if said == "chest" else said] = value
    return TypedSize(name=name.strip(), measures=body, ease=ease, pieces=own)


def _parted(part: str, known: Sequence[str]) -> tuple[str, str]:
    """What is measured, and its text."""
    words = " ".join(part.split())
    found = sorted((name for name in known if words.casefold().startswith(f"{name} ")), key=len)
    if not found:
        raise UnreadableError(f"“{words[:40]}” names no measure: {_EXAMPLE}.")
    return found[-1], words[len(found[-1]) :].strip(" =")
