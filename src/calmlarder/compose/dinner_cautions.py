"""What to mind with a dish, its foods and its lots, each once, and who says so."""

import re
from collections.abc import Iterator, Mapping, Sequence

from calmlarder.and_list import and_list
from calmlarder.compose.garlic_named import says_garlic
from calmlarder.compose.solve import Plan, Use
from calmlarder.kitchen.made_ready import sprouts
from calmlarder.larder.freezing import thaws
from calmlarder.larder.lot import Lot
from calmlarder.larder.trimmed import MOULDY_CORNER, TRIM
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES, COOKED_STATES

_COMMON_PRACTICE = "common_practice"
# Chilled within one to two hours and eaten within two days: Food Standards Agency, chilling and leftovers.
_ADVICE = "fsa_uk"
_SPOILS_RAW = frozenset({"fish", "shellfish", "poultry", "meat"})
_KEEPS_COOKED = frozenset({"tofu", "tempeh", "seitan"})  # on their last day, too
_TURNS_RANCID = frozenset({"nut", "seed", "sea-vegetable"})
_GREEN = re.compile(r"\bgreen", re.IGNORECASE)
# What is green or sprouts holds solanine (UK Food Standards Agency on potatoes: recalled).
_GREEN_POTATO = "leave out any that is green; peel the rest, and cut away green, eyes and sprouts deeply"
# A shell that broke at home today (US Department of Agriculture on shell eggs: recalled).
_CRACKED = "take the sound ones; a cracked one goes in the bin, unless it cracked today: then cook it firm tonight"
# Against botulism in what is not sour (US Department of Agriculture on home canning: recalled).
_HOME_CANNED = re.compile(r"\bhome[ -]?(?:canned|bottled|jarred)\b", re.IGNORECASE)
_BOILED_FIRST = "boil it for ten minutes before you taste it or use it; if its lid bulges or it spurts, throw it away"
# A dent lets in what spoils where it is sharp or on a seam (US Department of Agriculture on canned food: recalled).
_DENTED = re.compile(r"\b(?:dent(?:ed|s)?|bashed|dinged|bumped|battered tin)\b", re.IGNORECASE)
_LOOK_AT_THE_DENT = "a shallow dent does no harm; sharp or on a seam, or if it bulges, leaks or spurts, throw it away"
_ANIMAL_RENNET = "made with animal rennet"  # as the note of a cheese in foods.csv says
_EITHER_WAY = "chicken-thigh"
_CUT_UP = re.compile(r"\b(?:strips|pieces|cubes|diced?)\b")
_LONGER_ON_THE_BONE = "on the bone they take about 15 minutes more"
_SAYS_BONES = re.compile(r"bone|fillet|strips|diced|mini", re.IGNORECASE)
_DRY = re.compile(r"\b(?:hard|dry|dried|cracked)\b")  # of cheese (common practice, no source)
_WORTH_COOKING_G = 15  # less is not worth a pan: ours


def cautions_of(plan: Plan, foods: Mapping[str, Food], tables: Tables) -> tuple[str, ...]:
    """What to mind with the dish and its foods, each once, and behind it who says so."""
    cautions = list(plan.problem.pattern.cautions)
    said_by: list[str] = []
    tired: list[str] = []
    for use in plan.uses:
        food, lot = foods[use.option.offered.food.id], use.option.offered.lot
        rows = tables.cautions_of(food)
        cautions += [f"{row.caution}." for row in rows if row.caution]
        said_by += [row.source for row in rows if row.source != _COMMON_PRACTICE]
        tired += _tired(lot, food)
        cautions += _taken_as_boneless(lot, food, plan.problem.pattern.slots[use.option.slot].prep_of(food))
        cautions += _lot_cautions(lot, food, says_garlic(use.option.offered.food))
        if plan.problem.wanted.diet == "vegetarian" and food.note.startswith(_ANIMAL_RENNET):
            cautions.append(
                f"{food.name.capitalize()}: {_ANIMAL_RENNET}; who eats none takes one without, by its label."
            )
        rest = rest_of(use, food, plan)
        if rest:
            cautions.append(rest)
            said_by.append(_ADVICE)
    cautions += _said_of_tired(tired)
    if said_by:
        names = dict.fromkeys(tables.authority(source) for source in said_by)
        cautions.append(f"Food safety as advised by: {'; '.join(names)}.")
    return tuple(dict.fromkeys(cautions))


def look_first(lot: Lot, food: Food) -> str:
    """What is asked of a cook before it goes in, in the few words that stand beside its amount; the caution says more.

    Soft, limp and stale do no harm.
    """
    if lot.days_left is not None and lot.days_left < 0:
        return f"past its day: {'cook it firm' if food.kind == 'egg' else 'look and smell first'}"
    if lot.condition == MOULDY_CORNER:
        return f"{MOULDY_CORNER}: trim it first"
    harmless = any(sort.search(one) for one in _tired(lot, food) for sort in (_SOFT, _LIMP, _STALE))
    return "look it over first" if _tired(lot, food) and not harmless else ""


def _said_of_tired(tired: Sequence[str]) -> Iterator[str]:
    """A sentence for what is limp, for stale bread, for what is to be used, and for what is worse."""
    worse = list(tired)
    for sort, then in (
        (_SOFT, "soft does no harm where it is cooked; what is slimy or mouldy goes in the bin"),
        (_LIMP, "limp does no harm; what is slimy or mouldy goes in the bin"),
        (_STALE, "stale does no harm; what is mouldy goes in the bin, all of it"),
        (_TO_BE_USED, "look it over first; if in doubt, throw it away"),  # when to eat it, and nothing of how it is
    ):
        of_it = [one for one in worse if sort.search(one)]
        worse = [one for one in worse if one not in of_it]
        if of_it:
            yield f"{and_list(of_it).capitalize()}: {then}."
    if worse:
        yield f"{and_list(worse).capitalize()}: cut away what is bad; if in doubt, throw it away."


_STALE = re.compile(
    r"\b(?:(?:corn)?bread|rolls?|baguette|pitta|bagels?|tortillas?|crumpets?"
    r"|rice cakes|crackers|crispbread|oatcakes)\b[^()]*\((?:[a-z]+ )*(?:stale|hard|past its best)\)$"
)
_TO_BE_USED = re.compile(r"\b(?:use|using|used|eat|eating|cook|cooking|finish|finishing|asap|urgent|priority)\b", re.I)
_SOFT = re.compile(r"\((?:[a-z]+ )*soft\)$", re.I)
_LIMP = re.compile(
    r"\((?:[a-z]+ )*(?:bendy|floppy|limp|wrinkly|wrinkled|drooping|droopy|rubbery|wilted|wilting|wilty)\)$", re.I
)

# Fridge and microwave as the UK Food Standards Agency advises, cold water as the US Department of Agriculture does
# (a pound an hour or less): both recalled. Minutes of what is thin and in the microwave: common practice, no source.
_THAWING = (
    "in a sealed bag in cold water (%s) or on the microwave's thawing setting (about 8 minutes for 500 g), and cook it "
    "at once; on another day overnight in the fridge, and never beside the stove"
)
_IN_WATER = {"shellfish": "20 minutes for prawns", "fish": "30 minutes for fillets, an hour for a whole fish",
             "meat": "an hour for 500 g", "poultry": "an hour for 500 g",
             "tempeh": "30 minutes for a slab"}  # fmt: skip
_IN_WATER_ELSE = "an hour for a block"


def _thawing(food: Food) -> str:
    return _THAWING % _IN_WATER.get(food.kind, _IN_WATER_ELSE)


def rest_of(use: Use, food: Food, plan: Plan) -> str:
    """What to do today with the rest of raw fish or meat in its last days, of tofu on its last.

    At a table of several it may go apart.
    """
    lot, main = use.option.offered.lot, plan.problem.pattern.slots[use.option.slot].role == "protein"
    rest = int(lot.grams) - use.grams
    last = lot.days_left in {0, 1} and not lot.days_estimated and lot.place == "fridge"
    spoils = food.kind in _SPOILS_RAW and food.state == "raw"
    spoils |= food.kind in _KEEPS_COOKED and lot.days_left == 0
    if plan.problem.wanted.table or not (main and last and spoils):
        return ""
    if rest < _WORTH_COOKING_G:
        return ""
    day = "today is its last day" if lot.days_left == 0 else "tomorrow is its last day"
    return (
        f"{food.name.capitalize()}: {rest} g is left, and {day}: cook it with the rest today, chill it within two "
        "hours, and eat it within two days."
    )


def _taken_as_boneless(lot: Lot, food: Food, prep: str) -> list[str]:
    """Thighs are cooked as those without bones are, unless the line says how they are (common practice, no source)."""
    if food.id != _EITHER_WAY or _SAYS_BONES.search(lot.line):
        return []
    bones = "where they have bones, cut the meat off these" if _CUT_UP.search(prep) else _LONGER_ON_THE_BONE
    return [f"{food.name.capitalize()}: taken as boneless; {bones}."]


def _tired(lot: Lot, food: Food) -> list[str]:
    """What is soft, limp or the like, in words: all of it is told in one sentence."""
    past, condition = lot.days_left is not None and lot.days_left < 0, lot.condition
    if not condition or past or condition == MOULDY_CORNER or food.kind == "egg" or food.kind in _TURNS_RANCID:
        return []
    if (food.id == "potato" and _GREEN.search(condition)) or _is_dry_cheese(food, condition):
        return []
    return [f"{food.name} ({condition})"] if sprouts(food, condition) or "sprout" not in condition else []


def _is_dry_cheese(food: Food, condition: str | None) -> bool:
    return food.kind == "cheese" and condition is not None and _DRY.search(condition) is not None


def _lot_cautions(lot: Lot, food: Food, garlic: bool) -> list[str]:
    cautions = []
    if lot.days_left is not None and lot.days_left < 0:
        look = "cook white and yolk firm" if food.kind == "egg" else "look and smell"
        cautions.append(
            f"{food.name.capitalize()}, past its best ({lot.days_from}): {look}; if in doubt, throw it away."
        )
    elif lot.condition == MOULDY_CORNER:
        cautions.append(f"{food.name.capitalize()} ({lot.condition}): {TRIM}.")
    elif lot.condition and food.kind == "egg":
        cautions.append(f"{food.name.capitalize()} ({lot.condition}): {_CRACKED}.")
    elif _is_dry_cheese(food, lot.condition):
        cautions.append(f"{food.name.capitalize()} ({lot.condition}): dry does no harm; trim it.")
    elif lot.condition and food.kind in _TURNS_RANCID:
        cautions.append(f"{food.name.capitalize()} ({lot.condition}): taste one first, and throw them away if bitter.")
    elif lot.condition and food.id == "potato" and _GREEN.search(lot.condition):
        cautions.append(f"{food.name.capitalize()} ({lot.condition}): {_GREEN_POTATO}.")
    if food.state in CANNED_STATES and _HOME_CANNED.search(lot.line):
        cautions.append(f"{food.name.capitalize()} (home-canned): {_BOILED_FIRST}.")
    if food.state in CANNED_STATES and _DENTED.search(lot.line):
        cautions.append(f"{food.name.capitalize()} (dented): {_LOOK_AT_THE_DENT}.")
    if food.state in COOKED_STATES and lot.days_left == 0:
        cautions.append(f"{food.name.capitalize()}: today is its last day, so keep nothing of this dish for tomorrow.")
    if thaws(lot, food):
        cautions.append(f"{food.name.capitalize()}: thaw before you start, {_thawing(food)}.")
    if garlic:
        cautions.append(f"{food.name.capitalize()}: what it holds of garlic or onion is no more known than its label.")
    if lot.owner:
        cautions.append(f"{food.name.capitalize()} from {lot.owner}: say that you used it.")
    return cautions
