"""Sauces and dressings as they are mixed: oil where nothing else makes one, tahini never neat. Common practice."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import Filling
from calmlarder.patterns.pattern import CLAUSE, REFERENCE, Pattern, Step, slot_names

_OIL_IN_IT = " with {dressing}"
_OIL_AND_WATER = f"{_OIL_IN_IT} and a spoon of hot water"
_THICK = frozenset({"nut-butter", "yoghurt", "cheese", "cream"})
_THICK_TOO = frozenset({"mayonnaise", "vegan-mayonnaise", "salad-cream", "tartare-sauce", "pesto-no-garlic"})
_NEAT = frozenset({"tahini"})
_A_SAUCE_G = 8  # of tahini for one, a good teaspoon; with more water than that it tastes of nothing. Ours
_SOUR = frozenset({"acid", "citrus"})


def mixed(pattern: Pattern, fillings: Sequence[Filling], people: int) -> Pattern:
    """The pattern with its dressing and its tahini as these fillings want them."""
    return _tahini_stirred(_oil_where_wanted(pattern, fillings), fillings, people)


def _oil_where_wanted(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Nut butter and the like need no oil, and where sesame oil is in it there is enough."""
    steps = list(pattern.steps)
    for number, step in enumerate(steps):
        if _OIL_IN_IT not in step.words or any(one.slot == "dressing" for one in fillings):
            continue
        here = [one.food for one in fillings if one.slot in step.slots]
        if any(food.kind in _THICK or food.id in _THICK_TOO for food in here):
            steps[number] = step.with_words(step.words.replace(_OIL_AND_WATER, " with a spoon of hot water"))
        elif any(food.kind == "oil" for food in here):
            steps[number] = step.with_words(step.words.replace(_OIL_AND_WATER, "").replace(_OIL_IN_IT, ""))
    return pattern.with_steps(steps)


def _tahini_stirred(pattern: Pattern, fillings: Sequence[Filling], people: int) -> Pattern:
    """Tahini that would be spooned over as it comes is stirred with water first, and with lemon that is no more.

    Of a teaspoon a person no sauce is made: it is drizzled.
    """
    tahini = next((one for one in fillings if one.food.id in _NEAT and _at_the_plate(one, pattern)), None)
    if tahini is None or tahini.grams < _A_SAUCE_G * people:
        return pattern
    at = next(n for n, step in enumerate(pattern.steps) if tahini.slot in step.slots)
    sour = next((one for one in fillings if one.food.kind in _SOUR and _at_the_plate(one, pattern)), None)
    served = list(pattern.steps[at:])
    into = ""
    mild = sour is not None and sour.grams <= tahini.grams
    if sour is not None and mild and all(_named_with_others(sour.slot, step, fillings) for step in served):
        into = f"{{{sour.slot}}}, "
        served = [_without(sour.slot, step) for step in served]
    words = f"Stir {{{tahini.slot}}} with {into}a spoon or two of warm water and a pinch of salt to a sauce."
    stirred = Step(place="bowl", minutes=1, words=words)
    return pattern.with_steps([*pattern.steps[:at], stirred, *served])


def _at_the_plate(one: Filling, pattern: Pattern) -> bool:
    """Whether a thing first comes in as the dish is served."""
    first = next((step for step in pattern.steps if one.slot in step.slots), None)
    return first is not None and first.place == "plate"


def _named_with_others(slot: str, step: Step, fillings: Sequence[Filling]) -> bool:
    """Whether the step says the same without this slot: it names another that is filled beside it, or is a clause."""
    for found in REFERENCE.finditer(step.words):
        names = slot_names(found)
        if slot in names:
            others = any(one.slot in names and one.slot != slot for one in fillings)
            in_clause = any(found[0] in clause[1] for clause in CLAUSE.finditer(step.words))
            if found[1] or not (others or (in_clause and len(names) == 1)):
                return False
    return True


def _without(slot: str, step: Step) -> Step:
    """The step without the slot: out of its braces, or with the clause that is about it alone."""
    alone = re.compile(rf"\[[^\[\]]*\{{{slot}(?:\|[^}}]*)?\}}[^\[\]]*\]")
    words = alone.sub("", step.words)

    def others(found: re.Match[str]) -> str:
        names = [name for name in slot_names(found) if name != slot]
        return f"{{{found[1] or ''}{','.join(names)}{'|' + found[3] if found[3] is not None else ''}}}"

    words = REFERENCE.sub(lambda found: others(found) if slot in slot_names(found) else found[0], words)
    return step.with_words(words)
