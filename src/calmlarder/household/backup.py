"""The whole household in one file, and begun again from such a file, or from a copy of its store.

DEVELOPERS.md tells the format of the file.
What comes in is as untrusted as anything that was typed: its size, its shape, every row of it and its tables are
looked at before anything is changed.
"""

import hashlib
import json
import math
from collections.abc import Callable, Mapping
from datetime import date, datetime
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, NamedTuple, NoReturn

from pydantic import BaseModel, ValidationError

from calmlarder import __version__
from calmlarder.clean import clean
from calmlarder.history.ended import Ended
from calmlarder.history.felt import Felt
from calmlarder.household.household import Household
from calmlarder.household.kept_lots import kept
from calmlarder.household.settings import settled
from calmlarder.intake.eaten import Eaten
from calmlarder.larder.lot import Lot
from calmlarder.larder.to_answer import Answers, ToAnswer
from calmlarder.larder.urgency import Urgency
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.reintroduction.events import Event
from calmlarder.store.copies import when_of
from calmlarder.store.documents import PLACES, Place, Unreadable, upgraded, version_of
from calmlarder.store.logs import content_of
from calmlarder.store.restore_from_copy import best_copy, restore
from calmlarder.store.whole import replace_whole, whole
from calmlarder.tables.load import TABLE_FILES, load_tables
from calmlarder.tables.places import home_folder, shipped

_SINCE_VERSION_1 = {"challenges"}  # places that a file of that version may lack
KIND, VERSION = "calmlarder household", 1
MOST_BYTES = 64_000_000
_MOST_ROWS = 1_000_000  # of one place; ours
_MOST_NUMBER = 2**53  # a whole number that every reader of JSON keeps (RFC 8259, 6)
_DEEPEST = 12  # lists and objects in one another: a row of ours has five


class Backup(NamedTuple):
    """What a file holds: rows by place and id in today's shape, and the cook's own tables by file name."""

    made: str
    rows: dict[Place, dict[str, Any]]
    tables: dict[str, str]

    @property
    def words(self) -> str:
        """What is in it, in a few words."""
        lots, eaten = len(self.rows["lots"]), len(self.rows["eaten"])
        of = f", {len(self.tables)} own tables" if self.tables else ""
        return f"{lots} items, {eaten} entries of what was eaten, {len(self.rows['settings'])} settings{of}"


def backup_text(household: Household, own: Path) -> tuple[str, str]:
    """The household as the text of a file, and what is in it in a few words.

    Raises CannotGoOn where nothing is kept.
    """
    if not household.is_kept:
        remedy = "name the home with --home, or keep something first"
        raise CannotGoOn([Problem(where=str(household.home), what="keeps nothing yet", remedy=remedy)])
    rows, tables = whole(household.store), _tables_in(own)
    made = datetime.now().isoformat(timespec="seconds")
    document: dict[str, Any] = {
        "kind": KIND,
        "version": VERSION,
        "program": __version__,
        "made": made,
        "documents": {place: version_of(place) for place in PLACES},
        **{str(place): kept_there for place, kept_there in rows.items()},
        "own_tables": tables,
    }
    document["sha256"] = _digest(document)
    return json.dumps(document, ensure_ascii=False, indent=1) + "\n", Backup(made, rows, tables).words


def _tables_in(own: Path) -> dict[str, str]:
    files = [own / f"{name}.csv" for name in TABLE_FILES]
    return {file.name: file.read_text(encoding="utf-8-sig") for file in files if file.is_file()}


def _digest(document: Mapping[str, Any]) -> str:
    """SHA-256 of all but itself: with sorted keys and no spaces it is the same whoever writes it."""
    rest = {name: value for name, value in document.items() if name != "sha256"}
    plain = json.dumps(rest, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    return hashlib.sha256(plain.encode("utf-8", "surrogatepass")).hexdigest()


def read_backup(text: str, where: str) -> Backup:
    """What the text of a file holds. Raises CannotGoOn with the first thing that is wrong in it."""
    document = _document(text, where)
    if document.get("kind") != KIND:
        _refuse(where, "is no backup of calmlarder", "name a file that `calmlarder backup` wrote")
    version = document.get("version")
    if version != VERSION:
        _refuse(where, f"has version {version!r}, and this program reads {VERSION}", "install the newest calmlarder")
    rows: dict[Place, dict[str, Any]] = {}
    for place in PLACES:
        missing: object = {} if place in _SINCE_VERSION_1 else None
        rows[place] = _object(document.get(place, missing), f"{where}: {place}")
    own = _object(document.get("own_tables"), f"{where}: own_tables")
    tables = {name: str(content) for name, content in own.items()}
    # Empty for somebody who mended a row by hand; never missing, so that a damaged name does not pass for that.
    if document.get("sha256") not in ("", _digest(document)):
        remedy = "take another one; if you changed it by hand, empty its `sha256`"
        _refuse(where, "is damaged or was changed", remedy)
    versions = _object(document.get("documents"), f"{where}: documents")
    checked: dict[Place, dict[str, Any]] = {
        place: _rows(place, _cleaned(rows[place]), versions.get(place), where) for place in PLACES
    }
    for name, content in tables.items():
        if name.removesuffix(".csv") not in TABLE_FILES or clean(content) != content.replace("\r\n", "\n"):
            _refuse(where, f"its table `{name}` is none of ours, or is no plain text", "take another one")
    return Backup(str(clean(str(document.get("made", "")))), checked, tables)


def restore_backup(household: Household, backup: Backup, own: Path) -> tuple[str, ...]:
    """The household of a backup in place of what is there, as one action; own tables of before are set aside.

    Gives the names of the tables set aside. Raises CannotGoOn; then nothing is changed.
    """
    household.home.parent.mkdir(parents=True, exist_ok=True)
    store = household.store
    with TemporaryDirectory(dir=household.home, prefix=".restoring-") as folder:
        for name, content in backup.tables.items():
            (Path(folder) / name).write_text(content, encoding="utf-8", newline="")
        tables = load_tables([shipped("ingredient_tables"), Path(folder)])
        settled(backup.rows["settings"], tables)
        store.copy_now()
        with store.transaction():
            most = max((int(one["lot"]) for one in backup.rows["ended"].values()), default=0)
            replace_whole(store, backup.rows, most)
            return _put_tables(backup.tables, Path(folder), own)


def _put_tables(tables: Mapping[str, str], fresh: Path, own: Path) -> tuple[str, ...]:
    aside: list[str] = []
    for name in tables:
        own.mkdir(mode=0o700, parents=True, exist_ok=True)
        file = own / name
        if file.exists() and file.read_bytes() != (fresh / name).read_bytes():
            number = next(n for n in range(1, 10_000) if not (own / f"{name}.before-{n}").exists())
            file.replace(own / f"{name}.before-{number}")
            aside.append(f"{name}.before-{number}")
        (fresh / name).replace(file)
    return tuple(aside)


def _document(text: str, where: str) -> dict[str, Any]:
    def no_number(sign: str) -> NoReturn:
        raise ValueError(f"{sign} is no number")

    try:
        found = json.loads(text, parse_constant=no_number)
    except (ValueError, RecursionError) as error:
        _refuse(where, f"is no JSON ({error})", "name a file that `calmlarder backup` wrote")
    _look_at_values(found, where)
    return _object(found, where)


def _look_at_values(value: Any, where: str, depth: int = 0) -> None:
    """Numbers that are numbers, and no deeper than a row of ours can be. Raises CannotGoOn."""
    if depth > _DEEPEST or (isinstance(value, float) and not math.isfinite(value)):
        _refuse(where, "holds a value that no household has", "take another one")
    if isinstance(value, int) and abs(value) > _MOST_NUMBER:
        _refuse(where, "holds a number that no household has", "take another one")
    inside = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    for one in inside:
        _look_at_values(one, where, depth + 1)


def _cleaned(value: Any) -> Any:
    """The value without what could steer a terminal."""
    if isinstance(value, str):
        return clean(value)
    if isinstance(value, list):
        return [_cleaned(one) for one in value]
    return {clean(name): _cleaned(one) for name, one in value.items()} if isinstance(value, dict) else value


def _object(value: Any, where: str) -> dict[str, Any]:
    if not isinstance(value, dict) or len(value) > _MOST_ROWS:
        _refuse(where, "is not an object, or is beyond any household", "take another one")
    return value


def _rows(place: Place, rows: Mapping[str, Any], version: object, where: str) -> dict[str, Any]:
    """Every row in today's shape, each read as what it is."""
    found = {}
    for row_id, content in rows.items():
        here = f"{where}: {place} {row_id}"
        try:
            if place == "settings":
                found[row_id] = upgraded(place, {"value": content}, version)["value"]
                continue
            if not (row_id.isascii() and row_id.isdecimal() and 0 < int(row_id) <= _MOST_NUMBER):
                raise ValueError("has a number that cannot be")
            found[str(int(row_id))] = _CHECKS[place](upgraded(place, _object(content, here), version))
        except (Unreadable, ValidationError, ValueError, TypeError, KeyError) as error:
            told = "is none of ours" if isinstance(error, ValidationError | KeyError | TypeError) else str(error)
            _refuse(here, told, "take another backup, or mend the row and empty `sha256`")
    return found


def _lot(content: dict[str, Any]) -> dict[str, Any]:
    if "asked" in content:
        asked = ToAnswer.model_validate({**content["asked"], "where": "", "id": None})
        date.fromisoformat(content["noted"])
        Answers.model_validate(content["answers"])
        return {**content, "line": asked.text}
    lot = Lot.model_validate({**content, "id": "", **Urgency(None, "", None, "")._asdict()})
    if not 0 <= lot.grams_low <= lot.grams <= lot.grams_high:
        raise ValueError("has grams that cannot be")
    return kept(lot)


def _as(model: type[BaseModel]) -> Callable[[dict[str, Any]], dict[str, Any]]:
    return lambda content: model.model_validate(content).model_dump(mode="json")


_CHECKS: Mapping[Place, Callable[[dict[str, Any]], dict[str, Any]]] = {
    "lots": _lot,
    "eaten": lambda content: content_of(Eaten.model_validate(content)),
    "ended": _as(Ended),
    "felt": _as(Felt),
    "challenges": _as(Event),
}


def _refuse(where: str, what: str, remedy: str) -> NoReturn:
    raise CannotGoOn([Problem(where=where, what=what, remedy=remedy)])


class Restored(NamedTuple):
    """The copy's file and when it was made, and the file under which the old store is set aside, if there was one."""

    copy: str
    of: str
    aside: str | None


def copy_made(home: Path | None) -> str | None:
    """When the copy was made from which the home would start; None where there is none."""
    copy = best_copy(home_folder(home))
    return None if copy is None else when_of(copy)


def start_from_copy(home: Path | None) -> Restored:
    """Set the store aside and start from the newest whole copy. Raises CannotGoOn; then nothing is changed."""
    done = restore(home_folder(home))
    return Restored(done.copy.name, when_of(done.copy), done.aside.name if done.aside else None)
