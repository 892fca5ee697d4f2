"""From an amount in a cook's words to grams of a food."""

from calmlarder.matching.amounts.amount_of_line import Amount, spread
from calmlarder.matching.amounts.amount_phrases import CHUNK
from calmlarder.matching.amounts.measures import CONTAINERS
from calmlarder.matching.amounts.numbers_and_fractions import Span
from calmlarder.matching.conditions.states import COOKED_AS_THEY_ARE, COOKED_WORDS
from calmlarder.matching.names.words import words_of
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food, Measure
from calmlarder.tables.vocabulary import CANNED_STATES

# What a line without any amount is taken to mean, in this order: common practice, no source.
_WITHOUT_AMOUNT = (
    "bag",
    "punnet",
    "packet",
    "block",
    "tub",
    "jar",
    "bottle",
    "tin",
    "bunch",
    "bar",
    "loaf",
    "bulb",
    "head",
    "piece",
)
_ONE_OF_THEM = ("piece", "medium", "fillet", "slice", "large", "small", "head")
_ANY_PIECE = ("piece", "medium", "head", "fillet", "ball", "block", "tin")
# Where a food has no measure of that name, the next best name for it.
_NEAREST = {
    "tin": ("tin", "can"), "can": ("can", "tin"), "heel": ("heel", "slice"), "stick": ("stick", "stalk", "piece"),
    "small": ("small", "piece"), "medium": ("medium", "piece"), "large": ("large", "piece"), "spear": ("piece",),
    "floret": ("floret", "piece"), "cube": ("cube", "piece"), "fillet": ("fillet", "piece"),
    "bag": ("bag", "packet"), "packet": ("packet", "bag", "sachet"), "pouch": ("pouch", "packet"),
    "tube": ("tube", "jar"),
    "piece": ("piece", "slice"), "clove": ("clove", "piece"), "leaf": ("leaf", "piece"), "mug": ("mug", "cup"),
    "tray": ("tray", "punnet", "packet"), "sachet": ("sachet", "packet"), "bottle": ("bottle", "jar"),
    "sleeve": ("sleeve", "packet", "bag"),
}  # fmt: skip
_SMALL_TIN_GRAMS = 180  # drained, of fish say, and no fifth of a large tin: common practice, no source
_OF_A_SMALL_TIN = 0.7  # common practice, no source
_GROSS_TIN_GRAMS = 400  # a standard tin with its liquid: common practice, no source
_CUP_ML = 236.6  # the US cup, which the tables' cups are of: NIST Handbook 44, Appendix C


# Only of a food that grows or is cut in such parts do these say anything: a leaf of lime is no lime.
_PARTS = {
    "leaf": {"leaf", "salad-leaf", "herb", "brassica"},
    "clove": {"allium"},
    "stalk": {"stem", "herb", "brassica", "allium", "shoot"},
    "spear": {"stem", "shoot", "brassica", "pickle"},
    "sprig": {"herb"},
    "floret": {"brassica"},
    "fillet": {"fish", "poultry", "meat"},
    "rasher": {"meat"},
    "cob": {"sweetcorn"},
    "nest": {"noodle", "pasta"},
    "bulb": {"allium", "stem"},
    "ball": {"cheese"},
    "bar": {"sweetener"},
    "loaf": {"bread"},
    "roll": {"bread"},
}
# How many a plural without a number is, by the weight of one in grams: common practice, no source.
_SEVERAL = ((40, 6), (60, 5), (170, 4), (450, 2), (10_000, 2))
_COOKING_POT_G = 700  # what holds so much is no pot of yoghurt: ours
_MORE_THAN_ONE = Span(1.5, 2.5, 4)  # times as many, of what comes by the piece; common practice, no source
_EGGS = 6  # a box: common practice, no source
_UNTOLD = frozenset({"wedge", "piece", "slice", "stick", "floret", "spear", "leaf", "cube", "portion", "fillet"})
_SIZES = {"small": Span(0.4, 0.55, 0.8), "large": Span(1.2, 1.5, 2)}  # of a pack; common practice, no source
_SMALLER = {"small": Span(0.4, 0.6, 0.9), "large": Span(1.1, 1.4, 2)}  # of a piece; common practice, no source
_END = Span(0.1, 0.25, 0.45)  # of a pack, what is called its end; common practice, no source
_WEDGE_OF_IT = Span(0.1, 0.2, 0.3)  # of a head or a whole one; common practice, no source
_WEDGE_OF_CHEESE = Span(80, 150, 250)  # g, as it is sold; common practice, no source
_PIECE_OF_CHEESE = Span(40, 100, 200)  # g, what is left of a pack; common practice, no source
_AS_SLICES = 3  # so many of a cheese are slices of it: ours
_PINT_OF_SOLIDS = Span(200, 300, 360)  # g of what is sold in punnets; common practice, no source
_SOLID = frozenset({"mushroom", "fruit", "tomato", "pepper", "pod", "potato", "root", "leaf", "brassica"})
_SOLD_IN_NETS = frozenset({"allium", "citrus", "fruit", "root", "pepper", "potato"})
_SECOND_PACK = Span(0.5, 0.65, 0.8)  # plenty of what fills a pack is not three of them; common practice
_A_LARGE_PACK = 300  # grams: ours
_IN_A_NET = Span(5, 8, 14)  # pieces; common practice, no source
_LARGE = 450  # grams: of what is heavier `a piece` is a part; ours
_TINY = 15  # grams: of what is smaller nobody has just one
_PORTIONS_OF_A_PACK = 4  # common practice, no source
_FEWEST_OF_A_PORTION = 0.12  # less of a main thing is a slip of the pen (15 g of chicken): ours
_MOST_PORTIONS = 40  # more of what does not keep is one too (3 kg of tortillas): ours
_MOST_OF_ANYTHING_G = 25_000  # a large sack; more, such as 999 bottles, is one of whatever there is: ours
_MAINS = frozenset({
    "poultry", "meat", "fish", "shellfish", "tofu", "tempeh", "seitan", "potato", "rice", "pasta", "noodle", "grain",
})  # fmt: skip
_KEPT_IN_BULK = frozenset({
    "rice", "grain", "flour", "pasta", "noodle", "potato", "oil", "sweetener", "pulse", "root", "juice", "milk",
    "plant-drink", "nut", "nut-butter", "seed", "dried-fruit", "fruit", "citrus", "allium", "brassica", "tomato",
})  # fmt: skip
_SACHET_G = 50  # a packet of no more is one portion of a powder: ours
_SERVING_G = 200  # of vegetables that were cooked: common practice, no source
_NEARLY_ALL = 0.7  # of a pack: a nearly full bag is the usual bag, and no bit of it; ours
_SHARE_PORTIONS = 2.5  # a bit is a bit of a small pack: of so many portions at most; common practice, no source


def grams_of(amount: Amount, food: Food, tables: Tables) -> Span | None:
    """Grams, low to high, or None where the measure says nothing about this food."""
    if amount.grams is not None:
        return amount.number.times(_drained(amount, food, tables))
    if food.kind == "cheese" and amount.share and amount.measure is None and amount.number == CHUNK:
        return _PIECE_OF_CHEESE
    if amount.plural and amount.measure in _UNTOLD and not _has_own(amount.measure, food, tables):
        amount = amount._replace(measure=None)  # `potato wedges` are no two wedges
    if amount.measure in _SIZES and food.state in CANNED_STATES and _has_own("tin", food, tables):
        amount = amount._replace(
            measure=None, number=amount.number.times(_SIZES[amount.measure])
        )  # `tinned toms, 2 big`
    row = _measure_for(amount, food, tables)
    if row is None and amount.measure is not None:
        size = _SIZES.get(amount.measure, Span(1, 1, 1))
        amount = amount._replace(measure=None, number=amount.number.times(size))
        row = _measure_for(amount, food, tables)
    if row is None:
        return None
    one = Span(float(row.low), float(row.grams), float(row.high))
    if amount.measure == "pint" and row.food == "*" and food.kind in _SOLID:
        one = _PINT_OF_SOLIDS  # a punnet by its volume: `1 pint mushrooms`
    if amount.measure == "wedge" and row.food == "*" and (whole := _any_piece(food, tables)) is not None:
        one = max(one, Span(float(whole.low), float(whole.grams), float(whole.high)).times(_WEDGE_OF_IT))
    if amount.measure == "wedge" and row.food == "*" and food.kind == "cheese":
        one = _WEDGE_OF_CHEESE
    if amount.measure == "piece" and amount.how == "guessed" and food.kind == "cheese" and row.measure == "slice":
        one = _PIECE_OF_CHEESE
    if amount.measure == "piece" and amount.how == "guessed" and one.typical >= _LARGE:
        one = one.times(_END)  # a piece of pumpkin is no whole one
    if amount.measure in _SMALLER and row.measure == "piece":
        one = one.times(_SMALLER[amount.measure])
    if amount.measure == "heel" and row.measure != "heel" and food.kind != "bread":
        amount = amount._replace(measure=None, share=True, number=amount.number.times(_END))
        row = _measure_for(amount, food, tables) or row
        one = Span(float(row.low), float(row.grams), float(row.high))
    if row.food == "*" and row.measure == "bag" and food.kind in _SOLD_IN_NETS and told_by_piece(food, tables):
        piece = _named("piece", food, tables) or row
        one = Span(float(piece.low), float(piece.grams), float(piece.high)).times(_IN_A_NET)
    if row.food == "*" and row.measure == "portion":
        # Nothing is known of its packs: some portions of it, no more than the general one.
        most = min(1.0, _PORTIONS_OF_A_PACK * float(food.portion_g) / one.typical)
        one = one.times(Span(most, most, most))
    if amount.share and amount.number.typical < _NEARLY_ALL:
        most = _SHARE_PORTIONS * float(food.portion_g) / amount.number.typical / one.typical
        one = one.times(Span(min(1, most), min(1, most), min(1, most)))
    several = Span(1, 1, 1)
    unnumbered = amount.plural or (amount.how == "none" and one.typical <= _TINY)
    if unnumbered and amount.measure is not None:
        several = Span(2, 4, 6) if amount.measure in _ONE_OF_THEM or amount.measure in _PARTS else Span(1.6, 2, 3)
    elif unnumbered and row.measure in _ONE_OF_THEM:
        count = _EGGS if food.kind == "egg" else _how_many(one.typical, float(food.portion_g))
        several = Span(count / 2, count, count * 1.6)
    elif _is_plenty(amount) and row.measure in _ONE_OF_THEM and one.typical < _LARGE:
        several = _MORE_THAN_ONE  # `onion plenty` is no two and a half
    elif _is_plenty(amount) and row.measure in CONTAINERS and one.typical >= _A_LARGE_PACK:
        several = _SECOND_PACK
    return amount.number.times(spread(amount)).times(one).times(several)


def as_a_serving(span: Span, amount: Amount, food: Food, words: str) -> Span:
    """What a line without an amount says was cooked or is left over, of a vegetable: a serving, and no whole one."""
    cooked = food.state == "raw" and food.kind in COOKED_AS_THEY_ARE and amount.how == "none"
    if not cooked or span.typical <= _SERVING_G or not COOKED_WORDS.search(words):
        return span
    share = _SERVING_G / span.typical
    return span.times(Span(share, share, share))


def _is_plenty(amount: Amount) -> bool:
    return amount.share and amount.number.typical > 1 and amount.measure is None


def _any_piece(food: Food, tables: Tables) -> Measure | None:
    """What a whole one weighs, where the tables know."""
    return next((row for name in ("head", "piece") for row in tables.own_measures(food) if row.measure == name), None)


def _has_own(measure: str, food: Food, tables: Tables) -> bool:
    return any(row.measure == measure for row in tables.own_measures(food))


def _how_many(grams: float, portion: float) -> float:
    """How many a plural without a number is: a few large things, of small ones what makes some portions."""
    if grams <= _TINY:
        return max(3.0, min(25.0, 3 * portion / grams))
    return next(count for most, count in _SEVERAL if grams <= most)


def fits_measure(amount: Amount, food: Food, tables: Tables) -> bool:
    """Whether a measure can be one of this food: cloves of garlic, stalks of celery, but no leaves of lime."""
    assert amount.measure is not None
    kinds = _PARTS.get(amount.measure)
    if amount.grams is not None or kinds is None or food.kind in kinds:
        return True
    return amount.measure in words_of(food.name) or _has_own(amount.measure, food, tables)


def out_of_proportion(amount: Amount, grams: Span, food: Food) -> bool:
    """Whether an amount is a wrong order of magnitude for the food, so that a cook would ask."""
    portion = float(food.portion_g)
    if amount.grams is not None and food.kind in _MAINS and grams.high < _FEWEST_OF_A_PORTION * portion:
        return True
    if grams.low > _MOST_OF_ANYTHING_G:
        return True
    return grams.low > _MOST_PORTIONS * portion and grams.low > 2000 and food.kind not in _KEPT_IN_BULK


def share_of(food: Food, tables: Tables) -> float:
    """Grams of one, to share an amount between the parts of a whole (greens and whites of spring onions)."""
    row = tables.measure(food, "piece") or tables.measure(food, "portion")
    return float(row.grams) if row else 1.0


def told_by_piece(food: Food, tables: Tables) -> bool:
    """Whether the tables know what one of a food weighs; without that a portion or a jar would stand in for it."""
    return any(row.measure in _ANY_PIECE for row in tables.own_measures(food))


def grams_of_volume(millilitres: Span, food: Food, tables: Tables) -> Span:
    """Grams of a volume by the weight of a cup of the food where its own row tells, else as of water."""
    own = {row.measure: row for row in tables.own_measures(food)}
    row, size = own.get("cup"), _CUP_ML
    if row is None:
        row, size = own.get("tbsp"), _CUP_ML / 16
    if row is None:
        return millilitres
    return millilitres.times(Span(float(row.low) / size, float(row.grams) / size, float(row.high) / size))


def _drained(amount: Amount, food: Food, tables: Tables) -> Span:
    """A tin named by its gross weight holds what the table says drains from it, in proportion."""
    assert amount.grams is not None
    in_brine = food.state == "canned drained" or (food.kind == "pulse" and food.state == "boiled")
    if in_brine and amount.measure in {"tin", "can"}:
        row = tables.measure(food, "tin")
        if row is not None and amount.grams.typical > 1.2 * float(row.grams):
            whole = float(row.grams)
            share = whole / _GROSS_TIN_GRAMS if whole > _SMALL_TIN_GRAMS else _OF_A_SMALL_TIN
            return amount.grams.times(Span(share, share, share))
    return amount.grams


def _measure_for(amount: Amount, food: Food, tables: Tables) -> Measure | None:
    if amount.measure is not None:
        return _named(amount.measure, food, tables)
    own = {row.measure: row for row in tables.own_measures(food) if not _is_cooking_pot(row)}
    if food.state in CANNED_STATES and "tin" in own:
        return own["tin"]  # `tinned tomatoes x6`
    if amount.how == "counted" and amount.number.typical < 1 and _is_cut_in_slices(own):
        return own["packet"]  # `apple pie 1/4` is a part of the whole
    if amount.how == "counted" and amount.number.typical < 1 and food.state == "cooked" and "tray" in own:
        return own["tray"]  # `half a lasagne` is half of what was baked
    wanted: tuple[str, ...] = _ANY_PIECE if amount.how == "counted" else _WITHOUT_AMOUNT
    if food.kind == "tofu":
        wanted = ("block", *wanted)  # one tofu is a block of it
    if food.kind == "cheese" and amount.how == "counted" and "slice" in own and amount.number.typical >= _AS_SLICES:
        return own["slice"]
    if food.kind == "milk" and "bag" in own:
        wanted = ("carton", "bottle", *wanted)  # a bag of it is told
    if amount.plural and not amount.share:
        wanted = tuple(name for name in _WITHOUT_AMOUNT if name not in {"head", "piece"}) + _ONE_OF_THEM
    told = amount.how == "counted" or amount.plural
    if not told and "packet" in own and own["packet"].grams <= _SACHET_G and (kept := own.get("tub") or own.get("jar")):
        return kept  # granules are bought by the tub, and a sachet of them is told
    for name in (*wanted, *CONTAINERS):
        if name in own:
            return own[name]
    for name in wanted if amount.how == "counted" else (*wanted, *CONTAINERS):
        row = tables.measure(food, name)
        if row is not None and row.food != "*" and not _is_cooking_pot(row):
            return row
    return tables.measure(food, "portion")


def _is_cooking_pot(row: Measure) -> bool:
    """Whether a pot is what a dish is cooked in, which is told where it is meant, and none that a shop sells."""
    return row.measure == "pot" and row.grams >= _COOKING_POT_G


def _is_cut_in_slices(own: dict[str, Measure]) -> bool:
    """Whether a piece of a food is a slice of it, and the tables know what a whole one weighs."""
    return {"piece", "slice", "packet"} <= own.keys() and own["piece"].grams == own["slice"].grams


def _named(measure: str, food: Food, tables: Tables) -> Measure | None:
    tries = _NEAREST.get(measure, (measure,))
    own = {row.measure: row for row in tables.own_measures(food)}
    for name in tries:
        if name in own:
            return own[name]
    for name in tries:
        row = tables.measure(food, name)
        if row is not None:
            return row
    return None
