"""What of a dinner comes from the freezer and is thawed before the work begins, and what a plan freezes for later."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.larder.freezing import ToFreeze
    from calmlarder.plan.planned import SittingPlanned

_THAWS = ": thaw before you start"  # as the cautions of a dinner say it


def thaw_first(dinner: "Dinner") -> str:
    """The first thing to do; nothing where nothing is thawed."""
    ways: dict[str, list[str]] = {}
    for name, there, how in (one.partition(_THAWS) for one in dinner.cautions):
        if there:
            ways.setdefault(how, []).append(name[:1].lower() + name[1:])
    told = [f"{', '.join(names)}{how}" for how, names in ways.items()]
    return f"Thaw first: {' '.join(told)}" if told else ""


def told_later(dinner: "Dinner") -> list[str]:
    """The cautions of a dinner without those that `thaw_first` has said."""
    return [caution for caution in dinner.cautions if _THAWS not in caution]


def thaw_words(one: "SittingPlanned", first: "SittingPlanned", amount: Callable[[float], str]) -> tuple[str, ...]:
    """What a planned meal takes out of the freezer, where the plan put it on the day of its `first` meal."""
    if not one.thawed:
        return ()
    foods = ", ".join(f"{amount(use.grams)} {use.name}" for use in one.thawed)
    them = "it" if len(one.thawed) == 1 else "them"
    return (
        f"Out of the freezer: {foods}, frozen on {first.at:%A}. Thaw {them} in the fridge from the evening before, "
        f"eat {them} that day, and freeze nothing of {them} again.",
    )


def freeze_words(one: "ToFreeze", sittings: "Sequence[SittingPlanned]") -> str:
    """How a thing is frozen, how long it keeps, and what of it the plan takes out again."""
    later = [
        f"{use.grams} g of it for {meal.at:%A}'s {'lunch' if meal.sitting == 'packed' else meal.sitting}"
        for meal in sittings
        for use in meal.thawed
        if use.lot == one.lot
    ]
    return "; ".join((one.how, f"good for {one.weeks} weeks", *later))
