"""Work that is under way or was done, put plainly: what steeps is soaking, what somebody shot is no food beside it."""

from calmlarder.matching.late_patterns import LatePattern

# What lies in water is no boiled pulse yet.
_SOAKS = LatePattern(
    r"\b(?:chick ?peas?|beans?|lentils?|peas?|pulses?|chana|rajma|urad|moong|mung|gram|dal|daal|rice)\b"
)
_SOAKING = LatePattern(
    r"\b(?:steep(?:ing|ed)|soakin|(?:in|on) (?:the |to |a )?soak|(?:left|put|set|sat|sitting|standing|stood) "
    r"(?:to soak|in (?:cold |a bowl of |a bowl with )?water)|being soaked)\b"
)
_SOMEBODY_GOT = LatePattern(
    r"[,;(-]+ ?(?:(?:my|a|our|the) )?(?:mates?|friends?|uncle|aunt(?:ie|y)?|dad|mum|mom|brother|sister|cousin"
    r"|neighbou?r|husband|wife|partner|bloke|we|i|they|he|she)(?: (?:just|next door|at work|down the road))* "
    r"(?:shot|caught|hunted|fished|foraged|picked|grew|raised|bagged|smoked|reared)(?: (?:it|them|this|these|us|me))?"
    r"(?: (?:himself|herself|themselves|myself|ourselves))?\)?(?=\s*(?:$|[,;)]))"
)
_SHORT_FREE = LatePattern(r"\b(?:lac(?:to)?[ -]?free|lactos[ -]?free)\b")
_NO_LACTOSE = LatePattern(r"(?P<food>[^,;&+()]+?)[ ,(]+(?:without|no|minus|zero|w/o) lactose\)?")
# One end of what grows firm, which is cut off; of meat, tofu or anything cooked it is a sign that all of it has gone.
_FIRM = LatePattern(
    r"\b(?:cucumbers?|cukes?|courgettes?|zucchinis?|aubergines?|eggplants?|carrots?|parsnips?|celery|celeriac"
    r"|leeks?|broccoli|cauli(?:flower)?|cabbages?|peppers?|capsicums?|squash(?:es)?|pumpkins?|swedes?|turnips?"
    r"|beetroots?|beets?|ginger|fennel|asparagus|rhubarb|kohlrabi|radish(?:es)?|mooli|daikon|sweet potato(?:es)?|yams?"
    r"|cassava|plantains?|bananas?)\b"
)
_CUT_OR_BESIDE = LatePattern(
    r"\b(?:cooked|boiled|steamed|roast\w*|soup|salad|left ?over|pickled?|cut|chopped|diced|sliced|slices|grated|chicken"
    r"|turkey|beef|pork|lamb|mince|fish|salmon|cod|prawns|ham|bacon|sausages?|tofu|cheese|rice|pasta)\b"
)
_ONE_END = LatePattern(
    r"[,;( -]+(?:is |gone |going |a bit )*(?:slimy|soft|mushy|brown|black|dried(?: out)?|squishy|manky|wet|woody)"
    r" (?:at |on |round )?(?:the |a |one )?(?:other )?(?:ends?|tips?|sides?|edges?|bottoms?|tops?)\b\)?"
    r"|[,;( -]+(?:the |a |one )?(?:ends?|tips?|edges?|bottoms?) (?:is |are |gone |going |has |have |a bit )*"
    r"(?:slimy|mushy|squishy|manky)\b\)?"
)
_BIRDS = LatePattern(r"\b(?:chicken|turkey|duck|goose|bird|poultry)\b")
_WHICH_MEAT = LatePattern(
    r"[,;( -]+(?:(?:mostly|all|only|just|some|the|nearly all) )*(?:white|dark|brown|breast|leg)"
    r" (?:(?:and|&|\+|n) dark )?meat(?: (?:only|mostly))?\)?(?=\s*(?:$|[,;)]|\d|about|abt))"
)
# How it looks, and no amount of it: `bag, bit wet but ok`.
_BIT_SO = LatePattern(
    r"\b(?:a |just a )?(?:wee |little |tiny )?bit (?=(?:wet|dry|limp|tired|sad|old|wilt\w*|bendy|brown\w*|squish\w*"
    r"|squashed|bruised|hard|stale|wrinkl\w*|floppy|yellow\w*|sticky|mush\w*|ripe|past|icy|spott?y|lumpy|woody|dodgy"
    r"|sorry|ropey|manky|damp|soggy|crumbly|salty|spicy|rubbery|battered|sweaty|droopy|shrivel\w*|leathery)\b)"
)
_IN_THE_BOTTLE = LatePattern(
    r"\b(?P<much>(?:an? |one |two |half a |\d )?(?:glass(?:es)?|cups?|mugs?|inch|splash)) of (?P<what>[a-z ]+?) "
    r"(?:left |still )*in (?:the |a |its )?(?:bottle|carton|jug)\b"
)


def work_plainly(text: str) -> str:
    """A plain line with such words put plainly; any other as it stands."""
    if _SOAKING.search(text) and _SOAKS.search(text):
        text = _SOAKING.sub("soaking", text)
    text = _SOMEBODY_GOT.sub(" ", text)
    text = _WHICH_MEAT.sub(" ", text) if "meat" in text and _BIRDS.search(text) else text
    text = _IN_THE_BOTTLE.sub(r"\g<much> of \g<what>", text)
    text = _SHORT_FREE.sub("lactose free", text)
    if told := _NO_LACTOSE.fullmatch(text):
        text = f"lactose free {told['food']}"
    text = _BIT_SO.sub("", text)
    return _ONE_END.sub(" check it over", text) if _FIRM.search(text) and not _CUT_OR_BESIDE.search(text) else text
