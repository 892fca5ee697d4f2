"""A line as it was typed, put in the words in which the rest of this room reads; each module has one sort of thing."""

import re

from calmlarder.matching.amounts.amounts_in_short import amounts_in_short
from calmlarder.matching.amounts.amounts_otherwise import amounts_otherwise
from calmlarder.matching.amounts.measures import MEASURE_WORDS
from calmlarder.matching.amounts.shares import shares_plainly
from calmlarder.matching.amounts.some_of_them import counted_apart_by_state
from calmlarder.matching.amounts.taken_off import pieces_gone
from calmlarder.matching.amounts.told_in_words import amounts_plainly
from calmlarder.matching.conditions.bubbling import signs_told
from calmlarder.matching.conditions.misspelt_conditions import conditions_mended
from calmlarder.matching.conditions.short_is import is_said_of_it
from calmlarder.matching.dates.days_behind import days_behind
from calmlarder.matching.dates.days_in_other_words import days_plainly
from calmlarder.matching.lacks import what_there_is
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import as_one
from calmlarder.matching.owners.kin_in_words import kin_in_words
from calmlarder.matching.retold.accents import told_by_accents
from calmlarder.matching.retold.alliums_inside import alliums_inside
from calmlarder.matching.retold.by_the_way import by_the_way
from calmlarder.matching.retold.cooking_pots import in_pots
from calmlarder.matching.retold.descriptions import without_descriptions
from calmlarder.matching.retold.dishes_in_short import dishes_in_short
from calmlarder.matching.retold.dishes_with_parts import with_parts
from calmlarder.matching.retold.done_with import done_with
from calmlarder.matching.retold.fat_of_dairy import fat_told
from calmlarder.matching.retold.greens_of_stalks import greens_told
from calmlarder.matching.retold.in_a_hurry import in_a_hurry
from calmlarder.matching.retold.in_short import in_short
from calmlarder.matching.retold.kinds_and_fillings import as_named
from calmlarder.matching.retold.made_ready import made_ready
from calmlarder.matching.retold.other_tongues import in_english
from calmlarder.matching.retold.packed_in import packed_in
from calmlarder.matching.retold.phrasing import plainly_put
from calmlarder.matching.retold.put_as_dishes import put_as_dishes
from calmlarder.matching.retold.spoken import as_written
from calmlarder.matching.retold.told_aside import told_aside
from calmlarder.matching.retold.told_otherwise import told_otherwise
from calmlarder.matching.retold.under_way import work_plainly

_DASH = LatePattern(r"(?<=[a-z])[—–](?=[a-z])", re.I)  # `parsley—limp`
_SALT_AND_PEPPER = LatePattern(
    r"\bsalt(?: (?:and|&|n|\+)|,|/)? ?(?:pep+er|pep+r|pep)\b(?!corn| flake)|\bs ?(?:&|\+|n|and) ?p\b"
)
_SALT_PEPPER_AND_MORE = LatePattern(r"^salt pep+er (?=(?:[a-z]+ )*(?:oil|vinegar|butter|sugar|mustard)\b)")
_NO_ADDED = LatePattern(r"\b(?:no|without) added \w+(?: (?:or|and) \w+)?")
_LESS_SALT = LatePattern(
    r"\b(?:less|reduced|low(?:er)?|light|lite|no|zero)[ -](?:in )?(?:salt|sodium)\b(?! (?:and|&|or)\b)"
    r"|\b(?:salt|sodium)[ -](?:reduced|free|less)\b|\b\d\d% less (?:salt|sodium)\b"
)
# What is left of a thing is no leftover: `leftover bit of ginger`.
_LEFTOVER_BIT = LatePattern(r"\bleft ?over (?=(?:bits?|ends?|scraps?|pieces?|chunk|half|bag|piece|wedge|slices?) of\b)")
_AS_BIG_AS = LatePattern(
    r"\b(?:about |roughly |maybe )?(?:(?:as|so) (?:big|large|small|long|thick|wide) as|(?:the )?size of)"
    r" (?:an? |the |my )?([a-z]+)(?:'s)?(?: [a-z]+)?"
)
# Cooked ahead, whatever for: no meal of its own.
_MEAL_PREP = LatePattern(r"\b(?:for )?(?:meal|food|lunch)[ -]?prep(?:ped|ping)?\b")
_PAST_DATE = LatePattern(r"\bpast (?:the |its |their )?(?:sell by |use by |best before )?date\b")


def put_plainly(bare: str, lexicon: Lexicon) -> str:
    """A line in English and in plain words, from tongue to tongue and phrase to phrase; one after the other."""
    english = in_english(as_one(told_by_accents(_DASH.sub(" - ", bare), lexicon)), lexicon)
    rest = is_said_of_it(conditions_mended(in_pots(as_written(english, lexicon)), lexicon), lexicon)
    rest = in_short(made_ready(kin_in_words(amounts_in_short(rest))))
    rest = work_plainly(signs_told(packed_in(with_parts(dishes_in_short(rest)))))
    rest = told_otherwise(done_with(pieces_gone(greens_told(rest, lexicon))))
    rest = put_as_dishes(days_behind(by_the_way(as_named(amounts_otherwise(rest)))))
    rest = amounts_plainly(without_descriptions(in_a_hurry(rest, lexicon)))
    rest = _SALT_PEPPER_AND_MORE.sub("salt, black pepper, ", rest)
    rest = _NO_ADDED.sub(" ", _SALT_AND_PEPPER.sub("salt and black pepper", rest))
    rest = days_plainly(plainly_put(shares_plainly(told_aside(fat_told(alliums_inside(rest, lexicon))))))
    rest = _PAST_DATE.sub("past its best", _LESS_SALT.sub(" ", rest))
    rest = _LEFTOVER_BIT.sub(" ", _MEAL_PREP.sub(" ", rest))
    rest = _AS_BIG_AS.sub(lambda found: found[1] if found[1] in MEASURE_WORDS else " ", rest)
    return counted_apart_by_state(what_there_is(rest))
