"""Caps in a cook's words, by their key."""

CAP_WORDS = {
    "oligosaccharides:core": "fructans + GOS, grains, pulses",
    "oligosaccharides:fresh;other": "fructans + GOS, other foods",
    "lactose": "lactose",
    "excess_fructose:fresh": "excess fructose, fresh",
    "excess_fructose:core;other": "excess fructose, other foods",
    "sorbitol": "sorbitol",
    "mannitol": "mannitol",
    "polyols": "sorbitol + mannitol",
    "total": "all but lactose (as planned)",
}


def in_words(obstacle: str) -> str:
    """What is in the way, the key of a cap in it told in a cook's words."""
    for key, words in CAP_WORDS.items():
        if f"the cap on {key}" in obstacle:
            return obstacle.replace(f"the cap on {key}", f"the cap on {words}", 1)
    return obstacle
