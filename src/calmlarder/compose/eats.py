"""What somebody eats in a dinner, whatever form it has: its main protein, its base, its vegetables."""

from collections.abc import Callable, Iterable
from typing import NamedTuple

from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.compose.solve import Plan, Use
from calmlarder.tables.rows import Food

# Kinds that are one thing to eat, however they are sold: smoked tofu is tofu, a boiled egg an egg.
_ONE_THING = frozenset({"tofu", "tempeh", "egg"})
_BESIDE = frozenset({"bread", "crisp"})  # places of recipes/shared/slots.toml


class Eats(NamedTuple):
    """The protein thing that brings most protein, the base thing of most portions, the vegetables by food id, the dish.

    A slice beside a dish is its base only where it has no other. None stands for a dinner that has none of the kind.
    """

    protein: str | None
    base: str | None
    vegetables: frozenset[str]
    pattern: str


def eats_of(plan: Plan) -> Eats:
    """What a dinner consists of."""
    by_role: dict[str, list[Use]] = {}
    for use in plan.uses:
        by_role.setdefault(role_of(plan.problem, use.option), []).append(use)
    proteins = [(use, use.option.protein_mg) for use in by_role.get("protein", ())]
    there = by_role.get("base", [])
    under = [use for use in there if not is_beside(plan.problem, use.option)] or there
    bases = [(use, use.option.portion_units) for use in under]
    return Eats(
        protein=_most(proteins, protein_thing),
        base=_most(bases, base_thing),
        vegetables=frozenset(use.option.offered.food.id for use in by_role.get("vegetable", ())),
        pattern=plan.problem.pattern.id,
    )


def role_of(problem: PatternProblem, option: Option) -> str:
    """The role of the slot that an option is in."""
    return problem.pattern.slots[option.slot].role


def is_beside(problem: PatternProblem, option: Option) -> bool:
    """Whether it stands where a dish may have a slice beside it, and is whole without."""
    return option.slot in _BESIDE and not any(option.slot in group for group in problem.pattern.one_of)


def protein_thing(food: Food) -> str:
    """The thing that is eaten: for some kinds the kind, else the food."""
    return food.kind if food.kind in _ONE_THING else food.id


def base_thing(food: Food) -> str:
    """Rice is rice, dry, cooked or of another sort; a boxed dish is itself, and so is each grain."""
    return food.id if food.kind in {"boxed", "grain"} else food.kind


def _most(uses: Iterable[tuple[Use, int]], thing: Callable[[Food], str]) -> str | None:
    amounts: dict[str, int] = {}
    for use, each in uses:
        name = thing(use.option.offered.food)
        amounts[name] = amounts.get(name, 0) + each * (use.grams // use.option.unit)
    return max(sorted(amounts), key=lambda name: amounts[name]) if amounts else None
