"""What a dinner that is nearest gives of the limits, read off its amounts, and said in words."""

import math
from typing import Literal

from pydantic import BaseModel, ConfigDict

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.problem import PORTION, SERVING_MINUTES
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules.minutes import least_minutes
from calmlarder.compose.solve import Plan, Use
from calmlarder.compose.weights import GIVES_AT_ALL, MINUTE_LATE, POINT


class Give(BaseModel):
    """One limit that gives.

    `by` counts g of protein a person, minutes, g of the dish under the pattern's least, people not served, or g of
    `food` bought or asked for. `sentence` goes on from `if you`.
    """

    model_config = ConfigDict(frozen=True)

    what: Literal["protein", "minutes", "amount", "people", "buy", "shared"]
    by: float
    sentence: str
    food: str | None = None
    lot: str | None = None
    line: str | None = None


class Nearest(BaseModel):
    """What has to give, and the dinner it allows.

    `proven` says that no dinner is nearer, by the prices in weights.py and the wishes together, over all patterns
    and all that may give; food to buy is one of the short list of each pattern.
    """

    model_config = ConfigDict(frozen=True)

    gives: tuple[Give, ...]
    proven: bool
    dinner: Dinner

    @property
    def is_there(self) -> bool:
        """Whether all of it is in the larder, so that nobody has to buy or ask before they eat."""
        return not any(give.what in {"buy", "shared"} for give in self.gives)


def gives_of(plan: Plan, dinner: Dinner, wanted: DinnerRequest) -> tuple[Give, ...]:
    """All that gives, the greatest change first."""
    return (*_things(plan, dinner), *_people(plan, wanted), *_minutes(dinner, wanted), *_protein(plan), *_amounts(plan))


def price_of(plan: Plan, dinner: Dinner, wanted: DinnerRequest) -> int:
    """What the timeline adds to the model's price, in ten-thousandths of a point, where it takes longer."""
    if wanted.minutes is None:
        return 0
    least = least_minutes(plan.problem, [use.option for use in plan.uses]) + SERVING_MINUTES
    late, known = max(0, dinner.minutes - wanted.minutes), max(0, least - wanted.minutes)
    at_all = GIVES_AT_ALL if late and not known else 0
    return (at_all + MINUTE_LATE * max(0, late - known)) * POINT


def _things(plan: Plan, dinner: Dinner) -> list[Give]:
    gives = []
    said = {use.lot: use.household for use in dinner.uses}
    for use in plan.uses:
        thing = use.option.offered
        household = said[thing.lot.id]
        amount = f"{use.grams} g of {thing.food.name}" + (f" ({household})" if household else "")
        if thing.gives == "buy":
            there = int(
                sum(
                    one.offered.lot.grams
                    for one in {one.key: one for one in plan.problem.options if one.offered.food == thing.food}.values()
                    if one.offered.gives is None
                )
            )
            gives.append(_of_lot("buy", use, f"buy {amount}{_beside(there, use.grams)}"))
        elif thing.gives == "ask":
            gives.append(_of_lot("shared", use, f"ask {thing.lot.owner} for {amount}"))
    return gives


def _beside(there: int, wanted: int) -> str:
    """How much more it is than what stands in the larder: nobody buys the eggs again that are there."""
    if not 0 < there < wanted:
        return ""
    return f", {wanted - there} g more than the {there} g there"


def _of_lot(what: Literal["buy", "shared"], use: Use, sentence: str) -> Give:
    lot = use.option.offered.lot
    return Give(what=what, by=use.grams, sentence=sentence, food=lot.food, lot=lot.id, line=lot.line)


def _people(plan: Plan, wanted: DinnerRequest) -> list[Give]:
    served = plan.problem.wanted.people
    if served == wanted.people:
        return []
    return [Give(what="people", by=wanted.people - served, sentence=f"serve {served} of {wanted.people} with it")]


def _minutes(dinner: Dinner, wanted: DinnerRequest) -> list[Give]:
    if wanted.minutes is None or dinner.minutes <= wanted.minutes:
        return []
    late = dinner.minutes - wanted.minutes
    return [Give(what="minutes", by=late, sentence=f"take {dinner.minutes} minutes, not {wanted.minutes}")]


def _protein(plan: Plan) -> list[Give]:
    """By tenths of a gram, never less than it is."""
    wanted = plan.problem.wanted
    there = sum(use.option.protein_mg * (use.grams // use.option.unit) for use in plan.uses)
    short = round(wanted.protein_floor_g * 1000) * wanted.people - there
    if short <= 0:
        return []
    by = math.ceil(short / wanted.people / 100) / 10
    sentence = f"accept {by:g} g less protein than {wanted.protein_floor_g:g} g each"
    return [Give(what="protein", by=by, sentence=sentence)]


def _amounts(plan: Plan) -> list[Give]:
    gives = []
    for name, slot in plan.problem.pattern.slots.items():
        uses = [use for use in plan.uses if use.option.slot == name]
        portions = sum(use.option.portion_units * (use.grams // use.option.unit) for use in uses)
        short = plan.problem.least_in(name) - portions
        if not slot.items[0] or short <= 0 or not uses:
            continue
        food = uses[0].option.offered.food
        grams = max(1, math.ceil(short * float(food.portion_g) / PORTION))
        names = " and ".join(use.option.offered.food.name for use in uses)
        sentence = f"make do with {grams} g less {names} than the dish wants at least"
        gives.append(Give(what="amount", by=grams, sentence=sentence))
    return gives
