"""Red flags that somebody told of: in notes to scores, in reasons for a skipped day, by the scale."""

from datetime import datetime, time, timedelta

from calmlarder.household.household import Household
from calmlarder.household.person import Person
from calmlarder.household.weighing import weight_lost_words
from calmlarder.reintroduction.red_flags import RED_FLAG, red_flags
from calmlarder.store.challenges import events
from calmlarder.store.ledger import felt_since

LOOK_BACK_DAYS = 365  # a doctor has seen most people about it by then: ours


def told_of(household: Household, person: Person) -> tuple[str, ...]:
    """The words in which they told of red flags within a year, each once, oldest first."""
    if not household.is_kept:
        return ()
    who, since = person.name, datetime.combine(household.today, time.min) - timedelta(days=LOOK_BACK_DAYS)
    until = datetime.combine(household.today, time.max)
    notes = [(one.felt.at, one.felt.note) for one in felt_since(household.store, since) if one.felt.who == who]
    notes += [(one.at, one.why) for one in events(household.store) if one.who == who and one.kind in {"skip", "stop"}]
    notes = [(at, words) for at, words in sorted(notes) if since <= at <= until and words != RED_FLAG]
    found = [f"{at:%d %b %Y}: {flag.words}" for at, words in notes for flag in red_flags(words)]
    lost = weight_lost_words(person, household.today)
    return tuple(dict.fromkeys([*found, *([lost] if lost else [])]))
