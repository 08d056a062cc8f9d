"""One piece of a garment as it is written down, in all sizes at once: chain, rows, shaping, counts after every change."""

from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import CROWN, DOWN, EDGING, FROM_TOP, RAGLAN, ROUND_YOKE, SIDEWAYS, TAPERED, TRIANGLE
from logbook.tasks.written.edging_lines import edging_lines
from logbook.tasks.written.panel_lines import panel_lines
from logbook.tasks.written.parts import Part
from logbook.tasks.written.piece_in_sizes import PieceInSizes, is_mirrored
from logbook.tasks.written.round_lines import crown_lines, raglan_lines, round_yoke_lines
from logbook.tasks.written.taper_lines import taper_lines, triangle_lines

_LINES = {
    TAPERED: taper_lines,
    RAGLAN: raglan_lines,
    ROUND_YOKE: round_yoke_lines,
    CROWN: crown_lines,
    TRIANGLE: triangle_lines,
    EDGING: edging_lines,
}


def written_piece(of: PieceInSizes) -> Part:
    """The part of the pattern for a piece."""
    lines = _LINES.get(of.one.planned.shape, panel_lines)
    said = [of.one.planned.says] if of.one.planned.says.strip() else []
    said += [f"Worked in {of.stitch}."] if of.stitch else []
    return Part(heading(of.one), (*said, *lines(of)), of.one.name)


def heading(piece: ShapedPiece) -> str:
    """``Sleeve (make 2), worked from the bottom up``."""
    planned = piece.planned
    name = planned.name[:1].upper() + planned.name[1:]
    if is_mirrored(piece):
        name += " (make 2, the second mirrored)"
    elif planned.alike > 1:
        name += f" (make {planned.alike})"
    if planned.shape == EDGING:
        return name
    if piece.on is not None:
        return f"{name}, worked on from the {piece.on.piece}"
    if piece.in_round:
        return f"{name}, worked in the round" + (" from the top" if planned.shape in FROM_TOP else "")
    if planned.shape == TRIANGLE:
        return f"{name}, worked from the tip"
    how = {DOWN: "from the top down", SIDEWAYS: "sideways"}.get(planned.worked, "from the bottom up")
    return f"{name}, worked {how}"
