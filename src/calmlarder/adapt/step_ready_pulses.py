"""Steps that only pick over, soak and boil dry pulses, where drained tins take their place; and a bake of hours."""

import re
from collections.abc import Sequence

from calmlarder.adapt.in_words import short_name
from calmlarder.adapt.names import spans_in
from calmlarder.adapt.things_now import Told, things_now
from calmlarder.and_list import and_list

_COOKED_ALREADY = "cooked already"
_NUMBER = re.compile(r"\s*(?:\d{1,2}[.)] )?")
_SENTENCE = re.compile(r"[^.;!?]+(?:[.;!?](?=\s|$)|$)")
# What is done to what is dry before it goes into a dish, and nothing else.
_MADE_READY = re.compile(
    r"\s*(?:then )?(?:pick over|sort|rinse|wash|drain|soak|leave|cover|put|place|tip|next day,? (?:drain|rinse))\b"
    r"[^.;!?]*",
    re.IGNORECASE,
)
# Vegetables that came beside tinned pulses want no rinsing until the water runs clear.
_RINSED_CLEAR = re.compile(
    r"\b(?P<rinse>rinse|wash) the (?P<name>(?:\d+ g of the )?(?:pumpkin|potatoes|carrots|courgettes?|aubergines?))"
    r"(?: well| thoroughly)?(?: (?:in|under|with) [^.;]*?)?"
    r" (?:until|till) (?:the |it |they )?(?:water )?(?:runs?|is|are) (?:almost |mostly )?clear"
    r"(?:[.;] |,? (?P<then>then|and) )(?P<verb>put|tip|place|add|drain and (?:put|add|tip)) (?:them|it)\b",
    re.IGNORECASE,
)
_SOAKS = re.compile(r"\bsoak\w*\b|\b(?:overnight|night before)\b", re.IGNORECASE)
_BOILED_BARE = re.compile(
    r"\s*(?:cover|boil|simmer|put|bring|add|return|place)\b[^.;!?]*\bwater\b[^.;!?]*"
    r"\b(?:simmer|boil|cook)\w*\b[^.;!?]*\b(?:\d+|an|one|two) (?:minutes?|mins?|hours?|hrs?)\b[^.;!?]*",
    re.IGNORECASE,
)
_DRAINED = re.compile(r"\s*(?:skim|drain|save|reserve|keep)\b[^.;!?]*", re.IGNORECASE)
_OF_HOURS = re.compile(
    r"\b(?:bake|cook|braise)\b(?=[^.;!?\d]{0,40}(?P<hours>\d{1,2})(?: ?(?:-|–|to) ?\d{1,2})? ?(?:hours|hrs)\b)"
    r"[^.;!?\d]{0,40}\d{1,2}(?: ?(?:-|–|to) ?\d{1,2})? ?(?:hours|hrs)\b",
    re.IGNORECASE,
)
_LAST_HOUR = re.compile(r"\bfor the last (?:half )?hour\b", re.IGNORECASE)
_LEAST_HOURS = 2  # a shorter bake does no harm to what is cooked already: ours
_THEIR_WATER = re.compile(
    r"(?P<much>\b\d[\d./½¼¾]* ?(?:ml|litres?|l|cups?)) of (?:their|its|the) (?:cooking |soaking |bean )?"
    r"(?:water|liquid|liquor)\b",
    re.IGNORECASE,
)
# `Drain, keeping 250 ml of the cooking water`: a later step takes so much fresh water.
_KEPT_WATER = re.compile(
    r"\b(?:keep|reserv|sav)(?:e|ing)? (?P<much>(?:\d[\d./½¼¾]* ?(?:ml|litres?|l|cups?)|an? (?:mug|cup|ladle)(?:ful)?))"
    r" of (?:their|its|the) (?:(?:cooking|boiling|bean) )?(?:water|liquid|liquor)\b",
    re.IGNORECASE,
)
_RESERVED = re.compile(
    r"\b(?:the |their )?(?:reserved|saved) (?:cooking |bean |boiling )?(?:water|liquid|liquor)\b", re.IGNORECASE
)
# What came for a soaked pulse was not soaked: `Drain the quinoa, put it in a big pot with the water`.
_DRAINED_DRY = re.compile(
    r"(?P<lead>(?<=[.;!] )|(?<=^)|(?<=^\d[.)] )|(?<=^\d\d[.)] ))drain(?: and rinse)? (?P<what>the [a-z][a-z, -]{2,40}?)"
    r"(?: well)?(?:,? and (?:then )?|, (?:then )?|[.;] (?:then )?)(?P<verb>put|place|tip|add|transfer) (?:it|them)\b",
    re.IGNORECASE,
)
_SQUASHED = re.compile(
    r"\b(?:until|till|til) (?:you can (?:easily )?(?:squash|crush|squish|mash|press) (?:one|them|it|a \w+)"
    r"|(?:one|they|it) (?:squash|crush|mash|squish)\w*)(?: (?:easily|flat))?"
    r"(?: (?:between|with|in|against) (?:your |two |the )?"
    r"(?:fingers|finger and thumb|thumb|a spoon|a fork|side of the pan))?",
    re.IGNORECASE,
)
_BEAN_WATER = re.compile(r"\b(?:the )?(?:bean|soaking|cooking|reserved|saved) (?:water|liquid|liquor)\b", re.IGNORECASE)


def without_soaked_pulses(steps: Sequence[str], marked: Sequence[str], told: Told) -> list[str]:
    """The changed steps without the soaking and first boiling of a pulse that is drained from tins now.

    `steps` are as written. Water it would have left is fresh water; a bake of hours, in which it would fall apart, is
    one hour (common practice, no source).
    """
    ready = [food for food, change in told.changed.items() if change.heat.startswith(_COOKED_ALREADY)]
    if any(
        change.change == "swap" and told.tables.food_by_id[food].kind == "pulse"
        for food, change in told.changed.items()
    ):
        marked = [_SQUASHED.sub("until soft", _not_drained(_rinsed_no_more(text))) for text in marked]
    if ready:
        marked = [_THEIR_WATER.sub(r"\g<much> water", text) for text in marked]
        kept = next(filter(None, map(_KEPT_WATER.search, steps)), None)
        marked = [_RESERVED.sub(f"{kept['much']} water" if kept else "water", text) for text in marked]
    if len(ready) != 1 or not any(map(_SOAKS.search, steps)):
        return list(marked)
    now = short_name(and_list(things_now(told.changed[ready[0]], "", told, (ready[0],))))
    found: list[str] = []
    soaked = False
    for step, text in zip(steps, marked, strict=False):
        head = _NUMBER.match(step)
        number = head[0] if head else ""
        sentences = _SENTENCE.findall(step[len(number) :])
        named = {food for _, _, meant in spans_in(step, told.names) for food in meant}
        if ready[0] in named and _SOAKS.search(step) and all(map(_MADE_READY.fullmatch, map(_bare, sentences))):
            soaked = True
            told.soaked.add(ready[0])  # the steps say it, so no note has to
            text = f"{number}Drain and rinse the {now}: cooked already, so nothing is soaked."
        elif soaked and named <= {ready[0]} and sentences and _is_boiled_bare(sentences):
            text = f"{number}Nothing is boiled ahead."
        elif soaked:
            text = _BEAN_WATER.sub("fresh water", text)
            baked = _OF_HOURS.sub(_an_hour, text)
            text = text if baked == text else _LAST_HOUR.sub("for the last 15 minutes", baked)
        found.append(text)
    return found


def _not_drained(step: str) -> str:
    """A step that puts what was never soaked into the pot as it is; a grain of small seeds is rinsed."""
    found = _DRAINED_DRY.search(step)
    if found is None or re.search(r"\b(?:lentils|beans|chickpeas|peas)\b", found["what"]):
        return step
    first = "Rinse" if "quinoa" in found["what"] or "rice" in found["what"] else ""
    told = (
        f"{first} {found['what']}, {found['verb'].lower()} it"
        if first
        else f"{found['verb'].capitalize()} {found['what']}"
    )
    return f"{step[: found.start()]}{told}{step[found.end() :]}"


def _rinsed_no_more(step: str) -> str:
    """`Rinse the pumpkin until the water runs clear. Put them in a pan` as `Put the pumpkin in a pan`."""
    found = _RINSED_CLEAR.search(step)
    if found is None:
        return step
    verb = found["verb"] if found["then"] else found["verb"].capitalize()
    verb = verb.capitalize() if found["rinse"][0].isupper() else verb.lower()
    return f"{step[: found.start()]}{verb} the {found['name']}{step[found.end() :]}"


def _an_hour(found: re.Match[str]) -> str:
    if int(found["hours"]) < _LEAST_HOURS:
        return found[0]
    return f"{found[0].split()[0]} 1 hour [cooked already: not {found['hours']} hours]"


def _bare(sentence: str) -> str:
    return sentence.rstrip(".;!? ")


def _is_boiled_bare(sentences: Sequence[str]) -> bool:
    """Whether a step only boils something in water and drains it."""
    first, *rest = map(_bare, sentences)
    return _BOILED_BARE.fullmatch(first) is not None and all(map(_DRAINED.fullmatch, rest))
