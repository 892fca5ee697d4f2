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
