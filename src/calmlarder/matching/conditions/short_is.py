"""The short form of `is` behind a food's word, which is nobody's possessive: `basil's gone slimy`."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.words import plain, singular
from calmlarder.matching.owners.owner_words import PEOPLE

# Whoever such words are said of owns nothing: `basil's gone slimy`.
_IS = LatePattern(
    r"\b([a-z]{3,})'s (?=(?:now|all|mostly|mainly|basically|completely|totally|gone|going|getting|looking|turned"
    r"|turning"
    r"|not|still|just|really|very|a bit|bit|pretty|rather|quite|a goner|in the (?:bin|compost|trash)|on (?:the turn|its"
    r"|the way)|past|nearly|almost|half|compost|history|mush|toast|soup|slimy|mouldy|moldy|rotten|off\b|bad|fuzzy|furry"
    r"|limp|wilt|soft|bendy|brown(?:ing)?\b(?! rice)|sad|tired|eaten|finished|binned|used up|empty|seen better|had it"
    r"|done|dead|dying|good|fine|ok\b|okay|fresh(?:ish)?$|starting|about to|best|to be|for the bin))",
    needs=("'s ",),
)


def is_said_of_it(text: str, lexicon: Lexicon) -> str:
    """A plain line with `is` for the short form of it behind a food's word: what follows is a state, and nobody's."""

    def spelt_out(found: re.Match[str]) -> str:
        word = found[1]
        is_food = bool({plain(word), singular(plain(word))} & lexicon.words) and word not in PEOPLE
        return f"{word} is " if is_food else found[0]

    return _IS.sub(spelt_out, text) if "'s " in text else text
