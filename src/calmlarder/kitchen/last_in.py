"""What is done in a moment, or done already, comes in last: halloumi goes rubbery as it waits, cooked fish dry.

Common practice, no source.
"""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import ALREADY_COOKED, Filling
from calmlarder.patterns.pattern import Pattern, Step
from calmlarder.tables.vocabulary import CANNED_STATES

_SQUEAKS = frozenset({"halloumi"})
_COOKED = frozenset({*ALREADY_COOKED, *CANNED_STATES})
_KINDS = frozenset({"fish", "shellfish", "poultry", "meat", "pulse", "tofu", "tempeh", "seitan", "soya"})
_LIFTED = re.compile(r"\{protein\}.*, and lift out\.$")
_FIRST = re.compile(r"^(?:((?:Heat|Warm) [^;]+); )?(?:fry|brown|Fry|Brown) \{protein\}")
_SEASONED = re.compile(r"^Season \{protein\} with salt and (\{[^}]+\}),(?: and)? fry in \{fat\} in (a (?:wide )?pan)\b")
_RETURN = re.compile(r"^Return \{protein\} to the pan\b")
_RETURN_AND = re.compile(r"^Return \{protein\}(?:,? and| to the (?:pan|pot),(?: and)?(?! heat through)) (\w)")
LEFT_THERE = re.compile(r"\bin (?:what is left in the|the same) pan\b")
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
        steps[back] = steps[back].with_words(_RETURN.sub("Add {protein} to the pan", steps[back].words))
    for number in range(at + 1, after[-1] + 1):
        steps[number] = steps[number].with_words(LEFT_THERE.sub("in the pan", steps[number].words))
    steps[at : at + 1] = [Step(place="pan", minutes=None, words=before)] if before else []
    return pattern.with_steps(steps)


def without_main(step: Step) -> tuple[str | None, str]:
    """The step without its main thing, and what seasons that; None where its words are others."""
    found = _SEASONED.match(step.words)
    if found is not None:
        return f"Warm {{fat}} in {found[2]}.", f" with {found[1]}"
    first = _FIRST.match(step.words)
    if first is None:
        return None, ""
    return f"{first[1]}." if first[1] else "", ""


def not_returned(step: Step) -> Step:
    """A step of serving, for what is in the pan already."""
    return step.with_words(_RETURN_AND.sub(lambda found: found[1].upper(), step.words))
