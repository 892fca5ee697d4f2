"""Caps and fermentables in a cook's words, by their key."""

from collections.abc import Iterable

from calmlarder.sitting.cap_words import CAP_WORDS

__all__ = ["CAP_WORDS", "component_words"]


def component_words(components: Iterable[str]) -> str:
    """Fermentables as a cook reads them, with commas between."""
    return ", ".join("GOS" if component == "gos" else component for component in components)
