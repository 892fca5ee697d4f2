"""An entry of the log in words and as plain values."""

from typing import Any

from calmlarder.intake.cap_words import component_words
from calmlarder.intake.eaten import Eaten
from calmlarder.intake.load import at_most_of
from calmlarder.tables.vocabulary import GROUPS


def eaten_object(number: int | None, entry: Eaten) -> dict[str, Any]:
    """An entry as plain values, `id` where it is kept; loads in g by group, all classes together."""
    known = GROUPS if entry.loads or not entry.unknown else ()
    return {
        "id": number,
        "at": entry.at.isoformat(timespec="minutes"),
        "who": entry.who,
        "text": entry.text,
        "food": entry.food or None,
        "title": entry.title,
        "grams": entry.grams,
        "loads_g": {group: _likely(entry, group) for group in known},
        "at_most_g": {group: _at_most(entry, group) for group in known},
        "unknown": list(entry.unknown),
    }


def eaten_line(number: int | None, entry: Eaten) -> str:
    """An entry in one line."""
    total, lactose = (_likely(entry, group) for group in ("total", "lactose"))
    brings = f"{total:.2f} g total without lactose, {lactose:.2f} g lactose"
    if entry.unknown:
        brings = f"figures not known of {component_words(entry.unknown)}: not counted, which is not zero"
    shown = "" if number is None else f"{number:>4}  "
    return f"{shown}{entry.at:%Y-%m-%d %H:%M}  {entry.who}  {entry.grams:g} g  {entry.title}: {brings}"


def _likely(entry: Eaten, group: str) -> float:
    return round(sum(load.likely_ug for load in entry.loads if load.group == group) / 1_000_000, 4)


def _at_most(entry: Eaten, group: str) -> float:
    items: dict[str, int] = {}
    for load in entry.loads:
        if load.group == group:
            items[load.item] = items.get(load.item, 0) + load.off_ug
    likely = sum(load.likely_ug for load in entry.loads if load.group == group)
    return round(float(at_most_of(likely, items.values())) / 1_000_000, 4)
