"""What must hold. Each rule is a class of one idea with `post`."""

from typing import Protocol

from calmlarder.compose.draft import Draft


class Rule(Protocol):
    """Something that must hold of a dinner."""

    def post(self, draft: Draft) -> None:
        """Add the rule to the model."""
