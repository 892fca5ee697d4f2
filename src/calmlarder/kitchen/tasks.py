"""What one cook has to do for a dinner: chop, put on, fry, add, serve. Minutes are common practice, no source."""

import math
from collections.abc import Iterator, Sequence

from calmlarder.kitchen.schedule import Task
from calmlarder.kitchen.steps import Filling, listed, one_of_each
from calmlarder.patterns.pattern import REFERENCE, Pattern, slot_names

COOK, RING, OVEN, MICROWAVE, PAN = "cook", "ring", "oven", "microwave", "pan"
_WEIGHING = 1
_SERVING = 2
_BOILING_WATER = 5
_HEATING_OVEN = 12
_PREP_PER_100_G = (("peel", 1.5), ("cub", 1.0), ("slice", 0.8), ("chop", 0.8), ("strip", 0.8), ("shred", 0.8),
                   ("grate", 2.0), ("quarter", 0.5))  # fmt: skip
_LONGEST_PREP = 8
_LONGEST_WATCH = 8  # what fries longer is stirred now and then
_ALREADY_COOKED = frozenset({"cooked", "boiled", "roasted"})


def prep_minutes(filling: Filling) -> int:
    """Whole minutes at the board for one food; nothing for what is poured or spooned."""
    prep = filling.prep
    if not prep or filling.how == "staple":
        return 0
    rate = next((rate for word, rate in _PREP_PER_100_G if word in prep), 0.4)
    return min(_LONGEST_PREP, max(1, math.ceil(rate * filling.grams / 100)))


def tasks_of(pattern: Pattern, fillings: Sequence[Filling]) -> tuple[list[Task], dict[str, str]]:
    """The tasks of a dinner, and what to call each on the timeline."""
    tasks: list[Task] = []
    words: dict[str, str] = {}
    weighed = [f"{filling.grams} g {filling.food.name}" for filling in fillings if filling.how == "weigh"]
    first: tuple[str, ...] = ()
    if weighed:
        tasks.append(Task("weigh", _WEIGHING, {COOK: 1}))
        words["weigh"] = f"weigh {listed(weighed)}"
        first = ("weigh",)
    fillings = one_of_each(fillings)  # each task has a name of its own
    for filling in fillings:
        minutes = prep_minutes(filling)
        if minutes:
            name = _prep(filling)
            tasks.append(Task(name, minutes, {COOK: 1}, after=first))
            words[name] = f"{filling.food.name}: {filling.prep}"
    for task, said in (*_bases(pattern, fillings), *_pan(pattern, fillings), *_vessel(pattern, fillings, "boil"),
                       *_vessel(pattern, fillings, "roast")):  # fmt: skip
        tasks.append(task)
        words[task.name] = said
    if pattern.oven_finish:
        tasks.append(Task("bake", pattern.oven_finish, {OVEN: 1}, after=tuple(task.name for task in tasks)))
        words["bake"] = "bake until browned"
    tasks.append(Task("serve", _SERVING, {COOK: 1}, after=tuple(task.name for task in tasks)))
    words["serve"] = "season, finish and serve"
    return tasks, words


def _prep(filling: Filling) -> str:
    return f"prep {filling.slot} {filling.food.id}"


def _prepared(fillings: Sequence[Filling]) -> tuple[str, ...]:
    return tuple(_prep(filling) for filling in fillings if prep_minutes(filling))


def _cooking(pattern: Pattern, fillings: Sequence[Filling], method: str, base: bool) -> list[Filling]:
    slots = pattern.slots
    return [
        filling
        for filling in fillings
        if slots[filling.slot].method == method and (slots[filling.slot].role == "base") == base
        if filling.minutes
    ]


def _names(fillings: Sequence[Filling]) -> str:
    return listed([filling.food.name for filling in fillings])


def _bases(pattern: Pattern, fillings: Sequence[Filling]) -> Iterator[tuple[Task, str]]:
    """Each base cooks by itself on a ring or in the microwave, unattended once it is on."""
    for method, place in (("boil", RING), ("steam", RING), ("microwave", MICROWAVE)):
        for filling in _cooking(pattern, fillings, method, base=True):
            minutes = filling.minutes
            name = f"base {filling.slot} {filling.food.id}"
            wait = _prepared([filling])
            cooked = filling.food.state in _ALREADY_COOKED
            if place == RING and not cooked:
                yield (
                    Task(f"water {name}", _BOILING_WATER, {RING: 1}),
                    f"bring water to the boil for the {filling.food.name}",
                )
                wait = (*wait, f"water {name}")
            said = f"warm the {filling.food.name} until steaming" if cooked else f"{method} the {filling.food.name}"
            yield Task(name, minutes, {place: 1}, after=wait), said


def _pan(pattern: Pattern, fillings: Sequence[Filling]) -> Iterator[tuple[Task, str]]:
    """What is fried: slot by slot through one wide pan, or all together with each thing added in its time."""
    fried = [f for f in fillings if pattern.slots[f.slot].method == "stir-fry" and f.minutes]
    if not fried:
        return
    if pattern.pan == "together":
        yield from _together(fried, "pan", Task("pan", 0, {RING: 1, PAN: 1}), "fry")
        return
    before: tuple[str, ...] = ()
    for slot in sorted({f.slot for f in fried}, key=lambda slot: _mentioned(pattern, slot)):
        things = sorted((f for f in fried if f.slot == slot), key=lambda f: -f.minutes)
        minutes = things[0].minutes
        needs = {RING: 1, PAN: 1} if minutes > _LONGEST_WATCH else {COOK: 1, RING: 1, PAN: 1}
        task = Task(f"fry {slot}", minutes, needs, after=(*_prepared(things), *before))
        before = (task.name,)
        yield task, f"fry {_names(things)}"


def _mentioned(pattern: Pattern, slot: str) -> int:
    """The step that first names a slot."""
    for number, step in enumerate(pattern.steps):
        if any(slot in slot_names(found) for found in REFERENCE.finditer(step)):
            return number
    return len(pattern.steps)


def _vessel(pattern: Pattern, fillings: Sequence[Filling], method: str) -> Iterator[tuple[Task, str]]:
    """One pot, or one oven: the longest goes in first, each other thing so that all is done together."""
    things = _cooking(pattern, fillings, method, base=False)
    if method == "roast":
        things += _cooking(pattern, fillings, method, base=True)
    if not things:
        return
    name, place, ready, getting_ready, minutes = {
        "boil": ("pot", RING, "water pot", "bring the pot to a simmer", _BOILING_WATER),
        "roast": ("oven", OVEN, "heat oven", "heat the oven", _HEATING_OVEN),
    }[method]
    yield Task(ready, minutes, {place: 1}), getting_ready
    verb = "simmer" if method == "boil" else "roast"
    yield from _together(things, name, Task(name, 0, {place: 1}, after=(ready,)), verb)


def _together(things: Sequence[Filling], name: str, empty: Task, verb: str) -> Iterator[tuple[Task, str]]:
    """The longest first; the rest joins it as many minutes before the end as it takes."""
    by_minutes = sorted(things, key=lambda f: -f.minutes)
    longest = by_minutes[0].minutes
    first = [f for f in by_minutes if f.minutes == longest]
    yield (
        empty._replace(minutes=longest, after=(*empty.after, *_prepared(first))),
        f"{verb} {_names(first)}",
    )
    for filling in by_minutes[len(first) :]:
        add = f"add {name} {filling.slot} {filling.food.id}"
        lead = filling.minutes
        yield Task(add, 0, {}, after=_prepared([filling]), before_end_of=(name, lead)), f"add the {filling.food.name}"
