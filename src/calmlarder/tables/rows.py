"""One frozen model for a row of each table. Figures are per 100 g of the food as in its state."""

from collections.abc import Mapping
from decimal import Decimal
from functools import cached_property
from types import MappingProxyType
from typing import Annotated, ClassVar, Literal

from pydantic import BeforeValidator, ConfigDict, Field, ValidationInfo, field_validator, model_validator

from calmlarder.tables.cells import (
    MOST_GRAMS,
    Figure,
    FoodId,
    Grams,
    PerHundred,
    Places,
    Row,
    cell_list,
    cell_or_none,
    cell_weights,
)
from calmlarder.tables.vocabulary import (
    FAMILIES,
    Allergen,
    Basis,
    Component,
    CutoffClass,
    Diet,
    Family,
    Kind,
    Method,
    Role,
    State,
)


class Food(Row):
    """A food in a state. Nutrients per 100 g; `portion_g` is one person's usual amount in a main dish."""

    id: FoodId
    name: Annotated[str, Field(min_length=2)]
    state: State
    roles: Annotated[tuple[Role, ...], BeforeValidator(cell_list), Field(min_length=1)]
    diet: Diet
    allergens: Annotated[tuple[Allergen, ...], BeforeValidator(cell_list)]
    energy_kcal: Figure
    protein_g: Figure
    lysine_mg: Figure
    fibre_g: Figure
    calcium_mg: Figure
    iron_mg: Figure
    nutrient_source: str
    nutrient_code: str
    portion_g: Grams
    cutoff_class: CutoffClass
    kind: Kind
    gluten: Literal["yes", "no", "may"]
    staple: Literal["yes", "no"]
    flavours: Annotated[
        dict[Family, Annotated[int, Field(ge=1, le=3)]], BeforeValidator(cell_weights), Field(min_length=1)
    ]
    minutes: Annotated[dict[Method, Annotated[int, Field(ge=0, le=1_440)]], BeforeValidator(cell_weights)]
    prep: str
    note: str

    @property
    def is_staple(self) -> bool:
        """A store-cupboard thing that is spooned by eye and has no urgency."""
        return self.staple == "yes"

    def prep_for(self, method: Method) -> str:
        """How it is cut or made ready for a way of cooking: `in strips; roast: whole` has words for one of them."""
        usual, *others = (part.strip() for part in self.prep.split(";"))
        for part in others:
            way, colon, words = part.partition(":")
            if colon and way.strip() == method:
                return words.strip()
        return usual

    def fit(self, family: Family) -> int:
        """Weight 0 to 3 of this food in a flavour family; 0 means it does not belong there."""
        return max(self.flavours.get(family, 0), self.flavours.get("any", 0))

    @cached_property
    def fits(self) -> Mapping[Family, int]:
        """Its weight in every flavour family."""
        return {family: self.fit(family) for family in FAMILIES}

    @cached_property
    def of_a_portion(self) -> tuple[Decimal | None, ...]:
        """Energy, protein and fibre of a hundred usual portions; None for what is unknown."""
        return tuple(
            None if each is None else each * self.portion_g for each in (self.energy_kcal, self.protein_g, self.fibre_g)
        )


# How far the true figure may lie above the typical one, as a share of it, by what it rests on. Ours; no source.
COMPOSITION_SHARE: Mapping[Basis, Decimal] = MappingProxyType(
    {
        "analysed": Decimal("0.30"),
        "published": Decimal("0.30"),
        "summed": Decimal("0.30"),  # of measured parts
        "borrowed": Decimal("0.50"),
        "recalled": Decimal("0.50"),
        "assumed": Decimal("0.50"),
    }
)


class Fermentable(Row):
    """Grams of one component in 100 g of a food, with where the figure comes from.

    `high` is the upper end where the literature gives a range. Tables written before there was one lack the column.
    """

    food: FoodId
    component: Component
    g_per_100g: PerHundred
    high: Annotated[PerHundred | None, BeforeValidator(cell_or_none)] = None
    basis: Basis
    source: Annotated[str, Field(min_length=1)]
    code: str
    note: str

    @field_validator("high")
    @classmethod
    def _not_below(cls, high: Decimal | None, others: ValidationInfo) -> Decimal | None:
        value = others.data.get("g_per_100g")
        if high is not None and value is not None and high < value:
            raise ValueError("the high end must not be below g_per_100g")
        return high

    @property
    def error_g(self) -> Decimal:
        """Grams in 100 g by which the true figure may lie above the typical one.

        The larger of what is left to the high end and of the share by its basis; of nothing found half the high end.
        """
        if self.g_per_100g == 0:
            return (self.high or Decimal(0)) / 2
        to_high = Decimal(0) if self.high is None else self.high - self.g_per_100g
        return max(to_high, self.g_per_100g * COMPOSITION_SHARE[self.basis])


WATER = "water"  # part of a mixture that counts in its weight alone; it is no food of the tables
OWN_RECIPE = "own_recipe"  # the source of what the cook put in


class MixtureRow(Row):
    """Grams of a part in a mixture: another food, which may be a mixture itself, or water.

    Less than no water is what boils away.
    """

    food: FoodId
    part: FoodId
    grams: Annotated[Decimal, Field(ge=-MOST_GRAMS, le=MOST_GRAMS), Places]
    source: Annotated[str, Field(min_length=1)]
    note: str

    @model_validator(mode="after")
    def _of_something(self) -> "MixtureRow":
        if self.grams == 0 or (self.grams < 0 and self.part != WATER):
            raise ValueError("grams must be above zero; only water may boil away")
        return self


class Name(Row):
    """Another name of a food. One name may stand for several foods; then the program asks.

    Unless one of its rows has a `default`: it is taken then, and the words there say what was assumed. Where several
    rows of a name have one, the name stands for all of them together (a spring onion: whites and greens).
    """

    name: Annotated[str, Field(min_length=2)]
    food: FoodId
    default: str = ""


class Renamed(Row):
    """An id that a food had in earlier tables, and the one it has now; what was kept under the old one is still it."""

    was: FoodId
    now: FoodId


class AmericanName(Row):
    """A British word of a shown text, in small letters, and the American one for it."""

    british: Annotated[str, Field(min_length=2)]
    american: Annotated[str, Field(min_length=2)]


class Measure(Row):
    """Grams of a kitchen measure of a food; `food` is an id, `kind:<kind>` or `*` for all."""

    food: str
    measure: Annotated[str, Field(min_length=2)]
    grams: Grams
    low: Grams
    high: Grams
    source: Annotated[str, Field(min_length=1)]
    code: str
    note: str

    @model_validator(mode="after")
    def _in_order(self) -> "Measure":
        if not self.low <= self.grams <= self.high:
            raise ValueError("grams must lie between low and high")
        return self


class Keeping(Row):
    """Days a food keeps at a place in a state; `food` is an id or `kind:<kind>`.

    `how_or_why` says in the freezer how it goes in, elsewhere why it keeps no longer.
    """

    called_before: ClassVar[Mapping[str, str]] = {"note": "how_or_why"}

    food: str
    place: Literal["fridge", "freezer", "cupboard"]
    state: Literal["whole", "opened", "cooked"]
    days: Annotated[int, Field(ge=0, le=36_500)]
    kind: Literal["safety", "quality"]
    source: Annotated[str, Field(min_length=1)]
    how_or_why: str


class Swap(Row):
    """Grams of `to` that do the work of one gram of `from_food`; rows of one `part_of` are one swap of several parts.

    `when` is any, cooked or raw, and may say after a colon when it goes in.
    """

    model_config = ConfigDict(populate_by_name=True)

    from_food: Annotated[FoodId, Field(alias="from")]
    to: FoodId
    part_of: Annotated[str, Field(max_length=40)]
    ratio: Annotated[Decimal, Field(gt=0, le=50), Places]
    when: Annotated[str, Field(pattern=r"^(any|cooked|raw)(: \S.*)?$")]
    keeps: str
    loses: str
    caution: str
    source: Annotated[str, Field(min_length=1)]

    @model_validator(mode="after")
    def _says_what_it_does(self) -> "Swap":
        if not self.part_of and not (self.keeps and self.loses):
            raise ValueError("a swap of one part must say what it keeps and what it loses")
        return self


class Caution(Row):
    """What to mind with a food: the sign by which it is cooked through, and a note that is shown with the dish.

    `applies_to` is a food's id or `kind:<kind>`; `states` those it holds for, empty for all.
    """

    called_before: ClassVar[Mapping[str, str]] = {"until": "done_when"}

    applies_to: Annotated[str, Field(min_length=3)]
    states: Annotated[tuple[State, ...], BeforeValidator(cell_list)]
    done_when: str
    caution: str
    source: Annotated[str, Field(min_length=1)]

    @model_validator(mode="after")
    def _says_something(self) -> "Caution":
        if not (self.done_when or self.caution):
            raise ValueError("says neither when it is done nor what to mind")
        return self

    def holds(self, food: Food) -> bool:
        """Whether it is about this food in its state."""
        return self.applies_to in (food.id, f"kind:{food.kind}") and (not self.states or food.state in self.states)


class Source(Row):
    """Where figures come from: full citation, licence, and how it was seen."""

    key: Annotated[str, Field(min_length=1)]
    citation: Annotated[str, Field(min_length=5)]
    licence: str
    seen_as: Annotated[str, Field(min_length=1)]
