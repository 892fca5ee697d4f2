"""What is at home: lots with their labels, and beside each the day it really goes off."""

from datetime import timedelta

from calmlarder.larder.lot import Lot, LotDate, why_unfit
from calmlarder.larder.urgency import Kept, urgency_of
from calmlarder.matching.dates.date_words import Dated
from calmlarder.plan.shelf import shelves_of
from calmlarder.tables.book import Tables
from households.world import Bought, date_of, place_of


class Held:
    """A lot at home; `end` is the last day of the simulation on which it is good."""

    def __init__(self, lot: Lot, thing: Bought) -> None:
        self.lot, self.thing = lot, thing
        self.end = thing.day + thing.good_days


class Stock:
    """Grams come in, are taken for a dish, or are thrown away when they have gone off; nothing else happens to them."""

    def __init__(self, tables: Tables) -> None:
        self.tables = tables
        self.held: list[Held] = []
        self.came_in = 0.0
        self._number = 0

    def buy(self, thing: Bought) -> None:
        """Put it where it belongs; each line is unlike any other, so that a dish names its lot."""
        food = self.tables.food_by_id[thing.food]
        on = date_of(thing.day)
        dates = [LotDate(kind="bought", on=on)]
        if thing.use_by_days is not None:
            dates = [LotDate(kind="use-by", on=on + timedelta(days=thing.use_by_days))]
        self._number += 1
        grams = float(thing.grams)
        lot = Lot(
            id=str(self._number), line=f"{food.name} no {self._number}", food=food.id, grams_low=grams, grams=grams,
            grams_high=grams,
            place=place_of(food), opened=False, dates=tuple(dates), days_left=None, days_from="",
            safety_days_left=None, safety_from="", condition=None, to_bin=False, owner=None, owner_agrees=False,
        )  # type: ignore[arg-type]  # fmt: skip
        self.held.append(Held(lot, thing))
        self.came_in += grams

    def lots(self, day: int) -> list[Lot]:
        """All lots as they stand on a day, by their labels alone."""
        for one in self.held:
            one.lot = self._dated(one.lot, day)
        return [one.lot for one in self.held]

    def _dated(self, lot: Lot, day: int) -> Lot:
        food = self.tables.food_by_id[lot.food]
        dates = tuple(Dated(one.kind, one.on) for one in lot.dates)
        urgency = urgency_of(dates, None, Kept(food, lot.place, date_of(day), self.tables))
        return lot.model_copy(update=urgency._asdict())

    def throw(self, day: int) -> list[tuple[str, float]]:
        """What has gone off, or may no longer be eaten by its label: food and grams."""
        self.lots(day)
        bad = [one for one in self.held if one.end < day or why_unfit(one.lot) is not None]
        self.held = [one for one in self.held if one not in bad]
        return [(one.lot.food, one.lot.grams) for one in bad]

    def has(self, line: str, grams: float) -> bool:
        """Whether a lot is still there in that amount."""
        return any(one.lot.line == line and one.lot.grams >= grams for one in self.held)

    def take(self, line: str, grams: float, day: int) -> None:
        """Take from a lot and open it. Raises ValueError where there is less."""
        one = next((one for one in self.held if one.lot.line == line), None)
        if one is None or one.lot.grams < grams - 1e-9:
            raise ValueError(f"{grams} g of {line} is not there")
        left = one.lot.grams - grams
        opened_days = shelves_of([one.lot], date_of(day), False, self.tables)[0].opened_days
        update: dict[str, object] = {"grams": left, "grams_low": left, "grams_high": left}
        if opened_days is not None:
            update |= {"opened": True, "place": "fridge"}
            update["dates"] = (*one.lot.dates, LotDate(kind="opened", on=date_of(day)))
            one.end = min(one.end, day + max(1, round(opened_days * one.thing.opened_share)))
        one.lot = one.lot.model_copy(update=update)
        if left < 1e-9:
            self.held.remove(one)

    def grams(self) -> float:
        """All grams at home."""
        return sum(one.lot.grams for one in self.held)
