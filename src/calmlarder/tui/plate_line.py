"""A line such as `plate 170 g tofu, 75 g broccoli`: what a plate brings, whether it fits, and into the log with it."""

import re
from fractions import Fraction

from calmlarder.household.diary import log
from calmlarder.household.household import Household
from calmlarder.household.plate import Plate, PlateAsked, counts_before, plate, plate_eaten
from calmlarder.intake.eaten import ME
from calmlarder.render.plate_text import plate_glance, plate_text
from calmlarder.render.style import Style

LOG, FIGURES = "Log it as eaten", "Show all figures, and what to take less of"
_BETWEEN = re.compile(r"[,;](?!\d)")  # a comma inside a number is none
_COLUMNS = 72  # of the page of figures
_WAITING = "a plate: name what is on it with its amounts, such as 170 g tofu, 75 g broccoli"
_AT_FAULT = "calmlarder is at fault: this plate did not pass its own check and is not shown"


def plate_of(text: str, kitchen: Household, wants_change: bool = False) -> Plate | None:
    """My plate of foods with commas between; None where nothing is named yet."""
    texts = [part.strip() for part in _BETWEEN.split(text) if part.strip()]
    if not texts:
        return None
    before = counts_before(kitchen, kitchen.now(), ME)
    sure = kitchen.settled().tolerance
    return plate(kitchen, PlateAsked(texts, "dinner", 1, sure, False, before=before, wants_change=wants_change))


def plate_words(found: Plate | None) -> str:
    """What stands below the line."""
    if found is None:
        return _WAITING
    return _AT_FAULT if found.faults else plate_glance(found.answer)


def plate_page(text: str, kitchen: Household) -> str:
    """The whole answer."""
    found = plate_of(text, kitchen, wants_change=True)
    return (
        plate_words(found)
        if found is None or found.faults
        else plate_text(found.answer, Style(bold=False, blocks=True, width=_COLUMNS))
    )


def log_plate(found: Plate, kitchen: Household) -> None:
    """Into my log, as one entry."""
    log(kitchen, [plate_eaten(kitchen, found, kitchen.now(), (ME, Fraction(1)))])
