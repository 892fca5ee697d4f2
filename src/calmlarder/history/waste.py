"""What was thrown, by food and by week, and what proposed dinners rescued. Grams are of edible food."""

from collections.abc import Callable, Iterable, Sequence
from datetime import date, timedelta

from pydantic import BaseModel, ConfigDict

from calmlarder.history.ended import Ended


class _Told(BaseModel):
    model_config = ConfigDict(frozen=True)


class Week(_Told):
    """Seven days from a Monday: what was eaten, given and thrown, and rescued (which is eaten, too)."""

    monday: date
    eaten_g: float
    given_g: float
    thrown_g: float
    rescued_g: float


class FoodThrown(_Told):
    """What was thrown of one food, how often, and how often for each reason that was told."""

    food: str
    title: str
    grams: float
    portions: float
    times: int
    whys: tuple[tuple[str, int], ...]


class Waste(_Told):
    """Weeks in order, the foods thrown most first, and the sums over all of them."""

    weeks: tuple[Week, ...]
    foods: tuple[FoodThrown, ...]
    thrown_g: float
    thrown_portions: float
    eaten_g: float
    given_g: float
    rescued_g: float
    rescued_portions: float


def waste(entries: Sequence[Ended], today: date, weeks: int) -> Waste:
    """The last `weeks` weeks, of which the one of today is the last and may not be over."""
    last = today - timedelta(days=today.weekday())
    mondays = [last - timedelta(weeks=back) for back in reversed(range(weeks))]
    within = [entry for entry in entries if mondays[0] <= entry.on <= today]
    thrown = [entry for entry in within if entry.how == "thrown"]
    foods = [_of_food([entry for entry in thrown if entry.food == food]) for food in {entry.food for entry in thrown}]
    rescued = [entry for entry in within if entry.rescued]
    return Waste(
        weeks=tuple(_week(within, monday) for monday in mondays),
        foods=tuple(sorted(foods, key=lambda one: (-one.grams, one.title))),
        thrown_g=_grams(thrown),
        thrown_portions=_portions(thrown),
        eaten_g=_grams(entry for entry in within if entry.how == "eaten"),
        given_g=_grams(entry for entry in within if entry.how == "given"),
        rescued_g=_grams(rescued),
        rescued_portions=_portions(rescued),
    )


def _week(within: Iterable[Ended], monday: date) -> Week:
    mine = [entry for entry in within if monday <= entry.on < monday + timedelta(weeks=1)]

    def grams(holds: Callable[[Ended], bool]) -> float:
        return _grams(filter(holds, mine))

    return Week(
        monday=monday,
        eaten_g=grams(lambda one: one.how == "eaten"),
        given_g=grams(lambda one: one.how == "given"),
        thrown_g=grams(lambda one: one.how == "thrown"),
        rescued_g=grams(lambda one: one.rescued),
    )


def _of_food(thrown: Sequence[Ended]) -> FoodThrown:
    told = [entry.why for entry in thrown if entry.why is not None]
    whys = sorted(((why, told.count(why)) for why in set(told)), key=lambda pair: (-pair[1], pair[0]))
    return FoodThrown(
        food=thrown[0].food,
        title=thrown[-1].title,
        grams=_grams(thrown),
        portions=_portions(thrown),
        times=len(thrown),
        whys=tuple(whys),
    )


def _grams(entries: Iterable[Ended]) -> float:
    return round(sum(entry.grams for entry in entries), 1)


def _portions(entries: Iterable[Ended]) -> float:
    return round(sum(entry.grams / entry.portion_g for entry in entries), 2)
