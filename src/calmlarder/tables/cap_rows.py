"""The rows of caps.csv: how much of a group one food, a sitting or a day may bring."""

import contextlib
from collections.abc import Sequence
from decimal import Decimal, InvalidOperation
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from calmlarder.tables.cells import Places, Row, cell_list, cell_or_none
from calmlarder.tables.vocabulary import CutoffClass, Group, Sitting

FACTOR_OF_OLD_CAPS = Decimal("1.6")  # what may come at most, where a row of before says only what was planned


class Cap(Row):
    """A limit: grams of a fermentable group for one person, from one food, at a sitting, or in a day.

    `typical_g` holds for what is likely, `at_most_g` (empty: nothing) for what may come at most. `sittings` holds
    kinds of sitting and `applies_to` cut-off classes, each empty for all.
    """

    profile: Annotated[str, Field(min_length=1)]
    scope: Literal["food", "sitting", "day"]
    group: Group
    sittings: Annotated[tuple[Sitting, ...], BeforeValidator(cell_list)] = ()
    applies_to: Annotated[tuple[CutoffClass, ...], BeforeValidator(cell_list)]
    typical_g: Annotated[Decimal, Field(gt=0, le=1_000), Places]
    at_most_g: Annotated[Annotated[Decimal, Field(gt=0, le=1_000)] | None, BeforeValidator(cell_or_none)] = None
    source: Annotated[str, Field(min_length=1)]

    @classmethod
    def columns_of_before(cls, header: Sequence[str]) -> list[str] | None:
        """With `grams` and `holds`, for all sittings."""
        before = ["profile", "scope", "group", "grams", "applies_to", "holds", "source"]
        return before if "grams" in header or "holds" in header else None

    @model_validator(mode="before")
    @classmethod
    def _of_before(cls, cells: Any) -> Any:
        """A row with the columns of before: `grams`, held in the worst case or as planned."""
        if not isinstance(cells, dict) or "grams" not in cells:
            return cells
        new = {name: cell for name, cell in cells.items() if name not in {"grams", "holds"}}
        new["typical_g"] = new["at_most_g"] = cells["grams"]
        if cells.get("holds") == "plan":
            with contextlib.suppress(InvalidOperation):  # which is said of typical_g
                new["at_most_g"] = Decimal(str(cells["grams"]).strip()) * FACTOR_OF_OLD_CAPS
        elif cells.get("holds") != "worst":
            raise ValueError("holds is worst or plan")
        return new

    @model_validator(mode="after")
    def _in_order(self) -> "Cap":
        if self.at_most_g is not None and self.at_most_g < self.typical_g:
            raise ValueError("at_most_g must not be below typical_g")
        return self

    @property
    def key(self) -> str:
        """`group`, or `group:classes` where the limit is for some classes only."""
        return f"{self.group}:{';'.join(self.applies_to)}" if self.applies_to else self.group

    def covers(self, cutoff_class: CutoffClass) -> bool:
        """Whether foods of this class count under this limit."""
        return not self.applies_to or cutoff_class in self.applies_to

    def holds_at(self, sitting: Sitting) -> bool:
        """Whether it is a limit of such a sitting."""
        return not self.sittings or sitting in self.sittings
