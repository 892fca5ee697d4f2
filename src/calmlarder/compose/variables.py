"""The variables of one pattern's model, and what rules and wishes may ask of them."""

import math
from typing import Any

from calmlarder.compose.largest_errors import LoadTerm
from calmlarder.compose.problem import PatternProblem
from calmlarder.cp_sat import cp_model
from calmlarder.intake.load import UseLoad
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

    def load_terms(self, number: int, use: UseLoad) -> list[LoadTerm]:
        """The likely load of an option, in hundredths of a mg."""
        option = self.problem.options[number]
        return [LoadTerm(math.ceil(use.likely * option.unit), self.units[number], option.most)]

    def off_terms(self, number: int, use: UseLoad) -> list[LoadTerm]:
        """How far the load of an option may be off, weighed or by eye, in hundredths of a mg."""
        option = self.problem.options[number]
        by_eye = LoadTerm(math.ceil(use.by_eye * option.unit), self.units[number], option.most)
        weighed, weighed_units = self.weighed[number], self.weighed_units[number]
        if use.settled or weighed is None or weighed_units is None:
            return [by_eye]
        surer = LoadTerm(math.ceil((use.error - use.by_eye) * option.unit), weighed_units, option.most)
        return [by_eye, surer, LoadTerm(math.ceil(use.on_scale(self.problem.wanted.tolerance)), weighed, 1)]

    def misjudged_terms(self, number: int, use: UseLoad) -> list[LoadTerm]:
        """Hundredths of the load by which an amount judged by eye may be wrong, its composition left out."""
        if use.settled or not use.likely:
            return []
        option, weighed_units = self.problem.options[number], self.weighed_units[number]
        per_unit = self.problem.wanted.tolerance.eye_percent * math.ceil(use.likely * option.unit)
        by_eye = [LoadTerm(per_unit, self.units[number], option.most)]
        return by_eye if weighed_units is None else [*by_eye, LoadTerm(-per_unit, weighed_units, option.most)]
