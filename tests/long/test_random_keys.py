"""10,000 random keys and clicks on all screens of small terminals: nothing ends the program, its store can be read.

A part of it: pytest -o addopts="-q -s" tests/long/test_random_keys.py -k "seed1 or seed2" (500 each).
"""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.tables.book import Tables
from test_screens import storm

EACH, ROUNDS = 500, 20
SIZES = [(60, 20), (20, 8)]  # the least that is promised, and what hardly holds a question


@pytest.mark.parametrize("seed", range(ROUNDS), ids=lambda seed: f"seed{seed:02}")
def test_random_keys_and_clicks(seed: int, tmp_path: Path, tables: Tables) -> None:
    assert storm(tmp_path / "home", tables, EACH, seed, [SIZES[seed % 2]]) >= 0
