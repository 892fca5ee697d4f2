"""What a line takes off what it told before: a few that are bad, used or eaten, and what is really in the box."""

import re

from calmlarder.matching.amounts.measures import MEASURE
from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS
from calmlarder.matching.late_patterns import LatePattern

_NUMBERS = "|".join(sorted(WHOLE_WORDS, key=len, reverse=True))
_SOME_BAD = LatePattern(
    rf"[,;]?\s*\b(\d{{1,2}}|{_NUMBERS}|(?:a )?couple|(?:a )?few|some|a bit)(?: of (?:them|it))?"
    r" (?:are |is |was |were |has |have |don "
    r"|gone |looks? |already |a bit |been )*(?:mouldy|moldy|exploded|rotten|spoil(?:ed|t)?|off|slimy|mush|mushy"
    r"|brown inside|furry|fuzzy|hairy|squashed|bad|used|eaten|split|broken|cracked|gone|smashed|binned|chucked|tossed"
    r"|thrown (?:away|out))\b(?! (?:of|bag|pack|by))"
    r"(?:[,;]? (?:but |the )*(?:rest|others?) (?:is |are )?(?:fine|ok|good))?",
    needs=(
        " mo",
        " exploded",
        " rotten",
        " spoil",
        " off",
        " slimy",
        " mush",
        " brown",
        " squash",
        " furry",
        " fuzzy",
        " hairy",
        " bad",
        " used",
        " eaten",
        " split",
        " squishy",
        " broken",
        " cracked",
        " gone",
        " smashed",
        " binned",
        " chucked",
        " tossed",
        " thrown",
    ),
)
# Some leaves or stalks of it, which are picked out: `2 handfuls gone slimy but rest is ok`; never of what has mould.
_A_FEW_LEAVES = LatePattern(
    rf"[,;(]?\s*\b(?:\d|{_NUMBERS}|an?|some|(?:a )?few)"
    r" (?:handfuls?|leaves|leaf|stalks?|stems?|sprigs?|florets?|pieces?)"
    r"(?: of (?:it|them))? (?:(?:is|are|has|have|gone|a bit|went|got|looking|going) )+"
    r"(?:slimy|brown|black|soft|mushy|mush|wilted|yellow|bad|dry)\b"
    r"(?:[,;]? (?:but |and )*(?:the )?(?:rest|others?)(?: of (?:it|them))? (?:(?:is|are|looks?|still|all) )*"
    r"(?:fine|ok|okay|good|alright|grand)\b)?\)?"
)
_SOME = frozenset({"some", "few", "a few", "couple", "a couple"})
_GROWS_IN_PIECES = LatePattern(
    r"\b(?:tomatoes|toms|potatoes|spuds|tatties|carrots|peppers|onions|shallots|apples|pears|plums|peaches|nectarines"
    r"|apricots|lemons|limes|oranges|clementines|satsumas|mandarins|bananas|plantains|okro|okra|chillies|chilies"
    r"|courgettes|zucchinis?|aubergines|cucumbers|parsnips|beetroots|beets|turnips|radishes)\b"
    r"|\b(?:tomato|potato|carrot|pepper|onion|apple|pear|plum|peach|apricot|lemon|lime|orange|clementine|satsuma"
    r"|mandarin|tangerine|avocado|kiwi) (?:box|crate|net|bag|punnet|tray|pack)\b|\b(?:mandarin|tangerine)s\b"
)
_EATEN = LatePattern(r"\b(?:used|eaten|gone)$")
_FEW = LatePattern(rf"\d{{1,2}}|{_NUMBERS}|a couple|(?:a )?few")
# `kulang` is said so in the Philippines.
_MINUS = LatePattern(
    rf"[,;]?\s*\b(?:minus|kulang|less|bar|apart from|except(?: for)?)"
    rf" (?:an? )?(\d{{1,2}}|{_NUMBERS}|(?<= a )(?={MEASURE}\b))\b(?! ?(?:k?g|ml|l|%))(?: ?(?:{MEASURE})\b)?",
    needs=("minus ", "kulang ", "less ", "bar ", "apart from ", "except "),
)
# So many eggs are in what holds them, where no number says so; a bag of anything is nearly full without one or two of
# it: common practice, no source.
_EGGS_IN = {"box": 6, "pack": 6, "packet": 6, "carton": 12, "tray": 30, "flat": 30}
_BOX_OF_EGGS = LatePattern(
    r"^(?:an? |the |1 |one )?(?:(box|pack|packet|carton|tray|flat)(?: of)? (?:[a-z-]+ )?eggs"
    r"|(?:[a-z-]+ )?eggs,? ?\(?(box|pack|packet|carton|tray|flat)\)?)\b"
)
_DOZENS = LatePattern(
    rf"(?:(?<![\w./,-])(?:(?P<many>\d|{_NUMBERS}) |(?P<half>half a |half |a half )|a ))?\bdoz(?:en|n)?\b\.?(?: of)?",
    needs=("doz",),
)
_PACK = LatePattern(rf"\b(?:{MEASURE})\b")
_ONE_OR_TWO = 2
_SERVING = LatePattern(r"\b(?:portions?|helpings?|servings?)\b")
_PIECE = LatePattern(r"\b(?:slices?|pieces?|squares?|wedges?)\b")
# `quiche, 2 slices gone`: the rest is there.
_PIECES_GONE = LatePattern(
    rf"(?<=[a-z\d])[,;]? \(?(\d{{1,2}}|{_NUMBERS}|an?)"
    r" (portion|slice|piece|square|wedge|helping|serving|rasher|clove)s?"
    r"(?: of (?:it|them))? (?:(?:is|are|has|have|been|already|now) )*(?:gone|eaten|used|taken|missing)\b\)?"
    r"(?=\s*(?:$|[,;.)]))",
    needs=("gone", "eaten", "used", "taken", "missing"),
)
_COUNT = LatePattern(rf"(?:(?<![\w./,-])|(?<=\bx))(\d{{1,2}}|{_NUMBERS})(?![\w./%-])(?! ?(?:k?g|ml|l|oz|lbs?)\b)")
_INSIDE = LatePattern(
    r"[,;]?\s*(?<![\w/.])(\d{1,3}) (?:are |is |still )*(?:inside|in it|in there|in the (?:box|carton|tray)|remain)\b"
    r"|[,;]\s*(\d{1,2}) of (?:them|'?em|those)(?=\s*(?:$|[,;)]))",
    needs=(" inside", " in it", " in the", " remain", " of the", " of em", " of 'em", " of those"),
)
_OF_SO_MANY = LatePattern(
    r"(?<![\w/.])(\d{1,2}) (?:out )?of (\d{1,2})(?![\w/.%])(?! ?(?:k?g|ml|l|oz|lbs?)\b)(?: (?:left|remain(?:ing)?))?"
)
_BOX = r"(?:carton|tray|box|pack|packet|crate|case|flat)s?"
_SIZE_OF_BOX = LatePattern(rf"\b(?:{_BOX} of )?\d{{1,3}}(?:[ -]?(?:{_BOX}))?\b(?! ?(?:k?g|ml|l|oz|lbs?)\b)")

# `packet of tortillas (opened, maybe 14 left)`: so many of them, and no packets.
_LEFT_IN_BOX = LatePattern(
    rf"^(?:an? |the )?(?:pkg|pkt|bag|{_BOX}) (?:of )?([a-z][a-z' -]*s\b[^\d]*?)"
    r"(?:\b(?:maybe|about|only|around|with|like|has) |~ ?)*(?<![\d/.])(\d{1,2}) left\b",
    needs=(" left",),
)
_BOX_ALONE = LatePattern(rf"\b{_BOX}\b(?: of\b)?")
_ALL_BUT_GONE = LatePattern(
    r"[ ,;(-]+(?:is |are |it'?s |its )?(?:nearly|almost|just about|practically|all but|pretty much) (?:all )?"
    r"(?:finished|gone|done|used(?: up)?|empty|out|eaten|drunk)\)?(?=\s*(?:$|[,;.)]))"
)


# `strawberries, moldy ones tossed`: what was bad of them is out already.
_PICKED_OUT = LatePattern(
    r"[,;(-]+ ?(?:the )?(?:mou?ldy|bad|mushy|rotten|slimy|soft|brown|fuzzy|off) (?:ones?|bits?|parts?|leaves|spots?)"
    r" (?:are |were |have been |already |all )*(?:tossed|thrown(?: out| away)?|removed|picked out|gone|binned|composted"
    r"|cut (?:off|out|away)|trimmed(?: off)?|taken out|chucked)(?: out| away)?\)?(?=\s*[!.?]*\s*(?:$|[,;)]))"
)
# Of these, too, the good ones stay where the bad ones are out: common practice, no source.
_PICKED_OVER = LatePattern(
    r"\b(?:strawberr(?:y|ies)|raspberries|blueberries|blackberries|berries|grapes|cherries|mushrooms|green beans"
    r"|sprouts|spinach|kale|chard|lettuces?|rocket|cabbages?|celery|herbs?|parsley|coriander|cilantro)\b"
)


def without_the_bad(text: str) -> str:
    """The text without a few of several that are bad or gone, their number taken off: `toms 6, 2 gone mouldy`."""
    if _GROWS_IN_PIECES.search(text) or _PICKED_OVER.search(text):
        text = _PICKED_OUT.sub(" check it over", text)
    text = _A_FEW_LEAVES.sub(" check it over ", text)
    found = _SOME_BAD.search(text)
    if not found:
        return _without_what_was_used(text)
    rest = f"{text[: found.start()]} {text[found.end() :]}"
    there = _COUNT.search(rest)
    bad = _value(found[1])
    before = re.search(r"[a-z]{3}", text[: found.start()])
    several = re.search(r"[a-z]{2}s\b", rest) or _GROWS_IN_PIECES.search(rest)
    if before and not there and _FEW.fullmatch(found[1]) and several:
        return f"{rest} check it over"  # one of so many: the rest stays
    if before and found[1] in _SOME and _GROWS_IN_PIECES.search(rest) and not _EATEN.search(found[0].rstrip()):
        return f"{rest} check it over"  # what grows in pieces is picked over, however many there were
    if not bad and there:
        return f"{rest} check it over"  # nobody knows of how many
    if dozens := _DOZENS.search(rest):
        return _dozens_less(rest, dozens, bad) or text
    if bad and there and _value(there[1]) > bad and "ok" not in rest and "good" not in rest:
        rest = f"{rest[: there.start()]}{_value(there[1]) - bad}{rest[there.end() :]}"
    return rest if there or re.search(r"\b(?:rest|others|but)\b", text) else text


def _without_what_was_used(text: str) -> str:
    """The text with what is left of a box or a number: `tray of eggs minus 5` are 25, and nothing is bad."""
    found = _MINUS.search(text)
    if not found:
        return text
    rest = f"{text[: found.start()]} {text[found.end() :]}"
    off = _value(found[1]) or 1
    if eggs := _BOX_OF_EGGS.match(rest):
        held = _EGGS_IN[eggs[1] or eggs[2]]
        return f"{held - off} eggs{rest[eggs.end() :]}" if off < held else text
    if dozens := _DOZENS.search(rest):
        return _dozens_less(rest, dozens, off) or text
    if there := _COUNT.search(rest):
        left = _value(there[1]) - off
        return f"{rest[: there.start()]}{left}{rest[there.end() :]}" if left > 0 else rest
    if _SERVING.search(found[0]):
        return f"{rest} {'3/4 left' if off < _ONE_OR_TWO else 'half left'}"
    if _PACK.search(text[: found.start()]) or _PIECE.search(found[0]):
        return f"{rest} {'nearly full' if off <= _ONE_OR_TWO else '3/4 left'}"
    return rest if re.search(r"[a-z]{3}", text[: found.start()]) else text


def _dozens_less(text: str, dozens: re.Match[str], off: int) -> str:
    """The text with what is left of its dozens, or of half of one; nothing where more would be off than there were."""
    held = 6 if dozens["half"] else 12 * _value(dozens["many"] or "1")
    return f"{text[: dozens.start()]}{held - off}{text[dozens.end() :]}" if off < held else ""


def pieces_gone(text: str) -> str:
    """A plain text with so many pieces that are gone as taken off the rest, and little where that is all there is."""
    return _PIECES_GONE.sub(r" minus \1 \2", _ALL_BUT_GONE.sub(" nearly empty", text))


def counted_inside(text: str) -> str:
    """The text with what is really in a box for what the box is made for: `18 carton, 15 inside` are 15."""
    found = _OF_SO_MANY.search(text)
    if found and int(found[1]) < int(found[2]):
        return f"{text[: found.start()]}{found[1]}{text[found.end() :]}"
    found = _LEFT_IN_BOX.search(text)
    if found:
        return f"{found[2]} {found[1]}{text[found.end() :]}"
    found = _INSIDE.search(text)
    if not found or (found[2] and not _BOX_ALONE.search(text)):
        return text
    rest = f"{text[: found.start()]} {text[found.end() :]}"
    return f"{found[1] or found[2]} {_BOX_ALONE.sub(' ', _SIZE_OF_BOX.sub(' ', rest))}"


def _value(word: str) -> int:
    """A whole number in digits or words; 0 for `some`."""
    return int(word) if word.isdigit() else WHOLE_WORDS.get(word, 0)
