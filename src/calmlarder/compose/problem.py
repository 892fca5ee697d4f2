"""One dish pattern and the lots that could fill it, in whole numbers, ready for the solver."""

import math
import zlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, NamedTuple

from calmlarder.compose import weights
from calmlarder.compose.at_hand import MAIZE_WRAPS, is_base, one_bottle
from calmlarder.compose.most_of import most_of_fierce, most_portions
from calmlarder.compose.offer import Offered
from calmlarder.compose.presses import (
    A_PIECE_G,
    CURED,
    MOST_BEFORE_THE_LAST_DAY,
    RAW_FLESH,
    is_last_pack,
    main_points,
    most_of_what_goes_off,
    pressing,
)
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.unfit_for_slot import is_unfit
from calmlarder.intake.profile import Profile
from calmlarder.kitchen.equipment import has_microwave
from calmlarder.kitchen.minutes import minutes_of
from calmlarder.larder.freezing import thaw_minutes, thaws
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
# Of rice or potatoes less than a dish asks for makes a dinner still, where there is no more. Common practice.
_LEAST_BASE = 0.5
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
    offered = one_bottle(offered)
    there = _by_role(offered)
    bases = [thing for thing in offered if is_base(thing, wanted)]
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
            has_maize_wraps=any(thing.food.id == MAIZE_WRAPS for thing in bases),
        )
        for pattern in patterns
    )


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
    counted = counted or (thing.food.kind in RAW_FLESH and thing.unit_grams >= A_PIECE_G)
    evenly = wanted.as_many_each and counted and thing.lot.grams >= _EACH * round_g
    return round_g if evenly else thing.unit_grams


def _option(name: str, slot: Slot, thing: Offered, wanted: DinnerRequest, keeps: int | None) -> Option | None:
    food, lot, unit = thing.food, thing.lot, _even_unit(thing, wanted)
    portion = float(food.portion_g) * wanted.people
    there = int(lot.grams) // unit
    dose = next((int(one.grams) for one in wanted.doses if one.food == food.id), None)
    portions = min(most_portions(slot, food, wanted), most_of_fierce(food, lot.line))
    whole = most_of_what_goes_off(slot, thing, wanted)
    if there * unit <= whole * portion:
        portions = max(portions, whole)
    if unit > thing.unit_grams and food.kind in RAW_FLESH and there * unit <= MOST_BEFORE_THE_LAST_DAY * portion:
        portions = max(portions, MOST_BEFORE_THE_LAST_DAY)  # two thighs each, and none is left over
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
    days = pressing(lot, food)
    perishable = lot.place == "fridge" and keeps is not None and keeps <= PERISHABLE_KEEPS_DAYS
    points = weights.rescue_points(days, perishable and not food.is_staple)
    points = main_points(thing, days, points) if main else round(points * _share_of_rescue(slot, food))
    off_tomorrow = is_last_pack(slot, thing, wanted) and (lot.days_left or 0) <= 1
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
        before=0 if wanted.thaw_ahead else thaw_minutes(lot, food, most * unit, has_microwave(wanted.equipment)),
        thaws=thaws(lot, food),
        tie=zlib.crc32(f"{lot.line}\0{thing.rank}\0{name}".encode()) % 997,
    )


def _share_of_rescue(slot: Slot, food: Food) -> float:
    """What a portion is worth to save as a share: a few leaves of a herb are no plateful."""
    return weights.HERB_RESCUE if food.kind == "herb" and slot.role not in MAIN_ROLES else 1


def _least_share(slot: Slot, food: Food) -> float:
    """In portions for one person, the least of a food that is worth its place; no more than is usual in it."""
    share = _LEAST_SHARE.get(slot.role, _LEAST_SHARE_SMALL)
    return max(share, min(_LEAST_SHARE_OF.get(food.id, share), slot.portions[1]))


def _by_the_gram(food: Food) -> bool:
    """Whether a gram is more than one person gets of a spice."""
    return food.kind == "spice" and food.portion_g < 1


def _portion_units(food: Food, unit: int, people: int) -> int:
    """A gram is the least that is reckoned with: of what people get less of it is enough for everybody."""
    units = round(PORTION * unit / float(food.portion_g))
    return min(units, PORTION * people) if _by_the_gram(food) else units
