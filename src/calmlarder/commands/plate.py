"""`calmlarder plate`: what a plate brings, and whether it fits."""

import json

from calmlarder.commands import given
from calmlarder.commands.inputs import at_fault, household_of, person, tolerance_of
from calmlarder.commands.moment import moment_of
from calmlarder.household.diary import log
from calmlarder.household.people import MOST_PEOPLE
from calmlarder.household.plate import PlateAsked, counts_before, plate_eaten
from calmlarder.household.plate import plate as on_plate
from calmlarder.larder.files import read_lines
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.plate_text import plate_object, plate_text


def plate(options: given.Plate) -> int:
    """Say it; status 3 where it does not fit, or nobody can say. Raises CannotGoOn for wrong use."""
    if not 1 <= options.people <= MOST_PEOPLE:
        remedy = f"give 1 to {MOST_PEOPLE}"
        raise CannotGoOn([Problem(where="--people", what=f"`{options.people}` cannot be", remedy=remedy)])
    with household_of(options) as household:
        at, who = moment_of(options, options.at, "--at"), person(options.who, "--who")
        asked = PlateAsked(
            texts=_texts(options),
            sitting=options.sitting,
            people=options.people,
            sure=tolerance_of(options, household),
            is_weighed=options.weighed,
            profile=options.profile,
            before=counts_before(household, at, who),
        )
        found = on_plate(household, asked)
        if found.faults:
            return at_fault("this plate", found.faults)
        if options.log:
            log(household, [plate_eaten(household, found, at, who)])
    answer = found.answer
    if options.json:
        print(json.dumps(plate_object(answer), ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.style import style_of_output

        print(plate_text(answer, style_of_output()), end="")
        if options.log:
            print(f"\nLogged as eaten at {at:%H:%M}.")
    return 0 if answer.fits else 3


def _texts(options: given.Plate) -> list[str]:
    texts = [*options.text, *(read_lines(options.file) if options.file is not None else ())]
    texts = [text for text in texts if text.strip() and not text.lstrip().startswith("#")]
    if not texts:
        remedy = 'name what is on it, such as plate "170 g firm tofu" "75 g broccoli"'
        raise CannotGoOn([Problem(where="TEXT", what="there is nothing on the plate", remedy=remedy)])
    return texts
