"""Limits and fermentables in a cook's words, by their key."""

from collections.abc import Iterable

CAP_WORDS = {
    "oligosaccharides": "fructans + GOS",
    "oligosaccharides:core": "fructans + GOS, grains, pulses",
    "oligosaccharides:fresh;other": "fructans + GOS, other foods",
    "lactose": "lactose",
    "excess_fructose": "excess fructose",
    "excess_fructose:fresh": "excess fructose, fresh",
    "excess_fructose:core;other": "excess fructose, other foods",
    "sorbitol": "sorbitol",
    "mannitol": "mannitol",
    "polyols": "sorbitol + mannitol",
    "total": "total without lactose",
    "fructans": "fructans",
    "fructans:core": "fructans, grains, pulses",
    "fructans:fresh;other": "fructans, other foods",
    "gos": "GOS",
    "gos:core": "GOS, grains, pulses",
    "gos:fresh;other": "GOS, other foods",
}


def in_words(obstacle: str) -> str:
    """What is in the way, the key of a limit in it told in a cook's words; what is told so already stays."""
    if any(f"the limit on {words}" in obstacle for key, words in CAP_WORDS.items() if words != key):
        return obstacle
    for key, words in CAP_WORDS.items():
        if f"the limit on {key}" in obstacle:
            return obstacle.replace(f"the limit on {key}", f"the limit on {words}", 1)
    return obstacle


def component_words(components: Iterable[str]) -> str:
    """Fermentables as a cook reads them, with commas between."""
    return ", ".join("GOS" if component == "gos" else component for component in components)
