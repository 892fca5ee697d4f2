"""Some slots may each stay empty, but not all of them."""

from calmlarder.compose.variables import DishVariables


class OneOf:
    """At least one lot among the slots of each group that the pattern names."""

    def post(self, draft: DishVariables) -> None:
        """Require one."""
        for names in draft.problem.pattern.one_of:
            used = sum(draft.used[number] for name in names for number, _ in draft.problem.in_slot(name))
            draft.model.add(used >= draft.active)
