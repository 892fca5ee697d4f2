"""What several commands need: the tables, the day, the request."""

import argparse
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any, get_args

from calmlarder.intake.amounts import EYE_PERCENT, SCALE_GRAMS, Tolerance
from calmlarder.matching.dates import parse_day
from calmlarder.matching.foods import FoodMatcher
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import table_folders
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import ALLERGENS, Allergen, Diet

if TYPE_CHECKING:
    from calmlarder.compose.request import DinnerRequest
    from calmlarder.kitchen.equipment import Equipment

DIETS = get_args(Diet)
_OPTIONS = {"protein_floor_g": "--protein-floor"}
FAULT = 70  # the program found itself at fault: sysexits.h, EX_SOFTWARE


def folders_of(options: argparse.Namespace) -> list[Path]:
    """Where the tables of this run are."""
    return table_folders(Path(options.tables) if options.tables else None)


def tables_of(options: argparse.Namespace) -> Tables:
    """The tables of this run."""
    return load_tables(folders_of(options))


def at_fault(what: str, faults: Sequence[str]) -> int:
    """Say that an answer did not pass its own check, and give the exit status for it."""
    print(f"calmlarder is at fault: {what} did not pass its own check and is not shown.", file=sys.stderr)
    print("\n".join(f"  {fault}" for fault in faults), file=sys.stderr)
    return FAULT


def day_of(options: argparse.Namespace) -> date:
    """The day given, or today. Raises CannotGoOn for a day that cannot be."""
    if options.today is None:
        return date.today()
    try:
        return parse_day(options.today, date.today())
    except ValueError as error:
        raise CannotGoOn([Problem(where="--today", what=str(error), remedy="write it like 2026-03-12")]) from None


def food_named(text: str, option: str, tables: Tables) -> Food:
    """The one food that `text` means. Raises CannotGoOn when it means none or several."""
    if text in tables.food_by_id:
        return tables.food_by_id[text]
    match = FoodMatcher(tables).match(text)
    if match.food is not None:
        return match.food
    if match.candidates:
        names = " or ".join(f"`{candidate.name}`" for candidate in match.candidates)
        raise CannotGoOn([Problem(where=option, what=f"`{text}` may be several foods", remedy=f"write {names}")])
    raise CannotGoOn(
        [Problem(where=option, what=f"`{text}` is no food of the tables", remedy="write another name for it")]
    )


def _listed(given: str | None) -> list[str]:
    """The words of an option that takes several, with commas between."""
    return [word.strip().lower() for word in (given or "").split(",") if word.strip()]


def allergens_of(options: argparse.Namespace) -> tuple[Allergen, ...]:
    """What `--avoid` names. Raises CannotGoOn for a word that is none of the 14 allergens."""
    known: dict[str, Allergen] = {allergen: allergen for allergen in ALLERGENS}
    avoid = _listed(options.avoid)
    for word in avoid:
        if word not in known:
            remedy = f"choose of {', '.join(ALLERGENS)}"
            raise CannotGoOn([Problem(where="--avoid", what=f"`{word}` is no allergen", remedy=remedy)])
    return tuple(known[word] for word in avoid)


def tolerance_of(options: argparse.Namespace) -> Tolerance:
    """How sure `--eye` and `--scale` are. Raises CannotGoOn for what cannot be."""
    problems = [
        Problem(where=name, what=f"`{given}` cannot be", remedy=f"give {unit} from {least} to {most}")
        for name, given, unit, (least, most) in (
            ("--eye", options.eye, "percent", EYE_PERCENT),
            ("--scale", options.scale, "grams", SCALE_GRAMS),
        )
        if not least <= given <= most
    ]
    if problems:
        raise CannotGoOn(problems)
    return Tolerance(eye_percent=options.eye, scale_grams=options.scale)


def equipment_of(options: argparse.Namespace) -> "Equipment":
    """What `--rings` and `--no-equipment` say of the kitchen. Raises CannotGoOn for what cannot be."""
    from calmlarder.kitchen.equipment import RINGS, THINGS, Equipment, Thing

    known: dict[str, Thing] = {thing: thing for thing in THINGS}
    missing = _listed(options.no_equipment)
    problems = [
        Problem(where="--no-equipment", what=f"`{word}` is no such thing", remedy=f"choose of {', '.join(THINGS)}")
        for word in missing
        if word not in known
    ]
    if not RINGS[0] <= options.rings <= RINGS[1]:
        remedy = f"give a number of rings from {RINGS[0]} to {RINGS[1]}"
        problems.append(Problem(where="--rings", what=f"`{options.rings}` cannot be", remedy=remedy))
    if problems:
        raise CannotGoOn(problems)
    return Equipment(rings=options.rings, missing=tuple(known[word] for word in dict.fromkeys(missing)))


def wanted_of(options: argparse.Namespace, tables: Tables, **more: object) -> "DinnerRequest":
    """The request of the options, and `more` of its fields. Raises CannotGoOn with everything that is wrong in it."""
    from pydantic import ValidationError

    from calmlarder.compose.request import PROTEIN_TARGET_G, DinnerRequest, protein_floor
    from calmlarder.intake.profile import profile_named

    target = PROTEIN_TARGET_G[options.sitting] if options.protein is None else options.protein
    floor = protein_floor(options.sitting, target) if options.protein_floor is None else options.protein_floor
    values: dict[str, Any] = {
        "today": day_of(options),
        "profile": profile_named(options.profile, tables),
        "people": options.people,
        "sitting": options.sitting,
        "protein_g": target,
        "protein_floor_g": floor,
        "minutes": options.minutes,
        "diet": options.diet,
        "avoid": allergens_of(options),
        "without": tuple(food_named(text, "--without", tables).id for text in options.without),
        "disliked": tuple(food_named(text, "--dislike", tables).id for text in options.dislike),
        "lysine_mg": options.lysine,
        "use": tuple(food_named(text, "--use", tables).id for text in options.use),
        "tolerance": tolerance_of(options),
        "equipment": equipment_of(options),
        "use_shared": options.use_shared,
        "count": options.count,
        "seconds": options.seconds,
        **more,
    }
    try:
        return DinnerRequest(**values)
    except ValidationError as error:
        raise CannotGoOn(
            Problem(where=_option_of(str(fault["loc"][0])), what=f"`{fault['input']}` cannot be",
                    remedy=_that_can_be(str(fault["loc"][0])))
            for fault in error.errors(include_url=False)
        ) from None  # fmt: skip


def _option_of(field: str) -> str:
    """The option that sets a field of the request."""
    return _OPTIONS.get(field, f"--{field.split('_')[0]}")


def _that_can_be(name: str) -> str:
    """What to give in place of a number of the request that cannot be, from the bounds of its field."""
    from calmlarder.compose.request import DinnerRequest

    bounds = {type(one).__name__: one for one in DinnerRequest.model_fields[name].metadata}
    most = f"{bounds['Le'].le:g}"
    return (
        f"give a number above {bounds['Gt'].gt:g}, {most} at most"
        if "Gt" in bounds
        else (f"give a number from {bounds['Ge'].ge:g} to {most}")
    )
