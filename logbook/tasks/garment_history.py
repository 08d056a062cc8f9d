"""What has changed in a garment's plan, field by field: its piece and what of it, what was there and what is."""

import json
from collections.abc import Iterator, Mapping
from typing import Any

from logbook.craft.words.numbers import in_mark


def plan_changes(before: str, after: str, tags: Mapping[str, str]) -> Iterator[tuple[str, str, str]]:
    """(field, before, after) of each text that differs between two plans as they are kept; ``tags`` of swatches by their uids."""
    old, new = _texts(before, tags), _texts(after, tags)
    for field in dict.fromkeys((*old, *new)):
        if old.get(field, "") != new.get(field, ""):
            yield field, old.get(field, ""), new.get(field, "")


def _texts(text: str, tags: Mapping[str, str]) -> dict[str, str]:
    plan = json.loads(text) if text else {}
    found: dict[str, str] = {}
    for name, value in plan.items():
        if name == "pieces":
            for piece in value:
                found |= _of_piece(piece, tags)
        elif name == "joins":
            found["joins"] = "; ".join(f"{j['edge']} of {j['of']} – {j['at']} of {', '.join(j['to'])}" for j in value)
        elif name == "sizes" and isinstance(value, dict):
            found |= {f"sizes: {key}": _shown(said) for key, said in value.items()}
        else:
            found[name] = _shown(value)
    return found


def _of_piece(piece: Mapping[str, Any], tags: Mapping[str, str]) -> dict[str, str]:
    name = piece["name"]
    found: dict[str, str] = {}
    for key, value in piece.items():
        if key == "measures":
            found |= {f"{name}: {measure}": text for measure, text in value.items()}
        elif key != "name":
            found[f"{name}: {key}"] = tags.get(value, value) if isinstance(value, str) else _shown(value)
    return found


def _shown(value: Any) -> str:
    if isinstance(value, list) and all(isinstance(one, str) for one in value):
        return ", ".join(value)
    if isinstance(value, float):
        return in_mark(json.dumps(value))
    return value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)
