"""The request of an evening: what is settled at home, and what the cook asks for over it."""

from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from calmlarder.history.variety import had_of, since
from calmlarder.household.going_on import is_challenged
from calmlarder.household.household import Household
from calmlarder.household.settings import Settled, people_of, settled
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.eaten import ME
from calmlarder.intake.own import laid_over
from calmlarder.intake.own_profile import BASE
from calmlarder.intake.stacking import Stacking
from calmlarder.intake.zone import offsets_at
from calmlarder.kitchen.equipment import Equipment
from calmlarder.larder.box import boxes_of, with_boxes
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import DIETS

if TYPE_CHECKING:
    from calmlarder.compose.request import DinnerRequest
    from calmlarder.household.choices import Choices


NOTHING_WITH = "nothing with "  # allergens, as what holds at home says them


class Evening(NamedTuple):
    """All that an answer rests on; nothing of it is read from the store any more, so that a thread may work on it.

    `tables` hold the boxed dishes among `lots`; `folders` are where the checks read the tables again; `from_home`
    says in words what was settled at home.
    """

    request: "DinnerRequest"
    lots: Sequence[Lot]
    tables: Tables
    folders: Sequence[Path]
    from_home: tuple[str, ...] = ()


class _Setting(NamedTuple):
    """A setting that a choice takes the place of: the choice's field, the setting's name, its value, its words."""

    field: str
    name: str
    value: Callable[[Settled], Any]
    words: Callable[[Any], str]


_SETTINGS = (
    _Setting("people", "people", lambda home: home.people, "for {}".format),
    _Setting("profile", "profile", lambda home: home.profile, "limits: {}".format),
    _Setting("diet", "diet", lambda home: home.diet, "{}".format),
    _Setting("minutes", "minutes", lambda home: home.minutes, "{} minutes at most".format),
    _Setting("eye_percent", "eye", lambda home: home.tolerance.eye_percent, "a guess {} % off".format),
    _Setting("scale_grams", "scale", lambda home: home.tolerance.scale_grams, "the scale {} g off".format),
    _Setting("rings", "rings", lambda home: home.equipment.rings, "hob rings: {}".format),
    _Setting("window_hours", "window", lambda home: home.window_hours, "hours that count: {:g}".format),
    _Setting(
        "fade", "fade", lambda home: home.fade,
        lambda fades: "what was eaten fades" if fades else "what was eaten does not fade",
    ),
)  # fmt: skip


def evening(household: Household, choices: "Choices", lots: Sequence[Lot] | None = None) -> Evening:
    """The request, on these lots or on those of the larder. Raises CannotGoOn for a profile that is none.

    A choice takes the place of a setting. What protects the cook is added to, never taken away: allergens, foods
    never wanted, things the kitchen lacks. Allergens hold where the settings are left out, too. What must be in it is
    asked for on purpose, though it may be disliked.
    """
    lots = [one.lot for one in household.lots()] if lots is None else lots
    tables = with_boxes(household.plain_tables, boxes_of(lots))
    from calmlarder.compose.request import DinnerRequest, protein_floor

    home = settled_for(household, choices)
    is_dosed = choices.use_challenge and household.is_kept
    is_dosed = is_dosed and any(is_challenged(household, name) for name in choices.eaters or (ME,))
    use_log = choices.use_log or is_dosed
    values, words = _chosen_or_settled(choices, home)
    how, words_of_hours = stacking_for(choices, home, household.now() if choices.at is None else choices.at)
    me = people_of(home)[0]
    kept = household.settled().avoid if choices.use_allergens else ()
    added = {
        "without": tuple(food for food in me.never if food not in choices.use),
        "disliked": tuple(food for food in me.disliked if food not in choices.use),
    }
    protein_g, words_of_protein = _protein(choices, home)
    floor_g = protein_floor(choices.sitting, protein_g) if choices.protein_floor_g is None else choices.protein_floor_g
    request = DinnerRequest(
        today=household.today,
        profile=household.profile_named(values["profile"]),
        sitting=choices.sitting,
        people=values["people"],
        protein_g=protein_g,
        protein_floor_g=floor_g,
        minutes=values["minutes"],
        diet=values["diet"],
        avoid=tuple(dict.fromkeys((*kept, *choices.avoid))),
        without=(*choices.without, *added["without"]),
        use=choices.use,
        disliked=(*choices.disliked, *added["disliked"]),
        lysine_mg=choices.lysine_mg,
        like=choices.like,
        dish=choices.dish,
        use_shared=choices.use_shared,
        count=choices.count,
        seconds=choices.seconds,
        tolerance=Tolerance(eye_percent=values["eye_percent"], scale_grams=values["scale_grams"]),
        equipment=Equipment(
            rings=values["rings"], missing=tuple(dict.fromkeys((*home.equipment.missing, *choices.missing)))
        ),
        eaten=household.eaten(how.at, how.longest_hours) if use_log else (),
        stacking=how if use_log and household.is_kept else None,
        had=had_of(household.eaten_since(since(household.today)), household.today) if choices.use_log else (),
        declined=home.declined_on(household.today),
    )
    if choices.eaters or choices.guests:
        return _at_table(household, choices, Evening(request, lots, tables, household.folders, tuple(words_of_hours)))
    if is_dosed:
        words += [f"a challenge goes on, so that the limits of {BASE} hold"] if choices.profile is None else []
        profile = request.profile if choices.profile else household.profile_named(BASE)
        from calmlarder.household.challenge_dose import with_doses

        request = with_doses(household, request.model_copy(update={"profile": profile}), lots)
    words += [*words_of_hours, *words_of_protein]
    words += [f"{NOTHING_WITH}{_or(kept)}"] if kept else []
    words += [f"a kitchen with no {', '.join(home.equipment.missing)}"] if home.equipment.missing else []
    for foods, said in ((added["without"], "never"), (added["disliked"], "rather no")):
        words += [f"{said} {', '.join(tables.food_by_id[food].name for food in foods)}"] if foods else []
    words += [f"{'never' if one.for_good else 'not soon'} {one.name}" for one in request.declined]
    return Evening(request, lots, tables, household.folders, tuple(words))


def _or(words: Sequence[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"


def _at_table(household: Household, choices: "Choices", before: Evening) -> Evening:
    """The same for people who are named: their needs take the place of the home's, minutes and kitchen stay."""
    from calmlarder.household.table import Seats, at_table, eaters_at

    plain = before.request.model_copy(
        update={
            "diet": choices.diet or "omnivore",
            "avoid": choices.avoid,
            "without": choices.without,
            "disliked": choices.disliked,
        }
    )
    eaters = eaters_at(household, Seats(choices.eaters, choices.guests), choices.sitting)
    if choices.diet is not None:  # of the whole dinner: nobody is served apart what it leaves out
        strictest = {one.who: min(one.diet, choices.diet, key=DIETS.index) for one in eaters}
        eaters = tuple(one.model_copy(update={"diet": strictest[one.who]}) for one in eaters)
    request = at_table(plain, eaters)
    if plain.stacking is not None:
        longest = max(plain.stacking.hours_of(one.who) for one in eaters)
        request = request.model_copy(update={"eaten": household.eaten(plain.stacking.at, longest)})
    words = [f"for {', '.join(f'{one.who} (limits: {one.profile.name})' for one in eaters)}"]
    if household.is_kept:
        from calmlarder.household.challenge_dose import with_doses

        request = with_doses(household, request, before.lots)
    return before._replace(request=request, from_home=(*words, *before.from_home))


def settled_for(household: Household, choices: "Choices") -> Settled:
    """What is settled at home; the usual where the settings are left out."""
    return household.settled() if choices.use_settings else settled({}, household.tables)


def stacking_for(choices: "Choices", home: Settled, at: datetime) -> tuple[Stacking, list[str]]:
    """How what was eaten counts at a moment, and whose own hours come from the home, in words.

    Hours and fade that were chosen are for everybody, so they take the place of those of single people. Of several
    people nobody knows who they are: then whoever has the most of a group counts.
    """
    over = {
        name: None
        for name, chosen in (("window_hours", choices.window_hours), ("fade", choices.fade))
        if chosen is not None
    }
    kept = [
        own for one in home.own if (own := one.model_copy(update=over)).window_hours is not None or own.fade is not None
    ]
    people = home.people if choices.people is None else choices.people
    stacking = Stacking(
        at=at,
        window_hours=home.window_hours if choices.window_hours is None else choices.window_hours,
        fade=home.fade if choices.fade is None else choices.fade,
        own=laid_over(tuple(kept), choices.own),
        who=choices.who or ((ME,) if people == 1 else ()),
        offsets_min=offsets_at(at),
    )
    return stacking, [f"hours of their own, {own.words}" for own in kept]


def _chosen_or_settled(choices: "Choices", home: Settled) -> tuple[dict[str, Any], list[str]]:
    values: dict[str, Any] = {}
    words: list[str] = []
    for setting in _SETTINGS:
        chosen = getattr(choices, setting.field)
        value = setting.value(home) if chosen is None else chosen
        if setting.field == "minutes" and choices.any_time:
            value = None
        elif chosen is None and setting.name in home.given and value is not None:
            words.append(setting.words(value))
        values[setting.field] = value
    return values, words


def _protein(choices: "Choices", home: Settled) -> tuple[float, list[str]]:
    """Protein to aim at a person, g, and in words where it is the home's, which holds for dinners."""
    from calmlarder.compose.request import PROTEIN_TARGET_G

    if choices.protein_g is not None:
        return choices.protein_g, []
    if choices.sitting != "dinner" or "protein_g" not in home.given:
        return PROTEIN_TARGET_G[choices.sitting], []
    return float(home.protein_g), [f"{home.protein_g} g protein to aim at"]
