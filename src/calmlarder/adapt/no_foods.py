"""Words of steps that name a food elsewhere: verbs, vessels, likenesses."""

import re

# What is done to a food, where it stands at the head of a sentence or before an article: no food of that name.
_VERBS = (
    "roast|fry|stir-fry|bake|grill|steam|boil|braise|mash|toast|poach|stew|mince|whip|cream|dice|slice|chop|smoke|"
    "caramelise|caramelize|blanch|crush|grate|dress|season|stuff|sauté|saute"
)
# Foods by name and verbs by their place: at the head of a clause, before what it is done to.
_FOOD_OR_VERB = (
    "squash|pepper|flour|salt|butter|oil|milk|juice|ice|ham|peel|zest|stock|date|spice|sugar|top|cream|crumb|beat|"
    "bread|water|honey|sauce|paste|pickle|brine|leaf|seed|shell|core|pulse|fillet|rice|cube|pod|batter|curry"
)
_DONE_TO = (
    r"(?:an?|the|some|any|all|each|every|both|half|most|them|it|these|those|your|one|two|three|over|down"
    r"|lightly|gently|well|generously|thoroughly|roughly|liberally"
    r"|with (?:the|an?) (?:back|fork|spoon|masher|potato masher|hand))"
)
_LIKE = re.compile(
    r"\b[a-z]+-sized?\b|\b(?:like|as (?:big|large|small|thick|thin) as|the size of)\s+(?:an?|the)\b[^,.;:)]{0,60}"
    # what the steps before have made of vegetables
    r"|\b(?:the|this|your) (?:soffritto|sofrito|mirepoix|battuto)\b"
    r"|\bthe size of (?:(?:small|large|big|tiny|fat) )?[a-z]+\b"
    r"|(?<!you )(?<!would )(?<!they )(?<!people )\blike\b[^,.;:)]{0,40}"
    r"|\bas (?:thick|thin|smooth|soft|loose) as\b[^,.;:)]{0,40}"
    r"|\b(?:shape|roll|form|mould)\w*\b[^.;:]{0,40}\binto\b[^.;:]{0,40}"
    r"|\b(?:colou?r|shade) of\b[^,.;:)]{0,40}"
    r"|\b(?:resembl\w+|(?:texture|consistency|thickness) of)\b[^,.;:)]{0,40}",
    re.IGNORECASE,
)
# What dishes are cooked in and eaten from: a muffin tin is no muffin.
_OWNERS = re.compile(r"[’']s\b(?= (?:cheese|milk|curd|yog))", re.IGNORECASE)  # goat's cheese is of no meat
_VESSEL = re.compile(
    r"\b(?:muffin|cupcake|bun|pie|cake|loaf|flan|tart|quiche|pizza|rice|egg|bread|cheese|salad|soup|pasta|potato|butter"
    r"|trifle|punch|cereal"
    r"|sauce|casserole|lasagne|gratin|pudding|curry|fish|garlic|lemon|tea|kitchen|jam|honey|pickle|preserving)[- ]"
    r"(?:tins?|jars?|trays?|cases?|dish(?:es)?|pans?|pots?|bowls?|cups?|plates?|knife|press|cooker|stone|steel|slice|masher|squeezer|ring|mould|cloths?|towels?)\b"
    r"|\bcookies? (?:policy|policies|settings?|notice|preferences|banner)\b"
    r"|\b(?:deep|shallow|large|small|wide|ovenproof|heatproof|gratin|oven) dish(?:es)?\b"
    r"|\b(?:baking|pie|ceramic) (?:beans|weights)\b|(?<=remove the )beans\b|(?<=lift out the )beans\b"
    # what weighs down a case that is baked blind, and comes out again
    r"|\b(?:paper|parchment|foil)\b(?:,? (?:and|then|with|filled|fill|it|the|tip|in|some|of|a|layer|over|weigh|down)\b)"
    r"{1,6} (?:dried |dry |uncooked |raw )?(?:beans|rice|lentils|pulses|chickpeas|peas)\b",
    re.IGNORECASE,
)
_DONE_TO_IT = re.compile(rf"\b(?:{_VERBS})\b(?=\s+(?:the|all|both|your|them|it)\b)", re.IGNORECASE)
_AS_VERB = re.compile(
    rf"(?:^|[.;:!?\n]|,?\b(?:then|and)\b)[\s\d.)]*\b(?:{_VERBS})\b|\b(?:{_VERBS})\b(?=\s+(?:the|all|both|your|them|it)\b)"
    r"|(?:^|[.;:!?,(\n]|\b(?:then|and|or|now|to|until you|(?:you|they) can|could)\b)"
    rf"[\s\d.)]*\b(?:{_FOOD_OR_VERB})\b(?=\s+{_DONE_TO}\b)"
    r"|\bsquashes (?:against|under|when|easily|between|with|to|if)\b"
    r"|\b(?:enough|easy|easily|able|ready|tender|soft) to (?:squash|crumb|peel|pulse|top|pickle)\b",
    re.IGNORECASE,
)


def without_work(served: str) -> str:
    """What it is served with, without what is done to the dish then: `with butter, after that toast it`."""
    return _DONE_TO_IT.sub(" . ", served)


def without_verbs(step: str) -> str:
    """A step without what it likens to food, cooks in, or does: words that are foods in other places."""
    for told in (_LIKE, _VESSEL, _AS_VERB):
        step = told.sub(" . ", step)
    return _OWNERS.sub("", step)
