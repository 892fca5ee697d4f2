"""No dinner? Find the limits that stand in the way, by letting go of one at a time."""

import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import datetime

from calmlarder.compose.no_such_dish import lacks_for_dish
from calmlarder.compose.offer import Offered
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules import Rule
from calmlarder.compose.rules.all_rules import RULES
from calmlarder.compose.rules.protein import ProteinFloor
from calmlarder.compose.search import How, Watch, search
from calmlarder.compose.stop import Stop
from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.kitchen.equipment import USUAL
from calmlarder.larder.lot import Lot, why_unfit
from calmlarder.tables.book import Tables

_MAIN = (("base", "a base such as rice, noodles, potatoes or bread"), ("protein", "a protein food"),
         ("vegetable", "a vegetable"))  # fmt: skip

# What is low in fermentables and rich in protein, by diet: AFCD and Varney et al. 2017, as in the tables.
_MENDS_PROTEIN = {
    "vegan": "firm tofu or tempeh", "vegetarian": "eggs, firm tofu or tempeh",
    "pescatarian": "eggs, fish or firm tofu", "omnivore": "eggs, fish, plain meat or firm tofu",
}  # fmt: skip

Rebuild = Callable[[DinnerRequest], Sequence[PatternProblem]]


def obstacles(
    offered: Sequence[Offered], wanted: DinnerRequest, rebuild: Rebuild, seconds: float, kept: Sequence[str] = ()
) -> tuple[str, ...]:
    """Sentences that say which limit alone, let go, would allow a dinner; else what is missing.

    The wish to use a food of `kept` is never let go.
    """
    whole = wanted.model_copy(update={"minutes": None, "equipment": USUAL})
    if lacking := lacks_for_dish(rebuild(whole), wanted):
        return lacking
    missing = [words for role, words in _MAIN if not any(role in thing.food.roles for thing in offered)]
    if missing and not any(problem.fillable for problem in rebuild(wanted.model_copy(update={"minutes": None}))):
        return tuple(f"the larder offers no {words.removeprefix('a ')} that may be used" for words in missing)
    end = time.monotonic() + seconds
    if not any(problem.fillable for problem in rebuild(whole)):
        protein = _MENDS_PROTEIN[wanted.diet]
        return (f"what is there goes together in no dish known here: {protein}, with rice or potatoes, would help",)
    names = {thing.food.id: thing.food.name for thing in offered}
    limited = _other_limits(rebuild(wanted))
    for relaxations in (_relaxations(wanted, rebuild, limited, kept, names), _together(wanted, limited)):
        found = tuple(words for words, test in relaxations if time.monotonic() < end and test(end))
        if found:
            return found
    return (_mended_by(wanted, rebuild, limited, end),)


def _other_limits(problems: Sequence[PatternProblem]) -> Rebuild:
    """The same dishes for requests that differ in limits alone: what may fill a dish is not asked anew."""
    return lambda wanted: [replace(problem, wanted=wanted, limits=wanted.limits) for problem in problems]


def _mended_by(wanted: DinnerRequest, rebuild: Rebuild, limited: Rebuild, end: float) -> str:
    """Where no kind of limit alone is in the way: which two are, and what a cook could do about it."""
    no_floor = tuple(rule for rule in RULES if not isinstance(rule, ProteinFloor))
    keys = {cap.key for cap in wanted.limits.sitting_caps}
    free = _without_caps(wanted, keys)
    protein = _MENDS_PROTEIN[wanted.diet]
    if time.monotonic() < end and _possible(free, limited, no_floor)(end):
        return (
            f"what brings protein here brings too many fermentables for {wanted.protein_floor_g:g} g a person: "
            f"{protein} would help"
        )
    hasty = free.model_copy(update={"minutes": None, "equipment": USUAL})
    if time.monotonic() < end and _possible(hasty, rebuild)(end):
        return f"what could be cooked within the limits takes longer or wants more equipment: {protein} would help"
    return f"what is there makes no dish within the limits: {protein}, with rice or potatoes, would help"


def unfit_wishes(lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> tuple[str, ...]:
    """Why what was asked for on purpose may not be cooked with, where nothing of it may."""
    found = []
    for food in wanted.use:
        why = [why_unfit(lot, wanted.use_shared) for lot in lots if lot.food == food]
        if why and all(why):
            found.append(f"{tables.food_by_id[food].name}: {why[0]}")
    return tuple(found)


def fits_after(wanted: DinnerRequest, rebuild: Rebuild, seconds: float) -> datetime | None:
    """The first moment at which enough of what was eaten before no longer counts, if that lets a dinner fit."""
    end = time.monotonic() + seconds
    for until in sorted({one.until for one in wanted.counted}):
        assert wanted.stacking is not None
        stacking = wanted.stacking.model_copy(update={"at": until})
        if time.monotonic() < end and _possible(wanted.model_copy(update={"stacking": stacking}), rebuild)(end):
            return until
    return None


def _relaxations(
    wanted: DinnerRequest, rebuild: Rebuild, limited: Rebuild, kept: Sequence[str], names: Mapping[str, str]
) -> list[tuple[str, Callable[[float], bool]]]:
    def possible(changed: DinnerRequest) -> Callable[[float], bool]:
        return _possible(changed, rebuild)

    no_floor = tuple(rule for rule in RULES if not isinstance(rule, ProteinFloor))
    tests = [(f"the protein floor of {wanted.protein_floor_g:g} g a person", _possible(wanted, limited, no_floor))]
    if wanted.minutes is not None:
        changed = wanted.model_copy(update={"minutes": None})
        tests.append((f"the time of {wanted.minutes} minutes", possible(changed)))
    if wanted.lysine_mg:
        changed = wanted.model_copy(update={"lysine_mg": 0})
        tests.append((f"the lysine floor of {wanted.lysine_mg} mg a person", possible(changed)))
    for thing in wanted.equipment.missing:
        fewer = tuple(other for other in wanted.equipment.missing if other != thing)
        changed = wanted.model_copy(update={"equipment": wanted.equipment.model_copy(update={"missing": fewer})})
        tests.append((f"that the kitchen has no {thing}", possible(changed)))
    for food in wanted.use:
        if food in kept:
            continue
        changed = wanted.model_copy(update={"use": tuple(other for other in wanted.use if other != food)})
        tests.append((f"the wish to use {names.get(food, food)}", possible(changed)))
    keys = [cap.key for cap in wanted.limits.sitting_caps]
    tests += [
        (f"the limit on {CAP_WORDS.get(key, key)}", _possible(_without_caps(wanted, {key}), limited)) for key in keys
    ]
    return tests


def _together(wanted: DinnerRequest, limited: Rebuild) -> list[tuple[str, Callable[[float], bool]]]:
    """Limits that no single one of lets go enough: a group's with the total it counts under; then all of them."""
    keys = [cap.key for cap in wanted.limits.sitting_caps]
    totals = {key for key in keys if key.startswith("total")}
    tests = [
        (
            f"the limit on {CAP_WORDS.get(key, key)} together with that on the total",
            _possible(_without_caps(wanted, {key, *totals}), limited),
        )
        for key in keys
        if key not in totals and totals
    ]
    tests.append(("the limits on fermentable groups together", _possible(_without_caps(wanted, set(keys)), limited)))
    return tests


def _possible(wanted: DinnerRequest, rebuild: Rebuild, rules: Sequence[Rule] = RULES) -> Callable[[float], bool]:
    def test(end: float) -> bool:
        left = min(2.0, max(0.05, end - time.monotonic()))
        stop = Stop()  # any dinner answers it: no better one is looked for
        watch = Watch(lambda _: stop.ask(), stop)
        return bool(search(rebuild(wanted), 1, left, How(rules, watch=watch)).plans)

    return test


def _without_caps(wanted: DinnerRequest, keys: set[str]) -> DinnerRequest:
    limits = wanted.limits
    groups = {cap.group for cap in limits.sitting_caps if cap.key in keys}
    left = limits.model_copy(
        update={
            "sitting_caps": tuple(cap for cap in limits.sitting_caps if cap.key not in keys),
            "food_caps": tuple(cap for cap in limits.food_caps if cap.group not in groups),
        }
    )
    return wanted.model_copy(update={"profile": left})
