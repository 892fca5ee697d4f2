"""Expressions that tell whose a thing is, and what it is kept for."""

from calmlarder.matching.amounts.measures import MEASURE, UNIT
from calmlarder.matching.late_patterns import LatePattern

# Meals and ends that a thing is kept for; nobody else's then.
_MEALS = (
    r"(?:breakfast|brekkie|brekky|brunch|lunch|lunches|lunch ?box|tiffin|dinner|tea|supper|work|school"
    r"|packed lunch|picnic|party|bbq|barbie|cake|baking)"
)
# What it is to become on a day: `for tomorrows tacos`.
_DISHES_OF_A_DAY = (
    r"(?:tacos?|curry|stew|pie|bake|lasagne|pasta|stir[ -]?fry|salad|soup|roast|fajitas?|burgers?|risotto|casserole"
    r"|sandwich(?:es)?|wraps?|pizzas?|chilli|spag bol|bolognese)"
)
_DAYS = (
    r"(?:today|tonight|tomorrow|tomorrows|tomorrow's|tmrw|tmr|monday|tuesday|wednesday|thursday|friday|saturday|sunday"
    r"|mon|tues?|wed|thurs?|fri|sat|sun)"
)
KEPT_FOR = LatePattern(
    rf"\b(?:kept |keep |saved |save |saving |is |are )*for ((?:{_DAYS}(?:'s)?(?: (?:night"
    rf"|morning))? )?{_MEALS}\b(?: {_DAYS})?"
    rf"|{_DAYS}(?:'s)?(?: (?:night|morning))?\b)(?: {_DISHES_OF_A_DAY}\b)?",
    needs=("for ",),
)
# What is meant for tonight is there for tonight's dinner; `for today only` says its day as well.
FOR_TONIGHT = LatePattern(
    r"\b(?:kept |keep |saved |save |saving |is |are )*for (?:today(?! only)"
    r"|(?:today|tonight|tonite)'?s? (?:dinner|tea|supper)"
    r"|(?:tonight|tonite|this evening)|(?:our |my )?(?:dinner|tea|supper)(?: (?:tonight|tonite|this evening))?)\b"
    rf"(?! (?:on )?{_DAYS}\b)",
    needs=("for ",),
)
FOR_HIM_ONLY = LatePattern(
    r"(?:only|just) for (?:my |our |the )?([a-z]+)|for (?:my |our |the )?([a-z]+) only", needs=("only", "just")
)
# The same before a food or behind it: `for dad only - blue cheese`.
ONLY_FOR = LatePattern(
    r"^(?:only |just )?for (?:my |our |the )?([a-z]+) only\b\s*[-:,]*\s*(?=[a-z\d])"
    r"|[,;-]?\s*\bfor (?:my |our |the )?([a-z]+) only$",
    needs=("only",),
)
TODAY_ONLY = LatePattern(r"\bfor (?=today only\b)")
# What comes from somebody's hens, tree or kitchen, or was made, sent or given by somebody, is ours.
GIVEN_BY = LatePattern(
    r"\b(?:from|off|out of|via|by|courtesy of|thanks to|(?:made|sent|given|brought|gifted|baked|grown) by|gift from"
    r"|present from|swapped with|leftover from) (?:(?:my|our|the|next|old|auntie|aunty|uncle|mrs?|ms) )*$"
)
FOR = LatePattern(
    r"\b(?:kept |keep |saved |save |is |are )*for (?:the )?([a-z]+)(?:'s|s')?(?: (?:breakfast|lunch|dinner|tea"
    r"|supper|packed lunch))?(?![\w'])",
    needs=("for ",),
)
NOT_MINE = LatePattern(
    r"(?:\b(?:is|are) )?\bnot (?:mine|ours|my own|for (?:me|us))\b"
    r"|\b(?:isn'?t|ain'?t|aren'?t) (?:mine|ours)\b|^not (?:my|our)\b"
    r"|\b(?:unknown owner|owner unknown)\b|\b(?:no idea|(?:do not|don'?t|dunno|not sure|idk)(?: know)?) whose\b"
    r"(?: (?:it is|they are|this is))?|\b(?:someone|somebody) else'?s\b|^(?:the )?others'?$"
    r"|(?:- ?)?\bfor (?:(?:the )?others|(?:some|every|any)(?:one|body) else|other people)\b(?:\s*[:-])?",
    needs=("not m", "not o", "not f", "'t mine", "'t ours", "nt mine", "nt ours", "owner", "whose", " else", "other"),
)
# `rice and spuds are dans, not touching them`: a name behind such a verb is the owner's, with or without a sign.
ARE_THEIRS = LatePattern(
    r"(?<= )(?:is|are|its|it'?s|thats|that'?s|they'?re|theyre) (?:all )?(?:my |the )?([a-z]{2,}?)'?s"
    r"(?= ?(?:$|[,;.()!-])| (?:so|not|no|dont|don'?t|do not|hands|leave|i'?m)\b)",
    needs=("is ", "are ", "its ", "it's ", "thats ", "that's ", "they're ", "theyre "),
)
# `cheese - ask Kate`: hers, unless she says yes.
ASK_FIRST = LatePattern(
    r"(?:^|[,;(-] ?| )(?:ask|check with|need to ask|have to ask) (?:my |our |the )?([a-z]{2,})"
    r"(?: (?:first|before|if)\b[^;]*)?(?=\s*(?:$|[,;)]))"
)
BELONGS = LatePattern(r"\b(?:belongs to|belonging to|property of) ((?:the |my )?[a-z]+)\b")
POSSESSIVE = LatePattern(r"(?<![\w'])(?:my |the )?([a-z]{2,})(?:'s|s')(?![\w'])")
# `for sis Dana`: it is hers; the word before a name tells only who she is.
PERSON_NAMED = LatePattern(
    r"\b(?:sis|bro|gran|nan|roomie|room ?mate|roomate|flat ?mate|house ?mate|mate|friend|neighbou?r|lodger|landlord"
    r"|colleague) (?=([a-z]{2,}?)(?:'s|s)?\b)"
)
# `uncle fred's stockfish`: nobody else's name stands behind such a word.
TITLED = LatePattern(
    r"\b((?:uncle|auntie|aunty|aunt|kuya|tita|tito|lolo|lola|unnie|noona|hyung|oppa|tante|onkel"
    r"|granny|grandma|grandpa|cousin|sister|brother|mama|sir|mrs|mr|miss|ms)\.? [a-z]+)'s"
    r"(?=\s*(?:$|[,;.)]| (?!(?:hens?|eggs?|garden|tree|farm|allotment|shop|market)\b)[a-z]))",
    needs=("'s",),
)
# `father in laws kippers`, `guinea pigs lettuce`: somebody by more words than one.
BY_MORE_WORDS = LatePattern(
    r"(?:my |our |the )?((?:mother|father|sister|brother|son|daughter|mum|dad)[ -]in[ -]law|guinea pig"
    r"|(?:little|wee) one)(?:'s|s'?)? (?=[a-z])"
)
# `my other half's beers`: with its s it is no half of them.
OTHER_HALF = LatePattern(r"\b(?:my |the )?(?:other|better) half(?:'s|s)(?=\s*(?:$|[,;)]| [a-z]))")
IS_THEIRS = LatePattern(r" (?:is|are|'?s)(?: all)? $")  # `rashers are mam's`
# `ham is for my suegra, she does eat it`: somebody of ours by whatever word; the rest of the sentence is about them.
FOR_MY = LatePattern(
    r"[,;-]? ?\b(?:kept |keep |saved |is |are )*for (?:my|our) ([a-z]+(?:-[a-z]+)*)(?:'s)?"
    r"(?: (?:breakfast|lunch|dinner|tea|supper|packed lunch))?(?:,? (?:she|he|they)\b[^,;]*)?(?=\s*(?:$|[,;.)]))"
)
BRACKETS = LatePattern(r"[(\[{]([^)\]}]*)(?:[)\]}]|$)")
WORD = LatePattern(r"[^\W_]+")
DASHED = LatePattern(r"\s(?:[-=]+>?|//|~)\s*([a-z]{2,}(?:'?s)?)\s*$")
AMOUNT_ONLY = LatePattern(
    rf"(?:about |approx |x ?)?\d{{1,4}}(?:[./]\d)? ?(?:x|pcs?|{UNIT}|{MEASURE})?|half|a half|a few",
    needs=("half", "a few", *"0123456789"),
)
MORE = LatePattern(r"\s*(?:,|;|&|\+|and\b)\s*\S")  # more foods of a line
OK = LatePattern(r"[,;]?\s*\b(?:ok(?:ay)?|shared|sharing)\b\s*")
# `josh's cheddar (we can use it)`: they said so. Who gives a bit gives no dinner of it, and is asked first.
MAY = LatePattern(
    r"\bhelp yourself\b|\b(?:i|we|you)? ?(?:can|may) (?:use|have|take)\b(?! (?:a bit|a little|some))(?: it)?"
)
_VERBS = (
    r"(?:do|does|don'?t|doesn'?t|did|didn'?t|won'?t|wouldn'?t|can'?t|will|might|may|hates?|loves?|likes?|liked|refuses?"
    r"|ate|eats?|said|says?|wants?|made|makes?|prefers?|left|have|had|has|got|needs?|are|is|were|was"
    r"|brought|gave|sent|cooked|baked|grew|picked|dropped|shared|caught)"
)
BARE = LatePattern(rf"^(?:my |me |the )?([a-z]{{2,}})s (?!{_VERBS}\b)(?=[a-z])")
# `rohit ka dudh`: the possessive of Hindi and Urdu.
HINDI = LatePattern(r"^([a-z]{2,}) k[aie] (?=[a-z\d])")
OF_TWO = LatePattern(r"^([a-z]{2,}) (?:\+|&|and|n) ([a-z]{2,})(?:'s|s'?) (?=[a-z\d])")
NAME_FIRST = LatePattern(rf"^([a-z]{{2,}}) (?!{_VERBS}\b|and\b|or\b)(?=[a-z])")
# `eggs my sisters`; `raisins kids lunch`.
MY_PERSON_LAST = LatePattern(r"[,;-]?\s*\bmy ([a-z]+?)(?:'s|s'?)?$")
_CHILDREN = r"(?:kids?|child|children|toddler|bubs?|bubba|boys|girls|lads)"
FOR_CHILDREN = LatePattern(
    rf"\b({_CHILDREN})'?s?'? (?:packed )?(?:lunch(?:es|box(?:es)?)?|snacks?|tea|dinner|supper|school|treats?)$",
    needs=("kid", "child", "toddler", "bub", "boys", "girls", "lads"),
)
HIS = LatePattern(r"\b(?:is|are) (?:his|hers|theirs)\b")
LEFT_BY = LatePattern(
    r"[,;-]?\s*\b(?:my |our |the )([a-z]+) (?:left|forgot) (?:it|them|this|these)(?: here| behind)?\b"
)
# Left by somebody: `left by tom`, `- himself left it`, `that kate left`.
_LEFT = r"(?:left|forgot)(?: (?:it|them|this|these))?(?: here| behind)?"
LEFT_BY_NAME = LatePattern(
    r"[,;(-]*\s*\bleft (?:here |behind |over )?by (?:my |our |the )?(?P<by>[a-z]+)\b"
    rf"|[,;(-]+\s*(?:my |our |the )?(?P<did>[a-z]+) (?:left|forgot) (?:it|them|this|these)(?: here| behind)?\b"
    rf"|\b(?:that|which) (?:my |our |the )?(?P<that>[a-z]+) {_LEFT}\b"
    rf"|(?<=whatever) (?:my |our |the )?(?P<what>[a-z]+) {_LEFT}\b",
    needs=("left", "forgot"),
)
SAYS = LatePattern(r"^\w+ (?:says|said|claims|reckons) (?:that )?(?:the )?")
MY_PERSON = LatePattern(r"^(?:my|our) ([a-z]+?)(?:'s|s')? (?=[a-z])")
FIRST = LatePattern(r"^([a-z]{2,})\s*[-:]\s+(?=[a-z\d])")
# `- da Lu`: of, before a name, in other tongues.
DASHED_OF = LatePattern(r" [-–] ?(?:da|do|de|di|del|della|du|von|van|ni|od) ([a-z]{2,})$")
# `labneh of Teta`, `ham of my suegra`; not `tin of beans`.
OF_SOMEBODY = LatePattern(r"(?<=[a-z\d]) of (?:my |our )?([a-z]{2,})(?=\s*(?:$|[,;(]|\d))", needs=(" of ",))
LAST = LatePattern(r"(?<=[a-z\d]) ([a-z]{2,})$")
BEHIND = LatePattern(r",\s*([a-z]{2,})$")
COLON = LatePattern(r":\s*([a-z]{2,})$")
# What stands before a month that is a name as well: `miso opened jan`.
BEFORE_A_MONTH = LatePattern(
    r"\b(?:opened|open|since|frozen|made|bought|in|end|early|late|mid|ub|use by|bbe?|best before|exp|until|till)$"
)
# `best before 14 jan`: such a month behind its day.
DAY_OF_A_MONTH = LatePattern(r"(?<![\w./-])(?:[12]?\d|3[01])(?:st|nd|rd|th)?$")
# `(littlest one's)`: one of the children.
A_CHILD = LatePattern(
    r"(?:for )?(?:the |my |our )?([a-z]+) (?:one(?:'s|s')|(?:child|kid|boy|girl|lad|son|daughter)(?:'s|s')?)"
)
# `for Rob, he eats them`: theirs, whoever it is; more of the sentence tells nothing of the food.
FOR_THEM = LatePattern(
    r"(?:only |just |kept )?for (?:my |our |the )?([a-z]+)(?: only)?[,;.]? (?:(?:as|because|coz|cos|cause|bc) )?"
    r"(?:he|she|they|who|i|we) (?:still |can |do |does |don'?t |doesn'?t |loves? |likes? |will )*"
    r"(?:eat|eats|have|has|like|likes|love|loves|want|wants|need|needs|don'?t|can'?t|do|does)\b[^;()]*"
)
# What somebody keeps for a day of theirs is not asked for tonight.
OCCASION = LatePattern(
    r"\bfor (?:(?:his|her|their|the|my|our|[a-z]+'s) )?(birthday|anniversary|party|wedding|visit|holiday|christmas)\b"
)
CHILDREN_BY_AGE = frozenset({
    "littlest", "youngest", "younger", "oldest", "older", "eldest", "elder", "smallest", "biggest", "little", "middle",
})  # fmt: skip
LISTED = LatePattern(r"[,;&+/]|\b(?:and|n|or|plus)\b")
# Kinds that stand beside tomatoes in a list without commas.
GROWN = frozenset({
    "leaf", "salad-leaf", "brassica", "root", "mushroom", "tomato", "pepper", "pod", "shoot", "stem", "allium",
    "fruit-vegetable", "sweetcorn", "herb", "potato", "squash", "fruit", "citrus",
})  # fmt: skip
