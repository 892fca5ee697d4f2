"""The smallest change that makes a plate fit: the fewest grams to take less, as one small model of whole numbers."""

import math
from collections.abc import Sequence
from fractions import Fraction
from typing import Any, NamedTuple

from calmlarder.compose.largest_errors import largest_errors
from calmlarder.compose.solve import solver_of
from calmlarder.cp_sat import cp_model
from calmlarder.intake.load import Number
from calmlarder.intake.meal import Less, Table
from calmlarder.intake.plate import Item, LimitOn, limits_on

# Amounts are counted in tenths of a gram; what is taken less of is left in whole grams, or in halves of little.
_IN_GRAM, _STEP, _FINE_STEP, _FINE_BELOW = 10, 10, 5, 10
_SCALE = 1000  # of a load of a tenth of a gram, so that the shares of a boxed dish are whole numbers too
_SECONDS = 10.0


class _Taken(NamedTuple):
    """What is left of an item in tenths of a gram, whether anything is, and whether it is weighed."""

    item: Item
    left: Any
    there: Any
    weighed: Any
    most: int


def smallest_change(items: Sequence[Item], table: Table) -> tuple[Less, ...]:
    """Less of a few items, together the fewest grams with which the plate fits, by eye or weighed.

    Of changes of as many grams the one of fewest items, then of fewest weighings. Nothing where none was found.
    """
    model = cp_model.CpModel()
    by_food = {item.food: model.new_bool_var("") for item in items}  # who weighs a food weighs all of it
    taken = [_taken(model, item, by_food[item.food]) for item in items]
    for limit in limits_on(items, table.limits, table.counted):
        _post(model, limit, taken, table.people)
    changed = []
    for one in taken:
        less = model.new_bool_var("")
        model.add(one.left == one.most).only_enforce_if(~less)
        changed.append(less)
    many = len(taken) + 1
    model.minimize(
        many * many * sum(one.most - one.left for one in taken) + many * sum(changed) + sum(by_food.values())
    )
    solver = solver_of(_SECONDS, None)
    if solver.solve(model) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return ()
    left = [Fraction(solver.value(one.left), _IN_GRAM) for one in taken]
    return tuple(
        Less(n, Fraction(item.grams) - grams) for n, (item, grams) in enumerate(zip(items, left, strict=True))
        if grams != item.grams
    )  # fmt: skip


def _taken(model: Any, item: Item, weighed: Any) -> _Taken:
    whole = math.floor(item.grams * _IN_GRAM)
    step = _STEP if whole >= _FINE_BELOW * _IN_GRAM else _FINE_STEP
    left = model.new_int_var_from_domain(cp_model.Domain.from_values([*range(0, whole + 1, step), whole]), "")
    there = model.new_bool_var("")
    model.add(left == 0).only_enforce_if(~there)
    if item.weighed:
        model.add(weighed == 1)
    return _Taken(item, left, there, weighed, whole)


def _post(model: Any, limit: LimitOn, taken: Sequence[_Taken], people: int) -> None:
    """A limit likely, at most, and for each food that is judged by eye, misjudged alone."""
    load, off, by_eye = 0, dict[str, list[Any]](), dict[str, list[Any]]()
    most_off: dict[str, int] = {}
    for number, use in limit.uses.items():
        one, food = taken[number], taken[number].item.food
        likely, eye, error = (_whole(each) for each in (use.likely, use.by_eye, use.error))
        on_scale = _whole(use.on_scale(one.item.sure)) * _IN_GRAM
        load += likely * one.left
        most = max(eye * one.most, error * one.most + on_scale)
        deviation = model.new_int_var(0, most, "")
        model.add(deviation >= eye * one.left).only_enforce_if(~one.weighed)
        if use.settled:
            model.add(deviation >= eye * one.left)
        else:
            model.add(deviation >= error * one.left + on_scale * one.there).only_enforce_if(one.weighed)
            misjudged = model.new_int_var(0, likely * one.most * one.item.sure.eye_percent, "")
            model.add(misjudged >= likely * one.item.sure.eye_percent * one.left).only_enforce_if(~one.weighed)
            by_eye.setdefault(food, []).append(misjudged)
        off.setdefault(food, []).append(deviation)
        most_off[food] = most_off.get(food, 0) + most
    for room in limit.rooms:
        allowed = _room(room.likely, people)
        model.add(load <= allowed)
        if room.at_most is not None:
            items = [(sum(terms), most_off[food]) for food, terms in off.items()]
            items += [(_room(one, people),) * 2 for one in room.before]
            model.add(load + largest_errors(model, items) <= _room(room.at_most, people))
        if not room.used_up:
            for terms in by_eye.values():
                model.add(100 * load + sum(terms) <= 100 * allowed)


def _whole(each: Number) -> int:
    """A load of a tenth of a gram, scaled; rounded up where it is no whole number."""
    return math.ceil(Fraction(each) * _SCALE / _IN_GRAM)


def _room(load: int, people: int) -> int:
    return load * people * _SCALE
