"""Tiny problems for one rule or one wish: a pan dish of our own, a few lots, and what is taken of them fixed."""

from collections.abc import Mapping, Sequence
from typing import Any, Literal, NamedTuple

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules import Rule
from calmlarder.compose.rules.amounts import Amounts
from calmlarder.compose.rules.flavour_family import OneFamily
from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import POINT
from calmlarder.compose.wishes import Wish
from calmlarder.cp_sat import cp_model
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables


def slot(role: str, kinds: Sequence[str], method: str, items: Sequence[int], portions: Sequence[float]) -> Any:
    return {
        "role": role, "kinds": kinds, "method": method, "items": items, "usual_items": max(1, items[0]),
        "portions": portions,
    }  # fmt: skip


PAN = Pattern.model_validate(
    {
        "id": "tiny-pan", "title": "Pan of {protein}", "tradition": "none, made up", "sittings": ["dinner"],
        "flavours": ["east-asian", "mediterranean"], "equipment": ["hob"], "minutes": 0, "keeps_days": 1,
        "freezes": True,
        "cautions": [], "flavour": [["acid"]],
        "steps": ["apart: {base}.", "pan: Fry {protein}.", "pan: Fry {vegetable}.", "pan: Stir in {spice}.",
                  "plate: Serve with {salad}.", "plate: Stir in {sauce}.", "plate: Add {acid}."],
        "slots": {
            "base": slot("base", ["rice", "noodle"], "boil", [0, 1], [0.5, 1.0, 2.0]),
            "protein": slot("protein", ["tofu", "tempeh", "egg", "fish"], "stir-fry", [1, 3], [0.5, 1.0, 2.0]),
            "vegetable": slot("vegetable", ["root", "leaf", "brassica"], "stir-fry", [0, 3], [0.0, 1.0, 3.0]),
            "salad": slot("vegetable", ["salad-leaf", "fruit-vegetable"], "raw", [0, 1], [0.0, 1.0, 2.0]),
            "spice": slot("spice", ["spice"], "stir-fry", [0, 2], [0.0, 1.0, 4.0]),
            "sauce": slot("sauce", ["soy-sauce", "sauce", "nut-butter"], "raw", [0, 1], [0.0, 1.0, 2.0]),
            "acid": slot("acid", ["citrus", "acid"], "raw", [0, 1], [0.0, 1.0, 2.0]),
        },
    }
)  # fmt: skip


class Tiny(NamedTuple):
    """One problem: a pattern with these lots. What is taken is given as grams by food."""

    problem: PatternProblem

    def holds(self, rule: Rule, taken: Mapping[str, int], weighed: Sequence[str] = ()) -> bool:
        """Whether the rule allows this dish."""
        draft = self._draft(taken, weighed)
        rule.post(draft)
        return _solved(draft, []) is not None

    def points(
        self, wish: Wish, taken: Mapping[str, int], weighed: Sequence[str] = (), rules: Sequence[Rule] = ()
    ) -> float:
        """What the wish gives for this dish, which is never more than the bound it tells."""
        draft = self._draft(taken, weighed)
        for rule in rules:
            rule.post(draft)
        found = _solved(draft, wish.terms(draft))
        assert found is not None
        assert found <= wish.bound(self.problem)
        return found / POINT

    def offering(self, gives: Literal["buy", "ask"], *foods: str) -> "Tiny":
        """The same where these foods would have to be bought, or their owners asked."""

        def given(option: Option) -> Option:
            is_given = option.offered.food.id in foods
            return option._replace(offered=option.offered._replace(gives=gives)) if is_given else option

        return Tiny(self.problem.with_options(map(given, self.problem.options)))

    def gives(self, rule: Rule, taken: Mapping[str, int]) -> float | None:
        """What a rule that gives asks for this dish; None where it does not allow it."""
        draft = self._draft(taken, ())
        rule.post(draft)
        found = _solved(draft, draft.given)
        return None if found is None else found / POINT

    def _draft(self, taken: Mapping[str, int], weighed: Sequence[str]) -> DishVariables:
        draft, left = DishVariables(self.problem), dict(taken)
        Amounts().post(draft)
        OneFamily().post(draft)
        for number, option in enumerate(self.problem.options):
            food = option.offered.food.id
            grams = left.pop(food, 0)
            assert grams % option.unit == 0, (food, option.unit)
            draft.model.add(draft.used[number] == bool(grams))
            draft.model.add(draft.units[number] == grams // option.unit)
            if draft.weighed[number] is not None:
                draft.model.add(draft.weighed[number] == (bool(grams) and food in weighed))
        assert not left, f"no option for {left}"
        return draft


def _solved(draft: DishVariables, terms: Sequence[tuple[int, Any]]) -> int | None:
    draft.model.maximize(sum(factor * variable for factor, variable in terms))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    status = solver.solve(draft.model)
    assert status in {cp_model.OPTIMAL, cp_model.INFEASIBLE}
    return round(solver.objective_value) if status == cp_model.OPTIMAL else None


def tiny_of(lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> Tiny:
    """The pan dish over these lots."""
    (problem,) = pattern_problems(lots, wanted, [PAN], tables)
    return Tiny(problem)
