"""How far an amount on the plate may be above the plan, in whole numbers."""

from decimal import Decimal

# Judged by eye: up to 30 % more; on the scale: 2 g more. Common practice, no source.
EYE_PERCENT = 130
WEIGHED_EXTRA_GRAMS = 2


def worst_by_eye(grams: Decimal) -> Decimal:
    """The worst case in grams of an amount judged by eye."""
    return grams * EYE_PERCENT / 100


def worst_hundredths(grams: int, weighed: bool) -> int:
    """The worst case of a planned amount, in hundredths of a gram."""
    return 100 * grams + 100 * WEIGHED_EXTRA_GRAMS if weighed else EYE_PERCENT * grams
