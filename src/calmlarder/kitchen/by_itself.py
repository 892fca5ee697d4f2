"""What cooks in a vessel of its own, in its own words: rice, potatoes, eggs, wraps. Minutes are common practice."""

from collections.abc import Callable, Iterator, Sequence

from calmlarder.kitchen.filling import ALREADY_COOKED, Filling
from calmlarder.kitchen.joining import into_its_pot
from calmlarder.kitchen.piece import COOK, MICROWAVE, OVEN, RING, WATER, Dish, Progress, Work
from calmlarder.kitchen.shortest_schedule import Task
from calmlarder.kitchen.wording import own_words, rinsed, sentence, wants_water, with_sign, wrap_minutes
from calmlarder.patterns.pattern import Step
from calmlarder.tables.vocabulary import Method

_BOILING_WATER = 5
_CUTS = frozenset({"halve", "quarter", "slice"})
_PEELED_G_A_MINUTE = 165  # three eggs: ours
_STEAMS_DRY = "steam dry"
_STEAMING_DRY = 5  # minutes, on a plate: common practice, no source
_ON_A_PLATE_G = 200  # dry rice that lies thinly on one: ours

Waits = Callable[[Step, Sequence[Filling]], tuple[str, ...]]


def cooked_by_itself(dish: Dish, progress: Progress, step: Step, number: int, waits_of: Waits) -> Iterator[Work]:
    """Each thing cooks by itself, unattended once it is on; what the step says besides comes behind it."""
    told_behind = step.words[step.references[0].end() :]
    for one in progress.new(dish, step):
        method = dish.pattern.slots[one.slot].method
        peels = one.food.kind == "egg" and one.food.state == "raw" and method == "boil"
        dries = _STEAMS_DRY in told_behind and one.food.state not in ALREADY_COOKED
        tail = "." if peels or dries else rinsed(one, told_behind)
        stage = f"step {number} {one.key}"
        waits = waits_of(step, [one])
        if dish.pattern.eaten_cold and one.food.state in ALREADY_COOKED:
            yield from _cold(progress, one, stage, waits)
            continue
        if wants_water(one, method):
            water = boiling_water(one)
            yield water
            waits = (*waits, water.task.name)
        holds = _place_apart(method)
        progress.came_in[one.key] = [stage]
        progress.heated.add(one.key)
        said = own_words(one, method, progress.mention([one])(one)) + tail
        line = own_words(one, method, f"the {one.food.name}") + tail
        said = with_sign(sentence(said), one)
        minutes = max(one.minutes, step.minutes or 0, wrap_minutes(one) if method == "stir-fry" else 0)
        task = Task(stage, minutes, holds, after=waits)
        work = Work(task, stage, said, line.rstrip("."), (one.food.id,), one.key)
        yield from into_its_pot(dish, progress, work, one, dish.held.get(number, ()))
        if peels:
            yield _peeled(progress, one, told_behind, stage)
        if dries:
            yield _dried(progress, one, stage)


def _peeled(progress: Progress, one: Filling, told_behind: str, boiled: str) -> Work:
    """Boiled eggs are peeled by hand out of cold water, and cut as the step says."""
    name = f"{boiled} peel"
    progress.came_in[one.key] = [name]
    cut = told_behind.strip(" ;.")
    said = f"peel and {cut} the {one.short}" if cut in _CUTS else f"peel the {one.short}{cut and f' and {cut}'}"
    minutes = 1 + -(-one.grams // _PEELED_G_A_MINUTE)
    task = Task(name, minutes, {COOK: 1}, after=(boiled,))
    return Work(task, name, f"{sentence(said)}.", said)


def _dried(progress: Progress, one: Filling, boiled: str) -> Work:
    """Rice that is fried next steams dry first: wet it clumps, and the pan goes cold."""
    name = f"{boiled} dry"
    progress.came_in[one.key] = [name]
    where = "two large plates" if one.grams > _ON_A_PLATE_G else "a large plate"
    said = f"spread the {one.short} out on {where} to steam dry"
    task = Task(name, _STEAMING_DRY, {}, at_end_of=boiled)
    return Work(task, name, f"{sentence(said)}. About {_STEAMING_DRY} minutes.", said)


def _cold(progress: Progress, one: Filling, stage: str, waits: tuple[str, ...]) -> Iterator[Work]:
    """What was cooked before is not warmed for a box that is eaten cold."""
    progress.came_in[one.key] = [stage]
    progress.heated.add(one.key)
    said = f"take {progress.mention([one])(one)} cold from the fridge"
    line = f"take the {one.food.name} cold from the fridge"
    yield Work(Task(stage, 0, {}, after=waits), stage, f"{sentence(said)}.", line, (one.food.id,))


def boiling_water(one: Filling, measured: str = "") -> Work:
    """A pot of salted water that must boil before a thing goes in, or so much of it (`four times its volume`)."""
    water = f"{WATER}{one.key}"
    said = f"bring a pot of salted water to the boil for the {one.short}"
    if measured:
        said = f"bring salted water, {measured.replace('its', 'the')} of the {one.short}, to the boil"
    return Work(Task(water, _BOILING_WATER, {RING: 1}), water, f"{sentence(said)}.", said, vessel=one.key)


def _place_apart(method: Method) -> dict[str, int]:
    return {"microwave": {MICROWAVE: 1}, "roast": {OVEN: 1}, "stir-fry": {RING: 1}}.get(method, {RING: 1})
