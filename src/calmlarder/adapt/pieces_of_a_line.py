"""How a line that was not read is parted, and which of its words name no food of their own."""

import re

# `To serve: …`, `Optional: …`: a heading and its foods in one line.
HEAD = re.compile(
    r"\s*(?P<head>(?:(?:to|for) (?:serve|serving|garnish|finish|the (?:top|table))|serve with|garnish(?:es)?|toppings?"
    r"|optional(?: extras?)?)(?:,? (?:optional|pick some|if you like))?)\s*:\s*",
    re.IGNORECASE,
)
SENTENCES = re.compile(r"(?<=[^\W\d]{2})\.\s+(?=[A-Z])|\s*;\s+|\s+[-–—]+\s+|(?<=[^\W\d])\s*:\s+")
PIECES = re.compile(
    r"\s*(?P<by>,\s*(?:and|plus|&)\s|,|\+|&|\b(?:and|plus|(?:(?:stuffed|mixed|made|topped|filled|rubbed) )?with)\b)\s*",
    re.IGNORECASE,
)
# `1 juiced`, `one left whole for the toast`: what is done to a share of it.
TREATED = (
    r"(?:cut|sliced|chopped|halved|quartered|diced|grated|juiced|zested|crushed|peeled|left|torn|squeezed|shredded|minced"
    r"|mashed|melted|cubed|cored|deseeded|seeded|trimmed|drained|rinsed|whole)"
)
DONE = re.compile(
    r"\s*(?:(?:\d|one|two|half|a half|the (?:other|rest)|rest|other|all|each|and)\s+)*"
    rf"(?:(?:very|finely|thinly|roughly|coarsely|lightly|then)\s+)*{TREATED}(?:\s+{TREATED})*"
    r"(?:\s+(?:in|into|on|up|across|lengthways|for|to|and|with|by|until|well|off|finely|thinly)\b.*)?\s*",
    re.IGNORECASE,
)
# `seeds scooped out`, `stalks off`: a part that is taken away.
TAKEN_OFF = re.compile(
    r"\s*(?:the )?(?:seeds?|skins?|cores?|stalks?|stones?|ribs?|bones?|fat|rind|leaves|tops?|stems?|ends?|peel|zest)"
    r"(?: (?:is|are))? (?:scooped out|removed|discarded|out|off|trimmed(?: off)?|cut (?:off|out|away)|taken out)\s*",
    re.IGNORECASE,
)
# `leave the seeds in if you like it hot`: what becomes of a part of it.
KEPT_IN = re.compile(
    r"\b(?:leave|keep|remove|discard|take|scoop|scrape|shake|save|reserve)\w*\b[^,;()]*"
    r"\b(?:seeds?|skins?|cores?|stalks?|bones?|rind|leaves|stems?|peel)\b[^,;()]*"
    r"|\b(?:seeds?|skins?|stalks?|bones?|stems?|peel) (?:left |kept )?(?:in|on)\b(?! (?:a|an|the)\b)[^,;()]*",
    re.IGNORECASE,
)
OR = re.compile(r"\s*,?\s*\b(?:or)\b(?: else)?\s+|(?<=[a-z])\s*/\s*(?=[a-z])", re.IGNORECASE)
BRACKETS = re.compile(r"\(([^()]*)\)|\[([^\[\]]*)\]")
# What it is for, where it is from, and on what it hangs, names no other food of the line.
TAIL = re.compile(
    r"\s+(?:if|when|unless|because|for|to|from|that|which|whatever|as|on|until|depending|like|in|dissolved|made up"
    r"|whichever|while|since|where|so|is|are|needs?|you|we)\b.*",
    re.IGNORECASE,
)
LIES_IN = re.compile(r"\s+(?:in|from|dissolved|made up)\b", re.IGNORECASE)
ITS_USE = re.compile(r"\b(?:for|to)\s+(?!\w+ (?:people|of us)\b)[^,.;:()]*", re.IGNORECASE)
OF_WHATEVER = re.compile(r"\bof (?:whatever|whichever|any|some|your favou?rite) ", re.IGNORECASE)
LEAD = re.compile(
    r"\s*(?:(?:enough|some|any|more|extra|whatever|good|nice|maybe|perhaps|also|about|a few|a little|a bit of|the|your"
    r"|my|of|with|then)\s+(?:of\s+)?)+",
    re.IGNORECASE,
)
OR_TWO = re.compile(r"\b(a\s+)?(dash|pinch|splash|handful|squeeze|drop|sprig|spoonful|knob)s?\s+or\s+two\b", re.I)


def is_treatment(piece: str) -> bool:
    """Whether a piece says but what is done to some of a food, or what of it is taken away."""
    return bool(DONE.fullmatch(piece) or TAKEN_OFF.fullmatch(piece))


def amount_before(text: str, spans: list[tuple[int, int, frozenset[str]]]) -> str:
    """The amount of the first name, where it is weighed, or counts just that: of `1 sleeve crackers` it does not."""
    amount = amount_of(text)
    counts = spans and not text[: spans[0][0]].strip().removeprefix(amount.strip()).strip()
    return amount if counts or re.search(r"\d\s?(?:kg|g|ml|l|oz|lbs?|cups?|tbsp|tsp)\b", amount) else ""


def amount_of(text: str) -> str:
    """The amount at the head of a line, as written; empty where it has none."""
    found = re.match(
        r"\s*[\d½¼¾⅓⅔⅛][\d./½¼¾⅓⅔⅛ -]*\s?(?:(?:x|kg|g|ml|l|oz|lb|lbs|cups?|tbsp|tsp|tins?|cans?|packs?)\b\.?\s*)*", text
    )
    return f"{found[0].strip()} " if found else ""


# What pasta or potatoes were boiled in is water, whatever they are.
WATER_OF = re.compile(
    r"\b(?:pasta|noodles?|spaghetti|linguine|macaroni|gnocchi|potato(?:es)?|rice|vegetables?|greens|egg)[- ]"
    r"(?:(?:cooking|boiling|soaking)[- ])?water\b",
    re.IGNORECASE,
)
