"""Season with what the larder has; dress what is raw; garlic and onion by name only where nothing else seasons."""

from typing import Any

from calmlarder.compose.garlic_named import says_garlic
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.taste import (
    SEASONED_SITTINGS,
    SYRUP,
    dresses,
    is_at_hand,
    is_dry,
    is_plain,
    is_salty,
    is_savoury,
    is_spice_at_hand,
    is_unsalted_nuts,
    moistens,
    rounds,
    seasons,
    wants_dressing,
)
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import (
    BARE,
    DRY,
    FLAVOURS_AT_HAND,
    GARLIC_BY_NAME,
    IDLE_FLAVOUR,
    IDLE_SPICE,
    PLAIN,
    POINT,
    ROUND,
    SEASONINGS_MISSING,
    SPICES_AT_HAND,
    SPICES_AT_HAND_ELSEWHERE,
    UNSALTED_NUTS,
    UNSWEETENED_NUTS,
)


def _is_seasoned(problem: PatternProblem) -> bool:
    """A dish that says what makes it taste, at a sitting that is salted; a boxed one was seasoned before."""
    return problem.wanted.sitting in SEASONED_SITTINGS and bool(problem.pattern.flavour)


class Seasoned:
    """The first things that season are worth the most: a dish with none is bland."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost for each that is missing, dearer the fewer there are."""
        problem = draft.problem
        if not _is_seasoned(problem):
            return []
        there = sum(draft.used[number] for number, option in enumerate(problem.options) if seasons(problem, option))
        missing = [draft.model.new_bool_var("") for _ in SEASONINGS_MISSING]
        draft.model.add(there + sum(missing) >= len(SEASONINGS_MISSING) * draft.active)
        return [(-price * POINT, one) for price, one in zip(SEASONINGS_MISSING, missing, strict=True)]

    def bound(self, problem: PatternProblem) -> int:
        """What the larder has nothing for is missing for certain."""
        if not _is_seasoned(problem):
            return 0
        there = len({option.key for option in problem.options if seasons(problem, option)})
        return -POINT * sum(sorted(SEASONINGS_MISSING)[: max(0, len(SEASONINGS_MISSING) - there)])


class Rounded:
    """Something sour, savoury, moist and a finishing thing, each where the larder has it and the dish a place."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost for each that stays out."""
        problem = draft.problem
        if not _is_seasoned(problem):
            return []
        there: dict[str, list[int]] = {}
        for number, option in enumerate(problem.options):
            for how in rounds(problem, option):
                there.setdefault(how, []).append(number)
        terms: list[Term] = []
        for how, price in ROUND.items():
            if how in there:
                missing = draft.model.new_bool_var("")
                draft.model.add(missing + sum(draft.used[number] for number in there[how]) >= draft.active)
                terms.append((-price * POINT, missing))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """All in costs nothing."""
        return 0


class FlavoursAtHand:
    """Herbs, ginger, chilli, lemon, olives and the like are used where they suit the dish, three of them."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost for each that stays out."""
        problem = draft.problem
        if not _is_seasoned(problem):
            return []
        numbers = [number for number, option in enumerate(problem.options) if is_at_hand(problem, option)]
        most = min(FLAVOURS_AT_HAND, len({problem.options[number].key for number in numbers}))
        missing = [draft.model.new_bool_var("") for _ in range(most)]
        if most:
            draft.model.add(sum(draft.used[number] for number in numbers) + sum(missing) >= most * draft.active)
        return [(-IDLE_FLAVOUR * POINT, one) for one in missing]

    def bound(self, problem: PatternProblem) -> int:
        """All in costs nothing."""
        return 0


class SpicesAtHand:
    """Spices that the chosen kitchen seasons with every day are used where the dish has a place, two or three."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost for each that stays out."""
        problem = draft.problem
        if not _is_seasoned(problem):
            return []
        wanted = {family: SPICES_AT_HAND.get(family, SPICES_AT_HAND_ELSEWHERE) for family in draft.family}
        missing = [draft.model.new_bool_var("") for _ in range(max(wanted.values()))]
        for family, chosen in draft.family.items():
            there = [number for number, option in enumerate(problem.options) if is_spice_at_hand(option, family)]
            most = min(wanted[family], len({problem.options[number].offered.food.id for number in there}))
            if most:
                used = sum(draft.used[number] for number in there)
                draft.model.add(used + sum(missing) >= most * chosen)
        return [(-IDLE_SPICE * POINT, one) for one in missing]

    def bound(self, problem: PatternProblem) -> int:
        """All in costs nothing."""
        return 0


class Dressed:
    """Raw leaves and roots without anything sour or a sauce cost."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a dish."""
        problem = draft.problem
        if problem.wanted.sitting != "dinner":
            return []
        raw = [number for number, option in enumerate(problem.options) if wants_dressing(problem, option)]
        if not raw:
            return []
        dressing = sum(draft.used[number] for number, option in enumerate(problem.options) if dresses(option))
        bare = draft.model.new_bool_var("")
        for number in raw:
            draft.model.add(bare + dressing >= draft.used[number])
        return [(-BARE * POINT, bare)]

    def bound(self, problem: PatternProblem) -> int:
        """Nothing raw costs nothing."""
        return 0


class NotPlain:
    """Tofu, tempeh, pulses, poultry and eggs without anything savoury cost."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a dish."""
        problem = draft.problem
        if not _is_seasoned(problem):
            return []
        options = list(enumerate(problem.options))
        plain = [number for number, option in options if is_plain(problem, option)]
        savoury = sum(draft.used[number] for number, option in options if is_savoury(problem, option))
        return _without(draft, plain, savoury, PLAIN)

    def bound(self, problem: PatternProblem) -> int:
        """Nothing plain costs nothing."""
        return 0


class NotDry:
    """Roast or fried meat, fish and tofu without sauce, dressing, lemon, tomato, yoghurt or infused oil cost."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a dish."""
        problem = draft.problem
        if not _is_seasoned(problem):
            return []
        options = list(enumerate(problem.options))
        wet = sum(draft.used[number] for number, option in options if moistens(problem, option))
        return _without(draft, [number for number, option in options if is_dry(problem, option)], wet, DRY)

    def bound(self, problem: PatternProblem) -> int:
        """Nothing dry costs nothing."""
        return 0


class SaltedNuts:
    """A dressing of nut butter without soy sauce, miso or another salty thing costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a dish."""
        problem = draft.problem
        if problem.wanted.sitting not in SEASONED_SITTINGS:
            return []
        options = list(enumerate(problem.options))
        salty = sum(draft.used[number] for number, option in options if is_salty(option))
        nuts = [number for number, option in options if is_unsalted_nuts(problem, option)]
        return _without(draft, nuts, salty, UNSALTED_NUTS)

    def bound(self, problem: PatternProblem) -> int:
        """No nut butter costs nothing."""
        return 0


class SweetenedNuts:
    """A dressing of nut butter without a little sugar or syrup costs, where the larder has some."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a dish."""
        problem = draft.problem
        options = list(enumerate(problem.options))
        sweet = [draft.used[number] for number, option in options if option.slot == SYRUP]
        nuts = [number for number, option in options if is_unsalted_nuts(problem, option)]
        return _without(draft, nuts, sum(sweet), UNSWEETENED_NUTS) if sweet else []

    def bound(self, problem: PatternProblem) -> int:
        """No nut butter costs nothing."""
        return 0


def _without(draft: DishVariables, numbers: list[int], beside: Any, price: int) -> list[Term]:
    """One cost where any of these options is used and none of what goes `beside` it."""
    if not numbers:
        return []
    lacking = draft.model.new_bool_var("")
    for number in numbers:
        draft.model.add(lacking + beside >= draft.used[number])
    return [(-price * POINT, lacking)]


class LittleGarlic:
    """Each sauce, paste or stock with garlic or onion in its name costs: its amount is anybody's guess."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost each."""
        return [
            (-GARLIC_BY_NAME * POINT, draft.used[number])
            for number, option in enumerate(draft.problem.options)
            if says_garlic(option.offered.food)
        ]

    def bound(self, problem: PatternProblem) -> int:
        """None used costs nothing."""
        return 0
