"""What a changed step still says of the old food, word by word, and no longer holds of the new one."""

import re
from collections.abc import Sequence

# Nothing is left to do to a clove that is oil now: `Take the garlic-infused oil with the flat of a knife and crush.`
_NOTHING_TO_CUT = re.compile(
    r"(?:(?<=[.;] )|(?<=^)|(?<=^\d[.)] )|(?<=^\d\d[.)] ))take the garlic-infused oil(?: \[[^\]]*\])?"
    r"(?: (?:with|using|under|on|in|to|finely|roughly|thinly|very|well"
    r"|and (?:crush|chop|mince|slice|peel|mash|smash|set))\b[^.;,]*)?[.;] +(?=[A-Z])",
    re.IGNORECASE,
)
# A sauce has nothing to cling to: `simmer until it coats the lentils [left out]`.
_CLINGS_TO_NOTHING = re.compile(
    r",? and (?:it )?(?:clings? to|coats?|covers?|glazes?|surrounds?) (?:the |all the )?[a-z][a-z -]{2,30} "
    r"\[left out\]",
    re.IGNORECASE,
)
# `Squeeze the leek greens [just stir it in] in a cloth. Put it in a bowl`: green tops have no juice to lose.
_WRUNG_OUT = re.compile(
    r"\b(?:[Ss]queeze|[Ww]ring|[Pp]ress)(?: out)? (?P<what>[^.;\[\]]{3,60}) \[just stir it in\](?: out)? "
    r"(?:in|with|between|using|through|over|to)\b[^.;]*[.;] (?P<verb>[A-Z][a-z]+) (?:it|them|the onions?|the pulp)\b"
)
_PRESSED_OUT = re.compile(
    r"\b(?P<put>put|place|tip) (?P<what>[^.;]{0,30}\bgreens(?: \[just stir it in\])?) (?:in|into|through) a "
    r"(?:fine |clean )?(?:sieve|colander|cloth|tea towel|muslin)\b[^.;]*?\b(?:press|squeeze|wring)\b[^.;]*?"
    r"(?:,? and|[.;,]) (?:then )?(?P<verb>tip|put|add|mix|stir|transfer)(?: it| them)?(?= (?:in|into|to|with)\b)",
    re.IGNORECASE,
)
# A clove that only gave its taste is lifted out: `The garlic has imparted its flavour, so take it out and discard.`
_GAVE_ITS_TASTE = re.compile(
    r"(?:(?<=[.;!] )|(?<=^)|(?<=^\d[.)] ))(?:(?:once|when|as) )?(?:the )?garlic-infused oil(?: \[[^\]]*\])? "
    r"(?:has|will have|have)\b[^.;]*\b(?:flavou?r|aroma|taste|job|work|golden|brown|colou?r)\w*[^.;]*"
    r"\b(?:out|remove|discard|lift)\b[^.;]*[.;](?: +|$)",
    re.IGNORECASE,
)
# One thing of a list named again in it: `cumin, asafoetida, asafoetida, paprika`.
_AGAIN_IN_A_LIST = re.compile(
    r"(?<!\ba )(?<!\ban )\b(?P<name>[a-z]{4,}(?: [a-z]{4,}){0,2}), (?=(?:and )?(?:the )?(?P=name)(?:,| and\b|[.;]|$"
    r"| (?:in(?:to)?|to|with|until|for|on)\b))",
    re.IGNORECASE,
)
# `the lentils [drained and rinsed, without their liquid] with their liquid`
_NO_LIQUOR = re.compile(
    r"(?P<said> \[drained and rinsed, without their liquid\]),? (?:and|with|in|along with) (?:all )?(?:of )?"
    r"(?:their|its|the) (?:liquid|liquor|juices?|brine|water)\b",
    re.IGNORECASE,
)
_SO_MUCH_AND_MORE = re.compile(
    r"\b\d[\d ./]*(?:tsp|tbsp|g|ml) of the (?P<name>[a-z-]+(?: [a-z-]+){0,2}?)(?P<between>(?:,| and) [^.;\[\]]*?)"
    r"(?<! of)(?<! the)"
    r",? (?:and )?(?:the )?(?P=name)(?=,| and\b)",
    re.IGNORECASE,
)
# `cumin, paprika, 1/4 tsp of the ground cumin and`: of what stands in the list already.
# What has no pocket is not split: `Warm the corn tortillas, then split and stuff`.
_SPLIT_FLAT = re.compile(
    r"(?P<flat>\b(?:tortillas|wraps)\b[^.;]*?)(?P<then>,? (?:and |then )+|[.] )(?:split|slit|halve|open)"
    r"(?: (?:them|open|the tops))*(?:,? and|, then|,) (?P<fill>(?:stuff|fill|load|pile)\b)",
    re.IGNORECASE,
)
_ITSELF_AND_SO_MUCH = re.compile(
    r"\b(?P<first>(?:ground )?(?P<name>cumin|coriander|paprika|turmeric|ginger|cinnamon|chilli flakes))"
    r"(?P<between>(?:,| and)[^.;\[\]]*?)(?:, | and )\d[\d ./]*(?:tsp|tbsp|pinch(?:es)?) of the (?:ground )?(?P=name)"
    r"(?=,| and\b|[.;]| (?:for|until|and|in|to)\b)",
    re.IGNORECASE,
)
# `until the greens [not yet, …] are sweet and the edges are charred`: they are not there yet.
_NOT_THERE_YET = re.compile(
    r"\b(?P<until>until|till) the [a-z ]*greens \[not yet[^\]]*\] (?:are|is) [\w ]{3,20}?"
    r"(?: and (?=the\b)|(?P<end>[,.;]|$))",
    re.IGNORECASE,
)
# `the honey [maple syrup] mustard glaze`
_IN_A_GLAZE = re.compile(
    r"\b[a-z]+ \[(?P<now>[a-z][a-z -]{2,25})\](?= (?:[a-z]+ )?(?:glaze|dressing|sauce|marinade|vinaigrette|drizzle)\b)"
)
_OIL = r"(?:the )?(?:garlic \[garlic-infused oil[^\]]*\]|garlic-infused oil(?: \[[^\]]*\])?)"
_BURNS = r"(?:catch|burn|brown|scorch|colou?r|take (?:on )?(?:any )?colou?r|turn (?:too )?(?:brown|golden|dark|bitter))"
_OR_BITTER = r"(?: too much)?(?:,? (?:or|as|because|since|otherwise) (?:it|this)\b[^,.;]*\bbitter)?"
# Nothing of an oil catches in the pan: `Do not let the garlic burn or it will turn bitter.`
_CATCHES = re.compile(
    rf",?(?: stirring)?,? so (?:that )?{_OIL} (?:does not|doesn[’']t) {_BURNS}{_OR_BITTER}"
    r"|,? (?:and |but )?(?:taking care|take care|being careful|be careful|making sure|make sure|watching|mind)"
    rf" (?:not to let |that |you do not let |you don[’']t let )?{_OIL}(?: does not| doesn[’']t| to)?"
    rf" {_BURNS}{_OR_BITTER}"
    rf"|,? (?:and |but )?(?:do not|don[’']t|never|not|without) (?:let|letting|allow|allowing) {_OIL}(?: to)?"
    rf" {_BURNS}{_OR_BITTER}"
    rf"|,? without (?:burning|browning|colou?ring|scorching) {_OIL}",
    re.IGNORECASE,
)
# `let the garlic-infused oil turn pale gold`: an oil is warmed.
_LET_IT_COLOUR = re.compile(
    rf"\b(?P<let>[Ll]et|[Aa]llow) {_OIL} (?:to )?(?:turn|go|take on|become|colou?r|brown|soften|sizzle until)"
    r"(?: (?:to )?(?:(?:very|just|a|lightly|pale|light|deep|little|golden|gold|brown|soft|colou?r|nutty)\b ?)+)?"
)
# `Heat the garlic-infused oil and the oil until golden and crisp`
_HEATED_UNTIL = re.compile(
    rf"(?P<oil>\b(?:heat|warm|fry|sizzle) {_OIL}(?:,? (?:and|with|in) (?:the )?(?:rest of the |other |olive )?oil)?) "
    r"(?:until|till) (?:it is |just |lightly |pale |light |deep )*(?:golden|gold|crisp|brown)\b[^.;,]*",
    re.IGNORECASE,
)
# `Add the garlic-infused oil and warm it until it just starts to colour`
_UNTIL_IT_COLOURS = re.compile(
    rf"(?P<oil>{_OIL}(?:(?:,| and) [a-z ,]{{3,40}})?,? and )(?P<verb>[a-z]+)(?: it)?(?: gently| briefly)? "
    r"(?:until|till) (?:it|they)(?: is| are| has| have)?(?: just| lightly)? "
    r"(?:(?:starts?|begins?|turns?|turned|taken|takes?|goes) (?:on )?(?:to )?)?(?:a little |some |pale |light |deep )*"
    r"(?:colou?r(?:ed)?|golden|gold|brown(?:ed)?|soft(?:en|ens|ened)?)\b",
    re.IGNORECASE,
)
_ITS_OWN_SENTENCE = re.compile(
    rf"(?:(?<=[.;!] )|(?<=^)|(?<=^\d[.)] ))(?:Do not|Don[’']t|Never|Take care not to|Be careful not to) "
    rf"(?:let |allow ){_OIL}(?: to)? {_BURNS}{_OR_BITTER}[.;!](?: +|$)"
)
# `Squeeze out the rest of the garlic-infused oil [just stir it in], blend …`
_SQUEEZED = re.compile(
    r"\b(?P<first>[sp])(?:queeze|op|lip|ush|ress)(?: out)? (?P<what>the (?:rest of the )?garlic-infused oil)"
    r" \[just stir it in\](?: out)?(?=,|;|\.| and\b)",
    re.IGNORECASE,
)

# `push a sliver of garlic-infused oil and a few rosemary leaves into each`: no oil is pushed into a cut.
_A_SLIVER = re.compile(
    r"\b(?P<verb>push|poke|press|insert|stuff|tuck|slide|stick|put|place)(?P<of> (?:an?|the|one|some|each)? ?"
    r"(?:slivers?|slices?|pieces?|bits?|halves|half)(?: of)?(?: the)?| the)? garlic-infused oil(?: \[[^\]]*\])?"
    r"(?:(?:,| and|, and) (?P<rest>[^.;]*?))? (?P<where>(?:in(?:to)?|under|inside|deep) [^.;]*)(?P<end>[.;]|$)",
    re.IGNORECASE,
)
_IN_A_CUT = re.compile(r"\b(?:each|cuts?|slits?|slashes|incisions?|holes?|pockets?|skin|gaps?)\b", re.IGNORECASE)
# `a garlic sliver`, whose bracket says that it is oil now.
_GARLIC_SLIVER = re.compile(
    r"\b(?:an? |some |the )?garlic \[garlic-infused oil[^\]]*\] (?:slivers?|slices?|pieces?)\b", re.IGNORECASE
)
_RUB_NEXT = re.compile(
    r"(?P<rub>\s*rub(?: (?:it|the [a-z]+|all))?(?: (?:all )?over)? with )(?P<with>[^.;]+)", re.IGNORECASE
)
_ALL_THE_REST = "and rub the meat with the garlic-infused oil"


def without_what_is_left_over(step: str) -> str:
    """A changed step without what is done to a clove, said twice in a list, or called by the old name."""
    step = _FIRST_OF_IT.sub(lambda one: one["verb"].capitalize(), _without_its_clause(step))
    step = _PRESSED_OUT.sub(_put_in, step)
    step = _CLINGS_TO_NOTHING.sub("", _WRUNG_OUT.sub(r"\g<verb> \g<what>", step))
    step = _LAID_ON_NOTHING.sub(_laid_alone, _DISCARDED.sub("", step))
    step = _SPREAD_WITH_NOTHING.sub(r"\g<lead>", step)
    step = _NO_LIQUOR.sub(r"\g<said>", _rubbed_in(step))
    step = _SO_MUCH_AND_MORE.sub(r"\g<name>\g<between>", step)
    step = _ITSELF_AND_SO_MUCH.sub(r"\g<first>\g<between>", step)
    step = _SPLIT_FLAT.sub(r"\g<flat>\g<then>\g<fill>", step)
    step = _SQUEEZED.sub(lambda one: f"{'Stir' if one['first'].isupper() else 'stir'} in {one['what']}", step)
    step = _HEATED_UNTIL.sub(r"\g<oil> for a minute", step)
    step = _UNTIL_IT_COLOURS.sub(r"\g<oil>\g<verb> for a minute", _AGAIN_IN_A_LIST.sub("", step))
    step = _NOT_THERE_YET.sub(lambda one: f"{one['until']} {'all is tender' + one['end'] if one['end'] else ''}", step)
    step = _GAVE_ITS_TASTE.sub("", _ITS_OWN_SENTENCE.sub("", step)).rstrip()
    step = _CATCHES.sub("", _IN_A_GLAZE.sub(r"\g<now>", _NOTHING_TO_CUT.sub("", step)))
    return _LET_IT_COLOUR.sub(_warmed, step)


def _warmed(found: re.Match[str]) -> str:
    gap = " " if found[0].endswith(" ") else ""
    return f"{'Warm' if found['let'][0].isupper() else 'warm'} it through for a moment{gap}"


# `the rest of the garlic-infused oil and the remaining pepper flakes`, of which nothing went in before
_REMAINING = re.compile(r"(?<=infused oil and the )remaining (?P<name>[a-z]+(?: [a-z]+)?)(?=,| and\b|[.;]|$)", re.I)


# `spread with hummus [left out] and fill`; `discarding the onions [left out], and skim`
_SPREAD_WITH_NOTHING = re.compile(
    r"(?P<lead>, |,? and |,? then |(?<=[.;] )|^(?:\d+[.)] )?)(?:spread|top|scatter|sprinkle|drizzle|dollop|brush|line)"
    r"(?: (?:it|them|each|the [a-z]+))? with (?:the )?[a-z][a-z -]{2,30} "
    r"\[left out\](?:,? and (?:then )?|, (?:then )?)",
    re.IGNORECASE,
)
_DISCARDED = re.compile(
    r",? (?:and )?(?:discarding|removing|leaving behind|discard|throw away) (?:the )?[a-z][a-z -]{2,30} \[left out\],?",
    re.IGNORECASE,
)
# `Put the onions [left out] in the bottom of the cooker, sit the pork on top`
_LAID_ON_NOTHING = re.compile(
    r"\b(?P<put>put|place|lay|scatter|spread|arrange) (?:the )?[a-z][a-z -]{2,30} \[left out\] "
    r"(?P<where>(?:in|into|over|on) (?:the (?:base|bottom) of )?[^,.;]{3,40}?),? (?:and )?"
    r"(?:sit|put|place|lay|set|nestle) (?P<what>the [^,.;]{3,40}?) (?:on top(?: of (?:them|it|the [a-z]+))?|over them)",
    re.IGNORECASE,
)
# `, break them up with a spoon, and add the chickpeas [left out].`: a clause that does nothing else.
_PUTS_IN = (
    r"(?:add|stir in|tip in|fold in|mix in|toss in|throw in|tuck in|pour in|put in|drop in|scatter over|sprinkle over"
    r"|stir through|top with|scatter with|sprinkle with|finish with)"
)
_IT = (
    r"(?:(?:all |some |half |most )?(?:of )?(?:the |your |a few )?"
    r"(?!and\b)[\w-]+(?: (?!and\b|with\b)[\w-]+){0,3}) \[left out\]"
)
_THERE = r"(?: (?:in(?:to)?|to|over|on|through|as well|too)(?: (?:the|it|them|top)\b(?: \w+)?)?)?"
_CLAUSE_OF_IT = re.compile(
    rf"(?P<and>,? (?:and )(?:then )?|, (?:then )?){_PUTS_IN} {_IT}{_THERE}(?P<end>[.;,]|$)", re.IGNORECASE
)
_FIRST_OF_IT = re.compile(
    rf"(?P<start>(?<=[.;!] )|(?<=^)|(?<=^\d[.)] )|(?<=^\d\d[.)] )){_PUTS_IN} {_IT}{_THERE},? (?:and |then )+"
    r"(?P<verb>(?!the\b|a\b|some\b)[a-z]+)\b",
    re.IGNORECASE,
)
_MADE_UP_WITHOUT = re.compile(r"Without (?P<name>[a-z ]+): make up the liquid with up to (?P<ml>\d+) ml water\.")


def water_for_what_is_out(steps: Sequence[str], notes: Sequence[str]) -> tuple[list[str], list[str]]:
    """The steps with water where they pour in a liquid that is left out, and the notes without what that says."""
    told, kept = list(steps), []
    for note in notes:
        made_up = _MADE_UP_WITHOUT.fullmatch(note)
        place = next((at for at, one in enumerate(told) if made_up and f"{made_up['name']} [left out]" in one), None)
        if made_up is None or place is None:
            kept.append(note)
            continue
        gone = re.compile(rf"\b(?:the )?{re.escape(made_up['name'])} \[left out\]", re.IGNORECASE)
        told[place] = gone.sub(f"up to {made_up['ml']} ml water", told[place], count=1)
    return told, kept


_LET_IT = re.compile(
    r"(?P<greens>\bgreens(?: \[[^\]]*\])?(?: (?:in)?to [a-z ]{3,20}?)?,? (?:and |then )*let )it "
    r"(?=soften|cook|wilt|fry|sweat|go|get|turn|become)"
)
_MADE_OF_GREENS = re.compile(r"\bleek green (?=(?:mixture|mix|filling|sauce|paste)\b)", re.IGNORECASE)


def greens_by_one_word(step: str) -> str:
    """`the leek green mixture` as `the leek mixture`; greens are several, so `let them soften`."""
    return _LET_IT.sub(r"\g<greens>them ", _MADE_OF_GREENS.sub("leek ", step))


def remaining_if_begun(steps: Sequence[str]) -> list[str]:
    """The changed steps that speak of the rest of a thing only where an earlier one took some of it."""
    return [_begun(step, " ".join(steps[:place])) for place, step in enumerate(steps)]


def _begun(step: str, before: str) -> str:
    return _REMAINING.sub(lambda one: one[0] if one["name"] in before else one["name"], step)


def _without_its_clause(step: str) -> str:
    """A step without a clause that only puts in what is left out; `A, B and add it` is `A and B`."""
    found = _CLAUSE_OF_IT.search(step)
    if found is None:
        return step
    before, end = step[: found.start()], found["end"]
    start = max((one.end() for one in re.finditer(r"[.;!?:] |^\d{1,2}[.)] ", before)), default=0)
    sentence = before[start:]
    if "and" in found["and"] and end != "," and " and " not in sentence and (comma := sentence.rfind(", ")) > 0:
        sentence = f"{sentence[:comma]} and {sentence[comma + 2 :]}"
    return f"{before[:start]}{sentence}{end}{step[found.end() :]}"


def _put_in(found: re.Match[str]) -> str:
    what = found["what"].removesuffix(" [just stir it in]")
    return f"{'Put' if found['put'][0].isupper() else 'put'} {what}"


def _laid_alone(found: re.Match[str]) -> str:
    where = re.sub(r"the (?:base|bottom) of ", "", found["where"])
    return f"{'Put' if found['put'][0].isupper() else 'put'} {found['what']} {where}"


def _rubbed_in(step: str) -> str:
    """A step in which garlic was pushed into cuts: what went in with it still does, and the oil is rubbed on."""
    step = _GARLIC_SLIVER.sub("a sliver of garlic-infused oil", step)
    found = _A_SLIVER.search(step)
    the = found is not None and (found["of"] or "").strip() == "the"
    if found is None or (the and found["rest"] is None and "cut" not in step):
        return step
    if the and found["verb"].casefold() in {"put", "place"} and not _IN_A_CUT.search(found["where"]):
        return step  # into the pot or the processor
    head, behind = step[: found.start()], step[found.end() :]
    if found["rest"]:
        head += f"{found['verb']} {found['rest']} {found['where']}"
    else:
        head = re.sub(r",? and $|, $| $", "", head)
    rubbed = _RUB_NEXT.match(behind)
    if rubbed is not None:
        rest = re.sub(r"^the oil\b", "the other oil", rubbed["with"])
        both = "," if re.search(r",| and ", rest) else " and"
        return f"{head}{found['end']}{rubbed['rub']}the garlic-infused oil{both} {rest}{behind[rubbed.end() :]}"
    return f"{head} {_ALL_THE_REST}{found['end']}{behind}".lstrip()
