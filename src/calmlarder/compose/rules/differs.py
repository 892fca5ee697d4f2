"""A further dinner is something else to eat, not the same foods in another form."""

from collections.abc import Sequence
from typing import Any

from calmlarder.compose.at_hand import fills
from calmlarder.compose.eats import Eats, base_thing, is_beside, protein_thing, role_of
from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import POINT, SAME_DISH, SAME_PLATE, SAME_TOP


class Differs:
    """From each earlier dinner: another main protein, or another base, or half of its vegetables by weight are new.

    Another means that there is one, and the main one of the earlier dinner is not in this one: the same salmon without
    its potatoes is no other dinner, nor is it with toast beside it. New vegetables alone cost, and so does another base
    alone, or the same dish of the same protein: who did not want the first dinner wants another plate.
    """

    def __init__(self, earlier: Sequence[Eats]) -> None:
        self._earlier = earlier

    def post(self, draft: DishVariables) -> None:
        """One of the three for each earlier dinner."""
        for eats in self._earlier:
            ways = [draft.model.new_bool_var("") for _ in range(3)]
            draft.model.add(sum(ways) >= draft.active)
            same_plate = draft.model.new_bool_var("")
            draft.model.add(same_plate + ways[0] + ways[1] >= draft.active)
            draft.given.append((-SAME_PLATE * POINT, same_plate))
            same_top = draft.model.new_bool_var("")
            draft.model.add(same_top + ways[0] + ways[2] >= draft.active)
            draft.given.append((-SAME_TOP * POINT, same_top))
            if eats.pattern == draft.problem.pattern.id:
                same_dish = draft.model.new_bool_var("")
                draft.model.add(same_dish + ways[0] >= draft.active)
                draft.given.append((-SAME_DISH * POINT, same_dish))
            same = [n for n in _of(draft, "protein") if _protein(draft, n) == eats.protein]
            self._without(draft, same, "protein", ways[0])
            self._without(draft, [n for n in _of(draft, "base") if _base(draft, n) == eats.base], "base", ways[1])
            self._new_vegetables(draft, eats, ways[2])

    def _without(self, draft: DishVariables, same: list[int], role: str, way: Any) -> None:
        """None of these, and at least one of the role."""
        there = [n for n in _of(draft, role) if _is_one(draft.problem, draft.problem.options[n])]
        draft.model.add(sum(draft.used[n] for n in there) >= way)
        for number in same:
            draft.model.add(draft.used[number] + way <= 1)

    def _new_vegetables(self, draft: DishVariables, eats: Eats, way: Any) -> None:
        options = draft.problem.options
        numbers = _of(draft, "vegetable")
        old = [n for n in numbers if options[n].offered.food.id in eats.vegetables]
        new = [n for n in numbers if n not in old]
        grams_old = sum(options[n].unit * draft.units[n] for n in old)
        grams_new = sum(options[n].unit * draft.units[n] for n in new)
        most = sum(options[n].unit * options[n].most for n in old)
        draft.model.add(grams_old <= grams_new + most * (1 - way))
        draft.model.add(sum(draft.used[n] for n in new) >= way)


def _of(draft: DishVariables, role: str) -> list[int]:
    return [n for n, option in enumerate(draft.problem.options) if role_of(draft.problem, option) == role]


def _is_one(problem: PatternProblem, option: Option) -> bool:
    """Whether it makes another dinner: a slice beside it does not, nor a few cubes of sweet potato."""
    is_cubes = role_of(problem, option) == "base" and option.offered.food.kind == "potato"
    return not is_beside(problem, option) and (not is_cubes or fills(option.offered, problem.wanted))


def _protein(draft: DishVariables, number: int) -> str:
    return protein_thing(draft.problem.options[number].offered.food)


def _base(draft: DishVariables, number: int) -> str:
    return base_thing(draft.problem.options[number].offered.food)
