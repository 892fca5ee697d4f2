"""What is done before anything is on the heat: weighing, washing and cutting. Common practice, no source."""

import math
import re
from collections import Counter
from collections.abc import Iterator, Sequence

from calmlarder.and_list import and_list
from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.made_ready import TOASTED
from calmlarder.kitchen.piece import COOK, MICROWAVE, RING, Dish, Work
from calmlarder.kitchen.shortest_schedule import Task
from calmlarder.kitchen.wording import sentence

# Minutes at the board and the scale: common practice, no source.
_WEIGHING = 1
_PREP_PER_100_G = (("peel", 1.5), ("cub", 1.0), ("slice", 0.8), ("chop", 0.8), ("strip", 0.8), ("shred", 0.8),
                   ("grate", 2.0), ("quarter", 0.5))  # fmt: skip
_ALONE = re.compile(r"\b(?:soaked|simmered|thawed) (\d+) minutes\b")  # while the cook does something else
_CRUSHED = "crushed"  # whole peppercorns of which nobody wants to bite into one
_LONGEST_PREP = 8  # however much it is
_TOASTING, _TOASTING_RAW_PEANUTS = 3, 5  # nuts and seeds in a dry pan
_THAWING = 4  # frozen leaves, under hot water or in the microwave, before they are squeezed


def weighing(dish: Dish) -> Iterator[Work]:
    """All that goes on the scale, at once and first."""
    weighed = [_on_the_scale(one) for one in dish.fillings if one.weighed]
    if weighed:
        said = f"weigh {and_list(weighed)}"
        yield Work(Task("weigh", _WEIGHING, {COOK: 1}, early=True), "weigh", sentence(said), said)


def preparing(dish: Dish) -> Iterator[Work]:
    """What each thing wants at the board, in the order in which the dish asks for it."""
    weighed = any(one.weighed for one in dish.fillings)
    shorts = Counter(one.short for one in dish.fillings)
    told: set[str] = set()
    for one in sorted(dish.fillings, key=lambda one: _comes_in(dish, one)):
        alike = [other for other in dish.fillings if _prep(other) == _prep(one)]
        minutes = prep_minutes(one._replace(grams=sum(other.grams for other in alike))) if _prep(one) not in told else 0
        if minutes:
            told.add(_prep(one))
            after = ("weigh",) if weighed else ()
            alone = _ALONE.search(one.prep)
            toasted = {RING: 1} if TOASTED in one.prep else {}
            needs = _alone_at(one.prep) if alone else {COOK: 1, **toasted}
            task = Task(_prep(one), minutes, needs, after=after, early=True)
            called = one.food.name if shorts[one.short] > 1 else one.short  # fresh chilli and ground chilli
            prep = one.prep.removeprefix("leaves ") if called.endswith("leaves") else one.prep
            yield Work(task, "ready", f"{called} {prep}", f"{called}: {prep}")


def _alone_at(prep: str) -> dict[str, int]:
    """What a thing holds while it is made ready by itself."""
    return {RING: 1} if "simmered" in prep else {MICROWAVE: 1} if "microwave's" in prep else {}


def prep_minutes(filling: Filling) -> int:
    """Whole minutes until one food is ready; nothing for what is poured or spooned."""
    prep = filling.prep
    if not prep or (filling.how == "staple" and prep != _CRUSHED):
        return 0
    rate = next((rate for word, rate in _PREP_PER_100_G if word in prep), 0.4)
    alone = _ALONE.search(prep)
    if alone:
        return int(alone[1]) + 1
    first = _THAWING if "thawed" in prep and "squeezed" in prep else _toasting(filling) if TOASTED in prep else 0
    return min(_LONGEST_PREP, first + max(1, math.ceil(rate * filling.grams / 100)))


def _toasting(filling: Filling) -> int:
    return _TOASTING_RAW_PEANUTS if filling.food.id == "peanuts" else _TOASTING


def made_ready_before(things: Sequence[Filling]) -> tuple[str, ...]:
    """The tasks that make things ready for a step: weighing, and the work at the board."""
    weighed = ("weigh",) if any(one.weighed for one in things) else ()
    return (*weighed, *(_prep(one) for one in things if prep_minutes(one)))


def _on_the_scale(one: Filling) -> str:
    """What is weighed of a food, and where the rest comes from: of a pack that goes in whole nothing is weighed."""
    if one.scale_g == one.grams:
        return f"{one.grams} g {one.food.name}"
    return f"{one.scale_g} g of the {one.short} (with the rest, unweighed, that is {one.grams} g {one.food.name})"


def _comes_in(dish: Dish, one: Filling) -> int:
    return next(number for number, step in enumerate(dish.pattern.steps) if one.slot in step.slots)


def _prep(filling: Filling) -> str:
    """The task at the board: what comes in twice, in the pan and over it, is chopped once."""
    return f"prep {filling.food.id} {filling.prep}"
