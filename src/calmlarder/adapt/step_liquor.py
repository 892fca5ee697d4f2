"""Steps that soak dried mushrooms, where fresh ones take their place: no soaking, and water for the liquor."""

import re
from collections.abc import Sequence

from calmlarder.adapt.changed_lines import Part
from calmlarder.adapt.model import Adapted, Change
from calmlarder.adapt.sentences import SENTENCE_ENDS
from calmlarder.adapt.step_notes import bare
from calmlarder.tables.book import Tables

_SOAKS = re.compile(
    r"\b(?:soak|steep|rehydrate)(?:ing)?\b|\b(?:cover|pour|put|place|add)\b[^.;]*\b(?:hot|warm|boiling|boiled)[^.;]*\b(?:water|stock)\b"
    r"|\b(?:hot|boiling|boiled)\b[^.;]*\b(?:water|stock)\b[^.;]*\bover\b",
    re.IGNORECASE,
)
_DRAINS = re.compile(
    r"(?:\s*\d+[.)])?\s*(?:then |once soft,? |when soft,? )?(?:drain|lift|strain|squeeze|scoop|remove|take)\b",
    re.IGNORECASE,
)
# `Lift them out, squeeze, and chop; keep the liquid and add it to the stock`: what follows the soaking.
_LIFTED = re.compile(
    r"\s*(?:then )?(?:lift|squeeze|scoop|drain|strain|fish|take|chop|slice)\b"
    r"(?![^.;]*\b(?:add|fry|stir|cook|put|tip|pan)\b)",
    re.IGNORECASE,
)
_KEPT = re.compile(
    r"\s*(?:and )?(?:keep|reserve|save|strain|pour)\b[^.;]*\b(?:liquid|liquor|soaking water|juices?)\b", re.IGNORECASE
)
# What else is said while they soak, without a name: `Soak for 20 minutes, then drain into a bowl.`
_STILL_SOAKING = re.compile(
    r"\s*(?:then )?(?:soak|steep|leave|let (?:it|them|these)|set (?:it |them )?aside|stand|cover)\b"
    r"(?![^.;]*\b(?:add|fry|stir|cook|put|tip|pan|heat|meanwhile)\b)",
    re.IGNORECASE,
)
_ADDED = re.compile(
    r"\b(?:add|stir|pour|tip) (?:it|this|that|them) (?:in)?to (?P<to>the [\w -]+?)(?= and\b|[,.;]|$)", re.IGNORECASE
)
# `Add the porcini with their soaking liquid`: there they go into the dish.
_GOES_IN = re.compile(
    r"(?:\s*\d+[.)])?\s*(?:then )?(?:add|stir in|tip in|pour in|return)\b[^.;]*\bwith (?:all )?(?:the|their|its)\b"
    r"[^.;]*\b(?:liquid|liquor|water|juices?)\b",
    re.IGNORECASE,
)
_LIQUOR = re.compile(r"\b(?:liquor|liquid|water|juices?|soaked)\b", re.IGNORECASE)
_GRIT = re.compile(
    r",? (?:and |but )?(?:leaving|discarding|avoiding|leave|discard)\b[^,.;]*\b(?:grit|sediment)\b[^,.;]*", re.I
)
_OF_MUSHROOMS = r"(?:(?:reserved|strained|soaking|mushrooms?|porcini|shiitake)(?: \[[^\]]*\])? )"
_ITS_LIQUOR = rf"(?:{_OF_MUSHROOMS}*liquor|{_OF_MUSHROOMS}+(?:liquid|water|stock|juices?))"
_SO_MUCH_OF_IT = re.compile(
    rf"\b(?P<much>\d[\d./½¼¾]* ?(?:tbsp|tsp|tablespoons?|ml|cups?|ladles?)) of (?:the |their |its )?{_ITS_LIQUOR}", re.I
)
_MORE_OF_IT = re.compile(
    rf"\b(?:(?:more|some|the rest|a little|a splash|half) of )(?:the |their |its )?{_ITS_LIQUOR}", re.I
)
_ALL_OF_IT = re.compile(rf"\b(?:the |their |its )(?:rest of the )?{_ITS_LIQUOR}", re.IGNORECASE)
_SOAKED = re.compile(
    r"\b(?:fresh and )?(?:soaked|drained|rehydrated|softened) (?=[\w ]*mushrooms?\b|porcini\b|shiitake\b)",
    re.IGNORECASE,
)
# Of two kinds one is left: `the fresh and dried mushrooms`.
_BOTH_KINDS = re.compile(
    r"\b(?:the )?(?:(?:fresh|sliced|chopped|raw) and (?:dried|soaked|rehydrated)"
    r"|(?:dried|soaked|rehydrated) and (?:fresh|sliced|raw)|both (?:kinds|types|sorts|lots) of) mushrooms\b"
    r"(?: \[[^\]]*\])?",
    re.IGNORECASE,
)
_CUT_THEN = re.compile(r"\b(?:chopped|sliced|drained|soaked) (?=(?:[a-z]+ )?mushrooms\b)", re.IGNORECASE)
_STOCK_CUBE = re.compile(r"\bstock (?:cubes?|pots?|powder)|\bbouillon\b", re.IGNORECASE)
_SO_MUCH_WATER = re.compile(
    r"\b(?:in|with|over)? ?(?:about )?(\d[\d./½¼¾]* ?(?:ml|litres?|l|cups?|fl oz|pints?)) (?:of )?(?:very )?"
    r"(?:just[- ])?(?:hot|warm|boil\w+)\b",
    re.IGNORECASE,
)

# They were soaked in some of the stock.
_IN_STOCK = re.compile(
    r"\b(?:pour(?: over)?|cover(?: them)? with|soak \w+ \w* ?in|over|in) "
    r"(?P<much>\d[\d./½¼¾]* ?(?:ml|litres?|l|cups?)) of (?:the |your )?"
    r"(?:hot |boiling |warm )*(?:[a-z]+ )?(?:stock|broth)\b(?=[^.;]*\b(?:soak|leave|stand|soft)\w*)",
    re.IGNORECASE,
)
_REST_OF_STOCK = re.compile(r"\bthe (?:rest of|remaining) (?:the )?(?=(?:[a-z]+ )?(?:stock|broth)\b)", re.IGNORECASE)


def without_soaked_mushrooms(
    steps: Sequence[str], marked: Sequence[str], parts: Sequence[Part], adapted: Adapted, tables: Tables
) -> list[str]:
    """The changed steps without the soaking of dried mushrooms that are fresh ones now; `steps` are as written."""
    for change in adapted.changes:
        if change.place is not None and _is_fresh_now(parts[change.place], change, tables):
            water = _SO_MUCH_WATER.search(" ".join((change.ingredient, *steps, *(one.read.text for one in parts))))
            stock = _IN_STOCK.search(" ".join(steps))
            liquor = f"{stock['much']} of the stock" if stock else f"{water[1] if water else 'a little'} water"
            names = [bare(line) for line in change.lines]
            marked = _without(list(marked), names, liquor, _minutes(parts, change, tables))
            marked = [_all_one_kind(step, names) for step in marked]
            if stock is not None:  # all of it is there still
                marked = [_REST_OF_STOCK.sub("the ", step, count=1) for step in marked]
    return list(marked)


def _is_fresh_now(part: Part, change: Change, tables: Tables) -> bool:
    food = tables.food_by_id.get(part.read.food or "")
    to = [tables.food_by_id[one.food] for one in change.to]
    dried = food is not None and food.kind == "mushroom" and "dried" in food.name
    fresh = [one for one in to if one.kind != "soy-sauce"]  # which brings back some of the savour
    return dried and bool(fresh) and all(one.kind == "mushroom" and "dried" not in one.name for one in fresh)


def _minutes(parts: Sequence[Part], change: Change, tables: Tables) -> int:
    """How long what is fresh now browns, by the table of steps; 0 where it says nothing."""
    food = tables.food_by_id[parts[change.place or 0].read.food or ""]
    rows = [tables.step_of(food, tables.food_by_id[one.food], "fried") for one in change.to]
    return max((row.minutes or 0 for row in rows if row is not None), default=0)


def _all_one_kind(step: str, names: Sequence[str]) -> str:
    """`the fresh mushrooms [oyster mushrooms] and 80 g of the oyster mushrooms` as `the oyster mushrooms`."""
    now = "|".join(map(re.escape, names))
    share = r"(?:\d+ g of the )?"
    fresh = rf"(?:fresh |sliced |remaining )*(?:{now}|(?:mixed |wild )*mushrooms \[(?:{now})\])"
    twice = re.compile(
        rf"\bthe {share}{fresh}(?:,| and|, and) (?:the )?(?:chopped )?{share}(?P<name>{now})\b"
        rf"|\bthe {share}(?P<first>{now})(?:,| and|, and) (?:the )?{share}{fresh}",
        re.IGNORECASE,
    )
    return twice.sub(lambda one: f"the {one['name'] or one['first']}", step)


def _without(steps: list[str], names: Sequence[str], liquor: str, minutes: int) -> list[str]:
    known = "|".join(map(re.escape, sorted(names, key=len, reverse=True)))
    named = re.compile(
        rf"(?:\d+ g of the )?(?:{known})|dried (?:wild |\w+ )?mushrooms|(?:dried )?porcini", re.IGNORECASE
    )
    found: list[str] = []
    torn = soaking = False
    fried = re.compile(
        rf"\b(?:fry|frying|brown|saut\w+)\b[^.;]*(?<!of )\bthe (?:{known})"
        r"|\b(?:add|fry|cook|brown|saut\w+) all (?:of )?the (?:[\w-]+ )?mushrooms\b[^.;]*\d+ ?min"
        rf"|\b(?:add|stir in|tip in)\b[^.;]*\b(?:{known}|mushrooms)\b[^.;]*\b(?:fry|brown|saut\w+|cook)\b"
        r"[^.;]*(?:[4-9]|\d\d) ?min",
        re.IGNORECASE,
    )
    brown = f" and brown them in a little oil in a hot pan for about {minutes} minutes"
    how = brown if minutes and not any(fried.search(step) for step in steps) else ""
    for step in steps:
        kept: list[str] = []
        start = 0
        for stop in (*(one.end() for one in SENTENCE_ENDS.finditer(step)), len(step)):
            sentence, start = step[start:stop], stop
            name = named.search(sentence)
            soaks = bool(name and _SOAKS.search(sentence) and not (torn and _GOES_IN.match(sentence)))
            drains = bool(_DRAINS.match(sentence) and _LIQUOR.search(sentence) and (name or soaking))
            drains |= bool(soaking and (_LIFTED.match(sentence) or (not name and _STILL_SOAKING.match(sentence))))
            if soaking and _KEPT.match(sentence):
                into = _ADDED.search(sentence)
                kept += [f" Add {liquor} to {into['to']}."] if into else []
                continue
            soaking = soaks or drains
            if soaks or drains:
                if not torn:
                    known_so = name[0] if name and name[0].endswith(tuple(names)) else names[0]
                    kept.append(f" Tear {_the(known_so)}{how}.")
                torn = True
            else:
                kept.append(sentence)
        text = "".join(kept).strip()
        found.append(text or "Nothing is soaked here.")
    if not torn:
        found = _not_steeped(found, known, f"{_the(names[0])}{how}")
    squeezed = re.compile(
        rf",? (?:and |then )+(?:gently )?squeeze (?:the )?(?:[a-z]+ mushrooms and )?"
        rf"(?:{known})[^,.;]*(?=[.;])",
        re.IGNORECASE,
    )
    found = [_not_drained(_BOTH_KINDS.sub(f"the {names[0]}", squeezed.sub("", one)), known) for one in found]
    return _without_liquor(found, liquor)


def _not_steeped(steps: Sequence[str], known: str, them: str) -> list[str]:
    """The steps in which dried mushrooms drew in the stock: it is heated alone, and fresh ones never were in it.

    `Put the porcini in a pan with the stock. After 15 minutes, lift them out and chop.` Where nothing like it stands
    the steps are as they were.
    """
    name = rf"(?:(?:all |\d+ g )?(?:of )?the )?(?:(?:dried )?(?:{known})|dried (?:wild |\w+ )?mushrooms)"
    liquid = r"the (?:hot |warm |boiling )*(?:[a-z]+ )?(?:stock|broth|water|bouillon)"
    beside = re.compile(
        rf"\b(?P<put>put|place|tip|add) {name} (?P<where>(?:in|into) (?:a|the|your) [a-z -]{{3,25}}?) (?:with|and) "
        rf"(?P<liquid>{liquid})",
        re.IGNORECASE,
    )
    with_it = re.compile(
        rf"\b(?P<heat>(?:warm|heat|simmer|bring|infuse) {liquid}) (?:with|and) {name}(?: in it| in)?", re.IGNORECASE
    )
    both = re.compile(rf"\b(?P<put>put|place|tip) {liquid} and {name}(?= (?:in|into)\b)", re.IGNORECASE)
    lifted = re.compile(
        r"(?:after [^.,;]{3,25},? |then |once soft,? )?(?:lift|take|scoop|fish|strain) "
        rf"(?:out {name}|{name} out)(?:,? (?:and|then) [^.;]*)?[.;](?: +|$)",
        re.IGNORECASE,
    )
    told, place = list(steps), -1
    for at, step in enumerate(steps):
        heated = beside.sub(r"\g<put> \g<liquid> \g<where>", with_it.sub(r"\g<heat>", step))
        heated = both.sub(lambda one: re.split(r" and ", one[0])[0], heated)
        if heated != step:
            place = at
            share = re.search(rf"\d+ g of the (?:{known})", step)
            them = them.replace(re.split(r" and brown", them)[0], share[0], 1) if share else them
        told[at] = heated
        if (out := lifted.search(heated)) is not None and place >= 0:
            told[at] = f"{heated[: out.start()]}Tear {them}. {heated[out.end() :]}".strip()
            return [_CUT_THEN.sub("", one) if n >= at else one for n, one in enumerate(told)]
    return list(steps)


def _not_drained(step: str, known: str) -> str:
    """`Drain the porcini, discard the stalks and chop the caps` of fresh ones: only the chopping is left."""
    drained = re.compile(
        rf"\b(?P<d>drain|squeeze|strain)(?:,? and squeeze)?(?: (?:out|dry|well))? (?P<what>(?:the )?(?:{known}))"
        r"(?: (?:well|dry|out))?(?:,? (?:and )?(?:discard|remove|trim|cut off|throw away|snap off)(?:ing)?"
        r" (?:the |their |any )?(?:tough |woody )?(?:stalks|stems)(?: off)?)?"
        r",?(?: and)?(?: then)? (?P<verb>chop|slice|dice|shred|mince) (?P<how>finely |roughly |thinly )?"
        r"(?:the caps|them|the tops|the mushrooms(?: \[[^\]]*\])?|(?=finely|roughly|thinly|[.;]))",
        re.IGNORECASE,
    )

    def told(found: re.Match[str]) -> str:
        verb = found["verb"].capitalize() if found["d"][0].isupper() else found["verb"]
        return f"{found['how'] or ''}{verb} {found['what']}"

    return drained.sub(told, step)


def _without_liquor(steps: Sequence[str], liquor: str) -> list[str]:
    """The steps with water for the liquor: how much where it goes in first, then the stock that was made of it."""
    again = liquor
    told: list[str] = []
    for step in steps:
        step = _SO_MUCH_OF_IT.sub(r"\g<much> water", _GRIT.sub("", step))
        step = _MORE_OF_IT.sub("water" if again == liquor else again, step)
        while (found := _ALL_OF_IT.search(step)) is not None:
            step = f"{step[: found.start()]}{again}{step[found.end() :]}"
            if liquor[:1].isdigit() and liquor.endswith(" water"):
                again = "the stock" if _STOCK_CUBE.search(step[: found.end()]) else "the water"
        told.append(_SOAKED.sub("", step))
    return told


def _the(name: str) -> str:
    return name if name[:1].isdigit() else f"the {name}"
