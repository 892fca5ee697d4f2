"""Into the freezer and out of it again."""

from datetime import date, timedelta

from calmlarder.larder.lot import Lot, LotDate
from calmlarder.larder.usable import why_unfit

# Thawed food is eaten within a day: UK Food Standards Agency (recalled).
_THAWED_DAYS = 1


def why_not_frozen(lot: Lot) -> str | None:
    """Why a lot must stay out of the freezer, or None."""
    if lot.box is not None and not lot.box.freezes:
        return "this dish does not freeze well"
    return why_unfit(lot, use_shared=True)


def why_not_thawed(lot: Lot) -> str | None:
    """Why a lot must not come out of the freezer to be eaten, or None: thawing gives no food new days."""
    return why_unfit(lot, use_shared=True)


def frozen(lot: Lot, today: date) -> Lot:
    """The lot in the freezer since today; what its label said is kept."""
    return lot.model_copy(update={"place": "freezer", "dates": (*_labels(lot), LotDate(kind="frozen", on=today))})


def thawed(lot: Lot, today: date) -> Lot:
    """The lot back in the fridge, to be eaten within a day."""
    by = LotDate(kind="use-by", on=today + timedelta(days=_THAWED_DAYS))
    return lot.model_copy(update={"place": "fridge", "dates": (by,)})


def _labels(lot: Lot) -> tuple[LotDate, ...]:
    return tuple(one for one in lot.dates if one.kind != "frozen")
