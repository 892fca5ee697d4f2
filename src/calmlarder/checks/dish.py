"""Whether a dinner is of the dish that was asked for, by the words of its pattern's own file."""

import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from calmlarder.checks.patterns import kinds_known

_LEAST = 3  # letters of a word that are its stem at least: `pie`
_ENDING = 2  # letters that a plural may differ by


def dish_faults(
    dinner: Mapping[str, Any], request: Mapping[str, Any], pattern: Mapping[str, Any], recipes: Path
) -> Iterator[str]:
    """A dinner of another kind than was asked for; of a dish that is no kind the words stand in its titles or id."""
    asked = request.get("dish")
    if not asked:
        return
    name = str(asked["name"])
    if name in kinds_known(recipes):
        is_it = name in pattern.get("kind", ())
    else:
        titles = (pattern["title"], *pattern.get("titles", {}).values(), dinner["pattern"].replace("-", " "))
        is_it = any(_has(_words(title), _words(name)) for title in titles)
    if not is_it:
        yield f"it is {dinner['pattern']}, and {name} was asked for"


def _words(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", re.sub(r"\{[^}]*\}", " ", text.replace("'", "")).casefold())


def _has(there: list[str], sought: list[str]) -> bool:
    """Whether words stand together in others, each as it is or in another number."""
    return any(
        all(_same(one, other) for one, other in zip(there[start:], sought, strict=False))
        for start in range(len(there) - len(sought) + 1)
    )


def _same(one: str, other: str) -> bool:
    short, long = sorted((one, other), key=len)
    return long.startswith(short[: max(_LEAST, len(short) - 1)]) and len(long) - len(short) <= _ENDING
