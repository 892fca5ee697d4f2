"""Of two things that fit, what a cook reaches for: garlic oil, not plain; tomato, not water; rice under a curry."""

from collections.abc import Iterator

from calmlarder.compose.at_hand import fills
from calmlarder.compose.presses import CURED
from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.compose.taste import SEASONED_SITTINGS
from calmlarder.compose.unfit_for_slot import NIBBLED
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import (
    BREAD_FOR_A_BASE,
    BUTTER_ABROAD,
    FOREIGN_BASE,
    IN_WATER,
    NO_BASE,
    PLAIN_OIL,
    POINT,
    RICE_BESIDE_TORTILLAS,
    RICE_FOR_TORTILLAS,
    rescue_points,
)
from calmlarder.patterns.pattern import HEATED, Pattern, Slot, slot_names
from calmlarder.tables.vocabulary import Family

_INFUSED = frozenset({"oil-garlic", "oil-garlic-made", "oil-onion", "oil-onion-made"})
_PLAIN = frozenset({"oil-groundnut", "oil-olive", "oil-rapeseed", "oil-spray"})
_MEXICAN = "latin"
_ASIAN = frozenset({"east-asian", "southeast-asian", "south-asian"})
_ASIAN_BASES = frozenset({"rice", "noodle"})
_NOT_ON_TOAST = frozenset({"fish", "shellfish", "poultry", "meat"})
_FRIED = "stir-fry"  # slices of cheese from the pan are a main thing: melted on toast they are another dish
_PRESSING = rescue_points(3, True)  # potatoes of so few days are worth a dish of theirs


class InfusedOil:
    """Plain oil to fry in costs where garlic or onion oil stands beside it and the dish is a seasoned one."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost for each plain oil."""
        problem = draft.problem
        if problem.wanted.sitting not in SEASONED_SITTINGS or not problem.pattern.flavour:
            return []
        terms: list[Term] = []
        for name, slot in problem.pattern.slots.items():
            there = problem.in_slot(name)
            if slot.role != "fat" or not any(option.offered.food.id in _INFUSED for _, option in there):
                continue
            plain = (number for number, option in there if option.offered.food.id in _PLAIN)
            terms += [(-PLAIN_OIL * POINT, draft.used[number]) for number in plain]
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """No plain oil costs nothing."""
        return 0


class OilBeforeButter:
    """Butter or lard in a dish whose kitchen does not cook with it costs where oil stands beside it."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost for each of them."""
        terms: list[Term] = []
        for name, slot in draft.problem.pattern.slots.items():
            there = draft.problem.in_slot(name)
            if slot.role != "fat" or not any(option.offered.food.kind == "oil" for _, option in there):
                continue
            for number, option in there:
                away = [family for family in draft.family if family not in option.offered.food.flavours]
                if option.offered.food.kind == "butter" and away:
                    foreign = draft.model.new_bool_var("")
                    draft.model.add(foreign >= draft.used[number] + sum(draft.family[one] for one in away) - 1)
                    terms.append((-BUTTER_ABROAD * POINT, foreign))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """Oil costs nothing."""
        return 0


class NotInWater:
    """A place that its dish fills with plain water, where the larder has tomatoes or stock for it, costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a place."""
        problem, terms = draft.problem, list[Term]()
        if problem.wanted.sitting not in SEASONED_SITTINGS:
            return terms
        for names in _else_water(problem.pattern):
            there = [draft.used[number] for name in names for number, _ in problem.in_slot(name)]
            if there:
                watery = draft.model.new_bool_var("")
                draft.model.add(watery + sum(there) >= draft.active)
                terms.append((-IN_WATER * POINT, watery))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """All filled costs nothing."""
        return 0


class FittingBase:
    """Potatoes under an Asian dish cost where rice or noodles are there and the potatoes keep."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost for each lot of potatoes in such a dish."""
        problem, asian = draft.problem, _asian(draft.problem.pattern)
        terms: list[Term] = []
        if not asian:
            return terms
        for name, slot in problem.pattern.slots.items():
            there = problem.in_slot(name)
            if slot.role != "base" or not any(option.offered.food.kind in _ASIAN_BASES for _, option in there):
                continue
            for number, option in there:
                if option.offered.food.kind == "potato" and option.points < _PRESSING:
                    foreign = draft.model.new_bool_var("")
                    chosen = sum(draft.family[family] for family in asian)
                    draft.model.add(foreign >= draft.used[number] + chosen - 1)
                    terms.append((-FOREIGN_BASE * POINT, foreign))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """The fitting base costs nothing."""
        return 0


class TortillasFirst:
    """Rice in a Mexican dish costs where tortillas for everybody are there, and the rice keeps.

    In a dish of another kitchen it costs less, and beside tortillas of maize alone.
    """

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost for each lot of rice."""
        problem, terms = draft.problem, list[Term]()
        if not problem.has_wraps or problem.wanted.sitting != "dinner":
            return terms
        mexican = sum(chosen for name, chosen in draft.family.items() if name == _MEXICAN)
        others = sum(chosen for name, chosen in draft.family.items() if name != _MEXICAN)
        prices = [(mexican, RICE_FOR_TORTILLAS), (others, RICE_BESIDE_TORTILLAS * problem.has_maize_wraps)]
        for number, option in enumerate(problem.options):
            base = problem.pattern.slots[option.slot].role == "base"
            if base and option.offered.food.kind == "rice" and option.points < _PRESSING:
                for chosen, price in prices:
                    plain = draft.model.new_bool_var("")
                    draft.model.add(plain >= draft.used[number] + chosen - 1)
                    terms.append((-price * POINT, plain))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """No rice costs nothing."""
        return 0


class CookedBase:
    """Bread under fish, meat or fried cheese costs where potatoes, rice or noodles are there and the bread keeps.

    Eggs, melted cheese, tofu and pulses go on toast; a dish that names its bread (a burger in a bun) is not meant.
    """

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a dish."""
        problem = draft.problem
        if problem.wanted.sitting != "dinner" or not problem.has_base:
            return []
        slots, options = problem.pattern.slots, list(enumerate(problem.options))
        breads = [
            number
            for number, option in options
            if option.offered.food.kind == "bread" and option.points < _PRESSING
            if slots[option.slot].role == "base" and slots[option.slot].items[0] and not slots[option.slot].foods
        ]
        mains = [
            number
            for number, option in options
            if slots[option.slot].role == "protein" and _wants_potatoes(option, slots[option.slot])
        ]
        if not breads or not mains:
            return []
        on_toast = draft.model.new_bool_var("")
        for bread in breads:
            for main in mains:
                draft.model.add(on_toast >= draft.used[bread] + draft.used[main] - 1)
        return [(-BREAD_FOR_A_BASE * POINT, on_toast)]

    def bound(self, problem: PatternProblem) -> int:
        """No bread costs nothing."""
        return 0


class FilledBase:
    """A dish without a base that fills costs where rice, potatoes, noodles, pasta or a grain is there.

    What is nibbled is no base, nor a few cubes of sweet potato, nor toast beside a dish that waits until nothing better
    fits.
    """

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a dish."""
        problem = draft.problem
        if problem.wanted.sitting != "dinner" or not problem.has_base:
            return []
        bare = draft.model.new_bool_var("")
        there = [
            draft.used[number]
            for number, option in enumerate(problem.options)
            if problem.pattern.slots[option.slot].role == "base" and option.offered.food.id not in NIBBLED
            if option.offered.food.kind != "bread" or not problem.pattern.second_choice
            if option.offered.food.kind != "potato" or fills(option.offered, problem.wanted)
        ]
        draft.model.add(bare + sum(there) >= draft.active)
        return [(-NO_BASE * POINT, bare)]

    def bound(self, problem: PatternProblem) -> int:
        """A base costs nothing."""
        return 0


def _wants_potatoes(option: Option, slot: Slot) -> bool:
    """Fish and meat that are hot, and slices of cheese from the pan."""
    food = option.offered.food
    if food.kind == "cheese":
        return slot.method == _FRIED
    return food.kind in _NOT_ON_TOAST and food.id not in CURED and slot.method != "raw"


def _else_water(pattern: Pattern) -> Iterator[list[str]]:
    """Places named in a hot step with water for when nothing fills them: `{sauce|a ladle of water}`."""
    for step in pattern.steps:
        if step.place in HEATED:
            yield from (slot_names(found) for found in step.must_fill if found[3] and "water" in found[3])


def _asian(pattern: Pattern) -> tuple[Family, ...]:
    """The flavours of a dish under which potatoes are out of place; of any kitchen beside them is theirs as well."""
    own = tuple(name for name in pattern.flavours if name in _ASIAN)
    return tuple(pattern.flavours) if own and {*pattern.flavours} - {*own} == {"any"} else own
