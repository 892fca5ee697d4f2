"""Beside the larder's list on a wide screen: the item under the bar, in all its words."""

from typing import TYPE_CHECKING

from textual.containers import VerticalScroll

from calmlarder.household.household import Household
from calmlarder.larder.freezing import for_the_freezer
from calmlarder.tui.larder_view import lot_words
from calmlarder.tui.widgets.hanging import Hanging

if TYPE_CHECKING:
    from textual.app import ComposeResult

    from calmlarder.larder.lot import Lot

_FROM_COLUMNS = 140  # of the screen: the list itself needs the half of them


class LotAbout(VerticalScroll, can_focus=False):
    """Nothing is worked out for it where it is not shown."""

    def __init__(self) -> None:
        super().__init__(id="lot-about")

    def compose(self) -> "ComposeResult":
        """The words."""
        yield Hanging(is_titled=True)

    def tell(self, lot: "Lot | None", kitchen: Household) -> None:
        """Of this lot; of nothing where the bar is on none."""
        self.display = self.app.size.width >= _FROM_COLUMNS
        if self.display:
            self.query_one(Hanging).update(about_words(lot, kitchen) if lot is not None else "")


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
    keeps = list(keeping_lines(food, tables))
    parts += ["", "How long it keeps", *keeps] if keeps else []
    to_freeze = for_the_freezer(lot, tables) if kitchen.to_freeze(lot) else None
    parts += ["", "How it is frozen", f"  {to_freeze.how}"] if to_freeze is not None else []
    return "\n".join([*parts, "", "F9 tells where the figures of it come from."])
