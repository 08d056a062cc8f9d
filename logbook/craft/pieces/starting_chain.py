"""How many to chain for a width.

    W(S) = S·p + 2e        S = m·k + b       C = S + t

T the finished width wanted, p the stitch pitch, e the edging on each side, m the multiple, b the plus, t the extra chains, k
whole repeats. The options (see ``options``) are the whole k ≥ 1 around the exact one. In the round the flat plus is not used, and
C = S unless row 1 is worked flat and then joined; foundation stitches make chain and row one at once, so C = S as well.
"""

from dataclasses import dataclass, replace

from logbook.craft.pieces.options import (
    Choose,
    Count,
    FirstStitchUnknownError,
    Option,
    Parity,
    Pitch,
    options_for,
    whole_around,
)
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainRule:
    """How a stitch count and a chain come of k repeats, and what the maker asks of them.

    ``extra_chains`` None: not known. ``half_plus``: S = m·k + half_plus + (m/2 rounded down) is allowed too, ending on half a
    repeat.
    """

    multiple: int = 1
    plus: int = 0
    extra_chains: int | None = 0
    in_round: bool = False
    round_plus: int = 0
    joined_after_row_1: bool = False
    foundation_stitches: bool = False
    half_plus: int | None = None
    parity: Parity = Parity.ANY
    choose: Choose = Choose.NEAREST

    @staticmethod
    def of(pattern: StitchPattern) -> "ChainRule":
        """What the pattern says of whole repeats worked flat. Raises RefusedError if it contradicts itself."""
        return ChainRule(multiple=pattern.multiple or 1, plus=pattern.plus or 0, extra_chains=pattern.extra())

    @property
    def stitches_beside(self) -> int:
        """b: the base stitches beside whole repeats."""
        return self.round_plus if self.in_round else self.plus

    @property
    def chains_beside(self) -> int | None:
        """t: the chains beside base stitches; None if they are wanted and not known."""
        if self.foundation_stitches or (self.in_round and not self.joined_after_row_1):
            return 0
        return self.extra_chains

    def chain_of(self, stitches: int) -> int | None:
        """C of so many base stitches."""
        return None if self.chains_beside is None else stitches + self.chains_beside

    def known_chain_of(self, stitches: int) -> int:
        """C of so many base stitches. Raises FirstStitchUnknownError."""
        if self.chains_beside is None:
            raise FirstStitchUnknownError
        return stitches + self.chains_beside

    def stitches_of(self, chain: int) -> int:
        """S of so many chains. Raises FirstStitchUnknownError, or RefusedError for a chain without a stitch in it."""
        if self.chains_beside is None:
            raise FirstStitchUnknownError
        if chain <= self.chains_beside:
            raise RefusedError(f"A chain of {chain} is too short: {self.chains_beside} of it are the turning chain.")
        return chain - self.chains_beside


def starting_chains(target_mm: float, width: Pitch, rule: ChainRule) -> tuple[Option, ...]:
    """The options for a finished width of ``target_mm``, narrowest first, just one of them recommended.

    Raises RefusedError for a target that is not above nought, or a rule that cannot be.
    """
    _require_sound(target_mm, rule)
    exact = (target_mm - width.ends_mm) / width.mm
    counts = [Count(n, repeats, n, rule.chain_of(n)) for repeats, n in sorted(set(_counts_around(exact, rule)), key=_stitches)]
    return options_for(target_mm, width, counts, rule.choose)


def chains_around(chain: int, width: Pitch, rule: ChainRule) -> tuple[Option, ...]:
    """``chain`` and the nearest the rule allows on both sides of it, or those alone if it does not allow ``chain`` itself.

    Recommended is ``chain``, else the nearer of the others, on a tie the narrower; wanted is the width that ``chain`` makes.
    Raises FirstStitchUnknownError, or RefusedError for a chain without a stitch in it.
    """
    found = starting_chains(width.reach(rule.stitches_of(chain)), width, replace(rule, choose=Choose.NEAREST))
    fewer = [option for option in found if option.known_chain < chain][-1:]
    more = [option for option in found if option.known_chain > chain][:1]
    return (*fewer, *(option for option in found if option.chain == chain), *more)


def _stitches(count: tuple[float, int]) -> int:
    """Half repeats have a plus of their own, so that more repeats may be fewer stitches."""
    return count[1]


def _counts_around(exact_stitches: float, rule: ChainRule) -> list[tuple[float, int]]:
    """(repeats, stitches) of the options around the exact stitch count."""
    multiple, beside = rule.multiple, rule.stitches_beside
    if rule.parity is not Parity.ANY:  # plain stitches: every second count
        offset = 0 if rule.parity.fits(beside) else 1
        pairs = whole_around((exact_stitches - beside - offset) / 2, least=1 - offset)
        return [(2 * pair + offset, 2 * pair + offset + beside) for pair in pairs]
    counts: list[tuple[float, int]] = [
        (k, multiple * k + beside) for k in whole_around((exact_stitches - beside) / multiple, least=1)
    ]
    if rule.half_plus is not None and not rule.in_round:
        half = multiple // 2 + rule.half_plus
        counts += [(k + 0.5, multiple * k + half) for k in whole_around((exact_stitches - half) / multiple, least=1)]
    return counts


def _require_sound(target_mm: float, rule: ChainRule) -> None:
    if not target_mm > 0:
        raise RefusedError("The finished width must be more than 0: check the body measure, the ease and the seam.")
    if rule.multiple < 1 or rule.stitches_beside < 0 or (rule.chains_beside or 0) < 0:
        raise RefusedError("The multiple must be at least 1; the plus and the extra chains at least 0.")
    if rule.parity is not Parity.ANY and rule.multiple != 1:
        raise RefusedError(f"An {rule.parity} count goes with plain stitches only, not with a multiple of {rule.multiple}.")
    if rule.half_plus is not None and rule.multiple % 2:
        raise RefusedError(f"A multiple of {rule.multiple} has no half repeat: leave out the plus for a half repeat.")
