"""`calmlarder plate`: what a plate brings, and whether it fits."""

import json
from collections.abc import Sequence
from textwrap import wrap

from calmlarder.commands.given.foods import Plate
from calmlarder.commands.inputs import at_fault, household_of, person, seats_of, tolerance_of
from calmlarder.commands.moment import moment_of
from calmlarder.household.challenge_dose import dose_of, keep_doses
from calmlarder.household.diary import log
from calmlarder.household.household import Household
from calmlarder.household.people import MOST_PEOPLE
from calmlarder.household.plate import PlateAsked, counts_before, plate_eaten, shares_of_plate
from calmlarder.household.plate import plate as on_plate
from calmlarder.household.table import eaters_at
from calmlarder.intake.dose import Dose
from calmlarder.intake.table import Eater
from calmlarder.larder.files import read_lines
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.plate_text import plate_object, plate_text
from calmlarder.render.portions_text import dose_words


def plate(options: Plate) -> int:
    """Say it; status 3 where it does not fit, or nobody can say. Raises CannotGoOn for wrong use."""
    if not 1 <= options.people <= MOST_PEOPLE:
        remedy = f"give 1 to {MOST_PEOPLE}"
        raise CannotGoOn([Problem(where="--people", what=f"`{options.people}` is out of range", remedy=remedy)])
    with household_of(options) as household:
        at, who = moment_of(options, options.at, "--at"), person(options.who, "--who")
        seats = seats_of(options)
        eaters = () if seats is None else eaters_at(household, seats, options.sitting)
        names = (who,) if seats is None else seats.names
        dose = _dose(options, household, who) if options.dose else None
        asked = PlateAsked(
            texts=_texts(options),
            sitting=options.sitting,
            people=len(eaters) or options.people,
            sure=tolerance_of(options, household),
            is_weighed=options.weighed,
            profile=options.profile,
            before=counts_before(household, at, *names) if names else None,
            eaters=eaters,
            dose=dose,
        )
        found = on_plate(household, asked)
        if found.faults:
            return at_fault("this plate", found.faults)
        if options.log:
            shares = shares_of_plate(asked, who)
            with household.store.as_one("log a plate"):
                log(household, [plate_eaten(household, found, at, share) for share in shares.items()])
                if dose is not None:
                    keep_doses(household, [dose], at)
    answer = found.answer
    if options.json:
        print(json.dumps(plate_object(answer), ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.style import style_of_output

        if dose is not None:
            print("\n".join(wrap(dose_words(dose), style_of_output().width)) + "\n")
        if eaters:
            print(f"Shares by appetite: {_shares(eaters)}\n")
        print(plate_text(answer, style_of_output()), end="")
        if options.log:
            print(f"\nLogged as eaten at {at:%H:%M}.")
    return 0 if answer.fits else 3


def _shares(eaters: Sequence[Eater]) -> str:
    whole = sum(one.appetite for one in eaters)
    return ", ".join(f"{one.who} {round(100 * one.appetite / whole)} %" for one in eaters)


def _dose(options: Plate, household: Household, who: str) -> Dose:
    """Today's dose of one person who eats alone. Raises CannotGoOn where none is due."""
    if options.people > 1 or options.eaters is not None:
        remedy = "leave out --dose: it lies on one person's plate"
        raise CannotGoOn([Problem(where="--dose", what="cannot be shared", remedy=remedy)])
    dose = dose_of(household, who)
    if dose is None:
        remedy = "`calmlarder challenge today` says what today asks for"
        raise CannotGoOn([Problem(where="--dose", what="no dose is due today", remedy=remedy)])
    return dose


def _texts(options: Plate) -> list[str]:
    texts = [*options.text, *(read_lines(options.file) if options.file is not None else ())]
    texts = [text for text in texts if text.strip() and not text.lstrip().startswith("#")]
    if not texts and not options.dose:
        remedy = 'name what is on it, such as plate "170 g firm tofu" "75 g broccoli"'
        raise CannotGoOn([Problem(where="TEXT", what="there is nothing on the plate", remedy=remedy)])
    return texts
