"""Heavy proofs of the store, run by hand (DEVELOPERS.md): 0 confirmed actions lost, 0 tracebacks.

What each must show stands beside it; `tests/test_store_harm.py` holds a few rounds of each.
"""

from pathlib import Path

import pytest

from harm import damage, killed, stocked, written_at_once
from two_windows import in_both_windows


def test_a_store_damaged_in_150_ways(tmp_path: Path) -> None:
    """A bit flipped, forty, a block of zeros, the end cut off: said and brought back whole, or without any effect."""
    stocked(tmp_path / "home")
    found = [damage(tmp_path / "home", tmp_path / "hurt", seed) for seed in range(1000, 1150)]
    print(f"150 ways of damage: {sum(found)} found and brought back, {found.count(False)} without effect")


def test_500_kills_amid_every_kind_of_write(tmp_path: Path) -> None:
    """Everything a writer said it had kept is there after each kill."""
    print(f"500 kills: {killed(tmp_path / 'home', 500)} confirmed actions, all there")


def test_four_writers(tmp_path: Path) -> None:
    """Four programs begin a home at once and keep 50 lots each, opening it for each: none fails, 200 are there."""
    written_at_once(tmp_path / "home", 4, 50)


def test_first_opens_at_once(tmp_path: Path) -> None:
    """180 first opens, six at a time: none fails."""
    for number in range(30):
        written_at_once(tmp_path / str(number), 6, 1)


@pytest.mark.parametrize("program_first", [True, False])
@pytest.mark.parametrize("only_look", [True, False])
def test_two_programs_on_a_fresh_home(tmp_path: Path, program_first: bool, only_look: bool) -> None:
    """Screens and a command, 50 rounds in all, in both orders: what each kept is shown in both and is there."""
    for number in range(13):
        in_both_windows(tmp_path / str(number), program_first, only_look)
