"""Sauces and dressings as they are mixed: oil where nothing else makes one, tahini never neat. Common practice."""

import math
import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.juices import without_juices
from calmlarder.patterns.pattern import CLAUSE, REFERENCE, Pattern, Step, slot_names

_OIL_IN_IT = " with {dressing}"
_OIL_AND_WATER = f"{_OIL_IN_IT} and a spoon of hot water"
_THICK = frozenset({"nut-butter", "yoghurt", "cheese", "cream"})
_THICK_TOO = frozenset({"mayonnaise", "vegan-mayonnaise", "salad-cream", "tartare-sauce", "pesto-no-garlic"})
_NEAT = frozenset({"tahini"})
_A_SAUCE_G = 8  # of tahini for one, a good teaspoon; with more water than that it tastes of nothing. Ours
_SOUR = frozenset({"acid", "citrus"})
_UNDRESSED = re.compile(r"^Serve \{(salad)\} beside (it|them), with a few drops of oil and a pinch of salt\.$")
_SOURED = re.compile(r"^Dress \{(salad)\} with a few drops of oil, a pinch of salt( and a little of \{\w+\}\.)$")
_GIVE_TASTE = frozenset({"aromatic", "spice"})
_OIL_OVER_ALL = re.compile(r", (?:what is in the pan over all(?=[.\[;])|spoon what is in the pan over(?=,))")
_SERVED_WHOLE = re.compile(r"^(Serve|Lay) \{protein\} (?=with|beside|on)")
_BOILED = re.compile(r"^Boil \{vegetable\} in the vegetable pot until just tender, and drain\.$")
_GLOSSED = re.compile(r"\b(?:[Tt]urn|[Mm]ash|[Dd]ress) \{[^.]*\bvegetable|drops of oil|in the pan over all")
_COUNTED_PIECES = re.compile(r"about (\d+)?(½)?")


def mixed(pattern: Pattern, fillings: Sequence[Filling], people: int) -> Pattern:
    """The pattern with its dressing and its tahini as these fillings want them."""
    pattern = _tahini_stirred(_oil_where_wanted(without_juices(pattern, fillings), fillings), fillings, people)
    pattern = _oil_left_behind(_cabbage_rubbed(_salad_soured(pattern, fillings), fillings), fillings)
    return _shared_out(_greens_glossed(pattern, fillings), fillings, people)


def _salad_soured(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """A salad beside the dish gets a little of the lemon or vinegar, where that goes in as the dish is served."""
    at = next((n for n, step in enumerate(pattern.steps) if _UNDRESSED.search(step.words)), None)
    sour = next((one for one in fillings if one.food.kind in _SOUR and _at_the_plate(one, pattern)), None)
    if at is None or sour is None or not any(one.slot in pattern.steps[at].slots for one in fillings):
        return pattern
    found = _UNDRESSED.search(pattern.steps[at].words)
    first = next(n for n, step in enumerate(pattern.steps) if sour.slot in step.slots)
    if found is None or first >= at:
        return pattern
    words = f"Dress {{{found[1]}}} with a few drops of oil, a pinch of salt and a little of {{{sour.slot}}}."
    dressed = Step(place="plate", minutes=None, words=words)
    beside = pattern.steps[at].with_words(f"Serve {{{found[1]}}} beside {found[2]}.")
    between = pattern.steps[first:at]
    return pattern.with_steps([*pattern.steps[:first], dressed, *between, beside, *pattern.steps[at + 1 :]])


def _cabbage_rubbed(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Raw cabbage beside the dish is rubbed with its salt, which makes it give: plain shreds are for no plate."""
    raw = {one.slot for one in fillings if one.food.kind == "brassica" and pattern.slots[one.slot].method == "raw"}
    steps = list(pattern.steps)
    for number, step in enumerate(steps):
        beside, soured = _UNDRESSED.search(step.words), _SOURED.search(step.words)
        if beside and beside[1] in raw:
            words = f"Rub {{{beside[1]}}} with a pinch of salt and a few drops of oil until soft, and serve it beside."
            steps[number] = step.with_words(words)
        elif soured and soured[1] in raw:
            words = f"Rub {{{soured[1]}}} with a pinch of salt until soft, and dress with a few drops of oil{soured[2]}"
            steps[number] = step.with_words(words)
    return pattern.with_steps(steps)


def _oil_left_behind(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Bare oil in which something fried stays in the pan: butter, spices and what was stirred in go over the dish."""
    slots = {one.slot for one in fillings}
    stirred = {slot for step in pattern.steps if "pan juices" in step.words for slot in step.slots}
    fried = {slot for step in pattern.steps if step.place == "pan" for slot in step.slots}
    tasty = {one.slot for one in fillings if pattern.slots[one.slot].role in _GIVE_TASTE or one.food.kind == "butter"}
    if slots & stirred or tasty & fried:
        return pattern
    return pattern.with_steps([step.with_words(_OIL_OVER_ALL.sub("", step.words)) for step in pattern.steps])


def _greens_glossed(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Vegetables that are boiled and served with nothing over them are turned in a few drops of oil."""
    filled = {one.slot for one in fillings}
    at = next((n for n, step in enumerate(pattern.steps) if _BOILED.match(step.words)), None)
    if at is None or "vegetable" not in filled:
        return pattern
    after = [step.words for step in pattern.steps[at + 1 :] if "vegetable" in step.slots and step.happens(filled)]
    if any(_GLOSSED.search(words) for words in after):
        return pattern
    turned = Step(place="bowl", minutes=1, words="Turn {vegetable} in a few drops of oil with a grind of pepper.")
    return pattern.with_steps([*pattern.steps[: at + 1], turned, *pattern.steps[at + 1 :]])


def _shared_out(pattern: Pattern, fillings: Sequence[Filling], people: int) -> Pattern:
    """Fewer chops or steaks than people are sliced before they are served."""
    few = next((one for one in fillings if one.slot == "protein" and _pieces_of(one) < people), None)
    if few is None:
        return pattern
    words = "Slice {protein} so that everybody gets a share, and "
    return pattern.with_steps(
        [
            step.with_words(_SERVED_WHOLE.sub(lambda found: f"{words}{found[1].lower()} ", step.words, count=1))
            if step.place == "plate"
            else step
            for step in pattern.steps
        ]
    )


def _pieces_of(one: Filling) -> float:
    """How many chops or steaks a thing is, where its measure counts them; else more than anybody would share."""
    counted = _COUNTED_PIECES.fullmatch(one.household or "")
    whole = one.prep.endswith("patted dry") and "cut across" not in one.prep and one.food.kind == "meat"
    if not whole or counted is None or one.food.state != "raw":
        return math.inf
    return float(counted[1] or 0) + 0.5 * bool(counted[2])


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
