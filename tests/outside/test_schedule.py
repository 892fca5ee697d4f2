"""The timeline's scheduler against a known optimum of the literature and against brute force."""

import itertools
import random

import pytest

from calmlarder.kitchen.shortest_schedule import Task, schedule

# Fisher & Thompson 1963, "Probabilistic learning combinations of local job-shop scheduling rules", instance 6x6
# (recalled): six jobs of (machine, time); a job shop is project scheduling with resources of one. Optimum 55.
SIX_BY_SIX = [
    [(2, 1), (0, 3), (1, 6), (3, 7), (5, 3), (4, 6)],
    [(1, 8), (2, 5), (4, 10), (5, 10), (0, 10), (3, 4)],
    [(2, 5), (3, 4), (5, 8), (0, 9), (1, 1), (4, 7)],
    [(1, 5), (0, 5), (2, 5), (3, 3), (4, 8), (5, 9)],
    [(2, 9), (1, 3), (4, 5), (5, 4), (0, 3), (3, 1)],
    [(1, 3), (3, 3), (5, 9), (0, 10), (4, 4), (2, 1)],
]


def test_known_optimum_of_a_job_shop() -> None:
    tasks = [
        Task(f"{job}.{step}", minutes, {f"m{machine}": 1}, after=(f"{job}.{step - 1}",) if step else ())
        for job, route in enumerate(SIX_BY_SIX)
        for step, (machine, minutes) in enumerate(route)
    ]
    found = schedule(tasks, {f"m{machine}": 1 for machine in range(6)}, seconds=60)
    assert found.proven
    assert found.minutes == 55


def serial(order: tuple[Task, ...], capacity: dict[str, int]) -> int:
    """Each task in turn as early as its forerunners and the resources let it: the serial scheme."""
    starts: dict[str, int] = {}
    ends: dict[str, int] = {}
    for task in order:
        start = max((ends[other] for other in task.after), default=0)
        while any(
            sum(
                other.needs.get(resource, 0)
                for other in order
                if other.name in starts and starts[other.name] <= minute < ends[other.name]
            )
            + amount
            > capacity[resource]
            for minute in range(start, start + task.minutes)
            for resource, amount in task.needs.items()
        ):
            start += 1
        starts[task.name], ends[task.name] = start, start + task.minutes
    return max(ends.values())


@pytest.mark.parametrize("seed", range(20))
def test_brute_force_on_small_kitchens(seed: int) -> None:
    """The serial scheme over all orders finds the optimum of project scheduling (Kolisch 1996, recalled)."""
    rng = random.Random(seed)
    capacity = {"cook": 1, "ring": 2}
    tasks: list[Task] = []
    for number in range(6):
        needs = rng.choice(({"cook": 1}, {"ring": 1}, {"cook": 1, "ring": 1}, {"ring": 2}))
        after = tuple(t.name for t in tasks if rng.random() < 0.3)
        tasks.append(Task(f"t{number}", rng.randint(1, 6), needs, after))
    orders = (
        order
        for order in itertools.permutations(tasks)
        if all(other in {t.name for t in order[:place]} for place, task in enumerate(order) for other in task.after)
    )
    assert schedule(tasks, capacity).minutes == min(serial(order, capacity) for order in orders)


def test_a_task_beyond_the_kitchen_is_refused() -> None:
    with pytest.raises(ValueError, match="there are 2"):
        schedule([Task("feast", 5, {"ring": 3})], {"ring": 2})


def test_two_tasks_of_one_name_are_refused_in_words() -> None:
    with pytest.raises(ValueError, match="two tasks are called cut"):
        schedule([Task("cut", 2, {"cook": 1}), Task("cut", 3, {"cook": 1})], {"cook": 1})


def test_no_time_at_all_still_gives_an_order() -> None:
    tasks = [Task("cut", 2, {"cook": 1}), Task("fry", 3, {"cook": 1}, after=("cut",))]
    found = schedule(tasks, {"cook": 1}, seconds=0.0)
    assert found.starts["fry"] >= found.starts["cut"] + 2
