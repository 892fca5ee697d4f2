"""What the days of a log brought of protein, fibre, calcium and iron, beside what is recommended for an adult.

Said and not judged: a log is rarely whole. Recommendations are those of the European Food Safety Authority, from
memory, not verified; keys of ingredient_tables/sources.csv stand beside each.
"""

from collections.abc import Iterable, Mapping
from datetime import date, timedelta
from types import MappingProxyType

from pydantic import BaseModel, ConfigDict

from calmlarder.intake.eaten import EVERYONE, Eaten
from calmlarder.intake.nourished import NUTRIENTS, Nutrient

WEEK_DAYS = 7

RECOMMENDED: Mapping[Nutrient, tuple[str, str]] = MappingProxyType(
    {
        "protein_g": ("0.83 g for each kg of body weight: 50 g at 60 kg, 58 g at 70 kg", "efsa2012_protein"),
        "fibre_g": ("25 g", "efsa2010_fibre"),
        "calcium_mg": ("950 mg from 25 years on, 1000 mg before", "efsa2015_calcium"),
        "iron_mg": ("11 mg; 16 mg for women before menopause", "efsa2015_iron"),
    }
)


class Average(BaseModel):
    """A day's mean over the days with a log, g or mg; `is_least` where a figure of some food is not known."""

    model_config = ConfigDict(frozen=True)

    nutrient: Nutrient
    mean: float
    is_least: bool
    recommended: str
    source: str


class WeekNourished(BaseModel):
    """The last seven days: on how many something was logged, and the means over those."""

    model_config = ConfigDict(frozen=True)

    days: int
    means: tuple[Average, ...]


def week_of(eaten: Iterable[Eaten], who: str, until: date) -> WeekNourished:
    """Of one person; dishes that were shared count as theirs. Entries without figures make every mean an `at least`."""
    first = until - timedelta(days=WEEK_DAYS - 1)
    mine = [one for one in eaten if one.who in {who, EVERYONE} and first <= one.at.date() <= until]
    days = len({one.at.date() for one in mine})
    means = []
    for name in NUTRIENTS if days else ():
        known = [one.nourished for one in mine if one.nourished is not None]
        total = sum(getattr(one, name) for one in known)
        least = len(known) < len(mine) or any(name in one.at_least for one in known)
        words, source = RECOMMENDED[name]
        means.append(Average(nutrient=name, mean=total / days, is_least=least, recommended=words, source=source))
    return WeekNourished(days=days, means=tuple(means))
