"""Means over households with 95 % intervals, by the paired bootstrap: whole households are drawn again."""

import random
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from households.life import POLICIES

_DRAWS = 4000
Lives = Mapping[str, Mapping[str, Any]]  # of one household, by policy
Measure = Callable[[Sequence[Lives]], float]
MEASURES = ("sittings", "empty", "over_cap", "over_cap_plain", "protein_met", "patterns", "dishes", "came_in_g",
            "eaten_g", "wasted_g", "wasted_portions", "at_home_g")  # fmt: skip


def table_of(lives: Sequence[Mapping[str, Any]]) -> list[tuple[str, str, int, float, float, float]]:
    """Rows of (policy, measure, households, mean or ratio, low, high), of the households lived under all policies."""
    by_home: dict[int, dict[str, Mapping[str, Any]]] = {}
    for life in lives:
        by_home.setdefault(life["household"], {})[life["policy"]] = life
    homes = [by_home[number] for number in sorted(by_home) if len(by_home[number]) == len(POLICIES)]
    if not homes:
        return []
    found = [
        (policy, name, len(homes), *interval(homes, _mean(policy, name))) for policy in POLICIES for name in MEASURES
    ]
    found += [
        (f"plan less than {than}", f"{name} %", len(homes), *interval(homes, _less(than, name)))
        for name in ("wasted_g", "wasted_portions")
        for than in ("by hand", "tonight")
    ]
    return found


def _mean(policy: str, name: str) -> Measure:
    return lambda homes: sum(home[policy][name] for home in homes) / len(homes)


def _less(than: str, name: str) -> Measure:
    """How much less plan wastes, in percent of the other's waste in all."""

    def less(homes: Sequence[Lives]) -> float:
        other = sum(home[than][name] for home in homes)
        return 100 * (1 - sum(home["plan"][name] for home in homes) / other) if other else 0.0

    return less


def interval(homes: Sequence[Lives], measure: Measure) -> tuple[float, float, float]:
    """The measure, and the ends of its 95 % percentile interval."""
    rng = random.Random(1)
    drawn = sorted(measure(rng.choices(homes, k=len(homes))) for _ in range(_DRAWS))
    return measure(homes), drawn[round(0.025 * _DRAWS)], drawn[round(0.975 * _DRAWS) - 1]


def lines_of(rows: Sequence[tuple[str, str, int, float, float, float]]) -> list[str]:
    """As CSV."""
    head = "policy,measure,households,value,low,high"
    return [head, *(f"{p},{m},{n},{value:.2f},{low:.2f},{high:.2f}" for p, m, n, value, low, high in rows)]
