"""Which lots may be cooked tonight, and why the others may not."""

import re
from collections.abc import Sequence
from typing import Literal, NamedTuple

from calmlarder.compose.garlic_named import LABEL_WITHOUT, MADE_WITHOUT, is_guesswork, is_named_for_it
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.shortlist import goes_first
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.dose import Dose, rest_of
from calmlarder.intake.load import LoadProfile, load_profile_of
from calmlarder.larder.freezing import thaws_overnight
from calmlarder.larder.lot import Lot, is_last_day, why_unfit
from calmlarder.larder.open_too_long import is_far_past_opened, is_past_opened, is_undated_infusion
from calmlarder.larder.with_bones import count_in, eatable_of_one, has_bones, is_whole_fish
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import COOKED_STATES

_FROM_THE_SEA = frozenset({"fish", "shellfish"})
_IN_PIECES = frozenset({"fish", "poultry", "meat"})
_LEAST_PIECE_G = 50  # what is smaller (wings, nuggets) is counted on the plate; ours
_MOST_OF_A_PORTION = 1.4  # a piece that is larger is cut: ours
_NOT_VEGETARIAN = frozenset({"fish", "crustaceans", "molluscs"})
_CUT_WITH_WHEAT = "asafoetida"
_WHEAT = re.compile(r"\b(?:wheat|atta|maida)\b(?![ -]*free)", re.IGNORECASE)
_SOAKS = re.compile(r"\b(?:soak|steep)\w*|\bin (?:cold |fresh )?water\b", re.IGNORECASE)
_BOIL_BY_TOMORROW = (
    "soaked, for another day: drain it today or tomorrow, boil it hard in fresh water for ten minutes, then simmer "
    "until soft, an hour or so; boiled, it keeps two days in the fridge, or freezes in spoonfuls"
)
BEYOND = ""  # in place of a lot's id: many of them


class Offered(NamedTuple):
    """A lot that may be cooked. `place` is its number in the larder, `rank` tells equal lines apart.

    `gives` marks what the larder does not offer tonight: food to buy, or a lot whose owner is to be asked. What is
    `only_cooked` was open for too long to be eaten cold.
    """

    place: int
    rank: int
    lot: Lot
    food: Food
    brings: LoadProfile
    unit_grams: int
    gives: Literal["buy", "ask"] | None = None
    only_cooked: bool = False


class Excluded(NamedTuple):
    """A lot that is left out, and why."""

    lot: str
    line: str
    why: str


def told_as(lot: Lot, food: Food) -> str:
    """A lot in its cook's words; what is always there by its name, as one line says all of that."""
    return food.name if lot.always else lot.line


def offer(
    lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables
) -> tuple[tuple[Offered, ...], tuple[Excluded, ...]]:
    """Lots that may be cooked, in larder order, and the rest with the reason; of far too many what goes first."""
    fit: list[tuple[int, int, Lot, Food]] = []
    excluded: list[Excluded] = []
    seen: dict[str, int] = {}
    for index, lot in enumerate(lots):
        food = tables.food_by_id[lot.food]
        why = _why_not(lot, food, wanted, tables)
        if why:
            excluded.append(Excluded(lot.id, told_as(lot, food), with_its_last_day(why, lot, wanted)))
            continue
        rank = seen.get(lot.line, 0)
        seen[lot.line] = rank + 1
        fit.append((index, rank, lot, food))
    first = goes_first([lot for _, _, lot, _ in fit], wanted, tables)
    offered = tuple(
        Offered(index, rank, lot, food, brings, unit_of(lot, food, brings, tables), only_cooked=past)
        for index, rank, lot, food in fit
        for brings in (load_profile_of(food, tables),)
        for past in (is_past_opened(lot, wanted.today, tables),)
        if lot.id in first
    )
    beyond = len(fit) - len(offered)
    if beyond:
        why = f"only the {len(offered)} that go first were looked at"
        excluded.append(Excluded(BEYOND, f"{beyond} more things", why))
    if wanted.doses:
        found, left_out = dosed(offered, wanted, tables)
        return found, (*excluded, *left_out)
    return offered, tuple(excluded)


def unit_grams(food: Food, tables: Tables) -> int:
    """The step in which a food is dealt out, in grams: a box, an egg, a wrap, a slice, else 5 g or 1 g."""
    if food.id in tables.mixtures:
        return tables.mixtures[food.id].share_grams
    piece = {"egg": "piece", "wrap": "piece", "bread": "slice"}.get(food.kind)
    row = tables.measure(food, piece) if piece else None
    if row is not None:
        return max(1, round(row.grams))
    return 5 if food.portion_g >= 40 else 1


def unit_of(lot: Lot, food: Food, brings: LoadProfile, tables: Tables) -> int:
    """The step in which a lot is dealt out, in grams: chops, thighs and fillets go whole, where no limit divides them.

    Pieces of a lot are as even as its weight tells. What no plate holds one of, or what does not come out, is cut.
    """
    usual = unit_grams(food, tables)
    rows = {row.measure: float(row.grams) for row in tables.own_measures(food)}
    piece = rows.get("fillet", rows.get("piece", 0.0))
    if food.kind not in _IN_PIECES or food.state not in {"raw", "frozen"} or brings.anything:
        return usual
    whole = is_whole_fish(food, lot.line) or has_bones(food)
    counted = count_in(lot.line) if whole else None
    of_one = eatable_of_one(food, lot.line)
    piece = of_one[1] if of_one is not None else piece
    if counted is not None:
        piece = lot.grams / counted
    if not _LEAST_PIECE_G <= piece <= _MOST_OF_A_PORTION * float(food.portion_g):
        return usual
    pieces = max(1, round(lot.grams / piece))
    unit = int(lot.grams / pieces / usual) * usual  # a plan deals in the usual steps
    comes_out = lot.grams - pieces * unit < usual
    return unit if comes_out and unit <= _MOST_OF_A_PORTION * float(food.portion_g) else usual


def _why_not(lot: Lot, food: Food, wanted: DinnerRequest, tables: Tables) -> str | None:
    unfit = why_unfit(lot, wanted.use_shared)
    if unfit and (lot.to_bin or lot.is_unsafe):
        return unfit
    if not suits_diet(food, wanted.diet):
        whose = f", and it belongs to {lot.owner}" if lot.owner and not lot.owner_agrees else ""
        return f"not {wanted.diet}: {food.name}{whose}"  # nobody asks a flatmate for what they do not eat
    fish = [one for one in lot.label_allergens if one in _NOT_VEGETARIAN]
    if fish and wanted.diet in {"vegan", "vegetarian"}:
        return f"not {wanted.diet}: its label or line names {', '.join(fish)}"
    if unfit:
        return unfit
    if _is_past_raw(lot, food):
        return f"raw from the sea and past its day ({lot.days_from}): do not eat, cook or freeze it"
    if is_far_past_opened(lot, wanted.today, tables):
        return f"open for more than twice the days it keeps ({lot.days_from}): do not eat it"
    if is_undated_infusion(lot):
        return "home-made, and nobody says when: throw it away, or write the day it was made behind it"
    allergens = allergens_met(food, wanted.avoid)
    if allergens:
        return f"it holds or may hold {', '.join(allergens)}, among the allergens to avoid"
    named = [one for one in lot.label_allergens if one in wanted.avoid]
    if named:
        return f"its label or line names {', '.join(named)}"
    if lot.label_triggers and wanted.profile.limits_foods:
        return f"its label names {', '.join(lot.label_triggers)}, and how much nobody can tell"
    if wanted.profile.bars_hidden and is_guesswork(food, lot):
        return _how_much_unknown(food, lot)
    if food.id == _CUT_WITH_WHEAT and _WHEAT.search(lot.line) and wanted.profile.limits_foods:
        return "its line says that it is cut with wheat: the dish does without"
    if food.id in wanted.without:
        return "left out as asked"
    unknown = tables.unknown_of(food.id)
    if unknown:
        return f"no figure is known for its {', '.join(unknown)}: left out until one is"
    if thaws_overnight(lot, food) and not wanted.thaw_ahead:
        return "frozen and thick: let it thaw in the fridge overnight, and cook it tomorrow"
    if not food.minutes:
        return _not_tonight(lot, food)
    return None


def _not_tonight(lot: Lot, food: Food) -> str:
    """What takes too long for a dinner; what soaks already is boiled all the same, before it sours (recalled)."""
    if food.kind == "pulse" and _SOAKS.search(lot.line):
        return _BOIL_BY_TOMORROW
    return f"not for tonight: {food.note or 'it needs long soaking or cooking'}"


def _how_much_unknown(food: Food, lot: Lot) -> str:
    """Why it stays out, and what to write where it may hold none: not of what is named for its garlic or onion."""
    if is_named_for_it(food, lot):
        return f"taken as {food.name}, how much of it nobody can tell"
    asked = MADE_WITHOUT if food.state in COOKED_STATES else LABEL_WITHOUT
    return f"taken as {food.name}, how much onion or garlic it holds nobody can tell: {asked}"


def _is_past_raw(lot: Lot, food: Food) -> bool:
    """Raw fish and shellfish past the day on their label, whatever the label calls it: no nose tells (recalled)."""
    past = lot.days_left is not None and lot.days_left < 0 and not lot.days_estimated
    return past and lot.place == "fridge" and food.state == "raw" and food.kind in _FROM_THE_SEA


def with_its_last_day(why: str, lot: Lot, wanted: DinnerRequest) -> str:
    """The reason, and the last day of what is one's own and stays out: nothing goes off in silence."""
    if lot.place == "freezer" or why_unfit(lot, wanted.use_shared):
        return why
    if is_last_day(lot):
        return f"{why}. Today is its last day: freeze it, give it away, or throw it away tonight"
    sprouts = "sprout" in (lot.condition or "")  # which spoils nothing by a day
    if lot.days_left in _SOON and not lot.days_estimated and not sprouts:
        return f"{why}. {_SOON[lot.days_left]}: freeze it or give it away by then"
    return why


_SOON = {1: "Its last day is tomorrow", 2: "Its last day is in two days"}
_WHY = "the challenge takes its weighed amount and no more of it today"


def dosed(
    offered: Sequence[Offered], wanted: DinnerRequest, tables: Tables
) -> tuple[tuple[Offered, ...], tuple[Excluded, ...]]:
    """What may be cooked beside the doses of a day, and what is left out for them."""
    doses = {dose.food: dose for dose in wanted.doses}
    found: list[Offered] = []
    left_out: list[Excluded] = []
    for thing in offered:
        dose = doses.get(thing.food.id)
        if dose is None:
            found.append(thing)
        elif is_lot_for(thing.lot.grams, thing.unit_grams, dose) and all(one.food.id != dose.food for one in found):
            found.append(thing._replace(brings=rest_of(dose.food, dose.group, tables)))
        else:
            left_out.append(Excluded(thing.lot.id, told_as(thing.lot, thing.food), _WHY))
    return tuple(found), tuple(left_out)


def is_lot_for(grams: float, unit_grams: int, dose: Dose) -> bool:
    """Whether a lot may hold the dose of the dish: more than a step of it stays, so that it is weighed."""
    return dose.in_dish and grams >= dose.grams + unit_grams


def keeping_days(tables: Tables, foods: Sequence[Food] | None = None) -> dict[str, int | None]:
    """Days each food of the tables, or of those given, keeps in the fridge."""
    rows = {food.id: tables.keeping_of(food, "fridge", "whole") for food in (tables.foods if foods is None else foods)}
    return {food: row.days if row else None for food, row in rows.items()}
