"""The three things an empty logbook begins with: what is typed of them is typed into the form of a new swatch."""

from collections.abc import Mapping

from logbook.craft.swatches.conditions import Condition
from logbook.pages.swatches.form_texts import readings_key

STITCH, GAUGE, MEASURED = "stitch", "gauge", "measured"
FINISHED, UNWASHED = "washed", "not washed yet"
"""What the gauge was measured on. A gauge from a pattern or a ball band is of finished fabric."""
_KEYS = {FINISHED: readings_key(Condition.WASHED), UNWASHED: readings_key(Condition.WORKED)}


def form_texts(said: Mapping[str, str]) -> dict[str, str]:
    """The texts of the form that ``said`` (stitch, gauge, measured) types in."""
    gauge = "\n".join(part.strip() for part in said[GAUGE].split(";")).strip()
    of = {state: gauge if state == said[MEASURED] else "" for state in _KEYS}
    return {"stitch pattern": said[STITCH], **{_KEYS[state]: text for state, text in of.items()}}


def begin_texts(texts: Mapping[str, str], measured: str) -> dict[str, str]:
    """Stitch, gauge and what it was measured on as the form has them; ``measured`` where it has no reading."""
    state = next((state for state, key in _KEYS.items() if texts[key].strip()), measured)
    return {STITCH: texts["stitch pattern"], GAUGE: "; ".join(texts[_KEYS[state]].split("\n")), MEASURED: state}
