"""Lines that name no food: what somebody says beside the list, and the headings of a list."""

import re

from calmlarder.matching.kitchen_told import kitchen_lacks
from calmlarder.matching.lacks import NotThere
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import DISHES, GENERIC, HARMLESS, NOTES, PRODUCTS, is_note
from calmlarder.matching.names.plain_words import PLAIN_WORDS
from calmlarder.matching.names.words import SMALL, plain, singular
from calmlarder.matching.part import WORD
from calmlarder.matching.several_foods.pieces import says_amount

_LEAD = (
    r"(?:(?:and|so|ok|okay|right|righto|well|now|sorry|anyway|oh|um|erm|hmm|hi|hello|hey|hiya|please|pls|ps|nb|note"
    r"|girl|mate|bro|bruv|sis|lads|folks|guys|everyone|love|hun|babe|dude|man|yo|oi|howzit|eish|aye|lol|haha|hola"
    r"|namaste|salaam|alright|team|chef|boss|fam|y'?all|ladies|everybody|sir|ma'?am"
    r"|madam|friends|good (?:morning|evening|afternoon|day)|morning|evening|my dear|dear|arvo|all)(?:[ ,.!:-]+|$))*"
)
_I_THINK = r"(?:(?:i )?(?:think|guess|reckon|believe|hope) )?"
_IN_HERE = r"(?:fridge|cupboard|freezer|larder|pantry|kitchen)s?"
# How a remark begins; what stands behind it must name no food.
_BEGINS = (
    rf"{_I_THINK}(?:that|this|it)(?:'?s| is| was| should be| must be)?"
    r"(?: (?:about|pretty much|basically|literally|honestly|really|more or less|probably|prob))?"
    r" (?:it|all|everything|the lot|your lot|us|the list|all there is)",
    r"(?:here(?:'?s| is| it| we| you)?|there) (?:goes|go|it is|it goes|you go|the list"
    r"|what (?:i|we)(?:'?ve)? (?:have got|have|got))",
    r"(?:this is what |what )?(?:i|we)(?:'?ve)? (?:still )?(?:have got|have|got)(?=[ :.-]*$)",
    r"(?:need|needs|must|have|gotta|got|want|going|gonna|off|should|will|might|ought)(?: to)?(?: to)?"
    r" (?:go|do|order)(?: to)?(?: (?:the|a|some|our|my))?"
    r" (?:shop|shops|shopping|supermarket|big shop|food shop|groceries|market|store)",
    r"(?:the )?(?:shops?|supermarket|market|store) ?(?:is |are |was |were |'?s )?(?:shut|closed|far|open|miles)",
    rf"(?:the |my |our )?{_IN_HERE}(?:'?s)? (?:is|are|looks?|smells?)(?= [a-z])",
    rf"(?:the |my |our )?(?:{_IN_HERE}|house|shelf),?(?: (?:audit|check|roll call|raid|tour|report"
    r"|status|contents|list|inventory|update|stuff|now"
    r"|today|tonight|atm|lah|la|so|time))+",
    r"(?:the |my |our )?(?:top|bottom|middle|lower|upper|second) shelf (?:only|is (?:mine|ours)|mine|ours)"
    r"(?:,? (?:the )?(?:top|bottom|middle|rest|others?)(?: one| shelf)? (?:is|are) (?:(?:mr|mrs|ms|miss) )?[a-z']+)?",
    r"(?:(?:i|we) )?(?:only |just )?(?:(?:have|got|a|an|the|no|one|own) )*"
    r"(?:microwave|oven|hob|stove|cooker|kettle|air ?fryer|pan)(?: (?:only|alone|here|broken|is broken|bust|dead"
    r"|not working|doesn'?t work))*(?: (?:btw|fyi|though|tho|atm|remember|no (?:oven|hob|stove)))*(?=[ ).!]*$)",
    r"what'?s (?:good|up|new|the story)",
    r"nothing (?:too|fancy|spicy|heavy|fried)",
    r"how far",
    r"see wetin dey",
    r"(?:[a-z]+day )?(?:stock ?take|stock check)",
    r"what(?:'?s| is| dey| have i got| have we got| we have(?: got)?| i have(?: got)?| we'?ve got| i'?ve got)"
    rf"(?: left)? (?:in|for|on|at) (?:the |my |our )?(?:{_IN_HERE}|house|shelf|home|cupboards|drawer)",
    r"this is (?:what|everything)",
    r"here'?s? (?:is )?(?:the )?(?:state|list|damage|haul|situation|stuff|lot)(?: (?:of (?:it|things|play)|so far))?",
    r"(?:it'?s|its|it is|things are|looks?|looking)(?: (?:pretty|very|a bit|so|really|all|quite|proper))*"
    r" (?:grim|bleak|dire|tragic|pathetic|embarrassing|desperate|a (?:disaster|shambles|joke|mess|state)|chaos"
    r"|not (?:great|much|good|pretty)|slim|thin)",
    r"(?:back|home|in|out|working|on shift) (?:at|by|from|late|until|till|til) [\w:]+",
    r"(?:home late|on (?:nights|lates|earlies|shift))",
    r"(?:i |we |i'?ve |we'?ve )?(?:just |only )*(?:got|came|come|been) (?:in|home|back)",
    r"if\b",
    r"(?:the |my |our |next |big )?(?:shopping|delivery|groceries|veg box|food shop|order)"
    r" (?:comes?|came|arrives?|arrived|delivered|turned up|is|was|gets here|got here|due|coming|day|not till|not until"
    r"|tomorrow|on)",
    r"(?:not|haven'?t|have not|didn'?t)(?: really)? (?:gone|been|done|had time)(?: to| for)?"
    r"(?: (?:the|a|any|some|our|my))?(?: big| food| weekly)? (?:shops?|shopping|supermarket)",
    rf"(?:the |my |our |its |it'?s )?{_IN_HERE}(?:'?s)?(?: (?:is|are|looks|looking))?"
    r"(?: (?:a bit|kind of|kinda|pretty|quite|nearly|almost|basically|very|so|looking))*"
    r" (?:bare|empty|sad|full|rammed|stuffed|chaos|a mess|a state|tiny|broken|bust)",
    r"(?:(?:it'?s|its|bit|a bit|rather|pretty|very|all) )*"
    r"(?:bare|skint|broke|slim pickings|(?:not|nowt|nothing|no) (?:a lot|much|loads|else|exciting|fancy)"
    r"(?: (?:in|left|here|really|to go on|else))*)"
    r"(?=$|[ ,.!] ?(?:tbh|lol|sorry|today|now|atm|this week|until|till|til)\b)",
    r"pay ?day",
    r"(?:no idea|any ideas?|help me|help|dunno|not sure)(?: what (?:to|i|we|can))?",
    r"what (?:can|could|should|shall|do) (?:i|we|you) (?:make|cook|eat|do|have)",
    r"(?:thanks?|thank you|ta|cheers|thx|tia|lol|haha+|bye|fingers crossed|good luck|wish me luck|enjoy)",
    r"(?:please |pls )?(?:no judgement|no judging|don'?t judge|be nice|be kind)",
    r"(?:rest|everything else|all else|other stuff|anything else)(?: (?:is|was))?(?: all)?"
    r"(?: (?:gone|mine|theirs|hers|his|rubbish|off|ok|fine|later|tbc|to follow))?",
    r"(?:checked|counted|typed|updated|last checked|as of)(?= )",
)
_REMARK = LatePattern(rf"{_LEAD}(?:{'|'.join(_BEGINS)})(?![\w'])")
# A fridge that stood warm; what it says of freezers behind it names no food.
_NO_POWER = LatePattern(
    rf"{_LEAD}(?:there'?s |there is |we have |had )?"
    r"(?:(?:no|without) (?:light|power|electric(?:ity)?|current)\b(?! (?:bars?|balls?|kettle))"
    r"|(?:the )?(?:power|electric(?:ity)?|current|lights?)(?:'?s| is| was| went| has been)? (?:off|out|gone|cut)\b"
    r"|(?:power|electricity) ?cuts?\b)(?! (?:needed|required))"
)
# Four hours and thawed things: what the US FDA and the UK FSA tell the public, from memory, not verified.
_AFTER_NO_POWER = (
    "nothing was added; what stood warm for over four hours is best thrown away (F6, or `larder remove`), and "
    "what has thawed is eaten today: write `thawed today` beside it"
)
_UNTIL = frozenset({"til"})  # sesame as well, and no food beside a day
_PLACES = (
    r"fridges?|freezers?|cupboards?|pantry|larder|door|shelf|shelves|drawers?|crisper|counter|worktop|side"
    r"|(?:top|bottom|middle|lower|upper|back|salad|veg|fruit|second) (?:shelf|drawer|box)|fruit ?bowl"
    r"|veg ?(?:box|rack|drawer|basket)|bread ?bin|spice (?:rack|drawer)|window ?sill|garage|cellar|garden|balcony"
    r"|dry (?:goods|stuff|store)|store ?cupboard|bits|extras|misc|odds (?:and|&|n) ends|basics|staples|always have"
    r"|others?|leftovers?|fresh|dry|tins?|cans|tinned|frozen|jars"
)
_WHOSE = (
    r"mine|ours|my stuff|our stuff|my shelf|me|us|shared|shared stuff|communal|house|everyone(?:'?s)?|theirs"
    r"|not mine|not ours|hands off|(?:flat|house|room)mates?'?s?(?: stuff| shelf)?|others'?|kids'?"
)
_HEADING = LatePattern(
    rf"(?:(?:in |on |from |out of )?(?:the |my |our )?(?:{_PLACES})"
    rf"(?: (?:stuff|things|bits?|food|items|part|section|contents|list))?|(?:{_WHOSE}))\s*[:\-–.]*\s*"
)
_A_SENTENCE = 5  # words behind a remark's beginning, of which a strange one is no food: ours
_NOTHING_WITH = LatePattern(rf"{_LEAD}nothing (?:with|containing) \w+")
_NO_HEADING = frozenset({"leftover", "leftovers", "kids"})  # they stand for food as well, unless a colon is behind
_ENDS = " .!?,;()[]/'\"-~*#:"


# What nobody eats, or no person.
_ANIMALS = r"(?:cat|dog|kitten|puppy|pet|hamster|guinea pig|bird|fish|hen)"
_NO_FOOD = LatePattern(
    rf"(?:[\w,.]+ )*?{_ANIMALS}(?:'?s)? (?:wet |dry |raw |tinned )?(?:food|tucker|treats?|kibble"
    rf"|pellets|nibbles"
    rf"|litter|bones?|bait|pouch(?:es)?"
    r"|sachets?|tins?)\b.*|(?:\d+ )?(?:pouch(?:es)?|sachets?|tins|food|treats|biscuits) (?:is |are )?for"
    r" (?:the |my |our )?"
    rf"{_ANIMALS}s?\b.*|(?:(?:half|an?|the|some|\d+) )*dog rolls?(?: \d+)?|(?:the )?(?:cat|dog|kitten|puppy)'?s?"
    rf" ?[-–:] ?(?:(?:half|a|an|one|1|1/2|\d) )*(?:tins?"
    rf"|cans?|pouch(?:es)?"
    r"|trays?|sachets?)|(?:gas |cooker |hob |bbq |cigarette |the )*lighters?|(?:a |box(?:es)? of )?matches"
    r"|bird ?seeds?\b.*"
    r"|(?:[\w,.]+ )*?(?:cling ?film|tin ?foil|kitchen ?foil|bin ?(?:bags?|liners?)|washing up liquid|batteries|loo roll"
    r"|cleaning vinegar|toilet (?:roll|paper)|kitchen ?roll|paper towels?|dishwasher tablets?|sandwich bags"
    r"|freezer bags|candles)\b.*"
    r"|(?:(?:\d+|half|some|spare|more|an?) )*(?:(?:dish |washing |hand |bar of )?soap|(?:compost|rubbish|caddy) bags?"
    r"|(?:new|washing up|kitchen|dish|scrubbing) sponges?|(?:baking|greaseproof|parchment) paper|(?:alumini?um )?foil"
    r"|light ?bulbs?|lunch ?box(?:es)?|tupperware|spuli|spulmittel|liquide vaisselle)"
)
# `bait - squid - not food`: whatever it is called, it is not there to be eaten.
_SAID_NO_FOOD = LatePattern(
    r"[^;&+]*\b(?:them'?s|that'?s|it'?s|this is|these are|they'?re|those are) for (?:the |my |our )"
    r"(?:cats?|dogs?|hens|pigs?|ferrets?|rabbits?|chickens)\b[ ).!]*"
    r"|[^,;&+]*[,;(]? ?\b(?:(?:is |are )?not|isn'?t|aren'?t|no) (?:a |for |any )?(?:food|eating|edible"
    r"|human consumption)\b[ ).!]*|(?:[\w,.'-]+ )*?\(?(?:cosmetics?|eye ?drops|insulin|face masks?"
    r"|nail (?:varnish|polish)|fishing bait|medicines?|medication|antibiotics?|inhalers?|vaccines?"
    r"|vitamin [a-e]\d* (?:drops|tablets|tabs|capsules|spray)|(?:multi)?vitamins"
    r"|(?:electrolyte|rehydration|iron|magnesium|fibre|salt) (?:tabs|tablets)"
    r"|(?:worm(?:ing)?|flea|tick|blood pressure|bp|heart|thyroid|statin|indigestion|antacid|sleeping|pain|travel"
    r"|water|allergy|hay ?fever) (?:tab|tablet|pill|med|capsule)s?|pills|paracetamol|ibuprofen|aspirin|antihistamines?"
    r"|suppositor(?:y|ies)|cough (?:syrup|mixture|medicine)|(?:baby |bottle |sterili[sz]ed )+teats?"
    r"|probiotic (?:capsules|tablets)|epi ?pens?|(?:worming|cattle|sheep) drench|wormer"
    r"|(?:prenatal|vitamin|multivitamin|melatonin|fiber|fibre|sleep|probiotic|iron|calcium) gumm(?:y|ies)"
    r"(?: \w+)?|prenatals?"
    r"|(?:pain )?pills|scob(?:y|ies)|(?:kombucha|vinegar) (?:scob(?:y|ies)|mother)"
    r"|(?:tempeh|natto|yogh?urt|kefir|cheese) (?:starter|culture|spores)|koji spores"
    r"|(?:vinegar|bicarb(?:onate)?(?: of soda)?|baking soda|soda crystals|borax|lemons?) for (?:the"
    r" )?(?:cleaning|descaling"
    r"|drains?|windows|kettle|washing|laundry)|(?:fluid |drinks? )?thickener(?: (?:tin|tub|powder|sachets?))?"
    r"|compost (?:bowl|bin|bucket|bag|caddy|tub|pail)"
    r"|teething (?:rings?|gel)|mos(?:quito|sie) coils?|mozzie coils?|play ?d(?:ough|oh)"
    r"|(?:dahlia|begonia) tubers|(?:tulip|daffodil|hyacinth|crocus|lily) bulbs"
    r"|seed (?:spuds|tatties)|seed potato(?:es)?"
    r"|(?:empty )?(?:casserole|pie|baking) dish,? (?:is )?(?:empty|to (?:give|go) back)"
    r"|(?<!white )bait|holy water|(?:distilled|battery) water|night ?crawlers|penicillin|creatine"
    r"|expres+ed (?:breast ?)?milk|breast ?milk|(?:frozen )?ebm|pumped milk|colostrum|donor milk"
    r"|(?:face|hand|body|sun|shaving|nappy|eye) (?:cream|butter|lotion|oil)"
    r"|(?:dog|cat|puppy|kitten) (?:meat|chews|biscuits)|camera film|ice ?packs?)\b.*"
    r"|(?:(?:\d+|an?|some|the|of|big|half|bags?|trays?|packs?) )*ice ?cubes\b.*"
    r"|(?:(?:\d+|an?|some|the|of|big|half|bags?|trays?|packs?|blocks?) )*(?:crushed )?ice(?: bags?| trays?)?"
)

# Boxes that stand ready for somebody: nobody is told what is in them.
_LUNCHES_OF = LatePattern(
    r"(?:[a-z]+'?s?'? )?(?:the |my )?(?:kid|child|children|boy|girl|lad)'?s?'? (?:school |packed )?"
    r"(?:lunches|lunch ?boxes)(?![a-z])(?:,? (?:on )?(?:the )?(?:top|middle|bottom)? ?shelf)?"
)


def is_heading(text: str) -> bool:
    """Whether a plain line only heads others: `freezer:`, `mine`."""
    whole = text.strip()
    bare = whole.strip(_ENDS)
    return bool(bare) and bool(_HEADING.fullmatch(bare)) and (bare not in _NO_HEADING or whole.endswith(":"))


def refuse_remarks(text: str, lexicon: Lexicon) -> None:
    """Nothing, where a plain text may name a food. Raises NotThere where it is a remark or a heading."""
    whole = text.strip()
    bare = whole.strip(_ENDS)
    if is_heading(whole):
        raise NotThere(
            "it is a heading and names no food",
            "what stands below `freezer` or `not mine` is read with it; write any other place beside a thing",
        )
    head, *more = re.split(r"[,;&+]|\band\b", bare)
    alone = not any(_may_be_food(word, lexicon) for piece in more for word in WORD.findall(piece))
    no_food = alone and _NO_FOOD.fullmatch(head)
    if bare not in lexicon.spelt and (no_food or _SAID_NO_FOOD.fullmatch(bare)):
        raise NotThere("it names nothing that people eat", "nothing was added")
    lunches = _LUNCHES_OF.match(bare)
    if lunches and not any(_is_food(word, lexicon) for word in WORD.findall(bare[lunches.end() :])):
        raise NotThere("it is made ready for somebody, and what is in it is not told", "nothing was added")
    if _NOTHING_WITH.match(bare):
        raise NotThere("it says what is not wanted and names no food that is there", "nothing was added")
    if kitchen_lacks(bare):
        raise NotThere(
            "it tells what the kitchen lacks and names no food",
            "a dinner from this list does without; for every day it is set with the limits",
        )
    if _NO_POWER.match(bare):
        raise NotThere("it tells of no power and names no food", _AFTER_NO_POWER)
    said = _REMARK.match(bare)
    behind = WORD.findall(bare[said.end() :]) if said else []
    may_be = _is_food if len(behind) >= _A_SENTENCE else _may_be_food
    if said and not any(may_be(word, lexicon) for word in behind):
        raise NotThere("it names no food", "nothing was added")


# Words that a list of things has no use for: a sentence has them.
_OF_A_SENTENCE = frozenset({
    "i", "im", "i'm", "ill", "i'll", "ive", "we", "we're", "weve", "me", "us", "my", "our", "you", "your", "you're",
    "u",
    "he", "she", "she's", "he's", "they", "it", "it's", "its", "is", "are", "was", "were", "be", "been", "am", "will",
    "would", "can", "can't", "could", "should", "must", "do", "does", "did", "don't", "dont", "won't", "have", "has",
    "had", "let", "what", "what's", "whats", "who", "how", "when", "why", "if", "so", "but", "because", "cos", "this",
    "that", "that's", "thats", "these", "there", "here", "then", "just", "everything", "nothing", "anything", "please",
    "pls", "sorry", "lol", "dunno", "need", "make", "go", "going", "trying", "to",
})  # fmt: skip
_FEWEST, _LONG = 3, 7  # words of a remark that no beginning tells, and from which one may be strange: ours
_WHOSE_IT_IS = frozenset({"my", "our", "your", "its"})  # they stand before things, too
_FOODISH = GENERIC | PRODUCTS | DISHES - {"thing", "stick"}


def says_no_food(text: str, lexicon: Lexicon) -> bool:
    """Whether a line that names no food clearly is a sentence of common English, and no thing by another name."""
    words = [found.casefold() for found in WORD.findall(plain(text))]
    ones = [singular(word) for word in words]
    if len(words) < _FEWEST or (_OF_A_SENTENCE - _WHOSE_IT_IS).isdisjoint(words):
        return False
    if any((one in lexicon.alone or one in _FOODISH) and one not in NOTES | HARMLESS | PLAIN_WORDS for one in ones):
        return False
    strange = [word for word, one in zip(words, ones, strict=True) if not _is_common(word, one)]
    return len(strange) <= (len(words) >= _LONG)


def _is_common(word: str, one: str) -> bool:
    return word in _OF_A_SENTENCE or one in SMALL or is_note(one) or is_note(word) or word[0].isdigit() or "'" in word


def _is_food(word: str, lexicon: Lexicon) -> bool:
    """Whether a word by itself names a food."""
    one = singular(word)
    return one in lexicon.alone and one not in _UNTIL | NOTES | HARMLESS


def _may_be_food(word: str, lexicon: Lexicon) -> bool:
    """Whether a word by itself names a food, or is a strange one that may."""
    one = singular(word)
    if one in lexicon.alone:
        return _is_food(word, lexicon)
    return one not in lexicon.words and not is_note(one) and len(one) > 3 and not says_amount(word)
