"""Enough protein, energy, fibre and vegetables on each plate: what is short of the target costs."""

import operator
from collections.abc import Iterator
from typing import NamedTuple

from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import (
    ENERGY_ENOUGH_KCAL,
    ENERGY_TARGET_KCAL,
    FIBRE_TARGET_G,
    PROTEIN_ENOUGH_G,
    TOMATOES_OF_A_SAUCE_G,
    VEGETABLES_PLENTY_G,
    VEGETABLES_TARGET_G,
)
from calmlarder.compose.rules.limits import most_of_options
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import (
    ENERGY_OVER,
    ENERGY_UNDER_TARGET,
    FIBRE_UNDER_TARGET,
    POINT,
    PROTEIN_OF_THE_REST_G,
    PROTEIN_OVER,
    PROTEIN_UNDER_TARGET,
    VEGETABLES_UNDER_PLENTY,
    VEGETABLES_UNDER_TARGET,
)


class Target(NamedTuple):
    """What everybody together should get, what a unit of each option brings of it, and the price of what is short.

    `rest` is what options that bring nothing of their own may add, and `rest_most` how much of it counts.
    """

    whole: int
    brings: dict[int, int]
    price: int
    rest: dict[int, int]
    rest_most: int


def targets_of(problem: PatternProblem) -> Iterator[Target]:
    """Those that are aimed at for the sitting; a dish that has no place for vegetables is short of all of them."""
    wanted, options = problem.wanted, list(enumerate(problem.options))
    people = wanted.people
    main = {n: o.protein_mg for n, o in options if "protein" in o.offered.food.roles or o.boxed}
    rest = {n: o.protein_mg for n, o in options if n not in main}
    most = PROTEIN_OF_THE_REST_G * 1000 * people
    yield Target(round(wanted.protein_g * 1000) * people, main, PROTEIN_UNDER_TARGET * POINT // 1000, rest, most)
    energy = ENERGY_TARGET_KCAL.get(wanted.sitting, 0) * 100 * people
    yield Target(energy, {n: o.energy for n, o in options}, ENERGY_UNDER_TARGET * POINT // 1000, {}, 0)
    fibre = FIBRE_TARGET_G.get(wanted.sitting, 0) * 1000 * people
    yield Target(fibre, {n: o.fibre_mg for n, o in options}, FIBRE_UNDER_TARGET * POINT // 1000, {}, 0)
    slots = problem.pattern.slots
    vegetables = {n: o.unit for n, o in options if slots[o.slot].role == "vegetable"}
    sauce = {n: o.unit for n, o in options if slots[o.slot].role == "sauce" and o.offered.food.kind == "tomato"}
    of_sauce = TOMATOES_OF_A_SAUCE_G * people
    for targets, price in (
        (VEGETABLES_TARGET_G, VEGETABLES_UNDER_TARGET - VEGETABLES_UNDER_PLENTY),
        (VEGETABLES_PLENTY_G, VEGETABLES_UNDER_PLENTY),
    ):
        yield Target(targets.get(wanted.sitting, 0) * people, vegetables, price * POINT // 10, sauce, of_sauce)


class Nourishing:
    """What each target is short of costs; an unknown figure counts as none."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One shortfall for each target."""
        terms: list[Term] = []
        for target in targets_of(draft.problem):
            if not target.whole:
                continue
            got = sum(each * draft.units[number] for number, each in target.brings.items())
            if target.rest:
                counts = draft.model.new_int_var(0, min(target.rest_most, target.whole), "")
                draft.model.add(counts <= sum(each * draft.units[number] for number, each in target.rest.items()))
                got += counts
            short = draft.model.new_int_var(0, target.whole, "")
            draft.model.add(got + short >= target.whole * draft.active)
            terms.append((-target.price, short))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """What is short even with every slot filled by what is richest in it."""
        least = 0
        for target in targets_of(problem):
            if target.whole:
                rest = min(target.rest_most, most_of_options(problem, target.rest)) if target.rest else 0
                least += target.price * max(0, target.whole - most_of_options(problem, target.brings) - rest)
        return -least


class NotTooMuch:
    """Energy and protein beyond what fills a plate cost: no three cheeses because all three are there."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """What is above each; an unknown figure counts as none."""
        problem, terms = draft.problem, list[Term]()
        sitting, options = problem.wanted.sitting, problem.options
        for enough, brings, price in (
            (ENERGY_ENOUGH_KCAL.get(sitting, 0) * 100, [option.energy for option in options], ENERGY_OVER),
            (PROTEIN_ENOUGH_G.get(sitting, 0) * 1000, [option.protein_mg for option in options], PROTEIN_OVER),
        ):
            whole = enough * problem.wanted.people
            most = sum(each * option.most for each, option in zip(brings, options, strict=True))
            if whole and most > whole:
                over = draft.model.new_int_var(0, most - whole, "")
                draft.model.add(over >= sum(map(operator.mul, brings, draft.units)) - whole)
                terms.append((-price * POINT // 1000, over))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """No more than enough costs nothing."""
        return 0
