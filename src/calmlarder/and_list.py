"""Names in a row, as they are said: `a, b and c`."""

from collections.abc import Sequence


def and_list(names: Sequence[str]) -> str:
    """`a, b and c`; nothing of none."""
    return " and ".join(filter(None, (", ".join(names[:-1]), *names[-1:])))
