"""Whether a challenge goes on, and which there were: what every dinner asks, apart from all that a challenge does."""

from datetime import datetime, time

from calmlarder.household.household import Household
from calmlarder.reintroduction.events import Course, courses_of
from calmlarder.store.logs import events


def courses(household: Household, who: str) -> tuple[Course, ...]:
    """Somebody's challenges up to today, oldest first."""
    if not household.is_kept:
        return ()
    until = datetime.combine(household.today, time.max)
    return courses_of((one for one in events(household.store) if one.at <= until), who)


def is_challenged(household: Household, who: str) -> bool:
    """Whether a challenge of somebody goes on."""
    return any(one.is_open for one in courses(household, who))
