"""The larder's items as its list shows them, and a line in words as it is typed."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from calmlarder.and_list import whose
from calmlarder.history.log_entry import how_told
from calmlarder.household.household import Household
from calmlarder.household.signs_in_lines import signs_in
from calmlarder.intake.diet_and_allergens import allergens_met
from calmlarder.larder.lot import Lot
from calmlarder.larder.meaning import Reading, told_once
from calmlarder.larder.order import GROUPS, days_words, group_of
from calmlarder.larder.to_answer import ToAnswer
from calmlarder.render.about import about_span
from calmlarder.tables.household import in_household_measure
from calmlarder.tables.vocabulary import Allergen, allergen_words
from calmlarder.tui.widgets.item_list import Item, ItemGroup

if TYPE_CHECKING:
    from calmlarder.household.kept_lots import KeptLot

TO_ANSWER = "To answer"
_MOST_NAMED = 6  # of what was assumed; all of it stands in the rows
_TELLS_OF_A_SIGN = "a warning sign, and no food: Enter says what to do, and where to note it"
_WHOLE_G = 10  # from here on nobody weighs parts of a gram


def groups_of(shown: "Sequence[KeptLot]", asked: Sequence[ToAnswer], kitchen: Household) -> list[ItemGroup]:
    """What stands under each heading: what is to be answered, then what goes first before what keeps."""
    avoid = kitchen.settled().avoid
    questions = tuple(Item(str(one.id), one.called, "", "", question=_question(one)) for one in asked)
    return [
        ItemGroup(TO_ANSWER, questions),
        *(
            ItemGroup(
                group.capitalize(), tuple(_item(one, kitchen, avoid) for one in shown if group_of(one.lot) == group)
            )
            for group in GROUPS
        ),
    ]


def _question(one: ToAnswer) -> str:
    return f"{one.question} {', '.join(one.choices)}".strip()


def _item(one: "KeptLot", kitchen: Household, avoid: Sequence[Allergen]) -> Item:
    lot = one.lot
    # What is to be left out, then what is to be done, stands first: the end is cut where the screen is narrow.
    notes = [
        _left_out(lot, kitchen, avoid),
        whose(lot.owner) if lot.owner else "",
        lot.condition or "" if lot.place != "freezer" else "",
    ]
    notes += ["freeze or eat"] if kitchen.to_freeze(lot) else []
    notes += [", ".join([*_beyond_the_name(lot.assumed, lot, kitchen), "assumed"])] if lot.assumed else []
    measure, said = _measures(lot, kitchen)
    grams = f"{lot.grams:.0f}" if lot.grams >= _WHOLE_G else f"{lot.grams:g}"
    much, place = said or (f"{grams} g" if measure else ""), lot.place if lot.place == "cupboard" else ""
    beside = ", ".join(filter(None, [much, place]))
    name, words = kitchen.name_of(lot.food), tuple(filter(None, notes))
    return Item(str(one.id), name, grams, days_words(lot), words, beside=beside, measure=measure)


def _beyond_the_name(assumed: Sequence[str], lot: Lot, kitchen: Household) -> Sequence[str]:
    """What was assumed, but for the very name that stands before it."""
    return [one for one in told_once(assumed) if one.casefold() != kitchen.name_of(lot.food).casefold()]


def _measures(lot: Lot, kitchen: Household) -> tuple[str, str]:
    """In a home of ounces what stands in place of the grams, and cups where its cooks think in them; else nothing.

    Eggs stand there by their number.
    """
    ounces = kitchen.manner.beside(lot.grams)
    food = kitchen.tables.food_by_id.get(lot.food)
    if not ounces or food is None:
        return ounces, ""
    said = in_household_measure(food, lot.grams, kitchen.tables, "nearest") or ""
    return said if said and food.kind == "egg" else ounces, said if "cup" in said else ""


def meaning(reading: Reading, kitchen: Household) -> str:
    """What a line that was read says, or what to write instead."""
    if reading.problem is not None:
        return f"{reading.problem.what}; {reading.problem.remedy}"
    asked = reading.to_answer
    named = (
        _beyond_the_name(reading.assumed, reading.lots[0], kitchen)
        if len(reading.lots) == 1
        else told_once(reading.assumed)
    )
    assumed = f" ({', '.join(named)}{': ' * bool(named)}assumed)" if reading.assumed else ""
    lots = "; ".join(lot_words(lot, kitchen) for lot in reading.lots or reading.standing) + assumed
    if asked is None:
        return lots
    question = f"{asked.question} {', '.join(asked.choices[:4])}".strip()
    return f"{question}; the rest stands: {lots}" if reading.standing else question


def meaning_of_typed(reading: Reading, kitchen: Household) -> str:
    """The same below a line that is being typed: the answer to a warning sign is long, and waits for Enter."""
    return _TELLS_OF_A_SIGN if signs_in(reading) else meaning(reading, kitchen)


def meaning_of_refused(reading: Reading, kitchen: Household) -> str:
    """Why a line is not taken; what to do at a warning sign is a page of its own."""
    return "a warning sign, and no food" if signs_in(reading) else meaning(reading, kitchen)


def assumed_words(readings: Sequence[Reading], kitchen: Household) -> str:
    """What many lines left unsaid and was taken for granted: amounts, then kinds; empty where nothing was."""
    lots = [(one, lot) for reading in readings if reading.problem is None for one, lot in _with_reading(reading)]
    unsaid = [kitchen.name_of(lot.food) for _, lot in lots if how_told(lot, kitchen.today) == "none" and not lot.always]
    kinds = [f"{kitchen.name_of(lot.food)} ({', '.join(told_once(one.assumed))})" for one, lot in lots if one.assumed]
    told = [f"a usual pack of {_some(unsaid)}"] if unsaid else []
    return "; ".join([*told, *([_some(kinds)] if kinds else [])])


def _with_reading(reading: Reading) -> list[tuple[Reading | Lot, Lot]]:
    return [(lot if len(reading.lots) > 1 else reading, lot) for lot in reading.lots]


def _some(names: Sequence[str]) -> str:
    names = list(dict.fromkeys(names))
    more = [f"{len(names) - _MOST_NAMED} more"] if len(names) > _MOST_NAMED else []
    return ", ".join([*names[:_MOST_NAMED], *more])


def lot_words(lot: Lot, kitchen: Household) -> str:
    """What there is of it, where, for how long, and whose."""
    span = f"{lot.grams:g} g" if lot.grams_low == lot.grams_high else about_span(lot.grams_low, lot.grams_high)
    left = f", {_left(lot)} ({lot.days_from})" if lot.days_left is not None and not lot.to_bin else ""
    to_bin = f", {lot.condition}: put it in the bin" if lot.to_bin else ""
    avoided = _left_out(lot, kitchen, kitchen.settled().avoid)
    left_out = f", {avoided}" if avoided else ""
    owner = f", of {lot.owner}{'' if lot.owner_agrees else ': ask first'}" if lot.owner else ""
    return f"{kitchen.name_of(lot.food)}, {span}, {lot.place}{left}{left_out}{owner}{to_bin}"


def _left_out(lot: Lot, kitchen: Household, avoid: Sequence[Allergen]) -> str:
    """What it holds, or may hold, of what is left out at home; empty where it holds nothing of it."""
    held = dict.fromkeys(allergens_met(kitchen.tables.food_by_id[lot.food], avoid))
    held |= dict.fromkeys(one for one in avoid if one in lot.label_allergens)
    return f"has {' and '.join(map(allergen_words, held))}: left out" if held else ""


def _left(lot: Lot) -> str:
    if lot.days_left is not None and lot.days_left > 0:
        return f"{days_words(lot)} left"
    return "past its day" if lot.days_left is not None and lot.days_left < 0 else "its last day"
