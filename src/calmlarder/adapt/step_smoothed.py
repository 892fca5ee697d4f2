"""Changed steps once more: what in their sentences still speaks of the old food makes room for what is done now.

Onion that was fried until golden, garlic squeezed from its skins, a thing named twice.
"""

import re
from collections.abc import Callable

from calmlarder.adapt.sentences import SENTENCE_ENDS
from calmlarder.adapt.step_clove_oil import (
    BULB_ALONE,
    CRISP_GARLIC,
    FISHED_OUT,
    FROM_ITS_SKINS,
    LIFTED_WITH_IT,
    NOT_BROWNED_OIL,
    SCOOPED_OUT,
    WITH_THE_LIFTED,
    only_warmed,
    without_crisps,
    without_skins,
)
from calmlarder.adapt.step_filled import in_halves_now
from calmlarder.adapt.step_left_over import without_what_is_left_over
from calmlarder.adapt.step_put_in_late import put_in_late
from calmlarder.adapt.step_soured import soured

_NOT_GOLDEN = re.compile(r" \[only until soft, not golden\]")
_UNTIL_GOLDEN = re.compile(
    r"\b(?P<until>until|till) (?:(?:it is|they are|all is) )?"
    r"(?:(?:(?:very|really|quite|meltingly|completely) )?(?:soft(?:ened)?|tender|sweet|silky),? (?:and )?)?"
    r"(?:(?:very|just|lightly|light|pale|deep|deeply|rich|nicely|turning|starting to|beginning to|nearly|almost|an?) )*"
    r"(?:golden|gold|brown(?:ed)?|translucent|transparent|carameli[sz]ed?|colou?r)(?:[- ]brown)?"
    r"(?: (?:at|around|on) the edges| all over| in places)?",
    re.IGNORECASE,
)
_GREENS_GOLDEN = re.compile(
    r"(?P<greens>\b(?:greens|chives))(?: \[[^\]]*\])? (?:are|is|turns?|have turned|look) "
    r"(?:(?:very|just|lightly|light|pale|deep|deeply|nicely) )*"
    r"(?:golden|brown|carameli[sz]ed|translucent|sticky|charred|crisp|jammy|blackened)(?: brown)?"
    r"(?: (?:at|around|on) the (?:edges|tips|ends))?",
    re.IGNORECASE,
)
_CARAMELISED = re.compile(
    r"\b(?:carameli[sz]ed|golden|browned|crisp(?:y)?) (?P<greens>(?:leek|spring onion) greens)\b"
    r"(?: \[only until soft, not golden\])?",
    re.IGNORECASE,
)
# What follows green tops that were fried until they are green: sugar makes them shine.
_THEN_CARAMELISED = re.compile(
    r"(?P<green>\bbright green\b[^.;]*[.;][^.;]*?\b(?:sugar|syrup)\b[^.;]*?)\b(?:until|till) "
    r"(?:\w+ (?:and )?){0,2}(?:carameli[sz]ed|sticky|golden|browned)\b",
    re.IGNORECASE,
)
_DRAINED_GREENS = re.compile(r"\b(?:drained|soaked) (?=[\w ]{0,20}\b(?:greens|chives)\b)", re.IGNORECASE)
# A thing named twice, as two of the list became one: `the leek greens and leek greens`.
_TWICE = re.compile(
    r"(?<!\ba )(?<!\ban )"
    r"\b(?:(?P<first>\d+) (?P<unit>g|ml) of )?(?P<the>the )?(?P<name>[a-z][a-z-]*(?: [a-z-]+){0,3})(?:,? and |, )"
    r"(?:(?P<second>\d+) (?:g|ml) of )?(?:the )?(?P=name)\b(?! for\b)",
    re.IGNORECASE,
)
# Cold water that takes the bite of a raw onion: green tops have none to lose.
_FOR_ITS_BITE = re.compile(
    r"(?:soak|leave|cover|put|place|steep)\b[^.;]*?\b(?P<greens>(?:(?:leek|spring onion) )?(?:greens|chives))\b"
    r"[^.;]*\bwater\b[^.;]*"
    r"\b(?:bite|sharpness|harshness|sting|pungency|edge|mild\w*|mellow\w*)\b"
    r"(?:(?!,? (?:and |then )*drain\b)[^.;])*",
    re.IGNORECASE,
)
_DRAIN_NEXT = re.compile(
    r",?\s*(?:and |then )*drain\b(?:(?!,? (?:and|then) (?:toss|mix|stir|fold|add|combine|scatter|tip)\b)[^.;])*"
    r"(?:[.;]\s*|,? (?:and |then )+(?=[a-z]))",
    re.IGNORECASE,
)
_GOES_IN = re.compile(
    r"(mix|toss|combine|stir|fold|add|scatter|tip)(?: (?:it|them))?(?= (?:with|in|into|to|over|through)\b)", re.I
)
_GOES_ON = re.compile(r"\s*(?:and |then )?(?:fry|cook|let|stir|saut\w+|keep|continue|leave)\b", re.IGNORECASE)
_SOFT_AND_BROWN = re.compile(
    r"(?P<greens>\bgreens) \[only until soft, not golden\] (?P<are>are|is) (?:very |just )?soft and "
    r"(?:caramelised|caramelized|golden|brown(?:ed)?|sticky|charred)(?: brown)?",
    re.IGNORECASE,
)
# Bashed and sizzled as a clove: an oil is warmed.
_SIZZLED = re.compile(
    r"\b(?P<take>take) the garlic-infused oil(?: \[[^\]]*\])? and (?:gently )?"
    r"(?:sizzle|fry|cook|saut[eé]|warm) (?:it|them)\b",
    re.IGNORECASE,
)
# Green tops burn where an onion is charred: they go in with what is wet.
_CHARS = re.compile(r"\b(?:char|blacken|scorch)\w*\b|\bcut[- ]sides? down\b", re.IGNORECASE)
_CHARRED_GREENS = re.compile(
    r"(?P<and>,? and )?\b(?:the )?(?P<greens>(?:leek|spring onion) greens)(?: \[[^\]]*\])?"
    r"(?P<next>,? and |, )?(?:the )?",
    re.IGNORECASE,
)
_MASHED_NOT = re.compile(
    r" \[[^\[\]:]*\b(?:of the )?(?P<all>[\w -]+?): stir (?P=all) in whole, mash the rest\]"
    r"|(?: and|,) (?:\d+ g of the |the )?(?P<name>[\w -]+?) \[stir (?:dry )?(?P=name) in whole, mash the rest\]",
    re.IGNORECASE,
)
# Bread that is rubbed with a cut clove is brushed with its oil.
_RUBBED = re.compile(
    r"\b(?P<rub>rub)(?P<how>bed|bing|s)? (?P<what>[^.;\[]{3,60}?) (?:all over )?with "
    r"(?:the cut (?:sides?|faces?|edges?) of )?(?:the |a )?"
    r"(?:halved |cut |peeled |whole )?garlic-infused oil(?: \[[^\]]*\])?",
    re.IGNORECASE,
)
_BRUSHED = {"": "brush", "bed": "brushed", "bing": "brushing", "s": "brushes"}
_RUBBED_ALONE = re.compile(
    r"\brubbed with (?P<oil>(?:the rest of the |the |a )?(?:halved |cut )?garlic-infused oil)(?: \[[^\]]*\])?",
    re.IGNORECASE,
)
_CRUSHED_WITH = re.compile(
    r"\b(?P<take>take) the garlic-infused oil(?: \[[^\]]*\])? and (?:the )?"
    r"(?P<what>ginger|chill?i(?:es)?)(?: together)?",
    re.IGNORECASE,
)
# `the mushrooms, oyster mushrooms`, of which two kinds became one.
_A_KIND_OF_IT = re.compile(r"\bthe (?P<short>\w{4,}s),? (?:and )?(?:the )?(?P<long>[\w-]+ (?P=short))\b")
# Where the step itself is as short, it need not be said.
_ONLY_A_MINUTE = re.compile(
    r" \[only a minute\](?=[^\[\]]{0,50}\b(?:\d\d seconds|(?:1|2|one|two|a) minutes?)\b)", re.IGNORECASE
)
# Two of a list whose third goes in later.
_TWO_LEFT = re.compile(
    r"(?P<first>\b(?:tip|put|toss|add|place|spread|arrange|scatter) the [a-z-]+(?: [a-z-]+)?), "
    r"(?![a-z]+ing\b)(?=[a-z-]+(?: [a-z-]+)? (?:in|into|on|onto|to|over) (?:an?|the) )",
    re.IGNORECASE,
)
# `Stir the garlic-infused oil in and add with the onions.`
_STIRRED_AND_ADDED = re.compile(
    r"\bstir (?P<oil>the (?:rest of the )?garlic-infused oil) in,? and add (?:it |them )?"
    r"(?P<with>with|along with|to)\b",
    re.IGNORECASE,
)
# Green tops turn no pink in vinegar.
_PICKLED_PINK = re.compile(
    r"(?P<pickled>\bgreens\b[^.;]*\b(?:pickle|marinate|steep|leave|stand|juice|vinegar)\b[^;]*?),? "
    r"(?:un)?till? (?:(?:it|they) (?:turns?|goes|go|is|are|becomes?) )?(?:bright |vivid |pale )?pink"
    r"(?: and \w+)?",
    re.IGNORECASE,
)
_STIRRED_TWICE = re.compile(
    r"(?P<once>\bstir the garlic-infused oil[^.,;]*), (?:then )?stir(?: well| it in)?,? (?:and )", re.IGNORECASE
)
_NOTHING_BETWEEN = re.compile(r", ,|,,")


def smoothed(step: str, others_between: Callable[[str], bool]) -> str:
    """A changed step as one reads it; `others_between` says whether a text names what does turn golden."""
    step = without_what_is_left_over(step)
    step = _TWICE.sub(_once, _MASHED_NOT.sub(lambda one: _mashed(one, step), step))
    step = soured(_A_KIND_OF_IT.sub(r"the \g<long>", _RUBBED.sub(_brushed, step)))
    step = _RUBBED_ALONE.sub(r"brushed with \g<oil>", step)
    step = _SOFT_AND_BROWN.sub(r"\g<greens> \g<are> soft", BULB_ALONE.sub("", step))
    step = _CRUSHED_WITH.sub(
        lambda one: f"{'C' if one['take'][0] == 'T' else 'c'}rush the {one['what']} into the garlic-infused oil", step
    )
    step = _only_soft(step, others_between)
    step = _SIZZLED.sub(lambda one: f"{'W' if one['take'][0] == 'T' else 'w'}arm the garlic-infused oil", step)
    step = in_halves_now(step)
    step = LIFTED_WITH_IT.sub(r"\g<lift> the ", WITH_THE_LIFTED.sub(r"\g<lift>\g<others>", step))
    step = CRISP_GARLIC.sub(without_crisps, SCOOPED_OUT.sub(only_warmed, step))
    if (fished := FISHED_OUT.search(step)) is not None:
        rest = step[fished.end() :].lstrip()
        step = f"{NOT_BROWNED_OIL.sub('', step[: fished.start()])}{step[fished.start() :]}"
        fished = FISHED_OUT.search(step) or fished
        if fished["lead"]:  # `…until crisp, then discard the garlic.`
            end = fished["end"] if fished["end"] in {".", ";"} else fished["lead"].rstrip()
            step = f"{step[: fished.start()]}{end} {rest}".rstrip()
        else:
            step = f"{step[: fished.start()]}{rest[:1].upper()}{rest[1:]}".rstrip()
    step = _THEN_CARAMELISED.sub(r"\g<green>until glossy", _CARAMELISED.sub(r"softened \g<greens>", step))
    step = _DRAINED_GREENS.sub("", step)
    step = _GREENS_GOLDEN.sub(r"\g<greens> are soft", step)
    step = FROM_ITS_SKINS.sub(lambda one: without_skins(one, step[: one.start()]), step)
    step = _ONLY_A_MINUTE.sub("", _STIRRED_TWICE.sub(r"\g<once> and ", step))
    step = put_in_late(_without_bite(_STIRRED_AND_ADDED.sub(_added, step)))
    step = _PICKLED_PINK.sub(r"\g<pickled>", step)
    step = step.replace(",  and ", " and ")
    return _NOTHING_BETWEEN.sub(",", _TWO_LEFT.sub(r"\g<first> and ", step))


def _added(found: re.Match[str]) -> str:
    return f"{'Add' if found[0][0].isupper() else 'add'} {found['oil']} {found['with']}"


def not_charred(step: str) -> str:
    """A step that chars something, without the green tops, which go in with what comes next."""
    kept: list[str] = []
    start = 0
    for stop in (*(one.end() for one in SENTENCE_ENDS.finditer(step)), len(step)):
        sentence, start = step[start:stop], stop
        found = _CHARRED_GREENS.search(sentence)
        if found is not None and (found["and"] or found["next"]) and _CHARS.search(sentence):
            the = "the " if found["next"] else ""
            rest = f"{sentence[: found.start()]}{the}{sentence[found.end() :]}"
            end = len(rest.rstrip(".!; "))
            sentence = f"{rest[:end]}; the {found['greens'].lower()} stay out of it and go in next{rest[end:]}"
        kept.append(sentence)
    return "".join(kept)


def _mashed(found: re.Match[str], step: str) -> str:
    """Nothing of what goes in later in the step anyhow."""
    name = re.escape(found["name"] or found["all"])
    if re.search(rf"\b(?:add|stir in|tip in|return)\b[^.;]*\b{name}", step[found.end() :], re.IGNORECASE):
        return ""
    late = re.search(rf"{name}[^.;]{{0,40}}at the end", step, re.IGNORECASE)
    return "" if late else found[0]


def _brushed(found: re.Match[str]) -> str:
    verb = _BRUSHED[(found["how"] or "").lower()]
    verb = verb.capitalize() if found["rub"][0].isupper() else verb
    return f"{verb} {found['what']} with a little of the garlic-infused oil"


def _once(found: re.Match[str]) -> str:
    first, second = found["first"], found["second"]
    if first and second:
        return f"{int(first) + int(second)} {found['unit']} of the {found['name']}"
    return f"{found['the'] or ''}{found['name']}"


def _only_soft(step: str, others_between: Callable[[str], bool]) -> str:
    """`until golden` as `until soft`, where only green tops are fried until then."""
    for mark in reversed(list(_NOT_GOLDEN.finditer(step))):
        ends = [one.end() for one in SENTENCE_ENDS.finditer(step)]
        end = next((one for one in ends if one > mark.end()), len(step))
        if _GOES_ON.match(step, end):  # `Add the onions. Fry for 10 minutes until golden.`
            end = next((one for one in ends if one > end), len(step))
        start = max((one for one in ends if one <= mark.start()), default=0)
        golden = _UNTIL_GOLDEN.search(step, mark.end(), end)
        if golden is None or others_between(step[start : golden.start()]):
            continue
        step = f"{step[: golden.start()]}{golden['until']} soft{step[golden.end() :]}"
        step = f"{step[: mark.start()]}{step[mark.end() :]}"
    return step


def _without_bite(step: str) -> str:
    found = _FOR_ITS_BITE.search(step)
    if found is None:
        return step
    behind = step[found.end() :].lstrip(".; ")
    drained = _DRAIN_NEXT.match(behind)
    rest = behind[drained.end() :] if drained else behind
    goes_in = _GOES_IN.match(rest)
    if goes_in is not None and found["greens"]:  # what was drained is no more named there
        rest = f"{goes_in[1]} the {found['greens']}{rest[goes_in.end() :]}"
    kept = f"{step[: found.start()]}{rest[:1].upper()}{rest[1:]}".strip()
    return kept or "The greens want no soaking: they have no bite to lose."
