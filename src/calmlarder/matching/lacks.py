"""Lines that name what is not there: nothing is left of it, it must be bought, or nobody here eats it."""

from calmlarder.matching.late_patterns import LatePattern

_WHO = (
    r"(?:we|i|he|she|they|you|nobody|no one|noone|none of us|neither of us|everyone|everybody|the family|our family"
    r"|(?:(?:my|our|the) )?(?:husband|wife|partner|mum|mom|dad|son|daughter|kids?|children|housemates?|flatmates?"
    r"|roommates?|household|house|baby|toddler)|(?:my|our) [a-z]+)"
)
_DENIES = (
    r"(?:(?:do|does|did|can|could|will|would|must|should|may)(?: not|n'?t|nt)|can'?t|won'?t|cannot|never|no longer"
    r"|not allowed to"
    r"|(?:am|are|is)(?:n'?t| not) (?:allowed|able) to|are allergic to|is allergic to|am allergic to|avoids?)"
)
_TAKES = r"(?:take|eat|have|use|drink|tolerate|touch|cook|like|want|do|stand)"
_WHEN = r"(?! (?:it|them|this|that|these|those|until|till|before|after)\b)"
_NOT_EATEN = LatePattern(
    rf"^{_WHO} (?:{_DENIES}|really {_DENIES})(?: (?:ever|really|normally|usually))? {_TAKES}s?{_WHEN}\b"
    rf"|^(?:nobody|no one|noone|none of us|neither of us)(?: (?:here|at home|in the house|in this house))?"
    rf"(?: (?:can|may|will|ever))? {_TAKES}s?{_WHEN}\b"
    rf"|^{_WHO} (?:hates?|dislikes?|detests?|can'?t stand)\b|^(?:don'?t|do not|doesn'?t) (?:like|eat|take|tolerate|do)"
    rf"{_WHEN}\b|^(?:{_WHO}|we'?re|i'?m|he'?s|she'?s)(?: are| is| am)?(?: not|n't) allowed\b"
    r"|^never (?:any|eat|eats|take|have|use|buy)\b"
    r"|\ballergic to\b|\b(?:intolerant|intolerance) (?:of|to)\b|^[a-z ]+ (?:allergy|intolerance)$"
    rf"|\b(?:we|i) {_DENIES} {_TAKES}(?: (?:it|them|any|this|that|these|those))?$"
    rf"|^(?:can'?t|cannot|must not|mustn'?t|not allowed to) (?:take|eat|have|drink|tolerate|touch){_WHEN}\b",
    needs=(
        "not ",
        "'t ",
        "nt ",
        "never ",
        "no longer",
        "nobody",
        "no one",
        "noone",
        "none of",
        "neither",
        "avoid",
        "hate",
        "dislike",
        "detest",
        "allerg",
        "intoleran",
    ),
)
# `we do not have eggs` tells of today, `we cannot have eggs` of every day.
_HAVE_NONE = LatePattern(
    r"\b(?:(?:do|does|did)(?: not|n'?t|nt)|(?:have|has)(?: not|n'?t|nt)|not) (?:have|got|get|buy|find|find any|bring)"
    r"(?! time| to)\b|\b(?:have|has|had)n'?t any\b|^forgot (?:to (?:buy|get) )?(?:the )?(?=[a-z])",
    needs=("not ", "'t ", "nt ", "forgot"),
)
_LEAD = (
    r"(?:(?:still|sadly|again|also|sorry|oh|ok|but|and|just|now|currently|there(?:'?s| is| are|re)?|we|i|we'?re|i'?m"
    r"|we'?ve|i'?ve|are|am|have|has|got|all|clean|completely|totally)[ ,:!]+)*"
)
# Words behind `no` that belong to the name of a food, or say nothing of how much is there.
_NO_LACK = (
    r"(?!added|knead|idea|label|date|clue|name|brand|bake|waste|rush|frills|need|thanks|reduced|1\b|\d"
    r"|(?:salt|sugar|fat|lactose|gluten|dairy|meat|egg|onion|garlic|oil|wheat|nut|soya?|alcohol) "
    r"(?!left|no|now|again|at|any|in|here|this|today|more|or|and|nor|until|till|yet)[a-z])"
)
_DONE_TO_IT = r"(?!to (?!buy|get)|us(?:e|ed|ing)\b|eat(?:en|ing)?\b|cook(?:ed|ing)?\b|finish|going|go\b|thaw|wash|peel)"
_NONE_OF_IT = LatePattern(
    rf"^{_LEAD}(?:no|zero|not any|not a single|none of|no more) (?:the )?{_NO_LACK}(?=\w)(?!.*\bwith\b)"
    rf"|^{_LEAD}(?:run |ran )?out of (?!date|the (?:freezer|fridge|oven|pack|tin)|season|freezer|fridge|\d)"
    rf"|^{_LEAD}(?:need|needs|must|gotta|got to|have to|should|to|buy|remember to|go)(?: (?:to|and|go|remember))* ?"
    rf"(?:buy|get|order|fetch|pick up)? ?(?:some |more |any )?{_DONE_TO_IT}"
    r"(?<=(?:eed|buy|get|der|tch| up|ome|ore|any) )(?=\w)"
    r"|^(?:get (?:some|more)|nothing left|none left)\b|\bdon finish\b"
    r"|^(?:shopping(?: list)?|to (?:buy|get)|buy|groceries(?: list)?|needs?|needed|wanted) ?[:\-]",
    needs=(
        "no ",
        "zero ",
        "not a",
        "none ",
        "out of ",
        "need",
        "buy",
        "get ",
        "order ",
        "fetch ",
        " up ",
        "some ",
        "more ",
        "any ",
        "nothing ",
        "finish",
        "shopping",
        "to get",
        "groceries",
        "wanted",
    ),
)
_AT_THE_END = LatePattern(
    r"\b(?:none left|all gone|none|nothing left|nahi(?: hai)?|ran out|run out"
    r"|(?:has |have |is |are |don )?finish(?:ed)?|(?:is|are|all) out|no more|used up|all used|all eaten"
    r"|eaten up|gone|empty|(?:need|must|have|got|gotta|has|to)(?: to)? (?:buy|get)(?: (?:it|them|some|more))?)$"
    r"|\b(?:none|all gone|no more|(?:ran|run|sold|clean|all) out)(?: left)? (?:till?|until)\b.*$"
    r"|[?:,=\-] ?(?:no|nope|nil|nada|zero|0)$|[,(\-] ?(?:need(?:ed)?|(?:to |please )?(?:buy|get)(?: (?:some|more))?)$"
)
# What is said to be gone in part is still there: `half gone`, `2 of them gone`, `nearly empty`; so is what is past a
# day (`date gone`) or changed (`soft, gone`).
_IN_PART = LatePattern(
    r"(?:\b(?:half|third|quarter|thirds|quarters|mostly|most|nearly|almost|some|few|bit|one|two|three|four|five|six"
    r"|date|by|before|not|pretty much|about|long|tops?|leaves|ends?|stalks?|tips?|label|lid|skins?|stickers?"
    r"|fizz|bubbles|smell|seal)"
    r"|\d%?(?: (?!all\b)[a-z]+)?)(?: (?:of (?:it|them|the \w+)|is|are|has|have|already|all))*"
    r" (?:gone|empty|finish(?:ed)?|out|used up)$"
    r"|\b(?:nearly|almost|next to|pretty much) (?:none|nothing|no)(?: left)?$"
)
# `liam ate the ham`; what is eaten in part is still there.
_EATEN_BY = LatePattern(
    r"^(?:(?:i|we) )?(?:should|must|will|gonna|going to|need to|have to|better|best) (?:probably |prob |just )?"
    r"(?:bin|chuck(?: out)?|toss|throw (?:away|out)) (?:the|my|our|that)\b"
    r"|^(?:[a-z]+ )?(?:used (?:up )?(?:the|my|our) last (?:of|bits? of|few|two|three)\b|"
    r"(?:ate|drank|scoffed|finished|binned|chucked(?: out)?|threw (?:away|out)) (?:up )?(?:all )?(?:of )?"
    r"(?:the|my|our)\b)(?! (?:half|some|most|other|rest))(?!.*\b(?:left|half|rest|but|some|most|remain)\b)",
    needs=(
        "ate ",
        "drank ",
        "scoffed ",
        "finished ",
        "binned ",
        "chucked ",
        "threw ",
        "used ",
        "bin ",
        "chuck ",
        "toss ",
        "throw ",
    ),
)
# `had fish yesterday` tells of what was eaten.
_HAD = LatePattern(
    r"^(?:we |i |they )?(?:had|ate) [a-z ]{3,30} (?:yesterday|last night|for (?:lunch|dinner|tea|breakfast)"
    r"|on (?:mon|tues|wednes|thurs|fri|satur|sun)day)$",
    needs=("had ", "ate "),
)
# `no tinned, only coconut milk powder`: what is there stands behind.
_BUT_SOME = LatePattern(
    r"^(?:(?:there'?s|theres|we have|i have|have|got|ive got|we've got) )?(?:no|not any|(?:run |ran )?out of) "
    r"(?!(?:idea|label|date|clue|brand|name)\b)[^,;:&+]{2,40}?(?:\s*[,;-]+\s*|\s+)(?:only|but|just) "
    r"(?:(?:have|got|there'?s|theres|we have|i have|only|some|the) )*"
    r"(?!(?:a )?(?:few|bit|little)\b|not\b|no\b)(?=[a-z\d])"
)
_ENDS = " .!?,;:()[]/'\"-~"
_TRAILING = LatePattern(  # `finish today` is what to do with it
    r"(?<=[a-z])(?!(?<=finish)[ ,]+(?:today|now)\b)"
    r"(?:[ ,.!]+(?:o+|oh|sha|lah|la|yesterday|today|now|again|already|sadly|sorry|last night|this morning"
    r"|at the moment|on (?:mon|tues|wednes|thurs|fri|satur|sun)day))+$"
)
_FACE = LatePattern(r"\s*[:;=]['-]?[()\[\]/|dp]+\s*$")


class NotThere(ValueError):
    """A line names what is not in the larder; its text says so, `remedy` what a cook may do."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(what)
        self.remedy = remedy


def what_there_is(text: str) -> str:
    """The text, or what a line has where it first tells what it lacks: `no rice but loads of quinoa`."""
    return _BUT_SOME.sub("", text)


def refuse_lacks(text: str) -> None:
    """Nothing, where a plain text tells of what is there. Raises NotThere where it tells of what is not."""
    whole = _FACE.sub("", text).strip(_ENDS)
    bare = _TRAILING.sub("", whole).strip(_ENDS)
    if _NOT_EATEN.search(bare) and not _HAVE_NONE.search(bare):
        raise NotThere(
            "it says that this is not eaten here", "nothing was added; what somebody never eats is set with that person"
        )
    if (
        _EATEN_BY.search(bare)
        or _HAD.search(whole)
        or _HAVE_NONE.search(bare)
        or _NONE_OF_IT.search(bare)
        or (_AT_THE_END.search(bare) and not _IN_PART.search(bare))
    ):
        raise NotThere("it says that there is none", "nothing was added; write it again when some is there")
