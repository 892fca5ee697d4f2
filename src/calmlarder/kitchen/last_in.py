"""What is done in a moment, or done already, comes in last: halloumi goes rubbery as it waits, cooked fish dry.

Common practice, no source.
"""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import ALREADY_COOKED, Filling
from calmlarder.kitchen.finer import has_two_sides
from calmlarder.patterns.pattern import Pattern, Step
from calmlarder.tables.vocabulary import CANNED_STATES

_SQUEAKS = frozenset({"halloumi"})
_COOKED = frozenset({*ALREADY_COOKED, *CANNED_STATES})
_KINDS = frozenset({"fish", "shellfish", "poultry", "meat", "pulse", "tofu", "tempeh", "seitan", "soya"})
_LIFTED = re.compile(r"\{protein\}.*, and lift out\.$")
_FIRST = re.compile(r"^(?:((?:Heat|Warm) [^;]+); )?(?:fry|brown|Fry|Brown) \{protein\}")
_SEASONED = re.compile(r"^Season \{protein\} with salt and (\{[^}]+\}),(?: and)? fry in \{fat\} in (a (?:wide )?pan)\b")
_HEATED_AND_SEASONED = re.compile(r"^(Heat \{fat\} in [^;]+); season \{protein\} with salt and (\{[^}]+\}), and fry\b")
_RETURN = re.compile(r"^Return \{protein\} to the pan\b")
_RETURN_AND = re.compile(r"^Return \{protein\}(?:,? and| to the (?:pan|pot),(?: and)?(?! heat through)) (\w)")
LEFT_THERE = re.compile(r"\bin (?:what is left in the|the same) pan\b")
_BROWNED_IN_A_POT = re.compile(r"^Brown \{protein\} in \{fat\} in (a (?:wide )?pot), and lift out\.$")
_BACK_INTO_THE_POT = re.compile(r"^Return \{protein\} to the pot(?:\[, stir in (\{[a-z,]+\})\])?, and heat through\.$")
_INTO_THE_POT = re.compile(r"^Add \{(vegetable[a-z,]*)\} to the pot\b")
_BACK_INTO_WATER = re.compile(
    r"^Return \{protein\} to the pan, stir in \{\w+\|a splash of water\}, and bubble for a minute\.$"
)
_SERVED_FROM_PAN = re.compile(r"^Serve what is in the pan(?:\[ over (\{mash\})\])?\[ with (\{[a-z,]+\})\]\.$")
_SEAFOOD = frozenset({"fish", "shellfish"})
_FRIED_IN_A_POT = re.compile(r"^Add \{protein\} to the pot, and fry until browned\.$")
_MEAT_FIRST = re.compile(r"^Fry \{meat\} in a wide pan\b.*, and lift out\.$")
_MEAT_BACK = re.compile(r"^Return \{meat\} to the pan\b")
_WARMED_MINUTES = 3  # until meat that was cooked before is hot: common practice, no source
_UNDER_A_LID_MORE = 2  # so much longer fish takes in steam than on the metal: common practice, no source
_HOT_AGAIN = 2  # minutes under the lid: common practice, no source
_LAID_BACK = f"Lay {{protein}} on top, cover, and heat through for {_HOT_AGAIN} minutes."
_FRIED_LAST = "Push aside, add {protein}%s, and fry until golden."
_WARMED_LAST = "Add {protein}%s to the pan, and warm until steaming hot."


def last_in(pattern: Pattern, fillings: Sequence[Filling], told: Sequence[int]) -> Pattern:
    """The pattern with such a main thing put in when all else of its pan is done; `told` are the steps at the pan."""
    main = [one for one in fillings if one.slot == "protein"]
    done = [one for one in main if one.food.kind in _KINDS and one.food.state in _COOKED]
    cooked = bool(main) and len(done) == len(main)
    squeaks = not cooked and all(one in done or one.food.id in _SQUEAKS for one in main) and bool(main)
    at = next((n for n in told if _LIFTED.search(pattern.steps[n].words)), None)
    if at is None or not (squeaks or cooked) or pattern.slots["protein"].method != "stir-fry":
        return pattern
    after = [n for n in told if n > at]
    back = next((n for n in after if "{protein" in pattern.steps[n].words), None)
    before, with_it = without_main(pattern.steps[at])
    if not after or before is None or (back is not None and (squeaks or not _RETURN.match(pattern.steps[back].words))):
        return pattern
    steps = list(pattern.steps)
    if back is None:
        words = (_FRIED_LAST if squeaks else _WARMED_LAST) % with_it
        steps.insert(after[-1] + 1, Step(place="pan", minutes=None, words=words))
        steps[after[-1] + 2 :] = [not_returned(step) for step in steps[after[-1] + 2 :]]
    else:
        steps[back] = steps[back].with_words(_RETURN.sub(f"Add {{protein}}{with_it} to the pan", steps[back].words))
    for number in range(at + 1, after[-1] + 1):
        steps[number] = steps[number].with_words(LEFT_THERE.sub("in the pan", steps[number].words))
    steps[at : at + 1] = [Step(place="pan", minutes=None, words=before)] if before else []
    return pattern.with_steps(steps)


def cooked_into_the_pot(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern with pulses out of a tin, or what was cooked before, among the vegetables of its pot for their last.

    Browned, lifted out and put back they would only dry, and take a cook's minutes.
    """
    main = [one for one in fillings if one.slot == "protein"]
    at = next((n for n, step in enumerate(pattern.steps) if _BROWNED_IN_A_POT.match(step.words)), None)
    back = next((n for n, step in enumerate(pattern.steps) if _BACK_INTO_THE_POT.match(step.words)), None)
    cooked = bool(main) and all(one.food.kind in _KINDS and one.food.state in _COOKED for one in main)
    if at is None or back is None or not cooked:
        return pattern
    there = next((n for n in range(at + 1, back) if _INTO_THE_POT.match(pattern.steps[n].words)), None)
    if there is None or not pattern.steps[there].happens({one.slot for one in fillings}):
        return pattern
    steps = list(pattern.steps)
    steps[at] = steps[at].with_words(_BROWNED_IN_A_POT.sub(r"Warm {fat} in \1.", steps[at].words))
    steps[there] = steps[there].with_words(_INTO_THE_POT.sub(r"Add {\1,protein} to the pot", steps[there].words))
    stirred = _BACK_INTO_THE_POT.match(pattern.steps[back].words)
    rest = stirred[1] if stirred is not None else None
    steps[back : back + 1] = [steps[back].with_words(f"Stir in {rest}, and heat through.")] if rest else []
    return pattern.with_steps(steps)


def seafood_lifted(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern with fried fish or prawns taken out of a pot in which others simmer on: they would be hard."""
    main = [one for one in fillings if one.slot == "protein"]
    at = next(
        (n for n, step in enumerate(pattern.steps) if step.place == "pot" and _FRIED_IN_A_POT.match(step.words)), None
    )
    if at is None or not main or any(one.food.kind not in _SEAFOOD for one in main):
        return pattern
    filled = {one.slot for one in fillings}
    after = [
        n
        for n in range(at + 1, len(pattern.steps))
        if pattern.steps[n].place == "pot" and pattern.steps[n].happens(filled)
    ]
    if not after or any("protein" in pattern.steps[n].slots for n in after):
        return pattern
    steps = list(pattern.steps)
    steps[at] = steps[at].with_words(f"{steps[at].words.removesuffix('.')}, and lift out.")
    steps.insert(after[-1] + 1, Step(place="pot", minutes=_HOT_AGAIN, words=_LAID_BACK))
    return pattern.with_steps(steps)


def kept_crisp(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern with a fillet, a steak or a chop laid on the rest, where it would go back into a splash of water."""
    main = [one for one in fillings if one.slot == "protein"]
    filled = {one.slot for one in fillings}
    back = next((n for n, step in enumerate(pattern.steps) if _BACK_INTO_WATER.match(step.words)), None)
    served = next((n for n, step in enumerate(pattern.steps) if _SERVED_FROM_PAN.match(step.words)), None)
    if back is None or served is None or not main or "vegetable" not in filled or not all(map(has_two_sides, main)):
        return pattern
    if filled.intersection(pattern.steps[back].slots) - {"protein"} or any(one.food.state != "raw" for one in main):
        return pattern
    steps = list(pattern.steps)
    mash = "[ and {mash}]" if "mash" in pattern.slots else ""
    steps[served] = steps[served].with_words(
        _SERVED_FROM_PAN.sub(
            rf"Lay {{protein}} on {{vegetable}}{mash}, what is in the pan over all[; finish with \2].",
            steps[served].words,
        )
    )
    del steps[back]
    return pattern.with_steps(steps)


def fish_laid_on_top(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern with raw fish laid on vegetables that braise, for their last: browned first it waits, and breaks."""
    main = [one for one in fillings if one.slot == "protein"]
    at = next((n for n, step in enumerate(pattern.steps) if _BROWNED_IN_A_POT.match(step.words)), None)
    back = next((n for n, step in enumerate(pattern.steps) if _BACK_INTO_THE_POT.match(step.words)), None)
    if at is None or back is None or not main:
        return pattern
    if any(one.food.kind not in _SEAFOOD or one.food.state != "raw" for one in main):
        return pattern
    found = _BACK_INTO_THE_POT.match(pattern.steps[back].words)
    minutes = max(one.minutes for one in main) + _UNDER_A_LID_MORE
    words = "Lay {protein} on top, cover, and leave until cooked through."
    steps = list(pattern.steps)
    steps[at] = steps[at].with_words(_BROWNED_IN_A_POT.sub(r"Warm {fat} in \1.", steps[at].words))
    steps[back] = Step(place="pot", minutes=minutes, words=words)
    if found is not None and found[1]:
        steps.insert(back, Step(place="pot", minutes=0, words=f"Stir {found[1]} into the pot."))
    return pattern.with_steps(steps)


def cooked_meat_last(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern with meat that was cooked before warmed among the rest at the end: fried first it goes cold."""
    meat = [one for one in fillings if one.slot == "meat"]
    at = next((n for n, step in enumerate(pattern.steps) if _MEAT_FIRST.match(step.words)), None)
    back = next((n for n, step in enumerate(pattern.steps) if _MEAT_BACK.match(step.words)), None)
    if at is None or back is None or not meat or any(one.food.state not in _COOKED for one in meat):
        return pattern
    steps = list(pattern.steps)
    steps[back] = Step(
        place="pan", minutes=_WARMED_MINUTES, words="Add {meat} to the pan, and warm until steaming hot."
    )
    del steps[at]
    return pattern.with_steps(steps)


def without_main(step: Step) -> tuple[str | None, str]:
    """The step without its main thing, and what seasons that; None where its words are others."""
    found = _SEASONED.match(step.words)
    if found is not None:
        return f"Warm {{fat}} in {found[2]}.", f" with {found[1]}"
    found = _HEATED_AND_SEASONED.match(step.words)
    if found is not None:
        return f"{found[1]}.", f" with {found[2]}"
    first = _FIRST.match(step.words)
    if first is None:
        return None, ""
    return f"{first[1]}." if first[1] else "", ""


def not_returned(step: Step) -> Step:
    """A step of serving, for what is in the pan already."""
    return step.with_words(_RETURN_AND.sub(lambda found: found[1].upper(), step.words))
