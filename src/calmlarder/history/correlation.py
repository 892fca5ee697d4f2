"""Whether days with more of a group were days on which the gut felt worse: a rank correlation, with its uncertainty.

It shows and does not diagnose. Spearman's coefficient, with the standard error of Bonett and Wright 2000
(Psychometrika 65:23-28; recalled), on Fisher's scale.
"""

import math
from collections.abc import Sequence
from statistics import NormalDist

from pydantic import BaseModel, ConfigDict

from calmlarder.history.days import Day
from calmlarder.tables.vocabulary import Group

# The other two groups are sums of these.
TESTED: tuple[Group, ...] = ("oligosaccharides", "lactose", "excess_fructose", "sorbitol", "mannitol")
# Each interval is wide enough for all of them to hold together at 95 % (Bonferroni).
LEVEL = 1 - 0.05 / len(TESTED)
# With fewer days even the interval around no relation at all is wider than from -0.5 to 0.5.
LEAST_DAYS = 25
_MOST_TIED = 0.99999


class Together(BaseModel):
    """Rank correlation of one group's grams with the worst feeling of the day, -1 to 1, and its interval."""

    model_config = ConfigDict(frozen=True)

    group: Group
    days: int
    rho: float
    low: float
    high: float


class Related(BaseModel):
    """Days that could be compared, and a figure for each group that varied; none with too few days."""

    model_config = ConfigDict(frozen=True)

    days: int
    left_out: int
    found: tuple[Together, ...]


def related(days: Sequence[Day]) -> Related:
    """Over days with a feeling and a log whose figures are all known; the others are left out."""
    felt = [day for day in days if day.worst is not None]
    whole = [day for day in felt if day.loads_g is not None and not day.unknown]
    found = []
    if len(whole) >= LEAST_DAYS:
        scores = [float(day.worst or 0) for day in whole]
        for group in TESTED:
            rho = rank_correlation([day.loads_g[group] for day in whole if day.loads_g is not None], scores)
            if rho is not None:
                low, high = interval(rho, len(whole), LEVEL)
                found.append(Together(group=group, days=len(whole), rho=rho, low=low, high=high))
    return Related(days=len(whole), left_out=len(felt) - len(whole), found=tuple(found))


def rank_correlation(one: Sequence[float], other: Sequence[float]) -> float | None:
    """Spearman's coefficient, ties at their mean rank; None where one side never varies."""
    a, b = _ranks(one), _ranks(other)
    middle = (len(a) + 1) / 2
    across = sum((x - middle) * (y - middle) for x, y in zip(a, b, strict=True))
    spread = math.sqrt(sum((x - middle) ** 2 for x in a) * sum((y - middle) ** 2 for y in b))
    return across / spread if spread else None


def interval(rho: float, days: int, level: float) -> tuple[float, float]:
    """Where the coefficient lies at a level of confidence, for more than three days."""
    error = math.sqrt((1 + rho**2 / 2) / (days - 3))
    middle = math.atanh(max(-_MOST_TIED, min(_MOST_TIED, rho)))
    reach = NormalDist().inv_cdf((1 + level) / 2) * error
    return math.tanh(middle - reach), math.tanh(middle + reach)


def _ranks(values: Sequence[float]) -> list[float]:
    order = sorted(values)
    first = {value: number for number, value in reversed(list(enumerate(order, 1)))}
    count = {value: order.count(value) for value in first}
    return [first[value] + (count[value] - 1) / 2 for value in values]
