"""How much water goes in: a pattern says it for one person, a cook reads what all of them need."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import ALREADY_COOKED, Filling
from calmlarder.kitchen.late import JUICY_FOODS
from calmlarder.patterns.pattern import Pattern, Step

_EACH = re.compile(r"\b(\d+) (ml|tbsp) of ((?:boiling |hot )?water) a person\b")
_DRUNK = re.compile(r"\btwice the volume of the grain in boiling water\b")
_LESS = "a little less than "
# Of vegetables that give off much water half as much as grain makes it wet: common practice, no source.
_GIVE_WATER, _SHARE = frozenset({*JUICY_FOODS, "chayote", "mooli", "turnip"}), 0.5
_MOST_SPOONS = 6  # of more than so many nobody keeps count
_BOUND = re.compile(r"\{(?:thickener|flour)\b.*until it coats the spoon")
_LIQUID = frozenset({"plant-drink", "milk", "cream", "stock"})
_ML_FOR_A_GRAM_OF_FLOUR, _STEP_ML = 10, 50  # a sauce that coats a spoon: common practice, no source
_ML_OF_A_SPOON = 15  # metric tablespoon
_ML_OF_A_LITRE = 1000


def with_water(pattern: Pattern, fillings: Sequence[Filling], people: int) -> Pattern:
    """The pattern with its water for everybody; rice that was cooked before drinks none."""
    drinks = any(pattern.slots[one.slot].role == "base" and one.food.state not in ALREADY_COOKED for one in fillings)

    def for_all(found: re.Match[str]) -> str:
        amount = int(found[1]) * people
        if found[2] == "tbsp" and amount > _MOST_SPOONS:
            return f"{amount * _ML_OF_A_SPOON} ml of {found[3]}"
        if amount >= _ML_OF_A_LITRE:
            return f"{amount / _ML_OF_A_LITRE:g} litres of {found[3]}"
        return f"{amount} {found[2]} of {found[3]}"

    def drunk(step: Step) -> str:
        if not drinks:
            return _DRUNK.sub("a few spoons of boiling water", step.words)
        return _DRUNK.sub(rf"{_LESS}\g<0>", step.words) if _swims(step, pattern, fillings) else step.words

    steps = tuple(
        step.with_words(_EACH.sub(for_all, _sauce_water(drunk(step), step, fillings, people))) for step in pattern.steps
    )
    return pattern.with_steps(steps)


def _sauce_water(said: str, step: Step, fillings: Sequence[Filling], people: int) -> str:
    """The words with as much water as its flour binds, where a sauce is stirred with flour: with less it is a paste."""
    if not _BOUND.search(said):
        return said
    here = [one for one in fillings if one.slot in step.slots]
    flour = sum(one.grams for one in here if one.food.kind in {"flour", "starch"})
    liquid = sum(one.grams for one in here if one.food.kind in _LIQUID)
    wanted = round((flour * _ML_FOR_A_GRAM_OF_FLOUR - liquid) / _STEP_ML) * _STEP_ML
    told = _EACH.search(said)
    return _EACH.sub(f"{wanted} ml of water", said) if told and wanted > int(told[1]) * people else said


def _swims(step: Step, pattern: Pattern, fillings: Sequence[Filling]) -> bool:
    """Whether what gives off water cooks with the grain of a step; tomatoes are reckoned in its water already."""
    here = [one for one in fillings if one.slot in step.slots]
    grain = sum(one.grams for one in here if pattern.slots[one.slot].role == "base")
    juicy = sum(one.grams for one in here if one.food.id in _GIVE_WATER and one.food.state == "raw")
    return juicy > grain * _SHARE and not any(one.food.kind == "tomato" for one in here)
