"""What was left of a dinner, in a box: a lot with a composition of its own."""

import re
import zlib
from collections.abc import Iterable
from decimal import ROUND_DOWN, Decimal
from typing import TYPE_CHECKING, Annotated

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.tables.book import Tables
from calmlarder.tables.leftovers import days_as_leftover
from calmlarder.tables.mine import Called, Part, made_food
from calmlarder.tables.mixture import Mixture
from calmlarder.tables.rows import Fermentable, Food, Keeping

if TYPE_CHECKING:
    from calmlarder.larder.lot import Lot

# A cold box is warmed through in a pan in about so many minutes: common practice, no source.
_WARMED_MINUTES = 6
_BOXED = "boxed-"  # how the id of a boxed dish begins; no food of the tables is called so
_FREEZER_DAYS = 90  # common practice, no source


class Box(BaseModel):
    """A dish in boxes of one share each.

    `keeps_days` is in the fridge, by the food-safety figures of its parts and the pattern; 0 means tonight only.
    `heated` says that something in it was cooked on an earlier day: it has been warmed once and may not be again.
    `cold` says that it can be eaten as it is, without warming.
    """

    model_config = ConfigDict(frozen=True)

    title: Annotated[str, Field(min_length=2)]
    mixture: Mixture
    keeps_days: Annotated[int, Field(ge=0, le=7)]
    keeps_why: str
    freezes: bool
    heated: bool
    cold: bool

    @property
    def food_id(self) -> str:
        """The id it has among the foods, from its title and its parts."""
        content = self.model_dump_json(exclude_defaults=True)  # as it was before there were such fields
        slug = re.sub(r"[^a-z0-9]+", "-", self.title.casefold()).strip("-")[:40].strip("-")
        return f"{_BOXED}{slug or 'dish'}-{zlib.crc32(content.encode()) % 1_000_000}"


def is_box(food_id: str) -> bool:
    """Whether a food is a boxed dish, by its id: that of a box long eaten too."""
    return food_id.startswith(_BOXED)


def with_boxes(tables: Tables, boxes: Iterable[Box]) -> Tables:
    """The tables, and each boxed dish as a food of them. Parts that are no longer in the tables raise KeyError."""
    new = {box.food_id: box for box in boxes if box.food_id not in tables.food_by_id}
    if not new:
        return tables
    made = [_as_food(box, tables) for box in new.values()]
    return Tables.model_construct(
        **{**dict(tables), "foods": (*tables.foods, *(food for food, _, _ in made))}
        | {"fermentables": (*tables.fermentables, *(row for _, rows, _ in made for row in rows))}
        | {"keeping": (*tables.keeping, *(row for _, _, rows in made for row in rows))}
        | {"mixtures": {**tables.mixtures, **{food_id: box.mixture for food_id, box in new.items()}}}
    )


def boxes_of(lots: Iterable["Lot"]) -> list[Box]:
    """The boxes among lots."""
    return [lot.box for lot in lots if lot.box is not None]


def box_named(text: str, lots: "Iterable[Lot]", tables: Tables) -> Food | None:
    """The one boxed dish of the larder that `boxed rice bowl` means: every word is in its name."""
    words = re.findall(r"\w+", text.casefold())
    if not {"box", "boxed"}.intersection(words):
        return None
    sought = set(words) - {"box", "boxed", "of", "the", "a"}
    foods = {box.food_id: tables.food_by_id[box.food_id] for box in boxes_of(lots)}
    found = [food for food in foods.values() if sought <= set(re.findall(r"\w+", food.name))]
    return found[0] if len(found) == 1 else None


def readable(box: Box, tables: Tables) -> bool:
    """Whether the tables still know everything in it."""
    return all(part.food in tables.food_by_id for part in box.mixture.parts)


def _as_food(box: Box, tables: Tables) -> tuple[Food, tuple[Fermentable, ...], list[Keeping]]:
    mixture = box.mixture
    parts = [Part(tables.food_by_id[part.food], Decimal(part.grams)) for part in mixture.parts]
    whole = Decimal(mixture.shares * mixture.share_grams)
    made = made_food(Called(box.food_id, "boxed", "base"), parts, whole, tables)
    # What is known of it, so that one pinch of something unknown does not take the whole for nothing.
    energy = sum((part.grams * (part.food.energy_kcal or 0) for part in parts), Decimal(0)) / whole
    protein = sum((part.grams * (part.food.protein_g or 0) for part in parts), Decimal(0)) / whole
    lysine = sum((part.grams * (part.food.lysine_mg or 0) for part in parts), Decimal(0)) / whole
    fibre = sum((part.grams * (part.food.fibre_g or 0) for part in parts), Decimal(0)) / whole
    food = made.food.model_copy(
        update={
            "id": box.food_id,
            "name": f"{box.title[:1].lower()}{box.title[1:]} (boxed)",
            "state": "cooked",
            "portion_g": Decimal(mixture.share_grams),
            "energy_kcal": energy.quantize(Decimal("0.01"), rounding=ROUND_DOWN),
            # Rounded down: a floor that is met by the rounded figure is met.
            "protein_g": protein.quantize(Decimal("0.001"), rounding=ROUND_DOWN),
            "lysine_mg": lysine.quantize(Decimal("0.1"), rounding=ROUND_DOWN),
            "fibre_g": fibre.quantize(Decimal("0.001"), rounding=ROUND_DOWN),
            "flavours": {"any": 1},
            "minutes": {**({"raw": 0} if box.cold else {}), **({} if box.heated else {"stir-fry": _WARMED_MINUTES})},
        }
    )
    rows = tuple(row.model_copy(update={"food": box.food_id}) for row in made.fermentables)
    return food, rows, _keeping(box, min([box.keeps_days, *(leftover_days(part.food, tables) for part in parts)]))


def leftover_days(food: Food, tables: Tables) -> int:
    """Days in the fridge of a food that was cooked, as leftovers at the most.

    Oil, spices, vinegar, nuts have no such days: in a dish they keep as they do once they are open.
    """
    states = (("fridge", "cooked"), ("fridge", "opened"), ("cupboard", "opened"))
    row = next((row for place, state in states if (row := tables.keeping_of(food, place, state))), None)
    return days_as_leftover([row])


def _keeping(box: Box, days: int) -> list[Keeping]:
    fridge = Keeping(
        food=box.food_id, place="fridge", state="cooked", days=days, kind="safety",
        source="fsa_uk", how_or_why=box.keeps_why,
    )  # fmt: skip
    if not box.freezes:
        return [fridge]
    freezer = Keeping(
        food=box.food_id, place="freezer", state="cooked", days=_FREEZER_DAYS, kind="quality",
        source="common_practice", how_or_why="cooled fast, a portion to a box",
    )  # fmt: skip
    return [fridge, freezer]
