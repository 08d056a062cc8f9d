"""The measures of a garment's pieces as formulas of a spreadsheet: from body and ease of each size, and from one another."""

from collections.abc import Callable, Sequence
from urllib.parse import quote

from logbook.craft.garments.body import GarmentSize, measure_named, measure_names
from logbook.craft.garments.formulas import measure_of
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import MAY_BE_NOUGHT
from logbook.craft.pieces.seams import seam_if_named
from logbook.craft.words.lengths import Ease

EASE = "~ease"


def of_body(measure: str) -> str:
    """The key of a size's own measure."""
    return f"~{measure}"


def of_piece(name: str, key: str) -> str:
    """The key by which the formulas of other pieces call a number of the piece of that name."""
    return f"{quote(name, safe='')}.{key}"


class _Traced(float):
    """A length or share that remembers the formula it came of."""

    text: str

    def __new__(cls, value: float, text: str) -> "_Traced":
        made = super().__new__(cls, value)
        made.text = text
        return made

    def __add__(self, other: float) -> "_Traced":
        return _Traced(float(self) + float(other), f"({self.text}+{_text(other)})")

    def __radd__(self, other: float) -> "_Traced":
        return _Traced(float(other) + float(self), f"({_text(other)}+{self.text})")

    def __mul__(self, other: float) -> "_Traced":
        return _Traced(float(self) * float(other), f"{self.text}*{_text(other)}")

    def __rmul__(self, other: float) -> "_Traced":
        return _Traced(float(other) * float(self), f"{_text(other)}*{self.text}")


def _text(value: float) -> str:
    return value.text if isinstance(value, _Traced) else f"({float(value)!r})"


class LiveMeasures:
    """What the pieces of a garment measure in one size; ``live``: those whose measures stand in the sheet."""

    def __init__(self, size: GarmentSize, pieces: Sequence[ShapedPiece], live: Sequence[str]) -> None:
        self._size, self._live = size, live
        self._pieces = {piece.name: piece for piece in pieces}
        self._names = measure_names([piece.planned for piece in pieces])
        self.used: set[str] = set()

    def formula(self, piece: ShapedPiece, measure: str) -> str:
        """In cm, with what seams take, other cells in braces; "" where it is typed as a length. ``used`` has what it goes by."""
        mm = self._mm(piece, measure)
        if not isinstance(mm, _Traced):
            return ""
        seam = self._seam(piece, piece.wanted[measure] - max(mm, 0.0))
        wanted = f"MAX(0,{mm.text})" if measure in MAY_BE_NOUGHT else mm.text
        return f"({wanted}{seam})/10"

    def _seam(self, piece: ShapedPiece, mm: float) -> str:
        """What seams take: a length, or by the name of the seam so many stitches."""
        if abs(mm) < 1e-9:
            return ""
        if seam_if_named(piece.planned.seam) is None:
            return f"+{mm!r}"
        return f"+{mm / piece.stitch_mm!r}*{{{of_piece(piece.name, 'p')}}}"

    def _mm(self, piece: ShapedPiece, measure: str) -> float:
        text = self._size.pieces.get(piece.name, {}).get(measure) or piece.planned.measures[measure]
        return measure_of(text, self._names, self._value)

    def _value(self, name: str) -> float | Ease:
        if name == "ease":
            return self._ease()
        if " of " in name:
            measure, planned = measure_named(name, [piece.planned for piece in self._pieces.values()])
            piece = self._pieces[planned.name]
            mm = float(self._mm(piece, measure))
            if piece.name not in self._live:
                return max(mm, 0.0)
            seam = self._seam(piece, max(mm, 0.0) - piece.wanted[measure])
            return _Traced(max(mm, 0.0), f"({{{of_piece(piece.name, measure)}}}*10{seam})")
        body = "bust" if name == "chest" else name
        self.used.add(body)
        return _Traced(self._size.body[body], f"{{{of_body(body)}}}*10")

    def _ease(self) -> Ease:
        ease = self._size.ease
        self.used.add("ease")
        if ease.share:
            return Ease(share=_Traced(ease.share, f"{{{EASE}}}"))
        return Ease(mm=_Traced(ease.mm, f"{{{EASE}}}*10"))


def filled(text: str, cell_of: Callable[[str], str]) -> str:
    """A formula with its keys in braces, each put in by the cell that it stands for."""
    parts = text.split("{")
    return parts[0] + "".join(cell_of(part.partition("}")[0]) + part.partition("}")[2] for part in parts[1:])
