"""What a pattern says one needs: yarn, hook and gauge."""

from collections.abc import Iterator

from logbook.craft.gauges.gauge_line import gauge_line
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.yarn import yarn_words
from logbook.craft.words.counting import listed
from logbook.craft.words.hooks import hook_wanted
from logbook.craft.words.numbers import show_percent
from logbook.craft.words.printed_sizes import alike
from logbook.errors import RefusedError
from logbook.tasks.written.parts import Part
from logbook.tasks.written.written_garment import WrittenGarment


def materials(written: WrittenGarment) -> Part:
    """Yarns, hooks and small things, for all sizes."""
    lines = []
    yarns = {(of.yarn, of.colour): [] for size in written.sizes for of in size.yarn}  # type: ignore[var-annotated]
    for size in written.sizes:
        for of in size.yarn:
            yarns[of.yarn, of.colour].append(of.needed)
    for (name, colour), needs in yarns.items():
        called = " ".join(part for part in (name, colour) if part) or "Yarn"
        called += _about(written, name)
        if all(need.balls is not None for need in needs):
            balls = alike(need.balls for need in needs)
            line = f"{called}: {balls} ball{'' if balls == '1' else 's'}"
            if all(need.metres is not None for need in needs):
                line += f" (about {alike(round(need.metres) for need in needs)} m)"
        else:
            line = f"{called}: {alike(round(need.grams) for need in needs)} g"
        reserve = next(iter(written.cloths.values())).gauges.assumptions.reserve
        lines.append(line + (f", with {show_percent(reserve)} in reserve" if reserve else ""))
    weighed = set(yarns)
    for swatch in written.swatches.values():
        named = (swatch.yarn.name if swatch.yarn is not None else "", swatch.colour)
        if named[0] and named not in weighed:
            weighed.add(named)
            lines.append(f"{' '.join(filter(None, named))}: how much it takes is not known yet")
    hooks = sorted({swatch.hook_mm for swatch in written.swatches.values() if swatch.hook_mm is not None})
    lines += [hook_wanted(hook, written.terms) for hook in hooks]
    if lines:
        lines.append("Stitch markers; a tapestry needle for seams and ends")
    return Part("Materials", tuple(lines))


def _about(written: WrittenGarment, name: str) -> str:
    """`` (100 % cotton, 50 g = 115 m)``: what to look for in another yarn."""
    yarn = next(
        (swatch.yarn for swatch in written.swatches.values() if swatch.yarn is not None and swatch.yarn.name == name), None
    )
    about = yarn_words(yarn) if yarn is not None and name else ""
    return f" ({about})" if about else ""


def washing_words(written: WrittenGarment) -> str:
    """`` (wool cycle 30 °C, dried flat)``; "" where it is not known."""
    ways = sorted({swatch.way_of_washing for swatch in written.swatches.values() if swatch.way_of_washing})
    return f" ({listed(ways)})" if ways else ""


def gauge_lines(written: WrittenGarment) -> Iterator[str]:
    """The gauge of each swatch, then how to measure it."""
    seen = []
    for name, swatch in written.swatches.items():
        cloth = written.cloths[name]
        condition = cloth.gauges.condition
        if not swatch.readings_of(condition, Direction.STITCHES):
            condition = Condition.WORKED
        try:
            line = gauge_line(swatch, condition, cloth.gauges.assumptions, written.terms).split(": ", 1)[1]
        except RefusedError:
            continue
        if line not in seen:
            seen.append(line)
    yield from (f"{line}." for line in seen)
    washed = washing_words(written) or " and drying flat"
    yield (
        f"Measure after washing{washed}, in the middle of the swatch and at several places: "
        "how far some whole stitches and rows reach."
    )
