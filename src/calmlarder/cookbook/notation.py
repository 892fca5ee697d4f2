"""Notations of ingredient lines, put into the words in which the rest of the reader takes them."""

import re

from calmlarder.cookbook.green_and_white import told_by_part
from calmlarder.cookbook.line_amount import take_quantity
from calmlarder.cookbook.wording import names_nothing

_NUMBER = r"[\d½¼¾⅓⅔⅛]"
_BIG_SPOON = re.compile(rf"(?<={_NUMBER}) ?(?:T|EL|SS)\b\.? ?(?=[^\W\d])")  # `2 T`, `1 EL`: a capital tells the spoon
_SMALL_SPOON = re.compile(rf"(?<={_NUMBER}) ?(?:t\b|TL\b|TS\b)\.? ?(?=[^\W\d])")
# Spoons in other tongues, with the word for `of` behind them.
_OF = r"(?: (?:de la |de |di |da |d'|del? |of ))?"
_SPOONS = (
    (
        re.compile(rf"\b(?:cs\b|c\.s\.|c\.? ?(?:a|de) ?s(?:oupe|opa|\.)?|cas|cuil(?:l?)eres? a soupe)\b\.?{_OF}"),
        "tbsp ",
    ),
    (re.compile(rf"\b(?:c\.? ?(?:a|de) ?c(?:afe|ha|\.)?|cac|cuil(?:l?)eres? a (?:cafe|the))\b\.?{_OF}"), "tsp "),
    (re.compile(rf"\b(?:cucharadas?|cucchiai[oa]?|colher(?:es)?(?: \(?de sopa\)?)?|eetlepels?){_OF}\b ?"), "tbsp "),
    (re.compile(rf"\b(?:cucharaditas?|cucchiaini?o?|colher(?:es)? \(?de cha\)?|theelepels?){_OF}\b ?"), "tsp "),
    (re.compile(r"\b(?:essloffel|spsk|lyzk[aei]|lyzek)\b\.? ?"), "tbsp "),
    (re.compile(r"\b(?:teeloffel|lyzeczk[aei]|lyzeczek)\b\.? ?"), "tsp "),
)
_SALT_AND_PEPPER = re.compile(r"\bs ?(?:&|n|\+|and) ?p\b")
# `1 teaspoonbaking powder`: parts of a page's line, set apart by their look alone.
_GLUED = re.compile(r"(?<=\d )((?:tea|table)spoon|tsp|tbsp|cup)(?=(?!s\b|s?ful|cake|s )[a-z]{3})")
_EITHER = re.compile(r"\b(?:fresh|frozen|dried) or (?:fresh|frozen|dried)\b")
# What it is for, in front of a line: `Egg wash: 1 egg yolk`.
_LABEL = re.compile(r"^(?:[a-z-]+ ){0,3}[a-z]+(?: ?:| [–—-]) ?(?=\d|[½¼¾⅓⅔⅛]|an? (?:\w+[- ])?\w+)")
# `cut into chips`, `shaved into noodles`: its shape, and no food beside it.
_INTO_A_SHAPE = re.compile(
    r",?\s*(?:(?:and|then) )?\b(?:(?:thickly|thinly|roughly|finely) )?"
    r"(?:cut|torn|broken|snapped|split|sliced|chopped|shaved|pulled|spirali[sz]ed)(?: up)? into\b"
    r"(?! (?:\w+ )?(?:pieces|joints|portions|quarters|parts|serving))[^,;()]{1,40}"  # a bird's tell that it is whole
)
# `soaked in 2 tbsp hot water`: water that comes with it, and no food beside it.
_IN_ITS_WATER = re.compile(
    r",?\s*\b(?:soaked|steeped|dissolved|infused|bloomed|softened|rehydrated|crushed|mixed|covered) (?:in|into|with)\b"
    r"[^,;()]{0,30}?\bwater\b[^,;()]{0,30}"
)
# `2 inch ginger` is so long a piece: a knob to the inch, common practice, no source.
_INCH_OF_ROOT = re.compile(
    r"^(?:1 (?=\(|\d+[- ]?in))?\(?(\d+(?:\.\d+|/\d| \d/\d)?)[- ]?(?:inch(?:es)?|\"|in\.?)\)?(?: ?\([^)]*\)|/\S+)?[- ]"
    r"(?:(?:long|thick) )?(?:(?:piece|knob|thumb|chunk|length|nub)s? (?:of )?)?(?:fresh |root |peeled )*"
    r"(?=(?:ginger|galangal|turmeric)\b)"
)
_CM_OF_ROOT = re.compile(
    r"^(\d+(?:\.\d+)?) ?-?cm(?:/\S+| \([^)]*\))? (?:(?:piece|knob|thumb|chunk|length)s? (?:of )?)?(?:fresh |root )*"
    r"(?=(?:ginger|galangal|turmeric)\b)"
)
_CM_OF_A_KNOB = 2.5  # an inch
_WHOLE_BIRD = re.compile(
    r"\b(?:whole )?chicken(?=,? (?:jointed|quartered|spatchcocked"
    r"|cut (?:up|into (?:\d|pieces|quarters|joints|portions|serving))))"
)
# `1 tart apple` is no apple tart.
_TART = re.compile(
    r"\btart(?:,? (?:and )?\w+)? (?=(?:\w+ )?(?:apples?|cherr(?:y|ies)|plums?|berries|pears?|apricots?)\b)"
)
# `1.200 g`: a dot before thousands, as half the world writes them; nobody weighs to the milligram.
_THOUSANDS = re.compile(r"\b(\d{1,2})\.(\d{3})(?= ?(?:g|gr|gramm?|ml)\b)")
# `the white part of 1 leek`, `kernels cut from 3 ears of corn`, `seeds of 1/2 pomegranate`: the part is told before its
# whole.
_PART_OF = re.compile(
    r"^(?:the )?(?P<part>(?:light |pale |dark )?(?:white|green)s?(?: and (?:light |pale )?green)?"
    r"(?: parts?| tops?| ends?)?|kernels|florets|flesh|pulp|arils|tops|leaves"
    r"|seeds(?=.*\b(?:pomegranates?|passion ?fruits?)\b)) "
    r"(?:(?:cut|stripped|picked|scraped|scooped) )?(?:of|from|off) "
    r"(?P<whole>(?:about )?(?:\d|half|an? |one|two|three|four|six).*)"
)
# `juice 1/2 lemon`, `zest & juice 1 orange`: so many of the fruit, where `of` was left out.
_JUICE_WITHOUT_OF = re.compile(
    r"^(?P<what>(?:(?:finely|freshly|grated|squeezed) ){0,2}(?:zest|juice|rind)(?: (?:and|&|\+) (?:zest|juice|rind))?) "
    r"(?=(?:\d[\d/]*|half|an?|one|two) (?:(?:large|small|big|unwaxed|ripe|an?) )?(?:lemon|lime|orange)s?\b)"
)
# A seasoning, whatever else is called pepper.
SALT_AND_PEPPER = re.compile(r"\bsalt (?:and|&|n|\+) pepper\b", re.IGNORECASE)
# `2% milk`: the share of fat is the name.
_SHARES = (
    (re.compile(r"\b(?:2|1\.[5-8]|1) ?%(?: fat)? (?=milk\b)"), "semi-skimmed "),
    (re.compile(r"\b0(?:\.\d)? ?%(?: fat)? (?=milk\b)"), "skimmed "),
    (re.compile(r"\bfilets?\b"), "fillet"),
    (re.compile(r"\blasagn[ae] noodles?\b"), "lasagne sheets"),
    (SALT_AND_PEPPER, "salt and black pepper"),
    (re.compile(r"\b(?:tipo )?00 flour\b"), "plain flour"),
    (re.compile(r"(?<=\d )(?:fat|plump) (?=leeks?\b)"), ""),
    (
        re.compile(
            r"\b(?:creamy|smooth|runny|drippy) (?=(?:\w+ )?(?:almond|cashew|peanut|hazelnut|nut|seed) butter\b)"
        ),
        "",
    ),
    (re.compile(r"\bmicrowav(?:e?able|e[- ]ready)\b"), "microwave"),
    (re.compile(r"\b(?:whole|full)[- ](?:milk|cream) (?=(?:[a-z]+ )?(?:ricotta|mozzarella|cottage cheese)\b)"), ""),
    (re.compile(r"\b(?:straight|ready)[- ]to[- ]wok (?:(?:medium|thick|thin|fine|wheat) )?(?=\S)"), "cooked "),
    # A measure, and no nut.
    (
        re.compile(r"\b(?:walnut|hazelnut)(?:[- ]sized?)?(?: (?:piece|knob|lump|nut))? of (?=(?:\w+ )?butter\b)"),
        "knob of ",
    ),
)
# A comma would end the name; what is free of onion and garlic has names, free of wheat besides it is the same food.
_WITHOUT_THREE = re.compile(r"\bwithout wheat, (onions?|garlic) or (onions?|garlic)\b")
# The large kind, thrice a common date: usda_sr28_portions 09421, `date, pitted`.
_MEDJOOL = re.compile(r"^(\d{1,3})(?: large| whole| pitted| soft)* medjool dates?\b")
_G_OF_A_MEDJOOL = 24
# `packed 1/2 cup`, `2 packed cups`: how a cup is filled, told before it.
_PACKED = re.compile(
    r"^(?:(?:firmly|lightly|loosely|tightly|well)[ -])?packed (?=\d|half|an? )"
    r"|(?<=[\d½¼¾⅓⅔] )(?:(?:firmly|lightly|loosely|tightly|well)[ -])?packed (?=cups?\b)"
)
# `in small lumps`, `sliced into rounds`: shapes of which some are names of cuts of meat.
_SHAPES = re.compile(
    r",? \b(?:in|into) (?:(?:small|large|thin|thick|fine|bite-sized?|\d+(?:\.\d+)? ?[cm]m(?: thick)?) )*"
    r"(?:rounds|coins|discs|disks|lumps|crescents|nuggets|half[- ]moons|shards|ribbons)\b"
)
_TOMATOES_IN = re.compile(
    r"(?<=tomatoes),? in (?:(?:rich|thick|their|own|natural|the|tomato) )*(?:juice|sauce|puree)\b"
)
# A little gem is no head of lettuce; frozen spinach in several blocks is in pellets: common practice, no source.
_GEM = re.compile(r"^(\d{1,2}) (?:heads? (?:of )?)?(?:little|baby) gems?\b(?: lettuces?| hearts?)*")
_G_OF_A_GEM = 110
# The heart of a cos is sold without its outer leaves, two or three in a bag: common practice, no source.
_HEARTS = re.compile(
    r"^(?P<count>\d{1,2}) (?:(?:large|small|medium|baby) )?"
    r"(?:hearts?(?: of)? (?:romaine|cos)\b(?: lettuces?)?|(?:romaine|cos)(?: lettuce)? hearts?\b)"
)
_G_OF_A_HEART = 160  # common practice, no source
_PELLETS = re.compile(r"^([3-9]|1\d) (?:blocks|balls|nuggets|pellets|lumps|portions) (?:of )?(?=frozen )")
# `raw peeled prawns` are raw prawns: how they were cleaned stands between their state and their name.
_CLEANED = re.compile(
    r"\b(?P<state>raw|cooked|frozen) (?:(?:peeled|shelled|deveined|cleaned|shell-on|unpeeled)(?:,? (?:and )?)?)+ "
    r"(?=(?:\w+ ){0,2}(?:prawns?|shrimps?|langoustines?|squid|crayfish))"
)
_BOTTLE_GOURD = re.compile(r"\bbottle gourds?\b")
_BETWEEN = re.compile(r"^(?:anywhere )?(?:between|from) (\S+) (?:and|to) (?=\d|two|three|four|five|six)")
# Some of it over the dish, and no pieces of it: `a few gratings of Parmesan`.
_A_FEW_OVER = re.compile(
    r"^(?:an? )?(?:(?:few|little|some|good|generous) )?(?:gratings?|shavings?|gratin) of (?!(?:\w+ )*nutmeg)(?=[a-z])"
)
# A half out of a tin: usda_sr28_portions 09238, 09254 and 09024, drained of a fifth that is liquid.
_HALVES = re.compile(r"^(\d{1,2}) (?:canned|tinned) (peach|pear|apricot) halves\b")
_G_OF_A_HALF = {"peach": 78, "pear": 61, "apricot": 29}
# `seeds and membranes removed`: no seeds go in.
_INSIDES = r"(?:seeds?|pips|ribs?|membranes?|pith|core|pulp|strings?|veins?|stones?|giblets|neck|wishbone|guts?|gills)"
_TAKEN_OUT = re.compile(
    rf",?\s*\b(?:and )?(?:(?:the|its|their) )?{_INSIDES}(?:(?:,|,? and|,? &) {_INSIDES})* (?:(?:are|is) )?"
    r"(?:removed|discarded|scooped out|scraped(?: (?:out|away|off))?|taken out|thrown away|out\b(?= *(?:$|[,;)])))"
)
# What is poured is the whiskey, not the biscuit.
_BOURBON = re.compile(r"\b(ml|cl|cups?|tbsp|tsp|oz|ounces?|shots?|(?:table|tea)spoons?)(?: of)? bourbon\b(?! (?:b|c))")
_DRY_PULSES = re.compile(r"\bdry (?=(?:[a-z]+ ){0,2}(?:beans?|peas|lentils|chickpeas)\b)")
_COUPLE = re.compile(r"^(?:an? )?couple(?: of)? (?=[a-z])")
_OF_CHOICE = re.compile(r",? \b(?:of (?:your )?choice|you (?:like|prefer)|of any (?:kind|sort|type))\b")
# `+ a bit extra if the mix is wet`: a word for the plus.
_PLUS_SOME = re.compile(r"\s\+\s(?=(?:a (?:bit|little|few|touch|splash) )?(?:more|extra)\b)")
# `mint and parsley, leaves picked`: what is used of them, and no food behind a comma.
_LEAVES_PICKED = re.compile(
    r",? (?:(?:leaves|stems|stalks|tips|fronds|sprigs)(?: only)?|(?:leaves|stems|stalks) and (?:leaves|stems|stalks)) "
    r"(?:(?:finely|roughly|coarsely) )?(?:picked|stripped|plucked|chopped|torn|shredded|reserved|removed|discarded)\b"
)
# What settles in chilli oil is mostly fried garlic and shallot: read as the crisp (common practice, no source).
_SEDIMENT = re.compile(
    r"\bchill?i(?:es)? oil,? (?:with|and|including) (?:some of )?(?:its |the )?"
    r"(?:sediment|solids|sludge|goop?|crispy bits|bits)\b"
)
_VEG = re.compile(r"\bveg(?:gie|etarian)?(?= (?:stock|broth|bouillon)\b)")
# `anchovy or vegetable stock`, `coconut or oat milk`: the last word belongs to all of them.
_STOCK_OR_STOCK = re.compile(
    r"\b(chicken|beef|veg(?:etable|gie)?|fish|anchovy|mushroom|pork|ham|lamb|veal|turkey|duck|bone|miso)"
    r"((?:, \w+)*(?:,? or | ?/ ?)(?:\w+ ){1,2})(stock|broth)\b"
)
_MILK_OR_MILK = re.compile(
    r"\b(coconut|almond|soya?|oat|rice|cashew|hemp|hazelnut|pea)((?:, \w+)*(?:,? or | ?/ ?)(?:\w+ ){1,2})"
    r"(milk|drink|yogh?urt|cream)\b"
)
_STOCK_BEHIND = re.compile(r"\b(stock|broth), (\w+(?: or \w+)+)$")
# `stock (chicken or vegetable)`; a broth of no kind is read as the one with most in it, with onion and garlic.
_STOCK_OF = re.compile(r"\b(stock|broth) \((\w+(?:(?:, | or )\w+)+)\)")
_OF_NO_KIND = re.compile(
    r"^((?:[\d½¼¾⅓⅔⅛./ -]+(?:ml|l|litres?|liters?|cups?|g|oz|pints?|quarts?)?\.? )?(?:hot |warm |good |more )?)"
    r"(?:broth|bouillon)(?= or water\b|,|$)"
)
_NOTES = re.compile(r"\([^()]*\)|\b(?:heads?|size|sized|piece|thumb)\b|-sized?\b")
# `dried chickpeas (not canned!)`: what it is not tells nothing of what it is.
_NOT_SO = re.compile(
    r"(?<=[(, ])not (?:the |straight |plain |pure |hot |sweet |smoked )*[a-z]+(?: [a-z]+)?(?=[)])"
    r"|,? ?[(\[]?\bnot (?:from (?:a )?)?(?:canned|tinned|tins?|cans?|jarred|cooked|dried|raw|smoked|fresh|frozen"
    r"|instant)\b[^)\],;]{0,20}[)\]]?"
)
# `wholemeal bread 4 slices, to serve`: a cell of a table behind another.
_AMOUNT_BEHIND = re.compile(
    r"^((?:[a-z][a-z-]* ){1,4})(\d{1,2} (?:slices?|fillets?|rashers?|sheets?|sprigs?|stalks?|sticks?|tins?|cans?))"
    r"(?=,|$)"
)
_YOGHURT = re.compile(r"\byoghurt\b")
_IN_OIL = re.compile(r",? \b(?:packed |stored )?in (?:\w+ ){0,2}oil\b(?:, drained)?")
_CHILE = re.compile(r"\bchil(?:es|e|ies|is)\b(?! powder)")
# `bone in` is no bone that goes in; a few strokes over a grater are a pinch of nutmeg.
_ON_THE_BONE = re.compile(r"\b(bone|skin)s? (in|on|off)\b(?! (?:the|a)\b)")
_GRATED_OVER = re.compile(
    r"\b(?:gratings?|grindings?|scrap(?:e|ing)s?|rasps?) (?:of )?((?:(?:fresh|freshly grated|whole) )*nutmeg)\b"
)
_THIN_SLICES = re.compile(r"\b((?:thin |thick )?)baguette slices\b")


def spoons_told(line: str) -> str:
    """A line as written, of which capitals told the spoon (`2 T`, `1 t`, `1 EL`)."""
    return _SMALL_SPOON.sub(" tsp ", _BIG_SPOON.sub(" tbsp ", line))


# By the cup, the jar or the hundred grams nobody means ketchup, as some call it.
_MUCH_TOMATO_SAUCE = re.compile(
    r"^(?P<much>(?:[1-9]\d{2,3} ?(?:g|ml) |[\d½¼¾][\d/½¼¾. ]*(?:cups?|jars?|litres?|l|kg) )(?:of )?(?:[a-z]+ )?)"
    r"tomato sauce\b(?! for pasta)"
)


def in_plain_words(line: str) -> str:
    """A plain line with its notations written out: spoons of other tongues, glued measures, labels in front."""
    for pattern, spoon in _SPOONS:
        line = pattern.sub(spoon, line)
    line = _TAKEN_OUT.sub("", _BOURBON.sub(r"\1 whiskey", _DRY_PULSES.sub("dried ", line)))
    line = _IN_ITS_WATER.sub("", _A_FEW_OVER.sub("", line))
    line = _HALVES.sub(lambda found: f"{_G_OF_A_HALF[found[2]] * int(found[1])} g canned {found[2]}s", line)
    line = _COUPLE.sub("2 ", _SALT_AND_PEPPER.sub("salt and pepper", line))
    line = _MUCH_TOMATO_SAUCE.sub(r"\g<much>tomato pasta sauce", line)
    line = _OF_CHOICE.sub("", _BETWEEN.sub(r"\1 to ", _TART.sub("", line.replace(" d'", " d "))))
    line = told_by_part(line)
    line = _AMOUNT_BEHIND.sub(lambda found: f"{found[2]} {found[1].strip()}", _NOT_SO.sub(" ", line).strip())
    line = _OF_NO_KIND.sub(r"\1stock", _STOCK_OF.sub(r"\2 \1", line))
    line = _MILK_OR_MILK.sub(r"\1 \3\2\3", _STOCK_OR_STOCK.sub(r"\1 \3\2\3", line))
    line = _STOCK_BEHIND.sub(r"\2 \1", _SEDIMENT.sub("chilli crisp", _PLUS_SOME.sub(" plus ", line)))
    line = _VEG.sub("vegetable", _LEAVES_PICKED.sub("", line))
    line = _CM_OF_ROOT.sub(lambda found: f"{float(found[1]) / _CM_OF_A_KNOB:g} knob ", line)
    line = _WITHOUT_THREE.sub(r"without \1 or \2", line)
    line = _MEDJOOL.sub(lambda found: f"{_G_OF_A_MEDJOOL * int(found[1])} g dates", line)
    line = _GEM.sub(lambda found: f"{_G_OF_A_GEM * int(found[1])} g lettuce", line)
    line = _HEARTS.sub(lambda found: f"{_G_OF_A_HEART * int(found['count'])} g cos lettuce", line)
    line = _PELLETS.sub(r"\1 cubes ", _BOTTLE_GOURD.sub("lauki", _PACKED.sub("", line)))
    line = _TOMATOES_IN.sub("", _SHAPES.sub("", line))
    line = _CLEANED.sub(r"\g<state> ", line)
    line = _INTO_A_SHAPE.sub("", _WHOLE_BIRD.sub("whole chicken", line))
    line = _INCH_OF_ROOT.sub(r"\1 knob ", line)
    line = _THOUSANDS.sub(r"\1\2", line)
    for share, word in _SHARES:
        line = share.sub(word, line)
    line = _JUICE_WITHOUT_OF.sub(r"\g<what> of ", line)
    part = _PART_OF.match(line)
    if part is not None:
        head, comma, tail = part["whole"].partition(",")
        line = f"{head}, {part['part']}{comma}{tail}"
    line = _THIN_SLICES.sub(r"\1slices baguette", line)
    line = _GRATED_OVER.sub(r"pinch \1", _ON_THE_BONE.sub(r"\1-\2", line))
    return _EITHER.sub(" ", _GLUED.sub(r"\1 ", _unlabelled(line)))


def _unlabelled(line: str) -> str:
    """A line without what it is for; in `brown sugar: 2 tbsp` it is the food that stands before its amount."""
    label = _LABEL.match(line)
    if label is None:
        return line
    behind = line[label.end() :]
    amount, comma, done = behind.partition(",")
    if not names_nothing(_NOTES.sub(" ", take_quantity(amount).rest)):
        return behind
    return f"{amount} {label[0].rstrip(' :–—-')}{comma}{done}"


def other_spelling(line: str) -> str | None:
    """The line with chillies and yoghurt by other names, without what it lies in; None where it names none."""
    told = _IN_OIL.sub("", _YOGHURT.sub("yogurt", _CHILE.sub("chilli", line)))
    return told if told != line else None
