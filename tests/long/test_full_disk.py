"""A real disk of 3 MB, read-only and then full. Needs Linux and the right to mount; skipped elsewhere.

Must show: what is kept is listed, composed from and exported each time; every change is refused in words, status 2;
after room is made everything is there as before, and nothing half written is.
"""

import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from harm import ask, lots_of


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
