"""Some slots may each stay empty, but not all of them."""

from calmlarder.compose.variables import DishVariables


class OneOf:
    """At least one lot among the slots of each group that the pattern names; of a group of bases one, and no more.

    Rice and a slice of bread beside it are two starches: common practice, no source.
    """

    def post(self, draft: DishVariables) -> None:
        """Require one."""
        pattern = draft.problem.pattern
        for names in pattern.one_of:
            there = [draft.used[number] for name in names for number, _ in draft.problem.in_slot(name)]
            draft.model.add(sum(there) >= draft.active)
            if all(pattern.slots[name].role == "base" for name in names):
                draft.model.add(sum(there) <= 1)
