"""What is shared, before it has a form: a dinner, a plan, an adapted recipe or a list, as headings and lines.

Nothing of the home goes along but the food itself: no line as it was typed, no owner, nothing that was eaten before.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Literal, NamedTuple

from calmlarder.compose.dinner import Dinner, PlateUse
from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.larder.freezing import ToFreeze
from calmlarder.larder.lot import Lot
from calmlarder.plan.planned import Planned, SittingPlanned, ToBuy
from calmlarder.render.caution import CAUTION
from calmlarder.render.manner import PLAIN, Manner
from calmlarder.render.nourishment import energy_words, protein_words
from calmlarder.render.of_limit import of_limit
from calmlarder.render.thaw_text import freeze_words, thaw_first, thaw_words
from calmlarder.tables.book import Tables

_PAST_BEST = "past its best"  # as the cautions of a dinner say it
Kind = Literal["ingredients", "steps", "timeline", "lines", "words"]


class Part(NamedTuple):
    """A heading and what stands below it; steps are numbered."""

    heading: str
    kind: Kind
    lines: tuple[str, ...]


class Level(NamedTuple):
    """How near one person comes to a limit: grams likely and at most, each beside its limit, and how full it is."""

    name: str
    likely_g: float
    at_most_g: float
    limit_g: float
    end_g: float | None
    share: float

    @property
    def likely(self) -> str:
        """What is likely, of its limit."""
        return of_limit(self.likely_g, self.limit_g)

    @property
    def at_most(self) -> str:
        """What may come at most, of the limit of that."""
        return f"{self.at_most_g:.2f}" if self.end_g is None else of_limit(self.at_most_g, self.end_g)


class Recipe(NamedTuple):
    """What makes a sheet a recipe; figures of one person are left out where one of a food is unknown."""

    serves: int
    minutes: int | None = None
    kcal: float | None = None
    protein_g: float | None = None
    fibre_g: float | None = None


class Sheet(NamedTuple):
    """One page. `dishes` are the recipes of a plan, folded up below it."""

    title: str
    about: str
    parts: tuple[Part, ...]
    cautions: tuple[str, ...]
    levels: tuple[Level, ...] = ()
    recipe: Recipe | None = None
    dishes: "tuple[Sheet, ...]" = ()


def dinner_sheet(dinner: Dinner, manner: Manner = PLAIN) -> Sheet:
    """A dinner to cook from."""
    dinner = manner.dinner(dinner)
    each, granted = dinner.per_person, tuple(f"{thing}, taken for granted" for thing in dinner.taken_for_granted)
    figures = f"{protein_words(dinner)}, {energy_words(dinner)}{' each' if dinner.people > 1 else ''}"
    moments = tuple(
        f"{one.start_min // 60}:{one.start_min % 60:02d} {one.what}"
        + ("" if one.hands_on or not one.minutes else f", {one.minutes} min by itself")
        for one in dinner.timeline.moments
    )
    return Sheet(
        title=dinner.title,
        about=f"Serves {dinner.people}, {_minutes(dinner.minutes)}; {figures}",
        parts=(
            Part("Ingredients", "ingredients", (*(ingredient(use, manner) for use in dinner.uses), *granted)),
            Part("Method", "steps", (*filter(None, [thaw_first(dinner)]), *dinner.steps)),
            Part("One cook, minutes from the start", "timeline", moments),
        ),
        cautions=(*dinner.cautions, *_from_memory(dinner), CAUTION),
        levels=_levels(dinner),
        recipe=Recipe(
            serves=dinner.people,
            minutes=dinner.minutes,
            kcal=None if dinner.unknown_energy else each.energy_kcal,
            protein_g=None if dinner.unknown_nutrients else each.protein_g,
            fibre_g=None if dinner.unknown_nutrients else each.fibre_g,
        ),
    )


def ingredient(use: PlateUse, manner: Manner = PLAIN) -> str:
    """A line of the ingredients; what a dish may weigh less exactly has its household measure."""
    how = {"weigh": "weigh it", "box": "from its box"}.get(use.how, use.household or "by eye")
    return f"{manner.amount(use.grams)} {use.name} ({how})"


def _levels(dinner: Dinner) -> tuple[Level, ...]:
    each = dinner.per_person
    return tuple(_level(key, each.loads_g[key], each.at_most_g[key], *each.limits_g[key]) for key in each.limits_g)


def _level(key: str, likely: float, at_most: float, typical: float, most: float | None) -> Level:
    share = max(likely / typical, at_most / most if most else 0.0)
    return Level(CAP_WORDS.get(key, key), likely, at_most, typical, most, share)


def _from_memory(dinner: Dinner) -> tuple[str, ...]:
    names = [part.name for part in dinner.contributions if any("recalled" in one for one in part.not_measured)]
    return (f"From memory, not verified: the figures of {', '.join(names)}.",) if names else ()


def plan_sheet(planned: Planned, tables: Tables, manner: Manner = PLAIN) -> Sheet:
    """The days on one page, with what to buy and to freeze, and every dish below."""
    planned = manner.planned(planned)
    cooked = [one.dinner for one in planned.sittings if one.dinner is not None and one.leftover_of is None]
    parts = [
        Part(f"{one.at:%A %d %B, %H:%M}, {one.sitting}", "words", _sitting(one, planned)) for one in planned.sittings
    ]
    parts += [Part("To buy", "lines", bought)] if (bought := to_buy(planned)) else []
    freezing = (*_to_freeze(planned.freeze_today, tables, planned.sittings), *_thawed(planned))
    parts += [Part("Freeze today", "lines", freezing)] if freezing else []
    first, last = planned.sittings[0].at, planned.sittings[-1].at
    return Sheet(
        title=f"{first:%d %B} to {last:%d %B %Y}",
        about=f"{len(planned.sittings)} meals, {len(cooked)} to cook",
        parts=tuple(parts),
        cautions=(CAUTION,),
        dishes=tuple(dinner_sheet(one, manner) for one in cooked),
    )


def _sitting(one: SittingPlanned, planned: Planned) -> tuple[str, ...]:
    if one.dinner is None:
        return (f"None found yet: {one.why_empty}.",)
    if one.leftover_of is not None:
        how = "heated once until steaming" if one.warmed else "eaten cold"
        return (f"{one.dinner.title}, the box of {planned.sittings[one.leftover_of].at:%A}, {how}.",)
    later = (
        f" Cook for {one.dinner.people}: cool the rest fast and box it for {planned.sittings[one.boxed_for].at:%A}."
        if one.boxed_for is not None
        else ""
    )
    amounts = ", ".join(f"{use.grams} g {use.name}" for use in one.dinner.uses)
    people = f"{one.people} {'person' if one.people == 1 else 'people'}"
    past = tuple(caution for caution in one.dinner.cautions if _PAST_BEST in caution)
    thawed = thaw_words(one, planned.sittings[0], PLAIN.amount)
    return (f"{one.dinner.title}, for {people}, {_minutes(one.dinner.minutes)}.{later}", *thawed, f"{amounts}.", *past)


def _minutes(count: int) -> str:
    return f"{count} minute{'s' * (count != 1)}"


def to_buy(planned: Planned) -> tuple[str, ...]:
    """What the plan would have bought, but for what goes into the freezer today and would do."""
    return tuple(f"{one.grams} g {one.name}: {one.because}" for one in planned.buy if not _is_frozen(one, planned))


def _is_frozen(one: ToBuy, planned: Planned) -> bool:
    return sum(other.grams for other in planned.freeze_today if other.food == one.food) >= one.grams


def _thawed(planned: Planned) -> tuple[str, ...]:
    return tuple(
        f"{one.name} from the freezer, thawed, saves buying {one.grams} g: {one.because}"
        for one in planned.buy
        if _is_frozen(one, planned)
    )


def _to_freeze(ones: Iterable[ToFreeze], tables: Tables, sittings: Sequence[SittingPlanned] = ()) -> tuple[str, ...]:
    return tuple(f"{one.grams:g} g {tables.food_by_id[one.food].name}: {freeze_words(one, sittings)}" for one in ones)


def shopping_sheet(planned: Planned) -> Sheet:
    """What to buy for the plan."""
    first, last = planned.sittings[0].at, planned.sittings[-1].at
    lines = to_buy(planned) or ("Nothing: the plan does with what is there.",)
    about = f"for {first:%d %B} to {last:%d %B %Y}"
    return Sheet("To buy", about, (Part("Things", "lines", lines),), ("Read labels, and mind allergies.",))


def freezer_sheet(frozen: Sequence[Lot], today: Sequence[ToFreeze], tables: Tables) -> Sheet:
    """What is in the freezer, and what should go into it today; what is somebody else's is not told."""
    ours = [lot for lot in frozen if lot.owner is None]
    there = tuple(f"{lot.grams:g} g {tables.food_by_id[lot.food].name}" for lot in ours) or ("Nothing.",)
    parts = [Part("In the freezer", "lines", there)]
    parts += [Part("Freeze today", "lines", _to_freeze(today, tables))] if today else []
    caution = "Thaw in the fridge, heat until steaming, never freeze again what has thawed; your local food-safety "
    return Sheet(
        "Freezer",
        f"{len(ours)} thing{'' if len(ours) == 1 else 's'} of ours",
        tuple(parts),
        (f"{caution}authority comes first.",),
    )


def recipe_sheet(kept: Mapping[str, Any]) -> Sheet:
    """A recipe that was made to fit, as it was kept. Raises KeyError, TypeError, ValueError for another shape."""
    parts = [Part("Ingredients", "ingredients", _words(kept["ingredients"]))]
    parts += [Part("Method", "steps", _words(kept["steps"]))] if kept["steps"] else []
    parts += [Part("Notes", "lines", _words(kept["notes"]))] if kept["notes"] else []
    serves, levels = int(kept["serves"]), tuple(_level(*one) for one in kept["levels"])
    return Sheet(str(kept["title"]), f"Serves {serves}", tuple(parts), (CAUTION,), levels, Recipe(serves))


def _words(lines: Iterable[object]) -> tuple[str, ...]:
    return tuple(map(str, lines))
