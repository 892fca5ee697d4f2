"""The dinner at the stove, remembered: a terminal closed in the middle loses neither it nor what was weighed."""

from datetime import date, timedelta
from typing import TYPE_CHECKING, Any, NamedTuple

from calmlarder.household.household import Household
from calmlarder.store.documents import AT_STOVE

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.intake.stacking import Counted

_LONGEST = timedelta(days=1)  # what was begun before is not cooked any more: common practice, no source


class AtStove(NamedTuple):
    """What is cooked, what still counts from before, how far it is, what the scale showed.

    And the clocks, seconds of the system's time: when the timeline began, and when each timer ends.
    """

    dinner: "Dinner"
    counted: "tuple[Counted, ...]"
    step: int = 0
    weighed: dict[str, int] | None = None
    began_s: float | None = None
    timers_s: dict[str, float] | None = None
    is_asked: bool = False  # it is the dinner that was asked for tonight: what was asked for ends with it
    boxes: int = 0  # portions that a plan wants in boxes


def remember(household: Household, at: AtStove) -> None:
    """Keep it as it is now; no action, and nothing to undo."""
    held = {
        "day": household.today.isoformat(),
        "dinner": at.dinner.model_dump(mode="json"),
        "counted": [one.model_dump(mode="json") for one in at.counted],
        "step": at.step,
        "weighed": at.weighed or {},
        "began_s": at.began_s,
        "timers_s": at.timers_s or {},
        "is_asked": at.is_asked,
        "boxes": at.boxes,
    }
    household.store.remember(AT_STOVE, held)


def forget(household: Household) -> None:
    """It was cooked, or left on purpose."""
    household.store.remember(AT_STOVE, None)


def found(household: Household) -> dict[str, Any] | None:
    """What was left at the stove a short while ago, as it was kept."""
    note: Any = household.noted(AT_STOVE)
    try:
        is_fresh = abs(date.fromisoformat(note["day"]) - household.today) <= _LONGEST and bool(note["dinner"]["title"])
    except (KeyError, TypeError, ValueError):
        return None
    return dict(note) if is_fresh else None


def again(note: dict[str, Any]) -> AtStove | None:
    """The dinner as it was; None where a later program tells dinners in another way. Loads the solver's room."""
    from pydantic import ValidationError

    from calmlarder.compose.dinner import Dinner
    from calmlarder.intake.stacking import Counted

    try:
        counted = tuple(Counted.model_validate(one) for one in note["counted"])
        ends = {str(name): float(end) for name, end in note.get("timers_s", {}).items()}
        began = note.get("began_s")
        return AtStove(
            Dinner.model_validate(note["dinner"]),
            counted,
            int(note["step"]),
            dict(note["weighed"]),
            None if began is None else float(began),
            ends,
            bool(note.get("is_asked")),
            int(note.get("boxes", 0)),
        )
    except (ValidationError, AttributeError, KeyError, TypeError, ValueError):
        return None
