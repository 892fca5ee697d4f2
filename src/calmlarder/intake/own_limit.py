"""What somebody tolerates of one component at one sitting."""

import re
from collections.abc import Mapping
from datetime import date
from types import MappingProxyType
from typing import Annotated, Literal, get_args

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.tables.vocabulary import CutoffClass

OwnComponent = Literal["fructans", "gos", "lactose", "excess_fructose", "sorbitol", "mannitol"]
OWN_COMPONENTS: tuple[OwnComponent, ...] = get_args(OwnComponent)
FOUND = "challenge"  # says who found a limit
MOST_OWN_G = 50.0  # beyond it nothing is read: ours
# Five times the highest dose that is tried (reintroduction/ladders.py), lactose four times: beyond it is a slip; ours.
MOST_SAID_G: Mapping[OwnComponent, float] = MappingProxyType({
    "fructans": 5.0, "gos": 10.0, "lactose": 50.0, "excess_fructose": 20.0, "sorbitol": 10.0, "mannitol": 10.0,
})  # fmt: skip


class OwnLimit(BaseModel):
    """G of a component at one sitting that one person tolerates, since when, and who says so.

    `source` is the challenge that found it and `classes` the cut-off classes of the foods it was found with, empty for
    all; `risk` is the share of days, 0 to 1, with a reaction to it. Nobody knows it where a person said the limit.
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
    if component is None or not who or not 0 < grams <= MOST_SAID_G[component]:
        return None
    return OwnLimit(component=component, grams=grams, on=on, said_by=who)


def far_over(text: str) -> str:
    """That a line such as `gos 50` is far over what is ever tried, in words; empty where it is not."""
    found = _LINE.fullmatch(text.strip())
    component = component_named(found["name"]) if found else None
    if found is None or component is None or float(found["grams"].replace(",", ".")) <= MOST_SAID_G[component]:
        return ""
    return (
        f"more than {MOST_SAID_G[component]:g} g of {component.replace('_', ' ')} at one meal is far over what is ever "
        "tried here. Check the number with your dietitian, and write it again"
    )
