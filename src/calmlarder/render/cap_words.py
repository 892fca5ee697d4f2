"""Limits and fermentables in a cook's words, by their key."""

from collections.abc import Iterable

from calmlarder.intake.cap_words import CAP_WORDS

__all__ = ["CAP_WORDS", "component_words"]


def in_words(obstacle: str) -> str:
    """What is in the way, the key of a limit in it told in a cook's words."""
    for key, words in CAP_WORDS.items():
        if f"the limit on {key}" in obstacle:
            return obstacle.replace(f"the limit on {key}", f"the limit on {words}", 1)
    return obstacle


def component_words(components: Iterable[str]) -> str:
    """Fermentables as a cook reads them, with commas between."""
    return ", ".join("GOS" if component == "gos" else component for component in components)
