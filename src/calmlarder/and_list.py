"""Names as they are said: in a row (`a, b and c`), and as of whom something is."""

from collections.abc import Sequence


def and_list(names: Sequence[str]) -> str:
    """`a, b and c`; nothing of none."""
    return " and ".join(filter(None, (", ".join(names[:-1]), *names[-1:])))


def whose(name: str) -> str:
    """A name as of whom something is: `mum's`, `kids'`."""
    return f"{name}'" if name.endswith("s") else f"{name}'s"
