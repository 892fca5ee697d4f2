"""Oldest first by hand: the most pressing thing that fits some dish, in a dish drawn at random, in usual amounts."""

import random
from collections.abc import Sequence
from typing import Any

from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern, Slot
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_LEAST_G = 5
_NEVER = 10_000


def by_hand(
    lots: Sequence[Lot], people: int, patterns: Sequence[Pattern], tables: Tables, rng: random.Random
) -> dict[str, Any] | None:
    """A dish as {people, pattern, uses}, all judged by eye; no cap is looked at, nor protein. None where none fills."""
    oldest = sorted(lots, key=lambda lot: (_NEVER if lot.days_left is None else lot.days_left, lot.line))
    dinners = [pattern for pattern in patterns if "dinner" in pattern.sittings]
    for first in oldest:
        rng.shuffle(dinners)
        for pattern in dinners:
            uses = _filled(pattern, oldest, people, tables)
            if uses is not None and any(use["line"] == first.line for use in uses):
                return {"people": people, "pattern": pattern.id, "uses": uses}
    return None


def _filled(pattern: Pattern, oldest: Sequence[Lot], people: int, tables: Tables) -> list[dict[str, Any]] | None:
    uses: list[dict[str, Any]] = []
    filled = set()
    for name, slot in pattern.slots.items():
        taken = {use["line"] for use in uses}
        there = [lot for lot in oldest if lot.line not in taken and slot.takes(tables.food_by_id[lot.food])]
        found = _slot(slot, there, people, tables)
        if found is None:
            return None
        filled.update([name] if found else [])
        uses += found
    return uses if all(filled.intersection(group) for group in pattern.one_of) else None


def _slot(slot: Slot, there: Sequence[Lot], people: int, tables: Tables) -> list[dict[str, Any]] | None:
    """The oldest of what fits, the usual number of things or more where they are small; None where it is too little."""
    wanted = slot.portions[1] * people
    items = max(1, slot.usual_items) if slot.items[0] or slot.usual_items else 0
    uses: list[dict[str, Any]] = []
    got = 0.0
    for number, lot in enumerate(there[: slot.items[1]]):
        if number >= items and (got >= slot.portions[0] * people or not items):
            break
        food: Food = tables.food_by_id[lot.food]
        share = (wanted - got) / max(1, items - number)
        grams = int(min(lot.grams, share * float(food.portion_g)))
        if grams < min(_LEAST_G, lot.grams):
            continue
        got += grams / float(food.portion_g)
        uses.append({"line": lot.line, "food": lot.food, "grams": grams, "how": "eye"})
    if len(uses) < slot.items[0] or (slot.items[0] and got < slot.portions[0] * people - 0.01):
        return None
    return [use for use in uses if use["grams"] > 0]
