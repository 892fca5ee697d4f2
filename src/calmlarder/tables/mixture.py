"""A dish in boxes, or a mixture of mixtures.csv, as its parts: each counts under its own cut-off class."""

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field


class MixturePart(BaseModel):
    """One food of the whole: grams, hundredths of a gram that it may be at the most, and whether it was weighed.

    Of a mixture of mixtures.csv they are millionths of the whole, as a pinch of a spice is little.
    """

    model_config = ConfigDict(frozen=True)

    food: str
    grams: Annotated[int, Field(gt=0)]
    most_hundredths: Annotated[int, Field(gt=0)]
    weighed: bool = False


class Mixture(BaseModel):
    """A dish of `shares` equal shares, each of `share_grams` when it went into its box."""

    model_config = ConfigDict(frozen=True)

    shares: Annotated[int, Field(ge=1, le=12)]
    share_grams: Annotated[int, Field(gt=0)]
    parts: Annotated[tuple[MixturePart, ...], Field(min_length=1)]
