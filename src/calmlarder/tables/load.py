"""Read every table from the shipped folder and the cook's own, and join them into one book."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple

from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables import derived
from calmlarder.tables.allergens import with_what_is_in_them
from calmlarder.tables.book import Tables
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.cells import Row
from calmlarder.tables.csvfile import Line, read_csv
from calmlarder.tables.late_rows import LateLines, LateRows, plain_of
from calmlarder.tables.made_from_rows import Conversion, MadeFrom
from calmlarder.tables.mixture import mixture_faults
from calmlarder.tables.places import shipped
from calmlarder.tables.rows import (
    AmericanName,
    Caution,
    Fermentable,
    Food,
    Keeping,
    Measure,
    MixtureRow,
    Name,
    Renamed,
    Source,
    Swap,
)
from calmlarder.tables.step_rows import StandInStep
from calmlarder.tables.tongue_rows import NameElsewhere, WordElsewhere


class TableFile(NamedTuple):
    """A table's row model and what makes one row the same as another."""

    model: type[Row]
    key: Callable[[Any], tuple[object, ...]]


TABLE_FILES: Mapping[str, TableFile] = MappingProxyType(
    {
        "foods": TableFile(Food, lambda row: (row.id,)),
        "fermentables": TableFile(Fermentable, lambda row: (row.food, row.component)),
        "mixtures": TableFile(MixtureRow, lambda row: (row.food, row.part)),
        "names": TableFile(Name, lambda row: (row.name.casefold(), row.food)),
        "names_elsewhere": TableFile(
            NameElsewhere, lambda row: (row.name.casefold(), row.english.casefold(), row.language)
        ),
        "words_elsewhere": TableFile(
            WordElsewhere, lambda row: (row.word.casefold(), row.english.casefold(), row.language)
        ),
        "renamed": TableFile(Renamed, lambda row: (row.was,)),
        "american_names": TableFile(AmericanName, lambda row: (row.british,)),
        "measures": TableFile(Measure, lambda row: (row.food, row.measure)),
        "keeping": TableFile(Keeping, lambda row: (row.food, row.place, row.state)),
        "conversions": TableFile(Conversion, lambda row: (row.from_food, row.to)),
        "made_from": TableFile(MadeFrom, lambda row: (row.food, row.from_food, row.how)),
        "swaps": TableFile(Swap, lambda row: (row.from_food, row.to, row.part_of, row.when)),
        "steps": TableFile(StandInStep, lambda row: (row.from_food, row.to, row.work)),
        "caps": TableFile(Cap, lambda row: (row.profile, row.scope, row.group, row.applies_to, row.sittings)),
        "cautions": TableFile(Caution, lambda row: (row.applies_to, row.states)),
        "sources": TableFile(Source, lambda row: (row.key,)),
    }
)

Lines = dict[str, Sequence[Line[Any]]]
SHIPPED = "ingredient_tables"
_KEPT = "tables.json"


def read_folder(folder: Path) -> tuple[Lines, list[Problem]]:
    """The rows of one folder; a table that is not there is empty.

    The shipped ones are validated once and found again as long as neither they nor this room have changed, where
    nothing is wrong in them and nothing of what is in mixtures has to be added to their rows.
    """
    if folder != shipped(SHIPPED):
        return _read_anew(folder)
    made_from = digest_of_tables(folder)
    known = derived.kept(_KEPT, made_from)
    if known is not None:
        return {name: LateLines(LateRows(TABLE_FILES[name].model, known, name)) for name in known}, []
    lines, problems = _read_anew(folder)
    if not problems and _is_whole(lines) and made_from == digest_of_tables(folder):
        derived.keep(_KEPT, made_from, {name: plain_of(TABLE_FILES[name].model, rows) for name, rows in lines.items()})
    return lines, problems


def _is_whole(lines: Lines) -> bool:
    foods, parts = [line.row for line in lines["foods"]], [line.row for line in lines["mixtures"]]
    return not _mixture_faults(lines) and [*with_what_is_in_them(foods, parts)] == foods


def _were_kept(lines: Lines) -> bool:
    return all(isinstance(found, LateLines) for found in lines.values())


def _mixture_faults(lines: Lines) -> list[Problem]:
    return list(mixture_faults(lines["mixtures"], (line.row.id for line in lines["foods"])))


def digest_of_tables(folder: Path, *rooms: Path) -> str:
    """A digest of the tables of a folder, of the code that reads them, and of further rooms. Raises OSError."""
    code = [path for room in (Path(__file__).parent, *rooms) for path in sorted(room.glob("*.py"))]
    return derived.digest_of([*sorted(folder.glob("*.csv")), *code])


def _read_anew(folder: Path) -> tuple[Lines, list[Problem]]:
    lines: Lines = {}
    problems: list[Problem] = []
    for name, table in TABLE_FILES.items():
        path = folder / f"{name}.csv"
        if path.exists():
            found, faults = read_csv(path, table.model)
            lines[name] = list(found)
            problems += faults + _doubles(found, table.key)
        else:
            lines[name] = []
    return lines, problems


def _doubles(lines: Iterable[Line[Any]], key: Callable[[Any], tuple[object, ...]]) -> list[Problem]:
    first: dict[tuple[object, ...], str] = {}
    problems = []
    for line in lines:
        known = first.setdefault(key(line.row), line.where)
        if known != line.where:
            what = f"says the same thing as {known}"
            problems.append(Problem(where=line.where, what=what, remedy="keep one of the two rows"))
    return problems


def read_all(folders: Iterable[Path]) -> tuple[Lines, list[Problem]]:
    """Rows of all folders joined: a row of a later folder replaces the row of the same key, or is added.

    A mixture is replaced whole: what a later folder says is in a food is all that is in it.
    """
    read = [read_folder(folder) for folder in folders]
    problems = [problem for _, faults in read for problem in faults]
    whole = read[0][0] if len(read) == 1 else _joined(lines for lines, _ in read)
    return whole, problems if _were_kept(whole) else problems + _mixture_faults(whole)


def _joined(read: Iterable[Lines]) -> Lines:
    joined: dict[str, dict[tuple[object, ...], Line[Any]]] = {name: {} for name in TABLE_FILES}
    for lines in read:
        anew = {line.row.food for line in lines["mixtures"]}
        joined["mixtures"] = {key: line for key, line in joined["mixtures"].items() if key[0] not in anew}
        # A limit for all sittings takes the place of those for some of them.
        for_all = {TABLE_FILES["caps"].key(line.row)[:-1] for line in lines["caps"] if not line.row.sittings}
        joined["caps"] = {key: line for key, line in joined["caps"].items() if key[:-1] not in for_all}
        for name, found in lines.items():
            joined[name].update((TABLE_FILES[name].key(line.row), line) for line in found)
    return {name: list(lines.values()) for name, lines in joined.items()}


def book_of(lines: Lines) -> Tables:
    """The rows as one book, where a mixture holds what its parts hold. They are not validated a second time."""
    rows: dict[str, Any] = {
        name: found.rows if isinstance(found, LateLines) else tuple(line.row for line in found)
        for name, found in lines.items()
    }
    parts = rows.pop("mixtures")
    if not _were_kept(lines):
        rows["foods"] = with_what_is_in_them(rows["foods"], parts)
    return Tables.model_construct(None, **rows, parts=parts)


def load_tables(folders: Iterable[Path]) -> Tables:
    """The joined tables. Raises CannotGoOn with every problem found in them."""
    lines, problems = read_all(folders)
    if problems:
        raise CannotGoOn(problems)
    return book_of(lines)
