"""Beside the larder's list on a wide screen: the item under the bar, in all its words."""

from typing import TYPE_CHECKING

from calmlarder.household.household import Household
from calmlarder.larder.freezing import for_the_freezer
from calmlarder.tui.larder_view import lot_words
from calmlarder.tui.widgets.beside import Beside

if TYPE_CHECKING:
    from calmlarder.larder.lot import Lot
    from calmlarder.larder.to_answer import ToAnswer


class LotAbout(Beside):
    """Of a lot, or of what a line is asked."""

    def tell_of(self, lot: "Lot | None", asked: "ToAnswer | None", kitchen: Household) -> None:
        """Of nothing where the bar is on none."""
        self.tell(
            lambda: about_words(lot, kitchen) if lot is not None else question_words(asked) if asked is not None else ""
        )


def question_words(asked: "ToAnswer") -> str:
    """What is asked of a line, with all that may answer it."""
    choices = [f"  {one}" for one in asked.choices]
    how = "Enter in the list chooses, or takes the name of another food; F4 edits the line, Del takes it out."
    return "\n".join([asked.text, "", asked.question.capitalize(), *choices, "", how])


def about_words(lot: "Lot", kitchen: Household) -> str:
    """What was typed and how it was taken, how it is cooked, how long it keeps and how it is frozen."""
    from calmlarder.render.food_text import keeping_lines

    tables, manner = kitchen.tables, kitchen.manner
    food = tables.food_by_id[lot.food]
    ways = ", ".join(f"{way} {minutes} min" if minutes else way for way, minutes in food.minutes.items())
    portion = manner.amount(round(food.portion_g))
    allergens = dict.fromkeys((*food.allergens, *lot.label_allergens))
    parts = [
        kitchen.name_of(food.id),
        f"  typed: {lot.line}",
        f"  taken as: {lot_words(lot, kitchen)}",
        "",
        "In a dinner",
        f"  a usual portion: {portion}",
        f"  ways: {ways or 'none that is done tonight'}",
        f"  allergens: {', '.join(allergens) or 'none of the 14'}; gluten: {food.gluten}",
    ]
    here = (f"  {lot.place}", "  freezer")
    keeps = [line for line in keeping_lines(food, tables) if line.startswith(here)]
    parts += ["", "How long it keeps", *keeps] if keeps else []
    to_freeze = for_the_freezer(lot, tables) if kitchen.to_freeze(lot) else None
    parts += ["", "How it is frozen", f"  {to_freeze.how}"] if to_freeze is not None else []
    told = [line if line.startswith("  typed: ") else manner.told(line) for line in parts]
    return "\n".join([*told, "", "F9 tells where the figures of it come from."])
