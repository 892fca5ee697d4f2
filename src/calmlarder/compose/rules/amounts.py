"""An amount belongs to a lot that is used, within what there is, weighed or by eye."""

from calmlarder.compose.variables import DishVariables
from calmlarder.cp_sat import cp_model


class Amounts:
    """Units lie between the least worth cooking and what there is; a lot stands in one slot at most."""

    def post(self, draft: DishVariables) -> None:
        """Link used, units, weighed and finished."""
        model = draft.model
        slots_of: dict[tuple[int, int], list[cp_model.IntVar]] = {}
        for number, option in enumerate(draft.problem.options):
            used, units = draft.used[number], draft.units[number]
            model.add(units >= option.least * used)
            model.add(units <= option.most * used)
            weighed, weighed_units = draft.weighed[number], draft.weighed_units[number]
            if weighed is not None and weighed_units is not None:
                model.add(weighed <= used)
                model.add(weighed_units <= units)
                model.add(weighed_units <= option.most * weighed)
            finished = draft.finished[number]
            if finished is not None:
                model.add(units >= option.most * finished)
            slots_of.setdefault(option.key, []).append(used)
        for uses in slots_of.values():
            if len(uses) > 1:
                model.add_at_most_one(uses)
