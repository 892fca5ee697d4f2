"""Options as they were typed, into the values that use cases work on. The only place where a command reads them."""

import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

from calmlarder.commands.given.common import AtTable, Eating, Place, Sure
from calmlarder.commands.given.evening import Evening
from calmlarder.household.household import Household
from calmlarder.household.people import MOST_PEOPLE
from calmlarder.household.table import Seats
from calmlarder.intake.amounts import EYE_PERCENT, SCALE_GRAMS, Tolerance
from calmlarder.intake.own import LONGEST_NAME, MOST_HOURS, Own, own_of, person_named
from calmlarder.kitchen.equipment import RINGS, THINGS, Thing
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import own_tables, table_folders
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import ALLERGENS, Allergen, allergens_named

if TYPE_CHECKING:
    from calmlarder.household.choices import Choices
    from calmlarder.patterns.asked_dish import Dish

_OPTIONS = {"protein_floor_g": "--protein-floor"}
FAULT = 70  # the program found itself at fault: sysexits.h, EX_SOFTWARE


def lines_typed(words: Sequence[str]) -> list[str]:
    """Bare words are one line; where one of them was quoted (`"firm tofu 280g" "carrots x3"`) each is a line."""
    return list(words) if any(" " in word.strip() for word in words) else [" ".join(words)]


def folders_of(options: Place) -> list[Path]:
    """Where the tables of this run are."""
    return table_folders(Path(options.tables) if options.tables else None, home_of(options))


def tables_of(options: Place) -> Tables:
    """The tables of this run."""
    return load_tables(folders_of(options))


def home_of(options: Place) -> Path | None:
    """The folder that --home names; None for the usual one."""
    return Path(options.home) if options.home else None


def own_tables_of(options: Place) -> Path:
    """The folder of the cook's own tables in this run; it need not exist."""
    return own_tables(Path(options.tables) if options.tables else None, home_of(options))


def household_of(options: Place) -> Household:
    """The home of this run on its day. Raises CannotGoOn for a day that cannot be."""
    today = day_of(options)
    return Household(home_of(options), tables_of(options), today, folders_of(options))


def at_fault(what: str, faults: Sequence[str]) -> int:
    """Say that an answer did not pass its own check, and give the exit status for it."""
    from calmlarder.render.caution import at_fault as words

    print(f"{words(what)}.", file=sys.stderr)
    print("\n".join(f"  {fault}" for fault in faults), file=sys.stderr)
    return FAULT


def day_of(options: Place) -> date:
    """The day given, or today. Raises CannotGoOn for a day that cannot be."""
    if options.today is None:
        return date.today()
    from calmlarder.matching.dates.day_names import parse_day

    try:
        return parse_day(options.today, date.today())
    except ValueError as error:
        raise CannotGoOn([Problem(where="--today", what=str(error), remedy="write it like 2026-03-12")]) from None


def food_named(text: str, option: str, tables: Tables) -> Food:
    """The one food that `text` means. Raises CannotGoOn when it means none or several."""
    if text in tables.food_by_id:
        return tables.food_by_id[text]
    from calmlarder.matching.names.foods import FoodMatcher

    match = FoodMatcher(tables).match(text)
    if match.food is not None:
        return match.food
    if match.candidates:
        names = " or ".join(f"`{candidate.name}`" for candidate in match.candidates)
        raise CannotGoOn([Problem(where=option, what=f"`{text}` may be several foods", remedy=f"write {names}")])
    raise CannotGoOn(
        [Problem(where=option, what=f"`{text}` is no food of the tables", remedy="write another name for it")]
    )


def person(given: str, option: str) -> str:
    """A person's name in plain form. Raises CannotGoOn for what is no name."""
    name = person_named(given)
    if name is None:
        remedy = f"give a name of at most {LONGEST_NAME} signs"
        raise CannotGoOn([Problem(where=option, what="is no name", remedy=remedy)])
    return name


def _listed(given: str | None) -> list[str]:
    """The words of an option that takes several, with commas between."""
    return [word.strip().lower() for word in (given or "").split(",") if word.strip()]


def allergens_of(options: Eating) -> tuple[Allergen, ...]:
    """What `--avoid` names. Raises CannotGoOn for a word that is none of the 14 allergens."""
    avoid: dict[Allergen, None] = {}
    for word in _listed(options.avoid):
        named = allergens_named(word)
        if not named:
            remedy = f"choose from: {', '.join(ALLERGENS)}"
            raise CannotGoOn([Problem(where="--avoid", what=f"`{word}` is no allergen", remedy=remedy)])
        avoid |= dict.fromkeys(named)
    return tuple(avoid)


def tolerance_of(options: Sure, household: Household) -> Tolerance:
    """How sure amounts are: as `--eye` and `--scale` say, else as settled at home. Raises CannotGoOn."""
    _check_tolerance(options)
    home = household.settled().tolerance
    return Tolerance(
        eye_percent=home.eye_percent if options.eye is None else options.eye,
        scale_grams=home.scale_grams if options.scale is None else options.scale,
    )


def _check_tolerance(options: Sure) -> None:
    problems = [
        Problem(where=name, what=f"`{given}` is out of range", remedy=f"give {unit} from {least} to {most}")
        for name, given, unit, (least, most) in (
            ("--eye", options.eye, "percent", EYE_PERCENT),
            ("--scale", options.scale, "grams", SCALE_GRAMS),
        )
        if given is not None and not least <= given <= most
    ]
    if problems:
        raise CannotGoOn(problems)


def _missing(options: Evening) -> tuple[Thing, ...]:
    """What `--no-equipment` says the kitchen lacks. Raises CannotGoOn for what cannot be, of `--rings` too."""
    known: dict[str, Thing] = {thing: thing for thing in THINGS}
    missing = _listed(options.no_equipment)
    problems = [
        Problem(where="--no-equipment", what=f"`{word}` is no such thing", remedy=f"choose from: {', '.join(THINGS)}")
        for word in missing
        if word not in known
    ]
    if options.rings is not None and not RINGS[0] <= options.rings <= RINGS[1]:
        remedy = f"give a number of rings from {RINGS[0]} to {RINGS[1]}"
        problems.append(Problem(where="--rings", what=f"`{options.rings}` is out of range", remedy=remedy))
    if problems:
        raise CannotGoOn(problems)
    return tuple(known[word] for word in dict.fromkeys(missing))


def _owns(options: Evening) -> tuple[Own, ...]:
    """Whose hours `--own` names. Raises CannotGoOn for what names none."""
    found = [(text, own_of(text)) for text in options.own]
    remedy = f'write a name and hours up to {MOST_HOURS}, such as "kit 5", "kit 5 fades" or "kit stays"'
    problems = [
        Problem(where="--own", what=f"`{text}` says nobody's hours", remedy=remedy)
        for text, own in found
        if own is None
    ]
    if problems:
        raise CannotGoOn(problems)
    return tuple(own for _, own in found if own is not None)


def choices_of(options: Evening, tables: Tables) -> "Choices":
    """What the options ask of an evening. Raises CannotGoOn with everything that is wrong in them.

    A larder that is no kept one has no settings; its log counts only where its home is named.
    """
    from pydantic import ValidationError

    from calmlarder.household.choices import Choices

    values: dict[str, Any] = {
        "sitting": options.sitting,
        "people": options.people,
        "profile": options.profile,
        "protein_g": options.protein,
        "protein_floor_g": options.protein_floor,
        "minutes": options.minutes,
        "diet": options.diet,
        "avoid": allergens_of(options),
        "without": tuple(food_named(text, "--without", tables).id for text in options.without),
        "disliked": tuple(food_named(text, "--dislike", tables).id for text in options.dislike),
        "use": tuple(food_named(text, "--use", tables).id for text in options.use),
        "dish": _dish_of(options),
        "lysine_mg": options.lysine,
        "eye_percent": options.eye,
        "scale_grams": options.scale,
        "rings": options.rings,
        "missing": _missing(options),
        "use_shared": options.use_shared,
        "count": options.count,
        "seconds": options.seconds,
        "use_settings": False,
        "use_log": False,
        "use_challenge": False,
        "use_allergens": options.command != "demo",
    }
    _check_tolerance(options)
    if options.command != "demo":
        values |= _of_a_home(options)
    try:
        return Choices(**values)
    except ValidationError as error:
        raise CannotGoOn(
            Problem(where=_option_of(str(fault["loc"][0])), what=f"`{fault['input']}` is out of range",
                    remedy=_that_can_be(str(fault["loc"][0])))
            for fault in error.errors(include_url=False)
        ) from None  # fmt: skip


def _dish_of(options: Evening) -> "Dish | None":
    """The dish that `--dish` names. Raises CannotGoOn where there is no such dish."""
    if options.dish is None:
        return None
    from calmlarder.patterns.asked_dish import dish_named
    from calmlarder.patterns.kinds import shipped_kinds
    from calmlarder.patterns.load import shipped_patterns

    return dish_named(options.dish, shipped_patterns(), shipped_kinds())


def _of_a_home(options: Evening) -> dict[str, Any]:
    """What only a command that may read a home is given: its settings, and its log of the hours before."""
    from calmlarder.commands.moment import moment_of

    if options.window is not None and not 0 <= options.window <= MOST_HOURS:
        raise CannotGoOn(
            [Problem(where="--window", what="is out of range", remedy=f"give hours from 0 to {MOST_HOURS}")]
        )
    return {
        "at": moment_of(options, options.at, "--at"),
        "who": tuple(person(name, "--who") for name in options.who or ()),
        "window_hours": options.window,
        "fade": options.fade,
        "own": _owns(options),
        **_seats(options),
        "use_settings": options.larder is None and not options.no_settings,
        "use_log": options.larder is None or options.home is not None,
        "use_challenge": not options.no_settings,
    }


def _seats(options: AtTable) -> dict[str, Any]:
    found = seats_of(options)
    return {} if found is None else {"eaters": found.names, "guests": found.guests}


def seats_of(options: AtTable) -> Seats | None:
    """Who eats, as `--for me,kit+1` names them; None where nobody is named.

    Raises CannotGoOn for what names nobody, or anybody twice.
    """
    named = options.eaters
    if named is None:
        return None
    names, _, guests = named.partition("+")
    found = tuple(person(name, "--for") for name in names.split(",") if name.strip())
    is_number = not guests or (guests.strip().isdecimal() and len(guests.strip()) <= 2)
    many = int(guests) if guests and is_number else 0
    if not is_number or len(set(found)) < len(found) or not 1 <= len(found) + many <= MOST_PEOPLE:
        remedy = f"name up to {MOST_PEOPLE} people once each, and guests as a number, such as me,kit+1"
        raise CannotGoOn([Problem(where="--for", what=f"`{named[:60]}` cannot be", remedy=remedy)])
    return Seats(found, many)


def _option_of(field: str) -> str:
    """The option that sets a field of the request."""
    return _OPTIONS.get(field, f"--{field.split('_')[0]}")


def _that_can_be(name: str) -> str:
    """What to give in place of a number that cannot be, from the bounds of its field."""
    from calmlarder.compose.request import DinnerRequest

    bounds: dict[str, Any] = {type(one).__name__: one for one in DinnerRequest.model_fields[name].metadata}
    most = f"{bounds['Le'].le:g}"
    return (
        f"give a number above {bounds['Gt'].gt:g}, {most} at most"
        if "Gt" in bounds
        else (f"give a number from {bounds['Ge'].ge:g} to {most}")
    )
