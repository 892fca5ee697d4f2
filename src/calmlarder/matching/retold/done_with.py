"""What is said to be gone, used up or on its way to the bin, put plainly: `slimy, tossing it`, `used the last one`."""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.retold.turned_to import TURNED_TO, freshness, is_in_a_list, nearly_there, told_first

THROWN, USED_UP, GIVEN, MUSH = "thrown away", "all used up", "given away", "past eating"

_IT = (
    r"(?:it|them|'?em|this|these|those|the (?:whole )?(?:lot|thing|rest)|all of (?:it|them)"
    r"|the (?:lot|rest) of (?:it|them)|everything)"
)
_WHO = (
    r"(?:(?:i|we|he|she|they|you|someone|somebody|everyone|mum|mom|dad|nan|gran|the kids|kids|husband|wife|partner)"
    r"(?:'ve|'ll|'m|'re|'s| have| has| had| am| are| just| will)* )?(?:(?:just|already|now|so|and|then|sadly|sorry) )*"
)
_WHEN = (
    r"(?:,? (?:last night|yesterday|today|tonight|tomorrow|now|just now|already|earlier|later|sorry|sadly|tbh|lol|oops"
    r"|i'?m afraid|this (?:am|pm|morning|afternoon|evening)|(?:for|at|with|in) (?:the |my |our )?(?:lunch|dinner"
    r"|tea|supper|breakfast|brunch)|(?:on )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|when i can|straight away))*"
)
_END = r"(?=\s*[!.]*\s*(?:$|[,;:.)!]| - ))"
_BEHIND = r"(?:(?<=[,;:(\-–?!.] )|(?<=\())"
_SINK = r"down the (?:sink|drain|loo|toilet|plughole)"
_OUT = rf"(?: (?:out|away|over|{_SINK}|(?:in|into|on) the (?:bin|trash|garbage|compost)))"
_BINS = (
    r"(?:(?:food |green |brown |rubbish |kitchen )?(?:bin|trash|garbage|rubbish|dustbin|skip|compost(?: (?:heap|bin))?"
    r"|caddy|food waste|waste|worms|wormery)(?! bags?| liners?| day))"
)
_BEAST = r"(?:dogs?|cats?|hens|chickens|chooks|ducks|pigs?|birds|rabbits?|mouse|mice|foxes|fox)"
_BEASTS = rf"(?:the |next door'?s |my |our )?{_BEAST}"
_SHALL = (
    r"(?:will|'ll|ll|gonna|going to|gotta|got to|have to|has to|needs? to|should|must|best|better|about to|to|want to"
    r"|meaning to|ought to|prolly|probably|let'?s|pls|please)"
)
_NOT_TO_BE = "".join(
    f"(?<!\\b{word} )"
    for word in (
        "be",
        "get",
        "gets",
        "need",
        "needs",
        "want",
        "wants",
        "best",
        "not",
        "never",
        "to",
        "has",
        "was",
        "been",
        "half",
        "part",
        "partly",
        "moth",
        "mouse",
        "usually",
        "often",
        "only",
        "mostly",
        "being",
    )
)
_THROWN = LatePattern(
    # `will throw`, `should go in the bin`, `to be binned`
    rf"\b(?:{_WHO})?{_SHALL} (?:just |probably |prob |be )*"
    rf"(?:bin(?:ned)?|throw(?:n)?|toss(?:ed)?|chuck(?:ed)?|ditch(?:ed)?|dump(?:ed)?|compost(?:ed)?|get rid of)"
    rf"(?: {_IT})?{_OUT}?{_WHEN}{_END}"
    # `tossing it`, `i binned them`, `chuck it`
    rf"|\b{_WHO}(?:bin(?:ned|ning)?|thr(?:ow(?:n|ing)?|ew)|toss(?:ed|ing)?|chuck(?:ed|ing)?|ditch(?:ed|ing)?"
    rf"|dump(?:ed|ing)?|compost(?:ed|ing)?|pour(?:ed|ing)?(?= [a-z]+ (?:out|away|down)))"
    rf" {_IT}{_OUT}?{_WHEN}{_END}"
    rf"|\b(?:being |been |was |were |all )*(?:thrown|threw|chucked|tossed|poured|tipped|emptied|flung)"
    rf"{_OUT}{_WHEN}{_END}"
    rf"|(?<=[a-z)\d] )(?:being |been |was |were |got |is |are |all )+(?:binned|chucked|dumped|ditched|composted)"
    rf"{_WHEN}{_END}"
    rf"|{_BEHIND}(?:being |been |all |so |now |just )*"
    rf"(?:binned|binning|chucked|ditched|composted|composting|bin|throw|throwing|chucking){_OUT}?{_WHEN}{_END}"
    rf"|(?<=[a-z)\d] ){_NOT_TO_BE}(?:binned|chucked|ditched|composted){_WHEN}{_END}"
    rf"|(?:{_BEHIND}|(?<=[a-z)\d] ))(?:to |for )?(?:throw(?:ing)? ?away|throway|throw(?:ing)? out){_WHEN}{_END}"
    rf"|\bout (?:it|they|she|he) (?:goes|go|went){_WHEN}{_END}"
    # `gone down the sink`, `straight in the bin`, `for the compost`, `gone to the hens`
    rf"|\b(?:(?:it'?s|its|they'?re|is|are|has|have|so|it|they|all|went|gone|going|goes?|straight|headed|heading|off"
    rf"|only"
    rf"|just|ready|fit|one|ended up|destined|belongs?|should|must|needs? to|to) )*(?:{_SINK}"
    rf"|(?:in|into|for|to|on) the {_BINS}){_WHEN}{_END}"
    rf"|\b(?:fed|went|gone|goes|going|gave|given)(?: {_IT})? to {_BEASTS}{_WHEN}{_END}",
    needs=(
        "bin", "throw", "thrown", "threw", "toss", "chuck", "ditch", "dump", "compost", "rid of", "pour", "tip", "empt",
        "flung", "out it", "out they", "out she", "out he", "down the", "trash", "garbage", "rubbish", "skip", "caddy",
        "waste", "worm", " to ",
    ),
)  # fmt: skip
_LAST = (
    r"(?:the |my |our |its )?(?:very )?last (?:(?:few|two|three|one|ones|bits?|slices?|pieces?|drops?|spoonfuls?"
    r"|scraps?|portions?|pots?|bags?|tins?"
    r"|(?!week|night|month|year|time|mon|tue|wed|thu|fri|sat|sun)[a-z]+)|of (?:it|them|those|that))\b"
)
_USED_UP = LatePattern(
    rf"\b{_WHO}(?:finished(?: off)?|ate|eaten|drank|drunk|scoffed|polished off|demolished|devoured|wolfed|nicked|stole)"
    rf" (?:up )?{_IT}(?: (?:up|off|all|down))?{_WHEN}{_END}"
    rf"|(?<=[a-z)\d] ){_NOT_TO_BE}(?:eaten|drunk|scoffed|polished off|demolished)(?: up)?{_WHEN}{_END}"
    rf"|\b(?:the |next door'?s )?{_BEAST} (?:has |have )?(?:got|had|ate|stole|took|nicked|been at) {_IT}{_WHEN}{_END}"
    rf"|\b{_WHO}(?:used|had) (?:up )?(?:it all|them all|all of (?:it|them)|it up|them up|it all up|them all up"
    rf"|the (?:whole )?lot|every last (?:one|bit)|everything)"
    rf"(?: (?:up|in|for|on|making) (?:the |a |my |our )?[a-z' ]+)?{_WHEN}{_END}"
    rf"|{_BEHIND}(?:[a-z']+ (?:has |have )?)?used {_IT}{_WHEN}"
    rf"(?: (?:up|in|for|on|making) (?:the |a |my |our )?[a-z' ]+)?{_WHEN}{_END}"
    rf"|\b{_WHO}(?:used|ate|had|finished|drank|took|nabbed|nicked|scoffed|eaten|needed) (?:up )?{_LAST}[^,;()]*"
    rf"|{_BEHIND}(?:all |been |was |were |got )*(?:eaten|drunk|polished off|scoffed|finished(?: off)?|used up)"
    rf"(?: up)?{_WHEN}{_END}|\((?:all |it'?s |they'?re )*gone{_WHEN}{_END}",
    needs=(
        "(gone", " gone)", "finished", "ate ", "eaten", "drank", "drunk", "scoffed", "polished", "demolished",
        "devoured", "wolfed", "nicked", "stole", "last ", " it", " them", " all", " lot", "used up", " up",
        "everything",
    ),
)  # fmt: skip
_GIVEN = LatePattern(
    rf"\b{_WHO}(?:gave|given|giving)(?: {_IT})? (?:away|to (?:the |my |our |next )?[a-z' ]+?){_WHEN}{_END}",
    needs=("gave ", "given ", "giving "),
)
# What is said of some of them: `few slimy ones chucked`, `half of it eaten`, `outer leaves in the bin`.
_OF_SOME = LatePattern(
    r"(?:^|[^a-z\d])(?:few|some|couple|half|third|quarter|most|mostly|nearly|almost|one|two|three|four|\d+%?|ones"
    r"|bits?|ends?"
    r"|tops?|leaf|leaves|stalks?|stems?|skins?|crusts?|peel|rinds?|bones?|outsides?|outer|lids?|label|rest"
    r"|not|never|nothing|don'?t|dont|no|isn'?t|wasn'?t|until|till|before|if|or|unless|than|date|water|liquid|juices?"
    r"|brine)"
    r"(?: (?:of (?:it|them|these|those)|slimy|mouldy|bad|soft|went|was|were|had|got|has|have|been|is|are|already|just|i"
    r"|we))*"
    r"[ ,]*$"
)
# `basil yellow -> throw`: an arrow tells where it goes.
_ARROW = LatePattern(
    rf"\s*(?:→|➔|⇒|-{{1,2}}>|=>)\s*(?:to |in |into )?(?:the )?"
    rf"(?:{_BINS}|throw(?: (?:it|away|out))*|toss|chuck|bin it|hens|pigs|dog)"
    r"(?=\s*(?:$|[,;.)]))",
    needs=("→", "➔", "⇒", "->", "=>"),
)
_NOT_NOW = LatePattern(r"\b(?:half|some|most|a few|might|maybe|may|could|if|unless|or|before|else)\b")
_NAMED = LatePattern(r"[a-z]{3}")


def done_with(text: str) -> str:
    """A plain line with `thrown away`, `all used up` or `given away` for such words, if said of all of it."""
    text = _ARROW.sub(f", {THROWN}", freshness(nearly_there(told_first(text))))
    for shape, plainly in ((TURNED_TO, MUSH), (_THROWN, THROWN), (_USED_UP, USED_UP), (_GIVEN, GIVEN)):
        found = shape.search(text)
        while found is not None:
            before, start = text[: found.start()], found.end()
            listed = shape is TURNED_TO and is_in_a_list(text, found.start())
            of_all = not listed and not _OF_SOME.search(before) and not _NOT_NOW.search(found[0])
            if of_all and _NAMED.search(before):
                before = f"{before.rstrip(' ,;:.(-')}, {plainly}"
                text, start = f"{before} {text[found.end() :]}", len(before)
            found = shape.search(text, start)
    return text
