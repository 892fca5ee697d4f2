"""Whether a challenge goes on, and which there were: what every dinner asks, apart from all that a challenge does."""

from datetime import date, datetime, time

from calmlarder.history.felt import worst_by_day
from calmlarder.household.household import Household
from calmlarder.reintroduction.events import Course, Event, courses_of
from calmlarder.store.logs import events, felt_since


def courses(household: Household, who: str) -> tuple[Course, ...]:
    """Somebody's challenges up to today, oldest first."""
    return courses_of(events_until_today(household), who) if household.is_kept else ()


def is_challenged(household: Household, who: str) -> bool:
    """Whether a challenge of somebody goes on."""
    return any(one.is_open for one in courses(household, who))


def scores(household: Household, who: str) -> dict[date, int]:
    """Somebody's worst score of each day."""
    if not household.is_kept:
        return {}
    return worst_by_day((one.felt for one in felt_since(household.store, datetime.min)), who)


def events_until_today(household: Household) -> list[Event]:
    """What was kept of challenges, up to today; of anybody."""
    until = datetime.combine(household.today, time.max)
    return [one for one in events(household.store) if one.at <= until]
