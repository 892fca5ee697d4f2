"""Tasks that need a cook, rings, an oven: the shortest schedule, by CP-SAT.

A resource-constrained project scheduling problem: each task takes its minutes without a break, starts after the
tasks it waits for, and holds its resources meanwhile.
"""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calmlarder.cp_sat import cp_model
from calmlarder.solver import plain_solver

_STANDS_A_MINUTE = 6  # so many minutes longer that something fried stands are worth a minute: ours
_ANY_ORDER_S = 30.0  # ours: a first order is a matter of milliseconds on an idle machine


class Task(NamedTuple):
    """Something that takes `minutes` and holds `needs` (resource and amount) meanwhile.

    `after` names tasks that must have ended; `before_end_of` names a task and the minutes before its end at which this
    one starts (a food put into a pot that is on already); `at_end_of` names a task at whose end it starts (what fries
    in hot oil). What is `early` is done as soon as may be, the rest as late, the more so the greater its `weight`.
    """

    name: str
    minutes: int
    needs: Mapping[str, int]
    after: tuple[str, ...] = ()
    before_end_of: tuple[str, int] | None = None
    early: bool = False
    at_end_of: str | None = None
    weight: int = 1


class NoOrder(ValueError):
    """These tasks fit no order in this kitchen: no fault of the program, another dinner may."""


class Schedule(NamedTuple):
    """Start minute of each task, the length of the whole, and whether it is proven the best."""

    starts: Mapping[str, int]
    minutes: int
    proven: bool


def schedule(tasks: Sequence[Task], capacity: Mapping[str, int], seconds: float = 2.0) -> Schedule:
    """The shortest schedule, or little longer where that keeps what is fried from standing; then the least waits.

    Raises NoOrder when a task needs more than there is or tasks wait for each other, ValueError when two tasks have one
    name.
    """
    names = [task.name for task in tasks]
    if len(set(names)) < len(names):
        raise ValueError(f"two tasks are called {max(names, key=names.count)}")
    for task in tasks:
        for resource, amount in task.needs.items():
            if amount > capacity.get(resource, 0):
                raise NoOrder(f"{task.name} needs {amount} of {resource}, there are {capacity.get(resource, 0)}")
    horizon = sum(task.minutes for task in tasks)
    model = cp_model.CpModel()
    starts = {task.name: model.new_int_var(0, horizon, "") for task in tasks}
    intervals = {task.name: model.new_fixed_size_interval_var(starts[task.name], task.minutes, "") for task in tasks}
    minutes = {task.name: task.minutes for task in tasks}
    end = model.new_int_var(0, horizon, "")
    for task in tasks:
        model.add(end >= starts[task.name] + task.minutes)
        for other in task.after:
            model.add(starts[task.name] >= starts[other] + minutes[other])
        if task.before_end_of is not None:
            other, lead = task.before_end_of
            model.add(starts[task.name] == starts[other] + minutes[other] - lead)
        if task.at_end_of is not None:
            model.add(starts[task.name] == starts[task.at_end_of] + minutes[task.at_end_of])
    for resource, amount in capacity.items():
        users = [task for task in tasks if task.needs.get(resource) and task.minutes]
        if amount == 1:
            model.add_no_overlap(intervals[task.name] for task in users)
        elif users:
            model.add_cumulative(
                [intervals[task.name] for task in users], [task.needs[resource] for task in users], amount
            )
    # Length first; then chopping early, and all else as late as it may be, so that what is hot is hot at the end.
    # A minute of length is worth the less that something fried stands and goes cold.
    followed = {other for task in tasks if task.weight > 1 for other in (*task.after, task.at_end_of)}
    fried = [task for task in tasks if task.weight > 1 and task.name not in followed]
    stands = sum(end - starts[task.name] - task.minutes for task in fried)
    total = max(1, horizon * sum(task.weight for task in tasks))
    early = [task.name for task in tasks if task.early]
    late = sum(task.weight * starts[task.name] for task in tasks if not task.early)
    soon = sum((len(early) - place) * starts[name] for place, name in enumerate(early))  # the first named first
    model.minimize((end * _STANDS_A_MINUTE + stands) * (total * (len(early) + 1) + 1) + soon - late)
    solver = plain_solver(seconds)
    status = solver.solve(model)
    if status == cp_model.UNKNOWN:  # a busy machine may take all the time away: then any order at all
        solver.parameters.max_time_in_seconds = _ANY_ORDER_S
        solver.parameters.stop_after_first_solution = True
        status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        raise NoOrder("these tasks cannot be put in any order")
    return Schedule(
        {name: solver.value(start) for name, start in starts.items()},
        solver.value(end),
        status == cp_model.OPTIMAL and not solver.parameters.stop_after_first_solution,
    )
