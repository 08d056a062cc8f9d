"""Which hook gives which gauge: a line through ln pitch on ln hook, from swatches of one yarn, stitch, hand and condition.

Each trial weighs 1/(u² + 0.02²), u being half its give or take and 2 % what a second swatch strays from the first. Of M trials,
with two hooks at least, and χ² the weighted sum of squares about the line::

    c² = (4 + χ²)/(4 + M − 2)          a line that fits badly widens every answer
    U = t(97.5 %, M + 2)·√( c²·(x0ᵀ(XᵀWX)⁻¹x0 + 0.02²) )          for a new swatch with the hook at x0 = (1, ln hook)

x0ᵀ(XᵀWX)⁻¹x0 is the variance of the line itself at x0. Above 10 % no figure is given: that hook must be tried.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.student import t_975
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.words.hooks import HOOKS, show_hook
from logbook.errors import RefusedError

SWATCH_TO_SWATCH = 0.02
PRIOR = 4
MOST = 0.10
"""A give or take beyond this is no knowledge."""


@dataclass(frozen=True, slots=True)
class HookTrial:
    """One swatch as a point: its hook and stitch pitch in mm, and the pitch's relative half-width."""

    tag: str
    hook_mm: float
    pitch_mm: float
    give_or_take: float


@dataclass(frozen=True, slots=True)
class HookGauge:
    """What a new swatch with ``hook_mm`` would give: mm per stitch and its relative half-width; ``known`` if within 10 %."""

    hook_mm: float
    pitch_mm: float
    give_or_take: float
    tried: bool

    @property
    def known(self) -> bool:
        """Whether the figure is worth giving."""
        return self.give_or_take <= MOST


@dataclass(frozen=True, slots=True)
class HookLine:
    """The fitted line: ln pitch = ``middle_pitch`` + ``slope``·(ln hook − ``middle_hook``).

    ``weight`` is Σw, ``spread`` Σw·(ln hook − middle)², ``scatter`` c² and ``quantile`` t(M + 2).
    """

    trials: tuple[HookTrial, ...]
    middle_hook: float
    middle_pitch: float
    slope: float
    weight: float
    spread: float
    scatter: float
    quantile: float

    @property
    def hooks(self) -> tuple[float, ...]:
        """The hooks tried, thinnest first."""
        return tuple(sorted({trial.hook_mm for trial in self.trials}))

    def at(self, hook_mm: float) -> HookGauge:
        """What the line says of a hook."""
        away = math.log(hook_mm) - self.middle_hook
        variance = 1 / self.weight + away**2 / self.spread
        return HookGauge(
            hook_mm=hook_mm,
            pitch_mm=math.exp(self.middle_pitch + self.slope * away),
            give_or_take=self.quantile * math.sqrt(self.scatter * (variance + SWATCH_TO_SWATCH**2)),
            tried=hook_mm in self.hooks,
        )

    def table(self) -> tuple[HookGauge, ...]:
        """The trade's hooks and those tried besides, thinnest first."""
        return tuple(self.at(mm) for mm in sorted({hook.mm for hook in HOOKS} | set(self.hooks)))


def hook_trials(like: Swatch, others: Iterable[Swatch], condition: Condition, assumptions: Assumptions) -> tuple[HookTrial, ...]:
    """``like`` and the swatches of the same yarn, strands, stitch, hand and way of working, as far as they have hook and gauge.

    Swatches whose counts are too coarse to say how sure they are stay out.
    """
    same = [like, *(other for other in others if other.uid != like.uid and _alike(like, other))]
    trials = []
    for swatch in same:
        gauge = gauges_of(swatch, assumptions).get((condition, Direction.STITCHES))
        if swatch.hook_mm is not None and gauge is not None and gauge.give_or_take is not None:
            trials.append(HookTrial(swatch.tag, swatch.hook_mm, gauge.pitch_mm, gauge.give_or_take))
    return tuple(sorted(trials, key=lambda trial: trial.hook_mm))


def hook_line(trials: Sequence[HookTrial]) -> HookLine:
    """The line through ``trials``. Raises RefusedError unless two different hooks were tried, saying which to try."""
    hooks = sorted({trial.hook_mm for trial in trials})
    if len(hooks) < 2:
        raise RefusedError(_too_few_hooks(hooks))
    weights = [1 / ((trial.give_or_take / 2) ** 2 + SWATCH_TO_SWATCH**2) for trial in trials]
    x = [math.log(trial.hook_mm) for trial in trials]
    y = [math.log(trial.pitch_mm) for trial in trials]
    weight = math.fsum(weights)
    middle_x = math.fsum(w * v for w, v in zip(weights, x, strict=True)) / weight
    middle_y = math.fsum(w * v for w, v in zip(weights, y, strict=True)) / weight
    spread = math.fsum(w * (v - middle_x) ** 2 for w, v in zip(weights, x, strict=True))
    slope = math.fsum(w * (a - middle_x) * (b - middle_y) for w, a, b in zip(weights, x, y, strict=True)) / spread
    squares = math.fsum(w * (b - middle_y - slope * (a - middle_x)) ** 2 for w, a, b in zip(weights, x, y, strict=True))
    degrees = PRIOR + len(trials) - 2
    return HookLine(tuple(trials), middle_x, middle_y, slope, weight, spread, (PRIOR + squares) / degrees, t_975(degrees))


def hook_for(line: HookLine, pitch_mm: float) -> HookGauge | None:
    """The hook of the table whose known pitch is nearest to the wanted one; None if none is known.

    The answer may be far off: a wanted gauge beyond the hooks tried stays beyond them.
    """
    known = [gauge for gauge in line.table() if gauge.known]
    return min(known, key=lambda gauge: abs(math.log(gauge.pitch_mm / pitch_mm)), default=None)


def hook_notes(line: HookLine) -> tuple[str, ...]:
    """What to know about the line, as sentences."""
    notes = []
    if len(line.hooks) == 2:
        notes.append("Only two hooks were tried, so the figures for others are rough: try a third.")
    if line.slope <= 0:
        notes.append("A thicker hook gave a smaller stitch here: look for a swatch with the wrong hook or a wrong reading.")
    if line.scatter > 2:
        notes.append("The swatches do not agree well, so all figures here are rough: measure them again, or work one anew.")
    unknown = [gauge for gauge in line.table() if not gauge.known]
    if unknown:
        notes.append("Where it says “not known”, work a swatch with that hook: it is too far from those tried.")
    return tuple(notes)


def _alike(one: Swatch, other: Swatch) -> bool:
    def traits(swatch: Swatch) -> tuple[object, ...]:
        yarn, pattern = swatch.yarn, swatch.pattern
        return (
            yarn.uid if yarn else None,
            pattern.uid if pattern else None,
            swatch.worked_by.strip().casefold(),
            swatch.strands or 1,
            swatch.worked or "flat",
        )

    return traits(one) == traits(other)


def _too_few_hooks(hooks: Sequence[float]) -> str:
    if not hooks:
        return "No swatch of this yarn and stitch has a hook and a gauge in this state: log one first."
    (only,) = hooks
    smaller = max((hook.mm for hook in HOOKS if hook.mm < only - 0.4), default=None)
    larger = min((hook.mm for hook in HOOKS if hook.mm > only + 0.4), default=None)
    ways = [f"{show_hook(mm)} for {more} stitches" for mm, more in ((smaller, "more"), (larger, "fewer")) if mm is not None]
    return (
        f"Only the {show_hook(only)} hook was tried with this yarn and stitch, so nothing says what another gives: "
        f"work a swatch with {' or '.join(ways)}."
    )
