"""`calmlarder plate`: what a plate brings, and whether it fits."""

import argparse
import json

from calmlarder.commands.inputs import at_fault, household_of, person, tolerance_of
from calmlarder.commands.moment import moment_of
from calmlarder.household.household import Household
from calmlarder.household.plate import PlateAsked
from calmlarder.household.plate import plate as on_plate
from calmlarder.intake.stacking import Stacking
from calmlarder.intake.zone import offsets_at
from calmlarder.larder.files import read_lines
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.plate_text import plate_object, plate_text

_MOST_PEOPLE = 12


def plate(options: argparse.Namespace) -> int:
    """Say it; status 3 where it does not fit, or nobody can say. Raises CannotGoOn for wrong use."""
    if not 1 <= options.people <= _MOST_PEOPLE:
        remedy = f"give 1 to {_MOST_PEOPLE}"
        raise CannotGoOn([Problem(where="--people", what=f"`{options.people}` cannot be", remedy=remedy)])
    with household_of(options) as household:
        asked = PlateAsked(
            texts=_texts(options),
            sitting=options.sitting,
            people=options.people,
            sure=tolerance_of(options, household),
            is_weighed=options.weighed,
            profile=options.profile,
            before=_before(options, household),
        )
        answer, faults = on_plate(household, asked)
    if faults:
        return at_fault("this plate", faults)
    if options.json:
        print(json.dumps(plate_object(answer), ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.style import style_of_output

        print(plate_text(answer, style_of_output()), end="")
    return 0 if answer.fits else 3


def _texts(options: argparse.Namespace) -> list[str]:
    texts = [*options.text, *(read_lines(options.file) if options.file is not None else ())]
    texts = [text for text in texts if text.strip() and not text.lstrip().startswith("#")]
    if not texts:
        remedy = 'name what is on it, such as plate "170 g firm tofu" "75 g broccoli"'
        raise CannotGoOn([Problem(where="TEXT", what="there is nothing on the plate", remedy=remedy)])
    return texts


def _before(options: argparse.Namespace, household: Household) -> Stacking | None:
    """Whose log counts and how, where one is kept."""
    if not household.is_kept:
        return None
    home, at = household.settled(), moment_of(options, options.at, "--at")
    return Stacking(
        at=at, window_hours=home.window_hours, fade=home.fade, own=home.own, who=(person(options.who, "--who"),),
        offsets_min=offsets_at(at),
    )  # fmt: skip
