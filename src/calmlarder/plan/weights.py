"""What a plan is judged by, in points beside those of compose/weights.py. Ours; common practice, no source.

Waste stands far above the rest: a portion thrown away costs more than twice what the dearest portion away from the
usual costs a dinner (140), so that a plan eats what would go off before it makes any plate prettier. Variety stands
above work: a main thing again at the next sitting costs as much as 25 minutes.
"""

from types import MappingProxyType

WASTED_PORTION = 300
PORTIONS_IN_A_BOX = 3  # of food in a boxed share of a dish: its protein, its base and its vegetables
# Percent of a wasted portion, by days from the last sitting's day to the last day of what is left. What has its last
# day within the plan counts whole; soon after it in part, as nobody knows whether it will be reached.
AFTER_PERCENT = MappingProxyType({1: 50, 2: 35, 3: 25, 4: 15, 5: 10, 6: 5, 7: 5})
# Of what a dish can hold of a lot, on each day after the plan until its last: what is over that counts whole.
REACHED_PERCENT = 40
UNDATED_PERCENT = 10  # what keeps a week in the fridge and has no day
# Percent of a portion that is thrown away before it is eaten, by days from its last good day to that of the sitting: a
# day of quality is a guess, and things go off before it. A use-by day is kept to the day.
LATE_PERCENT = 50  # past it
AT_RISK_PERCENT = MappingProxyType({0: 30, 1: 15, 2: 8, 3: 4})
# An evening falls through now and then. Of what would be wasted if it were not eaten at all, for each day it waits.
WAITING_PERCENT = 12
# Of what waits in a box: for another evening as above; a packed lunch that falls through is eaten that evening, and is
# lost where that falls through, too.
BOX_AT_RISK_PERCENT = 12
LUNCH_BOX_AT_RISK_PERCENT = 2
GRACE_DAYS = 2  # past its last day, never past a safety day, out of the freezer may still be planned, and dry goods
EMPTY_SITTING = 3000  # nothing to eat is worse than waste
# For each sitting that comes after it: until a later one somebody can shop, and nobody goes without tonight so that a
# lettuce is eaten tomorrow. Of twelve sittings the first costs less than two: no plan feeds fewer for it.
EMPTY_SOONER = 250
MAIN_KIND_AGAIN = 10  # for each kind of protein or base that the sitting before had too
LEFTOVER = 10  # the same dish again, but for a packed lunch of last night's dinner: that is usual
LUNCH_BY_ITSELF = 25  # a packed lunch that is a dish of its own: as fifty minutes, to think of, cook and wash up
BUY_ONE = 60  # a thing is named to buy where it is worth more than this
MOST_TO_BUY = 3
APART_DAYS = 3  # a dish comes again on the third day at the earliest, unless it is its own leftover


def risk_percent(days_before: int) -> int:
    """How much of what is eaten so many days before its last good day counts as thrown away by then."""
    return LATE_PERCENT if days_before < 0 else AT_RISK_PERCENT.get(days_before, 0)


def waste_percent(days_after: int) -> int:
    """How much of a wasted portion counts, by days after the plan's last."""
    return 100 if days_after <= 0 else AFTER_PERCENT.get(days_after, 0)
