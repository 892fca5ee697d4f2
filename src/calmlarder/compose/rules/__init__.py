"""What must hold. Each rule is a class of one idea with `post`."""

from typing import Protocol

from calmlarder.compose.variables import DishVariables


class Rule(Protocol):
    """Something that must hold of a dinner."""

    def post(self, draft: DishVariables) -> None:
        """Add the rule to the model."""
