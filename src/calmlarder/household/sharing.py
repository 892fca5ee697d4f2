"""What can be shared: the last dinner, plan and adapted recipe, lists, and a page for a dietitian.

Each was checked before it was shown, and is kept with a checksum as it was then.
"""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Literal, TypeVar

from calmlarder.household.household import Household
from calmlarder.larder.freezing import freeze_today
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.documents import ADAPTED, COOKED_LAST, PLANNED, PROPOSED

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.household.adapting import Answer
    from calmlarder.household.planning import Outcome
    from calmlarder.plan.planned import Planned, SittingPlanned
    from calmlarder.render.sheet import Sheet


from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from calmlarder.household.challenge_status import status
from calmlarder.household.diary import days
from calmlarder.household.going_on import courses, scores
from calmlarder.household.people import people
from calmlarder.household.write_out import write_out
from calmlarder.intake.diet_and_allergens import allergens_met
from calmlarder.reintroduction.course import standing
from calmlarder.render.dietitian_page import HTML_BEGINS, MARKDOWN_BEGINS, Page, html, markdown

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner


What = Literal["dinner", "plan", "recipe", "shopping", "freezer"]
WHATS: tuple[What, ...] = ("dinner", "plan", "recipe", "shopping", "freezer")
Format = Literal["text", "markdown", "jsonld", "html"]
FORMATS: tuple[Format, ...] = ("text", "markdown", "jsonld", "html")
ENDINGS: dict[Format, str] = {"text": ".txt", "markdown": ".md", "jsonld": ".json", "html": ".html"}

_Read = TypeVar("_Read")


def sheet_of(household: Household, what: What, number: int = 1) -> "Sheet":
    """The sheet of what was proposed, planned or adapted last, or of a list. Raises CannotGoOn where there is none."""
    from calmlarder.render import sheet

    if what == "dinner":
        dinner = _last_dinner(household, number)
        refuse_left_out(household, [dinner], "tonight")
        return sheet.dinner_sheet(dinner, household.manner)
    if what == "plan":
        planned = last_plan(household)
        refuse_left_out(household, [one.dinner for one in planned.sittings if one.dinner is not None], "plan")
        return sheet.plan_sheet(planned, household.tables, household.manner)
    if what == "shopping":
        return sheet.shopping_sheet(last_plan(household))
    if what == "recipe":
        return _noted(household, ADAPTED, "adapt FILE", sheet.recipe_sheet)
    lots = [one.lot for one in household.lots()]
    frozen = [lot for lot in lots if lot.place == "freezer"]
    return sheet.freezer_sheet(frozen, freeze_today(lots, household.tables), household.tables)


def written(sheet: "Sheet", form: Format) -> str:
    """A sheet in one of the four forms."""
    from calmlarder.render.sheet_html import as_html
    from calmlarder.render.sheet_jsonld import as_jsonld
    from calmlarder.render.sheet_words import as_markdown, as_text

    ways: dict[Format, Callable[[Sheet], str]] = {
        "text": as_text,
        "markdown": as_markdown,
        "jsonld": as_jsonld,
        "html": as_html,
    }
    return ways[form](sheet)


def keep_plan(household: Household, outcome: "Outcome", besides: Mapping[str, object] = MappingProxyType({})) -> None:
    """Remember a plan that holds and is at its end, and what is noted besides, where the home can be written."""
    from calmlarder.plan.planned import Planned

    planned = outcome.plan
    if isinstance(planned, Planned) and not outcome.faults and planned.status != "none":
        household.note(PLANNED, {**planned.model_dump(mode="json"), **besides})


def keep_adapted(household: Household, answer: "Answer") -> None:
    """Remember a recipe that fits, as it is or changed, where the home can be written."""
    if answer.shared is not None and not answer.faults:
        household.note(ADAPTED, answer.shared)


def last_plan(household: Household) -> "Planned":
    """The plan that was shown last. Raises CannotGoOn where there is none."""
    from calmlarder.plan.planned import Planned

    return _noted(household, PLANNED, "plan", Planned.model_validate)


def meals_planned(household: Household) -> "tuple[SittingPlanned, ...]":
    """The meals of the last plan from today on; none where there is no plan that can be read."""
    try:
        return tuple(one for one in last_plan(household).sittings if one.day >= household.today)
    except CannotGoOn:
        return ()


def _last_dinner(household: Household, number: int) -> "Dinner":
    from calmlarder.compose.dinner import Dinner

    note = household.noted(PROPOSED) or household.noted(COOKED_LAST)
    dinners = note.get("dinners", []) if isinstance(note, dict) else []
    if not dinners:
        raise _nothing("dinner", "tonight")
    if not 1 <= number <= len(dinners):
        remedy = f"give a number from 1 to {len(dinners)}"
        raise CannotGoOn([Problem(where="--number", what=f"`{number}` is out of range", remedy=remedy)])
    return _read("dinner", "tonight", lambda: Dinner.model_validate(dinners[number - 1]))


def _noted(household: Household, name: str, command: str, read: Callable[[Any], _Read]) -> _Read:
    note = household.noted(name)
    what = "recipe" if name == ADAPTED else name
    if note is None:
        raise _nothing(what, command)
    return _read(what, command, lambda: read(note))


def _read(what: str, command: str, read: Callable[[], _Read]) -> _Read:
    try:
        return read()
    except (KeyError, TypeError, ValueError):
        told = f"an earlier calmlarder kept the {what}, in another form"
        raise CannotGoOn([Problem(where="share", what=told, remedy=f"ask `calmlarder {command}` again")]) from None


def _nothing(what: str, command: str) -> CannotGoOn:
    told = f"there is no {what} to share yet"
    return CannotGoOn([Problem(where="share", what=told, remedy=f"ask `calmlarder {command}` first")])


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


def refuse_left_out(household: Household, dinners: "Iterable[Dinner]", command: str) -> None:
    """Nothing, where no food and no label of the dinners holds what is avoided now. Raises CannotGoOn where one does.

    Avoided is what the one who eats avoids, and those whose portions are told by name.
    """
    avoided_by = {one.name: one.avoid for one in people(household)}
    labels = {one.lot.id: one.lot.label_allergens for one in household.lots()}
    foods = household.tables.food_by_id
    for dinner in dinners:
        names = [portion.who for portion in dinner.portions]
        avoid = tuple(
            dict.fromkeys((*household.settled().avoid, *(one for name in names for one in avoided_by.get(name, ()))))
        )
        taken = [(one.lot, one.food, one.line) for one in dinner.uses]
        taken += [(one.lot, one.food, one.line) for one in dinner.apart]
        for lot, food, line in taken:
            held = allergens_met(foods[food], avoid) if food in foods else []
            held += [one for one in labels.get(lot, ()) if one in avoid and one not in held]
            if held:
                what = f"`{dinner.title}` takes {line}, which holds {', '.join(held)}: that is left out here now"
                raise CannotGoOn([Problem(where="share", what=what, remedy=f"ask `calmlarder {command}` again")])
