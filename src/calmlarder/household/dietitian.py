"""The page that a person takes to their dietitian."""

from pathlib import Path

from calmlarder.household.challenge_status import status
from calmlarder.household.challenges import courses, scores
from calmlarder.household.diary import days
from calmlarder.household.household import Household
from calmlarder.household.write_out import write_out
from calmlarder.reintroduction.course import standing
from calmlarder.render.dietitian_page import HTML_BEGINS, MARKDOWN_BEGINS, Page, html, markdown

_WEEK = 7
_MOST_DAYS = 366


def page_of(household: Household, who: str) -> Page:
    """Everything that was scored and found since a week before the first challenge, a year back at most."""
    now = status(household, who)
    by_day = scores(household, who)
    found = tuple((one, standing(one, by_day, household.today)) for one in courses(household, who))
    first = min((one.started for one, _ in found), default=household.today)
    count = min(_MOST_DAYS, (household.today - first).days + 1 + _WEEK)
    names = household.plain_tables.food_by_id
    return Page(
        who=who,
        phase=now.who.phase or "not said",
        today=household.today,
        clock=now.clock,
        courses=found,
        limits=now.who.own_limits,
        days=days(household, count, who),
        foods={one.food: names[one.food].name for one, _ in found if one.food in names},
    )


def write_page(household: Household, who: str, file: Path) -> None:
    """Write it: HTML where the file is called so, else Markdown. Raises CannotGoOn where it cannot be written."""
    page = page_of(household, who)
    if file.suffix.lower() in {".html", ".htm"}:
        write_out(file, html(page), HTML_BEGINS, "--out", private=True)
    else:
        write_out(file, markdown(page), MARKDOWN_BEGINS, "--out", private=True)
