"""A dish or a meat and what is told beside it in a word, put as names have it: `overnight oats blueberry`.

What changes no limit (berries, seeds, spices) is left out where a dish is named by more; what may is told beside it.
Which words those are is common practice, no source.
"""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

_END = r"(?=\s*[!.?]*\s*(?:$|[,;)]))"
_MILD = (
    r"(?:(?:wild )?blueberr(?:y|ies)|strawberr(?:y|ies)|raspberr(?:y|ies)|chia(?: seeds?)?|cinnamon|vanilla|lemon"
    r"|orange|cocoa|cacao|maple|kiwi|poppy ?seeds?|flax(?: ?seeds?)?)"
)
_VESSELS = (
    r"(?:(?:\d{1,2}|half|an?|one|two|three) ?x? ?(?:jars?|pots?|tubs?|cups?|bowls?|boxes|box|portions?|servings?))"
)
_CAKES = (
    r"(?:carrot|lemon(?: drizzle)?|chocolate|coffee|walnut|coffee (?:and|&|n) walnut|banana|apple|fruit|sponge"
    r"|victoria sponge|ginger|rhubarb|cherry|pumpkin|pecan|red velvet|vanilla|pineapple|almond|orange|marble|honey)"
)
_MEATS = (
    r"(?:mince|(?:pot |chuck |sunday )?roast(?: (?:beef|pork|lamb|chicken|turkey|mutton|duck))?|beef|pork|lamb|chicken"
    r"|turkey|mutton|brisket|sausages|bangers|meatballs|pork chops?|chops|ham|gammon|steak|liver|rissoles|faggots"
    r"|meat ?loaf|venison|goat)"
)
_IN_A_MIX = (
    r"(?:(?:sweet)?corn|peas?|carrots?|(?:green |french )?beans?|broccoli|cauli(?:flower)?|swede|turnip|parsnip)"
)
_STATES = r"(?:cold|cooked|left ?overs?|slices?|sliced|roasted|some|bit|a bit)"
_A_DISH = LatePattern(r"\b(?:pila[fvw]|salad|soup|curry|stew|risotto|fried) one\b")
_BY_KINDS = (
    r"(?:bagels|tortillas|wraps|rolls|buns|pasties|pies|samosas|muffins|scones|croissants|pizzas|burritos|tamales"
    r"|empanadas|sausages|burgers|noodles|dumplings|doughnuts|donuts|quiches|fishcakes|cookies"
    r"|(?:bell )?peppers|onions|potatoes)"
)
_KIND = (
    r"(everything|plain|sesame|poppy ?seed|cinnamon(?: raisin)?|blueberry|whole ?wheat|wholemeal|white|brown|seeded"
    r"|flour|corn|wheat|spinach|gf|gluten free|burger|hamburger|hot ?dog|brioche|crusty|pork|beef|chicken|veggie|veg"
    r"|vegan|lamb|turkey|bean|italian|fish|steak|apple|meat|cheese|pepperoni|margherita|mushroom|potato|kraut"
    r"|sauerkraut"
    r"|red|green|grn|yellow|orange|sweet|baking|new|glazed|jam|chocolate|choc|fruit|rice|egg|salmon|cod|prawn)"
)
_IS_COOKED = LatePattern(r"\b(?:roast|cooked|left ?overs?)")


def _left_over(found: re.Match[str]) -> str:
    day = " from sunday" if found[1] == "sunday " else ""
    return f"leftover {'beef stew' if found[1] == 'pot ' else 'roast beef'}{day}"


def _two_kinds(found: re.Match[str]) -> str:
    """A thing of two kinds, or two packets of it where a kind would make a dish of it."""
    if _A_DISH.search(found[0]):
        return f"2 packets {found[1]}"
    return f"{found[2]} {found[1]}, {found[3]} {found[1]}"


_PLAINLY = (
    # Oats, puddings and bakes by what flavours them.
    (
        LatePattern(
            rf"\b(overnight oats|bircher(?: muesli)?|chia puddings?)((?: {_VESSELS})?) \(?(?:with )?{_MILD}"
            rf"(?:(?:,| and| &| n| \+)? {_MILD})*\)?{_END}",
            needs=("oats", "bircher", "chia pud"),
        ),
        r"\1\2",
    ),
    # `birthday cake, carrot, 2 slices`
    (
        LatePattern(
            rf"\b(?:(?:birthday|bday|party|wedding|christening|anniversary|celebration|leaving) )?"
            rf"(cake|loaf cake|muffins?|cupcakes?), ({_CAKES}){_END}",
            needs=("cake,", "muffin", "cupcake"),
        ),
        r"\2 \1",
    ),
    # A roast that is left over is meat, and no state of what stands behind it; what was cooked in a pot is a stew.
    (
        LatePattern(
            r"\b(?:left ?overs? |cold |rest of the |cooked )+(pot |chuck |sunday |rump )?roast"
            r"(?= ?(?:$|[,;&+(]|with\b|w\b|and\b|in ))"
        ),
        _left_over,
    ),
    (
        LatePattern(
            r"(?:(?<=^)|(?<=[,;] ))(?:the )?(pot |chuck |sunday |rump )?roast,? left ?overs?\b"
        ),
        _left_over,
    ),
    # The gravy that a cooked meat lies in is a food beside it, for onion and flour may be in it.
    (
        LatePattern(
            rf"\b({_MEATS}(?: {_STATES})*(?:,? [\d./]+ ?(?:k?g|oz|lbs?|slices?))?(?: {_STATES})*),? "
            r"(?:with|w/?|in) (?:its |the |their |some |lots of |a bit of )?(?:own )?(?:onion )?gravy\b",
            needs=("gravy",),
        ),
        lambda found: f"{'' if _IS_COOKED.search(found[1]) else 'cooked '}{found[1]}, onion gravy",
    ),
    # The same in a list: of two names that stand beside each other a third is no name here.
    (
        LatePattern(rf"(\b{_MEATS}(?: {_STATES}| [\d./]+ ?(?:k?g|oz|lbs?))*) ?[,;/] ?gravy\b", needs=("gravy",)),
        r"\1, onion gravy",
    ),
    # The sort of a mixture, in a bracket: `frozen mixed veg (corn peas carrot kind)`.
    (
        LatePattern(
            r"\b((?:mixed |mix |stir[ -]?fry |soup |stew |casserole )(?:frozen )?veg(?:gies|etables|g|s)?"
            rf"|veg(?:etable)? mix)((?: bag| pack)?),? \(?(?:with |the )?{_IN_A_MIX}"
            rf"(?:(?: ?[,/&+-]| and| n)? ?{_IN_A_MIX})+ (?:kind|type|sort|one|mix)\)?{_END}",
            needs=("veg",),
        ),
        r"\1\2",
    ),
    (LatePattern(r"\b(?:cheese )?curds? \(?for (?:the |our )?poutine\b\)?"), "cheese curds"),
    (
        LatePattern(r"^(?:the )?(?:cheese ?board|cheese plate|buffet|party|picnic) (?:left ?overs?|bits|remains"
                    r"|ends)[ :,–-]*(?=[a-z])"),
        "",
    ),
    # What seasons a pickle, a cheese or a loaf is in it: `sauerkraut (homemade, caraway)`.
    (
        LatePattern(
            r"(\b(?:sauerkraut|kraut|gherkins?|pickles?|kimchi|bread|loaf|rye|gouda|havarti|cheese|quark)\b[^,;()]*)\("
            r"((?:[a-z ]+, ?)?)(?:caraway|dill|juniper|cumin|mustard|fennel|nigella|poppy)(?: (?:seeds?|berries))?\)"
        ),
        lambda found: f"{found[1]}({found[2].strip(' ,')})" if found[2] else found[1],
    ),
    # Two sorts of one thing without a sign between them: `red sauce brown sauce`.
    (
        LatePattern(
            r"^([a-z]+) (?!(?:bag|box|tin|tub|pack|jar|can|pot|leaf|half|cup|bit|of)\b)([a-z]{3,}) ([a-z]+) \2$"
        ),
        r"\1 \2, \3 \2",
    ),
    # What lay on the tray is in the dish.
    (
        LatePattern(
            r"\b((?:roast(?:ed)?|grilled) (?:mixed )?veg(?:etables|gies|g)?(?: tray)?)(?:[,:] ?| - |"
            r" ?\()(?:[a-z]+(?: [a-z]+)?"
            r"(?:, ?| and | & | n |/))+[a-z]+(?: [a-z]+)?\)?$"
        ),
        r"\1",
    ),
    (LatePattern(r"\bmustard (?:with|w/?) (?:the )?seeds\b"), "wholegrain mustard"),
    # So many of each kind: `tortillas: flour 4, corn 10`, `bagels, 2 everything 1 plain`.
    (LatePattern(rf"^({_BY_KINDS})[ :,(–-]+(\d{{1,2}}) ?x? {_KIND}(?: ?[,;&+] ?| and | n | )(\d{{1,2}}) ?x?"
                 rf" {_KIND}\)?$"), r"\2 \3 \1, \4 \5 \1"),
    (LatePattern(rf"^({_BY_KINDS}) ?[:(–-] ?{_KIND} ?x? ?(\d{{1,2}})(?: ?[,;&+] ?| and | n | ){_KIND} ?x?"
                 rf" ?(\d{{1,2}})\)?$"), r"\3 \2 \1, \5 \4 \1"),
    (LatePattern(r"\bgravy granu\w+, onion" + _END), "onion gravy granules"),
    # `pickled carrots n jalapenos`: one word says how both were put up.
    (
        LatePattern(r"^pickled ([a-z]+) (?:and|n|&|\+) (?!onions? )([a-z]+)" + _END),
        r"pickled \1, pickled \2",
    ),
    # `bulgur - fine one and pilav one`: two kinds of one thing.
    (
        LatePattern(r"^([a-z ]+?)[ :,(–-]+(?:an? |the )?([a-z]+) one (?:and|&|\+|n) (?:an? |the )?([a-z]+) one\)?$"),
        _two_kinds,
    ),
)  # fmt: skip


def with_parts(text: str) -> str:
    """A plain line with such dishes put plainly; all others stay as they are."""
    return " ".join(put_in_turn(text, _PLAINLY).split())
