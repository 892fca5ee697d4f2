"""`calmlarder ate` and `calmlarder eaten`: what was eaten, and the log of the last days."""

import argparse
import json
from datetime import timedelta
from pathlib import Path
from typing import Any

from calmlarder.commands.kitchen_table import day_of, tables_of
from calmlarder.commands.larder import clear
from calmlarder.commands.moment import moment_of
from calmlarder.commands.stored import settled_at
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import LarderReader
from calmlarder.matching.entry import read_entry
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.sitting.amounts import Sureness
from calmlarder.sitting.eaten import Eaten, Portion, loads_of, most_of
from calmlarder.store.eaten import KeptEaten, eaten_before, log
from calmlarder.store.home import home_folder
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import GROUPS

_LONGEST_NAME = 40


def ate(options: argparse.Namespace) -> int:
    """Log one line. Raises CannotGoOn when it may mean several foods, or none."""
    tables, today = tables_of(options), day_of(options)
    at, who = moment_of(options, options.when, "--when"), person(options.who, "--who")
    text = " ".join(options.text)
    lots, problems = clear(LarderReader(tables, today).read_all([text], "LINE"), "LINE")
    if problems or not lots:
        raise CannotGoOn(problems or [Problem(where="LINE", what="says nothing", remedy="write what was eaten")])
    portion = _portion(lots[0], tables, options, settled_at(options, tables).sureness)
    loads, unknown = loads_of([portion], tables)
    entry = Eaten(
        at=at, who=who, text=lots[0].line, food=portion.food.id, title=portion.food.name,
        grams=round(portion.grams, 1), loads=loads, unknown=unknown,
    )  # fmt: skip
    with Store.at(home_folder(Path(options.home) if options.home else None)) as store:
        kept = KeptEaten(log(store, entry), entry)
    if options.json:
        print(json.dumps({"eaten": [eaten_object(kept)]}, ensure_ascii=False, indent=2))
    else:
        print(_line(kept))
    return 0


def eaten(options: argparse.Namespace) -> int:
    """The log of the last days."""
    if not 1 <= options.days <= 3660:
        raise CannotGoOn([Problem(where="--days", what="cannot be", remedy="give a number of days from 1 to 3660")])
    end = moment_of(options, "23:59", "--today")
    with Store.at(home_folder(Path(options.home) if options.home else None)) as store:
        found = eaten_before(store, end, timedelta(days=options.days) / timedelta(hours=1))
    if options.json:
        print(json.dumps({"eaten": [eaten_object(one) for one in found]}, ensure_ascii=False, indent=2))
        return 0
    if not found:
        print('Nothing was logged. Say what you ate: calmlarder ate "200 ml orange juice"')
    for one in found:
        print(_line(one))
    return 0


def eaten_object(one: KeptEaten) -> dict[str, Any]:
    """An entry as plain values; loads in g by group, all classes together."""
    entry = one.eaten
    known = GROUPS if entry.loads or not entry.unknown else ()
    return {
        "id": one.id,
        "at": entry.at.isoformat(timespec="minutes"),
        "who": entry.who,
        "text": entry.text,
        "food": entry.food or None,
        "title": entry.title,
        "grams": entry.grams,
        "loads_g": {group: _grams(entry, group, worst=False) for group in known},
        "worst_g": {group: _grams(entry, group, worst=True) for group in known},
        "unknown": list(entry.unknown),
    }


def _grams(entry: Eaten, group: str, worst: bool) -> float:
    found = (load.worst_ug if worst else load.plan_ug for load in entry.loads if load.group == group)
    return round(sum(found) / 1_000_000, 4)


def _line(one: KeptEaten) -> str:
    entry = one.eaten
    total, lactose = (_grams(entry, group, worst=False) for group in ("total", "lactose"))
    brings = f"{total:.2f} g of all groups but lactose, {lactose:.2f} g lactose"
    if entry.unknown:
        brings = f"figures not known of {', '.join(entry.unknown)}: not counted, which is not zero"
    return f"{one.id:>4}  {entry.at:%Y-%m-%d %H:%M}  {entry.who}  {entry.grams:g} g  {entry.title}: {brings}"


def person(given: str, option: str) -> str:
    """A person's name in plain form. Raises CannotGoOn for what is no name."""
    name = " ".join(given.split()).lower()
    if not name or len(name) > _LONGEST_NAME or not name.isprintable():
        remedy = f"give a name of at most {_LONGEST_NAME} signs"
        raise CannotGoOn([Problem(where=option, what="is no name", remedy=remedy)])
    return name


def _portion(lot: Lot, tables: Tables, options: argparse.Namespace, sure: Sureness) -> Portion:
    """What was eaten of a food: where no amount was given one portion, not the whole pack."""
    food = tables.food_by_id[lot.food]
    entry = read_entry(lot.line, day_of(options), frozenset())
    how = entry.amount.how if entry else "none"
    if how == "none":
        grams = float(food.portion_g)
        return Portion(food, grams, most_of(grams, grams, weighed=False, sure=sure))
    return Portion(food, lot.grams, most_of(lot.grams, lot.grams_high, weighed=how == "weighed", sure=sure))
