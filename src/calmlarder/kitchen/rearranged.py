"""A pattern's steps as tonight's fillings want them: what was lifted out comes back hot, eggs last, salted once."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.empty_vessel import fat_with_the_liquid, nothing_pushed
from calmlarder.kitchen.filling import IN_DICE, Filling
from calmlarder.kitchen.finer import has_two_sides
from calmlarder.kitchen.last_in import (
    LEFT_THERE,
    cooked_into_the_pot,
    kept_crisp,
    last_in,
    not_returned,
    seafood_lifted,
    without_main,
)
from calmlarder.kitchen.late import falls_away, is_wet, lasts
from calmlarder.kitchen.two_pans import IN_ONE_PIECE
from calmlarder.patterns.pattern import SERVED_FROM, Pattern, Step

_LIFT = ", and lift out."
_RESTS = ", and lift out onto a warm plate under foil."
_FRIED = re.compile(r"\b(?:[Bb]rown|[Ff]ry)\b")
_LIFTED = re.compile(r"\b(?:lift out|keep warm|drain)\b")
_EGGS_OVER = re.compile(r"\bpour(?: the eggs)? over\b|\bPour the eggs over\b")
_LONG_FOR_FISH = 4  # minutes: ours
_QUICK_MEAT = 5  # minutes: strips of what fries no longer are tough once they simmer. Ours
_RESTS_MINUTES = 8  # so long a steak or a fillet stays hot under foil, and is the better for it. Ours
_FISH_WAITS = 5  # minutes: fish gains nothing by resting. Ours
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
_FRIES_VEGETABLES = re.compile(
    r"^(?:Fry \{(?:vegetable|fried)\}|Add \{vegetable\} to the pan\b)(?:(?!\{protein)[^;])*\.$"
)
_CRUSHED = re.compile(r"; crush a few pieces [^;]*\.$")
_TOASTED = re.compile(r"Toast \{(\w+)\} for about \d minutes\.$")
_CARVED_AFTER = 10  # minutes: common practice, no source
_RESTS_UNDER_FOIL = f"out to rest under foil for {_CARVED_AFTER} minutes, and leave all else inside."
_BACK_MINUTES = 2  # until what was lifted out is hot again: common practice, no source


def rearranged(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern as it is cooked with these fillings."""
    pattern = _eggs_last(pattern, fillings)
    pattern = kept_crisp(pattern, fillings)
    pattern = last_in(pattern, fillings, _on_the_pan(pattern, fillings))
    pattern = cooked_into_the_pot(seafood_lifted(pattern, fillings), fillings)
    pattern = _mince_stays(pattern, fillings)
    pattern = _fillet_last(pattern, fillings)
    pattern = _fish_lifted(pattern, fillings)
    pattern = _greens_drained(pattern, fillings)
    pattern = _fish_left_whole(pattern, fillings)
    pattern = _left_in(pattern, fillings)
    pattern = _rested(pattern, fillings)
    pattern = _carved_later(pattern, fillings)
    pattern = _back_in_hot(pattern, fillings)
    pattern = _in_one_pan(pattern, fillings)
    pattern = _wide_enough(pattern, fillings)
    pattern = _toasted_if_it_can(pattern, fillings)
    pattern = nothing_pushed(pattern, fillings, _on_the_pan(pattern, fillings))
    pattern = fat_with_the_liquid(pattern, fillings)
    return _salted_once(pattern)


def _eggs_last(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Where eggs alone stand in for what is fried first and lifted out, they are fried when the rest is done."""
    at = next((n for n, step in enumerate(pattern.steps) if _fries_first(step)), None)
    main = [one for one in fillings if one.slot == "protein"]
    if at is None or not main or any(one.food.kind != "egg" or one.food.state != "raw" for one in main):
        return pattern
    after = [n for n in _on_the_pan(pattern, fillings) if n > at]
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
    told = _on_the_pan(pattern, fillings)
    at = next((n for n in told if "{protein}" in pattern.steps[n].words), None)
    minced = bool(main) and all(one.food.id.endswith("-mince") for one in main)
    if at is None or not minced or at == told[-1] or not pattern.steps[at].words.endswith(_LIFT):
        return pattern
    stays = pattern.steps[at].with_words(f"{pattern.steps[at].words.removesuffix(_LIFT)}.")
    served = [not_returned(step) for step in pattern.steps[at + 1 :]]
    return pattern.with_steps([*pattern.steps[:at], stays, *served])


def _fillet_last(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """A fillet, a whole fish or a chop is fried when vegetables that take long are done, and comes hot to the table.

    These wait under foil meanwhile, which they bear.
    """
    told = _on_the_pan(pattern, fillings)
    at = next((n for n in told if pattern.steps[n].words.endswith(_LIFT) and "protein" in pattern.steps[n].slots), None)
    main = [one for one in fillings if one.slot == "protein"]
    if at is None or not main or any(one.food.state != "raw" or not has_two_sides(one) for one in main):
        return pattern
    after = [n for n in told if n > at]
    before, with_it = without_main(pattern.steps[at])
    if len(after) != 1 or before is None:
        return pattern
    beside = pattern.steps[after[0]]
    waits = _FISH_WAITS if all(one.food.kind == "fish" for one in main) else _RESTS_MINUTES
    long = lasts(beside, pattern, fillings) > waits
    if not long or not _FRIES_VEGETABLES.match(beside.words) or is_wet(beside, fillings):
        return pattern
    words = LEFT_THERE.sub("in the pan", beside.words).removesuffix(".")
    warm = [Step(place="pan", minutes=None, words=before)] if before else []
    seasoned = with_it.replace(" with ", " with salt and ")
    between = pattern.steps[at + 1 : after[0]]
    fried = Step(place="pan", minutes=None, words=f"Fry {{protein}}{seasoned} in the pan until browned.")
    served = [not_returned(step) for step in pattern.steps[after[0] + 1 :]]
    first = [*pattern.steps[:at], *warm, *between, beside.with_words(f"{words}{_RESTS}")]
    return pattern.with_steps([*first, fried, *served])


def _fish_lifted(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Fish and strips of steak that are fried wait beside the pan while others cook there for long.

    The one would be dry, and break; the other is tough once it simmers.
    """
    told = _on_the_pan(pattern, fillings)
    at = next((n for n in told if "{protein}" in pattern.steps[n].words), None)
    main = [one for one in fillings if one.slot == "protein"]
    if at is None or not main or not all(_spoils_in_the_pan(one) for one in main):
        return pattern
    step, after = pattern.steps[at], [pattern.steps[n] for n in told if n > at]
    fried = _FRIED.search(step.words) is not None and pattern.slots["protein"].method == "stir-fry"
    if not fried or "lift out" in step.words or not after or any("protein" in one.slots for one in after):
        return pattern
    if sum(lasts(one, pattern, fillings) for one in after) < _LONG_FOR_FISH:
        return pattern
    lifted = step.with_words(f"{step.words.removesuffix('.')}{_LIFT}")
    return pattern.with_steps([*pattern.steps[:at], lifted, *pattern.steps[at + 1 :]])


def _greens_drained(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Many leaves and raw tomatoes give water, which boils off before eggs are poured over; a sauce is left as it is.

    Tipped out it would take the fat along.
    """
    told = _on_the_pan(pattern, fillings)
    eggs = next((n for n in told if _EGGS_OVER.search(pattern.steps[n].words)), None)
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


def _left_in(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """What is fried last in a pan is not lifted out: nothing else needs the pan. Eggs keep their own words."""
    told = _on_the_pan(pattern, fillings)
    if not told or not pattern.steps[told[-1]].words.endswith(_LIFT):
        return pattern
    last = pattern.steps[told[-1]]
    if any(one.food.kind == "egg" and one.slot in last.slots for one in fillings):
        return pattern
    stays = last.with_words(f"{last.words.removesuffix(_LIFT)}.")
    served = [not_returned(step) for step in pattern.steps[told[-1] + 1 :]]
    return pattern.with_steps([*pattern.steps[: told[-1]], stays, *served])


def _back_in_hot(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """A main thing that was lifted out of the pan for others goes back in at the end: nothing is served cold."""
    told = _on_the_pan(pattern, fillings)
    lifted = next(
        (n for n in told if "{protein}" in pattern.steps[n].words and "lift out" in pattern.steps[n].words), -1
    )
    there = any(one.slot == "protein" for one in fillings)
    if (
        lifted < 0
        or not there
        or lifted == told[-1]
        or any("{protein" in pattern.steps[n].words for n in told if n > lifted)
    ):
        return pattern
    if pattern.steps[lifted].words.endswith(_RESTS):
        return pattern
    back = Step(
        place="pan",
        minutes=_BACK_MINUTES,
        words=f"Return {{protein}} to the pan, and heat through for {_BACK_MINUTES} minutes.",
    )
    eggs = _EGGS_OVER.search(pattern.steps[told[-1]].words) is not None and len(told) > 1
    at = told[-1] if eggs else told[-1] + 1  # eggs that are poured over are not stirred again
    served = [not_returned(step) for step in pattern.steps[at:]]
    return pattern.with_steps([*pattern.steps[:at], back, *served])


def _rested(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """A steak, a chop or a fillet that was lifted out rests for the few minutes that others need the pan.

    Only where the serving names it: a dish that is slid out of its pan has it in the pan.
    """
    told = _on_the_pan(pattern, fillings)
    at = next((n for n in told if pattern.steps[n].words.endswith(_LIFT) and "protein" in pattern.steps[n].slots), None)
    main = [one for one in fillings if one.slot == "protein"]
    if at is None or not main or any(one.food.state != "raw" or not has_two_sides(one) for one in main):
        return pattern
    after = [pattern.steps[n] for n in told if n > at]
    served = any(one.place == "plate" and "protein" in one.slots for one in pattern.steps)
    if not served or any("protein" in one.slots for one in after):
        return pattern
    if sum(lasts(one, pattern, fillings) for one in after) > _RESTS_MINUTES:
        return pattern
    step = pattern.steps[at]
    rests = step.with_words(f"{step.words.removesuffix(_LIFT)}{_RESTS}")
    return pattern.with_steps([*pattern.steps[:at], rests, *pattern.steps[at + 1 :]])


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
    for number in _on_the_pan(pattern, fillings):
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


def _on_the_pan(pattern: Pattern, fillings: Sequence[Filling]) -> list[int]:
    """The numbers of the steps at the pan that are told tonight."""
    filled = {one.slot for one in fillings}
    told = [n for n, step in enumerate(pattern.steps) if step.place == "pan" and step.happens(filled)]
    return [n for n in told if not falls_away(pattern.steps[n], filled, pattern)]


def _spoils_in_the_pan(one: Filling) -> bool:
    quick = one.food.kind == "meat" and one.food.state == "raw" and 0 < one.minutes <= _QUICK_MEAT
    return one.food.kind in {"fish", "shellfish"} or quick


def _fries_first(step: Step) -> bool:
    return step.place == "pan" and _EGGS_FIRST.match(step.words) is not None
