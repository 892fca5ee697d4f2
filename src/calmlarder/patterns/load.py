"""Read the dish patterns from their TOML files."""

import tomllib
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from calmlarder.patterns.kinds import kind_faults, read_kinds
from calmlarder.patterns.pattern import FOUND_SOUND, Pattern, Slot
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables import derived
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped

_KEPT = "patterns.json"
_SHARED = "shared/slots.toml"  # places that many dishes have alike, named by a pattern in `shared`


def read_patterns(folder: Path) -> tuple[list[Pattern], list[Problem]]:
    """All patterns of a folder in order of file name, and what is wrong with the others.

    The shipped ones are parsed and checked once, and found again as long as neither they nor this room have changed.
    """
    paths = sorted(folder.glob("*.toml"))
    every = [*paths, *sorted(folder.glob(_SHARED)), *sorted(Path(__file__).parent.glob("*.py"))]
    if folder != shipped("recipes"):
        return _read_anew(folder, paths, {})
    made_from = derived.digest_of(every)
    kept = derived.kept(_KEPT, made_from)
    if kept is not None:
        return [_pattern(path, kept[path.name], kept[_SHARED], context=FOUND_SOUND) for path in paths], []
    known: dict[str, Any] = {}
    patterns, problems = _read_anew(folder, paths, known)
    if not problems and made_from == derived.digest_of(every):
        derived.keep(_KEPT, made_from, known)
    return patterns, problems


def _read_anew(folder: Path, paths: Sequence[Path], known: dict[str, Any]) -> tuple[list[Pattern], list[Problem]]:
    """The same from the files; what they say goes into `known`, by name."""
    patterns: list[Pattern] = []
    problems: list[Problem] = []
    shared = known[_SHARED] = _shared_slots(folder, problems)
    for path in paths:
        try:
            content = known[path.name] = tomllib.loads(path.read_text(encoding="utf-8"))
            patterns.append(_pattern(path, content, shared))
        except UnicodeDecodeError:
            problems.append(Problem(where=path.name, what="is not UTF-8 text", remedy="save it as UTF-8"))
        except tomllib.TOMLDecodeError as error:
            remedy = "look at that line: a quotation mark or bracket may be missing"
            problems.append(Problem(where=path.name, what=f"is not TOML ({error})", remedy=remedy))
        except ValidationError as error:
            text = path.read_text(encoding="utf-8")
            problems += [_fault(path, text, dict(fault)) for fault in error.errors(include_url=False)]
    return patterns, problems


def _pattern(path: Path, content: Mapping[str, Any], shared: Mapping[str, Any], context: Any = None) -> Pattern:
    return Pattern.model_validate({"id": path.stem, **_with_shared(content, shared)}, context=context)


def _shared_slots(folder: Path, problems: list[Problem]) -> dict[str, Any]:
    """The shared places of a folder by name, none where it has no such file."""
    path = folder / _SHARED
    if not path.exists():
        return {}
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except (UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        problems.append(Problem(where=_SHARED, what=f"cannot be read ({error})", remedy="look at that line"))
        return {}


def _with_shared(content: Mapping[str, Any], shared: Mapping[str, Any]) -> dict[str, Any]:
    """A pattern with the shared places that it names; a name that is unknown, or its own, is left for its check."""
    named = [name for name in content.get("shared", ()) if name in shared and name not in content.get("slots", {})]
    known = {name: shared[name] for name in named}
    left = [name for name in content.get("shared", ()) if name not in known]
    return {**content, "slots": {**content.get("slots", {}), **known}, "shared": left}


def load_patterns(folder: Path) -> tuple[Pattern, ...]:
    """All patterns. Raises CannotGoOn with every problem found in them."""
    patterns, problems = read_patterns(folder)
    if not patterns and not problems:
        problems = [Problem(where=str(folder), what="holds no dish pattern", remedy="add a TOML file")]
    if problems:
        raise CannotGoOn(problems)
    return tuple(patterns)


@cache
def shipped_patterns() -> tuple[Pattern, ...]:
    """The patterns that come with the program, read once: for a program that stays open. Raises CannotGoOn."""
    return load_patterns(shipped("recipes"))


def check_patterns(folder: Path, tables: Tables) -> list[Problem]:
    """Problems of the patterns by themselves and against the tables."""
    patterns, problems = read_patterns(folder)
    kinds, faults = read_kinds(folder)
    problems += [*faults, *kind_faults(patterns, kinds)]
    fitted: dict[tuple[object, ...], bool] = {}  # many dishes ask for the same

    def is_fitted(slot: Slot) -> bool:
        asked = (slot.role, slot.method, slot.kinds, slot.foods, slot.not_foods, slot.states)
        if asked not in fitted:
            fitted[asked] = any(slot.takes(food) for food in tables.foods)
        return fitted[asked]

    for pattern in patterns:
        for name in dict.fromkeys(name for group in pattern.flavour for name in group):
            if name not in pattern.slots and name not in tables.food_by_id:
                what = f"flavour names `{name}`, which is neither a slot nor a food"
                problems.append(
                    Problem(where=f"{pattern.id}.toml", what=what, remedy="write a slot, or an id of foods.csv")
                )
        for name, slot in pattern.slots.items():
            where = f"{pattern.id}.toml"
            for food in (*slot.foods, *slot.not_foods):
                if food not in tables.food_by_id:
                    what = f"slot {name} names the food `{food}`, which foods.csv lacks"
                    problems.append(Problem(where=where, what=what, remedy="write an id of foods.csv"))
            # What is boxed is no row of the tables: each cook has their own.
            if slot.kinds != ("boxed",) and not is_fitted(slot):
                what = f"no food fits slot {name}"
                remedy = "loosen its role, kinds, states or method"
                problems.append(Problem(where=where, what=what, remedy=remedy))
    return problems


def _fault(path: Path, text: str, fault: dict[str, object]) -> Problem:
    place = fault["loc"] if isinstance(fault["loc"], tuple) else ()
    keys = [str(part) for part in place if isinstance(part, str)]
    line = _line_of(text, keys)
    what = f"{'.'.join(keys) or 'the pattern'}: {str(fault['msg']).removeprefix('Value error, ')}"
    remedy = "compare it with another pattern of the folder"
    return Problem(where=f"{path.name}:{line}" if line else path.name, what=what, remedy=remedy)


def _line_of(text: str, keys: list[str]) -> int | None:
    """The line where the innermost named key or its section stands."""
    lines = text.splitlines()
    start = 0
    if len(keys) > 1 and keys[0] == "slots":
        heads = [number for number, line in enumerate(lines) if line.strip() == f"[slots.{keys[1]}]"]
        start = heads[0] if heads else 0
    for number in range(start, len(lines)):
        if keys and lines[number].split("=")[0].strip() == keys[-1]:
            return number + 1
    return start + 1 if start else None


ANSWERED = ("no figure found", "not known", "needs", "for the log", "holds garlic", "poisonous")


def unused_foods(tables: Tables, patterns: Sequence[Pattern]) -> Iterator[Problem]:
    """Foods that fit no slot of any pattern and do not say so in their note."""
    for food in tables.foods:
        if any(slot.takes(food) for pattern in patterns for slot in pattern.slots.values()):
            continue
        if not any(words in food.note for words in ANSWERED):
            what = "no dish pattern can use it"
            yield Problem(
                where=food.id, what=what, remedy="add it to a pattern, or say in its note that it is for the log"
            )
