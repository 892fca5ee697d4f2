"""`calmlarder ate` and `calmlarder eaten`: what was eaten, and the log of the last days."""

import argparse
import json
from datetime import date, timedelta
from pathlib import Path
from typing import Any

from calmlarder.commands.kitchen_table import day_of, tables_of
from calmlarder.commands.larder import clear
from calmlarder.commands.moment import moment_of
from calmlarder.export.logged import eaten_line, eaten_object
from calmlarder.larder.box import box_named
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import LarderReader
from calmlarder.larder.usable import why_unfit
from calmlarder.matching.entry import read_entry
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.sitting.eaten import Eaten, Portion, loads_of, most_of
from calmlarder.store.eaten import KeptEaten, eaten_before, log
from calmlarder.store.home import home_folder
from calmlarder.store.larder import lots_on_day, used_up, with_kept_boxes
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_LONGEST_NAME = 40


def ate(options: argparse.Namespace) -> int:
    """Log one line. Raises CannotGoOn when it may mean several foods, or none."""
    today, at, who = day_of(options), moment_of(options, options.when, "--when"), person(options.who, "--who")
    with Store.at(home_folder(Path(options.home) if options.home else None)) as store:
        plain = tables_of(options)
        tables = with_kept_boxes(store, plain)
        text = " ".join(options.text)
        boxed = box_named(text, [one.lot for one in lots_on_day(store, today, plain)], tables)
        line, portion = (text, _one_box(boxed)) if boxed is not None else _read(text, options, plain)
        loads, unknown = loads_of([portion], tables)
        entry = Eaten(
            at=at, who=who, text=line, food=portion.food.id, title=portion.food.name,
            grams=round(portion.grams, 1), loads=loads, unknown=unknown,
        )  # fmt: skip
        kept = KeptEaten(log(store, entry, _from_box(store, portion, today, tables)), entry)
    if options.json:
        print(json.dumps({"eaten": [eaten_object(kept.id, kept.eaten)]}, ensure_ascii=False, indent=2))
    else:
        print(eaten_line(kept.id, kept.eaten))
    return 0


def eaten(options: argparse.Namespace) -> int:
    """The log of the last days."""
    if not 1 <= options.days <= 3660:
        raise CannotGoOn([Problem(where="--days", what="cannot be", remedy="give a number of days from 1 to 3660")])
    end = moment_of(options, "23:59", "--today")
    with Store.at(home_folder(Path(options.home) if options.home else None)) as store:
        found = eaten_before(store, end, timedelta(days=options.days) / timedelta(hours=1))
    if options.json:
        print(json.dumps({"eaten": [eaten_object(one.id, one.eaten) for one in found]}, ensure_ascii=False, indent=2))
        return 0
    if not found:
        print('Nothing was logged. Say what you ate: calmlarder ate "200 ml orange juice"')
    for one in found:
        print(eaten_line(one.id, one.eaten))
    return 0


def person(given: str, option: str) -> str:
    """A person's name in plain form. Raises CannotGoOn for what is no name."""
    name = " ".join(given.split()).lower()
    if not name or len(name) > _LONGEST_NAME or not name.isprintable():
        remedy = f"give a name of at most {_LONGEST_NAME} signs"
        raise CannotGoOn([Problem(where=option, what="is no name", remedy=remedy)])
    return name


def _one_box(food: Food) -> Portion:
    """What one box holds is known."""
    return Portion(food, float(food.portion_g), float(food.portion_g))


def _read(text: str, options: argparse.Namespace, tables: Tables) -> tuple[str, Portion]:
    lots, problems = clear(LarderReader(tables, day_of(options)).read_all([text], "LINE"), "LINE")
    if problems or not lots:
        raise CannotGoOn(problems or [Problem(where="LINE", what="says nothing", remedy="write what was eaten")])
    return lots[0].line, _portion(lots[0], tables, options)


def _portion(lot: Lot, tables: Tables, options: argparse.Namespace) -> Portion:
    """What was eaten of a food: where no amount was given one portion, not the whole pack."""
    food = tables.food_by_id[lot.food]
    entry = read_entry(lot.line, day_of(options), frozenset())
    how = entry.amount.how if entry else "none"
    if how == "none":
        grams = float(food.portion_g)
        return Portion(food, grams, most_of(grams, grams, weighed=False))
    return Portion(food, lot.grams, most_of(lot.grams, lot.grams_high, weighed=how == "weighed"))


def _from_box(store: Store, portion: Portion, today: date, tables: Tables) -> dict[int, dict[str, Any] | None]:
    """What is left of a boxed dish after one box of it; nothing for any other food, which may come from anywhere."""
    if portion.food.id not in tables.mixtures:
        return {}
    lots = [one for one in lots_on_day(store, today, tables) if one.lot.food == portion.food.id][:1]
    unfit = next((why for one in lots if (why := why_unfit(one.lot))), None)
    if unfit:
        raise CannotGoOn([Problem(where=portion.food.name, what=unfit, remedy="throw it away: `larder remove`")])
    return used_up(lots, [(one.lot.line, one.lot.food, round(portion.grams)) for one in lots])
