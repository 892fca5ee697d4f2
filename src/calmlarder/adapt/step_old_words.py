"""Old names that stand beside what the food is now, once the changed step is read as a whole.

`the mushroom [oyster mushrooms] caps`, `the bun [gluten-free rolls] lids`, `the rest of the pastry [the rest of the
gluten-free puff pastry]`: brackets that the sentence bears as words.
"""

import re
from collections.abc import Sequence

_NOW = r"\[(?P<now>[a-z][a-z -]{2,30})\]"
# Parts that the new food has as well; caps it has none, and stalks were taken off.
_ITS_PARTS = (
    "lids?|tops?|bases?|halves|slices|crumbs|crust|mash|soup|stew|salad|cubes|chunks|pieces|layers?|topping|noodles"
)
_PART_OF_IT = re.compile(rf"\b[a-z]+ {_NOW} (?P<part>{_ITS_PARTS})\b", re.IGNORECASE)
# `the asparagus [green beans] stalks`: what takes a spear's place is all one piece.
_ALL_ONE_PIECE = re.compile(
    rf"\b(?:asparagus|broccoli|tenderstem|celery|chard) {_NOW} (?:stalks?|spears?|stems?|tips?)\b", re.IGNORECASE
)
_CAPS = re.compile(rf"\b(?:mushroom|porcini|shiitake|portobello)s? {_NOW} (?:caps|cups)\b", re.IGNORECASE)
_OWN_CAPS = re.compile(r"\b(?P<now>oyster mushrooms?) (?:caps|cups)\b", re.IGNORECASE)
# `the squash [butternut squash and pumpkin] lengthways`
_ONE_OF_TWO = re.compile(
    r"\b(?P<old>[a-z]+) \[(?P<now>(?:[a-z-]+ )?(?P=old) and [a-z-]+(?: [a-z-]+)?)\]", re.IGNORECASE
)
_FRONDS = re.compile(
    rf"\b(?P<name>fennel|celery|carrot|beetroot|leek) {_NOW.replace('<now>', '<new>')} (?=fronds|leaves|tops)"
)
_THE_REST = re.compile(
    r"\b(?:the rest of|the remaining|the other half of) (?:the )?[a-z]+ "
    r"\[(?P<now>the rest of the [a-z][a-z -]{2,30})\]",
    re.IGNORECASE,
)
# `the four crushed cloves [4 tsp of the garlic-infused oil]`
_CLOVES = re.compile(
    r"\b(?:the |all )?(?:(?:last|remaining|other|one|two|three|four|five|six|\d|crushed|chopped|sliced|minced"
    r"|grated|whole) )*"
    r"cloves? \[(?P<now>(?:[\d/ ]+ (?:tsp|tbsp) of )?(?:the )?garlic-infused oil)\]",
    re.IGNORECASE,
)
# `the rest of the maple syrup]-garlic sauce`: the oil in it needs no name.
_AND_GARLIC = re.compile(
    r"\b(?:(?P<share>the rest of )?(?:the )?[a-z]+ \[)(?:the rest of the )?(?P<now>[a-z][a-z -]{2,30})\]"
    r"(?:[ -](?:and )?garlic)(?: \[garlic-infused oil[^\]]*\])?[ -]"
    r"(?=(?:sauce|glaze|dressing|marinade|mixture|butter)\b)",
    re.IGNORECASE,
)
# Green tops are neither sticky nor golden.
_STICKY = re.compile(
    r"\b(?:sticky|caramelised|caramelized|golden|jammy|browned|brown|crisp|crispy|charred|melting|translucent) "
    r"(?:red |white |brown |spanish )?(?:onions?|shallots?|leeks?) \[(?P<now>(?:leek|spring onion) greens)\]",
    re.IGNORECASE,
)
_FRESH = re.compile(
    r"\b(?:fresh|raw|wild|mixed|sliced|cooked|whole) (?:(?:and dried|mixed|wild) )?mushrooms? "
    r"\[(?P<now>(?:[a-z]+ )?mushrooms)\]",
    re.IGNORECASE,
)
# Wiped or dried with what stands there still: a name that only its next word kept in brackets.
_WIPED = re.compile(
    r"\b(?P<verb>wipe|brush|wash|pat|scrub) the [a-z]+ \[(?P<now>[a-z][a-z -]{2,30})(?P<how>:[^\]]*)?\]", re.IGNORECASE
)
# `the washed pumpkin`, in the place of lentils: what is peeled and cut is not washed of its dust, nor soaked.
_SOAKED = re.compile(
    r"\b(?:washed|rinsed|soaked)(?:,? (?:and )?(?:washed|rinsed|soaked|drained))* "
    r"(?=(?:pumpkin|butternut squash|squash|potato|carrot|parsnip|courgette|aubergine|(?:firm )?tofu))",
    re.IGNORECASE,
)
# `the onion [leek greens]-tomato masala`, `the garlic [garlic-infused oil]-ginger paste`
_JOINED = re.compile(
    r"\b(?P<old>[a-z]+) \[(?P<now>[a-z][a-z -]{2,30})\](?:-|[–/])(?P<other>[a-z]+)"
    r"(?P<made> (?:paste|mix|mixture|pur[eé]e))?\b",
    re.IGNORECASE,
)
_JOINED_BEHIND = re.compile(
    r"\b(?P<other>[a-z]+)-(?P<old>[a-z]+) \[(?P<now>[a-z][a-z -]{2,30})\](?P<made> (?:paste|mix|mixture|pur[eé]e))?",
    re.IGNORECASE,
)

# `the bay leaf and clove-studded onion [leek greens: just stir it in]`: cloves go in with what cannot hold them.
_STUDDED = re.compile(
    r"(?P<and>,? and )?(?:the )?clove[- ]studded onion(?: half| halves)? \[(?P<now>[a-z][a-z -]{2,30})(?::[^\]]*)?\]",
    re.IGNORECASE,
)
_STUD = re.compile(
    r"\b(?P<verb>stud|spike|stick|pin) (?:the )?(?P<now>leek greens|spring onion greens|chives)"
    r"(?: \[[^\]]*\])? with (?:the )?(?P<what>(?:\d+ )?cloves\b[^.;]*)",
    re.IGNORECASE,
)
# `rub the flour [40 g of the gluten-free flour] and butter`: so much of it, by its one name.
_SO_MUCH = re.compile(
    r"\b(?:the |all the )?(?P<old>[a-z]+) \[(?P<now>\d[\d/ ½¼¾]*(?:g|ml|tbsp|tsp|cups?)(?: \(\d+ ?g\))? of the"
    r" [a-z -]*\b(?P=old))\]",
    re.IGNORECASE,
)


def without_old_words(steps: Sequence[str]) -> list[str]:
    """The changed steps with the new name alone, where its old one stood before a part, a rest or a sauce of it."""
    return [_by_the_new_name(step) for step in steps]


def _by_the_new_name(step: str) -> str:
    step = _SO_MUCH.sub(r"\g<now>", step)
    step = _STUDDED.sub(_beside_its_cloves, step)
    step = _STUD.sub(
        lambda one: f"{'Put' if one['verb'][0].isupper() else 'put'} the {one['now']} with the {one['what']}", step
    )
    step = _AND_GARLIC.sub(lambda one: f"{one['share'] or ''}the {_one_of(one['now'])} ", step)
    step = _CLOVES.sub(r"\g<now>", _THE_REST.sub(r"\g<now>", step))
    step = _CAPS.sub(r"\g<now>", _OWN_CAPS.sub(r"\g<now>", step))
    step = _ALL_ONE_PIECE.sub(r"\g<now>", step)
    step = _ONE_OF_TWO.sub(r"\g<now>", step)
    step = _FRONDS.sub(r"\g<name> ", step)
    step = _PART_OF_IT.sub(_the_part, step)
    step = _SOAKED.sub("", _FRESH.sub(r"\g<now>", _STICKY.sub(r"\g<now>", step)))
    step = _JOINED_BEHIND.sub(_joined, _JOINED.sub(_joined, step))
    return _WIPED.sub(lambda one: f"{one['verb']} the {one['now']}", step)


def _beside_its_cloves(found: re.Match[str]) -> str:
    return f"{', the' if found['and'] else 'the'} cloves and the {found['now']}"


def _joined(found: re.Match[str]) -> str:
    """`leek-tomato masala`; an oil is in no paste, and stands beside it."""
    now, made = found["now"], found["made"] or ""
    if now.endswith("oil"):
        return f"{now} and {found['other']}{made}"
    short = _one_of("leek" if now == "leek greens" else now)
    first, second = (short, found["other"]) if found.re is _JOINED else (found["other"], short)
    return f"{first}-{second}{made}" if " " not in short else f"{first} and {second}{made}"


def _the_part(found: re.Match[str]) -> str:
    now, part = found["now"], found["part"]
    if " and " in now:
        return part  # `the broccoli and green beans mash` is the mash
    if now.split()[-1] == part:
        return now
    return f"{_one_of(now)} {part}"


def _one_of(name: str) -> str:
    """`gluten-free roll` of `gluten-free rolls`, as a name stands before another noun."""
    if name.endswith(("greens", "halves", "ss", "asparagus", "hummus", "couscous")):
        return name
    return name.removesuffix("s")
