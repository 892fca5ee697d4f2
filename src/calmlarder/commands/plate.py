"""`calmlarder plate`: what a plate brings, and whether it fits."""

import argparse
import json
from collections.abc import Sequence
from fractions import Fraction
from pathlib import Path

from calmlarder.commands.kitchen_table import at_fault, day_of, folders_of, tables_of
from calmlarder.commands.stored import settled_at, tolerance_at
from calmlarder.history.told import portion_of
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.meal import Table, judged
from calmlarder.intake.plate import Item
from calmlarder.intake.profile import profile_named
from calmlarder.intake.stacking import Counted
from calmlarder.larder.files import read_lines
from calmlarder.larder.reading import LarderReader
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.cap_words import component_words
from calmlarder.render.plate_text import OnPlate, PlateAnswer, Unread, plate_object, plate_text
from calmlarder.tables.book import Tables

_MOST_PEOPLE = 12


def plate(options: argparse.Namespace) -> int:
    """Say it; status 3 where it does not fit, or nobody can say. Raises CannotGoOn for wrong use."""
    tables, home = tables_of(options), settled_at(options, tables_of(options))
    if not 1 <= options.people <= _MOST_PEOPLE:
        remedy = f"give 1 to {_MOST_PEOPLE}"
        raise CannotGoOn([Problem(where="--people", what=f"`{options.people}` cannot be", remedy=remedy)])
    sure = tolerance_at(options, tables)
    foods, unread = _read(_texts(options), options, sure, tables)
    profile = profile_named(options.profile or home.profile, tables)
    table = Table(profile.at(options.sitting), options.people, _before(options, tables))
    items = [one.item for one in foods]
    usual = [float(tables.food_by_id[item.food].portion_g) * options.people for item in items]
    answer = PlateAnswer(foods, judged(items, usual, table), table, unread)

    from calmlarder.checks.plate import verify
    from calmlarder.render.style import style_of_output

    told = plate_object(answer)
    request = {"profile": profile.name, "sitting": options.sitting, "people": options.people}
    if not table.counted:  # what was eaten before is added up for dinners by their own check
        faults = verify(told, {**request, "tolerance": sure.model_dump()}, folders_of(options))
        if faults:
            return at_fault("this plate", faults)
    if options.json:
        print(json.dumps(told, ensure_ascii=False, indent=2))
    else:
        print(plate_text(answer, style_of_output()), end="")
    return 0 if answer.fits else 3


def _texts(options: argparse.Namespace) -> list[str]:
    texts = [*options.text, *(read_lines(options.file) if options.file is not None else ())]
    texts = [text for text in texts if text.strip() and not text.lstrip().startswith("#")]
    if not texts:
        remedy = 'name what is on it, such as plate "170 g firm tofu" "75 g broccoli"'
        raise CannotGoOn([Problem(where="TEXT", what="there is nothing on the plate", remedy=remedy)])
    return texts


def _read(
    texts: Sequence[str], options: argparse.Namespace, sure: Tolerance, tables: Tables
) -> tuple[tuple[OnPlate, ...], tuple[Unread, ...]]:
    today, found, unread = day_of(options), list[OnPlate](), list[Unread]()
    for reading in LarderReader(tables, today).read_all(texts, "plate"):
        if not reading.lots:
            names = " or ".join(f"`{candidate.name}`" for candidate in reading.candidates[:4])
            why = str(reading.problem.what) if reading.problem else reading.question
            why = why or (
                f"it may be several foods: write {names}" if names else "the tables know no food of that name"
            )
            unread.append(Unread(reading.text, why))
        for lot in reading.lots:
            portion = portion_of(lot, today, tables)
            missing = tables.unknown_of(lot.food)
            if missing:
                unread.append(Unread(reading.text, f"no figure is known for its {component_words(missing)}"))
                continue
            grams = Fraction(str(round(portion.grams, 1)))
            own = sure.for_range(portion.grams, portion.high)
            item = Item(lot.food, load_profile_of(portion.food, tables), grams, options.weighed, own)
            found.append(OnPlate(reading.text, portion.food.name, item))
    return tuple(found), tuple(unread)


def _before(options: argparse.Namespace, tables: Tables) -> tuple[Counted, ...]:
    """What was eaten before and still counts, from the kept log."""
    from calmlarder.commands.ate import person
    from calmlarder.commands.moment import moment_of
    from calmlarder.intake.stacking import Stacking, still_counted
    from calmlarder.intake.zone import offsets_at
    from calmlarder.store.eaten import may_count
    from calmlarder.store.home import FILE_NAME, home_folder
    from calmlarder.store.store import Store

    folder = home_folder(Path(options.home) if options.home else None)
    if not (folder / FILE_NAME).exists():
        return ()
    home, at = settled_at(options, tables), moment_of(options, options.at, "--at")
    how = Stacking(
        at=at, window_hours=home.window_hours, fade=home.fade, own=home.own, who=(person(options.who, "--who"),),
        offsets_min=offsets_at(at),
    )  # fmt: skip
    with Store.at(folder) as store:
        return still_counted(may_count(store, how.at, how.longest_hours), how)
