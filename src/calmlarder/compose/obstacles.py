"""No dinner? Find the limits that stand in the way, by letting go of one at a time."""

import time
from collections.abc import Callable, Sequence

from calmlarder.compose.offer import Offered
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.rules.protein import ProteinFloor
from calmlarder.compose.search import RULES, search
from calmlarder.compose.wanted import Wanted

_MAIN = (("base", "a base such as rice, noodles, potatoes or bread"), ("protein", "a protein food"),
         ("vegetable", "a vegetable"))  # fmt: skip

Rebuild = Callable[[Wanted], Sequence[PatternProblem]]


def obstacles(offered: Sequence[Offered], wanted: Wanted, rebuild: Rebuild, seconds: float) -> tuple[str, ...]:
    """Sentences that say which limit alone, let go, would allow a dinner; else what is missing."""
    missing = [words for role, words in _MAIN if not any(role in thing.food.roles for thing in offered)]
    if missing:
        return tuple(f"the larder offers no {words.removeprefix('a ')} that may be used" for words in missing)
    end = time.monotonic() + seconds
    found = [words for words, test in _relaxations(wanted, rebuild) if time.monotonic() < end and test(end)]
    if found:
        return tuple(found)
    if not any(problem.fillable for problem in rebuild(wanted)):
        return ("what the larder offers fills none of the dish patterns",)
    return ("no single limit: two or more stand in the way together",)


def _relaxations(wanted: Wanted, rebuild: Rebuild) -> list[tuple[str, Callable[[float], bool]]]:
    def possible(changed: Wanted, without_protein: bool = False) -> Callable[[float], bool]:
        rules = tuple(rule for rule in RULES if not (without_protein and isinstance(rule, ProteinFloor)))

        def test(end: float) -> bool:
            left = min(2.0, max(0.05, end - time.monotonic()))
            return bool(search(rebuild(changed), 1, left, rules=rules).plans)

        return test

    tests = [(f"the protein floor of {wanted.protein_g:g} g a person", possible(wanted, without_protein=True))]
    if wanted.minutes is not None:
        changed = wanted.model_copy(update={"minutes": None})
        tests.append((f"the time of {wanted.minutes} minutes", possible(changed)))
    for food in wanted.use:
        changed = wanted.model_copy(update={"use": tuple(other for other in wanted.use if other != food)})
        tests.append((f"the wish to use {food}", possible(changed)))
    for cap in wanted.profile.sitting_caps:
        kept = tuple(other for other in wanted.profile.sitting_caps if other.key != cap.key)
        per_food = tuple(other for other in wanted.profile.food_caps if other.key != cap.key)
        profile = wanted.profile.model_copy(update={"sitting_caps": kept, "food_caps": per_food})
        changed = wanted.model_copy(update={"profile": profile})
        tests.append((f"the cap of {cap.grams} g on {cap.key}", possible(changed)))
    return tests
