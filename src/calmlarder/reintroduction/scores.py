"""How a day went: the baseline, what counts as a reaction, when a ladder stops.

Thresholds are ours, no source; four symptoms scored 0 to 10, the day's worst counting, as trials of challenges do
(Van den Houte et al. 2024, abstract read).
"""

from collections.abc import Sequence

from calmlarder.reintroduction.posterior import DayResult

BASELINE_DAYS = 3
CALM_DAYS = 2  # of a later wash-out's three: at baseline
MOST_BASELINE = 3.0  # a ladder starts from a calm gut only
REACTION_ABOVE = 2.0
STOP_ABOVE = 4.0
STOP_AT = 7
STOP_REACTIONS = 2
SEVERE_PAIN = 8  # of 10; severe pain begins at 7 or 8 of 10: common practice, recalled


def mean_of_last(worst: Sequence[int]) -> float | None:
    """Mean of the last three days, oldest first; None while there are fewer."""
    last = worst[-BASELINE_DAYS:]
    return sum(last) / BASELINE_DAYS if len(last) == BASELINE_DAYS else None


def result_of(worst: int, baseline: float) -> DayResult:
    """Whether a day was calm or brought a reaction."""
    return "reaction" if worst >= baseline + REACTION_ABOVE else "calm"


def is_strong(worst: int, baseline: float) -> bool:
    """Whether a day ends its ladder by itself."""
    return worst >= min(baseline + STOP_ABOVE, STOP_AT)
