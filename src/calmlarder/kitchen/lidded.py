"""Hard and tough vegetables soften under a lid: a splash of water for what fries, a lid for leaves that simmer.

A spoon of oil browns cubes of swede long before they are soft, and kale goes leathery in it. Common practice, no
source.
"""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import IN_SHELLS, Filling
from calmlarder.kitchen.finer import roasts_long_in_dice
from calmlarder.kitchen.late import JUICY, JUICY_FOODS, SLIMY
from calmlarder.kitchen.piece import Dish, Work
from calmlarder.kitchen.shortest_schedule import Task
from calmlarder.patterns.pattern import Step

# Minutes in a pan from which a thing is hard or tough, by its kind: ours.
_FROM_MINUTES = {"root": 10, "squash": 10, "fruit-vegetable": 10, "pod": 8, "stem": 10, "brassica": 7, "leaf": 6}
_BROWN_WELL = frozenset({"root", "squash"})  # sweet where they brown: common practice, no source
_AS_THEY_ARE = frozenset({*SLIMY, "bitter-gourd", "leek-green", "nopales"})  # fried dry, or soft by themselves
_WET_ALREADY = re.compile(r"\b(?:water|simmer|braise|boil|cook down|cover|lid|soup|broth|steam(?:er)?)\b")
_SIMMERS = re.compile(r"\b(?:simmer|cook down)\b")
_COVERED = re.compile(r"\b(?:cover|lid|soup|broth|boiling water|without)\b")
_AT_THE_END = 3  # minutes: ours
_JOINS = re.compile(r"^(For the last \d+ minutes? )(?=(?:add|stir)\b)")
_CLOSE = 2  # minutes: what joins so soon after the water would go in has it poured over: ours
_THREADS = frozenset({*SLIMY, "nopales"})  # under a lid they draw threads
_SHELLS = "until every shell is open"
_BROWNS_MINUTES = 40  # in the open at the end, potatoes beside them: common practice, no source
_A_HEAP_G = 100  # leaves that a pot does not take in at once: ours
_UNCOVERED = "until the leaves have fallen"


def splash(dish: Dish, step: Step, here: Sequence[Filling], minutes: int, said: str) -> tuple[int, str]:
    """How many minutes before its end what fries gets a splash of water and a lid, and how that is said.

    `here` is all that comes to the heat in the step. 0 where nothing wants it, or where enough is wet already.
    """
    hard = [one for one in here if _is_hard(one) and dish.pattern.slots[one.slot].method == "stir-fry"]
    if step.place not in {"pan", "pot"} or not hard or _WET_ALREADY.search(step.words):
        return 0, ""
    if any(one.food.id in _THREADS for one in here):
        return 0, ""
    left = _after_what_joins(min(2 * max(one.minutes for one in hard) // 3, minutes - 1), here)
    there = [one for one in dish.named_by(step) if one not in here or one.minutes > left]
    if any(_is_juicy(one) for one in there) or any(one.food.kind == "tomato" and one.minutes > left for one in here):
        return 0, ""  # what joins later brings its water too late
    first = "turn the heat to medium, " if re.search(r"\bhigh heat\b", said) else ""
    several = re.search(r"\bpans\b", said) is not None
    called = "pot" if re.search(r"\bpot\b", said) and not re.search(r"\bpans?\b", said) else step.place
    lid, place = ("the lids on", f"{called}s") if several else ("the lid on", called)
    browns = re.search(r"\b(?:golden|browned)\b", step.words) or any(one.food.kind in _BROWN_WELL for one in hard)
    joined = [one for one in here if dish.is_timed(one) and 0 < one.minutes <= left]
    browns = browns and not any(one.minutes < left or one.food.kind == "leaf" for one in joined)  # those would stew
    off = f", and take {'them' if several else 'it'} off once they are soft, so that they brown" if browns else ""
    lidded = f"put {lid}{off}" if off else f"and put {lid}"
    return left, f"{first}add a splash of water to the {place}, {lidded}"


def _after_what_joins(left: int, here: Sequence[Filling]) -> int:
    """So many minutes before the end that what joins at about that time is in the pan first."""
    return min([left, *(one.minutes for one in here if max(left - _CLOSE, _AT_THE_END + 1) <= one.minutes < left)])


def lid_off(later: Sequence[Work], left: int, what: str) -> list[Work]:
    """What joins at the very end, with the lid taken off for it: bean sprouts are crisp, ginger fries."""
    last = [one for one in later if one.task.before_end_of and one.task.before_end_of[1] <= min(_AT_THE_END, left - 1)]
    first = next((one for one in last if _JOINS.match(one.said)), None)
    if first is None or "lid" not in what or "off" in what:
        return list(later)
    off = f"take the {'lids' if 'lids' in what else 'lid'} off, and "
    opened = first._replace(said=_JOINS.sub(rf"\1{off}", first.said, count=1), line=f"{off}{first.line}")
    return [opened if one is first else one for one in later]


def foil_off(here: Sequence[Filling]) -> tuple[int, str]:
    """The same of dice that roast long: they brown when they are soft, and the foil is off."""
    return (_BROWNS_MINUTES, "take the foil off") if any(roasts_long_in_dice(one) for one in here) else (0, "")


def splashed(on: Work, left: int, what: str, with_it: bool) -> Work:
    """The piece of work in which the water goes in, while the rest of its stage is on.

    `with_it` says that something joins at the same minute, and is told before.
    """
    task = Task(f"{on.task.name} lid", 0, {}, before_end_of=(on.task.name, left))
    when = "Then" if with_it else f"For the last {left} minute{'s' * (left != 1)}"
    return Work(task, on.stage, f"{when} {what}.", what, (), on.vessel)


def under_a_lid(said: str, things: Sequence[Filling]) -> str:
    """A sentence in which a heap of tough leaves simmers with no lid said: with one, until they have fallen.

    So with shells, which open in steam.
    """
    if any((one.household or "").endswith(IN_SHELLS) for one in things) and not _COVERED.search(said):
        return f"{said.removesuffix('.')}, with the lid on {_SHELLS}{'.' * said.endswith('.')}"
    leaves = [one for one in things if one.food.kind == "leaf" and _is_hard(one)]
    if sum(one.grams for one in leaves) < _A_HEAP_G or not _SIMMERS.search(said) or _COVERED.search(said):
        return said
    return f"{said.removesuffix('.')}, with the lid on {_UNCOVERED}{'.' * said.endswith('.')}"


def joins_under_a_lid(step: Step, group: Sequence[Filling]) -> str:
    """What is said behind leaves that join what simmers: nothing where they are few, or a lid is on already."""
    return under_a_lid(step.words.removesuffix("."), group).removeprefix(step.words.removesuffix("."))


def _is_hard(one: Filling) -> bool:
    least = _FROM_MINUTES.get(one.food.kind)
    raw = one.food.state == "raw" and one.food.id not in _AS_THEY_ARE
    return least is not None and raw and one.minutes >= least


def _is_juicy(one: Filling) -> bool:
    return one.food.kind in JUICY or one.food.id in JUICY_FOODS
