"""Words for people and what is none: who lives in a house, given names, and names that a food bears."""

import re

from calmlarder.matching.conditions.condition_words import is_condition
from calmlarder.matching.dates.day_names import DAY_WORD
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.food_abbreviations import ABBREVIATIONS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import DECIDING, DISHES, HARMLESS
from calmlarder.matching.names.words import singular
from calmlarder.matching.owners.given_names import GIVEN_NAMES

# People of a house without a name.
PEOPLE = frozenset({
    "flatmate", "flatmates", "housemate", "housemates", "roommate", "roommates",
    "roomate", "roomates", "neighbour", "neighbours", "mum",
    "mums", "mom", "dad", "dads", "gran", "nan", "granny", "kid", "kids", "children", "child", "toddler", "husband",
    "wife", "partner", "boyfriend", "girlfriend", "bf", "gf's", "hers", "his", "theirs", "lodger", "landlady",
    "landlord", "guest", "guests", "visitor", "visitors", "cat", "dog", "cats", "dogs", "baby's", "son", "daughter",
    "mam", "mams", "mammy", "mummy", "mommy", "hubby", "wifey", "sis", "bro", "bub", "bubs", "bubba", "brother",
    "sister", "sisters", "brothers", "sons", "daughters",
    "lads", "lasses", "boys", "girls", "guys", "bros", "roomie", "roomies", "flattie", "flatties", "flattys",
    "housie", "housies", "parents", "grandma", "grandpa", "grandad", "nana", "auntie", "aunty", "uncle", "tenant",
    "mother-in-law", "father-in-law", "in-laws", "inlaws",
    "grandchildren", "grandkids", "grandson", "granddaughter", "ex", "somebody", "someone",
    "twins", "triplets", "bairns", "weans", "littluns", "tots", "kiddos", "kiddies", "nippers", "wains",
    "teenager", "teenagers", "teens", "littlest", "youngest", "eldest",
    "work", "someone else's", "somebody else's", "their", "her", "him", "them", "you", "baby",
    "mrs", "missus", "fella", "fellas", "hubs", "boss", "bestie", "carer", "helper", "maid", "driver", "babysitter",
    "nanny", "mates", "gfs", "stepdad", "stepmum",
    "stepson", "stepdaughter", "stepkids", "childminder", "cleaner", "colleague", "colleagues", "workmate", "workmates",
})  # fmt: skip
ENDS_IN_S = frozenset({"sis", "hubs", "missus", "boss"})  # the s is no possessive
PETS = frozenset({
    "cat", "dog", "cats", "dogs", "rabbit", "rabbits", "hamster", "bird", "birds", "hens", "guinea", "sheep", "horse",
    "horses", "pony", "ponies", "goats", "donkey", "donkeys", "pigs", "calves", "ewes", "lambs", "chickens", "chooks",
    "ducks", "geese", "swans", "tortoise", "parrot", "budgie",
})  # fmt: skip
NOBODY = frozenset({
    "mine", "my", "ours", "our", "own", "everyone", "everyones", "everyone's", "everybody", "everybodys",
    "everybody's", "all", "shared", "communal", "house", "household", "anyone", "anyones", "anyone's", "me", "us",
})  # fmt: skip
# Possessives that are no person's.
NO_PERSON = frozenset({
    "thumb", "finger", "fist", "palm", "hand", "matchbox", "day", "days", "weeks", "months", "meal", "worth",
    "night", "morning", "evening",
    "she", "he", "they", "we",
    "goat", "goats", "sheep", "ewe", "cow", "lady", "ladies", "baker", "bakers", "brewer", "brewers", "confectioner",
    "confectioners", "shepherd", "shepherds", "cottage", "bird", "birds", "lamb", "lambs", "pig", "calf", "hen",
    "it", "that", "there", "here", "what", "let", "today", "yesterday", "tomorrow", "tonight", "last", "week", "lunch",
    "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "year", "month", "best", "who",
    "new", "christmas", "child", "za", "bob", "devil", "collard", "butcher", "butchers", "grocer", "farmer", "farmers",
    "hunter", "vegetarian", "mother", "kid's", "bull", "ox", "don", "won", "isn", "doesn", "cat s", "noon",
})  # fmt: skip
# Those of a house for whom a thing may be meant, and is eaten by all the same.
MEMBERS = frozenset({
    "mum", "mums", "mom", "dad", "gran", "nan", "granny", "husband",
    "wife", "partner", "boyfriend", "girlfriend", "son", "daughter", "brother", "sister", "her", "him", "them", "you",
    "mam", "mammy", "mummy", "mommy", "hubby", "wifey", "sis", "bro",
})  # fmt: skip
_ADJECTIVE = LatePattern(r".*(?:ing|ed|ish|ly|able|ful|less|ier|est|[a-z]{3}ian|[a-z]{3}ese)$")
# Kinds of a food that bear a person's name: `potatoes, charlotte`.
VARIETIES = frozenset({
    "charlotte", "victoria", "edward", "bob", "jack", "graham", "florence", "wellington", "stanley", "jasmine", "hope",
    "april", "may", "june", "faith", "grace", "joy", "dawn", "ray", "jin", "mei", "nana", "baba", "papa", "dale",
    "summer", "bill", "mark", "will", "frank", "flora", "gala", "alba", "stella", "rosa", "viola", "pat", "rod", "rob",
})  # fmt: skip
# Given names that are written before a food and name a kind of it: angus mince, marie biscuits, ruby chard.
OF_A_FOOD = VARIETIES | frozenset({
    "angus", "marie", "maria", "georgia", "virginia", "carolina", "clara", "sharon", "valentina", "lorraine", "ruby",
    "amber", "jade", "hazel", "heather", "poppy", "daisy", "violet", "iris", "penny", "sandy", "chuck", "jasmin",
    "anna",
    "savannah", "lima", "pink", "diana", "della", "linda", "sally", "kim", "maris", "desiree", "nicola", "ming",
    "francis", "benedict", "caesar", "anya", "nadine", "annabelle", "laura",
    "kerry", "devon", "chelsea", "paris", "vienna", "dallas", "austin", "kent", "jersey", "shetland", "orkney", "siena",
    "melody", "oscar", "roma", "sofia", "san", "chen", "lee", "obi", "uma", "may", "ma", "mama",
})  # fmt: skip
SOMEBODY_ELSES = frozenset({"her", "his", "their"})
THE_OTHER = frozenset({"himself", "herself"})  # so they call husband and wife in Ireland
HOUSE_PETS = frozenset({"dog", "dogs", "cat", "cats", "puppy", "kitten", "hamster", "bunny"})  # `dog mince 500g`
SHARES_HOUSE = frozenset({
    "flatmate", "housemate", "roommate",
    "roomate", "lodger", "landlord", "landlady", "neighbour", "guest", "tenant", "roomie",
    "flattie", "hubby", "wifey", "husband", "wife", "boyfriend", "girlfriend", "lads", "grandson", "granddaughter",
})  # fmt: skip
# Those whose cooking is given: `nani ka achaar`.
COOKS_FOR_US = frozenset({"nani", "dadi", "nana", "dada", "amma", "ammi", "mummy", "maa", "ma", "mom", "mum", "mami"})
KIN = frozenset({
    "teta", "jeddo", "oupa", "ouma", "lola", "lolo", "suegra", "suegro", "abuelita", "abuela", "halmoni", "papa",
    "bhai", "bhaiya", "didi", "bhabhi", "chacha", "chachi", "beta", "beti", "abuelo", "abuelito", "halabeoji", "eomma",
    "appa", "porpor", "pohpoh", "popo", "gunggung", "gonggong", "kungkung", "mahmah", "yehyeh", "nainai", "laolao",
    "ahma", "ahgong", "ahkong", "ahpor", "ahpoh", "ahpo", "ahyeh", "ahba", "ahmah", "ahyee", "ahjie", "mormor",
    "farmor", "farfar", "morfar", "poppop", "pawpaw", "mawmaw", "nanu", "nani", "dadu", "dido",
})  # fmt: skip
# Words that people put in brackets or behind a dash and that name nobody.
NOT_NAMES = frozenset({
    "off", "open", "opened", "gone", "empty", "full", "tiny", "huge", "loads", "lots", "some", "few", "bits", "scraps",
    "wonky", "spare", "extra", "urgent", "asap", "soon", "now", "fridge", "freezer", "cupboard", "pantry", "shelf",
    "drawer", "bottom", "top", "back", "front", "unopened", "sealed", "vac", "pack", "packs", "bag", "bags", "kg",
    "fresh", "stale", "bad", "good", "fine", "ok", "okay", "maybe", "check", "smells", "smell", "mould", "mold",
    "approx", "about", "roughly", "ish", "garden", "allotment", "market", "local", "shop", "deli",
    "use", "tonight", "today", "tomorrow", "yesterday", "end", "heel", "heels", "crust", "crusts", "log", "block",
    "wedge", "wheel", "round", "stump", "stub", "nub", "knob", "lump", "last", "first", "old", "new", "big", "small",
    "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "mon", "tue", "tues", "wed", "thu",
    "lunes", "martes", "miercoles", "jueves", "viernes",
    "thurs", "fri", "sat", "sun", "date", "dates", "best", "half", "quarter", "third", "whole", "spice", "spices",
    "unsure", "unknown", "other", "another", "both", "none", "nothing", "several", "various", "assorted", "mixed",
    "windfall", "windfalls", "homegrown", "tbc", "tub", "pot", "box", "container", "left", "leftover", "leftovers",
    "each", "per", "pair", "couple", "dozen", "ones", "one", "two", "three", "four", "five", "six", "seven", "eight",
    "nine", "ten", "boxes", "tins", "jars", "bottles", "tired", "sad", "limp", "brown", "black", "white", "green",
    "red", "yellow", "purple", "orange", "pink", "blue", "gold", "rest", "parts", "part", "more", "less", "much",
    "plain", "guro",
    "christmas", "easter", "batch", "load", "sack", "crate", "punnet", "punnets", "thick", "thin",
    "bulk", "family", "value", "frozen", "defrosted", "thawed", "meh", "yuck", "yum", "nice", "lush", "hmm", "urgh",
})  # fmt: skip


def bare_name(word: str) -> str:
    """A name without what makes it a possessive: dan's, dans."""
    bare = re.sub(r"'s?$", "", word)
    if bare not in PEOPLE and bare[:-1] in PEOPLE and bare.endswith("s"):
        return bare[:-1]
    return bare[:-1] if bare not in GIVEN_NAMES and bare.endswith("s") and bare[:-1] in GIVEN_NAMES else bare


def is_given(word: str, lexicon: Lexicon) -> bool:
    """Whether a word by itself is a given name and no food's word."""
    forms = {word, f"{word}s"}
    return word in GIVEN_NAMES - VARIETIES and not forms & lexicon.alone and forms.isdisjoint(ABBREVIATIONS)


def is_person(word: str, lexicon: Lexicon) -> bool:
    """Whether a word tells somebody of the house, with or without what makes it a possessive."""
    if word in NOBODY:
        return False
    bare = bare_name(word)
    if bare == "tom":
        return True  # by himself no short tomato
    return word in PEOPLE or bare in PEOPLE or is_given(bare, lexicon) or (word != bare and is_name(bare, lexicon))


def is_name(word: str, lexicon: Lexicon) -> bool:
    """Whether a word that stands alone, typed like a name, may be a person's: in no food's name, no state, no note."""
    forms = {word, singular(word), f"{word}s"}
    if len(word) < 2 or not word.isalpha() or forms & (HARMLESS | DECIDING | DISHES | NOT_NAMES | NO_PERSON):
        return False
    if forms & lexicon.words or is_condition(word) or _ADJECTIVE.match(word) or re.fullmatch(DAY_WORD, word):
        return False
    return word not in ABBREVIATIONS and f"{word}s" not in ABBREVIATIONS
