"""What cooks at one place together: the slowest goes in first, the rest joins it, so that all is done at once."""

import re
from collections.abc import Callable, Iterator, Sequence
from functools import partial

from calmlarder.and_list import and_list
from calmlarder.kitchen.filling import ALREADY_COOKED, Filling
from calmlarder.kitchen.late import LATE_MINUTES, SLIMY
from calmlarder.kitchen.lidded import joins_under_a_lid
from calmlarder.kitchen.piece import Dish, Progress, Told, Work
from calmlarder.kitchen.preparing import made_ready_before
from calmlarder.kitchen.salting import salted
from calmlarder.kitchen.shortest_schedule import Task
from calmlarder.kitchen.two_pans import in_pans, on_trays
from calmlarder.kitchen.wording import (
    crisps,
    egg_instead,
    egg_words,
    fried_eggs,
    joins,
    laid_on_top,
    sentence,
    warmed,
    with_sign,
)
from calmlarder.patterns.pattern import JOINED, Place, Step
from calmlarder.tables.vocabulary import CANNED_STATES

_COOKED_BEFORE = frozenset({*ALREADY_COOKED, *CANNED_STATES})
_SOFT_PULSES = frozenset({"pulse", "soya"})  # cooked as they are sold: made hot, not browned
_SPRINKLED = frozenset({"aromatic", "spice"})  # fish falls apart where it is stirred
_TOGETHER = 1  # things whose minutes differ by no more go in together
_WATER_FOR_IT = 4  # so much longer grain cooks sooner than its water waits for it: ours
_SIMMERS = re.compile(r"\b(?:simmer|braise)\b")
_THIN = re.compile(r"\bsoup\b", re.IGNORECASE)  # no hollows stay in it
_FALLS_MINUTES = 3  # until raw greens and the like have fallen and make room: common practice, no source
_BROWNED_OKRA = 3  # minutes in what is wet, for okra that was fried soft before: ours
EGG_MINUTES = 6  # until an egg that is cracked into a stew is set, white and yolk: common practice, no source
_DRAINED = re.compile(r",? and drain\b(?=[.;]?$)")
_ON: dict[Place, str] = {"pan": "to the pan", "pot": "to the pot", "oven": "to the tray", "microwave": "to the rest"}


def groups_of(dish: Dish, step: Step, new: Sequence[Filling], cooked: Sequence[Filling]) -> list[list[Filling]]:
    """What goes in at once, and what joins it later so that all is done together."""
    if step.place not in JOINED:
        return [list(new)]
    timed = [one for one in new if one in cooked and one.minutes and dish.is_timed(one)]
    eggs = [one for one in timed if loose_egg(dish, one)]
    timed = sorted((one for one in timed if one not in eggs), key=lambda one: -minutes_in(dish, one))
    groups: list[list[Filling]] = []
    for one in timed:
        apart = _WATER_FOR_IT if "volume of the grain" in step.words and dish.role(one) == "base" else _TOGETHER
        if groups and minutes_in(dish, groups[-1][0]) - minutes_in(dish, one) <= apart:
            groups[-1].append(one)
        else:
            groups.append([one])
    first = groups[0] if groups else eggs
    rest = [one for one in new if one not in timed and one not in eggs]
    at_once = [one for one in new if one in first or one in rest]
    later = [one for one in eggs if one not in first]  # hen's and duck's go in together
    return [at_once, *groups[1:], *([later] if later else [])]


def joining(
    dish: Dish, progress: Progress, step: Step, joined: Work, groups: Sequence[Sequence[Filling]]
) -> Iterator[Work]:
    """What joins a piece of work that is on, group by group."""
    if len(groups) < 2:
        return
    timed = [one for one in groups[0] if one.minutes and dish.is_timed(one)]
    on = _on(dish, step, timed[0] if timed else None)
    for group in groups[1:]:
        left = left_of(dish, group[0]) if group[0].key in progress.waiting else _left_in(dish, group[0], groups)
        told = _told(dish, progress, step, group, on)
        when = "with it" if left >= joined.task.minutes else f"for the last {left} minute{'s' * (left != 1)}"
        told = told._replace(said=f"{when} {told.said}")
        told = told._replace(said=f"{sentence(told.said)}.")
        if step.place == "pan":
            told = Told(*(in_pans(words, dish.pattern, dish.fillings) for words in told))
        if step.place == "oven":
            told = Told(*(on_trays(words, dish.pattern, dish.fillings) for words in told))
        said, line = salted(dish, progress, told, [one for one in group if one.key not in dish.browned])
        for one in group:
            said = signed(dish, said, one)
        name = f"{joined.task.name} {group[0].key}"
        task = Task(name, 0, {}, after=made_ready_before(group), before_end_of=(joined.task.name, left))
        adds = tuple(one.food.id for one in group if one.key not in dish.browned)
        yield Work(task, joined.stage, said, line, adds, joined.vessel)


def signed(dish: Dish, said: str, one: Filling) -> str:
    """A sentence with the sign of a thing, but for what was crisp when it came out of the pan."""
    return said if one.key in dish.browned and crisps(one) else with_sign(said, one)


def into_its_pot(
    dish: Dish, progress: Progress, boiled: Work, host: Filling, joiners: Sequence[Filling]
) -> Iterator[Work]:
    """What boils by itself, and what joins it in its salted water; all of it is drained together."""
    if not joiners:
        yield boiled
        return
    yield boiled._replace(said=_DRAINED.sub("", boiled.said), line=_DRAINED.sub("", boiled.line))
    groups = [[one for one in joiners if one.minutes == left] for left in sorted({one.minutes for one in joiners})]
    for group in reversed(groups):
        progress.waiting -= {one.key for one in group}
        left = group[0].minutes
        told = Told(*(
            f"add {and_list([called(one) for one in group])} to the pot with the {host.short}"
            for called in (progress.mention(group), lambda one: one.food.name)
        ))  # fmt: skip
        said = f"For the last {left} minute{'s' * (left != 1)} {told.said}."
        for one in group:
            said = with_sign(said, one)
            progress.came_in[one.key] = [boiled.task.name]
        progress.heated.update(one.key for one in group)
        name = f"{boiled.task.name} {group[0].key}"
        task = Task(name, 0, {}, after=made_ready_before(group), before_end_of=(boiled.task.name, left))
        yield Work(task, boiled.stage, said, told.line, tuple(one.food.id for one in group), boiled.vessel)
    yield taken_off(boiled, "drain", [host, *joiners])


def taken_off(on: Work, off: str, things: Sequence[Filling]) -> Work:
    """Draining or lifting out what others have joined, at the end of it."""
    task = Task(f"{on.task.name} off", 0, {}, before_end_of=(on.task.name, 0))
    names = and_list([one.short for one in things])
    what = {"drain": f"drain the {names}", "keep warm": f"keep the {names} warm"}.get(off, off)
    what = what.replace("lift out", f"lift out the {names}", 1)
    off = what if off.startswith("lift out") else off
    return Work(task, on.stage, f"Then {off}.", what, (), on.vessel, alone=f"{sentence(what)}.")


def _left_in(dish: Dish, one: Filling, groups: Sequence[Sequence[Filling]]) -> int:
    """How many minutes before the end something joins what is on; what is tender goes in with the eggs, not after."""
    if loose_egg(dish, one):
        return min(one.minutes, EGG_MINUTES)
    eggs = [min(egg.minutes, EGG_MINUTES) for group in groups[1:] for egg in group if loose_egg(dish, egg)]
    return max([minutes_in(dish, one), *eggs])


def minutes_in(dish: Dish, one: Filling) -> int:
    """How long a thing is among the others; okra that was browned before comes last, or it draws threads after all."""
    return min(one.minutes, _BROWNED_OKRA) if one.key in dish.browned and one.food.id in SLIMY else one.minutes


def before_eggs(dish: Dish, step: Step, others: Sequence[int]) -> int:
    """How many minutes the rest cooks before eggs are cracked in: raw greens fall first, but in a soup."""
    swims = step.place == "pot" and not _sets_in_hollows(dish, step)
    return 0 if swims else min(max(others, default=0), _FALLS_MINUTES)


def _sets_in_hollows(dish: Dish, step: Step) -> bool:
    return _SIMMERS.search(step.words) is not None and not _THIN.search(dish.pattern.title)


def left_of(dish: Dish, one: Filling) -> int:
    """How many minutes before the end something that was held back joins."""
    return one.minutes if dish.is_timed(one) or one.food.kind == "leaf" else LATE_MINUTES


def instead(dish: Dish, main: Sequence[Filling]) -> Callable[[str], str] | None:
    """How a sentence for tofu, fish or meat is put, where all that it is said of is eggs, or cooked pulses."""
    if main and all(loose_egg(dish, one) for one in main):
        return fried_eggs if laid_on_top(dish.pattern, main[0].slot) else egg_instead
    if main and all(one.food.kind in _SOFT_PULSES or _is_leftover(one) for one in main):
        return partial(warmed, [one.food.name for one in main])
    return None


def _is_leftover(one: Filling) -> bool:
    """Meat or fish that was cooked before, or comes out of a tin: browned again it only gets dry."""
    return one.food.kind in {"poultry", "meat", "fish", "shellfish"} and one.food.state in _COOKED_BEFORE


def reheats(dish: Dish, things: Sequence[Filling]) -> bool:
    """Whether all that comes to the heat was cooked before, and is but made hot."""
    timed = [one for one in things if dish.is_timed(one)]
    return bool(timed) and all(one.soft for one in timed)


def _told(dish: Dish, progress: Progress, step: Step, group: Sequence[Filling], on: str) -> Told:
    names = and_list([progress.mention(group)(one) for one in group])
    shorts = and_list([one.food.name for one in group])
    if group[0].food.kind == "egg":
        whole = laid_on_top(dish.pattern, group[0].slot)
        place = "stew" if _sets_in_hollows(dish, step) else step.place
        return Told(*(egg_words(place, name, whole) for name in (names, shorts)))
    fish = next((one for one in dish.named_by(step) if one.food.kind == "fish"), None)
    if fish is not None and step.place == "pan" and dish.role(group[0]) in _SPRINKLED:
        return Told(*(f"scatter {called} over the {fish.short}" for called in (names, shorts)))
    lid = joins_under_a_lid(step, group)
    return Told(*(joins(group[0], step.place, dish.has_fat(step), called, on) + lid for called in (names, shorts)))


def loose_egg(dish: Dish, one: Filling) -> bool:
    """An egg where the pattern's words are for tofu, fish or meat."""
    return one.food.kind == "egg" and one.food.state == "raw" and set(dish.pattern.slots[one.slot].kinds) != {"egg"}


def _on(dish: Dish, step: Step, first: Filling | None) -> str:
    """Where what comes later joins; with several pots on, the pot is named by what is in it."""
    if "steamer" in step.words:
        return "to the steamer"
    pots = [one for one in dish.pattern.steps if one.place in {"apart", "pot"}]
    if first is not None and step.place == "pot" and any(one.place == "apart" for one in pots):
        return f"to the pot with the {first.short}"
    return _ON[step.place]
