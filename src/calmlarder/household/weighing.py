"""A person's weight over the months: asked once a month of whoever says it, and a loss that a doctor should know of.

3 kg or 5 % without meaning to: the agreed specification, after the AGA clinical practice update 2022 (recalled).
"""

from datetime import date, timedelta

from calmlarder.household.person import Person, Weighed

LOST_KG, LOST_SHARE = 3.0, 0.05
_LOOK_BACK_DAYS = 183  # half a year, as the question is usually asked: common practice
_AGAIN_DAYS = 30  # asked monthly: the agreed specification
_MOST_KEPT = 36  # weights: three years of months; ours


def with_weight(person: Person, kg: float, today: date) -> tuple[Weighed, ...]:
    """Their weights with today's, one a day."""
    earlier = [one for one in person.weighed if one.on != today]
    if not earlier and not person.weighed and person.weight_kg is not None and person.weight_kg != kg:
        earlier = [Weighed(on=today - timedelta(days=1), kg=person.weight_kg)]  # said before days were kept
    return (*earlier[-_MOST_KEPT:], Weighed(on=today, kg=kg))


def weight_lost_words(person: Person, today: date) -> str:
    """What was lost within half a year, where it is 3 kg or 5 % of the weight; empty where it is less."""
    since = [one for one in person.weighed if today - timedelta(days=_LOOK_BACK_DAYS) <= one.on <= today]
    if not since:
        return ""
    most, now = max(since, key=lambda one: one.kg), since[-1]
    lost = most.kg - now.kg
    if lost < LOST_KG and lost < LOST_SHARE * most.kg:
        return ""
    return f"from {most.kg:g} kg on {most.on:%d %b %Y} to {now.kg:g} kg on {now.on:%d %b %Y}"


def asks_for_weight(person: Person, today: date) -> bool:
    """Whether a month has gone by since somebody who says their weight said it."""
    return bool(person.weighed) and today - person.weighed[-1].on >= timedelta(days=_AGAIN_DAYS)
