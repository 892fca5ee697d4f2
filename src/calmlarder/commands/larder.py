"""`calmlarder larder …`: the kept larder without the screen."""

import json
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from calmlarder.commands.given.larder import Larder
from calmlarder.commands.inputs import home_of, household_of, lines_typed
from calmlarder.commands.larder_export import export
from calmlarder.commands.sure import is_sure
from calmlarder.household.answering import answer, forget, words_in
from calmlarder.household.backup import copy_made, start_from_copy
from calmlarder.household.household import Household
from calmlarder.household.larder import Kept, Place, as_seen, keep_lines, move_to, numbered, write_anew
from calmlarder.larder.files import read_lines
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.logged import eaten_object
from calmlarder.tables.book import Tables

if TYPE_CHECKING:
    from calmlarder.household.kept_lots import KeptLot
    from calmlarder.larder.to_answer import ToAnswer
    from calmlarder.store.logs import KeptEaten


def larder(options: Larder) -> int:
    """Run one of the larder's commands."""
    if options.larder_command == "restore":
        return _restore(home_of(options), options.yes, options.json)
    with household_of(options) as household:
        return _COMMANDS[options.larder_command](options, household)


def _restore(home: Path | None, yes: bool, as_json: bool) -> int:
    made = copy_made(home)
    if made is not None:
        words = f"The copy is of {made}. What changed since stays only in the file that is set aside."
        if not is_sure(yes, words, "Start from the copy? y or n: "):
            print("Nothing was changed.")
            return 0
    done = start_from_copy(home)
    if as_json:
        print(json.dumps(done._asdict(), indent=2))
        return 0
    print(f"Started from the copy of {done.of}, {done.copy}.")
    if done.aside:
        print(f"What was there is kept as {done.aside}.")
    return 0


def lot_object(one: "KeptLot", tables: Tables) -> dict[str, Any]:
    """A kept lot as plain values."""
    lot, label = one.lot, one.lot.first_date
    return {
        "id": one.id,
        "text": lot.line,
        "food": lot.food,
        "name": tables.food_by_id[lot.food].name,
        "grams_low": lot.grams_low,
        "grams": lot.grams,
        "grams_high": lot.grams_high,
        "place": lot.place,
        "date": label.on.isoformat() if label and label.on else None,
        "date_kind": label.kind if label else None,
        "days_left": lot.days_left,
        "condition": lot.condition,
        "owner": lot.owner,
        "assumed": list(lot.assumed),
        "always": lot.always,
        "label": lot.label,
    }


def asked_object(one: "ToAnswer") -> dict[str, Any]:
    """A line that waits to be answered as plain values."""
    return {"id": one.id, "text": one.text, "question": one.question, "choices": list(one.choices)}


def _list(options: Larder, household: Household, logged: "Sequence[KeptEaten] | None" = None) -> int:
    """The lots, what goes first before what keeps; as plain values with what was logged."""
    lots, waiting, tables = household.lots(), household.to_answer(), household.tables
    if options.json:
        shown: dict[str, Any] = {"lots": [lot_object(one, tables) for one in lots]}
        if waiting:
            shown["to_answer"] = [asked_object(one) for one in waiting]
        if logged is not None:
            shown["eaten"] = [eaten_object(one.id, one.eaten) for one in logged]
        print(json.dumps(shown, ensure_ascii=False, indent=2))
        return 0
    for asked in waiting:
        print(_asked_line(asked))
    if not lots and not waiting:
        print('The larder is empty. Add what you have: calmlarder larder add "firm tofu 280g, use by friday"')
    for one in sorted(lots, key=lambda one: one.lot.always):
        print(_line(one, household) + _label(one, household))
    return 0


def _label(one: "KeptLot", household: Household) -> str:
    """What the packet's list of ingredients says that matters, where the lot carries it."""
    if not one.lot.label:
        return ""
    from calmlarder.household.labelling import in_short, label_read

    return f"; its label {in_short(label_read(household, one.lot.label))}"


def _asked_line(one: "ToAnswer") -> str:
    """The question with its number and its choices, each with the number that answers it."""
    line = f" `{one.text}`:" if one.text else ""
    choices = ", ".join(f"{number} {choice}" for number, choice in enumerate(one.choices, start=1))
    told = f" Choices: {choices}." if choices else ""
    return f"{one.id:>4}  to answer:{line} {one.question.rstrip('.')}.{told} {one.remedy}".replace("?.", "?")


def _line(one: "KeptLot", household: Household) -> str:
    lot = one.lot
    left = "always" if lot.always else "keeps" if lot.days_left is None else f"{lot.days_left} d"
    notes = [note for note in (lot.condition, f"of {lot.owner}" if lot.owner else None) if note]
    notes += [f"{', '.join(lot.assumed)}, assumed"] if lot.assumed else []
    name = household.name_of(lot.food)
    return f"{one.id:>4}  {left:>6}  {lot.grams:>6g} g  {name}, {lot.place}{''.join(f', {note}' for note in notes)}"


def _add(options: Larder, household: Household) -> int:
    return _keep(household, lines_typed(options.text), "TEXT", options.json)


def _import(options: Larder, household: Household) -> int:
    return _keep(household, read_lines(options.file), options.file, options.json, counted=True)


def _keep(household: Household, lines: Sequence[str], source: str, as_json: bool, counted: bool = False) -> int:
    """Keep every line: as its lots, or to be answered. Raises CannotGoOn with those that cannot be read at all."""
    found = keep_lines(household, household.read_all(lines, source))
    _show_kept(found, household, as_json)
    if counted and not as_json:
        print(_counts(found))
    if found.problems:
        raise CannotGoOn(found.problems)
    return 0


def _counts(found: Kept) -> str:
    """How many lots were kept, and how many lines wait for an answer or could not be read."""
    lots, asked, wrong = len(found.lots), len(found.asked), len(found.problems)
    told = [f"{lots} item{'s' * (lots != 1)} kept"]
    told += [f"{asked} line{'s' * (asked != 1)} to answer, on top"] if asked else ["nothing to answer"]
    told += [f"{wrong} line{'s' * (wrong != 1)} not read, below"] if wrong else []
    return f"{'; '.join(told)}."


def _show_kept(found: Kept, household: Household, as_json: bool) -> None:
    if as_json:
        shown: dict[str, Any] = {"lots": [lot_object(one, household.tables) for one in found.lots]}
        shown |= {"to_answer": [asked_object(one) for one in found.asked]} if found.asked else {}
        print(json.dumps(shown, ensure_ascii=False, indent=2))
        return
    for asked in found.asked:
        print(_asked_line(asked))
    for one in found.lots:
        print(_line(one, household))


def _edit(options: Larder, household: Household) -> int:
    seen = as_seen(household, options.id)
    readings = household.read_all([" ".join(options.text)], "TEXT")
    if not readings:
        raise CannotGoOn([Problem(where="TEXT", what="says nothing", remedy="write the line again")])
    write_anew(household, seen, readings[0])
    return _list(options, household)


def _answer(options: Larder, household: Household) -> int:
    """Raises CannotGoOn for a number that waits for no answer, and for an answer that means nothing."""
    done = answer(household, options.id, options.choice)
    _show_kept(Kept(done.lots, [done.asked] if done.asked else [], []), household, options.json)
    if done.means and not options.json:
        names = " and ".join(household.name_of(food) for food in done.means)
        print(f"From now on `{done.words}` is {names} here; `calmlarder larder forget {done.words}` forgets it.")
    return 0


def _words(options: Larder, household: Household) -> int:
    words = words_in(household)
    if options.json:
        print(json.dumps({"words": {said: list(names) for said, names in words.items()}}, ensure_ascii=False, indent=2))
        return 0
    for said, names in sorted(words.items()):
        print(f"{said}: {' and '.join(names)}")
    if not words:
        print("No word has a meaning of its own here yet; answers to questions are remembered.")
    return 0


def _forget(options: Larder, household: Household) -> int:
    words = " ".join(options.words)
    names = [household.name_of(food) for food in forget(household, words) if food in household.tables.food_by_id]
    if options.json:
        print(json.dumps({"forgotten": words, "meant": names}, ensure_ascii=False))
    else:
        print(f"Forgotten: `{words}` is no longer {' and '.join(names) or 'anything'} here.")
    return 0


def _remove(options: Larder, household: Household) -> int:
    """Raises CannotGoOn for a lot that is not there, or for more of it than there is; then nothing ends."""
    from calmlarder.commands.larder_remove import ended_by

    return _list(options, household, ended_by(options, household))


def _freeze(options: Larder, household: Household) -> int:
    return _move(options, household, "freezer")


def _thaw(options: Larder, household: Household) -> int:
    return _move(options, household, "fridge")


def _move(options: Larder, household: Household, place: Place) -> int:
    """Raises CannotGoOn for a lot that is not there, or must stay as it is; then none is changed."""
    with household.store.transaction():
        ones, unknown = numbered(household, options.ids)
        if unknown:
            what, remedy = "there is no such item", "`calmlarder larder list` shows the numbers"
            raise CannotGoOn(Problem(where=f"item {lot_id}", what=what, remedy=remedy) for lot_id in unknown)
        move_to(household, place, ones)
    return _list(options, household)


def _undo(options: Larder, household: Household) -> int:
    from calmlarder.household.cooking import is_proposed

    before = is_proposed(household)
    status = _say_turned(options.json, ("undone", "Taken back", "take back"), household.undo())
    if not options.json and is_proposed(household) and not before:
        print("What `tonight` had proposed is there again, for who was to eat: `calmlarder cooked`.")
    return status


def _redo(options: Larder, household: Household) -> int:
    return _say_turned(options.json, ("redone", "Done again", "do again"), household.redo())


def _say_turned(as_json: bool, said: tuple[str, str, str], words: str | None) -> int:
    key, done, to_do = said
    if as_json:
        print(json.dumps({key: words}, ensure_ascii=False))
    else:
        print(f"{done}: {words}." if words else f"Nothing to {to_do}.")
    return 0


_COMMANDS: dict[str, Callable[[Larder, Household], int]] = {
    "list": _list,
    "add": _add,
    "edit": _edit,
    "remove": _remove,
    "freeze": _freeze,
    "thaw": _thaw,
    "import": _import,
    "export": export,
    "answer": _answer,
    "words": _words,
    "forget": _forget,
    "undo": _undo,
    "redo": _redo,
}
