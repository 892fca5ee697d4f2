"""What somebody tolerates of one component at one sitting."""

import re
from datetime import date
from typing import Annotated, Literal, get_args

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.tables.vocabulary import CutoffClass

OwnComponent = Literal["fructans", "gos", "lactose", "excess_fructose", "sorbitol", "mannitol"]
OWN_COMPONENTS: tuple[OwnComponent, ...] = get_args(OwnComponent)
MOST_OWN_G = 50.0  # beyond it is a slip of the pen: ours


class OwnLimit(BaseModel):
    """G of a component at one sitting that one person tolerates, since when, and who says so.

    `classes` are the cut-off classes of the foods it was found with, empty for all. `calm_days` of `days` at the dose
    say how sure it is, where challenges say it; `risk` is the share of days, 0 to 1, with a reaction to it.
    """

    model_config = ConfigDict(frozen=True)

    component: OwnComponent
    grams: Annotated[float, Field(gt=0, le=MOST_OWN_G)]
    on: date
    said_by: Annotated[str, Field(min_length=1, max_length=60)]
    source: str = ""  # the challenge it comes from: `wheat`, `gos`
    classes: tuple[CutoffClass, ...] = ()
    risk: float | None = None


_LINE = re.compile(r"(?P<name>[a-z_ -]+?)[\s:=]+(?P<grams>\d{1,3}(?:[.,]\d{1,3})?)\s*g?", re.IGNORECASE)


def component_named(text: str) -> OwnComponent | None:
    """The component of that name: `excess fructose`, `GOS`."""
    name = text.strip().lower().replace(" ", "_").replace("-", "_")
    return next((component for component in OWN_COMPONENTS if component == name), None)


def own_limit_of(text: str, said_by: str, on: date) -> OwnLimit | None:
    """What a line such as `gos 1.0` says, by whom, since a day; None where it says no limit that can be."""
    found, who = _LINE.fullmatch(text.strip()), " ".join(said_by.split())[:60]
    component = component_named(found["name"]) if found else None
    grams = float(found["grams"].replace(",", ".")) if found else 0.0
    if component is None or not who or not 0 < grams <= MOST_OWN_G:
        return None
    return OwnLimit(component=component, grams=grams, on=on, said_by=who)
