"""How the gut felt at a moment, in the person's own scale."""

from collections.abc import Iterable
from datetime import date, datetime
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

CALM, WORST = 0, 10
LONGEST_NOTE = 200


Score = Annotated[int, Field(ge=CALM, le=WORST)]


class Scores(BaseModel):
    """Pain, bloating, wind and urgency, each 0 none to 10 the worst the person knows; the worst of them counts."""

    model_config = ConfigDict(frozen=True)

    pain: Score
    bloating: Score
    wind: Score
    urgency: Score

    @property
    def worst(self) -> int:
        """The score that counts."""
        return max(self.pain, self.bloating, self.wind, self.urgency)


class Felt(BaseModel):
    """0 is calm, 10 the worst the person knows; the worst of the four `scores` where they were told. Local time."""

    model_config = ConfigDict(frozen=True)

    at: datetime
    who: str
    score: Score
    note: str = ""
    scores: Scores | None = None


def worst_by_day(felt: Iterable[Felt], who: str) -> dict[date, int]:
    """One person's worst score of each day on which they told one."""
    found: dict[date, int] = {}
    for one in felt:
        if one.who == who:
            found[one.at.date()] = max(one.score, found.get(one.at.date(), CALM))
    return found
