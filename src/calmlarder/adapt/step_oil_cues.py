"""Signs of a clove in a changed step whose clove is oil now: an oil takes no colour, has no sting and turns no paste.

`fry until the garlic-infused oil is the colour of toast` is `fry for a minute until fragrant`; `leave for 5 minutes to
take the sting out` has nothing to wait for.
"""

import re
from collections.abc import Sequence

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
# `As soon as the garlic is golden, take it off`: an oil is hot by then.
_ONCE = re.compile(
    rf"\b(?P<once>as soon as|once|when|the (?:moment|minute|second)) (?P<oil>{_OIL}) {_SHOWS} (?!{_HOLDS})"
    r"[^.,;\[\]]*?(?:gold\w*|brown\w*|colou?r\w*|crisp\w*|toasted|soft\w*|tender|pale|translucent)[^.,;\[\]]*?(?=[.,;]|$)",
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
# `heat the oil with the garlic-infused oil until the slivers just begin to colour`; `burnt garlic is bitter`
_SLIVERS = re.compile(
    r"(?P<oil>garlic-infused oil(?: \[[^\]]*\])?[^.;]*?)\b(?:un)?till? (?:the )?"
    r"(?:slivers|slices|pieces|cloves|flakes|garlic) "
    r"[^.,;]*?\b(?:colou?r\w*|gold\w*|brown\w*|soft\w*|crisp\w*)\b[^.,;]*",
    re.IGNORECASE,
)
_BURNT = re.compile(
    r"(?:(?<=[.!] )|(?<=^))[^.!]*?\b(?:burnt|burned|brown|scorched) garlic(?: \[garlic-infused oil\])? "
    r"(?:is|turns|tastes|goes|gets|makes)\b[^.!]*[.!](?: +|$)",
    re.IGNORECASE,
)
# `warm the oil until it smells sweet, then fish it out`
_LIFTED_OUT = re.compile(
    rf"(?P<oil>{_OIL}[^.;\[\]]*?),? (?:and then|then|and) (?:fish|lift|take|scoop|pick|pull) (?:it|them)(?: all)? out"
    r"(?: (?:with|of|from) [^.;,]+)?(?=[.;,])",
    re.IGNORECASE,
)
# `fry the bread with some of the oil [nothing to brown, …] until both are gold. Lift out`
_BROWNED_WITH_IT = re.compile(
    r" (?:with|and|along with) (?:(?:some|all|half) of )?the garlic-infused oil \[nothing to brown[^\]]*\]"
    r"(?P<until>[^.;]*?\buntil )both(?: of them)? are\b",
    re.IGNORECASE,
)
_HAS_A_BITE = re.compile(r"\b(?:onions?|shallots?|radish\w*|chilli\w*|spring onion|cabbage|greens)\b", re.IGNORECASE)
_SENTENCE = re.compile(r"[^.!?]*(?:[.!?]+(?=\s|$)\s*|$)")


def without_signs_of_a_clove(step: str) -> str:
    """A changed step without what only a clove shows, where its infused oil goes in now."""
    if "garlic-infused oil" not in step:
        return step
    step = _BURNT.sub("", _SLIVERS.sub(r"\g<oil>for a minute until fragrant", step))
    step = _ONCE.sub(r"\g<once> the garlic-infused oil is hot", step)
    step = _LIFTED_OUT.sub(r"\g<oil>", _UNTIL.sub("for a minute until fragrant", step))
    kept, oil = [], False
    for found in _SENTENCE.finditer(step):
        sentence = found[0]
        oil = oil or "garlic-infused oil" in sentence
        if oil and not _HAS_A_BITE.search(sentence):
            sentence = _WAITS_ALONE.sub("", _WAITS.sub("", sentence))
        kept.append(sentence)
    return "".join(kept).rstrip()


def browned_without_it(steps: Sequence[str]) -> list[str]:
    """The changed steps, of which one browned cloves beside something else that a later one pounds with them."""
    told = list(steps)
    for place, step in enumerate(steps):
        later = next((at for at in range(place + 1, len(told)) if "garlic-infused oil" in told[at]), None)
        if later is not None and _BROWNED_WITH_IT.search(step):
            told[place] = _BROWNED_WITH_IT.sub(r"\g<until>it is", step)
            told[later] = told[later].replace("the rest of the garlic-infused oil", "the garlic-infused oil")
    return told
