"""`--home` holds for every command: nothing of a household is written outside it. An audit hook (PEP 578) watches.

The user's cache folder holds what was read of the shipped tables and patterns (tables/derived.py), and no more.
"""

import os
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from tempfile import gettempdir

import pytest

from calmlarder.commands.parser import parser
from harm import ask

_WRITES = os.O_WRONLY | os.O_RDWR | os.O_CREAT | os.O_TRUNC | os.O_APPEND
_watched: list[tuple[str, str]] = []
_is_on = [False]


def _hook(event: str, arguments: tuple[object, ...]) -> None:
    """A hook cannot be taken away again, so it is switched."""
    if not _is_on[0]:
        return
    if event == "open":
        path, mode, flags = arguments
        writes = any(sign in str(mode or "") for sign in "wax+") or (mode is None and int(str(flags)) & _WRITES)
        if writes and isinstance(path, str | bytes | os.PathLike):
            _watched.append((event, os.fsdecode(path)))
    elif event in {"os.mkdir", "os.rename", "os.remove", "os.chmod", "os.symlink", "os.link", "sqlite3.connect",
                   "os.rmdir", "os.truncate", "shutil.copyfile", "tempfile.mkdtemp", "tempfile.mkstemp"}:  # fmt: skip
        _watched.append((event, os.fsdecode(arguments[0])))  # type: ignore[arg-type]


sys.addaudithook(_hook)


@pytest.fixture
def watching() -> Iterator[list[tuple[str, str]]]:
    _watched.clear()
    _is_on[0] = True
    yield _watched
    _is_on[0] = False


# Every command of the parser, with what it needs; `{}` is the folder of files that are named, which may be written.
LINES = """
larder import {}/lines
larder add 2 limes
larder list
larder answer 1 1
larder words
larder forget kale
larder edit 2 firm tofu 300g, use by friday
larder freeze 3
larder thaw 3
larder remove 3 --how thrown
larder export
larder export --ics {}/days.ics
larder undo
larder redo
tonight --seconds 1
why carrot --seconds 1
plan --sittings tonight --work 0 --buy 0
cooked
ate 1 lime
eaten
feel 2
days --svg {}/days.svg
waste
freeze
demo --seconds 1
limit carrot
swap onion
plate 100 g carrots
match kale
label water, salt
adapt {}/recipe
share --format html --out {}/page.html
backup {}/all.json
restore --yes {}/all.json
larder restore --yes
browser --address 0.0.0.0
tables check
tables show carrot
tables mine add
people list
people add kit
people set kit --diet vegan
people remove kit
challenge reckon lactose --days 0.5:calm
challenge start lactose
challenge today
challenge score 1
challenge control
challenge skip
challenge status
challenge page
challenge stop
challenge history
completion bash
manual
"""


def commands_of() -> set[str]:
    """Every command, with the word behind it where there is one."""

    def words(one: object, before: str) -> Iterator[str]:
        subs = [action for action in one._actions if hasattr(action, "choices") and isinstance(action.choices, dict)]  # type: ignore[attr-defined]
        if not subs:
            yield before.strip()
        for sub in subs:
            for name, inner in sub.choices.items():
                yield from words(inner, f"{before} {name}")

    return set(words(parser(), ""))


@pytest.mark.long
def test_every_command_writes_in_its_home_alone(
    tmp_path: Path, watching: list[tuple[str, str]], monkeypatch: pytest.MonkeyPatch
) -> None:
    _is_on[0] = False
    home, files, elsewhere = tmp_path / "home", tmp_path / "files", tmp_path / "elsewhere"
    files.mkdir()
    elsewhere.mkdir()
    monkeypatch.chdir(elsewhere)
    for name in ("HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME"):
        monkeypatch.setenv(name, str(elsewhere))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    (files / "lines").write_text("mystery jar\nfirm tofu 280g, use by friday\nkale 150g\nrice\n", encoding="utf-8")
    (files / "recipe").write_text(
        "Soup\n\nServes 2\n\nIngredients\n\n300 g carrots\n\nMethod\n\nCook it.\n", encoding="utf-8"
    )
    run = [line.replace("{}", str(files)) for line in LINES.strip().splitlines()]
    missing = {name for name in commands_of() if not any(line.startswith(name) for line in run)}
    assert not missing, missing
    watching.clear()
    for line in run:
        words = line.split()
        if line == "tables mine add":
            words += ["seed pesto", "--from", "50 g fresh basil; 30 g walnuts; 60 ml olive oil"]
        _is_on[0] = True
        answer = ask(home, *words)
        _is_on[0] = False
        assert answer.status in {0, 2, 3}, (line, answer)
    allowed = (str(home), str(files), str(tmp_path / "cache"), os.devnull, ":memory:")
    ours = re.compile(rf"{re.escape(gettempdir())}/tmp\w+(/\w+\.csv)?")  # of read_once.py, which is no command
    outside = [
        (event, path)
        for event, path in watching
        if not path.startswith(allowed)
        and not path.startswith(f"file://{home}")
        and not ours.fullmatch(path)
        and "__pycache__" not in path  # what Python keeps of a module
        # A folder that is there already is asked for again; names without a folder are rmtree's, of what it made.
        and (event, path) != ("os.mkdir", str(tmp_path))
        and (os.path.isabs(path) or event not in {"os.remove", "os.rmdir"})
    ]
    assert not outside, sorted(set(outside))[:20]
    assert list(elsewhere.iterdir()) == []
    cached = {one.name for one in (tmp_path / "cache" / "calmlarder").glob("*")}
    assert cached <= {"tables.json", "patterns.json"}, cached
    assert (home / "tables" / "foods.csv").exists()
