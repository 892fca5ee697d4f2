"""Cloves that were roasted whole, squeezed out or lifted out, where an infused oil takes their place."""

import re
from collections.abc import Sequence

from calmlarder.adapt.step_named_once import without_one

FROM_ITS_SKINS = re.compile(
    r"\b(?:squeeze|pop|slip|push|press) (?:out |in )?the (?:[\w-]+ )*garlic-infused oil(?: \[[^\]]*\])?,?"
    r" (?:out )?(?:of|from) (?:its|their|the) (?:papery )?(?:skins?|cavity|bulbs?|halves|heads?|chicken|bird)\b"
    r"(?P<over> over [^,.;]{2,40}?(?=,? and\b|[,.;]))?"
    r"(?P<into> into [^,.;]{2,30}?(?=,? and\b|[,.;]))?"
    r"(?:,? (?:and )?(?:mash|stir|crush|whisk|mix|beat)(?: (?:it|them))? (?P<where>into [^,.;]+?))?"
    r"(?P<rest>,? and |, |[.;])",
    re.IGNORECASE,
)
# A bulb that is roasted whole and squeezed out later: its oil only comes in there.
_WHOLE_BULB = re.compile(
    r"(?:,? and |, )(?:nestle|tuck|pop|place|put|add|scatter|sit) (?:in )?(?:the |some of the )?garlic-infused oil"
    r" \[no piece to cut or roast[^\]]*\](?: (?:among|between|around|in|alongside)[^.;,]*?)?(?=[.;,]| and\b)|"
    r"(?:,| with| and| along with) the garlic-infused oil \[no piece to cut or roast[^\]]*\]"
    r"(?:,? (?:cut|flat)[- ]sides? (?:down|up))?"
    r"|,? and (?:until )?the garlic-infused oil(?: \[[^\]]*\])? (?:is|are|turns?|feels?) (?:very |completely )?"
    r"(?:soft|tender|golden|squishy)(?: and \w+)?",
    re.IGNORECASE,
)
# `Drizzle the bulb with a little oil, wrap in foil and tuck in the corner.`: the oil comes in where it is squeezed.
BULB_ALONE = re.compile(
    r"(?:(?<=[.;!] )|(?<=^)|(?<=^\d[.)] )|(?<=^\d\d[.)] ))(?:drizzle|cut|slice|trim|wrap|rub|put|place|tuck|sit|brush"
    r"|toss|set|pop|lay|roast) (?:(?:some|the rest) of )?(?:the )?garlic-infused oil \[no piece to cut or roast[^\]]*\]"
    r"(?![^.;]*\b(?:and|with) the (?!corner|middle|rest of the oil|oil\b|tin|tray)[a-z]+)[^.;]*[.;](?: +|$)",
    re.IGNORECASE,
)
FISHED_OUT = re.compile(
    r"(?P<lead>(?:,? and then |,? and |,? then |, ))?\b(?:(?:fish|lift|take|scoop) out"
    r"|(?:fish|lift|take|scoop)(?= the garlic-infused oil(?: \[[^\]]*\])? out\b)|remove|discard) "
    r"the garlic-infused oil(?: \[[^\]]*\])?(?: out(?: again)?)?(?P<end>,? and then |,? and |,? then |, |[.;])",
    re.IGNORECASE,
)
# `remove the bay leaf and garlic-infused oil`: of what is lifted out an oil is none.
WITH_THE_LIFTED = re.compile(
    r"(?P<lift>\b(?:fish|lift|take|scoop|pick|pull) out|\bremove|\bdiscard)(?P<others> (?:[^.;,\[\]]|, (?!then\b))*?)"
    r"(?:,? and (?:the )?|, (?:the )?)garlic-infused oil(?: \[[^\]]*\])?",
    re.IGNORECASE,
)
LIFTED_WITH_IT = re.compile(
    r"(?P<lift>\b(?:fish|lift|take|scoop|pick|pull) out|\bremove|\bdiscard) (?:the )?garlic-infused oil"
    r"(?: \[[^\]]*\])?,? and (?:the )?"
    r"(?=(?:bay|thyme|rosemary|herbs?|cinnamon|ginger|lemon\w*|orange|star|sprigs?|stalks?)\b)",
    re.IGNORECASE,
)
# `warm the butter with the oil [nothing to brown, …] until crisp; scoop it out with a slotted spoon and keep it`
SCOOPED_OUT = re.compile(
    r"(?P<oil>garlic-infused oil) \[nothing to brown, lift out or pound;[^\]]*\](?P<heat>[^.;]*?)"
    r"(?:[.;,] (?:then )?|,? (?:and|then) )(?:scoop|lift|fish|take) (?:it|them) out"
    # what goes into the oil then still does
    r"(?:(?!,? (?:and |then )*(?:tip|add|put|stir|throw|return|pour|fry|cook|toss|brown)\b)[^.;])*",
    re.IGNORECASE,
)
_THEY_BROWN = re.compile(
    r",? (?:until|till) (?:they|it|the (?:cloves|slices|slivers))\b[^.;,]*"
    r"\b(?:gold|brown|crisp|colou?r|sizzl)\w*[^.;,]*",
    re.IGNORECASE,
)
CRISP_GARLIC = re.compile(
    r"(?P<lead>,? and |, |(?<=[.;] )|(?<=^)|(?<=^\d[.)] ))(?:scatter|sprinkle|top|finish)(?: over| with| it with)*"
    r" (?:the |its )?(?:crisp|crispy|golden|fried|toasted|reserved) garlic \[[^\]]*garlic-infused oil\]"
    r"(?: over [^,.;]{3,25})?(?P<end>,? and (?:then )?|[.;])",
    re.IGNORECASE,
)
NOT_BROWNED_OIL = re.compile(r" \[nothing to brown, lift out or pound;[^\]]*\]")
_OIL_IN_A_ROW = re.compile(
    r"(?:,| and|, and) (?:(?:half (?:of )?)?(?:the )?garlic(?: bulb| head)?s? \[[^\]]*garlic-infused oil[^\]]*\]"
    r"|(?:(?:some|half|the rest|[\d/ ]+ (?:tsp|tbsp)) of )?(?:the )?garlic-infused oil(?: \[no piece to cut[^\]]*\])?)"
    r"(?= (?:in|into|to|on|onto|with|inside|around|over|under)\b|,| and\b)",
    re.IGNORECASE,
)


def oil_only_later(steps: Sequence[str]) -> list[str]:
    """The steps without the oil where a whole bulb was roasted, if a later one takes it."""
    last = max((place for place, step in enumerate(steps) if "garlic-infused oil" in step), default=0)
    before = [_WHOLE_BULB.sub("", step) for step in steps[:last]]
    if any(FROM_ITS_SKINS.search(step) for step in steps[last : last + 1]):
        before = [_without_oil(step) for step in before]
    after = [*steps[last:]]
    squeezed = FROM_ITS_SKINS.search(after[0]) if after else None
    if squeezed is not None:  # it was roasted in the same step
        after[0] = f"{_without_oil(after[0][: squeezed.start()])}{after[0][squeezed.start() :]}"
    return [*before, *after]


def _without_oil(step: str) -> str:
    """A step without the oil of its list, which keeps its `and`."""
    found = _OIL_IN_A_ROW.search(step)
    if found is None:
        return step
    joined = re.match(r",? and |, ", found[0])
    return without_one(step, (found.start() + len(joined[0]), found.end())) if joined else step


def only_warmed(found: re.Match[str]) -> str:
    """The oil for as long as it wants: `until they sizzle and turn golden` was said of cloves."""
    return f"{found['oil']}{_THEY_BROWN.sub(' for a minute until fragrant', found['heat'])}"


def without_crisps(found: re.Match[str]) -> str:
    """What goes on without them: the next clause where this was the first, else the end of the sentence."""
    if found["end"] in {".", ";"}:
        return found["end"] if found["lead"] else ""
    return found["lead"]


def without_skins(found: re.Match[str], before: str) -> str:
    """`Squeeze the garlic from its skins, mash it into the juices and serve` as `Stir … into the juices and serve`.

    Where it is peeled with other things and goes nowhere yet, the oil stands with them.
    """
    if not (found["where"] or found["over"] or found["into"]) and before.endswith("s and "):
        return f"put the garlic-infused oil with them{found['rest']}"
    where = found["where"] or (found["over"] or found["into"] or " in").strip()
    pours = found["over"] and not (found["where"] or found["into"])
    verb = (
        "drizzle"
        if pours
        else "put"
        if re.match(r"into a (?:\w+ )?(?:jar|bowl|jug|blender|processor|mortar)", where)
        else "stir"
    )
    verb = verb.capitalize() if found[0][0].isupper() else verb
    return f"{verb} the garlic-infused oil {where}{found['rest']}"
