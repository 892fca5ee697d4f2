"""One dish pattern and the lots that could fill it, in whole numbers, ready for the solver."""

import math
import zlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, NamedTuple

from calmlarder.compose import weights
from calmlarder.compose.most_of import MOST_OF_KIND, most_of_fierce, most_portions
from calmlarder.compose.offer import Offered
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.unfit_for_slot import NIBBLED, is_unfit
from calmlarder.intake.plate import Item, limits_on, rows_under
from calmlarder.intake.profile import Profile
from calmlarder.kitchen.minutes import minutes_of
from calmlarder.larder.freezing import thaw_minutes, thaws
from calmlarder.larder.lot import Lot
from calmlarder.matching.owners.owner_signs import FOR_TONIGHT
from calmlarder.patterns.pattern import Pattern, Slot, at_home
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES, Role

MAIN_ROLES = frozenset({"base", "protein", "vegetable"})
# The least of a thing worth cooking, as a share of a portion for each person: common practice, no source.
_LEAST_SHARE = {"base": 0.3, "protein": 0.35, "vegetable": 0.45, "liquid": 0.15, "thickener": 0.15}
_LEAST_SHARE_SMALL = 0.4
# Of what seasons by its amount, less than a teaspoon and a half of soy sauce or a gherkin is none. The same.
_LEAST_SHARE_OF = {"soy-sauce": 0.8, "tamari": 0.8, "gherkins": 0.8}
_EACH = 2  # with fewer a wrap or an egg is shared
# Of fish, meat or tofu in its last days a pack goes whole where nobody gets more than this. Common practice, no source.
_MOST_OF_A_LAST_PACK, _LAST_DAYS = 2.1, 2
# Where there is another dinner before it goes off, and of vegetables on their last day: the same.
A_PIECE_G = 60  # of what is smaller nobody counts. Ours
_MOST_BEFORE_THE_LAST_DAY, _MOST_OF_LAST_VEGETABLES = 1.7, 2.2
_RAW_FLESH = frozenset({"fish", "shellfish", "poultry", "meat"})
PACK_KINDS = frozenset({"fish", "shellfish", "poultry", "meat", "tofu", "tempeh"})
_PLAIN_SOY = frozenset({"soy-sauce", "tamari"})
# What fries beside an egg, gives its salt to fish, and is no main thing that presses.
CURED = frozenset({"bacon", "chorizo", "ham", "prosciutto", "salami"})
_MAIZE_WRAPS = "tortilla-corn"
_BASES = frozenset({"potato", "rice", "noodle", "pasta", "grain", "wrap"})
_LEAST_AT_HAND = 0.65  # of a portion each, two small tortillas: the same
# Of rice or potatoes less than a dish asks for makes a dinner still, where there is no more. Common practice.
_LEAST_BASE = 0.5
# A base of which the limits let through less of a portion (wheat pasta, sweet potatoes) fills no plate. Ours.
_LEAST_BASE_FITS = 0.55
_ESTIMATE_PRESSES_DAYS = 3  # of what has no date: ours
_TONIGHT_PRESSES_DAYS = 1  # of what somebody means to cook tonight: the same
PERISHABLE_KEEPS_DAYS = 8  # what keeps no longer in the fridge presses even without a day: ours
SERVING_MINUTES = 2  # at the least, after the slowest food is done
PORTION = 10_000  # one portion in the model's units


class Option(NamedTuple):
    """One lot in one slot. Amounts are in units of `unit` grams for the whole dish."""

    offered: Offered
    slot: str
    unit: int
    least: int
    most: int
    whole: bool  # `most` uses the lot up
    portion_units: int  # ten-thousandths of a portion in one unit
    protein_mg: int  # in one unit, rounded down
    energy: int  # hundredths of a kcal in one unit, rounded down; unknown counts as none
    fibre_mg: int  # in one unit, rounded down
    lysine: int  # hundredths of a mg in one unit, rounded down
    minutes: int
    before: int  # minutes in which it thaws, before it can be heated
    points: int  # for one portion, by urgency
    finish: int  # for using the lot up
    weighable: bool
    boxed: bool  # a share of a dish, whose amount is what its box holds
    sealed: bool
    thaws: bool
    tie: int  # 0 to 996, from the cook's own line

    @property
    def key(self) -> tuple[int, int]:
        """The lot this option draws on."""
        return (self.offered.place, self.offered.rank)


@dataclass(frozen=True)
class PatternProblem:
    """A pattern, its options, and the limits of one request."""

    pattern: Pattern
    wanted: DinnerRequest
    limits: Profile  # those of the request's sitting
    options: tuple[Option, ...]
    tie: int
    given: int = 0  # ten-thousandths of a point paid before anything is chosen, for people not served
    has_base: bool = False  # whether the larder has a base to cook for everybody, whatever this dish takes
    has_wraps: bool = False  # the same of tortillas
    has_maize_wraps: bool = False  # the same of tortillas of maize
    # What was worked out of it before: every dinner of an evening asks the same.
    known: dict[str, Any] = field(default_factory=dict, init=False, repr=False, compare=False)

    def with_options(self, options: Iterable[Option]) -> "PatternProblem":
        """The same with other options."""
        return replace(self, options=tuple(options))

    @cached_property
    def _by_slot(self) -> Mapping[str, tuple[tuple[int, Option], ...]]:
        found: dict[str, list[tuple[int, Option]]] = {}
        for number, option in enumerate(self.options):
            found.setdefault(option.slot, []).append((number, option))
        return {slot: tuple(there) for slot, there in found.items()}

    def in_slot(self, slot: str) -> tuple[tuple[int, Option], ...]:
        """Options of a slot with their numbers."""
        return self._by_slot.get(slot, ())

    def most_in(self, slot: str) -> int:
        """The most of a slot, in ten-thousandths of a portion for the whole dish: the pattern's, or a last pack."""
        most = self.most_by_pattern(slot)
        return max([most, *(most + more for more in self.more_with(slot).values())])

    def most_by_pattern(self, slot: str) -> int:
        """The most of a slot that its pattern allows, in ten-thousandths of a portion for the whole dish."""
        return round(self.pattern.slots[slot].portions[2] * PORTION) * self.wanted.people

    def least_in(self, slot: str) -> int:
        """The least of a slot that must be filled, in ten-thousandths of a portion for the whole dish."""
        least = self.pattern.slots[slot].portions[0]
        if self.pattern.slots[slot].role == "base" and self.wanted.sitting == "dinner":
            least = min(least, _LEAST_BASE)
        return round(least * PORTION) * self.wanted.people

    def more_with(self, slot: str) -> dict[int, int]:
        """By option: what a slot may hold beyond that when this one is in it, a pack in its last days."""
        if self.pattern.slots[slot].role != "protein":
            return {}
        most = self.most_by_pattern(slot)
        more = {number: option.most * option.portion_units - most for number, option in self.in_slot(slot)}
        return {number: beyond for number, beyond in more.items() if beyond > 0}

    @property
    def fillable(self) -> bool:
        """Whether every slot that must be filled has enough lots for it."""
        return all(any(map(self.in_slot, names)) for names in self.pattern.one_of) and all(
            len({option.key for _, option in self.in_slot(name)}) >= slot.items[0]
            for name, slot in self.pattern.slots.items()
        )


def pattern_problem(
    pattern: Pattern, offered: Sequence[Offered], wanted: DinnerRequest, keeps: Mapping[str, int | None]
) -> PatternProblem:
    """The lots of a larder that fit a pattern. `keeps` gives the days each food keeps in the fridge."""
    return problems_for((pattern,), offered, wanted, keeps)[0]


def problems_for(
    patterns: Sequence[Pattern], offered: Sequence[Offered], wanted: DinnerRequest, keeps: Mapping[str, int | None]
) -> tuple[PatternProblem, ...]:
    """The same for several patterns, in order; what is the same for all is worked out once."""
    offered = _one_bottle(offered)
    there = _by_role(offered)
    bases = [thing for thing in offered if _is_base(thing, wanted)]
    limits = wanted.limits
    return tuple(
        PatternProblem(
            pattern=pattern,
            wanted=wanted,
            limits=limits,
            options=tuple(option for name in pattern.slots for option in _options(pattern, name, there, wanted, keeps)),
            tie=zlib.crc32(pattern.id.encode()) % 997,
            has_base=bool(bases),
            has_wraps=any(thing.food.kind == "wrap" for thing in bases),
            has_maize_wraps=any(thing.food.id == _MAIZE_WRAPS for thing in bases),
        )
        for pattern in patterns
    )


def _one_bottle(offered: Sequence[Offered]) -> tuple[Offered, ...]:
    """Of two bottles of soy sauce (light and dark, or tamari) one, a plain one first: of both a dish is too salty.

    Of two jars of a spice the fuller one: of both there would be twice as much of it.
    """
    first: dict[str, Offered] = {}
    for thing in sorted(offered, key=lambda one: (one.food.id not in _PLAIN_SOY, -one.lot.grams)):
        first.setdefault(_bottle(thing.food), thing)
    return tuple(thing for thing in offered if not _bottle(thing.food) or first[_bottle(thing.food)] is thing)


def _bottle(food: Food) -> str:
    """What only one of is reached for; empty where it may be several."""
    if food.kind in MOST_OF_KIND:
        return food.kind
    return food.id if food.kind == "spice" else ""


def _is_base(thing: Offered, wanted: DinnerRequest) -> bool:
    """Potatoes, rice, noodles, pasta, a grain or tortillas: enough for everybody, and a plateful fits the limits."""
    food = thing.food
    if food.kind not in _BASES or "base" not in food.roles or food.id in NIBBLED:
        return False
    if thing.lot.grams < _LEAST_AT_HAND * float(food.portion_g) * wanted.people:
        return False
    share = _LEAST_AT_HAND if food.kind == "wrap" else _LEAST_BASE_FITS
    plateful = Item(food.id, thing.brings, round(share * float(food.portion_g)), True, wanted.tolerance)
    return all(row.holds() for row in rows_under([*limits_on([plateful], wanted.limits)], [plateful]))


def with_more(problem: PatternProblem, offered: Sequence[Offered], keeps: Mapping[str, int | None]) -> PatternProblem:
    """The same with further lots, in each slot behind those that are there."""
    pattern, more = problem.pattern, _by_role(offered)
    return problem.with_options(
        option
        for name in pattern.slots
        for option in (
            *(there for _, there in problem.in_slot(name)),
            *_options(pattern, name, more, problem.wanted, keeps),
        )
    )


def _by_role(offered: Sequence[Offered]) -> Mapping[Role, Sequence[Offered]]:
    """What there is by what it can be in a dish, in order: a slot looks at a tenth of a larder."""
    found: dict[Role, list[Offered]] = {}
    for thing in offered:
        for role in {*thing.food.roles}:
            found.setdefault(role, []).append(thing)
    return found


def _options(
    pattern: Pattern,
    name: str,
    there: Mapping[Role, Sequence[Offered]],
    wanted: DinnerRequest,
    keeps: Mapping[str, int | None],
) -> Iterator[Option]:
    slot = pattern.slots[name]
    for thing in there.get(slot.role, ()):
        if not slot.takes(thing.food):
            continue
        fits = _in_time(slot, thing, wanted) and at_home(pattern, thing.food)
        if fits and not is_unfit(pattern, name, thing, wanted.sitting):
            option = _option(name, slot, thing, wanted, keeps.get(thing.food.id))
            if option is not None:
                yield option


def _in_time(slot: Slot, thing: Offered, wanted: DinnerRequest) -> bool:
    return wanted.minutes is None or minutes_of(slot, thing.food, thing.lot.line, 0) + SERVING_MINUTES <= wanted.minutes


def _even_unit(thing: Offered, wanted: DinnerRequest) -> int:
    """The step in which a lot is dealt out; everybody gets as many wraps, eggs and fillets, if there are enough."""
    round_g = thing.unit_grams * wanted.people
    counted = thing.food.kind == "wrap" or (thing.food.kind == "egg" and wanted.sitting == "dinner")
    counted = counted or (thing.food.kind in _RAW_FLESH and thing.unit_grams >= A_PIECE_G)
    evenly = wanted.as_many_each and counted and thing.lot.grams >= _EACH * round_g
    return round_g if evenly else thing.unit_grams


def _option(name: str, slot: Slot, thing: Offered, wanted: DinnerRequest, keeps: int | None) -> Option | None:
    food, lot, unit = thing.food, thing.lot, _even_unit(thing, wanted)
    portion = float(food.portion_g) * wanted.people
    there = int(lot.grams) // unit
    dose = next((int(one.grams) for one in wanted.doses if one.food == food.id), None)
    portions = min(most_portions(slot, food, wanted), most_of_fierce(food, lot.line))
    whole = _most_of_what_goes_off(slot, thing, wanted)
    if there * unit <= whole * portion:
        portions = max(portions, whole)
    if unit > thing.unit_grams and food.kind in _RAW_FLESH and there * unit <= _MOST_BEFORE_THE_LAST_DAY * portion:
        portions = max(portions, _MOST_BEFORE_THE_LAST_DAY)  # two thighs each, and none is left over
    most = min(there, max(int(portions * portion / unit), int(_by_the_gram(food))))
    share = _least_share(slot, food)
    least = min(max(1, math.ceil(share * portion / unit)), there)
    if dose is not None:  # of a challenge: exactly its grams
        unit, least, most, there = 1, dose, dose if dose <= slot.portions[2] * portion else 0, int(lot.grams)
    elif least * unit < 0.4 * share * portion:
        return None
    if most < 1 or least > most:
        return None
    # A dish in its box is a main thing, too: what it was cooked from goes with it.
    main = food.kind == "boxed" or (slot.role == "protein" and food.id not in CURED)
    pressing = _pressing(lot, food)
    perishable = lot.place == "fridge" and keeps is not None and keeps <= PERISHABLE_KEEPS_DAYS
    points = weights.rescue_points(pressing, perishable and not food.is_staple)
    points = _main_points(thing, pressing, points) if main else points
    off_tomorrow = _is_last_pack(slot, thing, wanted) and (lot.days_left or 0) <= 1
    return Option(
        offered=thing,
        slot=name,
        unit=unit,
        least=least,
        most=most,
        whole=most == there and int(lot.grams) - there * unit < thing.unit_grams,
        portion_units=_portion_units(food, unit, wanted.people),
        protein_mg=int((food.protein_g or 0) * 10 * unit),
        energy=int((food.energy_kcal or 0) * unit),
        fibre_mg=int((food.fibre_g or 0) * 10 * unit),
        lysine=int((food.lysine_mg or 0) * unit),
        minutes=minutes_of(slot, food, lot.line, least * unit),
        points=points,
        finish=round(points * (weights.LAST_PACK_FINISH if off_tomorrow else weights.FINISH_SHARE)),
        weighable=dose is not None or (not food.is_staple and food.kind != "boxed" and thing.brings.anything),
        boxed=food.kind == "boxed",
        sealed=food.state in CANNED_STATES and not lot.opened,
        before=thaw_minutes(lot, food) if thaws(lot, food) and not wanted.thaw_ahead else 0,
        thaws=thaws(lot, food),
        tie=zlib.crc32(f"{lot.line}\0{thing.rank}\0{name}".encode()) % 997,
    )


def _least_share(slot: Slot, food: Food) -> float:
    """In portions for one person, the least of a food that is worth its place; no more than is usual in it."""
    share = _LEAST_SHARE.get(slot.role, _LEAST_SHARE_SMALL)
    return max(share, min(_LEAST_SHARE_OF.get(food.id, share), slot.portions[1]))


def _main_points(thing: Offered, pressing: int | None, points: int) -> int:
    """Raw fish and meat on their last day have no second dinner, and with a day or two little time for one.

    They go before what has more days, or only an estimate of them; of shellfish nobody waits for a label.
    """
    food, lot = thing.food, thing.lot
    sure = not lot.days_estimated or food.kind == "shellfish"
    raw = food.kind in _RAW_FLESH and food.state == "raw" and lot.place == "fridge" and sure
    points = weights.main_rescue_points(pressing, points)
    if not raw or pressing is None or not 0 <= pressing <= _LAST_DAYS:
        return points
    return round(points * (weights.LAST_RAW if pressing == 0 else weights.RAW_SOON))


def _is_last_pack(slot: Slot, thing: Offered, wanted: DinnerRequest) -> bool:
    """Something whose rest would be thrown away in a day or two; an estimate is no such day."""
    days, lot = thing.lot.days_left, thing.lot
    pressing = days is not None and 0 <= days <= _LAST_DAYS and not lot.days_estimated
    main = slot.role == "protein" and slot.portions[1] >= 1 and thing.food.kind in PACK_KINDS
    return wanted.sitting == "dinner" and pressing and main and thing.food.id not in CURED


def _most_of_what_goes_off(slot: Slot, thing: Offered, wanted: DinnerRequest) -> float:
    """Portions up to which what goes off goes in whole: no rest is left that nobody makes a meal of."""
    days = thing.lot.days_left
    if _is_last_pack(slot, thing, wanted):
        waits = days != 0 and thing.unit_grams >= A_PIECE_G  # the second fillet; half a pack of mince does not
        return _MOST_BEFORE_THE_LAST_DAY if waits else _MOST_OF_A_LAST_PACK
    last = days is not None and 0 <= days <= 1 and thing.lot.place == "fridge" and wanted.sitting == "dinner"
    return _MOST_OF_LAST_VEGETABLES if last and slot.role == "vegetable" else 0.0


def _by_the_gram(food: Food) -> bool:
    """Whether a gram is more than one person gets of a spice."""
    return food.kind == "spice" and food.portion_g < 1


def _portion_units(food: Food, unit: int, people: int) -> int:
    """A gram is the least that is reckoned with: of what people get less of it is enough for everybody."""
    units = round(PORTION * unit / float(food.portion_g))
    return min(units, PORTION * people) if _by_the_gram(food) else units


def _pressing(lot: Lot, food: Food) -> int | None:
    """Days that press: of an estimate only the last few. A block that is begun goes before one that is whole.

    What its line means for tonight presses as what has a day left.
    """
    days = lot.days_left
    if (days is None or days > _TONIGHT_PRESSES_DAYS) and FOR_TONIGHT.search(lot.line.lower()):
        return _TONIGHT_PRESSES_DAYS
    if days is None and lot.opened and food.kind in PACK_KINDS and lot.place == "fridge":
        return _ESTIMATE_PRESSES_DAYS
    return None if lot.days_estimated and days is not None and days > _ESTIMATE_PRESSES_DAYS else days
