"""A real disk of 3 MB, read-only and then full. Needs Linux and the right to mount; skipped elsewhere.

Must show: what is kept is listed, composed from and exported each time; every change is refused in words, status 2;
after room is made everything is there as before, and nothing half written is.
"""

import os
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from harm import ask, lots_of

_BLOCK = 4096


def _mount(*words: str) -> bool:
    try:
        return subprocess.run(["mount", *words], capture_output=True, check=False).returncode == 0
    except OSError:
        return False


@pytest.fixture
def disk(tmp_path: Path) -> Iterator[Path]:
    place = tmp_path / "disk"
    place.mkdir()
    if not _mount("-t", "tmpfs", "-o", "size=3m", "tmpfs", str(place)):
        pytest.skip("nothing can be mounted here")
    try:
        yield place
    finally:
        subprocess.run(["umount", str(place)], capture_output=True, check=False)


def filled(disk: Path) -> Path:
    file = disk / "fill"
    with file.open("wb", buffering=0) as held:
        try:
            while held.write(b"\0" * 1024):
                pass
        except OSError:
            return file
    return file


_ACTIONS = (("larder", "add", "kale 150g"), ("ate", "1 lime"), ("feel", "3"), ("larder", "undo"))


def test_a_disk_that_fills_at_each_write(disk: Path) -> None:
    """Room for one block more each time: an action is done and stays, or it is refused and nothing has changed."""
    home, refused = disk / "home", 0
    for line in ("rice noodles 200g", "firm tofu 280g, use by tomorrow"):
        assert ask(home, "larder", "add", line).status == 0
    for number in range(160):
        words = _ACTIONS[number % len(_ACTIONS)]
        before = _kept(home)
        fill = filled(disk)
        os.truncate(fill, max(0, fill.stat().st_size - (number // len(_ACTIONS)) * _BLOCK))
        answer = ask(home, *words)
        fill.unlink()
        after = _kept(home)
        assert answer.status in {0, 2}, (number, words, answer)
        assert (after == before) == (answer.status == 2), (number, words, answer)
        refused += answer.status == 2
    assert 8 < refused < 152
    print(f"160 actions on a disk with 0 to 39 blocks free: {refused} refused, all others kept")


def _kept(home: Path) -> tuple[object, ...]:
    return (lots_of(home), ask(home, "eaten", "--json").out, ask(home, "days", "--json").out)


@pytest.mark.parametrize("how", ["read-only", "full"])
def test_a_disk_that_takes_nothing(disk: Path, how: str, tmp_path: Path) -> None:
    home = disk / "home"
    for line in ("rice noodles 200g", "firm tofu 280g, use by tomorrow", "carrots 300g", "soy sauce"):
        assert ask(home, "larder", "add", line).status == 0
    lots = lots_of(home)
    if how == "full":
        fill = filled(disk)
    else:
        assert _mount("-o", "remount,ro", str(disk))
    assert lots_of(home) == lots
    assert ask(home, "tonight").status == 0
    assert ask(home, "larder", "export").status == 0
    assert ask(home, "backup", str(tmp_path / "all.json")).status == 0
    for words in (("larder", "add", "kale"), ("ate", "1 lime"), ("cooked",), ("feel", "3"), ("larder", "undo")):
        answer = ask(home, *words)
        assert answer.status == 2, (words, answer)
    if how == "full":
        fill.unlink()
    else:
        assert _mount("-o", "remount,rw", str(disk))
    assert lots_of(home) == lots
    assert ask(home, "larder", "add", "kale").status == 0
    assert not list(home.glob("*.new*"))
