"""What a home has settled: who eats, what holds for them, and what the kitchen has. Kept as settings, one by one."""

from collections.abc import Iterable, Mapping
from datetime import date
from typing import Annotated, Any, TypeVar

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from calmlarder.history.variety import Declined, declined_of
from calmlarder.household.person import NO_LIMITS, Person
from calmlarder.intake.amounts import EYE_PERCENT, SCALE_GRAMS, USUAL_EYE, USUAL_SCALE, Tolerance
from calmlarder.intake.eaten import ME
from calmlarder.intake.own import MOST_HOURS, Own, owns_of
from calmlarder.intake.profile import OWN, name_of_today
from calmlarder.intake.stacking import WINDOW_HOURS
from calmlarder.kitchen.equipment import RINGS, THINGS, Equipment
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.manner import MEASURES, NAMINGS, Measures, Naming
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import ALLERGENS, DIETS, Allergen, Diet

# Least, usual and most of each number that is set; 0 minutes are any time. Common practice, no source.
NUMBERS: Mapping[str, tuple[int, int, int]] = {
    "people": (1, 1, 12),
    "protein_g": (0, 20, 100),
    "minutes": (0, 0, 600),
    "eye": (EYE_PERCENT[0], USUAL_EYE, EYE_PERCENT[1]),
    "scale": (SCALE_GRAMS[0], USUAL_SCALE, SCALE_GRAMS[1]),
    "rings": (RINGS[0], 2, RINGS[1]),
    "window": (0, round(WINDOW_HOURS), MOST_HOURS),
}
PERSONS = "persons"
SHORTEST_COOKING = 5  # minutes; less is no time that was meant: ours

One = TypeVar("One", bound=str)


class Settled(BaseModel):
    """Settings as they hold. `given` names those that were set; the rest is as usual."""

    model_config = ConfigDict(frozen=True)

    people: int
    protein_g: int
    minutes: Annotated[int | None, Field(ge=SHORTEST_COOKING)]
    diet: Diet
    profile: str
    avoid: tuple[Allergen, ...]
    never: tuple[str, ...]
    disliked: tuple[str, ...]
    tolerance: Tolerance
    equipment: Equipment
    window_hours: float
    fade: bool
    own: tuple[Own, ...]
    declined: str
    measures: Measures
    names: Naming
    persons: tuple[Person, ...]  # all who were told of; of me what is no setting of the home
    given: frozenset[str]

    def declined_on(self, today: date) -> tuple[Declined, ...]:
        """Dishes that were not wanted of late, as far as that still counts on a day."""
        return declined_of(self.declined, today)


def settled(settings: Mapping[str, Any], tables: Tables) -> Settled:
    """The settings of a home. What a later table no longer knows, or was never possible, counts as not set."""
    given: set[str] = set()
    persons = _persons(settings.get(PERSONS))
    mine = next((one for one in persons if one.name == ME), Person())
    profiles = (*tables.profiles, *((OWN,) if mine.own_limits else ()), NO_LIMITS)
    if settings.get("profile") not in profiles and "profile" in settings:
        settings = {**settings, "profile": name_of_today(str(settings["profile"]))}

    def number(name: str) -> int:
        least, usual, most = NUMBERS[name]
        value = settings.get(name)
        if isinstance(value, int) and least <= value <= most:
            given.add(name)
            return value
        return usual

    def words(name: str, known: Iterable[One]) -> tuple[One, ...]:
        held = str(settings.get(name, "")).split(",")
        found = tuple(word for word in known if word in held)
        given.update([name] if found else [])
        return found

    def word(name: str, known: Iterable[One], usual: One) -> One:
        found = words(name, known)
        return found[0] if len(found) == 1 else usual

    minutes = number("minutes")
    return Settled(
        people=number("people"),
        protein_g=number("protein_g"),
        minutes=minutes if minutes >= SHORTEST_COOKING else None,
        diet=word("diet", DIETS, "omnivore"),
        profile=word("profile", profiles, "elimination"),
        avoid=words("avoid", ALLERGENS),
        never=words("never", tables.food_by_id),
        disliked=words("dislike", tables.food_by_id),
        tolerance=Tolerance(eye_percent=number("eye"), scale_grams=number("scale")),
        equipment=Equipment(rings=number("rings"), missing=words("missing", THINGS)),
        window_hours=float(number("window")),
        fade=word("fade", ("yes", "no"), "no") == "yes",
        own=owns_of(str(settings.get("own", ""))),
        declined=str(settings.get("declined", "")),
        measures=word("measures", MEASURES, "metric"),
        names=word("names", NAMINGS, "british"),
        persons=persons,
        given=frozenset(given),
    )


def _persons(kept: Any) -> tuple[Person, ...]:
    """Those who were told of. Raises CannotGoOn where one cannot be read: nobody is to eat unprotected."""
    try:
        return tuple(Person.model_validate(one) for one in kept or ())
    except (ValidationError, TypeError):
        remedy = "`calmlarder undo` takes the last change back; else say it again with `calmlarder people set`"
        what = "somebody of the home was kept in a way that this program cannot read"
        raise CannotGoOn([Problem(where=PERSONS, what=what, remedy=remedy)]) from None


def people_of(home: Settled) -> tuple[Person, ...]:
    """Everybody of a home, me first: what the settings say of me holds for all who share a dish unnamed."""
    mine = next((one for one in home.persons if one.name == ME), Person())
    me = mine.model_copy(
        update={
            "diet": home.diet,
            "avoid": home.avoid,
            "never": home.never,
            "disliked": home.disliked,
            "protein_g": float(home.protein_g),
            "phase": mine.phase or ("elimination" if home.profile == "elimination" else None),
            "profile": home.profile,
        }
    )
    return (me, *(one for one in home.persons if one.name != ME))
