"""A real plate: the usual number of things in the usual amounts."""

from calmlarder.compose.problem import MAIN_ROLES, PORTION, PatternProblem
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import (
    ITEM_EXTRA,
    ITEM_MISSING,
    NEAR_PORTIONS,
    OFF_FAR_MAIN,
    OFF_FAR_SMALL,
    OFF_NEAR_MAIN,
    OFF_NEAR_SMALL,
    POINT,
    SMALL_ITEM_EXTRA,
    SMALL_ITEM_MISSING,
)
from calmlarder.patterns.pattern import Slot


def _by_portions(problem: PatternProblem, slot: Slot) -> bool:
    """Whether a slot is held to its usual portions: vegetables at dinner are counted in grams of the whole plate."""
    dinner = problem.wanted.sitting == "dinner"
    return slot.role in MAIN_ROLES and not (dinner and slot.role == "vegetable")


def _by_things(slot: Slot) -> bool:
    """Whether each thing in a slot has its share of the usual amount: the only one of three spices has a third.

    What is missing to the usual number is priced by itself.
    """
    return slot.role not in MAIN_ROLES and slot.usual_items > 1


def _extra_price(slot: Slot) -> int:
    return (ITEM_EXTRA if slot.role in MAIN_ROLES else SMALL_ITEM_EXTRA) * POINT


def _missing_price(slot: Slot) -> int:
    return (ITEM_MISSING if slot.role in MAIN_ROLES else SMALL_ITEM_MISSING) * POINT


class UsualItems:
    """Each lot above or below the usual number of a slot costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """Lots too many and lots too few."""
        terms: list[Term] = []
        model = draft.model
        for name, slot in draft.problem.pattern.slots.items():
            used = sum(draft.used[number] for number, _ in draft.problem.in_slot(name))
            if slot.items[1] > slot.usual_items:
                extra = model.new_int_var(0, slot.items[1] - slot.usual_items, "")
                model.add(extra >= used - slot.usual_items)
                terms.append((-_extra_price(slot), extra))
            if slot.items[0] < slot.usual_items:
                missing = model.new_int_var(0, slot.usual_items, "")
                model.add(missing >= slot.usual_items * draft.active - used)
                terms.append((-_missing_price(slot), missing))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """Slots that cannot reach their usual number cost what is missing for certain."""
        return -sum(
            _missing_price(slot) * max(0, slot.usual_items - len({option.key for _, option in problem.in_slot(name)}))
            for name, slot in problem.pattern.slots.items()
        )


class UsualPortions:
    """Each portion a filled slot is away from its usual amount costs, for each person, and more the further.

    More vegetables than usual cost little.
    """

    def terms(self, draft: DishVariables) -> list[Term]:
        """The distance from the usual amount; a slot that need not be filled may stay empty, but for vegetables."""
        terms: list[Term] = []
        model, people = draft.model, draft.problem.wanted.people
        for name, slot in draft.problem.pattern.slots.items():
            numbers = [number for number, _ in draft.problem.in_slot(name)]
            if not numbers:
                continue
            options = draft.problem.options
            portions = sum(options[number].portion_units * draft.units[number] for number in numbers)
            usual = round(slot.portions[1] * PORTION) * people
            most = draft.problem.most_in(name)
            near = model.new_int_var(0, round(NEAR_PORTIONS * PORTION) * people, "")
            far = model.new_int_var(0, max(usual, most), "")
            if slot.role == "vegetable":  # more of them is a good plate still
                more = model.new_int_var(0, max(0, most - usual), "")
                model.add(more >= portions - usual)
                terms.append((-OFF_FAR_SMALL * (POINT // PORTION), more))
            else:
                model.add(near + far >= portions - usual)
            if _by_things(slot):
                each = usual // slot.usual_items
                model.add(near + far >= sum(each * draft.used[number] for number in numbers) - portions)
            elif slot.items[0] or (slot.usual_items and slot.role == "vegetable"):
                model.add(near + far >= usual * draft.active - portions)
            else:
                filled = model.new_bool_var("")
                for number in numbers:
                    model.add(filled >= draft.used[number])
                model.add(near + far >= usual * filled - portions)
            main = _by_portions(draft.problem, slot)
            terms.append((-(OFF_NEAR_MAIN if main else OFF_NEAR_SMALL) * (POINT // PORTION), near))
            terms.append((-(OFF_FAR_MAIN if main else OFF_FAR_SMALL) * (POINT // PORTION), far))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """The usual amount costs nothing; a main slot that cannot reach it costs the rest."""
        people, least = problem.wanted.people, 0
        for name, slot in problem.pattern.slots.items():
            if not slot.items[0] or not _by_portions(problem, slot):
                continue
            there = sorted((o.most * o.portion_units for _, o in problem.in_slot(name)), reverse=True)
            short = round(slot.portions[1] * PORTION) * people - sum(there[: slot.items[1]])
            least += max(0, short) * OFF_NEAR_MAIN * (POINT // PORTION)
        return -least
