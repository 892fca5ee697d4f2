"""The larder's items as its list shows them."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from calmlarder.household.household import Household
from calmlarder.larder.groups import GROUPS, days_words, group_of
from calmlarder.larder.to_answer import ToAnswer
from calmlarder.tui.widgets.item_list import Item, ItemGroup

if TYPE_CHECKING:
    from calmlarder.household.kept_lots import KeptLot

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
    notes = [f"{lot.owner}'s" if lot.owner else "", lot.condition or ""]
    notes += ["freeze or eat"] if kitchen.to_freeze(lot) else []
    notes += [f"{', '.join(lot.assumed)}, assumed"] if lot.assumed else []
    grams = f"{lot.grams:.0f}" if lot.grams >= _WHOLE_G else f"{lot.grams:g}"
    words, place = tuple(filter(None, notes)), lot.place if lot.place == "cupboard" else ""
    return Item(str(one.id), kitchen.name_of(lot.food), grams, days_words(lot), words, beside=place)
