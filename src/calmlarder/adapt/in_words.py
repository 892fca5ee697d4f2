"""The name of what a food is now, written into a step's own sentence where the sentence still reads well.

`Soften the onion for 10 minutes` becomes `Soften the leek greens for 10 minutes`. Where the words around a name may
make another thing of it (`onion soup`, `2 onions`) nothing is written in: there it goes into brackets.
"""

import re
from typing import NamedTuple

from calmlarder.matching.names.words import words_of

# Words that may stand before a name, besides participles (`remaining`, `sliced`) and the first word of a sentence.
_MAY_PRECEDE = re.compile(
    r"the|your|th[eo]se|this|all|half|in|into|with|and|or|of|to|over|onto|on|for|from|until|till|when|once|then|by|as"
    r"|plus|using|some|both|more|extra|add|stir|fry|cook|boil|simmer|soften|roast|toss|put|tip|mix|fold|whisk|pour|beat"
    r"|heat|melt|drain|rinse|blend|mash|slice|chop|dice|scatter|sprinkle|serve|top|cover|place|spread|return|combine"
    r"|warm|brown|saut[eé]|torn|broken|frozen|beaten|ground|split|hot|cold|dry|wet|soft|raw|good|other|whole"
)
_PARTICIPLE = re.compile(r"(?!spring)\w{2,}(?:ed|ing)")
_CUT_WORDS = re.compile(
    r"(?<!mashed and the )(?<!mashed and )(?:(?:very |finely |roughly |thinly |coarsely )*"
    r"(?:chopped|minced|crushed|cut|squashed|bashed|sliced|grated|smashed|peeled|bruised|whole|diced|pressed|quartered|halved)\s+)+$",
    re.IGNORECASE,
)
# What may follow it: a sign, or a word that begins something new.
_MAY_FOLLOW = re.compile(
    r"\s*(?:$|[.,;:!?()\[\]–—]|\d+(?:-\d+)? ?min"
    r"|(?:and|or|in|into|to|with|for|until|till|on|onto|over|at|from|then|but|if|when|while|are"
    r"|is|has|have|was|were|will|should|can|may|must|might|dry|by|back|as|so|through|a|an|the|around|about|under|together|well|again|first|all|out|off|along"
    r"|gently|slowly|lightly|turns?|starts?|begins?|breaks?|goes|go|melts?|collapses?|just|cut|left|only|evenly|between|among|against|up|down|of|side|which"
    r"|that|next|per|plus|mixed|according|following|warm|hot|aside|whole|separately|cook|fry|simmer|without|after|before|once|bit|little|straight|during"
    r"|(?!jelly\b)[a-z]{4,}ly"
    r"|does|do|did|dissolves?|bubbles?|bursts?|browns?|softens?|wilts?|swells?|cooks?|smells?|looks?|feels?|sticks?"
    r"|thickens?|floats?|rises?|curdles?|sizzles?|gives?|releases?|comes?|still|lengthways|crosswise|overnight)\b)",
    re.IGNORECASE,
)
# A thing that was made with it, told of already: its words may stay.
MADE_WITH_IT = re.compile(
    r"\s+(?:water|mixture|mix|sauce|dressing|glaze|drizzle|gravy|relish|salsa|liquid|juices?|filling|dough|batter|pan|marinade|cream|butter|mayo|mayonnaise|paste|pur[eé]e|pulp)\b",
    re.IGNORECASE,
)
A_MIXTURE = re.compile(r"\s+(?:mixture|mix|filling)\b", re.IGNORECASE)
A_SAUCE = re.compile(
    r"\s+(?=(?:sauce|dressing|glaze|drizzle|marinade|vinaigrette|gravy|relish|salsa)\b)", re.IGNORECASE
)
A_PASTE = re.compile(r"\s+(?:paste|pur[eé]e)\b", re.IGNORECASE)
_SHARE = re.compile(
    r"(?:\b(?:about )?(?:half|(?:a|one) third|two thirds|(?:a|three) quarters?) (?:of )?)?"
    r"(?:\b(?:\d{1,2}|one|two|three|four|five|six|half|(?:a|one) third|two thirds|(?:a|three) quarters?)(?: of)? "
    r"(?:the|your) |\b(?:\d{1,2}|one|two|three|four) (?:of the )?(?:tins?|cans?|jars?|packets?) of (?:the )?"
    r"|\b(?:the (?:last|rest|remaining|other|second)|remaining) (?:of the )?)(?:[\w-]+ ){0,2}$",
    re.IGNORECASE,
)
VERBS_NEXT = (
    r"(?:then|cook|stir|fry|let|simmer|leave|turn|toss|mix|cover|bring|reduce|lower|season|drain|add|pour|heat|bake|roast"
    r"|boil|put|set|serve|saut\w+|sizzle|warm|whisk|return|drizzle|continue|blend|blitz|melt|keep|finish|garnish|scatter|sprinkle|spoon|squeeze|tear|crumble|swirl|slide|divide|tip|fold|stack|arrange|place|spread|press|mash|crush|rinse|pat|chop|slice|throw|drop|transfer|pile|dress|rub|brush|thread|shake|rest|steam|braise|brown|stew|marinate|roll|wrap|strain|lift|scoop|remove|scraping|stirring|turning|tossing|in|with|to|until|for)\b"
)
_BOTH_SHARED = re.compile(rf"\s+and (?!the |half |some |all |a |one )(?!{VERBS_NEXT})(?=[a-z-]+\b)", re.IGNORECASE)
_NEXT_WORD = re.compile(r"\s+([a-z]{4,})\b", re.IGNORECASE)
_THE = re.compile(r"\b(?:the|your) $", re.IGNORECASE)
_SO_MUCH = re.compile(
    r"\d[\d\s./]*(?:kg|g|ml|l|tsp|tbsp|cups?|pinch)?(?: \([^()]*\))? of the "
    r"|(?:the rest|half|(?:a|one) third|two thirds|(?:a|one) quarter|three quarters) of the "
)
_MEASURE = re.compile(r"\d[\d./]* ?(?:kg|g|ml|litres?|l|tsp|tbsp|cups?)\b")
_SO_MUCH_BEFORE = re.compile(rf"{_MEASURE.pattern} $")
_ITS_AMOUNT = re.compile(rf"(?:\bthe )?(?P<much>{_MEASURE.pattern})(?: of)?(?: the)? $")
_SOLD_AS = re.compile(r"\b(?:dry|canned) (?=\w)")
_FREE_OF = re.compile(r" without (?:(?:wheat, )?onion or garlic|garlic|onion)\b")
# `both onions` of two lines or two cuts, which are one thing now.
_BOTH = re.compile(r"\b(both|the two|the pair of)(?: the)? $", re.IGNORECASE)
# `all the beans`, `both tins of beans`, which are several things now.
_ALL_THE = re.compile(
    r"\b(?:all (?:of )?(?:the )?|(?:all|both|the)(?: (?:two|three|four|of))*(?: the)? (?:tins?|cans?) of (?:the )?)"
    r"(?:(?:tinned|canned|drained) )?$",
    re.IGNORECASE,
)
_AND_A_THING = re.compile(rf" and (?!{VERBS_NEXT})")
_VERBS = {"is": "are", "has": "have", "was": "were"}
_TURNS = ("turn", "start", "begin", "soften", "wilt", "look", "brown", "crackle", "collapse", "smell", "break", "melt",
    "dissolve", "bubble", "burst", "cook", "stick", "thicken", "float", "rise", "sizzle", "give", "release", "come",
)  # fmt: skip
_VERB = re.compile(rf"( )(is|are|has|have|was|were|(?:{'|'.join(_TURNS)})s?)\b")
_SECOND_VERB = re.compile(r" and (go|turn|become|get|start|begin|look|soften)(?:e?s)\b")
_LOOKS_PLURAL = frozenset({"asparagus", "couscous", "hummus", "molasses", "swiss"})
_CUTS = re.compile(r"\b(chop|crush|mince|slice|grate|peel|pound|smash|bash|bruise)(?= [\w -]*$)", re.IGNORECASE)

_CUT_INTO = re.compile(rf"(?:{_CUTS.pattern[: _CUTS.pattern.index('(?=')]}) in\b", re.IGNORECASE)
_BESIDE_IT = re.compile(r"[a-z]{3,} (?:with|and) (?:the )?$")
_MORE = re.compile(
    rf" and (?!{VERBS_NEXT})(?:(?:the|an?|some|half|your|\d[\d/.]*|[½¼¾]) "
    r"|(?:[\w-]+ ){0,2}[\w-]+(?:[.,;]|$| (?:and|to|in|into)\b))"
    rf"|, (?!and |{VERBS_NEXT})(?:\w+ ){{0,3}}\w+(?:,| and) "
)
# How pieces of it were cut: the list says that of what is in its place.
_PIECES = re.compile(
    r"\s+(?:wedges|slices|pieces|halves|quarters|chunks|cubes|strips|florets|rings|segments|batons|rounds)\b",
    re.IGNORECASE,
)
_OF_GARLIC = re.compile(r"\s+(?:paste|pulp|cloves?|flesh)\b", re.IGNORECASE)
_UNTIL = re.compile(r"\b(until|till|til|once|when) the $", re.IGNORECASE)
# Oil does none of this.
_UNTIL_DONE = re.compile(
    r" (?:is|are|turns?|has turned|begins? to|starts? to) "
    r"(?:very |just |lightly |light |pale |deep |turn(?:ing)? |beginning to |starting to |go )*"
    r"(?:soft|golden|colou?r|brown|tender|cooked|translucent|crisp|crispy|sizzling)"
    r"(?: brown| and (?:soft|golden|brown|crisp|tender)(?: brown)?)?(?=[.,;]|$| and (?=\w+\b)(?!\w+ed\b))",
    re.IGNORECASE,
)


class Around(NamedTuple):
    """A name in a step: what stands between the last change and it, the name, and what follows."""

    lead: str
    name: str
    behind: str


class InWords(NamedTuple):
    """The text up to the end of the new name, and how many signs behind the old one it takes in."""

    text: str
    taken: int


def short_name(now: str) -> str:
    """What a step calls a food: not how it is sold (`canned chickpeas`), nor what it is free of."""
    return _FREE_OF.sub("", _SOLD_AS.sub("", now))


def written_in(around: Around, now: str, how: str, is_oil: bool) -> InWords | None:
    """The step's words with the new name in them, `how` it is treated in brackets; None where they would mislead."""
    lead = around.lead
    if (said := _ITS_AMOUNT.search(lead)) and (its := _MEASURE.match(now)) and _plain(said["much"]) == _plain(its[0]):
        lead = lead[: said.start()]  # `the 600ml milk`, of which the new name tells the amount
    elif _SO_MUCH.match(now):
        share = _SHARE.search(lead)
        if share is not None and re.search(r"\band\b|,", share[0]):
            pass  # `half the ginger and garlic`: the share stays with the other
        elif share is not None:
            parted = re.search(r"\b(?:half|thirds?|quarters?|rest|remaining)\b", share[0], re.IGNORECASE)
            both = _BOTH_SHARED.match(around.behind) if parted else None
            if both is not None:  # `half the garlic and ginger`
                first = lead[share.start() : share.end()]
                return InWords(f"{lead[: share.start()]}{now} and {first}", both.end())
            lead = _SHARE.sub("", lead)
        else:
            lead = _THE.sub("", _CUT_WORDS.sub("", lead))
    elif now[:1].isdigit():
        return None
    said_again = _NEXT_WORD.match(around.behind)  # `pasta sheets`, which are gluten-free lasagne sheets now
    if said_again is not None and len(words_of(now)) > 1 and words_of(said_again[1])[-1:] == words_of(now)[-1:]:
        whole = around._replace(name=said_again[1], behind=around.behind[said_again.end() :])
        new = written_in(whole, now, how, is_oil)
        return new._replace(taken=new.taken + said_again.end()) if new else None
    pieces = _PIECES.match(around.behind) or (_OF_GARLIC.match(around.behind) if is_oil else None)
    if pieces is not None:
        whole = around._replace(lead=lead, name="pieces", behind=around.behind[pieces.end() :])
        new = written_in(whole, now, how, is_oil)
        return new._replace(taken=new.taken + pieces.end()) if new else None
    lead = _CUT_WORDS.sub("", lead)  # the list says how it is cut
    if " and " in now:
        lead = _ALL_THE.sub(_the, lead)
    if " and " not in now and not _AND_A_THING.match(around.behind):
        lead = _BOTH.sub(lambda one: "The " if one[1][0].isupper() else "the ", lead)
    if is_oil and how.startswith(": nothing to ") and (cut := _CUTS.search(lead)):
        how = ""
        if not _BESIDE_IT.search(lead[cut.end() :]):  # `pound the anchovies with the garlic` still pounds something
            does = "Stir" if _CUT_INTO.search(lead) else "Take"  # `Crush in the garlic.`
            lead = _CUTS.sub(lambda found: does if found[1][0].isupper() else does.lower(), lead)
    measured = _SO_MUCH_BEFORE.search(lead) and words_of(around.name)[-1:] == words_of(now)[-1:]  # `1 cup flour`
    if not (_leads(lead) or measured) or not _MAY_FOLLOW.match(around.behind):
        return None
    name = _in_a_list(short_name(now), around.behind)
    if " and " in name and lead.endswith(" and "):
        lead = f"{lead.removesuffix(' and ')}, "
    if is_oil and (done := _UNTIL_DONE.match(around.behind)) and (until := _UNTIL.search(lead)):
        return InWords(f"{lead[: until.start()]}{until[1]} fragrant", done.end())
    bracket = f" [{how.lstrip(':, ')}]" if how else ""
    verb = _VERB.match(around.behind)
    if verb is None or _plural(around.name) == _plural(name):
        return InWords(f"{lead}{name}{bracket}", 0)
    agreed = f"{verb[1]}{_agreeing(verb[2], _plural(name))}"
    second = _SECOND_VERB.match(around.behind, verb.end())  # `breaks and goes creamy`
    if second is not None and _plural(name):
        return InWords(f"{lead}{name}{bracket}{agreed} and {second[1]}", second.end())
    return InWords(f"{lead}{name}{bracket}{agreed}", verb.end())


def _the(found: re.Match[str]) -> str:
    return "The " if found[0][0].isupper() else "the "


def _plain(amount: str) -> str:
    return amount.replace(" ", "").casefold()


def _in_a_list(name: str, behind: str) -> str:
    """`carrots and parsnips` as `carrots, parsnips` where more things follow."""
    return name.replace(" and ", ", ") if _MORE.match(behind) else name


def _leads(lead: str) -> bool:
    """Whether what stands before a name goes before another name too."""
    stripped = lead.rstrip()
    if not stripped or stripped[-1] in ".,;:!?()]–—":
        return True
    last = re.split(r"[\s(]", stripped)[-1]
    if _MAY_PRECEDE.fullmatch(last.casefold()) or _PARTICIPLE.fullmatch(last.casefold()):
        return True
    before = stripped[: -len(last)].rstrip()
    return (
        last[:1].isupper()
        and last.replace("-", "").isalpha()
        and (not before or before[-1] in ".;:!?)]" or before[-1:].isdigit())
    )


def _plural(name: str) -> bool:
    last = name.casefold().split()[-1] if name.split() else ""
    return " and " in name or (last.endswith("s") and not last.endswith("ss") and last not in _LOOKS_PLURAL)


def _agreeing(verb: str, plural: bool) -> str:
    if plural:
        return _VERBS.get(verb, verb.removesuffix("s"))
    back = {many: one for one, many in _VERBS.items()}
    return back.get(verb, f"{verb}s")
