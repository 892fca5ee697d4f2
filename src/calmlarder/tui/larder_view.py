"""The larder's items as its list shows them, and a line in words as it is typed."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from calmlarder.household.household import Household
from calmlarder.larder.order import GROUPS, days_words, group_of
from calmlarder.larder.to_answer import ToAnswer
from calmlarder.tui.widgets.item_list import Item, ItemGroup

if TYPE_CHECKING:
    from calmlarder.household.kept_lots import KeptLot


from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import Reading
from calmlarder.render.about import about_span

TO_ANSWER = "To answer"
_WHOLE_G = 10  # from here on nobody weighs parts of a gram


def groups_of(shown: "Sequence[KeptLot]", asked: Sequence[ToAnswer], kitchen: Household) -> list[ItemGroup]:
    """What stands under each heading: what is to be answered, then what goes first before what keeps."""
    questions = tuple(Item(str(one.id), one.text, "", "", question=_question(one)) for one in asked)
    return [
        ItemGroup(TO_ANSWER, questions),
        *(
            ItemGroup(group.capitalize(), tuple(_item(one, kitchen) for one in shown if group_of(one.lot) == group))
            for group in GROUPS
        ),
    ]


def _question(one: ToAnswer) -> str:
    return f"{one.question} {', '.join(one.choices)}".strip()


def _item(one: "KeptLot", kitchen: Household) -> Item:
    lot = one.lot
    # What is to be done stands first: the end is cut where the screen is narrow.
    notes = [f"{lot.owner}'s" if lot.owner else "", lot.condition or "" if lot.place != "freezer" else ""]
    notes += ["freeze or eat"] if kitchen.to_freeze(lot) else []
    notes += [f"{', '.join(lot.assumed)}, assumed"] if lot.assumed else []
    notes += [kitchen.manner.beside(lot.grams)]
    grams = f"{lot.grams:.0f}" if lot.grams >= _WHOLE_G else f"{lot.grams:g}"
    words, place = tuple(filter(None, notes)), lot.place if lot.place == "cupboard" else ""
    return Item(str(one.id), kitchen.name_of(lot.food), grams, days_words(lot), words, beside=place)


def meaning(reading: Reading, kitchen: Household) -> str:
    """What a line that was read says, or what to write instead."""
    if reading.problem is not None:
        return f"{reading.problem.what}; {reading.problem.remedy}"
    asked = reading.to_answer
    assumed = f" ({', '.join(reading.assumed)}: assumed)" if reading.assumed else ""
    lots = "; ".join(_lot_meaning(lot, kitchen) for lot in reading.lots or reading.standing) + assumed
    if asked is None:
        return lots
    question = f"{asked.question} {', '.join(asked.choices[:4])}".strip()
    return f"{question}; the rest stands: {lots}" if reading.standing else question


def _lot_meaning(lot: Lot, kitchen: Household) -> str:
    span = f"{lot.grams:g} g" if lot.grams_low == lot.grams_high else about_span(lot.grams_low, lot.grams_high)
    left = f", {_left(lot)} ({lot.days_from})" if lot.days_left is not None and not lot.to_bin else ""
    to_bin = f", {lot.condition}: put it in the bin" if lot.to_bin else ""
    owner = f", of {lot.owner}{'' if lot.owner_agrees else ': ask first'}" if lot.owner else ""
    return f"{kitchen.name_of(lot.food)}, {span}, {lot.place}{left}{owner}{to_bin}"


def _left(lot: Lot) -> str:
    if lot.days_left is not None and lot.days_left > 0:
        return f"{days_words(lot)} left"
    return "past its day" if lot.days_left is not None and lot.days_left < 0 else "its last day"
