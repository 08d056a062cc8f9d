"""The written pattern of the garment in hand, and what is said above it."""

from logbook.craft.garments.plan import Garment
from logbook.craft.words.counting import listed
from logbook.craft.words.dates import date_words
from logbook.craft.words.terms import Terms
from logbook.errors import LogbookError, RefusedError
from logbook.pages.garments.garment_card import GarmentCard, GarmentMaker
from logbook.tasks.garment_publishing import published, would_change


def pattern_said(saved: Garment | None, maker: GarmentMaker, card: GarmentCard, terms: Terms) -> tuple[str, str]:
    """As published where it was published, with what would be otherwise now; else as it is now."""
    from logbook.tasks.garment_files import pattern_text, written
    from logbook.tasks.written.missing import missing

    says: list[str] = []
    text = ""
    try:
        before = published(saved) if saved is not None else None
    except RefusedError as error:
        before, says = None, [f"✕ {error}"]
    try:
        answer = maker.whole()
    except LogbookError as error:
        answer, says = None, [*says, f"✕ {error}"]
    if before is not None:
        text = before.texts.get(terms.value, "")
        says.insert(0, f"As published on {date_words(before.date)}.")
        if answer is not None:
            changes = would_change(before, answer)
            says += [f"Now: {change}" for change in changes[:4]] or ["Nothing in it would be different now."]
            if len(changes) > 4:
                says.append(f"And {len(changes) - 4} more.")
    elif answer is not None:
        text = pattern_text(answer, terms)
        lacking = missing(written(answer, terms))
        says += ["Before it can be published:", *(f"– {one}" for one in lacking)] if lacking else []
    if text and maker.bad_sizes:
        bad = [size for size in card.sizes if size in maker.bad_sizes]
        where = f"in {listed(bad)} " if len(card.sizes) > 1 else ""
        says.append(f"! Something does not fit {where}yet: “Sizes” says what.")
    return text, "\n".join(says)
