"""What a line says beside its food: how somebody came by it, where it stands, what it is for."""

import re

from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.notes import COLOURS, DISHES, PRODUCTS, QUALITIES
from calmlarder.matching.names.words import singular
from calmlarder.matching.owners.given_names import GIVEN_NAMES
from calmlarder.matching.owners.owner_words import PEOPLE

_LEAD = LatePattern(
    r"^(?:(?:i|we) (?:think|guess|reckon|believe)"
    r"|(?:i|we)(?:'?ve)? (?:still |also )?(?:have|got|found)(?: got)?"
    r"|ive (?:got|found)?|weve (?:got)?|got|have|there'?s|there (?:is|are)|theres|still (?:have|got|some)|that"
    r"|those|these"
    r"|some (?:sort|kind|type)s? of|a random|random|also|maybe|probably|possibly|looks like|apparently"
    r"|another|the (?:nice|good|posh|old) "
    r"|(?:could|would|can) do with (?:using(?: up)?|eating|finishing)(?: the)?"
    r"|the odd|lonely|one lonely|a lonely|a lone|lone)\b[ ,:]*"
)
_HEADING = LatePattern(
    r"^(?:the )?(?:top|bottom|middle|lower|upper|veg|vegetable|salad|fruit|cheese|meat|fridge|freezer|cupboard|door"
    r"|back|front|pantry|larder|counter)"
    r"(?: (?:of (?:the )?)?(?:shelf|drawer|door|fridge|cupboard|freezer|box|rack|bin|bowl|crisper))?"
    r"(?:\s+-\s*|\s*-\s+|\s*:\s*)(?=[a-z\d])"  # `meat-free` is one word, and `meat - mince` has a heading
)
_GIVEN = LatePattern(
    r"\bfrom (?!frozen\b|concentrate\b|scratch\b|powder\b|the\b|a\b|my\b)[a-z']+(?: shop| stall| farm)?(?=\s*(?:$|,))"
)
_OFF_SOMEBODY = LatePattern(r"\boff (?:mrs?|ms|dr|aunty|auntie|uncle|granny|nan|nanny) [a-z]+(?=\s*(?:$|[,;(]))")
# `from next door's hens`, `from Earl's tree`: where a gift grew tells nothing of it.
_GIVEN_FROM = LatePattern(
    r"\b(?:from|off) (?:[a-z]+ ){0,3}[a-z]+'?s'? (?:own |back |front |little |new )?"
    r"(?:hens?|chickens?|chooks?|bantams?|ducks?|geese|bees|hives?|trees?|gardens?|allotments?|farm|fields?|coop|flock|bush|orchards?|plot"
    r"|patch|greenhouse|polytunnel|hedge|vines?|yard|balcony|window ?box|place|house|stall|kitchen|land|cows?|goats?)"
    r"(?=\s*(?:$|[,;.(]))",
    needs=("from ", "off "),
)
_GIVERS = PEOPLE | GIVEN_NAMES | frozenset({
    "aunty", "auntie", "aunt", "uncle", "grandma", "grandpa", "grandad", "nana", "cousin", "friend", "friends",
    "someone", "somebody", "she", "he", "they", "law", "colleague", "boss", "church", "tenant", "coworker",
})  # fmt: skip
# `kimchi mom sent`, `plantain aunty gave us`: how it came.
_CAME = LatePattern(
    r"\b(?:that |which )?(?:my |our )?(?:[a-z]+ )?(?:sent|gave|brought|bought|got|cooked|left|made|baked|dropped off"
    r"|gifted|passed on|grew|picked)(?: (?:us|me|over|round|up|it|them))*(?=\s*(?:$|[,;.(]))"
)
_WHEREABOUTS = LatePattern(
    r"\b(?:still )?(?:in|on|under|by|off|behind|beside|near|next to|inside|at|from|outside) (?:the|a|an|my|our"
    r"|its|their)"
    r" ([a-z']+(?: [a-z']+)?)(?=\s*(?:$|[,;.]))"
)
# What stands with an article behind such a word and belongs to the food all the same.
_OF_THE_FOOD = frozenset({
    "pod", "shell", "skin", "cob", "tin", "can", "jar", "packet", "bag", "box", "block", "tub", "pot", "oven", "half",
    "freezer", "fridge", "cupboard", "pantry", "carton", "bottle", "tube", "bone", "pouch", "vine", "punnet", "bun",
})  # fmt: skip
_STORES = frozenset(
    {
        "cellar",
        "garden",
        "shed",
        "garage",
        "market",
        "shop",
        "patch",
        "barn",
        "porch",
        "larder",
        "stall",
        "honesty",
        "allotment",
        "foodbank",
    }
)
_PURPOSE = LatePattern(
    r"(?<!enough )\b(?:saved |kept |meant |intended |good |great |only |just )?for (?:the |a |my |some "
    r"|our )?[a-z][^,;(&+\d]*"
)
_OPINION = LatePattern(
    r"\b(?:knocking about|hanging around|lurking|kicking about|at the back|at the bottom|in there|somewhere"
    r"|lying around"
    r"|all (?:there|in there|present|here)"
    r"|(?:i'?m|i am|we'?re|we are|(?:s?he|they)(?:'?s|'?re| is| are)) (?:a |an |all |both )?(?:veggies?|vegetarians?"
    r"|vegans?|pescatarians?|coeliacs?|celiacs?)"
    r"|(?:use|goes?|going|eat|serve|nice|lovely|great|works?) (?:it |them |well |nicely |best )?with"
    r"(?!.*(?:onion|garlic|shallot|leek)) (?:the |some |my |our )?[a-z]+(?: [a-z]+)?(?=\s*(?:$|[,;.)]))"
    r"|(?:that |which )?(?:came|come|arrived) (?:with|in) (?:the |our |my |this week's )?[a-z]+"
    r" (?:box|bag|delivery|order)"
    r"|(?:clean(?:ed)?|washed) and (?:dry|dried)|top notch"
    r"|(?:is |are )?(?:still )?holding (?:up|out)(?: (?:great|well|ok|okay|fine|nicely|alright))?"
    r"|(?:could|might|can) be (?:better|worse)|seen worse|(?:a )?few spots|(?:a )?few marks"
    r"|ask first|please use|pls use|need(?:s)? washing|needs? peeling|no label|i think|i guess|not sure|be careful"
    r"|topped and tailed|enough already|and that'?s it|in the ground|off the tree|hard as (?:a )?rocks?"
    r"|as hard as nails"
    r"|(?:soft |bad |dry )?(?:ends?|bits?|tops?) (?:cut|trimmed|chopped) off|(?:finger|thumb|fist|palm)[ -]sized?"
    r"|(?:aged |matured )?\d{1,2}[ -]?(?:yr|year|month|mth)s?\b(?:[ -](?:old|aged|matured))?"  # no amount of cheddar
    r"|(?:still )?in date|(?:root|cut|stalk)s? ends?"
    r"|(?:no|without|minus) (?:the )?(?:stalks?|leaves|stems?|tops?|bones?|core|stones?|pips?|shells?|labels?"
    r"|lid|(?:use by |sell by |best before )?dates?(?: on (?:it|them|the \w+))?)"
    r"|(?:yellow|red|orange|discount|reduced) (?:stickers?|labels?|tickets?)(?:ed)?|reduced to clear"
    r"|(?:no|unknown|illegible|smudged) dates?|dates? (?:is |are )?(?:unknown|unclear|illegible|smudged|rubbed off|gone"
    r"|unreadable|cant read|can'?t read)"
    r"|(?:-|,|on|in)? ?(?:the )?(?:top|bottom|middle|lower|upper|back|second) (?:shelf|drawer|rack)"
    r"|(?:behind|beside|next to|under|underneath|on top of|near) (?:the |my |a |some )?[a-z]+"
    r"|(?:in |w |with )?(?:a )?(?:damp|wet) (?:paper |kitchen |tea )?(?:towel|cloth|paper)|in water(?! chestnut)"
    r"|(?:w/?|with) (?:the )?(?:greens|tops|leaves|fronds)(?: (?:still )?(?:on|attached))?"
    r"|(?:green |leafy )?(?:greens|tops|leaves|stalks) (?:are )?(?:still )?(?:on|attached)(?=\s*(?:$|[,;.)]))"
    r"|(?:the |its )?(?:outer |outside )?(?:tops|leaves|greens|stalks|tips|skins?|peel) (?:are |all |already )*"
    r"(?:gone|removed|eaten|used|binned|(?:in|on) the (?:bin|compost))"
    r"|(?:with|w/?) (?:a few |some |little |small |long |a )*(?:sprouts?|shoots?|eyes)"
    r"|skins? off|skins? on|(?:the |its )?fizz (?:has |is |all )*gone"
    r"|no fizz(?: left)?|top and tailed)\b"
)


# What people of the house think of it: `(kids don't eat it)`.
_TASTES = LatePattern(
    r"\b(?:(?:i|we) (?:know|realise|realize|remember) (?:that )?)?(?:the |my |our )?"
    rf"(?:{'|'.join(sorted(PEOPLE, key=len, reverse=True))}|nobody|no ?one|everyone|everybody|we|i)"
    r" (?:do not|does not|will not|don'?t|doesn'?t|won'?t|can'?t|never|hates?|loves?|likes?|dislikes?|refuses?)\b"
    r" ?(?:to )?(?:(?:eat|touch|like|want|have|use|drink)\b)?[^,;()]*",
    needs=(" do", " will not", " won", " can", " never", " hate", " love", " like", " dislike", " refuse"),
)
_DESCRIBED = LatePattern(
    r"(?:(?<=[,(])|(?<=^)|(?<=, )) ?\b(?:the|that) ([a-z' -]+) (?:kind|type|sort|ones?|stuff|variety)\b"
)
_TEXTURES = frozenset(
    {"firm", "silken", "soft", "ripe", "unripe", "wholemeal", "gluten", "oat", "soy", "soya", "rice", "mixed"}
)


def without_asides(text: str) -> str:
    """The text without what tells nothing of the food, its amount or its state; the text itself where that is all."""
    bare = _HEADING.sub("", text)
    while (found := _LEAD.match(bare)) and bare[found.end() :].strip():
        bare = bare[found.end() :]
    bare = _TASTES.sub(" ", _OPINION.sub(" ", bare))
    bare = _DESCRIBED.sub(_said_of_it, bare)
    bare = _PURPOSE.sub(" ", bare)
    bare = _CAME.sub(_giver, _GIVEN_FROM.sub(" ", bare))
    bare = _OFF_SOMEBODY.sub(" ", bare)
    bare = _GIVEN.sub(" ", _WHEREABOUTS.sub(_place, bare))
    bare = " ".join(bare.split())
    return bare if re.search(r"[a-z]", bare) else text


def _said_of_it(found: re.Match[str]) -> str:
    """What `the … kind` says, where it tells a colour or a state; else nothing."""
    words = {singular(word) for word in found[1].split()}
    return f" {found[1]} " if words & (COLOURS | QUALITIES | frozenset(FITS) | _TEXTURES) else " "


def _giver(found: re.Match[str]) -> str:
    """Nothing where the words before the verb are a person's; else what stands there."""
    words = found[0].split()
    return " " if _GIVERS & set(words) else found[0]


def _place(found: re.Match[str]) -> str:
    words = {singular(word) for word in found[1].split()}
    if words & _STORES:
        return " "  # the root cellar is no root
    return found[0] if words & (_OF_THE_FOOD | PRODUCTS | DISHES) else " "
