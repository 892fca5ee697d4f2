"""What is lifted out of a pan for others: when it waits, when it is fried last instead, and how it comes back hot.

Minutes are common practice, no source.
"""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.finer import has_two_sides
from calmlarder.kitchen.last_in import LEFT_THERE, not_returned, without_main
from calmlarder.kitchen.late import falls_away, is_wet, lasts
from calmlarder.patterns.pattern import Pattern, Step

_SEAFOOD = frozenset({"fish", "shellfish"})
_PAN_SAUCE = re.compile(r"^Stir (\{[a-z,]+\}) into the pan juices with a splash of hot water for a sauce\.$")
LIFT = ", and lift out."
_RESTS = ", and lift out onto a warm plate under foil."
_FRIED = re.compile(r"\b(?:[Bb]rown|[Ff]ry)\b")
_LONG_FOR_FISH = 4  # minutes: ours
_QUICK_MEAT = 5  # minutes: strips of what fries no longer are tough once they simmer. Ours
_RESTS_MINUTES = 8  # so long a steak or a fillet stays hot under foil, and is the better for it. Ours
_FISH_WAITS = 5  # minutes: fish gains nothing by resting. Ours
_BACK_MINUTES = 2  # until what was lifted out is hot again: common practice, no source
EGGS_OVER = re.compile(r"\bpour(?: the eggs)? over\b|\bPour the eggs over\b")
_FRIES_VEGETABLES = re.compile(
    r"^(?:Fry \{(?:vegetable|fried)\}|Add \{vegetable\} to the pan\b)(?:(?!\{protein)[^;])*\.$"
)


def fillet_last(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """A fillet, a whole fish, prawns or a chop are fried when vegetables that take long are done, and are served hot.

    These wait under foil meanwhile, which they bear.
    """
    told = on_the_pan(pattern, fillings)
    at = next((n for n in told if pattern.steps[n].words.endswith(LIFT) and "protein" in pattern.steps[n].slots), None)
    main = [one for one in fillings if one.slot == "protein"]
    if at is None or not main or any(one.food.state != "raw" or not _is_quick_whole(one) for one in main):
        return pattern
    after = [n for n in told if n > at]
    before, with_it = without_main(pattern.steps[at])
    if len(after) != 1 or before is None:
        return pattern
    beside = pattern.steps[after[0]]
    waits = _FISH_WAITS if all(one.food.kind in _SEAFOOD for one in main) else _RESTS_MINUTES
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


def fish_lifted(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Fish and strips of steak that are fried wait beside the pan while others cook there for long.

    The one would be dry, and break; the other is tough once it simmers.
    """
    told = on_the_pan(pattern, fillings)
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
    lifted = step.with_words(f"{step.words.removesuffix('.')}{LIFT}")
    return pattern.with_steps([*pattern.steps[:at], lifted, *pattern.steps[at + 1 :]])


def left_in(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """What is fried last in a pan is not lifted out: nothing else needs the pan. Eggs keep their own words."""
    told = on_the_pan(pattern, fillings)
    if not told or not pattern.steps[told[-1]].words.endswith(LIFT):
        return pattern
    last = pattern.steps[told[-1]]
    if any(one.food.kind == "egg" and one.slot in last.slots for one in fillings):
        return pattern
    stays = last.with_words(f"{last.words.removesuffix(LIFT)}.")
    served = [not_returned(step) for step in pattern.steps[told[-1] + 1 :]]
    return pattern.with_steps([*pattern.steps[: told[-1]], stays, *served])


def back_in_hot(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """A main thing that was lifted out of the pan for others goes back in at the end: nothing is served cold."""
    told = on_the_pan(pattern, fillings)
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
    eggs = EGGS_OVER.search(pattern.steps[told[-1]].words) is not None and len(told) > 1
    at = told[-1] if eggs else told[-1] + 1  # eggs that are poured over are not stirred again
    served = [not_returned(step) for step in pattern.steps[at:]]
    return pattern.with_steps([*pattern.steps[:at], back, *served])


def rested(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """A steak, a chop or a fillet that was lifted out rests for the few minutes that others need the pan.

    Only where the serving names it: a dish that is slid out of its pan has it in the pan.
    """
    told = on_the_pan(pattern, fillings)
    at = next((n for n in told if pattern.steps[n].words.endswith(LIFT) and "protein" in pattern.steps[n].slots), None)
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
    rests = step.with_words(f"{step.words.removesuffix(LIFT)}{_RESTS}")
    return pattern.with_steps([*pattern.steps[:at], rests, *pattern.steps[at + 1 :]])


def on_the_pan(pattern: Pattern, fillings: Sequence[Filling]) -> list[int]:
    """The numbers of the steps at the pan that are told tonight."""
    filled = {one.slot for one in fillings}
    told = [n for n, step in enumerate(pattern.steps) if step.place == "pan" and step.happens(filled)]
    return [n for n in told if not falls_away(pattern.steps[n], filled, pattern)]


def _spoils_in_the_pan(one: Filling) -> bool:
    quick = one.food.kind == "meat" and one.food.state == "raw" and 0 < one.minutes <= _QUICK_MEAT
    return one.food.kind in {"fish", "shellfish"} or quick


def sauced_apart(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """What would still lie in the pan comes out of it before a sauce is stirred into the juices.

    Mince, cubes and slices among others have the sauce stirred through them.
    """
    told = on_the_pan(pattern, fillings)
    main = [one for one in fillings if one.slot == "protein"]
    fried = [pattern.steps[n].words for n in told if "protein" in pattern.steps[n].slots]
    at = next((n for n, step in enumerate(pattern.steps) if _PAN_SAUCE.match(step.words)), None)
    if at is None or not main or not fried or "lift out" in fried[-1]:
        return pattern
    found = _PAN_SAUCE.match(pattern.steps[at].words)
    patties = "the patties" in fried[-1]
    if patties or all(has_two_sides(one) or one.food.kind == "egg" for one in main):
        what = "the patties" if patties else "{protein}"
        words = f"Lift {what} out onto warm plates; s{pattern.steps[at].words[1:]}"
    else:
        words = f"Stir {found[1] if found else ''} through what is in the pan with a splash of hot water."
    return pattern.with_steps([*pattern.steps[:at], pattern.steps[at].with_words(words), *pattern.steps[at + 1 :]])


def _is_quick_whole(one: Filling) -> bool:
    return has_two_sides(one) or one.food.kind == "shellfish"
