"""Lost food: two real programs on one fresh home (sqlite.org, "How To Corrupt An SQLite Database File", 2.2).

Fifty rounds in both orders: `tests/long/test_store_long.py`.
"""

from pathlib import Path

import pytest

from two_windows import in_both_windows


@pytest.mark.parametrize(("program_first", "only_look"), [(True, False), (False, True)])
def test_what_two_windows_keep_is_all_there(tmp_path: Path, program_first: bool, only_look: bool) -> None:
    in_both_windows(tmp_path / "home", program_first, only_look)
