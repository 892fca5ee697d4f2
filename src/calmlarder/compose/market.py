"""A short list of foods to buy for a dish: few for each slot, so that the model stays small."""

from collections import Counter
from collections.abc import Collection, Iterator
from decimal import Decimal
from typing import NamedTuple

from calmlarder.compose.eats import base_thing, protein_thing
from calmlarder.compose.offer import Offered, offer
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.limit import limit_of
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern, Slot, at_home
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import COOKED_STATES, Kind, Role

_KINDS_A_SLOT = 3  # one food of each kind; ours, to keep the model small
_MAIN_SHARE = 0.75  # of the floor a main protein brings, the rest of the plate the rest: common practice, no source
_ABOUT_AS_MUCH_G = 4  # protein foods that bring the same within so many g are told apart by how common they are: ours
_LEAST_PORTIONS = 0.4  # a food whose caps allow less of a portion fills no slot: common practice, no source

_FOR_TOFU = frozenset({"tempeh", "seitan", "soya"})  # which shops have less often: ours

_PLANT_MAINS = _FOR_TOFU | {"tofu"}
_EVERYDAY = frozenset({"egg", "chicken-breast"})  # which every shop has: ours
_EVERYDAY_BASES = frozenset({
    "bread-gluten-free", "pasta-gluten-free-dry", "polenta-dry", "potato", "quinoa-dry", "rice-brown-dry",
    "rice-white-dry", "tortilla-corn",
})  # fmt: skip  # ours
_EVERYDAY_VEGETABLES = frozenset({
    "aubergine", "broccoli", "cabbage-chinese", "cabbage-white", "carrot", "courgette", "cucumber", "green-beans",
    "kale", "lettuce", "parsnip", "pepper-green", "pepper-red", "spinach", "tomato",
})  # fmt: skip  # no shop has green pumpkin in March: ours
_BY_ITSELF = frozenset({"tofu-silken"})  # which takes the place of no tofu that is fried
_EATS_FISH = frozenset({"pescatarian", "omnivore"})

_Rank = tuple[float, int, str]


class Ware(NamedTuple):
    """A food to buy: its number among all that is sold, and how many names it goes by.

    A food that people call by many names is a common one: ours, no source.
    """

    number: int
    food: Food
    names: int


class Market:
    """Every plant food that may be eaten and is sold as it is, numbered behind the larder's own lots.

    Eggs are on sale for who eats them, and chicken for who eats meat, in the place of tofu and its like; else only
    plants are suggested, whatever the diet allows: who this is for eats mostly plants (ours). What is asked about a
    food is worked out once, and only for foods that some slot looks at.
    """

    def __init__(
        self,
        wanted: DinnerRequest,
        tables: Tables,
        first_place: int,
        but: Collection[str] = (),
        there: Collection[Food] = (),
    ) -> None:
        """`but` holds the ids of lots that stand in the larder already, `there` the foods that do.

        More of a food that is there may be bought, but not the same thing under another name: no other rice, no
        other tofu.
        """
        self._foods_there = {food.id for food in there}
        self._things_there = {
            thing(food) for food in there if food.id not in _BY_ITSELF for thing in (protein_thing, base_thing)
        }
        self._wanted, self._tables, self._first_place, self._but = wanted, tables, first_place, but
        self._limits = wanted.limits
        names = Counter(row.food for row in tables.names)
        sold = (food for food in tables.foods if _is_sold(food))
        wares = tuple(Ware(number, food, names[food.id]) for number, food in enumerate(sold))
        self._offered: dict[int, Offered | None] = {}
        tofu = any(ware.food.kind == "tofu" and self.offered(ware) is not None for ware in wares)
        wares = tuple(ware for ware in wares if not _is_seldom_bought(ware.food, tofu))
        if wanted.diet in _EATS_FISH and any(ware.food.id in _EVERYDAY and self.offered(ware) for ware in wares):
            wares = tuple(ware for ware in wares if ware.food.kind not in _PLANT_MAINS)
        self.wares = wares
        self._in_role: dict[Role, list[Ware]] = {}
        for ware in self.wares:
            for role in ware.food.roles:
                self._in_role.setdefault(role, []).append(ware)
        self._fits: dict[int, float] = {}
        self._by_hope: dict[tuple[Role, float], list[tuple[_Rank, Ware]]] = {}
        self._best: dict[tuple[str, str], tuple[Offered, ...]] = {}

    def offered(self, ware: Ware) -> Offered | None:
        """The food as a lot to cook with, or None where it may not be eaten or is in the larder."""
        if ware.number not in self._offered:
            lot = lot_of(ware.food, self._wanted.people)
            sold = lot.id not in self._but and not self._is_there_otherwise(ware.food)
            things, _ = offer([lot], self._wanted, self._tables) if sold else ((), ())
            place = self._first_place + ware.number
            self._offered[ware.number] = things[0]._replace(place=place, gives="buy") if things else None
        return self._offered[ware.number]

    def _is_there_otherwise(self, food: Food) -> bool:
        """Whether the larder has the same thing to eat under another name."""
        if food.id in self._foods_there:
            return False
        own = {protein_thing(food)} if "protein" in food.roles else set()
        own |= {base_thing(food)} if "base" in food.roles else set()
        return not own.isdisjoint(self._things_there)

    def shortlist(self, problem: PatternProblem) -> tuple[Offered, ...]:
        """For protein slots, and slots that nothing fills and something must, the best food of the best few kinds."""
        found: dict[int, Offered] = {}
        for name in _wanting(problem):
            key = (problem.pattern.id, name)
            if key not in self._best:
                self._best[key] = self._for_slot(problem.pattern, problem.pattern.slots[name])
            found |= {thing.place: thing for thing in self._best[key]}
        return tuple(found[place] for place in sorted(found))

    def _for_slot(self, pattern: Pattern, slot: Slot) -> tuple[Offered, ...]:
        """The best by what their caps let them do; whatever could not be among them even without caps is passed by."""
        best: dict[Kind, tuple[_Rank, Offered]] = {}
        leading: list[_Rank] = []
        for hoped, ware in self._ranked(slot):
            if len(leading) == _KINDS_A_SLOT and leading[-1] <= hoped:
                break
            food = ware.food
            if food.kind in best and best[food.kind][0] <= hoped:
                continue
            if not slot.takes(food) or not at_home(pattern, food) or (thing := self.offered(ware)) is None:
                continue
            portions = min(self._fits_grams(ware, thing) / float(food.portion_g), slot.portions[1])
            if portions < _LEAST_PORTIONS * min(1.0, slot.portions[1]):
                continue
            rank = self._rank(slot, ware, portions)
            if food.kind not in best or rank < best[food.kind][0]:
                best[food.kind] = (rank, thing)
                leading = sorted(rank for rank, _ in best.values())[:_KINDS_A_SLOT]
        return tuple(thing for rank, thing in best.values() if rank in leading)

    def _ranked(self, slot: Slot) -> list[tuple[_Rank, Ware]]:
        """What has the role of a slot, best first, as if no cap kept it from the usual amount."""
        key = (slot.role, slot.portions[1])
        if key not in self._by_hope:
            wares = self._in_role.get(slot.role, ())
            self._by_hope[key] = sorted((self._rank(slot, ware, slot.portions[1]), ware) for ware in wares)
        return self._by_hope[key]

    def _rank(self, slot: Slot, ware: Ware, portions: float) -> _Rank:
        """So many portions of a food in a slot, the best first: its protein in a protein slot, else its amount."""
        worth, food = portions, ware.food
        if slot.role == "protein":
            protein = float((food.protein_g or Decimal(0)) * food.portion_g) / 100 * portions
            worth = min(protein, _MAIN_SHARE * self._wanted.protein_g) // _ABOUT_AS_MUCH_G
        return -round(worth, 1), -ware.names, food.id

    def _fits_grams(self, ware: Ware, thing: Offered) -> float:
        """Grams for one person that stay under the food's limits, judged by eye."""
        if ware.number not in self._fits:
            wanted, most = self._wanted, float(thing.lot.grams)
            alone = limit_of(ware.food, self._limits, self._tables, wanted.tolerance).grams_eye
            most = most if alone is None else min(most, float(alone))
            self._fits[ware.number] = most
        return self._fits[ware.number]


def _is_sold(food: Food) -> bool:
    return food.state not in COOKED_STATES and (food.diet == "vegan" or food.id in _EVERYDAY)


def _is_seldom_bought(food: Food, tofu: bool) -> bool:
    """What no cook would name to somebody in elimination who lacks one thing for tonight.

    Bases and vegetables that not every shop has; wheat, rye and barley as the main thing; vegan cheese, which brings
    little; and, where tofu may be bought, tempeh and what imitates meat.
    """
    main = not {"base", "protein"}.isdisjoint(food.roles)
    if not main and "vegetable" in food.roles and food.id not in _EVERYDAY_VEGETABLES:
        return True
    if "base" in food.roles and food.id not in _EVERYDAY_BASES:
        return True
    return (main and food.gluten == "yes") or food.kind == "cheese" or (tofu and food.kind in _FOR_TOFU)


def lot_of(food: Food, people: int) -> Lot:
    """More of a food than a slot takes: a slot holds eight portions at most."""
    grams = float(food.portion_g) * 8 * people
    return Lot(
        id=f"buy {food.id}", line=f"to buy: {food.name}", food=food.id, grams_low=grams, grams=grams,
        grams_high=grams, place="cupboard", opened=False, dates=(), days_left=None, days_from="",
        safety_days_left=None, safety_from="", condition=None, to_bin=False, owner=None, owner_agrees=False,
    )  # fmt: skip


def _wanting(problem: PatternProblem) -> Iterator[str]:
    lots = {name: {option.key for _, option in problem.in_slot(name)} for name in problem.pattern.slots}
    unfilled = {name for names in problem.pattern.one_of if not any(lots[name] for name in names) for name in names}
    for name, slot in problem.pattern.slots.items():
        if slot.role == "protein" or name in unfilled or len(lots[name]) < slot.items[0]:
            yield name
