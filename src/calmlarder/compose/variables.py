"""The variables of one pattern's model, and what rules and wishes may ask of them."""

import math
from fractions import Fraction
from typing import Any

from ortools.sat.python import cp_model

from calmlarder.compose.problem import PatternProblem
from calmlarder.tables.vocabulary import Family

Term = tuple[int, Any]  # a whole coefficient and a variable


class DishVariables:
    """A model under construction. Lists go by option number.

    units: how much (times the option's unit in grams); used, weighed, finished: yes or no;
    weighed_units: the units where weighed, else 0; family: the one flavour family of the dish.
    `active` is 1, or where several dishes share a model the literal that says whether this one is cooked: rules and
    wishes multiply what they ask for by it, which leaves the linear relaxation as tight as for one dish.
    """

    def __init__(self, problem: PatternProblem, model: Any = None, active: Any = 1) -> None:
        self.problem = problem
        self.model = cp_model.CpModel() if model is None else model
        self.active = active
        new = self.model
        options = problem.options
        self.used = [new.new_bool_var("") for _ in options]
        self.units = [new.new_int_var(0, option.most, "") for option in options]
        self.weighed = [new.new_bool_var("") if option.weighable else None for option in options]
        self.weighed_units = [new.new_int_var(0, option.most, "") if option.weighable else None for option in options]
        self.finished = [new.new_bool_var("") if option.whole and option.points else None for option in options]
        self.family: dict[Family, Any] = {name: new.new_bool_var("") for name in problem.pattern.flavours}
        self.time = new.new_int_var(0, 600, "")
        self.given: list[Term] = []  # what rules that may give ask for it, as terms of the objective

    def planned_terms(self, number: int, figure: int | Fraction) -> list[Term]:
        """The planned load of an option for a figure in mg per 100 g, in ten-thousandths of a milligram."""
        return [(math.ceil(100 * self.problem.options[number].unit * figure), self.units[number])]

    def worst_terms(self, number: int, figure: int | Fraction) -> list[Term]:
        """The worst load of an option for a figure in mg per 100 g, in ten-thousandths of a milligram."""
        option, sure = self.problem.options[number], self.problem.wanted.tolerance
        if option.boxed:
            return self.planned_terms(number, figure)
        by_eye = (math.ceil(sure.by_eye * option.unit * figure), self.units[number])
        weighed, weighed_units = self.weighed[number], self.weighed_units[number]
        if weighed is None or weighed_units is None:
            return [by_eye]
        return [
            by_eye,
            (math.ceil(-sure.eye_percent * option.unit * figure), weighed_units),
            (math.ceil(100 * sure.scale_grams * figure), weighed),
        ]
