"""Recipes whose parts stand under no heading, or in one line: where the method begins, and pieces of a list."""

import re
from collections.abc import Iterator, Sequence

from calmlarder.cookbook.line_amount import take_quantity
from calmlarder.cookbook.title_line import is_round_a_title, spoken_of
from calmlarder.cookbook.wording import names_nothing
from calmlarder.matching.names.words import plain

# `[14:02] Kit:`: a message begins so.
STAMP = re.compile(r"\W*\d{1,2}[:.]\d\d(?::\d\d)?(?: ?[ap]m)?\]?\s*(?:[-–]\s*)?[A-Za-z][\w .'-]{0,24}:\s")
# `Night before`, `Day 2, morning`: with sentences under it, when they are done.
_WHEN = re.compile(
    r"(?:(?:the )?(?:night|day|evening|morning) (?:before|after|of)|(?:in the |the |next |the next |that )?"
    r"(?:morning|evening|afternoon|next day)|overnight|(?:on )?day \w+(?:,? (?:\w+ )?\w+)?|just before \w+(?: \w+)?"
    r"|to (?:assemble|finish|cook|bake)|when you(?:'re| are) ready)"
)
_DOES = (
    r"(?:add|arrange|bake|beat|blend|blitz|boil|break|bring|brown|brush|chill|chop|combine|cook|cover|crush|divide|"
    r"drain|drizzle|dust|fill|flip|fold|fry|grate|grill|heat|knead|layer|leave|line|mash|mix|melt|mince|peel|place|"
    r"poach|pour|preheat|press|put|reheat|remove|rinse|roast|roll|rub|scatter|season|serve|shred|sift|simmer|slice|"
    r"soak|soften|spoon|spread|sprinkle|squash|steam|stir|strain|sweat|take|tip|toast|top|toss|transfer|turn|warm|"
    r"wash|whisk|wilt|wrap)"
)
# `toast for mopping`, `mash, to serve` are foods.
_FOODS_TOO = r"(?:toast|mash|roast|rolls?|spread|mince|top|brown|steam|chill|dust|press|crush|squash|wrap|layer|peel)\b"
# `mix the oats`, `drain and rinse`: a sentence that tells to do it. `Mixed spice` and `frying oil` are none.
_AND_ANOTHER = rf"(?:(?:,? (?:and|then|&)|,) (?:then )?{_DOES}\b)?"
_COMMAND = re.compile(
    rf"(?:then |now |gently |lightly |finely |meanwhile,? )?(?!{_FOODS_TOO}){_DOES}\b{_AND_ANOTHER}"
    r"(?: (?:the|a|an|in|into|it|them|everything|all|both|together|up|over|on|onto|with|half|some|your|until|for|to|"
    r"well|off|out|down|back|about)\b|[^,;]*\b(?:until|minutes?|mins?|then)\b"
    r"|[^.;]*\b(?:together|in a (?:jar|bowl|pan|pot|tin|dish|blender))\b)"
    rf"|{_FOODS_TOO}{_AND_ANOTHER} (?:the|it|them|everything|all|both|your|until)\b"
)
# `fry onion and garlic, add the tins`: one thing after the other.
_ONE_THEN_ANOTHER = re.compile(
    rf"(?:fry|soften|boil|simmer|add|mix|stir|blend|chop|cook|heat|put|bring|melt|whisk|sweat) [a-z][^.;]*"
    rf"(?:,| and| then) (?:then )?{_DOES} "
)
_LEAST_WORDS = 3  # of a sentence that tells to do something: ours
_MEASURED = (
    r"(?:[\d½¼¾⅓⅔⅛][\d½¼¾⅓⅔⅛.,/]*(?: [½¼¾⅓⅔⅛]| \d/\d)?(?: ?(?:-|–|to) ?\d+)?"
    r"(?: ?(?:kg|g|grams?|ml|l|litres?|liters?|oz|lbs?|cups?|tbsps?|tsps?|tablespoons?|teaspoons?|pints?)\b\.?)?)"
)
_NAME_FIRST = re.compile(r"(?:[a-z][a-z'-]*[ ,]+){0,4}[a-z][a-z'-]*(?: ?: ?| [–—-] )(?:\d|[½¼¾⅓⅔⅛]|an? [a-z]|half )")
# `milk 500 ml`, `cauliflower 1 large`: the amount ends the line, with no sign between.
_AMOUNT_LAST = re.compile(
    rf"(?!(?:step|day|part|page|gas|oven|prep|cook|stage|week|recipe|about|serves?|for|total|bake)\b"
    r"|.*\bfor \d{1,2}$)"
    rf"(?:[a-z][a-z'-]*,? ){{1,4}}(?:x ?)?{_MEASURED}"
    r"(?: (?:large|small|medium|big|whole|heads?|bunch(?:es)?|tins?|cans?|jars?|packs?|cloves?|sticks?|slices?"
    r"|sprigs?|handfuls?|pinch(?:es)?|pieces?|(?:heaped |level )?(?:tbsp|tsp)))?"
)
# Where a piece of a list in one line begins.
_LIST_SIGN = re.compile(r",(?=\s)(?![^()]*\))")
_STRONGER_SIGN = re.compile(r"(?:;| \|)(?![^()]*\))")
_AN_AMOUNT = re.compile(r"[\d½¼¾⅓⅔⅛]|(?:an? )?(?:\w+ )?(?:pinch|handful|splash|dash|knob|bunch|tin|clove|glug|sprig)\b")
_MORE_OF_IT = re.compile(r"(?:for|of it|more|extra|to|plus|of which|or)\b")
_LEAST_PIECES = 3  # fewer may be one food and what is said of it: ours
# In a sentence: an amount and what it is of, up to a word that goes on. Times, sizes and people are none.
_NO_FOOD = (
    r"(?:min(?:ute)?s?|hours?|hrs?|sec(?:ond)?s?|days?|weeks?|times|cm|mm|inch(?:es)?|degrees?|°|[cf]\b|more|people|"
    r"persons?|portions?|servings?|batch(?:es)?|sides?|pieces|parts?|thirds?|halves|quarters|bowls?|plates?|wedges|"
    r"of (?:the|them|it|us)|"
    r"(?:g|kg|ml|l|oz) (?:pan|dish|tin of \w+ size)|or|to|-|%|months?|slits|layers?|fan|gas|litre (?:pan|dish|pot))"
)
_COUNTED = "two|three|four|five|six|seven|eight|nine|ten|twelve|half an?|a couple of"
_HELD = (
    r"(?:pinch|handful|splash|dash|knob|tin|can|clove|sprig|bunch|glass|ball|jar|packet|pack|stick|slice|cup|bag|head"
    r"|block|carton|tub|(?:tea|table)spoon)"
)
_IN_A_SENTENCE = re.compile(
    rf"(?<![\w.,/°-])(?:{_MEASURED}|\b(?:{_COUNTED})(?= )|(?:an? |one )(?:\w+ )?{_HELD}(?= of)) ?"
    rf"(?!{_NO_FOOD}\b)(?:of )?[A-Za-z][^\d.,;:()\n]{{1,60}}?(?:\s\([\d½¼¾][^()\n]{{0,20}}\))?"
    r"(?=\s(?:in|into|with|until|till|for|and|to|then|over|on|onto|from|at|or|plus|per|each|by)\b|\s?[.,;:()\n]|$)",
)
_IN_WORDS = re.compile(rf"(?:(?:{_COUNTED})|(?:an?|one) (?:\w+ )?{_HELD} of) [a-z]")
_LEAST_NAMED = 3  # foods with amounts, else the sentences are no recipe: ours
_LONGEST = 20_000
_LONGEST_TITLE = 80
_MOST_NAMED = 60


# `Ingredients – 225 g flour, 55 g butter`: a dash for a colon.
_DASHED = re.compile(
    r"^([^\w\n]*(?:ingredients|method|directions|instructions|steps|(?:(?:what )?you(?:'ll| will)? )?need))"
    r"[ \t]+[–—-][ \t]+(?=\S)",
    re.IGNORECASE | re.MULTILINE,
)
# Marks of a forum: `[b]Stew[/b]`, `[*] 2 onions`.
_BB_TAG = re.compile(
    r"\[/?(?:b|i|u|s|size|colou?r|font|list|center|quote|img|url|h\d)(?:=[^\]\n]{0,40})?\]", re.IGNORECASE
)
_BB_ITEM = re.compile(r"^[ \t]*\[\*\][ \t]*", re.MULTILINE)
_LEAST_STAMPED = 3  # messages that hold an amount each: then the recipe was sent line by line
_STAMPED_AMOUNT = re.compile(rf"^{STAMP.pattern}(?=[\d½¼¾])", re.MULTILINE)
_STAMPED = re.compile(rf"^{STAMP.pattern}", re.MULTILINE)


def told_plainly(text: str) -> str:
    """A text with a colon behind its headings, and without the times of messages that hold a line of it each."""
    text = _DASHED.sub(r"\1: ", _BB_TAG.sub("", _BB_ITEM.sub("- ", text)))
    return _STAMPED.sub("", text) if len(_STAMPED_AMOUNT.findall(text)) >= _LEAST_STAMPED else text


def has_name_first(bare: str) -> bool:
    """Whether a plain line has its amount behind the name: `nutmeg – a pinch`, `milk 500 ml`."""
    return bool(_NAME_FIRST.match(bare) or _AMOUNT_LAST.fullmatch(bare))


def begins_method(line: str, behind: str) -> bool:
    """Whether a bare line under the ingredients tells to do something, or when what stands behind it is done."""
    told = plain(line).strip(" :")
    return _is_command(told) or bool(_WHEN.fullmatch(told) and _is_command(plain(behind)))


def _is_command(told: str) -> bool:
    return len(told.split()) >= _LEAST_WORDS and (_COMMAND.match(told) or _ONE_THEN_ANOTHER.match(told)) is not None


def pieces_of(line: str, begin: int = 0) -> list[tuple[int, int]]:
    """Where each food of a list in one line stands, from `begin`; how it is cut stays with its food."""
    sign = _STRONGER_SIGN if _STRONGER_SIGN.search(line, begin) else _LIST_SIGN
    cuts = [found.span() for found in sign.finditer(line, begin)]
    starts, ends = [begin, *(end for _, end in cuts)], [*(start for start, _ in cuts), len(line.rstrip(" ."))]
    pieces: list[tuple[int, int]] = []
    for start, end in zip(starts, ends, strict=True):
        text = plain(line[start:end])
        if pieces and text and not _AN_AMOUNT.match(text) and names_nothing(text):
            pieces[-1] = (pieces[-1][0], end)
        elif text:
            pieces.append((start, end))
    return pieces


def joined_amounts(lines: Sequence[str]) -> list[tuple[int, int]]:
    """Which lines are one: an amount in a line of its own goes with the name below it, where a list is set so."""
    bare = [_is_bare_amount(line) for line in lines]
    led = [place for place, amount in enumerate(bare[:-1]) if amount and not bare[place + 1]]
    if len(led) < _LEAST_PIECES or len(led) != sum(bare) or 3 * len(led) < len(lines):
        return [(place, place + 1) for place in range(len(lines))]
    taken = {place + 1 for place in led}
    return [(place, place + 1 + (place in led)) for place in range(len(lines)) if place not in taken]


def _is_bare_amount(line: str) -> bool:
    try:
        found = take_quantity(plain(line))
    except ValueError:
        return False
    return found.main is not None and not found.rest.strip(" .:-")


def is_a_list(line: str) -> bool:
    """Whether a line holds three foods or more with amounts of their own."""
    told = [plain(line[start:end]) for start, end in pieces_of(line)]
    return sum(map(_is_measured_food, told)) >= max(_LEAST_PIECES, len(told) - 1)


def _is_measured_food(piece: str) -> bool:
    if not (_AN_AMOUNT.match(piece) or _IN_WORDS.match(piece)):
        return False
    try:
        rest = take_quantity(piece).rest
    except ValueError:
        return False
    return bool(rest) and not names_nothing(rest) and not _MORE_OF_IT.match(rest)


def listed_of_sentences(text: str) -> str | None:
    """A recipe told in sentences alone, with the amounts that they name as a list above them; None for other texts."""
    if len(text) > _LONGEST:
        return None
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    title = lines[0] if lines and len(lines[0]) <= _LONGEST_TITLE and not list(_foods_in(lines[0])) else ""
    told = lines[1:] if title else lines
    title = "" if is_round_a_title(title) else title  # `Dear Bea,`
    found = [one for line in told for one in _foods_in(line)][:_MOST_NAMED]
    if len(found) < _LEAST_NAMED or not any(_is_command(plain(part)) for line in told for part in line.split(". ")):
        return None
    names = [_name_of(one) for one in found]
    for one, name in zip(found, names, strict=True):
        if names.count(name) == 1:  # of two portions of one food each step keeps its own
            told = [line.replace(one, f"the {name}", 1) if one in line else line for line in told]
    title = title or next((one for line in lines if (one := spoken_of(line)) != line), "A recipe")
    return "\n".join([title, "", "Ingredients", *(f"- {one}" for one in found), "", "Method", *told])


def _foods_in(line: str) -> Iterator[str]:
    return (found[0].strip() for found in _IN_A_SENTENCE.finditer(line) if _is_measured_food(plain(found[0])))


def _name_of(phrase: str) -> str:
    bare = re.sub(r"\s\([^()]*\)$", "", phrase)
    try:
        rest = take_quantity(plain(bare)).rest
    except ValueError:
        rest = ""
    return rest if rest and bare.lower().endswith(rest) else bare
