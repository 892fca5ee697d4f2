"""What challenge days say of the dose from which one person reacts.

The threshold T of a person lies somewhere on a grid. A day's chance of a reaction rises with the dose around T, and is
never below what a day without any challenge brings. Model and constants are ours (no source); that the response
follows the dose: Shepherd et al. 2008; shares of people who react and of those who react to a control: Van den Houte
et al. 2024. It is arithmetic, and no diagnosis.
"""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from calmlarder.reintroduction.ladders import LADDERS, ChallengeGroup, Ladder

DayResult = Literal["calm", "reaction"]

BACKGROUND = 0.10  # chance of a reaction on a day without a challenge: ours
STEEPNESS = 3  # how sharply the chance rises around the threshold: ours
CONTROL_CALM = 0.74  # share of people without a reaction to glucose: Van den Houte et al. 2024
LEAST_PRIOR = 0.10  # least belief, before the first day, that a person reacts within the ladder: ours
MOST_RISK = 0.20  # a dose with more than this is no limit of one's own: ours
AMBIGUOUS = (0.15, 0.75)  # belief that the threshold is within the ladder, between which a dose is repeated: ours
_GRID_STEPS = range(-2, 13)  # thresholds from half the first dose to 64 times, in steps of a factor root of two


class ChallengeDay(NamedTuple):
    """A dose in g of the group, and how the day went."""

    dose_g: float
    result: DayResult


class Reckoning(NamedTuple):
    """Risk of a reaction, 0 to 1, at each dose of the ladder; the limit of one's own for one sitting in g."""

    group: ChallengeGroup
    doses_g: tuple[float, ...]
    risks: tuple[float, ...]
    own_limit_g: float
    ambiguous: bool


def reckon(group: ChallengeGroup, days: Sequence[ChallengeDay], ladder: Ladder | None = None) -> Reckoning:
    """What such days would say together, whatever their order; the group's own ladder where none is given."""
    ladder = LADDERS[group] if ladder is None else ladder
    belief = posterior(ladder, days)
    risks = tuple(sum(share * response(dose, t) for t, share in belief.items()) for dose in ladder.doses_g)
    calm = max((day.dose_g for day in days if day.result == "calm"), default=0.0)
    borne = [d for d, risk in zip(ladder.doses_g, risks, strict=True) if d <= calm and risk <= MOST_RISK]
    return Reckoning(
        group, ladder.doses_g, risks, max(borne, default=ladder.cutoff_g), _ambiguous(ladder, belief, days)
    )


def response(dose_g: float, threshold_g: float) -> float:
    """Chance, 0 to 1, that a dose above 0 g itself causes a reaction; one half at the threshold."""
    return 1 / (1 + (dose_g / threshold_g) ** -STEEPNESS)


def prior(ladder: Ladder) -> dict[float, float]:
    """Belief in each threshold (g) before the first day: evenly within the ladder, and evenly above it."""
    within = max(LEAST_PRIOR, 1 - (1 - ladder.triggers) / CONTROL_CALM)
    grid = [ladder.doses_g[0] * 2 ** (step / 2) for step in _GRID_STEPS]
    low = [t for t in grid if _within(ladder, t)]
    return {t: within / len(low) if t in low else (1 - within) / (len(grid) - len(low)) for t in grid}


def posterior(ladder: Ladder, days: Sequence[ChallengeDay]) -> dict[float, float]:
    """Belief in each threshold (g) after the days."""
    weights = prior(ladder)
    for day in days:
        for threshold in weights:
            reacts = BACKGROUND + (1 - BACKGROUND) * response(day.dose_g, threshold)
            weights[threshold] *= reacts if day.result == "reaction" else 1 - reacts
    total = sum(weights.values())
    return {threshold: weight / total for threshold, weight in weights.items()}


def _ambiguous(ladder: Ladder, belief: dict[float, float], days: Sequence[ChallengeDay]) -> bool:
    """Whether the days leave it open if the threshold is within the ladder, or contradict each other."""
    reacted = [day.dose_g for day in days if day.result == "reaction"]
    calm = [day.dose_g for day in days if day.result == "calm"]
    within = sum(share for threshold, share in belief.items() if _within(ladder, threshold))
    turned = bool(reacted and calm) and min(reacted) < max(calm)
    return turned or AMBIGUOUS[0] <= within <= AMBIGUOUS[1]


def _within(ladder: Ladder, threshold_g: float) -> bool:
    return threshold_g <= ladder.doses_g[-1] * 1.0001  # grid points are powers of a root: equal up to rounding
