"""A recipe read, brought under the caps, written anew, checked, and only then handed on."""

import json
from collections.abc import Sequence
from decimal import Decimal
from typing import Any, NamedTuple

from calmlarder.adapt.adapt import MOST_SERVES as MOST_SERVES
from calmlarder.adapt.adapt import adapt
from calmlarder.adapt.as_listed import as_listed
from calmlarder.adapt.changed_lines import Page, changed_recipe, parts_of
from calmlarder.adapt.changed_steps import steps_after
from calmlarder.adapt.model import Adapted, AtHome
from calmlarder.adapt.model import Eaters as Eaters
from calmlarder.adapt.nutrition import nutrition_of
from calmlarder.adapt.oil_lowered import with_all_the_oil, with_oil_lowered
from calmlarder.adapt.outside import marked_below, marked_beside, named_outside, served_with
from calmlarder.adapt.own_notes import own_notes
from calmlarder.adapt.remarks import (
    another_dish,
    labels_to_read,
    many_leeks,
    out_all_the_same,
    taken_from_tins,
    weigh_these,
)
from calmlarder.adapt.said_above import without_what_is_gone, without_what_is_gone_below
from calmlarder.adapt.settled import Settler
from calmlarder.adapt.step_notes import without_oven_times
from calmlarder.adapt.titles import retitled
from calmlarder.adapt.told import told_of
from calmlarder.adapt.usual_amounts import with_usual_amounts
from calmlarder.checks.adapted import verify
from calmlarder.cookbook.by_the_spoon import served_by_the_spoon
from calmlarder.cookbook.in_company import read_in_company
from calmlarder.cookbook.jsonld import ingredients_key
from calmlarder.cookbook.part_headings import with_headings
from calmlarder.cookbook.recipe import Form, IngredientRead, Recipe
from calmlarder.cookbook.serves import served_in_dishes
from calmlarder.cookbook.write import said_anew, with_fields
from calmlarder.household.household import Household
from calmlarder.household.swapping import grams_to_eat
from calmlarder.household.table import Seats, eaters_at
from calmlarder.intake.table import table_profile
from calmlarder.larder.lot import Lot, why_unfit
from calmlarder.render.adapt_json import adapt_object, at_home_object
from calmlarder.tables.vocabulary import DIETS

GUESSED = "The page marks no recipe: its headings and lists were read, which is a guess. Hold it against the page."
SENTENCES = "The list was made of the amounts in its sentences, which is a guess. Hold it against the recipe."


class Answer(NamedTuple):
    """What was read, a food each, what has to change, the changed recipe if any; `faults` are of the program itself.

    `shared` is the recipe that fits, as it may be shared; None where it does not.
    """

    recipe: Recipe
    reads: tuple[IngredientRead, ...]
    adapted: Adapted
    changed: str | None
    told: dict[str, Any]
    faults: tuple[str, ...]
    shared: dict[str, Any] | None = None


def eaters_at_home(household: Household) -> Eaters:
    """Who eats by the settings of the home, and what is there."""
    home = household.settled()
    there = grams_to_eat([one.lot for one in household.lots()], home.avoid) if household.is_kept else {}
    return Eaters(profile=household.profile(), diet=home.diet, avoid=home.avoid, sure=home.tolerance, at_home=there)


def eaters_named(household: Household, seats: Seats, asked: Eaters) -> Eaters:
    """Who is named at the table: everybody's limits, the strictest diet, all allergens, besides what was asked for.

    Raises CannotGoOn for somebody who is not here.
    """
    table = eaters_at(household, seats, asked.sitting)
    avoid = tuple(dict.fromkeys((*asked.avoid, *(one for eater in table for one in eater.avoid))))
    return Eaters(
        profile=table_profile(table),
        sitting=asked.sitting,
        diet=min((one.diet for one in table), key=DIETS.index),
        avoid=avoid,
        sure=asked.sure,
        at_home=grams_to_eat([one.lot for one in household.lots()], avoid) if household.is_kept else {},
    )


def _for_how_many(recipe: Recipe, serves: int) -> tuple[str, ...]:
    """What was taken for granted of how many it is for: a bowl each, the fewer of a range; else nothing."""
    if serves != recipe.serves:
        return ()
    if recipe.serves_up_to is not None and recipe.serves_up_to > serves:
        return (f"It is said to serve {serves} to {recipe.serves_up_to}: reckoned for {serves}, the larger plates.",)
    if serves in {served_in_dishes(recipe.pieces), served_by_the_spoon(recipe.title, recipe.pieces)}:
        return (f"It is said to make {recipe.pieces}: taken for {serves} people; say another number with --serves.",)
    return ()


def adapted_recipe(
    household: Household, recipe: Recipe, serves: int, eaters: Eaters, form: Form | None = None
) -> Answer:
    """The smallest change of a recipe in so many servings; an answer with faults is not to be shown."""
    tables = household.plain_tables
    form = form or ("text" if recipe.page else recipe.form)
    settler = Settler(household.recipe_reader, eaters, tables)
    lines = with_headings(read_in_company(recipe, household.recipe_reader), tables, recipe.title)
    parts = parts_of([settler.settle(line) for line in lines])
    reads = with_usual_amounts([part.read for part in parts], serves, eaters, tables)
    told = told_of(recipe, reads, tables)
    adapted = without_oven_times(adapt(reads, serves, eaters, tables, told), recipe.steps)
    remarks = ((GUESSED if recipe.page else SENTENCES,) if recipe.guessed else ()) + _for_how_many(recipe, serves)
    remarks += out_all_the_same(adapted, tables)
    remarks += another_dish(recipe, reads, adapted, told, tables)
    remarks += served_with(recipe, reads, eaters, tables) + labels_to_read(reads, adapted, tables)
    remarks += many_leeks(adapted, tables) + taken_from_tins(reads) + weigh_these(reads, adapted, tables)
    words = {"warnings": named_outside(recipe, reads, eaters, tables), "remarks": remarks}
    adapted = adapted.model_copy(update=words)
    adapted = with_oil_lowered(recipe.steps, parts, adapted, tables)
    steps, notes = steps_after(with_all_the_oil(recipe.steps, adapted, tables), parts, adapted, tables)
    now = frozenset(one.food for change in adapted.changes for one in change.to)
    steps = marked_beside(steps, (recipe, reads, now), eaters, tables) if adapted.changes else steps
    said = said_anew(recipe, retitled(recipe.title, reads, adapted, told, tables), steps)
    said = without_what_is_gone(said, parts, adapted, tables)
    said = marked_below(without_what_is_gone_below(said, parts, adapted, tables), recipe, reads, eaters, tables)
    own = own_notes(recipe.notes, reads, adapted, tables) if form != "jsonld" else ()
    changed = changed_recipe(Page(said, parts, adapted), form, tables, (*own, *notes))
    if changed is not None and adapted.changes and form == "jsonld":
        changed = with_fields(changed, {"nutrition": nutrition_of(adapted, tables)})
    shown = adapt_object(recipe.title, reads, adapted, changed)
    sure = eaters.sure.model_dump()
    request = {
        **eaters.profile.plain,
        "sitting": eaters.sitting,
        "diet": eaters.diet,
        "avoid": eaters.avoid,
        **sure,
    }
    shared = None
    if adapted.holds and adapted.after is not None:
        whole = changed_recipe(Page(said, parts, adapted), "jsonld", tables)
        shared = _shared(said, adapted, json.loads(whole) if whole else {}, notes)
    faults = verify(shown, request, household.folders)
    return Answer(recipe, reads, as_listed(adapted, recipe, parts, tables), changed, shown, faults, shared)


def with_larder(answer: Answer, lots: Sequence[Lot]) -> Answer:
    """The answer with what these lots hold of the recipe's foods and of the stand-ins, as it may be eaten today."""
    adapted = answer.adapted
    foods = {read.food for read in answer.reads} | {one.food for change in adapted.changes for one in change.to}
    found: dict[str, AtHome] = {}
    for lot in lots:
        if lot.food in foods and why_unfit(lot) is None:
            before = found.get(lot.food, AtHome(grams=Decimal(0), days_left=None))
            days = [day for day in (before.days_left, lot.days_left) if day is not None]
            grams = before.grams + Decimal(str(lot.grams))
            found[lot.food] = AtHome(grams=grams, days_left=min(days, default=None))
    told = {**answer.told, "at_home": at_home_object(found)}
    return answer._replace(adapted=adapted.model_copy(update={"at_home": found}), told=told)


def _shared(recipe: Recipe, adapted: Adapted, changed: dict[str, Any], notes: Sequence[str]) -> dict[str, Any]:
    """The recipe that fits in plain values, with what was not counted named behind it."""
    after = adapted.after or adapted.before
    unread = [f"Not counted: {one.text} ({one.why})" for one in adapted.in_doubt]
    lines = changed[ingredients_key(changed)] if changed else recipe.ingredients
    return {
        "title": recipe.title,
        "serves": after.serves,
        "ingredients": list(lines),
        "steps": list(recipe.steps),
        "notes": [*notes, *unread, *adapted.warnings, *adapted.remarks],
        "levels": [
            [key, float(after.loads_g[key]), float(after.at_most_g[key]), float(typical), most and float(most)]
            for key, (typical, most) in adapted.limits_g.items()
        ],
    }
