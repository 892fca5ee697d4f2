"""Where a line says that a thing is: fridge, freezer or cupboard; and what is out of the freezer again."""

from typing import Literal

from calmlarder.matching.late_patterns import LatePattern

Place = Literal["fridge", "freezer", "cupboard"]
_PLACES: dict[str, Place] = {
    "freezer": "freezer", "frzr": "freezer", "frozen": "freezer", "frz": "freezer",
    "frzn": "freezer", "froz": "freezer", "frozn": "freezer", "fridge": "fridge", "refrigerator": "fridge",
    "cupboard": "cupboard", "pantry": "cupboard", "larder": "cupboard", "shelf": "cupboard", "counter": "cupboard",
}  # fmt: skip
_IN_PLACE = LatePattern(
    r"\b(?:in|from|at|on) (?:the )?(?:back of |bottom of |top of )?(?:the )?(freezer|fridge|refrigerator"
    r"|cupboard|pantry|larder)\b"
    r"|\b(?:on) the (shelf|counter)\b"
)
# Frozen, with its slips, and as other tongues put it beside a food.
_FROZEN = LatePattern(
    r"\b(?:frozen|froz(?:n|ed?)?|frzn?|fz|freezed|congelad[oa]s?|surgel(?:at[oaie]|[eé]e?s?)|gefroren\w*"
    r"|mro[zż]on[aey]\w*"
    r"|fryst\w?|fros(?:ne|sen))\b"
)
# What is out of the freezer has its days, whenever it went in.
_THAWED = LatePattern(
    r"(?<!not )(?<!not yet )(?<!re)(?<!needs )\b(?:thaw(?:ed|ing)|defrost(?:ed|ing))\b(?! first)"
    r"|\b(?:freezer|frozen)\)?[ ,;-]+(?:but |and |was |were )?"
    r"(?:got|taken|took|came|brought|lifted) (?:it |them )?out\b"
    r"|\b(?:thaw|defrost)(?: out)? since\b|\b(?:out of|from) (?:the )?freezer "
    r"(?=since|on|this|last|yest|mon|tue|wed|thu|fri|sat|sun)"
)
_FROZEN_AGAIN = LatePattern(r"\bre-?fr(?:o|ee)z|\bfrozen again\b|\bback in (?:the )?freezer\b")
_PLACE_WORD = LatePattern(r"\b(freezer|frzr|fridge|cupboard|pantry)\b(?! ?(?:burn|burnt))")


def is_thawed(text: str) -> bool:
    """Whether a plain line tells of what is out of the freezer, and was not frozen again."""
    return _THAWED.search(text) is not None and _FROZEN_AGAIN.search(text) is None


def take_place(text: str) -> tuple[Place | None, str]:
    """The place that a plain line tells, and the line without it."""
    found = _IN_PLACE.search(text) or _PLACE_WORD.search(text)
    if found:
        word = next(group for group in found.groups() if group)
        return _PLACES[word], f"{text[: found.start()]} {text[found.end() :]}"
    # `frozen` stays among the words: frozen peas are a food of their own.
    return ("freezer", text) if _FROZEN.search(text) else (None, text)
