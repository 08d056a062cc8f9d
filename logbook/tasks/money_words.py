"""Time and money in words: how long, and what something costs its maker as she counts it; never what to ask for it."""

from collections.abc import Iterator

from logbook.craft.pieces.time_and_money import Price, TimeNeeded
from logbook.craft.words.counting import counted
from logbook.craft.words.numbers import grouped, show_number

HANDS_CAUTION = "Long hours: rest your hands and stretch; see a doctor about pain that stays."
_SHORT = 10 * 60
"""Minutes below which halves of an hour are told."""


def time_words(time: TimeNeeded) -> str:
    """``about 41 hours, give or take 9``, ``about 25 minutes``."""
    if time.minutes < 60:
        unit, scale, decimals = "minute", 1.0, 0
    else:
        unit, scale, decimals = "hour", 60.0, 0 if time.minutes >= _SHORT else 1
    said = f"about {counted(max(round(time.minutes / scale, decimals), 1), unit, decimals)}"
    if time.give_or_take_minutes is None:
        return said
    return f"{said}, give or take {show_number(time.give_or_take_minutes / scale, decimals)}"


def sentence_of(words: str) -> str:
    """Words as a sentence of their own."""
    return f"{words[:1].upper()}{words[1:]}."


def price_words(price: Price, hours: float | None, rate: float | None) -> Iterator[str]:
    """``Your costs: yarn 29.70, other costs 6.00, 41 hours at 12.00 492.00, together 527.70 EUR, give or take 108.00.``

    Nothing where the yarn's price is not known.
    """
    if price.yarn is None or price.whole is None:
        return
    parts = [f"yarn {_money(price.yarn)}"]
    if price.else_:
        parts.append(f"other costs {_money(price.else_)}")
    if price.work is not None and hours is not None and rate:
        parts.append(f"work {_money(price.work)} ({counted(hours, 'hour', 1)} at {_money(rate)})")
    currency = f" {price.currency}" if price.currency else ""
    if len(parts) == 1:
        yield f"The balls cost {_money(price.yarn)}{currency}."
        return
    sure = "" if price.give_or_take is None else f", give or take {_money(price.give_or_take)}"
    yield f"Your costs: {', '.join(parts)}; together {_money(price.whole)}{currency}{sure}."


def _money(amount: float) -> str:
    return grouped(amount, 2)
