"""What may befall a store: damage, kills, several writers, a full disk. A few rounds in the tests, many in tests/long.

Whatever happens, each command answers with what was confirmed or says in words what is wrong, and a copy brings it
back; a traceback is never an answer.
"""

import atexit
import json
import random
import shutil
import signal
import subprocess
import sys
import time
from contextlib import redirect_stderr, redirect_stdout
from functools import lru_cache
from io import StringIO
from pathlib import Path
from tempfile import mkdtemp
from typing import NamedTuple
from unittest.mock import patch

from calmlarder.cli import main
from calmlarder.store import unread
from calmlarder.store.home import FILE_NAME
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables

DAY = "2026-03-11"
LINES = ("kale 150g", "2 carrots", "firm tofu 280g, use by friday", "eggs x6", "spinach 200g, use by friday")
SAID = (0, 2)  # README.md, "Exit status": done, or said in words what is wrong


class Answer(NamedTuple):
    """What a command said."""

    status: int
    out: str
    err: str


def ask(home: Path, *words: str) -> Answer:
    """A command in this process; an exception that leaves it is a traceback for a cook, and fails the test."""
    out, err = StringIO(), StringIO()
    # The tables are read once: hundreds of commands are run here.
    cached = patch("calmlarder.commands.inputs.load_tables", lambda folders: _tables(tuple(folders)))
    with redirect_stdout(out), redirect_stderr(err), cached:
        status = main(["--home", str(home), "--today", DAY, *words])
    return Answer(status, out.getvalue(), err.getvalue())


def stocked(home: Path) -> list[dict[str, object]]:
    """A home in which this and that was done; its lots."""
    shutil.copytree(_stocked_once(), home)
    return lots_of(home)


@lru_cache
def _tables(folders: tuple[Path, ...]) -> Tables:
    return load_tables(folders)


@lru_cache
def _stocked_once() -> Path:
    home = Path(mkdtemp()) / "home"
    atexit.register(shutil.rmtree, home.parent)
    for line in LINES:
        assert ask(home, "larder", "add", line).status == 0
    assert ask(home, "ate", "200 ml orange juice", "--when", "12:00").status == 0
    assert ask(home, "larder", "remove", "2", "--how", "thrown").status == 0
    assert ask(home, "feel", "3", "--when", "13:00").status == 0
    with Store.at(home) as store:
        store.set({"diet": "vegetarian", "avoid": "peanuts"}, "settings")
    return home


def lots_of(home: Path) -> list[dict[str, object]]:
    """The lots as the command tells them."""
    answer = ask(home, "larder", "list", "--json")
    assert answer.status == 0, answer.err
    return list(json.loads(answer.out)["lots"])


def flip_bits(home: Path, seed: int, flips: int = 1) -> None:
    """Flip bits anywhere in the store's file."""
    file = home / FILE_NAME
    content, dice = bytearray(file.read_bytes()), random.Random(seed)
    for _ in range(flips):
        place = dice.randrange(len(content))
        content[place] ^= 1 << dice.randrange(8)
    file.write_bytes(content)


def hurt(home: Path, seed: int) -> None:
    """Damage the store's file in one of four ways: a bit flipped, forty, a block of zeros, the end cut off."""
    file, dice = home / FILE_NAME, random.Random(seed)
    content = bytearray(file.read_bytes())
    if seed % 4 < 2:
        flip_bits(home, seed, 1 if seed % 4 == 0 else 40)
        return
    at = dice.randrange(len(content))
    if seed % 4 == 2:
        content[at : at + 512] = bytes(len(content[at : at + 512]))
    else:
        del content[at:]
    file.write_bytes(content)


def damage(sound: Path, home: Path, seed: int) -> bool:
    """One way of damage on a fresh copy of a sound home; whether it was found. Raises AssertionError for any loss."""
    unread._told.clear()  # a run of its own: what another damage told does not keep this one silent
    shutil.rmtree(home, ignore_errors=True)
    shutil.copytree(sound, home)
    before = lots_of(sound)
    eaten = ask(sound, "eaten", "--json").out
    hurt(home, seed)
    told = [ask(home, *words) for words in (("larder", "list", "--json"), ("eaten", "--json"), ("waste",), ("days",))]
    assert all(answer.status in SAID for answer in told), told
    # A lot that cannot be read is told in the list itself, as one to answer.
    is_found = any(answer.err for answer in told) or "to_answer" in told[0].out
    if is_found:
        restored = ask(home, "larder", "restore", "--yes")
        assert restored.status == 0, restored.err
    # Not found is harmless: no word of what was kept is another one now.
    assert lots_of(home) == before
    assert ask(home, "eaten", "--json").out == eaten
    with Store.at(home) as store:
        assert (store.settings()["diet"], store.settings()["avoid"]) == ("vegetarian", "peanuts")
    return is_found


# Each prints a number when what it stands for was confirmed; `kale` has as many grams as were confirmed last.
_WRITER = """
import sys
from datetime import date, datetime
from pathlib import Path
from calmlarder.intake.eaten import Eaten
from calmlarder.store.logs import log
from calmlarder.store.store import Store
home, kind = Path(sys.argv[1]), sys.argv[2]
number = 0
while True:
    with Store.at(home) as store:
        for _ in range(5):
            if kind == "add":
                done = store.add_lots([{"food": "kale", "number": number}], "add")[0]
            elif kind == "log":
                at = datetime(2026, 3, 11, 12)
                done = log(store, Eaten(at=at, who="me", text="t", food="", title="t", grams=1, loads=()))
            elif kind == "change":
                (first, *_) = store.lots()
                done = int(first.content["number"]) + 1
                store.change_lots({first.id: {**first.content, "number": done}}, "change")
            elif kind == "set":
                done = int(store.settings().get("people", 0)) + 1
                store.set({"people": done}, "set")
            elif kind == "several":  # as when a dinner is cooked: lots, log and settings are one action
                done = int(store.settings().get("several", 0)) + 1
                with store.as_one("several"):
                    store.add_lots([{"food": "tofu-firm", "number": number}], "add")
                    store.set({"several": done}, "set")
            else:
                store.add_lots([{"food": "kale", "number": number}], "add")
                store.undo()
                done = len(store.lots())
            print(done, flush=True)
            number += 1
"""
KINDS = ("add", "log", "change", "set", "several", "undo")


def _confirmed(home: Path, kind: str, seconds: float) -> list[int]:
    """What a writer said it had kept before it was killed."""
    writer = subprocess.Popen([sys.executable, "-c", _WRITER, str(home), kind], stdout=subprocess.PIPE, text=True)
    assert writer.stdout is not None
    first = writer.stdout.readline()
    time.sleep(seconds)
    writer.send_signal(signal.SIGKILL)
    rest = writer.stdout.read()
    writer.wait()
    return [int(line) for line in (first + rest).splitlines(keepends=True) if line.endswith("\n")]


def killed(home: Path, rounds: int) -> int:
    """Kill a writer amid each kind of write, round after round; how many actions were confirmed, all of them kept."""
    with Store.at(home) as store:
        store.add_lots([{"food": "kale", "number": 0}], "add")
    count = 0
    for number in range(rounds):
        kind = KINDS[number % len(KINDS)]
        said = _confirmed(home, kind, (number * 37 % 100) / 500)
        count += len(said)
        with Store.at(home) as store:
            lots = store.lots()
            if kind == "add":
                assert set(said) <= {one.id for one in lots}
            elif kind == "log":
                assert set(said) <= {one.id for one in store.eaten("")}
            elif kind == "change":
                assert said[-1] <= int(lots[0].content["number"]) <= said[-1] + 1
            elif kind == "set":
                assert said[-1] <= store.settings()["people"] <= said[-1] + 1
            elif kind == "several":
                done = int(store.settings()["several"])
                assert said[-1] <= done <= said[-1] + 1
                assert done == sum(one.content["food"] == "tofu-firm" for one in lots)
            else:
                assert len(lots) - said[-1] in (0, 1)  # killed between the adding and the undoing of it
    return count


_ADDER = """
import sys
from pathlib import Path
from calmlarder.store.store import Store
for number in range(int(sys.argv[3])):
    with Store.at(Path(sys.argv[1])) as store:
        store.add_lots([{"food": "kale", "who": sys.argv[2], "number": number}], "add")
"""


def written_at_once(home: Path, writers: int, each: int) -> None:
    """Several programs open a home where nothing was kept, all at once, and keep lots: none fails, none is lost."""
    started = [
        subprocess.Popen([sys.executable, "-c", _ADDER, str(home), str(number), str(each)], stderr=subprocess.PIPE)
        for number in range(writers)
    ]
    for one in started:
        _, error = one.communicate()
        assert one.returncode == 0, error.decode()
    with Store.at(home) as store:
        found = {(one.content["who"], one.content["number"]) for one in store.lots()}
    assert found == {(str(writer), number) for writer in range(writers) for number in range(each)}
