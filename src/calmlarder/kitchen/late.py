"""What would burn or go soft goes in last: ginger, herbs and ground spices in a dry pan, leaves before a long simmer.

Half a minute in hot oil brings them out, two minutes of dry heat are enough and ten burn them (common practice, no
source). Where a pattern sizzles them before something that fries longer, they join it for its last minutes instead.
So do tender vegetables, where what comes after them at the same place takes longer than they do.
"""

import re
from collections.abc import Mapping, Sequence

from calmlarder.kitchen.filling import Filling
from calmlarder.patterns.pattern import HEATED, TIMED_ROLES, Pattern, Step

LATE_MINUTES = 2  # for so long they are in the pan
_DRY_MINUTES = 3  # and where no more is fried, they go in first
_BURNS = frozenset({"herb", "spice", "allium", "paste"})
_SOFT_MINUTES = 3  # greens that themselves take longer, as leek does, do not burn sooner than what they cook with
_WHOLE = frozenset({
    "bay-leaf", "cardamom", "chilli-dried", "cloves", "curry-leaves", "galangal", "lemongrass", "lime-leaves",
    "mustard-seeds", "panch-phoron", "saffron", "star-anise",
})  # fmt: skip  # whole spices and leaves flavour the oil, and cook on in it
_SEEDS = re.compile(r"\bseeds?$")  # cumin seed, as its line calls it
_WET = re.compile(r"\b(?:water|simmer|braise|broth|soup|bubble|boil|ladle|[Pp]our|[Bb]eat|crack|melt|steamer)\b")
_WARMS = re.compile(r"Warm \{fat\} in ")
_SOON_SOFT = 3  # minutes: what fries no longer than that is not fried before a sauce that simmers
_STAND_IT = frozenset({"root"})  # carrots in a stew are good after half an hour
_LONG_AFTER = 5  # so many minutes after it are long for what is tender
_QUICK = frozenset({"aromatic", "spice", "topping"})  # they cook on with what follows
_EMPTIES = re.compile(r"\b(?:lift out|drain|keep warm|leave to cool|boiled off)\b")
_WITH_EGGS = re.compile(r"\b(?:eggs?|beat|Beat|crack)\b")
_PIECEMEAL = re.compile(
    r"\b(?:[Pp]ush aside|[Mm]ake room|[Ss]lide the|hollows|press flat|Off the heat|shaking the pot|on top, cover)\b"
)
# Pale and wet where they only simmer; bacon is limp, and its fat swims.
_COLOURS = frozenset({"tofu-firm", "tempeh", "bacon"})
_WARMS_OR_HEATS = re.compile(r"(?:Warm|Heat) \{fat\} in ")
SLIMY = frozenset({"okra"})
JUICY_FOODS = frozenset({"bottle-gourd", "courgette", "ridge-gourd", "snake-gourd", "spinach", "winter-melon"})
JUICY = frozenset({"tomato", "cream", "stock", "plant-drink", "milk"})


def held_back(pattern: Pattern, fillings: Sequence[Filling]) -> Mapping[int, tuple[Filling, ...]]:
    """What joins late, by the number of the step whose last minutes it joins."""
    held: dict[int, tuple[Filling, ...]] = {}
    for one, target in (*_soft_first(pattern, fillings), *_not_burnt(pattern, fillings)):
        held[target] = (*held.get(target, ()), one)
    return held


def _soft_first(pattern: Pattern, fillings: Sequence[Filling]) -> list[tuple[Filling, int]]:
    """Tender vegetables, each with the later step in whose last minutes it is done."""
    found = []
    for one in fillings:
        at = _comes_in_at(one, pattern)
        if at is None or _is_held_for_heat(one, pattern) or pattern.slots[one.slot].role != "vegetable":
            continue
        if _does_without(pattern.steps[at], one, pattern, fillings):
            target = _before_it_is_soft(one, pattern, fillings, at)
            found += [(one, target)] if target is not None else []
    return found


def _not_burnt(pattern: Pattern, fillings: Sequence[Filling]) -> list[tuple[Filling, int]]:
    """Ginger, spices and the like; a step whose vegetables all come later is none that they could join."""
    later = [one.key for one, _ in _soft_first(pattern, fillings)]
    here = [one for one in fillings if one.key not in later]
    filled = {one.slot for one in here}
    found = []
    for one in here:
        at = _comes_in_at(one, pattern)
        if at is None or not _is_held_for_heat(one, pattern):
            continue
        target = _last_dry(pattern, here, filled, at)
        if target is not None and softens(one, pattern):
            target = target if dry_minutes(pattern.steps[target], pattern, here) > one.minutes else None
        found += [(one, target)] if target is not None else []
    return found


def _comes_in_at(one: Filling, pattern: Pattern) -> int | None:
    return next((n for n, step in enumerate(pattern.steps) if one.slot in step.slots), None)


def _is_held_for_heat(one: Filling, pattern: Pattern) -> bool:
    return _burns(one, pattern) or softens(one, pattern)


def _does_without(step: Step, one: Filling, pattern: Pattern, fillings: Sequence[Filling]) -> bool:
    """Whether all else of a step is still told where its tender vegetables come later: the fat that it warms."""
    firm = {other.slot for other in fillings if other.slot != one.slot or other.minutes > one.minutes}
    here = [name for name in step.slots if name in firm or pattern.slots[name].role == "fat"]
    return not here or not falls_away(step, firm, pattern)


def _burns(one: Filling, pattern: Pattern) -> bool:
    role = pattern.slots[one.slot].role
    burns = role in {"aromatic", "spice"} and (one.food.kind in _BURNS or role == "spice")
    whole = one.food.id in _WHOLE or (one.food.kind == "spice" and _SEEDS.search(one.food.name) is not None)
    return burns and not whole and one.minutes <= _SOFT_MINUTES


def softens(one: Filling, pattern: Pattern) -> bool:
    """Leek greens and the like in the place of a herb: soft in a few minutes, black in ten."""
    return pattern.slots[one.slot].role == "aromatic" and one.food.kind == "leaf" and one.minutes > _SOFT_MINUTES


def _before_it_is_soft(one: Filling, pattern: Pattern, fillings: Sequence[Filling], at: int) -> int | None:
    """The last step at its place in which a tender vegetable is done; None where it is not too long in the pan."""
    place = pattern.steps[at].place
    if place not in {"pan", "pot"} or not one.minutes or _EMPTIES.search(pattern.steps[at].words):
        return None
    filled = {other.slot for other in fillings}
    target, after = None, 0
    for number, step in enumerate(pattern.steps[at + 1 :], start=at + 1):
        if step.place != place or not step.happens(filled) or falls_away(step, filled, pattern):
            continue
        if _EMPTIES.search(step.words):
            return None
        minutes = lasts(step, pattern, fillings)
        after += minutes
        eggs = _WITH_EGGS.search(step.words) or any(
            other.slot in step.slots and other.food.kind == "egg" for other in fillings
        )
        if minutes >= one.minutes and not eggs and not _PIECEMEAL.search(step.words):
            target = number
    stays_firm = pattern.slots[one.slot].method == "stir-fry" and one.food.kind != "leaf"
    tender = one.minutes <= _SOON_SOFT if stays_firm else one.minutes < after and one.food.kind not in _STAND_IT
    return target if tender and after >= _LONG_AFTER else None


def _last_dry(pattern: Pattern, fillings: Sequence[Filling], filled: set[str], at: int) -> int | None:
    """The last step in which the pan of step `at` is dry and something fries for long; None where none does."""
    place = pattern.steps[at].place
    if place not in {"pan", "pot"}:
        return None
    longest, last = 0, None
    for number, step in enumerate(pattern.steps[at:], start=at):
        if step.place != place or not step.happens(filled) or falls_away(step, filled, pattern):
            continue
        if is_wet(step, fillings):
            if last is not None and "lift out" in pattern.steps[last].words:
                last = number  # better in what is left in the pan than with what leaves it
            break
        minutes = dry_minutes(step, pattern, fillings)
        longest += minutes
        if minutes > LATE_MINUTES and not _PIECEMEAL.search(step.words):
            last = number
    return last if longest > _DRY_MINUTES else None


def falls_away(step: Step, filled: set[str], pattern: Pattern) -> bool:
    """Whether a step is not told at all, since nothing fills what it is about."""
    wanted = [found for found in step.must_fill if not found[1] and found[3] is None]
    names = [[name.strip() for name in found[2].split(",")] for found in wanted]
    return any(not filled.intersection(one) and any(pattern.slots[n].role != "fat" for n in one) for one in names)


def is_wet(step: Step, fillings: Sequence[Filling]) -> bool:
    """Whether a step brings liquid into its pan, by its words or by what fills it."""
    if _WET.search(step.words):
        return True
    return any(one.slot in step.slots and one.food.kind in JUICY for one in fillings)


def dry_minutes(step: Step, pattern: Pattern, fillings: Sequence[Filling]) -> int:
    """How long a step fries what comes to the heat with it."""
    here = _first_heated(step, pattern, fillings)
    timed = [one.minutes for one in here if pattern.slots[one.slot].role in TIMED_ROLES]
    return max([*timed, step.minutes or 0])


def lasts(step: Step, pattern: Pattern, fillings: Sequence[Filling]) -> int:
    """How long a step takes, with what comes to the heat there."""
    here = _first_heated(step, pattern, fillings)
    return max([step.minutes or 0, *(one.minutes for one in here if pattern.slots[one.slot].role not in _QUICK)])


def _first_heated(step: Step, pattern: Pattern, fillings: Sequence[Filling]) -> list[Filling]:
    """What no earlier step put on the heat."""
    before = {name for one in pattern.steps[: pattern.steps.index(step)] if one.place in HEATED for name in one.slots}
    return [one for one in fillings if one.slot in step.slots and one.slot not in before]


def _would_be_slimy(one: Filling, pattern: Pattern, fillings: Sequence[Filling]) -> bool:
    """Whether okra is put among what is wet, in its step or in another at its place."""
    if one.food.id not in SLIMY or pattern.slots[one.slot].method not in {"stir-fry", "boil"}:
        return False
    place = next(step.place for step in pattern.steps if one.slot in step.slots)
    steps = [step for step in pattern.steps if step.place == place and step.place in {"pan", "pot"}]
    beside = [other for other in fillings if any(other.slot in step.slots for step in steps) and other is not one]
    told = [step for step in steps if one.slot in step.slots and re.search(r"\b(?:simmer|water)\b", step.words)]
    return bool(told) or any(other.food.kind in JUICY or other.food.id in JUICY_FOODS for other in beside)


def browned_first(pattern: Pattern, fillings: Sequence[Filling]) -> tuple[int | None, frozenset[str]]:
    """The step, one that warms fat, before which raw meat, tofu and tempeh that will simmer are browned, and which.

    So is okra that comes among what is wet: fried dry first it stays whole and draws no threads.
    """
    filled = {one.slot for one in fillings}
    slimy = {one.key for one in fillings if _would_be_slimy(one, pattern, fillings)}
    fat_on = _WARMS_OR_HEATS if slimy else _WARMS
    warms = next(
        (n for n, step in enumerate(pattern.steps) if fat_on.match(step.words) and step.place in {"pan", "pot"}), None
    )
    if warms is None:
        return None, frozenset()
    browned: set[str] = set()
    for one in fillings:
        slot = pattern.slots[one.slot]
        raw_meat = one.food.kind in {"meat", "poultry"} and one.food.state == "raw"
        simmers = slot.method == "boil" and (raw_meat or one.food.id in _COLOURS)
        if not simmers and one.key not in slimy:
            continue
        at = next((step for step in pattern.steps[warms + 1 :] if one.slot in step.slots), None)
        if at is not None and at.place == pattern.steps[warms].place and at.happens(filled):
            browned.add(one.key)
    return (warms if browned else None), frozenset(browned)
