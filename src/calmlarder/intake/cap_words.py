"""Limits in a cook's words, by their key."""

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
