"""What goes off and is not in a dinner, told with it: nothing that presses is passed over without a word."""

from collections.abc import Container, Iterator, Sequence

from calmlarder.and_list import and_list
from calmlarder.compose.beside import beside
from calmlarder.compose.called import name_said
from calmlarder.compose.dinner_cautions import rest_of
from calmlarder.compose.garlic_named import says_garlic
from calmlarder.compose.offer import Offered
from calmlarder.compose.solve import Plan, Use
from calmlarder.intake.limit import limit_of
from calmlarder.larder.freezing import freeze_today
from calmlarder.larder.lot import Lot, is_last_day
from calmlarder.larder.trimmed import MOULDY_CORNER, TRIM
from calmlarder.larder.with_bones import is_whole_fish
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES, COOKED_STATES

_SOON_DAYS = 3  # what a label gives so many days is told, too, as fish, meat and sprouts by any reckoning: ours
_TIRED_DAYS = 2  # what is going soft or brown has so many at the most: ours
_MOST_TOLD = 3  # of what goes off soon, and of what is past its day: more is a list that nobody reads; ours
_WORTH_A_WORD_G = 40  # less, or a herb, is no meal; what holds onion or garlic is none either. Ours
# Of these an estimate counts as well: nobody waits for the smell. Ours.
_SPOILS = frozenset({"fish", "shellfish", "poultry", "meat", "shoot"})
_WORTH_A_MEAL_G = 60  # of what a dish leaves: less is eaten up beside it. Ours
_LAST_DAY_G = 20  # the same of what is on its last day: ours
# Soft, stale or sprouting, they keep.
_WAITS_BENDY = frozenset({"root", "potato", "squash", "allium", "egg", "nut", "seed", "bread"})
_FITS_SHARE = 0.6  # of a usual portion: what fits no more of it is planned for nobody who keeps the limits. Ours
# What is fresh and in no dish is named in one line: so many things, what has no day last. Ours.
_MOST_LEFT, _KEEPS_DAYS = 5, 60
FOR_A_DINNER = frozenset({"base", "protein", "vegetable"})
_DAIRY = frozenset({"cheese", "yoghurt", "cream"})
_KEEPS = frozenset({"dry", "dried", "frozen", *CANNED_STATES})
_DAYS = {0: "best today", 1: "tomorrow is the last day", 2: "two days left", 3: "three days left"}


def goes_off(plan: Plan, offered: Sequence[Offered], tables: Tables) -> tuple[str, ...]:
    """A sentence for each thing that is on its last day and stays out, and one for what goes off within two days."""
    passed = _passed_over(plan, offered)
    warmed = {thing.lot.id: words for thing in passed if (words := _warmed_too(thing, plan, tables))}
    told = []
    last = [thing for thing in passed if is_last_day(thing.lot) and thing.lot.id not in warmed]
    also = beside([thing for thing in last if may_be_planned(thing, plan, tables)], plan)
    for thing in last:
        why = "it is not in this dish"
        then = _else(thing, tables, also.get(thing.lot.id, ""))
        if not may_be_planned(thing, plan, tables):
            why, then = "a usual amount passes the limits", "for somebody else's plate, or throw it away tonight"
        name = name_said(thing.food, thing.lot.line, tables).capitalize()
        told.append(f"{name}: today is its last day, and {why}: {then}.")
    told.extend([_past(thing, tables) for thing in passed if (thing.lot.days_left or 0) < 0][:_MOST_TOLD])
    told.extend(
        f"{name_said(thing.food, thing.lot.line, tables).capitalize()} ({MOULDY_CORNER}): {TRIM}."
        for thing in passed
        if thing.lot.condition == MOULDY_CORNER
    )
    rests = _rests(plan)
    for thing in (one for one in rests if is_last_day(one.lot)):
        name = name_said(thing.food, thing.lot.line, tables)
        told.append(
            f"{thing.lot.grams:.0f} g of the {name} is left, and today is its last day: {_else(thing, tables)}."
        )
    soon = sorted([one for one in (*passed, *rests) if _goes_soon(one)], key=lambda thing: thing.lot.days_left or 0)
    once = list({thing.food.id: thing for thing in reversed(soon)}.values())[::-1]
    fitting = [thing for thing in once if may_be_planned(thing, plan, tables)][:_MOST_TOLD]
    others = [thing for thing in once if thing not in fitting and not may_be_planned(thing, plan, tables)]
    used = {use.option.offered.lot.id for use in plan.uses}
    said = {thing.lot.id for thing in passed if is_last_day(thing.lot) or (thing.lot.days_left or 0) < 0}
    fitting = [thing for thing in fitting if thing.lot.id not in warmed]
    waits = _left_for_other_days(
        plan, (*passed, *filter(_is_vegetable, rests)), {*said, *warmed, *(thing.lot.id for thing in soon)}, tables
    )
    kept = (*_soon(fitting, used, tables), *_for_others(others[:_MOST_TOLD], used, tables), *waits)
    return tuple(dict.fromkeys((*told, *warmed.values(), *kept)))


def _warmed_too(thing: Offered, plan: Plan, tables: Tables) -> str:
    """What of a dry base need not be boiled where some is cooked already; nothing where this is no such thing.

    Cooked rice is chilled soon, and warmed once until steaming hot: UK Food Standards Agency (recalled).
    """
    lot = thing.lot
    if thing.food.state not in COOKED_STATES or lot.grams < _WORTH_A_WORD_G or (lot.days_left or 0) < 0:
        return ""
    factors = {row.from_food: float(row.factor) for row in tables.conversions}
    for use in plan.uses:
        food = use.option.offered.food
        if food.kind == thing.food.kind and food.state == "dry" and food.id in factors:
            less = min(use.grams, lot.grams / factors[food.id])
            name = name_said(thing.food, lot.line, tables).capitalize()
            last = " What is not eaten tonight is thrown away." if is_last_day(lot) else ""
            return (
                f"{name} ({lot.grams:.0f} g) is there: if it was chilled soon after cooking, warm it once, "
                f"until steaming hot all through, and boil {5 * round(less / 5)} g less of the {food.name}.{last}"
            )
    return ""


def _left_for_other_days(plan: Plan, passed: Sequence[Offered], said: Container[str], tables: Tables) -> Iterator[str]:
    """What of the larder a dinner could be made of, is fresh and not spoken of: what goes first in front."""
    left = [
        thing
        for thing in passed
        if thing.lot.id not in said and _is_fresh(thing) and may_be_planned(thing, plan, tables)
    ]
    first = sorted(left, key=lambda thing: _KEEPS_DAYS if thing.lot.days_left is None else thing.lot.days_left)
    used = {use.option.offered.lot.id for use in plan.uses}
    names = list(dict.fromkeys(_with_a_day(thing, used, tables) for thing in first))
    if names:
        yield f"Left for the next days: {and_list(names[:_MOST_LEFT])}."


def _is_fresh(thing: Offered) -> bool:
    food, lot = thing.food, thing.lot
    main = bool(FOR_A_DINNER & {*food.roles}) or food.kind in _DAIRY
    return main and food.state not in _KEEPS and lot.place == "fridge" and lot.grams >= _WORTH_A_WORD_G


def _is_vegetable(thing: Offered) -> bool:
    """Raw and with days of its own: what was opened has a sentence of its own (`left_open`)."""
    return "vegetable" in thing.food.roles and thing.food.state == "raw" and thing.lot.days_left is not None


def _with_a_day(thing: Offered, used: Container[str], tables: Tables) -> str:
    name = name_said(thing.food, thing.lot.line, tables)
    if thing.lot.id in used:
        return f"the rest of the {name} ({thing.lot.grams:.0f} g)"
    return f"{name} (soon)" if thing.lot.days_left in {0, 1, 2} else name


def _past(thing: Offered, tables: Tables) -> str:
    """What to do with what is past its day, not unsafe, and in no dish (UK Food Standards Agency, best before)."""
    name = name_said(thing.food, thing.lot.line, tables).capitalize()
    eaten = "eat it only cooked through, today" if thing.only_cooked else "eat it soon"
    return f"{name}, past its day ({thing.lot.days_from}): look and smell, and {eaten}; if in doubt, throw it away."


def _rests(plan: Plan) -> list[Offered]:
    """What the dish leaves of a lot that goes off soon, with the grams that are left, where there is a meal in it.

    Raw flesh in its last days and tofu on its last have a caution of their own
    (`dinner_cautions`).
    """
    rests = []
    for use in plan.uses:
        thing = use.option.offered
        grams = thing.lot.grams - use.grams
        least = _LAST_DAY_G if is_last_day(thing.lot) else _WORTH_A_MEAL_G
        if grams < least or not _may_go_off(thing.lot, thing.food):
            continue
        if not _has_its_caution(use, plan):
            rests.append(thing._replace(lot=thing.lot.model_copy(update={"grams": grams})))
    return rests


def _has_its_caution(use: Use, plan: Plan) -> bool:
    food, lot = use.option.offered.food, use.option.offered.lot
    if is_whole_fish(food, lot.line):  # its grams are told without bones, and it goes in whole
        return True
    return bool(rest_of(use, food, plan))


def may_be_planned(thing: Offered, plan: Plan, tables: Tables) -> bool:
    """Whether most of a usual portion fits the limits of the sitting."""
    wanted = plan.problem.wanted
    most = limit_of(thing.food, wanted.limits, tables, wanted.tolerance).grams_weighed
    return most is None or most >= _FITS_SHARE * float(thing.food.portion_g)


def _passed_over(plan: Plan, offered: Sequence[Offered]) -> list[Offered]:
    """What may be eaten and is in no dinner, nor another lot of the same food that presses as much."""
    used = {use.option.offered.lot.id for use in plan.uses}
    foods = {use.option.offered.food.id: use.option.offered.lot for use in plan.uses}
    return [
        thing
        for thing in offered
        if thing.lot.id not in used
        and (thing.food.id not in foods or _is_sooner(thing.lot, foods[thing.food.id]))
        and _may_go_off(thing.lot, thing.food)
    ]


def _is_sooner(lot: Lot, used: Lot) -> bool:
    """Whether a lot has a day of its own, and the one that is cooked has a later one, or none."""
    if lot.days_left is None or lot.days_estimated:
        return False
    return used.days_left is None or used.days_estimated or used.days_left >= lot.days_left


def _may_go_off(lot: Lot, food: Food) -> bool:
    return not (food.is_staple or lot.place == "freezer" or lot.always or lot.kept_for is not None)


def _else(thing: Offered, tables: Tables, eaten: str = "") -> str:
    """What to do tonight with what is on its last day: by its use-by it may still be cooked or frozen.

    UK Food Standards Agency, use-by and freezing (recalled). What was cooked before is not kept any longer.
    `eaten` says how much of it fits beside the dish.
    """
    lot, food = thing.lot, thing.food
    if lot.safety_days_left != 0:
        if eaten:
            return f"{eaten}, or look at it well tomorrow"
        return "have it at another meal today, within your limits, or look at it well tomorrow"
    if food.state in COOKED_STATES:
        return f"{eaten or 'eat it tonight as well, within your limits'}, or throw it away"
    freezes = bool(freeze_today([lot], tables, 0))
    if food.kind in _SPOILS and food.state in {"raw", "frozen"}:
        kept = "cook it tonight, chill it within two hours, and eat it within two days"
        return f"freeze it tonight, or {kept}" if freezes else f"{kept}, or throw it away"
    if freezes:
        return f"freeze it tonight, or {eaten or 'eat it as well, within your limits'}; else throw it away"
    return f"{eaten or 'eat it tonight as well, within your limits'}, or throw it away"


def _soon(shown: Sequence[Offered], used: Container[str], tables: Tables) -> Iterator[str]:
    """What the next dinner is made of, the soonest first, and what of it the freezer would keep."""
    if not shown:
        return
    called = {thing.lot.id: name_said(thing.food, thing.lot.line, tables) for thing in shown}
    cold = {one.lot for one in freeze_today([thing.lot for thing in shown], tables, _SOON_DAYS)}
    freezes = [called[thing.lot.id] for thing in shown if thing.lot.id in cold and _is_worth_freezing(thing)]
    frozen = f", or freeze the {and_list(freezes)} today" if freezes else ""
    yield f"Goes off next: {_with_days(shown, tables, used)}. Plan it in{frozen}."


def _is_worth_freezing(thing: Offered) -> bool:
    """What spoils, and what nobody makes a second dinner of by tomorrow; not what is soft or brown already."""
    last = thing.lot.days_left == 1 and thing.food.state not in COOKED_STATES and not _is_tired(thing)
    return thing.food.kind in _SPOILS or last


def _for_others(shown: Sequence[Offered], used: Container[str], tables: Tables) -> Iterator[str]:
    """What goes off as well, and is no food for who keeps the limits."""
    if shown:
        yield (
            f"Goes off, and a usual amount passes the limits: {_with_days(shown, tables, used)}. For somebody else's "
            "plate, or the freezer."
        )


def _with_days(shown: Sequence[Offered], tables: Tables, used: Container[str] = ()) -> str:
    told = []
    for thing in shown:
        name, days = name_said(thing.food, thing.lot.line, tables), _how_soon(thing)
        rest = thing.lot.id in used
        told.append(f"the rest of the {name} ({thing.lot.grams:.0f} g, {days})" if rest else f"{name} ({days})")
    return ", ".join(told)


def _how_soon(thing: Offered) -> str:
    """By its label or its keeping; of what is soft or brown in the words of its line."""
    return (thing.lot.condition if _is_tired(thing) else None) or _DAYS[thing.lot.days_left or 0]


def _is_tired(thing: Offered) -> bool:
    """Whether its days are those of how it is, and not of a label."""
    return thing.lot.condition is not None and thing.lot.days_from.startswith(thing.lot.condition)


def _goes_soon(thing: Offered) -> bool:
    days, lot = thing.lot.days_left, thing.lot
    raw = thing.food.kind in _SPOILS and thing.food.state in {"raw", "frozen"}
    if days is None or not 0 <= days <= _SOON_DAYS or is_last_day(lot):
        return False
    if lot.grams < _WORTH_A_WORD_G or thing.food.kind in {"herb", "allium"} or says_garlic(thing.food):
        return False
    if lot.condition is not None and thing.food.kind in _WAITS_BENDY:
        return False
    return raw or days == 0 or (lot.condition is not None and days <= _TIRED_DAYS) or not lot.days_estimated
