"""So many of a food of which some differ: two of the eggs are boiled, one of the potatoes is huge."""

from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS
from calmlarder.matching.late_patterns import LatePattern

_NUMBER = rf"(?:\d{{1,2}}|{'|'.join(sorted(WHOLE_WORDS, key=len, reverse=True))})"
_HEAD = r"(?P<food>[a-z][a-z ]*?[a-z])"
_BOILED_APART = LatePattern(
    r"\b(?:eggs?|eier|uova|huevos|oeufs|jajk[ao]|jajek|ovos|tamago|telur|itlog|yumurta|gyeran|anda|ande|muttai|yai"
    r"|tojas|ouă|avga|trung|potato(?:es)?|spuds|tatties|beetroots?|beets|sweetcorn|corn cobs?)$"
)
_SOME = (
    rf"(?:[ ,;:-]*\(|[ ]*[,;:-]+)[ ]*(?:of which |incl(?:uding)? |but )?(?P<some>{_NUMBER})"
    r"(?: (?:of (?:them|which)|is|are|already|been|have been))*"
    r" (?P<state>(?:(?:hard|soft)[ -]?)?boiled|cooked|pickled)(?: ones)?\s*\)?\s*$"
)
# `6 eggs (2 boiled)`, `potatoes 8, 3 cooked`.
_SOME_COOKED = LatePattern(
    rf"^(?:about |like |maybe )?(?P<all>{_NUMBER}) ?x? {_HEAD}{_SOME}",
    needs=("boiled", "cooked", "pickled"),
)
_COOKED_BEHIND = LatePattern(
    rf"^{_HEAD}[ ,-]+(?:x ?)?(?P<all>{_NUMBER}){_SOME}",
    needs=("boiled", "cooked", "pickled"),
)
# `2 hard boiled eggs, 3 raw`: the raw ones are as many more.
_MORE_RAW = LatePattern(
    rf"^(?P<some>{_NUMBER}) (?P<state>(?:(?:hard|soft)[ -]?)?boil(?:ed)?|cooked|pickled) {_HEAD}[ ,(;+-]+(?:and |& )?"
    rf"(?P<all>{_NUMBER})(?: (?:still|are|is))? (?:raw|fresh|uncooked|not boiled|unboiled)(?: ones?)?\)?\s*$",
    needs=("raw", "fresh", "cooked", "boiled"),
)
# `2 eggs and one hard boiled`: one more.
_MORE_COOKED = LatePattern(
    rf"^(?P<all>{_NUMBER}) {_HEAD},? (?:and|plus|&|\+|n) (?P<some>{_NUMBER}) (?:more )?"
    r"(?P<state>(?:(?:hard|soft)[ -]?)?boiled|cooked|pickled)(?: ones?)?\s*$",
    needs=("boiled", "cooked", "pickled"),
)
# `plantain 3, one still green, two gone black`: ripeness makes two foods of them.
_RIPENESS = r"(?:(?:is|are|still|gone|very|v|a bit|really) )*(green|unripe|ripe|yellow|black|brown|spotty)"
_BY_RIPENESS = LatePattern(
    rf"^(?:ripe |green )?(?P<food>plantains?|bananas?)[ ,:-]+(?:(?:x ?)?{_NUMBER}(?: fingers?)?[ ,(:-]+)?"
    rf"(?P<one>{_NUMBER}) {_RIPENESS}"
    rf"(?: ?[,;&+] ?| and | )(?:and )?(?P<other>{_NUMBER}) {_RIPENESS}\)?\s*$",
    needs=("plantain", "banana"),
)
_SIZE = (
    r"(?:(?:really|very|quite) )?(?:massive|huge|big|large|giant|enormous|gigantic|whopping|small|titchy|tiny|wee"
    r"|little|mini|medium|med|normal|ok|decent|good)(?:[ -]sized?)?(?: ones?)?"
)
# `sweet potatoes: 1 massive, 2 titchy` are three.
_BY_SIZE = LatePattern(
    rf"^{_HEAD}[ :(,-]+(?P<one>{_NUMBER}) {_SIZE}(?: ?[,;&+] ?| and )(?:and )?(?P<other>{_NUMBER}) {_SIZE}\)?\s*$",
    needs=(" ",),
)
# `2 mangoes ripe and 1 hard`, `avocados 2 hard 1 soft` are three.
_FIRM = (
    r"(?:(?:super|very|really|rock|bit|still|quite|going|a bit|too|v|pretty) )*"
    r"(?:ripe|unripe|over ?ripe|under ?ripe|hard|soft|firm|squishy|wrinkly|bendy|floppy|ready|good|fine|ok)(?: ones?)?"
)
_BY_FIRMNESS = LatePattern(
    rf"^(?:(?P<before>{_NUMBER}) {_HEAD}|(?P<name>[a-z][a-z ]*?[a-z])[ :(,-]+(?P<one>{_NUMBER})) {_FIRM}"
    rf"(?: ?[,&+] ?| and | n | )(?:and )?(?P<other>{_NUMBER}) {_FIRM}\)?\s*$",
)
_AS_MANY_MORE = LatePattern(rf"(?: ?[&+] ?| and | n )(?:and )?{_NUMBER} {_FIRM}\)?\s*$")

# Half of it as it was and half cooked, each with its own days: `butternut half raw, other half roasted wed`.
_HALF_COOKED = LatePattern(
    r"^(?:an? |one |1 )?(?P<food>[a-z]+(?: [a-z]+)?)[ ,:(-]+half (?:is |still )?(?:raw|fresh|uncooked),? (?:and |& )?"
    r"(?:the )?(?:other )?half (?:is |was )?(?P<how>(?:roasted|boiled|cooked|mashed|steamed|baked|fried|grilled)\b"
    r"[^;,()]*)\)?$",
    needs=("raw", "fresh", "uncooked"),
)


def half_cooked(text: str) -> tuple[str, str] | None:
    """The two lines of a thing of which half is raw and half cooked; None for any other plain line."""
    found = _HALF_COOKED.search(text)
    return (f"half {found['food']}", f"half {found['food']} {found['how']}") if found else None


def counted_apart_by_state(text: str) -> str:
    """A plain line with some of a food that are cooked as another food, and those of several sizes counted together."""
    found = _SOME_COOKED.search(text) or _COOKED_BEHIND.search(text)
    if found:
        rest = _value(found["all"]) - _value(found["some"])
        state = "boiled" if "boiled" in found["state"] else found["state"]
        if rest > 0 and state not in found["food"] and _BOILED_APART.search(found["food"]):
            return f"{rest} {found['food']}, {_value(found['some'])} {state} {found['food']}"
    if (found := _MORE_COOKED.search(text) or _MORE_RAW.search(text)) and _BOILED_APART.search(found["food"]):
        state = "boiled" if "boil" in found["state"] else found["state"]
        return f"{_value(found['all'])} {found['food']}, {_value(found['some'])} {state} {found['food']}"
    if found := _BY_RIPENESS.search(text):
        kinds = ["green" if found[at] in {"green", "unripe"} else "ripe" for at in (3, 5)]
        head = found["food"]
        if kinds[0] == kinds[1]:
            return f"{_value(found['one']) + _value(found['other'])} {kinds[0]} {head}"
        return f"{_value(found['one'])} {kinds[0]} {head}, {_value(found['other'])} {kinds[1]} {head}"
    found = _BY_FIRMNESS.search(text)
    if found and (found["one"] or _AS_MANY_MORE.search(text)):  # `2 aubergines, 1 spongy` are two
        return f"{_value(found['one'] or found['before']) + _value(found['other'])} {found['food'] or found['name']}"
    found = _BY_SIZE.search(text)
    return f"{_value(found['one']) + _value(found['other'])} {found['food']}" if found else text


def _value(word: str) -> int:
    """A whole number in digits or words."""
    return int(word) if word.isdigit() else int(WHOLE_WORDS[word])
