"""Signs of a clove in a changed step whose clove is oil now: an oil takes no colour, has no sting and turns no paste.

`fry until the garlic-infused oil is the colour of toast` is `fry for a minute until fragrant`; `leave for 5 minutes to
take the sting out` has nothing to wait for.
"""

import re

_OIL = r"(?:the )?(?:rest of the )?garlic-infused oil(?: \[[^\]]*\])?"
_STOP = r"(?=[.,;]|$| and (?:then )?(?:add|stir|pour|the|serve|tip|toss)\b)"
# What of an oil holds too: it is warm, hot, it smells, it sizzles.
_HOLDS = (
    r"(?:fragrant|hot|warm\w*|shimmer\w*|sizzl\w*|aromatic|smell\w*|gently|all |mixed|combined|in\b|absorbed|added)"
)
_SO_LONG = r"(?:about |around )?[\w½¼–-]+ (?:minutes?|mins?|seconds?)"
_SHOWS = r"(?:is|are|has|have|turns?|goes|becomes?|takes?|smells?|starts?|begins?|just|looks?)"
_UNTIL = re.compile(
    rf"(?:\bfor {_SO_LONG},? )?(?:un)?till? {_OIL} {_SHOWS} (?!{_HOLDS})[^.,;\[\]]*?{_STOP}"
    rf"(?:, {_SO_LONG}(?=[.,;]|$))?",
    re.IGNORECASE,
)
# `Stir the garlic into the lemon juice and leave for 5 minutes to take the sting out.`
_STING = (
    r"(?:sting|bite|edge|harsh\w*|sharp\w*|raw(?:ness)?|pungen\w*|fire|burn|mellow\w*|tame\w*|soften (?:its|the) [a-z]+"
    r"|calm\w*)"
)
_SO_THAT = rf"\b[^.;]*?\b(?:to|so|until|which)\b[^.;]*?\b{_STING}\b[^.;]*"
_WAITS = re.compile(
    r",? (?:and then|and|then) (?:let (?:it|them|this) (?:sit|stand|rest)|leave|set (?:it )?aside|sit|stand|rest)"
    rf"{_SO_THAT}(?=[.;]|$)",
    re.IGNORECASE,
)
_WAITS_ALONE = re.compile(
    rf"(?:(?<=[.;!] )|(?<=^))(?:Let (?:it|this) (?:sit|stand|rest)|Leave|Wait){_SO_THAT}[.;](?: +|$)"
)
_HAS_A_BITE = re.compile(r"\b(?:onions?|shallots?|radish\w*|chilli\w*|spring onion|cabbage|greens)\b", re.IGNORECASE)
_SENTENCE = re.compile(r"[^.!?]*(?:[.!?]+(?=\s|$)\s*|$)")


def without_signs_of_a_clove(step: str) -> str:
    """A changed step without what only a clove shows, where its infused oil goes in now."""
    if "garlic-infused oil" not in step:
        return step
    step = _UNTIL.sub("for a minute until fragrant", step)
    kept, oil = [], False
    for found in _SENTENCE.finditer(step):
        sentence = found[0]
        oil = oil or "garlic-infused oil" in sentence
        if oil and not _HAS_A_BITE.search(sentence):
            sentence = _WAITS_ALONE.sub("", _WAITS.sub("", sentence))
        kept.append(sentence)
    return "".join(kept).rstrip()
