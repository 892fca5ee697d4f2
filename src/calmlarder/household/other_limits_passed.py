"""Whether what somebody logged on a day with a dose passed the limit of another group: then the day tells nothing."""

from datetime import datetime, time

from calmlarder.household.household import Household
from calmlarder.intake.eaten import EVERYONE
from calmlarder.intake.own_profile import BASE
from calmlarder.intake.profile import typical_room
from calmlarder.intake.stacking import Stacking, held_ug, still_counted
from calmlarder.intake.zone import offsets_at
from calmlarder.reintroduction.foods import SUMS
from calmlarder.reintroduction.ladders import Challenge, group_of
from calmlarder.tables.cap_rows import Cap

_UG = 10  # micrograms in a hundredth of a mg
# Of a sum that the challenged group is a part of, the other part stays under it by itself.
_OTHER_PART = {"fructans": "gos", "gos": "fructans", "sorbitol": "mannitol", "mannitol": "sorbitol"}


def others_passed(household: Household, who: str, challenge: Challenge) -> tuple[str, ...]:
    """Groups other than the challenged one of which the log of today passes the limit of elimination at one meal."""
    start = datetime.combine(household.today, time.min)
    mine = [one for one in household.eaten_since(start) if one.who in {who, EVERYONE}]
    today = [one for one in mine if one.at.date() == household.today]
    home, caps = household.settled(), _others(household, challenge)
    found: list[str] = []
    for entry in today:
        how = Stacking(
            at=entry.at, window_hours=home.window_hours, fade=home.fade, own=home.own, who=(who,),
            offsets_min=entry.offsets_min or offsets_at(entry.at),
        )  # fmt: skip
        counted = still_counted(today, how)
        found += [cap.group for cap in caps if held_ug(counted, cap) > typical_room(cap) * _UG]
    return tuple(dict.fromkeys(found))


def _others(household: Household, challenge: Challenge) -> list[Cap]:
    """Limits of a meal that the dose takes no part of."""
    own = group_of(challenge)
    found = []
    for cap in household.profile_named(BASE).at("dinner").sitting_caps:
        if cap.group == own or cap.group == "total":
            continue
        part = _OTHER_PART.get(own) if cap.group in SUMS[own] else cap.group
        found.append(cap if part == cap.group else cap.model_copy(update={"group": part}))
    return found
