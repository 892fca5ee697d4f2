"""What is better. Each wish is a class of one idea that gives terms of the objective, and its bound."""

from typing import Protocol

from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.variables import DishVariables, Term


class Wish(Protocol):
    """Something that makes a dinner better or worse, in ten-thousandths of a point."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """Coefficients and variables to add to the objective."""

    def bound(self, problem: PatternProblem) -> int:
        """No dinner of this pattern gets more from this wish."""
