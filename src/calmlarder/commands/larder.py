"""`calmlarder larder …`: the kept larder without the screen."""

import argparse
import json
import sys
from collections.abc import Callable, Sequence
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

from calmlarder.commands.inputs import day_of, tables_of
from calmlarder.commands.write_out import write_out
from calmlarder.household.larder import clear
from calmlarder.larder.files import read_lines
from calmlarder.larder.freezer import frozen, thawed, why_not_frozen, why_not_thawed
from calmlarder.larder.lot import Lot
from calmlarder.larder.lot_line import lot_line
from calmlarder.larder.reading import LarderReader
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.logged import eaten_object
from calmlarder.store.copies import when_of
from calmlarder.store.eaten import KeptEaten
from calmlarder.store.home import home_folder
from calmlarder.store.larder import KeptLot, ToAnswer, add, kept, lots_on_day, to_answer, with_kept_boxes
from calmlarder.store.restore import Restored, best_copy, restore
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables


def larder(options: argparse.Namespace) -> int:
    """Run one of the larder's commands."""
    if options.larder_command == "restore":
        home = home_folder(Path(options.home) if options.home else None)
        if not _may_restore(options, home):
            print("Nothing was changed.")
            return 0
        return _say_restored(options, restore(home))
    tables, today = tables_of(options), day_of(options)
    with Store.at(home_folder(Path(options.home) if options.home else None)) as store:
        return _COMMANDS[options.larder_command](options, store, tables, today)


def _may_restore(options: argparse.Namespace, home: Path) -> bool:
    """No undo reaches behind a restore: at a terminal it is asked for."""
    copy = best_copy(home)
    if options.yes or copy is None or not (sys.stdin.isatty() and sys.stdout.isatty()):
        return True
    print(f"The copy is of {when_of(copy)}. What changed since stays only in the file that is set aside.")
    return input("Start from the copy? y or n: ").strip().lower() in {"y", "yes"}


def _say_restored(options: argparse.Namespace, done: Restored) -> int:
    if options.json:
        aside = done.aside.name if done.aside else None
        print(json.dumps({"copy": done.copy.name, "of": when_of(done.copy), "aside": aside}, indent=2))
        return 0
    print(f"Started from the copy of {when_of(done.copy)}, {done.copy.name}.")
    if done.aside:
        print(f"What was there is kept as {done.aside.name}.")
    return 0


def lot_object(one: KeptLot, tables: Tables) -> dict[str, Any]:
    """A kept lot as plain values."""
    lot, told = one.lot, one.lot.first_date
    return {
        "id": one.id,
        "text": lot.line,
        "food": lot.food,
        "name": tables.food_by_id[lot.food].name,
        "grams_low": lot.grams_low,
        "grams": lot.grams,
        "grams_high": lot.grams_high,
        "place": lot.place,
        "date": told.on.isoformat() if told and told.on else None,
        "date_kind": told.kind if told else None,
        "days_left": lot.days_left,
        "condition": lot.condition,
        "owner": lot.owner,
    }


def _list(
    options: argparse.Namespace, store: Store, tables: Tables, today: date, logged: Sequence[KeptEaten] | None = None
) -> int:
    """The lots, what goes first before what keeps; as plain values with what was logged."""
    lots = lots_on_day(store, today, tables)
    waiting = to_answer(store, today, tables)
    tables = with_kept_boxes(store, tables)
    if options.json:
        told: dict[str, Any] = {"lots": [lot_object(one, tables) for one in lots]}
        if waiting:
            told["to_answer"] = [{"id": one.id, "text": one.line, "why": one.why} for one in waiting]
        if logged is not None:
            told["eaten"] = [eaten_object(one.id, one.eaten) for one in logged]
        print(json.dumps(told, ensure_ascii=False, indent=2))
        return 0
    for asked in waiting:
        print(_asked_line(asked))
    if not lots and not waiting:
        print('The larder is empty. Add what you have: calmlarder larder add "firm tofu 280g, use by friday"')
    for one in lots:
        print(_line(one, tables))
    return 0


def _asked_line(one: ToAnswer) -> str:
    line = f" `{one.line}`:" if one.line else ""
    return f"{one.id:>4}  to answer: {line} {one.why}; {one.remedy}".replace(":  ", ": ")


def _line(one: KeptLot, tables: Tables) -> str:
    lot = one.lot
    left = "keeps" if lot.days_left is None else f"{lot.days_left} d"
    notes = [note for note in (lot.condition, f"of {lot.owner}" if lot.owner else None) if note]
    name = tables.food_by_id[lot.food].name
    return f"{one.id:>4}  {left:>6}  {lot.grams:>6g} g  {name}, {lot.place}{''.join(f', {note}' for note in notes)}"


def _add(options: argparse.Namespace, store: Store, tables: Tables, today: date) -> int:
    return _keep(options, store, tables, today, [" ".join(options.text)], "TEXT")


def _import(options: argparse.Namespace, store: Store, tables: Tables, today: date) -> int:
    return _keep(options, store, tables, today, read_lines(options.file), options.file)


def _keep(
    options: argparse.Namespace, store: Store, tables: Tables, today: date, lines: Sequence[str], source: str
) -> int:
    """Keep every line that is clear; say of the others what to write. Nothing is kept when one cannot be."""
    readings = LarderReader(tables, today).read_all(lines, source)
    lots, problems = clear(readings, source)
    ids = add(store, lots, f"add {_lots(len(lots))}" if len(lots) != 1 else f"add {lots[0].line}") if lots else []
    by_id = {one.id: one for one in lots_on_day(store, today, tables)}
    added = [by_id[lot_id] for lot_id in ids if lot_id in by_id]
    if options.json:
        print(json.dumps({"lots": [lot_object(one, tables) for one in added]}, ensure_ascii=False, indent=2))
    else:
        for one in added:
            print(_line(one, tables))
    if problems:
        raise CannotGoOn(problems)
    return 0


def _edit(options: argparse.Namespace, store: Store, tables: Tables, today: date) -> int:
    readings = LarderReader(tables, today).read_all([" ".join(options.text)], "TEXT")
    lots, problems = clear(readings, "TEXT")
    if problems or not lots:
        raise CannotGoOn(problems or [Problem(where="TEXT", what="says nothing", remedy="write the line anew")])
    store.change_lots({options.id: kept(lots[0])}, f"edit lot {options.id}")
    return _list(options, store, tables, today)


def _remove(options: argparse.Namespace, store: Store, tables: Tables, today: date) -> int:
    """Raises CannotGoOn for a lot that is not there, or for more of it than there is; then nothing ends."""
    from calmlarder.commands.ending import ended_by

    return _list(options, store, tables, today, ended_by(options, store, tables, today))


def _freeze(options: argparse.Namespace, store: Store, tables: Tables, today: date) -> int:
    """Raises CannotGoOn for a lot that is not there, or must stay out of the freezer; then none is changed."""
    return _move(options, store, tables, today, "freezer", lambda lot: frozen(lot, today), why_not_frozen)


def _thaw(options: argparse.Namespace, store: Store, tables: Tables, today: date) -> int:
    """Raises CannotGoOn for a lot that is not in the freezer, or not safe to eat; then none is changed."""

    def why_not(lot: Lot) -> str | None:
        return why_not_thawed(lot) if lot.place == "freezer" else "it is not in the freezer"

    return _move(options, store, tables, today, "fridge", lambda lot: thawed(lot, today), why_not)


def _lots(count: int) -> str:
    return f"{count} lot{'' if count == 1 else 's'}"


def _move(
    options: argparse.Namespace,
    store: Store,
    tables: Tables,
    today: date,
    place: str,
    moved: Callable[[Lot], Lot],
    why_not: Callable[[Lot], str | None],
) -> int:
    with store.transaction():
        changed = _moved(options, lots_on_day(store, today, tables), moved, why_not)
        store.change_lots(changed, f"move {_lots(len(changed))} to the {place}")
    return _list(options, store, tables, today)


def _moved(
    options: argparse.Namespace,
    lots: Sequence[KeptLot],
    moved: Callable[[Lot], Lot],
    why_not: Callable[[Lot], str | None],
) -> dict[int, dict[str, Any] | None]:
    by_id = {one.id: one.lot for one in lots}
    problems = []
    for lot_id in options.ids:
        why = why_not(by_id[lot_id]) if lot_id in by_id else "there is no such lot"
        if why is not None:
            remedy = "`calmlarder larder list` shows the numbers"
            problems.append(Problem(where=f"lot {lot_id}", what=why, remedy=remedy))
    if problems:
        raise CannotGoOn(problems)
    return {lot_id: kept(moved(by_id[lot_id])) for lot_id in options.ids}


def _export(options: argparse.Namespace, store: Store, tables: Tables, today: date) -> int:
    """Lines that `import` reads: relative days are written as dates. Boxed dishes are told as comments,
    and so is what is to be answered.

    With --ics the labels' days for a calendar.
    """
    if options.ics is not None:
        return _calendar(options, store, with_kept_boxes(store, tables), today)
    for one in lots_on_day(store, today, tables):
        print(f"# {one.lot.line}" if one.lot.box is not None else lot_line(one.lot, tables))
    for asked in to_answer(store, today, tables):
        print(f"# {asked.line or f'lot {asked.id}'} ({asked.why})")
    return 0


def _calendar(options: argparse.Namespace, store: Store, tables: Tables, today: date) -> int:
    from calmlarder.render.ics import calendar

    text = calendar(lots_on_day(store, today, tables), tables, datetime.now(UTC))
    if options.ics == "-":
        print(text, end="")
    else:
        write_out(Path(options.ics), text, "BEGIN:VCALENDAR", "--ics")
        count = text.count("BEGIN:VEVENT")
        told = f"{count} day{'' if count == 1 else 's'}" if count else "an empty calendar, as no label has a day,"
        print(f"Wrote {told} to {Path(options.ics).name}.")
    return 0


def _undo(options: argparse.Namespace, store: Store, tables: Tables, today: date) -> int:
    return _say_turned(options, "undone", "Taken back", "take back", store.undo())


def _redo(options: argparse.Namespace, store: Store, tables: Tables, today: date) -> int:
    return _say_turned(options, "redone", "Done again", "do again", store.redo())


def _say_turned(options: argparse.Namespace, key: str, done: str, to_do: str, words: str | None) -> int:
    if options.json:
        print(json.dumps({key: words}, ensure_ascii=False))
    else:
        print(f"{done}: {words}." if words else f"Nothing to {to_do}.")
    return 0


_COMMANDS: dict[str, Callable[[argparse.Namespace, Store, Tables, date], int]] = {
    "list": _list,
    "add": _add,
    "edit": _edit,
    "remove": _remove,
    "freeze": _freeze,
    "thaw": _thaw,
    "import": _import,
    "export": _export,
    "undo": _undo,
    "redo": _redo,
}
