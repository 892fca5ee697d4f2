"""Parts that only the old vegetable had: woody ends, tips and stalks of spears, the leaves of a head.

`Snap the woody ends off the green beans and drop them into the stock. Slice the stalks into rounds, keeping the tips
whole.` is `Trim the green beans. Cut them into short pieces.` What a cook does: common practice, no source.
"""

import re
from collections.abc import Sequence

from calmlarder.adapt.things_now import Told

_SPEARS, _HEADS = "stem", "brassica"
_ENDS = r"(?:woody|tough|dry|white|thick|bottom|lower|hard|fibrous)(?:,? (?:woody|tough|dry|white))?"
_THEM_AWAY = r"(?:drop|put|add|keep|save|discard|use|throw|compost) (?:them|these|the ends)[^.;]*"
_SNAPPED = re.compile(
    rf"\b(?P<verb>snap|break|cut|trim|bend)\w*(?: off)? the {_ENDS} (?:ends?|bases?|parts?|stalks?|bits?|bottoms?)"
    r"(?: off| from| of)?(?: of)? (?P<what>(?:the |each )?[a-z][a-z -]{2,40}?)"
    rf"(?:,? (?:and|then) (?:then )?{_THEM_AWAY})?(?=[.;,]|$| and )",
    re.IGNORECASE,
)
_CUT_UP = re.compile(
    r"\b(?P<verb>slice|cut|chop) (?:up )?(?:the )?(?:remaining |rest of the )?(?:stalks|spears|stems|stalk)\b[^.;]*?"
    r",? (?:but |and )?(?:keep|leav|reserv|sav|set)\w*[^.;]*\btips\b[^.;]*",
    re.IGNORECASE,
)
# `; after 15 the tips`, `and add the tips for the last minute`
_TIPS_LATER = re.compile(
    r"(?:[;,] (?:and )?(?:then )?|,? and (?:then )?)(?:(?:after|for|add|stir in|put in|throw in)[^.;,]{0,25})?"
    r"\bthe (?:reserved |asparagus )?tips\b[^.;,]*(?=[.;,]|$)",
    re.IGNORECASE,
)
_OWN_TIPS = re.compile(
    r"(?:(?<=[.;!] )|(?<=^)|(?<=^\d[.)] ))(?:add|stir in|put in|throw in|top with|scatter with) the (?:reserved )?"
    r"tips\b[^.;]*[.;](?: +|$)",
    re.IGNORECASE,
)
# `adding the leaves for the last 10`, of a cauliflower that is something else now.
_LEAVES_LATER = re.compile(
    r",? (?:and )?add(?:ing)? (?:in )?the (?:cauliflower |outer |green |small )?(?:leaves|stalks?|core)"
    r"(?: for the last [^.,;]*)?(?=[.,;]|$)",
    re.IGNORECASE,
)
# `avoiding the cores`, of apples that are something else now.
_CORES = re.compile(
    r",? (?:and )?(?:avoid|discard|remov|leav|throw|stopp|cutt|turn)ing (?:(?:out|away|behind|round|around|at) )?"
    r"(?:the |their |any )?(?:cores?|pips|core and pips|stems? and cores?)(?: (?:behind|out|away))?(?=[.,;]|$| and )"
    r"|(?:(?<=[.!] )|(?<=^))(?:discard|throw away|bin|compost) the cores?(?: and (?:pips|peel))?[.!](?: +|$)",
    re.IGNORECASE,
)
# `Tuck in the cauliflower [green beans] leaves.`: a sentence of a part alone that is gone.
_PART_ALONE = re.compile(
    r"(?:(?<=[.;!] )|(?<=^)|(?<=^\d[.)] ))(?:tuck in|scatter(?: over)?|add|toss in|chop|shred|slice|roast|keep|reserve"
    r"|stir in|top with|throw in|put in) (?:the |any |some of the )?(?:small |outer |green |inner )?[a-z]+"
    r" \[[^\]]*\] (?:leaves|stalks?|stems?|core|fronds|tops)\b(?![^.;]*\b(?:and|with) the\b)[^.;]*[.;](?: +|$)",
    re.IGNORECASE,
)
_CORED = frozenset({"apple", "pear", "quince"})
_LEAFY = frozenset({"leaf", "herb"})


def without_old_parts(steps: Sequence[str], told: Told) -> list[str]:
    """The changed steps without parts that what took a vegetable's place does not have."""
    rows = told.tables.food_by_id
    gone = {
        rows[food].kind
        for food, change in told.changed.items()
        if change.change == "swap" and all(one.food != food for one in change.to)
    }
    done = list(steps)
    if _SPEARS in gone:
        done = [_without_spears(step) for step in done]
    if _HEADS in gone and not any(rows[food].kind in _LEAFY for food in told.direct):
        done = [_PART_ALONE.sub("", _LEAVES_LATER.sub("", step)).rstrip() or step for step in done]
    cored = {food for food in told.changed if food.split("-")[0] in _CORED}
    kept = {one.food.split("-")[0] for change in told.changed.values() for one in change.to} & _CORED
    if cored and not kept and not any(food.split("-")[0] in _CORED for food in told.direct - cored):
        done = [_CORES.sub("", step) for step in done]
    return done


def _without_spears(step: str) -> str:
    step = _SNAPPED.sub(lambda one: f"{'Trim' if one['verb'][0].isupper() else 'trim'} {one['what']}", step)
    step = _CUT_UP.sub(lambda one: f"{one['verb']} them into short pieces", step)
    return _TIPS_LATER.sub("", _OWN_TIPS.sub("", step)).rstrip()
