"""A pattern's steps as tonight's fillings want them: what was lifted out comes back hot, eggs last, salted once."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.empty_vessel import fat_with_the_liquid, nothing_pushed
from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.last_in import (
    cooked_into_the_pot,
    cooked_meat_last,
    fish_laid_on_top,
    kept_crisp,
    last_in,
    not_returned,
    seafood_lifted,
)
from calmlarder.kitchen.late import is_wet
from calmlarder.kitchen.lifted import (
    EGGS_OVER,
    LIFT,
    back_in_hot,
    fillet_last,
    fish_lifted,
    left_in,
    on_the_pan,
    rested,
    sauced_apart,
)
from calmlarder.kitchen.made_ready import IN_DICE
from calmlarder.kitchen.mash import mashed_already
from calmlarder.kitchen.two_pans import IN_ONE_PIECE, set_by_size
from calmlarder.patterns.pattern import SERVED_FROM, Pattern, Step

_LIFTED = re.compile(r"\b(?:lift out|keep warm|drain)\b")
_MANY_LEAVES_G = 100  # ours
_GIVE_WATER = frozenset({"leaf", "tomato"})
_DRIES_MINUTES = 2  # until their water is gone: common practice, no source
_DRIED = "Turn the heat up until the water in the pan has boiled off, and down again."
_EGGS_FIRST = re.compile(r"^(?:((?:Heat|Warm) [^;]+); )?(?:fry|brown|Fry|Brown) \{protein\}.*, and lift out\.$")
_EGGS_LAST = "Push aside, crack in {protein}, cover, and fry until white and yolk are set."
_EGGS_IN_SAUCE = "Make hollows, crack in {protein}, cover, and cook until white and yolk are set."
_BESIDE_OTHERS_MINUTES = 5  # in a pan that is full, under its lid: common practice, no source
_IN_SAUCE_MINUTES = 6  # common practice, no source
_A_WIDE_PAN = re.compile(r"\bin a (?:wide )?pan\b")
_CRUSHED = re.compile(r"; crush a few pieces [^;]*\.$")
_TOASTED = re.compile(r"Toast \{(\w+)\} for about \d minutes\.$")
_CARVED_AFTER = 10  # minutes: common practice, no source
_RESTS_UNDER_FOIL = f"out to rest under foil for {_CARVED_AFTER} minutes, and leave all else inside."


def rearranged(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern as it is cooked with these fillings."""
    pattern = _eggs_last(mashed_already(pattern, fillings), fillings)
    pattern = kept_crisp(pattern, fillings)
    pattern = last_in(pattern, fillings, on_the_pan(pattern, fillings))
    pattern = cooked_into_the_pot(seafood_lifted(pattern, fillings), fillings)
    pattern = cooked_meat_last(fish_laid_on_top(pattern, fillings), fillings)
    pattern = _mince_stays(pattern, fillings)
    pattern = fillet_last(pattern, fillings)
    pattern = fish_lifted(pattern, fillings)
    pattern = _greens_drained(pattern, fillings)
    pattern = _fish_left_whole(pattern, fillings)
    pattern = left_in(pattern, fillings)
    pattern = rested(pattern, fillings)
    pattern = _carved_later(pattern, fillings)
    pattern = back_in_hot(pattern, fillings)
    pattern = sauced_apart(set_by_size(pattern, fillings), fillings)
    pattern = _in_one_pan(pattern, fillings)
    pattern = _wide_enough(pattern, fillings)
    pattern = _toasted_if_it_can(pattern, fillings)
    pattern = nothing_pushed(pattern, fillings, on_the_pan(pattern, fillings))
    pattern = fat_with_the_liquid(pattern, fillings)
    return _salted_once(pattern)


def _eggs_last(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Where eggs alone stand in for what is fried first and lifted out, they are fried when the rest is done."""
    at = next((n for n, step in enumerate(pattern.steps) if _fries_first(step)), None)
    main = [one for one in fillings if one.slot == "protein"]
    if at is None or not main or any(one.food.kind != "egg" or one.food.state != "raw" for one in main):
        return pattern
    after = [n for n in on_the_pan(pattern, fillings) if n > at]
    if not after or any("{protein" in pattern.steps[n].words for n in after):
        return pattern
    heat = _EGGS_FIRST.match(pattern.steps[at].words)
    first = [Step(place="pan", minutes=None, words=f"{heat[1]}.")] if heat is not None and heat[1] else []
    between = [
        step.with_words(step.words.replace("the same pan", "the pan")) for step in pattern.steps[at + 1 : after[-1] + 1]
    ]
    last = Step(place="pan", minutes=_BESIDE_OTHERS_MINUTES, words=_EGGS_LAST)
    if any(is_wet(pattern.steps[n], fillings) for n in after):
        last = Step(place="pan", minutes=_IN_SAUCE_MINUTES, words=_EGGS_IN_SAUCE)
    served = [not_returned(step) for step in pattern.steps[after[-1] + 1 :]]
    return pattern.with_steps([*pattern.steps[:at], *first, *between, last, *served])


def _mince_stays(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Mince that is browned stays in the pan for what fries after it: the spices are to season it, too."""
    main = [one for one in fillings if one.slot == "protein"]
    told = on_the_pan(pattern, fillings)
    at = next((n for n in told if "{protein}" in pattern.steps[n].words), None)
    minced = bool(main) and all(one.food.id.endswith("-mince") for one in main)
    if at is None or not minced or at == told[-1] or not pattern.steps[at].words.endswith(LIFT):
        return pattern
    stays = pattern.steps[at].with_words(f"{pattern.steps[at].words.removesuffix(LIFT)}.")
    served = [not_returned(step) for step in pattern.steps[at + 1 :]]
    return pattern.with_steps([*pattern.steps[:at], stays, *served])


def _greens_drained(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Many leaves and raw tomatoes give water, which boils off before eggs are poured over; a sauce is left as it is.

    Tipped out it would take the fat along.
    """
    told = on_the_pan(pattern, fillings)
    eggs = next((n for n in told if EGGS_OVER.search(pattern.steps[n].words)), None)
    leaves = [
        one
        for one in fillings
        if one.food.kind in _GIVE_WATER and one.food.state == "raw" and pattern.slots[one.slot].role == "vegetable"
    ]
    slots = {one.slot for one in leaves}
    at = next((n for n in told if eggs is not None and n < eggs and slots.intersection(pattern.steps[n].slots)), None)
    if at is None or sum(one.grams for one in leaves) < _MANY_LEAVES_G or _LIFTED.search(pattern.steps[at].words):
        return pattern
    step = pattern.steps[at]
    if "sauce" in step.slots or "acid" in step.slots:
        return pattern
    dried = Step(place="pan", minutes=_DRIES_MINUTES, words=_DRIED)
    return pattern.with_steps([*pattern.steps[: at + 1], dried, *pattern.steps[at + 1 :]])


def _fish_left_whole(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Nothing is crushed in a pot that has fish in it by then."""
    fish = {one.slot for one in fillings if one.food.kind in {"fish", "shellfish"}}
    return pattern.with_steps(
        [
            step.with_words(_CRUSHED.sub(".", step.words)) if fish.intersection(step.slots) else step
            for step in pattern.steps
        ]
    )


def _carved_later(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """A whole bird or a joint rests before it is carved, while what lay beside it stays hot."""
    whole = {one.slot for one in fillings if one.food.id in IN_ONE_PIECE and not one.prep.endswith(IN_DICE)}
    at = next((n for n, step in enumerate(pattern.steps) if step.place == "oven" and whole & set(step.slots)), None)
    if at is None or pattern.eaten_cold:
        return pattern
    lifted = " and ".join(f"{{{slot}}}" for slot in pattern.steps[at].slots if slot in whole)
    rests = Step(place="oven", minutes=_CARVED_AFTER, words=f"Turn the oven off; lift {lifted} {_RESTS_UNDER_FOIL}")
    return pattern.with_steps([*pattern.steps[: at + 1], rests, *pattern.steps[at + 1 :]])


def _in_one_pan(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """What is heated in a pan from which something was lifted out is heated in the same one, in what it left there."""
    steps, used = list(pattern.steps), False
    for number in on_the_pan(pattern, fillings):
        step = steps[number]
        if used and _A_WIDE_PAN.search(step.words):
            words = _A_WIDE_PAN.sub("in the same pan", step.words, count=1)
            steps[number] = step.with_words(words)
        used = used or ("lift out" in step.words and _A_WIDE_PAN.search(step.words) is not None)
    return pattern.with_steps(steps)


def _wide_enough(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """A fish in one piece lies in no small pan."""
    if not any("gutted" in one.prep for one in fillings):
        return pattern
    wide = [step.with_words(step.words.replace(" in a pan", " in a wide pan")) for step in pattern.steps]
    return pattern.with_steps(wide)


def _toasted_if_it_can(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Injera, oatcakes and crispbread are eaten as they are: no row of theirs says how they are toasted."""
    steps = []
    for step in pattern.steps:
        found = _TOASTED.match(step.words)
        breads = [one for one in fillings if found is not None and one.slot == found[1]]
        if found is None or not breads or any("stir-fry" in one.food.minutes for one in breads):
            steps.append(step)
    return pattern.with_steps(steps)


def _salted_once(pattern: Pattern) -> Pattern:
    """Where a dish is tasted for salt in the next step, it is not salted in the last."""
    made = [n for n, step in enumerate(pattern.steps) if step.place not in SERVED_FROM]
    if pattern.eaten_cold or not made or not any(slot.role == "vegetable" for slot in pattern.slots.values()):
        return pattern
    last = pattern.steps[made[-1]]
    words = re.sub(r"\b([Ss]eason) with salt and (?=\{)", r"\1 with ", last.words)
    words = re.sub(r"^(Season with \{[a-z_,]+\|)salt\}", r"\1a grind of pepper}", words)
    once = last.with_words(words)
    return pattern.with_steps([*pattern.steps[: made[-1]], once, *pattern.steps[made[-1] + 1 :]])


def _fries_first(step: Step) -> bool:
    return step.place == "pan" and _EGGS_FIRST.match(step.words) is not None
