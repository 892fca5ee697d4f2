"""Signs that a doctor should know of: weight lost over the months, and red flags that somebody told of."""

from datetime import date, datetime, time, timedelta
from typing import NamedTuple

from calmlarder.household.household import Household
from calmlarder.household.person import Person, Weighed
from calmlarder.reintroduction.entry_questions import ADULT_YEARS, Told
from calmlarder.reintroduction.red_flags_in_notes import RED_FLAG, red_flags
from calmlarder.store.logs import events, felt_since

# Without meaning to: ours, after the AGA clinical practice update 2022 (recalled).
LOST_KG, LOST_SHARE = 3.0, 0.05
_URGENT_SHARE = 0.15  # of the weight, within half a year: ours, no source
LIGHT_KG = 40.0  # underweight (BMI under 18.5, WHO) of everybody taller than 1.47 m
_LOOK_BACK_DAYS = 183  # half a year, as the question is usually asked: common practice
_AGAIN_DAYS = 30  # asked monthly: ours, no source
_MOST_KEPT = 36  # weights: three years of months; ours


def with_weight(person: Person, kg: float, today: date) -> tuple[Weighed, ...]:
    """Their weights with today's, one a day."""
    earlier = [one for one in person.weighed if one.on != today]
    if not earlier and not person.weighed and person.weight_kg is not None and person.weight_kg != kg:
        earlier = [Weighed(on=today - timedelta(days=1), kg=person.weight_kg)]  # said before days were kept
    return (*earlier[-_MOST_KEPT:], Weighed(on=today, kg=kg))


class Lost(NamedTuple):
    """The most that the scale said within half a year, the time before the last, and the last."""

    most: Weighed
    before: Weighed
    now: Weighed

    @property
    def words(self) -> str:
        """From how much to how much."""
        most, now = self.most, self.now
        return f"from {most.kg:g} kg on {most.on:%d %b %Y} to {now.kg:g} kg on {now.on:%d %b %Y}"

    @property
    def is_urgent(self) -> bool:
        """Whether so much is gone that it cannot wait, or is a slip of the keys."""
        return self.now.kg <= (1 - _URGENT_SHARE) * self.most.kg


def weight_lost(person: Person, today: date) -> Lost | None:
    """What was lost within half a year, where it is 3 kg or 5 % of the weight; None where it is less."""
    since = [one for one in person.weighed if today - timedelta(days=_LOOK_BACK_DAYS) <= one.on <= today]
    if not since:
        return None
    most, now = max(since, key=lambda one: one.kg), since[-1]
    lost = most.kg - now.kg
    if lost < LOST_KG and lost < LOST_SHARE * most.kg:
        return None
    return Lost(most, since[-2] if len(since) > 1 else now, now)


def is_light(person: Person) -> bool:
    """Whether an adult, or somebody of no age said, weighs so little that most would be underweight."""
    is_adult = person.age is None or person.age >= ADULT_YEARS
    return is_adult and person.weight_kg is not None and person.weight_kg < LIGHT_KG


def asks_for_weight(person: Person, today: date) -> bool:
    """Whether a month has gone by since somebody who says their weight said it."""
    return bool(person.weighed) and today - person.weighed[-1].on >= timedelta(days=_AGAIN_DAYS)


LOOK_BACK_DAYS = 365  # a doctor has seen most people about it by then: ours


def told_of(household: Household, person: Person) -> tuple[Told, ...]:
    """The warning signs that they noted within a year, each once, oldest first."""
    if not household.is_kept:
        return ()
    who, since = person.name, datetime.combine(household.today, time.min) - timedelta(days=LOOK_BACK_DAYS)
    until = datetime.combine(household.today, time.max)
    notes = [(one.felt.at, one.felt.note) for one in felt_since(household.store, since) if one.felt.who == who]
    notes += [(one.at, one.why) for one in events(household.store) if one.who == who and one.kind in {"skip", "stop"}]
    notes = [(at, words) for at, words in sorted(notes) if since <= at <= until and words != RED_FLAG]
    found = [
        Told(at.date(), flag.flag, f"{at:%d %b %Y}: {flag.words}") for at, words in notes for flag in red_flags(words)
    ]
    lost = weight_lost(person, household.today)
    if lost is not None:
        found.append(Told(lost.now.on, "weight loss", lost.words))
    urgent_first: dict[str, Told] = {}
    for one in found:  # of one note the most urgent sign comes first, and that one stands for it
        urgent_first.setdefault(one.line, one)
    return tuple(urgent_first.values())
