"""A line that was not read, told in other words; and a line of several foods, each with its own amount."""

import re
from collections.abc import Callable, Iterator

from calmlarder.cookbook.notation import other_spelling, spoons_told
from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS
from calmlarder.matching.names.notes import COLOURS, DECIDING, DISHES, GENERIC
from calmlarder.matching.names.words import plain, singular

_COUNT = rf"(?:\d[\d./]*|{'|'.join(word for word in WHOLE_WORDS if len(word) > 2)}|an?)"
_SMALL = r"(?:pinch|handful|splash|dash|knob|sprinkling|sprinkle|drizzle|squeeze|bunch|grating|few sprigs)"
_APART = re.compile(
    rf"\s*;\s*(?={_COUNT}\s)|\s*,\s*(?:and )?(?=(?:good |big |large |small )?{_SMALL} of\s)"
    rf"|(?:\s*,\s*|\s+)(?:(?:and|plus|&|\+)\s+)(?={_COUNT}\s)|\s*,\s*(?={_COUNT}\s)|\s*\+\s*(?={_COUNT}\s)"
)
# `squeeze of lemon, chopped coriander`: so small a measure is of what is right behind it alone.
_SMALL_FIRST = re.compile(rf"(?:an? )?(?:(?:good|big|small|large|generous) )?{_SMALL} of [^,;()]+[,;]")
_UNCOUNTED = re.compile(r"[a-z][a-z' -]*")  # `grated parmesan and 2 tbsp pesto`
_MOST_APART = 5  # amounts on one line; more is a list: ours
_EACH_COLOUR = re.compile(
    rf"(?P<count>{_COUNT}) each(?: of)? (?P<first>{'|'.join(sorted(COLOURS))}) (?:and|&) "
    rf"(?P<second>{'|'.join(sorted(COLOURS))}) (?P<food>.+)"
)
_COLOURED = re.compile(rf"({_COUNT}) (?:(?:small|medium|large) )?({'|'.join(sorted(COLOURS))})")
# Of these a name before them may make another food; of olives, potatoes and the like it is a sort.
OTHER_THINGS = (GENERIC - {"olive", "potato", "tomato", "onion", "ham", "lettuce"}) | DECIDING | DISHES
_NAME = r"(?:[A-Z][a-zà-ÿ'’]+(?:[ -](?=[A-Z]))?)+"
_NAMES = re.compile(
    rf"(?<![.!?:(]\s)(?<!^)\b{_NAME}(?:(?:,| or| and| &)+ {_NAME})*(?= ((?:[a-zà-ÿ]+ )*?)([a-zà-ÿ]{{3,}}))"
)
# `Puy-style lentils`, `Italian plum tomatoes`: where it comes from says nothing of what it is.
_OF_A_SORT = re.compile(r"-style |\b(?:italian|spanish|french|greek|turkish|english|dutch|imported) (?=\w+ \w)")
# `2 tbsp oil + 1 tbsp for frying the paneer`: more of the same, and what for.
_MORE_OF_IT = re.compile(
    r"^(?P<head>\d.*?[a-z]{3,}.*?)\s*(?:,\s*)?(?:\+|\b(?:plus|and)\b)\s*"
    r"(?P<more>\d[\d./ ]*(?:tbsp|tsp|tablespoons?|teaspoons?|cups?|ml|g|kg|oz)\b"
    r"|\d (?:(?:halved|whole|extra|more|crushed|peeled|sliced|chopped|cut) )*(?:cloves?|slices?|sprigs?|sticks?)\b)\.?"
    r"(?: of (?:it|the same))?(?: more| extra)?,? (?:for|to) [^,;()]+"
)
# `plus a little more for the polenta`: what the rest is for is no food of the line.
_FOR_A_USE = re.compile(
    r"(?<= )((?:(?:plus|\+) |and (?=[^,;()]* (?:more|extra) ))(?:(?:(?:a (?:little|bit|touch|splash|few|knob|drizzle"
    r"|glug|dash)|some) )?(?:more|extra)"
    r"|a (?:little|bit|touch|splash|knob|drizzle|glug|dash)|some)) (?:for|to) [^,;()]+"
)
_TWICE = re.compile(r"\b(habanero|jalapeno|serrano|poblano|ancho|chipotle|guajillo|cayenne) chillis?\b")
# `mixed mushrooms (button and portobello)`: the kinds of a thing stand in a bracket behind it.
_KINDS_BEHIND = re.compile(
    r"(?P<before>.*?)\b(?:(?:fresh |wild )*(?:mixed |assorted |mix of )(?:fresh |wild |exotic )*)?(?P<thing>[a-z]{4,}) "
    r"\((?:a mix of |mix of |such as |like |e\.?g\.?,? )?(?P<kinds>[a-z][a-z ,&-]*)\)"
)
# `mixed seeds - pumpkin, sunflower, linseed`
_DASHED_KINDS = re.compile(
    r"\b(?P<mix>(?:mixed|assorted|mix of) (?:[a-z]+ ){0,2}?[a-z]{4,}) ?(?:-|–|:) ?"
    r"(?P<kinds>[a-z]+(?:,? (?:and )?[a-z]+){1,4})$"
)
_NAMED_ALONE = frozenset({"nut", "berry", "leaf", "leave", "fruit"})  # nobody says walnut nuts
_BETWEEN_KINDS = re.compile(r"\s*,\s*(?:and |or |& )?|\s+(?:and|or|&)\s+")
_TOSSED = re.compile(
    r"(?:\s*,\s*|\s+)(?:and )?(?:(?:lightly|well) )?"
    r"(?:tossed|rubbed|brushed|mixed|drizzled|beaten|whisked|warmed|infused|mashed|crushed|blended|simmered|stirred"
    r"|soaked|steeped|dissolved|bloomed|stuck|studded|spiked|pierced"
    # `almonds, fried in a little butter`
    r"|(?:fried|browned|crisped|toasted|sauteed|softened|sizzled)"
    r"(?= in (?:[a-z0-9/]+ ){0,4}(?:butter|oil|ghee|lard|fat)\b))"
    r"(?: to a paste| together| up)? (?:in|with) (?:(?:the|a little|a bit of|a touch of|some) )?(?=\S)"
    r"|\s*,\s*in (?=[\d½¼¾][\d/.]* ?(?:tbsp|tsp|ml|cups?|tablespoons?|teaspoons?)\b)"  # `saffron, in 3 tbsp warm milk`
)
# `rice, cooked in stock`, `potatoes, boiled with salt`: it is weighed as it comes, and what it is cooked with counts.
_COOKED_WITH = re.compile(
    r"(?:\s*,\s*|\s+)(?:and )?(?:then )?(?:cooked|boiled|steamed|simmered|poached)(?: (?:gently|until \w+))? "
    r"(?:in|with) (?:the )?(?=\S)"
)
_COOKING_WATER = re.compile(r"(?:(?:lots|plenty) of )?(?:lightly |well[- ]|un)?(?:salted |salty |boiling )*water\b.*")
# What is stuck into an onion or a ham is the spice, no clove of garlic.
_STUDDED = re.compile(rf"\b(?:stuck|studded|spiked) with (?:{_COUNT} )?(?=cloves?\b)(?!.*garlic)")
# `finely grated, with a pinch of salt`
_WITH_A_PINCH = re.compile(r", with (?=a (?:good |big |generous |small )?pinch of|[\d½¼¾][\d/.]* ?(?:tsp|tbsp)\b)")
# `zest of 1 orange and juice of half`
_ZEST_AND_JUICE = re.compile(
    r"(?P<first>(?:\w+ )*?(?:zest|rind|juice)) (?:of|from) (?P<one>\S+) (?P<fruit>[a-z]+?s?)(?:,| and|, and| plus) "
    r"(?:the )?(?P<second>(?:\w+ )*?(?:zest|juice)) (?:of|from) (?P<other>half|1/2|1|2|3)(?: of it| an? \w+)?"
)
# `rigatoni or other short tubes`: what else would do, without a name of its own.
# So does `or half milk half water`.
_OR_THE_LIKE = re.compile(
    r",? \bor (?:any |some |an)?(?:other|similar|equivalent)\b[^,()]*|,? \bor (?:half|part|a mix\w*)\b (?!an? )[^,()]*"
    r"|,? \bor any [^,()]* you (?:like|have|prefer)\b|(?<=[a-z]) or any (?:wild|kind|sort)\b[^,()]*"
)


def apart(line: str) -> tuple[str, ...]:
    """The pieces of a plain line in which several foods have amounts of their own (`2 carrots and 1 parsnip`).

    `1 red and 1 yellow pepper` are two peppers. Nothing where it is not such a line.
    """
    each = _EACH_COLOUR.match(line)
    if each is not None:
        return tuple(f"{each['count']} {each[colour]} {each['food']}" for colour in ("first", "second"))
    listed = _SMALL_FIRST.match(line) is not None
    pieces = [piece for piece in (re.split(r"\s*[,;]\s*(?:and )?", line) if listed else _APART.split(line)) if piece]
    counted = listed or re.match(_COUNT, line) or _UNCOUNTED.fullmatch(pieces[0])
    if not 1 < len(pieces) <= _MOST_APART or not counted:
        return ()
    if any(piece.count("(") != piece.count(")") for piece in pieces):
        return ()  # `(or 380 ml milk + 1 tbsp lemon juice)`: two that would do in its place
    pieces = ["black pepper" if listed and piece == "pepper" else piece for piece in pieces]
    last = re.match(rf"{_COUNT} (?:(?:small|medium|large) )?(?:{'|'.join(COLOURS)}) (.+)", pieces[-1])
    if last is not None:
        pieces = [f"{piece} {last[1]}" if _COLOURED.fullmatch(piece) else piece for piece in pieces]
    return tuple(pieces)


def with_more(line: str) -> str:
    """A plain line that adds some of the same for a use of its own, without that use."""
    bare = _BRACKETED_USE.sub(" ", line)
    return _FOR_A_USE.sub(
        r"\1", _MORE_OF_IT.sub(lambda one: f"{one['head']} plus {_CUT_SO.sub(' ', one['more'])}", bare)
    )


# `50 g butter (for the mash), plus 50 g for the sauce`: what the first of it is for.
_BRACKETED_USE = re.compile(r"\s*\(for (?:the )?[a-z]{3,20}\)(?=,? (?:plus|and) \d)")


_CUT_SO = re.compile(r" (?:(?:halved|whole|extra|more|crushed|peeled|sliced|chopped|cut) )+")


def kinds_behind(line: str) -> tuple[str, ...]:
    """A plain line once for each kind that its bracket names (`mixed mushrooms (button and portobello)`), in full.

    Each has the whole amount. Nothing where it is not such a line.
    """
    found = _KINDS_BEHIND.match(_DASHED_KINDS.sub(r"\g<mix> (\g<kinds>)", line))
    kinds = [one for one in _BETWEEN_KINDS.split(found["kinds"].strip()) if one] if found else []
    if found is None or not 1 < len(kinds) <= _MOST_APART:
        return ()
    thing = singular(found["thing"])
    alone = thing in _NAMED_ALONE
    named = (kind if alone or thing in kind else f"{kind} {found['thing']}" for kind in kinds)
    return tuple(f"{found['before']}{one}{line[found.end() :]}" for one in named)


def tossed(line: str) -> tuple[str, ...]:
    """A line and what its food is tossed in or beaten with (`pears, tossed in the juice of 1/2 lemon`), or zest and
    juice of two amounts; nothing for any other line.
    """
    both = _ZEST_AND_JUICE.fullmatch(line)
    if both is not None:
        return (
            f"{both['first']} of {both['one']} {both['fruit']}",
            f"{both['second']} of {both['other']} {both['fruit']}",
        )
    line = _STUDDED.sub(r"\g<0>whole ", line)
    cooked = _COOKED_WITH.split(line, maxsplit=1)
    if len(cooked) == 2 and re.match(r"\d", line):
        own = f"{cooked[0]}, cooked"
        return (own,) if _COOKING_WATER.fullmatch(cooked[1]) else (own, cooked[1])
    pieces = _TOSSED.split(_WITH_A_PINCH.sub(", mixed with ", line), maxsplit=1)
    return tuple(pieces) if len(pieces) == 2 else ()


# `ground roasted Sichuan pepper`: by the spoon it is a spice, roasted or not.
_ROASTED_SPICE = re.compile(
    r"^(?P<much>[\d½¼¾⅓⅔⅛][\d./ ]*(?:tsp|teaspoons?|pinch(?:es)?|tbsp|tablespoons?)\b.*?)"
    r"\b(?:(?:dry|freshly|lightly|well)[- ])?(?:roasted|toasted)(?:,? (?:and|then|&))? (?=[a-z])"
)


def retold(shown: str, line: str, known: Callable[[str], bool]) -> Iterator[str]:
    """Plain lines that say the same in words that may be known; `known` says whether a word stands in a food's name."""
    spelt = other_spelling(line)
    if spelt is not None:
        yield spelt
        yield _TWICE.sub(r"\1", spelt)
    if _OR_THE_LIKE.search(line):
        yield _OR_THE_LIKE.sub("", line)
    if _ROASTED_SPICE.search(line):
        yield _ROASTED_SPICE.sub(r"\g<much>", line)
    if _OF_A_SORT.search(line):
        yield _OF_A_SORT.sub(" ", line)
    sort = _without_sorts(shown, known)
    if sort is not None:
        yield plain(spoons_told(sort))


def _without_sorts(shown: str, known: Callable[[str], bool]) -> str | None:
    """A line as written without the proper names of sorts (`Nicoise or Gaeta olives`), or None where it has none.

    Only where the food itself is written small, and is no cheese, sauce or drink: there a name is another thing.
    """

    def is_sort(found: re.Match[str]) -> bool:
        words = {singular(plain(word)) for word in re.findall(r"[A-Za-zÀ-ÿ]+", found[0])} - {"or", "and"}
        behind = {singular(plain(word)) for word in found[1].split()} | {singular(plain(found[2]))}
        return not any(map(known, words)) and not behind & OTHER_THINGS

    told = _NAMES.sub(lambda found: "" if is_sort(found) else found[0], shown)
    return " ".join(told.split()) if told != shown else None
