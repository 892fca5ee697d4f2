"""How the gut felt at a moment, in the person's own scale."""

from datetime import datetime
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

CALM, WORST = 0, 10
LONGEST_NOTE = 200


class Felt(BaseModel):
    """0 is calm, 10 the worst the person knows. `at` is local time."""

    model_config = ConfigDict(frozen=True)

    at: datetime
    who: str
    score: Annotated[int, Field(ge=CALM, le=WORST)]
    note: str = ""
