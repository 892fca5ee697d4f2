"""How long a step heats what a food is now, and what of it no longer holds: peeling, browning, soaking."""

import re
from functools import lru_cache

from calmlarder.adapt.model import Change
from calmlarder.adapt.sentences import minutes_in, says, sentence_at, sentence_behind
from calmlarder.adapt.step_minutes import text_up_to
from calmlarder.adapt.step_notes import IN_THE_OVEN, OVEN_TIME, parts_of_how
from calmlarder.tables.book import Tables

_BROWNS = re.compile(
    r"\b(?:golden|translucent|transparent|carameli[sz]\w*"
    r"|brown(?:ed|ing)?(?! (?:bits|sugar|rice|ale|stock|sauce|residue|crust|lentils))"
    r"|crisp|gold|blackened|charred)\b",
    re.IGNORECASE,
)
_SOFTENS = re.compile(r"\b(?:soft\w*|sweat\w*|fry|fried|saut\w+|cook\w*)\b", re.IGNORECASE)
_IN_A_PAN = re.compile(r"\b(?:soften(?:ing)?|sweat\w*|fry|fried|frying|saut\w+)\b", re.IGNORECASE)
_PEELS = re.compile(r"\b(?:squeez\w*|skins?(?![- ](?:side|up|down|on)\b)|peel\w*|pop\w*|stud\w*)\b", re.IGNORECASE)
_OFF_ANOTHER = re.compile(r"\b(?:water|moisture|liquid|juices?) (?:from|out of)\b|\bwhen they pop\b", re.IGNORECASE)
_SKINS = re.compile(r"[^,.;:]{0,40}\b(?:skins?|peels?|husks?)\b", re.IGNORECASE)
_AS_A_PIECE = re.compile(
    r"\bcut[- ]side|\b(?:top|tip|end)s? off\b|\bwrap\w*\b[^.;]{0,30}\bfoil\b|\b(?:heads?|bulbs?|whole)\b|\bhalv\w*",
    re.IGNORECASE,
)
_GOES_ON = re.compile(
    r"(?:once|when|as soon as|keep|continue|fry|cook|stir"
    r"|let(?! (?:it|them|this|all|everything) (?:sit|stand|rest|cool)))\b",
    re.IGNORECASE,
)
_CRUSHES = re.compile(r"\b(?:mash\w*|crush\w*|squash(?:ed|ing))\b", re.IGNORECASE)
_STAYS_WHOLE = frozenset({"grain", "rice", "noodle", "olive", "nut"})  # does not mash
_HARD_WHEN_RAW = frozenset({"potato", "root", "squash", "pod"})
_NOTHING_TO_PEEL = frozenset({"oil", "leaf", "herb", "spice"})
_A_MINUTE = "only a minute"
_UNTIL_DONE = re.compile(
    r"\s*(?:cloves? )?(?:is|are|turns?|has turned|begins? to|starts? to) "
    r"(?:very |just |lightly |light |pale |deep |turn(?:ing)? |beginning to |starting to |go )*"
    r"(?:soft|golden|colou?r|brown|tender|cooked|translucent|caramelised|caramelized)",
    re.IGNORECASE,
)
_UNTIL_BROWN = re.compile(r"\s*until (?:it is |just |lightly |deep |pale )*(?:golden|brown|crisp)\b", re.IGNORECASE)
_WITH_LIQUID = re.compile(r"\s*(?:and|with|in) (?:all )?(?:their|its|the) (?:liquid|juices?|brine)\b", re.IGNORECASE)
_CUTS = re.compile(
    r"\b(chop|crush|mince|slice|grate|peel|pound|smash|bash|bruise)\b(?: (?!and\b)[\w-]+){1,5}$", re.IGNORECASE
)
_LIFTS = re.compile(r"\b(?:lift\w*|remove|scoop\w*|fish\w*|pound\w*|discard\w*)\b", re.IGNORECASE)
_FALLS = re.compile(
    r"\s*(?:is|are|have|has|start to|begin to)?\s*(?:\w+ ){0,3}(?:collaps\w*|mushy|br(?:eak|oken?) (?:down|up)"
    r"|fall\w* apart|disintegrat\w*|pulpy?|creamy)",
    re.IGNORECASE,
)
# `Whisk it a bit so some of the dal breaks`: the whisk does it, whatever they are.
_IS_BROKEN_UP = re.compile(r"\b(?:whisk|mash|crush|beat|blend|press|squash)\w*\b[^.;]*\bso\b", re.IGNORECASE)
_ROAST_NEXT = re.compile(
    r"\s*(?:\d+[.)] )?(?:then )?(?:roast|bake|cook in the oven|put in the oven|return)", re.IGNORECASE
)
# `Sit the chicken on top and roast for 25 minutes`, of the tin that the step before filled.
_THEN_ROASTED = re.compile(r"\b(?:roast|bake)\b(?! (?:in|on) another)[^.;]*\d+ ?(?:min|hour|hr)", re.IGNORECASE)
_BACK_IN_IT = re.compile(
    r"\b(?:roast|bake)\b[^.;]*\b(?:more|another|further)\b|\b(?:return|back)\b[^.;]*\boven\b", re.IGNORECASE
)
_FRIED_CRISP = re.compile(
    r"\b(?:shallow|deep)[- ]fry\w*|\bcrisp(?:y|ed)?\b|\b(?:toss|coat|dip)\w*[^.;]*\b(?:flour|batter)\b", re.I
)
_THEN_OTHERS = re.compile(r",? (?:and )?then (?:add|put in|stir in|tip in|throw in)\b", re.IGNORECASE)
_IS_SO = re.compile(r"\s+(?:is|are|has|have)\b")
_MUCH_LONGER = 5  # minutes in the oven beyond what green tops bear: ours


def treated(step: str, end: int, change: Change, told: tuple[str, str], tables: Tables) -> str:
    """How a step treats what the food before `end` is now, where that is another way than it says.

    `told` are the step's text so far, in which it may be said already, and the step behind it.
    """
    before, behind = told
    sentence = sentence_at(step, end)
    foods = [tables.food_by_id[one.food] for one in change.to]
    if (
        foods
        and all(one.kind == "oil" for one in foods)
        and says(_AS_A_PIECE, sentence)
        and (says(IN_THE_OVEN, step) or says(_PEELS, step))
    ):
        return ": no piece to cut or roast, so skip this and stir it in when the rest comes together"
    if any(one.kind == "pulse" and one.state != "dry" for one in foods) and _WITH_LIQUID.match(step, end):
        return ": drained and rinsed, without their liquid"
    whole = [one.name for one in foods if one.kind in _STAYS_WHOLE]
    if whole and _is_crushed(step, end, sentence):
        return f": stir {' and '.join(whole)} in whole" + (", mash the rest" if len(whole) < len(foods) else "")
    if foods and all(one.kind == "oil" for one in foods):
        told_of_oil = _of_oil(step, end, sentence)
        if told_of_oil:
            return told_of_oil
    keeps = foods and all(one.kind in _STAYS_WHOLE or one.kind == "pulse" for one in foods)
    if keeps and _FALLS.match(step, end) and not _IS_BROKEN_UP.search(text_up_to(step, end)):
        return ": these keep their shape, so go by the time"
    if (
        foods
        and says(_PEELS, sentence)
        and _is_peeled(step, end)
        and all(tables.food_by_id[one.food].kind in _NOTHING_TO_PEEL for one in change.to)
    ):
        return ": just stir it in"
    oven = next((found for part in parts_of_how(change.how) if (found := OVEN_TIME.match(part))), None)
    if _IS_SO.match(step, end):
        oven = None  # it went in before: `until the onions have melted into the sauce`
    if oven and says(IN_THE_OVEN, step) and not _in_a_pan(step) and not _on_the_stove(step, sentence):
        following = behind.partition("\n")[0]
        next_in = _ROAST_NEXT.match(following) or _THEN_ROASTED.search(following)
        baked = step if minutes_in(step) else f"{step} {following}" if next_in else ""
        again = any(says(IN_THE_OVEN, one) and minutes_in(one) for one in behind.split("\n"))
        if baked and baked is not step:
            again = any(says(IN_THE_OVEN, one) and minutes_in(one) for one in behind.split("\n")[1:])
        in_all = minutes_in(baked) + sum(minutes_in(one) for one in behind.split("\n") if says(_BACK_IN_IT, one))
        if (in_all if baked is step else minutes_in(baked)) >= int(oven[1]) + _MUCH_LONGER:
            when = f"only for the last {oven[1]} minutes"
            return f": not yet, {when} in the oven" if again else f": {when}"
    if (
        change.not_browned
        and not says(_FRIED_CRISP, sentence)
        and change.not_browned not in before
        and _is_browned(f"{_own_clause(sentence)}. {_when_done(step, sentence)}", change.not_browned)
    ):
        return f": {change.not_browned}"
    return ""


def _own_clause(sentence: str) -> str:
    """A sentence without what it does once other things go in: `cook the leek gently, then put in the mushrooms …`."""
    return _THEN_OTHERS.split(sentence)[0]


def _on_the_stove(step: str, sentence: str) -> bool:
    """Whether a sentence cooks for minutes of its own before the dish goes into the oven."""
    told = f"{sentence}. {_when_done(step, sentence)}"
    return bool(minutes_in(told)) and not says(IN_THE_OVEN, told)


def _is_peeled(step: str, end: int) -> bool:
    """Whether it is the food before `end` that is squeezed or peeled, and not the cucumber or the mustard seeds."""
    clause = re.split(r"[,.;:]|\b(?:and|then) (?=(?:add|stir|mix|tip|put)\b)", step[:end])[-1]
    return bool(_PEELS.search(clause) and not _OFF_ANOTHER.search(clause)) or bool(_SKINS.match(step, end))


def _is_crushed(step: str, end: int, sentence: str) -> bool:
    """Whether a sentence mashes what is named there, or what stands before a `them` or a half of it."""
    before = sentence[: len(sentence) - max(0, step.find(sentence) + len(sentence) - end)]
    crushed = list(_CRUSHES.finditer(before))
    if crushed:
        between = before[crushed[-1].end() :]
        return not re.search(r",|\b(?:and|then) (?:serve|top|add|stir|put|return|tip)", between)
    behind = sentence[len(before) :]
    return bool(
        re.search(
            rf"{_CRUSHES.pattern}[^,;]*\b(?:them|half|some|a few|lightly|together|everything|until|well)\b",
            behind,
            re.I,
        )
    )


def raw_when_mashed(step: str, end: int, change: Change, tables: Tables) -> str:
    """What of a stand-in is still raw where a step mashes it before anything is cooked; nothing where it is soft."""
    sentence = sentence_at(step, end)
    before = sentence[: len(sentence) - max(0, step.find(sentence) + len(sentence) - end)]
    foods = [tables.food_by_id[one.food] for one in change.to]
    raw = [one.name for one in foods if one.state == "raw" and one.kind in _HARD_WHEN_RAW]
    if not raw or not _CRUSHES.search(before):
        return ""
    return f": stir {' and '.join(raw)} in whole" + (", mash the rest" if len(raw) < len(foods) else "")


def _of_oil(step: str, end: int, sentence: str) -> str:
    """What becomes of cutting, browning and lifting out where an infused oil takes the place of a clove."""
    if _UNTIL_DONE.match(step, end):
        return ": it does not brown, so go on once it is hot"
    cut = _CUTS.search(step[:end])
    if cut is not None and cut[0] in sentence:
        return f": nothing to {cut[1].lower()}"
    if says(_BROWNS, sentence) and says(_LIFTS, f"{sentence}. {sentence_behind(step, sentence)}"):
        return ": nothing to brown, lift out or pound; stir it in at the end of this step"
    if _UNTIL_BROWN.match(step, end):
        return ": it does not brown, so go on once it is hot"
    return ""


@lru_cache(maxsize=256)
def _in_a_pan(step: str) -> bool:
    return _IN_A_PAN.search(step) is not None


def _when_done(step: str, sentence: str) -> str:
    """The sentence behind where it says how that one goes on (`Once golden, …`); else nothing."""
    rest = sentence_behind(step, sentence)
    return rest if _GOES_ON.match(rest) else ""


def _is_browned(sentence: str, how: str) -> bool:
    """Whether a sentence fries until golden, or longer than green tops bear."""
    return says(_BROWNS, sentence) or (how.startswith(_A_MINUTE) and says(_SOFTENS, sentence))
