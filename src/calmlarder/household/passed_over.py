"""A kind of dish that is not wanted, for two weeks or for good: kept as one action, told, and taken back."""

from calmlarder.history.variety import DECLINED_DAYS, Declined, kept_declined
from calmlarder.household.household import Household


def pass_over(household: Household, pattern: str, title: str, *, for_good: bool) -> Declined:
    """From today on, in the place of what was said of that kind of dish before."""
    today = household.today
    one = Declined(pattern=pattern, on=today, title=title, for_good=for_good)
    others = [other for other in household.settled().declined_on(today) if other.pattern != pattern]
    how = "never" if for_good else f"for {DECLINED_DAYS} days no"
    household.store.set({"declined": kept_declined([*others, one])}, f"{how} {one.kind}")
    return one


def take_back(household: Household, one: Declined) -> None:
    """It may come again at once."""
    others = [other for other in household.settled().declined_on(household.today) if other.pattern != one.pattern]
    household.store.set({"declined": kept_declined(others)}, f"{one.kind} again")


def passed_over_words(one: Declined) -> str:
    """What was done, for how long, and how to take it back."""
    how = "never" if one.for_good else f"until {one.until:%a} {one.until.day} {one.until:%b} no"
    return f"{how} {one.kind} ({one.title}): Ctrl+Z takes it back, F2 in the larder lists it"
