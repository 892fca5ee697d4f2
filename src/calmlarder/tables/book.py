"""The ingredient tables as one book to look things up in."""

import re
from collections.abc import Mapping, Sequence
from functools import cached_property
from types import MappingProxyType

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.late_rows import LateRows, RowBy, RowsBy, cells_of
from calmlarder.tables.made_from_rows import Conversion, MadeFrom
from calmlarder.tables.mixture import Mixture
from calmlarder.tables.rows import (
    AmericanName,
    Caution,
    Fermentable,
    Food,
    Keeping,
    Measure,
    MixtureRow,
    Name,
    Renamed,
    Source,
    Swap,
)
from calmlarder.tables.step_rows import StandInStep
from calmlarder.tables.sums import FiguresBy, Sums
from calmlarder.tables.tongue_rows import NameElsewhere, WordElsewhere
from calmlarder.tables.vocabulary import COMPONENTS, Component

_YEAR = re.compile(r"\b(?:19|20)\d\d\b")


class Tables(BaseModel):
    """All rows, in file order, and the lookups the rest of the program needs.

    `parts` are the rows of mixtures.csv; `mixtures` tells the parts of those foods that are dishes put into boxes.
    """

    model_config = ConfigDict(frozen=True, ignored_types=(cached_property,), defer_build=True)

    foods: Sequence[Food]
    fermentables: Sequence[Fermentable]
    names: Sequence[Name]
    measures: Sequence[Measure]
    keeping: Sequence[Keeping]
    conversions: Sequence[Conversion]
    swaps: Sequence[Swap]
    caps: Sequence[Cap]
    sources: Sequence[Source]
    renamed: Sequence[Renamed] = ()
    american_names: tuple[AmericanName, ...] = ()
    cautions: Sequence[Caution] = ()
    parts: Sequence[MixtureRow] = ()
    made_from: Sequence[MadeFrom] = ()
    steps: Sequence[StandInStep] = ()
    names_elsewhere: Sequence[NameElsewhere] = ()
    words_elsewhere: Sequence[WordElsewhere] = ()
    mixtures: Mapping[str, Mixture] = Field(default_factory=dict)

    @cached_property
    def food_by_id(self) -> Mapping[str, Food]:
        """Foods by id."""
        if isinstance(self.foods, LateRows):
            return RowBy(self.foods, "id")
        return MappingProxyType({food.id: food for food in self.foods})

    @cached_property
    def _now_by_old_id(self) -> Mapping[str, str]:
        return MappingProxyType({row.was: row.now for row in self.renamed})

    def id_now(self, food_id: str) -> str:
        """The id of today of a food that may be kept under an earlier one."""
        return food_id if food_id in self.food_by_id else self._now_by_old_id.get(food_id, food_id)

    @cached_property
    def _names_by_food(self) -> dict[str, tuple[str, ...]]:
        first: dict[str, str] = {}
        told = [*cells_of(self.names, "name", "food")]
        of_several = {name for name, food in told if first.setdefault(name, food) != food}
        names: dict[str, list[str]] = {}
        for name, food in told:
            if name not in of_several:
                names.setdefault(food, []).append(name)
        return {food: tuple(found) for food, found in names.items()}

    def names_of(self, food_id: str) -> tuple[str, ...]:
        """Other names that stand for this food alone, in file order."""
        return self._names_by_food.get(food_id, ())

    def fermentables_of(self, food_id: str) -> Mapping[Component, Fermentable]:
        """The known components of a food; a component that is missing is unknown, not zero.

        Of a mixture, what no row tells is the sum of its parts.
        """
        return self._sums.figures_of(food_id)

    @cached_property
    def _sums(self) -> Sums:
        return Sums(self.parts, FiguresBy(RowsBy(self.fermentables, "food")))

    def composite_of(self, food_id: str) -> Mixture | None:
        """The single foods in a mixture that is nothing but the sum of its parts; each counts in its own class."""
        return self._sums.composite_of(food_id)

    def unknown_of(self, food_id: str) -> tuple[Component, ...]:
        """Components of a food that no row tells."""
        told = self._unknown.get(food_id)
        if told is None:
            known = self.fermentables_of(food_id)
            told = self._unknown[food_id] = tuple(one for one in COMPONENTS if one not in known)
        return told

    @cached_property
    def _unknown(self) -> dict[str, tuple[Component, ...]]:
        return {}  # asked of each food for each pattern: worked out once

    def measure(self, food: Food, measure: str) -> Measure | None:
        """Grams of a kitchen measure of a food: its own row, else its kind's, else the general one."""
        rows = (row for key in (food.id, f"kind:{food.kind}", "*") for row in self._measures_by_food.get(key, ()))
        return next((row for row in rows if row.measure == measure), None)

    @cached_property
    def _measures_by_food(self) -> Mapping[str, tuple[Measure, ...]]:
        return RowsBy(self.measures, "food")

    def own_measures(self, food: Food) -> tuple[Measure, ...]:
        """The measures listed for this very food."""
        return self._measures_by_food.get(food.id, ())

    @cached_property
    def _keeping_by_food(self) -> Mapping[str, tuple[Keeping, ...]]:
        return RowsBy(self.keeping, "food")

    def keeping_of(self, food: Food, place: str, state: str) -> Keeping | None:
        """How long a food keeps at a place in a state: its own row, else its kind's."""
        rows = (row for key in (food.id, f"kind:{food.kind}") for row in self._keeping_by_food.get(key, ()))
        return next((row for row in rows if (row.place, row.state) == (place, state)), None)

    def cautions_of(self, food: Food) -> tuple[Caution, ...]:
        """What to mind with a food: rows of its own before those of its kind."""
        asked = (*self._cautions_by.get(food.id, ()), *self._cautions_by.get(f"kind:{food.kind}", ()))
        return tuple(row for row in asked if row.holds(food))

    @cached_property
    def _cautions_by(self) -> Mapping[str, tuple[Caution, ...]]:
        return RowsBy(self.cautions, "applies_to")

    def done_sign(self, food: Food) -> str:
        """How a cook sees that a food is cooked through; empty where nothing asks for it."""
        return next((row.done_when for row in self.cautions_of(food) if row.done_when), "")

    def authority(self, source: str) -> str:
        """Who says so: what stands before the first comma of a citation."""
        cited = next((row.citation for row in self.sources if row.key == source), source)
        return cited.split(",")[0]

    def author_and_year(self, source: str) -> str:
        """A source in running text (`Varney J et al 2017`); what is no key of sources.csv stays as it is."""
        cited = next((row.citation for row in self.sources if row.key == source), None)
        if cited is None:
            return source
        years = _YEAR.findall(cited)
        who = cited.split(". ")[0].split(",")[0]
        return f"{who} {years[0]}" if years and years[0] not in who else who

    def swaps_of(self, food_id: str) -> tuple[Swap, ...]:
        """Rows that say what can stand in for a food, in file order."""
        return self._swaps_by_food.get(food_id, ())

    def step_of(self, food: Food, to: Food, work: str) -> StandInStep | None:
        """How a step that does this work to a food is done with what takes its place; a row of the food goes first."""
        for before in (food.id, f"kind:{food.kind}"):
            for after in (to.id, f"kind:{to.kind}"):
                if (found := self._steps_by.get((before, after, work))) is not None:
                    return found
        return None

    @cached_property
    def _steps_by(self) -> Mapping[tuple[str, str, str], StandInStep]:
        return MappingProxyType({(row.from_food, row.to, row.work): row for row in self.steps})

    @cached_property
    def _swaps_by_food(self) -> Mapping[str, tuple[Swap, ...]]:
        return RowsBy(self.swaps, "from_food")

    @cached_property
    def profiles(self) -> tuple[str, ...]:
        """Names of the cap profiles."""
        return tuple(dict.fromkeys(cap.profile for cap in self.caps))
