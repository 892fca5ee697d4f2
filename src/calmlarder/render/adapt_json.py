"""An adapted recipe as plain JSON values; the keys are a promise to other programs."""

from collections.abc import Mapping, Sequence
from typing import Any

from calmlarder.adapt.model import Adapted, Amount, AtHome, Loads
from calmlarder.cookbook.recipe import IngredientRead


def adapt_object(title: str, reads: Sequence[IngredientRead], adapted: Adapted, recipe: str | None) -> dict[str, Any]:
    """The answer of `adapt --json`. Grams are of the whole recipe, loads of one serving."""
    limits = {
        key: [float(typical), None if most is None else float(most)]
        for key, (typical, most) in adapted.limits_g.items()
    }
    return {
        "title": title,
        "serves": adapted.before.serves,
        "ingredients": [_ingredient(read, adapted.amounts.get(place)) for place, read in enumerate(reads)],
        "before": _loads(adapted.before),
        "after": {**_loads(adapted.after), "limits_g": limits} if adapted.after else None,
        "limits_g": limits,
        "passed": list(adapted.passed),
        "status": adapted.status if adapted.known or adapted.status == "nothing_read" else "not_known",
        "for_what_was_read": None if adapted.known else adapted.status,
        "lines": {"counted": counted_lines(reads, adapted), "all": lines_of(reads)},
        "warnings": list(adapted.warnings),
        "remarks": list(adapted.remarks),
        "at_home": at_home_object(adapted.at_home),
        "changes": [
            {
                "line": change.place,
                "ingredient": change.ingredient,
                "change": change.change,
                "to": [*map(_amount, change.to), *map(_no_amount, change.unmeasured)],
                "written": list(change.lines),
                "why": change.why,
            }
            for change in adapted.changes
        ],
        "unread": [{"text": one.text, "why": one.why, "trigger": one.trigger or None} for one in adapted.in_doubt],
        "harmless": [one.text for one in adapted.unread if one.harmless],
        "recipe": recipe,
    }


def at_home_object(held: Mapping[str, AtHome]) -> dict[str, Any]:
    """What the larder holds, by food: grams, and days left of what goes first."""
    return {food: {"grams": float(one.grams), "days_left": one.days_left} for food, one in sorted(held.items())}


def lines_of(reads: Sequence[IngredientRead]) -> int:
    """How many lines of a recipe name something to eat or drink."""
    return len(set(_lines_by_place(reads).values()))


def counted_lines(reads: Sequence[IngredientRead], adapted: Adapted) -> int:
    """How many of them were counted, changed into what is, or bring nothing however they are read."""
    lines = _lines_by_place(reads)
    return lines_of(reads) - len({lines[one.place] for one in adapted.in_doubt})


def _lines_by_place(reads: Sequence[IngredientRead]) -> dict[int, int]:
    """The line that each food stands in, headings aside: of a line that names several, all have the place of one."""
    lines: dict[int, int] = {}
    first, others = 0, list[str]()
    for place, read in enumerate(reads):
        if others and read.text == others[0]:
            others.pop(0)
        else:
            first, others = place, [one.text for one in read.also] if read.outcome == "read" else []
        if read.outcome != "heading":
            lines[place] = first
    return lines


def _ingredient(read: IngredientRead, amount: Amount | None) -> dict[str, Any]:
    told = _amount(amount) if amount else {**_no_amount(read.food), "weighed": read.weighed}
    return {"text": read.text, "outcome": read.outcome, **told}


def _no_amount(food: str | None) -> dict[str, Any]:
    return {"food": food, "grams": None, "grams_high": None, "weighed": False}


def _amount(amount: Amount) -> dict[str, Any]:
    return {
        "food": amount.food,
        "grams": float(amount.grams),
        "grams_high": float(amount.high),
        "weighed": amount.weighed,
    }


def _loads(loads: Loads) -> dict[str, Any]:
    return {
        "serves": loads.serves,
        "loads_g": {key: round(float(grams), 5) for key, grams in loads.loads_g.items()},
        "at_most_g": {key: round(float(grams), 5) for key, grams in loads.at_most_g.items()},
    }
