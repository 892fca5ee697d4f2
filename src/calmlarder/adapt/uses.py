"""How the steps of a recipe use each food that they name: raw, or cooked."""

import re
from collections.abc import Sequence
from itertools import pairwise
from typing import Literal

from calmlarder.adapt.names import Names, foods_in

Use = Literal["raw", "cooked"]
HEAT = re.compile(
    r"\b(?:fry|fried|frying|saute\w*|(?<!go )(?<!goes )(?<!going )brown|boil\w*|simmer\w*|bak(?:e|ed|ing)"
    r"|roast(?:s|ing)?|roasted (?=for|in|at|until|on)|grill\w*|soften|sweat|cook\w*|heat"
    r"|(?<!eat )(?<!serve )(?<!served )(?<!still )(?<!slightly )warm|melt\w*|steam\w*|poach\w*|stew\w*|braise\w*"
    r"|toast\w*|blanch\w*|sear|char|microwave|oven|wilt|scramble|reduce|caramelise|caramelize|stir-fr\w+)\b"
)
_HOT_VESSEL = re.compile(r"\b(?:wok|skillet|frying pan|hot pan)\b")
JOINS = re.compile(r"\b(?:add|stir|fold|pour|whisk|beat|mix|tip|return|layer|combine|crack|rub|cover|fill|blend)\w*\b")
# What is tossed on a tray or in a tin goes into the oven with it, whatever sentence says so.
_ON_A_TRAY = re.compile(r"\b(?:trays?|roasting (?:tins?|pans?|dish)|baking (?:sheets?|tins?|dish)|sheet pans?)\b")
_TOSSES = re.compile(r"\b(?:toss|mix|rub|coat|drizzle)\b")
_ROASTED = re.compile(r"\b(?:and|then) (?:roast|bake|grill|fry|saute)\b|^\W*(?:roast|bake|grill)\b")
# A dressing that is stirred together by itself stays raw, in a dish that is cooked too.
_DRESSING = re.compile(
    r"\b(?:dressing|vinaigrette|vinegar|salsa|raita|tzatziki|jar|pico|guacamole|relish|gremolata|chimichurri|mayo(?:nnaise)?)\b"
)
# Onion that is to lose its bite in water is eaten raw.
_FOR_ITS_BITE = re.compile(
    r"\bsoak\w*\b.*\b(?:cold|iced?) water\b"
    r"|\b(?:bowl|basin) of (?:very )?(?:cold|iced?|icy) water\b"
    r"|\bwater\b.*\b(?:bite|sharp\w*|harsh\w*|sting|edge|pungen\w+|mellow\w*)\b"
)
ON_TOP = re.compile(
    r"\b(?:serve|top|scatter|sprinkle|garnish|dollop|drizzle|dress|finish|toss|spread|strew|swirl|dip|eat|mash)\w*\b"
)
# What is cold by then makes nothing hot that comes to it.
_COOLED = re.compile(
    r"\b(?:rinse|run|refresh|plunge|cool)\b[^.]*\b(?:cold|iced)\b"
    r"|\buntil (?:completely |quite |properly )?(?:cold|cool)\b"
    r"|\b(?:leave|allow|let|set)\b[^.]*\bto cool\b",
    re.IGNORECASE,
)
_COLD_DISH = re.compile(
    r"\b(?:salad|slaw|bowls?|tacos?|wraps?|sandwich\w*|salsa|poke|platter|burgers?|sliders?|hot dogs?|gyros)\b",
    re.IGNORECASE,
)
# All that is put together before such a dish goes into the oven is baked in it.
_BAKED_DISH = re.compile(
    r"\b(?:cakes?|crumble|cobbler|pie|tarts?|muffins?|loaf|bake|pudding|clafoutis|gratin|strudel|scones?)\b",
    re.IGNORECASE,
)
_BAKES = re.compile(r"\bbak(?:e|ed)\b")


def going_on(sentences: Sequence[str], names: Names) -> list[str]:
    """For each sentence the next one, where that names no food and so goes on with the same; else nothing.

    `Toss the parsnips with the oil. Spread over a tray and roast for half an hour.`
    """
    told = [place for place, one in enumerate(sentences) if one.strip()]
    found = [""] * len(sentences)
    for place, behind in pairwise(told):
        if not any(True for _ in foods_in(sentences[behind], names)):
            found[place] = sentences[behind]
    return found


def uses_in(title: str, sentences: Sequence[str], names: Names) -> dict[str, Use]:
    """How each food is used that the steps name; of a food used both ways, cooked."""
    heated = any(map(HEAT.search, sentences))
    hot = [bool(HEAT.search(sentence)) for sentence in sentences]
    dish_is_cold = bool(_COLD_DISH.search(title))
    cooled = next((number for number, one in enumerate(sentences) if _COOLED.search(one)), len(sentences))
    baked = [number for number, sentence in enumerate(sentences) if _BAKES.search(sentence)]
    last_baked = max(baked, default=-1) if _BAKED_DISH.search(title) else -1
    next_roasts = going_on(sentences, names)
    uses: dict[str, Use] = {}
    for number, sentence in enumerate(sentences):
        cold = bool(_DRESSING.search(sentence)) and not hot[number]
        cold |= bool(_FOR_ITS_BITE.search(sentence)) and not hot[number]
        cold |= (dish_is_cold or number > cooled) and not any(hot[number:])
        use: Use = "cooked" if heated and not cold else "raw"
        on_a_tray = number < last_baked or (heated and bool(_ON_A_TRAY.search(sentence)) and any(hot[number:]))
        clauses = sentence.split(",")
        for place, clause in enumerate(clauses):
            # Without a verb of its own a clause shares the one before; what is tossed and then roasted is roasted.
            behind = ",".join([*clauses[place:], next_roasts[number]])
            roasted = _TOSSES.search(clause) is not None and bool(_ROASTED.search(behind))
            use = "cooked" if on_a_tray or roasted else _use_in(clause, heated and not cold) or use
            for food in {food for _, foods in foods_in(clause, names) for food in foods}:
                if uses.get(food) != "cooked":
                    uses[food] = use
    return uses


def _use_in(clause: str, heated: bool) -> Use | None:
    """How a clause uses what it names; None where it has no verb that tells."""
    if HEAT.search(clause) or _HOT_VESSEL.search(clause):
        return "cooked"
    if JOINS.search(clause):
        return "cooked" if heated else "raw"
    return "raw" if ON_TOP.search(clause) else None
