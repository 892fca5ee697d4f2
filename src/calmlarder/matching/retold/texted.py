"""Words of messages that tell neither a food nor how much of it: prices, wrapping, who may have it."""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.retold.mistaken_words import mended

_OFF_THE_BBQ = LatePattern(
    r"\b(?:bbq|barbecue)'?e?d? (?=left ?overs?\b)|(?<=left over )bbq\b|(?<=leftover )bbq\b"
    r"|\b(?:from|off) (?:the |last night'?s )?(?:bbq|barbecue|barbie|braai)\b|\b(?:bbq|braai)'?e?d\b"
)
# Of what was bought some is left: nobody cooked it.
_LEFT_OF_A_SHOP = LatePattern(
    r"\bleft[ -]?overs? (?=from (?:the |our |my |last |this )*(?:[a-z']+ )?"
    r"(?:shop|shopping|delivery|market|groceries|order|box|haul)\b)"
)
_LEFT_OVER = LatePattern(r"\bleft[ -]over(?=s?\b)")
# `paneer-400g`, `rice -2 cups`: a dash that parts a food from its amount, and no minus; days keep theirs.
_DASH = LatePattern(
    r"\b(?!(?:omega|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|exp|date|dated|before|opened|best|use)[a-z]*\b)"
    r"([a-z]{3,}\)?) ?-(?=\d{1,4}(?:[ (]|$|k?gm?s?\b|ml\b|l\b))"
)
_DASH_BEHIND_LABEL = LatePattern(r"\b(use by|best before|opened|dated?|exp|bbe?|ub|ubd) ?- ?(?=\d)")  # `ub-14/3`
_CUT = r"(breasts?|thighs?|legs?|wings?|drumsticks?|fillets?)"
_CUTS = LatePattern(rf"\bchicken[:,]? (\d{{1,2}}) {_CUT},? (?:and |& ?|\+ ?|plus )?(\d{{1,2}}) {_CUT}\b")
_CUTS_BEHIND = LatePattern(rf"\bchicken {_CUT} (\d{{1,2}}),? (?:and |& ?|\+ ?|plus )?{_CUT} (\d{{1,2}})\b")
# So long a piece of it, unless it tells the size of a round thing.
_INCHES = LatePattern(
    r"\b(?:about )?\d{1,2}(?:[./]\d)? ?(?:inch(?:es)?|cm)\b(?: (?:piece|bit|long|chunk|end)\b)?(?: of\b)?"
)
_ROUND = LatePattern(
    r"tortilla|wrap|pizza|pancake|\bpie\b|base|case|roti|naan|ginger|galangal|turmeric|pitta|pita|sausage|sub"
)
_INCH_OF = LatePattern(r"\b(?:with )?(?:about )?(?:an? |one )?inch of (?=[a-z])")
_TWO_OLIVES = LatePattern(r"\b(?:black|green|kalamata) (?:and|n|&|\+) (?:black|green|kalamata) olives\b")
_PRICE = LatePattern(
    r"[£$€] ?\d+(?:[.,]\d\d?)?\b(?![.,]?\d| off)(?: (?:sticker|each|a ?piece|the lot))?|\b\d{2}p\b"
)  # money is no amount
# `chicken half rotisserie`: so much of a cooked bird.
_HALF_BIRD = LatePattern(
    r"\b(?:chicken|chook) (half|quarter|whole|1/2|1/4) (?:of )?(?:a )?(roast(?:ed)?|rotisserie|cooked|bbq|grilled)\b"
)
# A chook is a whole bird unless it was cooked; Chinese leaf is a cabbage and no leaf of one.
_CHOOK = LatePattern(r"\b(cooked|bbq|rotisserie|roast(?:ed)?|hot) chook\b")
_CHINESE_LEAF = LatePattern(r"\bchinese lea(?:f|ves)\b")
# How a thing is wrapped is no food and no amount; neither is `a bit` before how it looks.
_WRAPPED = LatePattern(
    r",? ?\b(?:wrapped |covered |sealed |all )?(?:up )?(?:in|under|with) (?:a |some |the )?(?:bit of )?"
    r"(?:(?:brown |butcher'?s |greaseproof |baking |kitchen |parchment |wax(?:ed)? )?paper|kitchen roll|(?:tea )?towel"
    r"|cling ?film|cling ?wrap|plastic(?: wrap)?|tin ?foil|foil|bees ?wax wrap)\b"
)
_A_BIT_SO = LatePattern(
    r"\b(going|gone|getting|looking|is|are|turning|turned|smells?|smelling|now|feeling|tastes?) (?:a )?"
    r"(?:wee |little )?bit (?=[a-z])(?!of\b|sour\b)"
    r"|([,(]) ?(?:a |just a )?(?:wee |little )?bit (?=[a-z]+\)?\s*$)(?!left\b|more\b|only\b|sour\b)"
)
# `2 sausages left in pack`: so many of them, and no packs.
_LEFT_IN_PACK = LatePattern(
    r"^((?:about |only |just |maybe )?(?:\d{1,2}|one|two|three|four|five|six|few|a few) [a-z][a-z ]*?)"
    r"(?: left)? in (?:the |a |an? open(?:ed)? |open(?:ed)? |its |their )?"
    r"(?:pack|packet|bag|box|carton|tray|net)\b(?! of)"
)
_MAY_HAVE = LatePattern(
    r"\b(i|we|you|u|they|anyone) can (?=(?:have|use|eat|take|nick|finish|share|cook|only|still|prob)\b)"
)
_STRIPS = LatePattern(r"(?<=[a-z])(?<!york)(?<!ny)(?<!beef)(?<!pork) strips?\b(?! of)")
_THING_OF = LatePattern(r"\b(an?|half an?|the|this|1|one|half|2|two|most of an?) (?:little |big )?things? of (?=[a-z])")
# One of each colour: `peppers 3 color pack`.
_COLOUR_PACK = LatePattern(r"(?<![\w.])(\d) ?colou?rs? ?(?:pack|pk)\b")
# Their cups are pots: `yogurt cups 4`.
_IN_CUPS = LatePattern(
    r"\b(yog\w*|yoghurts?|guac\w*|hummus|pudding|custard|jell[yo]|apple ?sauce|fruit|cottage cheese|rice pudding)"
    r" cups?\b"
)
_ISH = LatePattern(r"(?<=\d)[ -]?ish\b|(?<=[a-z]{4})-ish\b")  # `4ish`, `300ish g`; `zorb-ish pickle`
# How lean it is: `93/7`, `80/20`.
_LEAN = LatePattern(r"(?<![\w/.])(?:[789]\d)/(?:[1-9]|[123]\d)(?![\w/])")
_MINCED = LatePattern(r"\b(?:ground|minced?|beef|turkey|pork|hamburger|burgers?)\b")
# What became of the rest of it tells nothing of what is there.
_OTHER_HALF = LatePattern(
    r"[ ,;(-]+(?:the |its |we |i )?(?:other (?:half|one|bit|part)|rest) (?:(?:is|was|has|been|already|got) )*"
    r"(?:used|eaten|gone|cooked|binned|chucked)(?: up| already)?\)?"
)
# So many pounds: `2# ground turkey`; meat that is sold so is ground, and no patty.
_POUNDS = LatePattern(r"(?<![\w#])(\d+(?:\.\d+)?|\d/\d) ?#(?! ?\d)")
_HAMBURGER = LatePattern(
    r"\b(?P<before>\d(?:[\d./]*) ?(?:lbs?|pounds?|oz)\b(?: of)? (?:(?:lean|frozen|raw|fresh|extra) )*)(?:ham)?burger\b"
    r"(?! (?:bun|patt|roll|steak|helper))"
    r"|^(?P<first>(?:(?:lean|frozen|raw|fresh|extra|pkg|pack|package|tube|chub|of) )*)hamburger"
    r"(?=(?: meat)?,? (?:about )?\d(?:[\d./]*) ?(?:lbs?|pounds?|oz)\b)"
)
# Packets of one portion each, and a whole side of a fish, from head to tail.
_PORTION_PACKETS = LatePattern(
    r"\b(instant (?:oatmeal|oats|grits)|oatmeal|grits|sugar)( ?\d{0,2}) (?:packets?|packs?|pkts?)\b(?! of)"
    r"|(?<=\d )(?:packets?|packs?|pkts?) (?:of )?(?=(?:instant (?:oatmeal|oats|grits)|sugar)\b)"
)
_SIDE = LatePattern(r"\bside of (?=(?:smoked )?(?:salmon|trout|steelhead))|(?<=salmon )side\b(?! dish)")
# What is baked in a pan; a sliced pan is Irish bread.
_PAN_OF = LatePattern(
    r"(?<!sliced )(?<!white )\bpan (?:of )?(?=(?:baked|cheese|beef|chicken|leftover|veg\w*|mac|of| )*"
    r"\b(?:ziti|lasagn\w*|enchiladas?|brownies|cornbread|casserole|potatoes|gratin|moussaka|eggplant)\b)"
)
# The rest of a chili is the dish.
_REST_OF_CHILI = LatePattern(
    r"\b(?:the )?rest of (?:the |that |my |our |this )?"
    r"(?=(?:chill?i|chile)\b(?! (?:flakes?|powder|oil|sauce|paste|crisp|peppers?)))"
)
# In shops of North America yams are sweet potatoes; a true one is a tuber of a kilo and more.
_YAMS = LatePattern(
    r"(?<=\d )yams?\b(?!.*(?:tuber|puna|pona|white))|(?<=^a )yam\b(?!.*tuber)"
    r"|^yams?(?=,? (?:x ?)?\d{1,2}(?: ?(?:lg|large|small|med|medium|big))?$)"
)
# Dough in a tube that is baked, where no British biscuit is sold.
_CANNED_BISCUITS = LatePattern(
    r"\b(can|tube|roll)s? of biscuits\b|\bbiscuits? (can|tube|roll)s?\b|\bbiscuits \((?:in )?(?:a )?(can|tube)\)"
)
# `2nd tofu`: another one, and no day.
_ONE_MORE = LatePattern(
    r"^(?:the )?(?:2nd|3rd|4th) (?!(?:of )?(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\b)(?=[a-z]{3})"
)
_OF_A_TYPE = LatePattern(r"(?<=[a-z]{3}) type (?=[a-z]{3})(?!of\b|flour\b)")


def as_texted(text: str) -> str:
    """A plain line without such words, and with a few phrases of messages put plainly."""
    if "-" in text:
        text = _DASH.sub(r"\1 - ", _DASH_BEHIND_LABEL.sub(r"\1 ", text))
    text = mended(_ONE_MORE.sub("", text))
    text = _LEFT_OF_A_SHOP.sub("", text) if "left" in text else text
    text = _LEFT_OVER.sub("leftover", text) if "left" in text else text
    text = _HALF_BIRD.sub(r"\1 \2 chicken", text) if "chicken" in text or "chook" in text else text
    text = _CHOOK.sub(r"\1 chicken", text) if "chook" in text else text
    text = _CHINESE_LEAF.sub("chinese cabbage", text) if "chinese" in text else text
    text = _WRAPPED.sub(" ", text) if "in" in text or "wi" in text or "und" in text else text
    text = _A_BIT_SO.sub(lambda found: f"{found[1] or found[2]} ", text) if "bit " in text else text
    text = _LEFT_IN_PACK.sub(r"\1 left", text) if " in " in text else text
    text = _MAY_HAVE.sub(r"\1 may ", text) if " can " in text else text
    if "strip" in text and "bacon" not in text:
        text = _STRIPS.sub(" ", text)
    text = _COLOUR_PACK.sub(r"\1", text) if "colo" in text else text
    text = _THING_OF.sub(r"\1 tub of ", text) if "thing" in text else text
    text = _IN_CUPS.sub(r"\1 pots", text) if " cup" in text else text
    text = _OFF_THE_BBQ.sub("cooked ", text) if "b" in text else text
    if "chicken" in text:
        text = _CUTS.sub(r"\1 chicken \2, \3 chicken \4", text)
        text = _CUTS_BEHIND.sub(r"\2 chicken \1, \4 chicken \3", text)
    if "inch" in text or "cm" in text:
        text = _INCH_OF.sub("little bit of ", text)
        text = text if _ROUND.search(text) else _INCHES.sub(" a bit of ", text)
    text = _TWO_OLIVES.sub("olives", text) if "olives" in text else text
    text = _PRICE.sub(" ", text)
    text = _ISH.sub(" ", text) if "ish" in text else text
    text = _LEAN.sub(" ", text) if "/" in text and _MINCED.search(text) else text
    text = _OTHER_HALF.sub(" ", text) if "other" in text or "rest" in text else text
    text = _POUNDS.sub(r"\1 lb", text) if "#" in text else text
    if "burger" in text:
        text = _HAMBURGER.sub(lambda found: f"{found['before'] or found['first'] or ''}ground beef", text)
    if "pack" in text or "pkt" in text:
        text = _PORTION_PACKETS.sub(lambda found: f"{found[1] or ''}{found[2] or ''} sachets ", text)
    text = _SIDE.sub("joint ", text) if "side" in text else text
    text = _PAN_OF.sub("tray of ", text) if "pan " in text else text
    text = _REST_OF_CHILI.sub("leftover ", text) if "rest" in text else text
    text = _YAMS.sub("sweet potatoes", text) if "yam" in text else text
    if "biscuit" in text:
        text = _CANNED_BISCUITS.sub("refrigerated biscuits", text)
    text = _OF_A_TYPE.sub(" style ", text) if " type " in text else text
    return text
