"""What a recipe's title and steps tell of its lines: which food it is named for, what holds a filling, what binds."""

import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calmlarder.adapt.names import Names, foods_in, names_as_cut, names_by_cut, names_of, names_of_all, with_last_words
from calmlarder.adapt.uses import HEAT, JOINS, ON_TOP, Use, going_on, uses_in
from calmlarder.cookbook.bounds import MOST_SIGNS_OF_STEPS
from calmlarder.cookbook.recipe import IngredientRead, Recipe
from calmlarder.matching.names.words import plain, words_of
from calmlarder.swaps.candidates import same_thing
from calmlarder.tables.book import Tables

# Last words of names that title a dish for something else: an oil, a sauce.
_EVERYWHERE = frozenset(words_of("oil sauce seed leaf powder juice stock paste mix water cake sheet stick"))
_SENTENCES = re.compile(r"[.;!?]|,? (?:then|while|until)\b")
_ROASTS = re.compile(r"\b(?:roast\w*|bak(?:e|ed|ing)|oven|trays?|roasting)\b")
_STUFFED = re.compile(r"\b(?:stuff|fill|hollow out|spoon(?: [a-z ]{1,30})? into) (?:the |each |all )?((?:\w+ ?){1,3})")
# Where something is filled somewhere, what is slit or scooped out, or rolled up round it, and what is stuffed by title.
_FILLS = re.compile(r"\b(?:stuff|fill|wrap|roll)\w*\b")
_OPENED = re.compile(
    r"\b(?:slit|slash|scoop out|hollow(?: out)?|core|halve|press open|roll up|wrap \w+ in)"
    r" (?:out )?(?:the |each |every |all |a )(?:of the )?((?:\w+ ?){1,2})"
)
_STUFFED_TITLE = re.compile(r"\b(?:stuffed|filled) ((?:\w+ ?){1,3})")
# A mix that stands in the cupboard for weeks: nothing moist goes into it.
_KEPT_DRY = re.compile(
    r"\b(?:granola|muesli|trail mix)\b|\b(?:airtight|(?:jar|tin|cupboard)\b.{0,40}\b(?:weeks?|months?))\b",
    re.IGNORECASE,
)
_WET = re.compile(r"\b(?:fridge|refrigerat\w*|soak\w*|overnight|batter)\b", re.IGNORECASE)
# A part of the list that stays raw in a dish that is cooked, by its heading.
_RAW_PART = re.compile(
    r"\b(?:salsa|dressing|vinaigrette|salad|slaw|dip|raita|relish|garnish|toppings?|(?:to|for) serv(?:e|ing)"
    r"|to (?:assemble|build|stack))\b"
)
_SALAD = re.compile(r"\bsalad\b")
# Where everything is put together in the end, with no heat behind it.
_ALLIUM = "allium"
_SAVOURY = frozenset({"allium", "stock"})
_COATS = re.compile(r"\b(?:coat\w*|dip\w*|dredg\w*|press\w*|roll\w* in|breaded|crumbed)\b")
_BROTHY = re.compile(
    r"\b(?:stews?|soups?|chowder|broth|brothy|casserole|minestrone|ribollita|cassoulet|hot ?pot|da+h?ls?|dhals?"
    r"|sambh?ar)\b",
    re.IGNORECASE,
)
_SOUP = re.compile(r"\bsoups?\b|\bpotage\b", re.IGNORECASE)
_BY_THE_PIECE = re.compile(
    r"\b\d+[- ](?:hole|cup|bun|muffin)\b[^.;]{0,20}\b(?:tins?|trays?|pans?)\b"
    r"|\b(?:muffin|cupcake|bun) (?:tins?|trays?|pans?)\b|\b(?:paper|muffin|cake|the) (?:cases|liners)\b|\bramekins\b"
)
_SLAW = re.compile(r"\b(?:cole)?slaw\b|\bsalad\b", re.IGNORECASE)
_SWEET = re.compile(r"\bfruit salad\b|\b(?:dessert|pudding|breakfast)\b", re.IGNORECASE)
_RUB = re.compile(r"\b(?:rub\w*|dust\w*|coat\w*|seasoning|spice mix|dry mix)\b", re.IGNORECASE)
_SEVERAL_SPICES = re.compile(r"\b(?:powders|spices|seasonings|ingredients|rub)\b")
_IN_FAT = re.compile(
    r"\b(?:fry|fried|frying|saut\w+|sizzl\w*|melt\w*|bloom\w*|hot (?:oil|fat|butter))\b", re.IGNORECASE
)
_BLENDS = re.compile(r"\b(?:blend\w*|blitz\w*|pur[eé]e\w*|whi[sz]z\w*|liquidi[sz]e\w*|processor)\b")
_THROWS_AWAY = re.compile(r"\b(?:throw(?:ing)? (?:away|out)|discard(?:ing)?)\b")
_EVERYTHING = re.compile(r"\b(?:everything|all (?:of )?the (?:other |remaining )?ingredients)\b")
_TO_SERVE = re.compile(r"\b(?:to|for) (?:serve|serving|garnish|garnishing|finish|decorate|dipping|topping)\b")

_BINDS = re.compile(
    r"\b(?:batters?|doughs?|knead\w*|cakes?|muffins?|scones?|biscuits?|cookies|pancakes?|crepes?|waffles?|pastry|pie"
    r"|dumplings?|fritters?|loaf|loaves|buns?|rolls?|brownies?|sponges?|gnocchi|puddings?|blinis?|bread|whisk the eggs?"
    r"|burgers?|patties|meatballs?|kofta)\b"
)


class Told(NamedTuple):
    """The foods that the title names, and how each food is used; what is not told of is taken as `otherwise`."""

    titled: frozenset[str]
    uses: Mapping[str, Use]
    otherwise: Use
    to_serve: frozenset[str]
    stuffed: frozenset[str] = frozenset()  # what holds a filling stays in its pieces
    kept_dry: bool = False
    slaw: bool = False
    in_a_rub: frozenset[str] = frozenset()  # goes on dry, and meets no hot fat first
    coats: frozenset[str] = frozenset()  # is pressed on or dipped in, and binds nothing
    roasted: frozenset[str] = frozenset()  # lies in the oven for long
    named_for_a_food: bool = True  # a ratatouille is not
    brothy: bool = False  # a stew or a soup, in which grains would drink the broth
    soup: bool = False
    savoury: bool = False  # onions or stock are in it
    blended: frozenset[str] = frozenset()  # its colour is the colour of the whole
    thrown_away: frozenset[str] = frozenset()  # flavours a liquid and is strained out of it
    binds: bool = True  # has a batter or a dough
    by_the_piece: bool = False  # its tin or its cases say how many there are
    bears_less: bool = False  # of its main things, where nothing else brings it under

    def use_of(self, read: IngredientRead) -> Use:
        """How the food of a line is used."""
        if read.text in self.to_serve:
            return "raw"
        return self.uses.get(read.food or "", self.otherwise)

    def is_titled(self, food: str) -> bool:
        """Whether the dish is named for a food."""
        return food in self.titled


NOTHING_TOLD = Told(frozenset(), {}, "cooked", frozenset())


def told_of(recipe: Recipe, reads: Sequence[IngredientRead], tables: Tables) -> Told:
    """What title and steps tell. A dish in which nothing is heated is raw; what is stirred into one that is, cooked."""
    own = {read.food for read in reads if read.food}
    names = names_of(own, tables)
    whole = plain(" . ".join(recipe.steps)[:MOST_SIGNS_OF_STEPS])
    stuffed = {
        food
        for clause in _stuffed_in(plain(recipe.title), whole)
        for _, foods in foods_in(clause, with_last_words(own, tables))
        for food in foods
        if tables.food_by_id[food].roles[0] == "vegetable"
    }
    called = f"{recipe.title} . {whole}"
    sentences = _SENTENCES.split(whole)
    last_words = with_last_words(own, tables)
    both = [f"{one} {behind}" for one, behind in zip(sentences, going_on(sentences, last_words), strict=True)]
    lines = [(read.food, read.text) for read in reads if read.food in own and read.food]
    uses = uses_in(recipe.title, sentences, {**last_words, **names_as_cut(lines, tables)})
    titled = _titled(recipe.title, own, tables)
    return Told(
        titled=titled,
        named_for_a_food=bool(titled & own),
        savoury=any(tables.food_by_id[food].kind in _SAVOURY for food in own),
        brothy=bool(_BROTHY.search(recipe.title)),
        soup=bool(_SOUP.search(recipe.title)),
        binds=bool(_BINDS.search(plain(called))) or not whole.strip(),
        by_the_piece=bool(_BY_THE_PIECE.search(whole)),
        uses={**{food: "raw" for food in _in_raw_parts(reads, sentences) if food not in uses}, **uses},
        otherwise="cooked" if HEAT.search(whole) or not whole.strip() else "raw",
        to_serve=frozenset(read.text for read in reads if _TO_SERVE.search(plain(read.text)))
        | _on_top(reads, tables)
        | _raw_lines(recipe.title, sentences, reads, tables),
        stuffed=frozenset(stuffed),
        kept_dry=bool(_KEPT_DRY.search(called)) and not _WET.search(whole),
        slaw=bool(_SLAW.search(called)) and not _SWEET.search(called),
        in_a_rub=_in_a_rub(whole, names, {food for food in own if tables.food_by_id[food].kind == "spice"}),
        coats=_named_where(_COATS, sentences, last_words),
        roasted=_named_where(_ROASTS, both, last_words),
        thrown_away=_named_where(_THROWS_AWAY, sentences, last_words),
        blended=frozenset(own)
        if any(_BLENDS.search(one) and _EVERYTHING.search(one) for one in sentences)
        else _named_where(_BLENDS, sentences, last_words),
    )


def _raw_lines(title: str, sentences: Sequence[str], reads: Sequence[IngredientRead], tables: Tables) -> frozenset[str]:
    """Lines of a food that several hold, which stay raw as they are cut: `the sliced onion`."""
    texts: dict[str, set[str]] = {}
    for read in reads:
        if read.food in tables.food_by_id and read.food:
            texts.setdefault(read.food, set()).add(read.text)
    raw: set[str] = set()
    for food, lines in texts.items():
        if len(lines) > 1:
            names = names_by_cut(food, sorted(lines), tables)
            raw |= {text for text, use in uses_in(title, sentences, names).items() if use == "raw"}
    return frozenset(raw)


def _named_where(done: re.Pattern[str], sentences: Sequence[str], names: Names) -> frozenset[str]:
    """The foods of the sentences in which something is done."""
    there = (sentence for sentence in sentences if done.search(sentence))
    return frozenset(food for sentence in there for _, foods in foods_in(sentence, names) for food in foods)


def _stuffed_in(title: str, steps: str) -> list[str]:
    """The clauses that name what holds a filling."""
    opened = _OPENED.findall(steps) if _FILLS.search(steps) else []
    return [*_STUFFED.findall(steps), *opened, *_STUFFED_TITLE.findall(title)]


def _is_stirred_cold(heading: str, sentences: Sequence[str]) -> bool:
    """Whether a part of the list is only stirred together, and spread or spooned on where it is named again.

    `Stir together all of the sauce ingredients. ... Spread the buns with sauce.`
    """
    name = next(iter(words_of(heading)[-1:]), "")
    said = re.compile(rf"\b(?:the|with|of) {re.escape(name)}\b|\b{re.escape(name)} ingredients\b")  # no soy sauce
    named = [one for one in sentences if name and said.search(one)]
    mixed = [one for one in named if "ingredients" in one and JOINS.search(one)]
    again = [one for one in named if one not in mixed]
    return bool(mixed and again) and not any(map(HEAT.search, mixed)) and all(map(ON_TOP.search, again))


def _in_raw_parts(reads: Sequence[IngredientRead], sentences: Sequence[str]) -> frozenset[str]:
    """Foods that stand under a heading of something raw (`For the salsa`), and under no other."""
    raw: set[str] = set()
    else_: set[str] = set()
    part = False
    for read in reads:
        if read.outcome == "heading":
            head = plain(read.text)
            part = bool(_RAW_PART.search(head)) or _is_stirred_cold(head, sentences)
        elif read.food:
            (raw if part else else_).add(read.food)
    return frozenset(raw - else_)


def _on_top(reads: Sequence[IngredientRead], tables: Tables) -> frozenset[str]:
    """Lines of onion and the like under a heading of what stays raw, where other lines have another heading.

    `For the salad` over all that is roasted for it tells nothing; the steps do.
    """
    raw: set[str] = set()
    part = False
    in_salad = False
    for read in reads:
        if read.outcome == "heading":
            part = bool(_RAW_PART.search(plain(read.text)))
            in_salad = bool(_SALAD.search(plain(read.text)))
        food = tables.food_by_id.get(read.food or "")
        if part and not in_salad and read.outcome != "heading" and food is not None and food.kind == _ALLIUM:
            raw.add(read.text)
    return frozenset(raw)


def _in_a_rub(steps: str, names: Names, spices: set[str]) -> frozenset[str]:
    """Foods that a sentence rubs or dusts on, and none puts into hot fat."""
    rubbed: set[str] = set()
    fried: set[str] = set()
    for sentence in _SENTENCES.split(steps):
        named = {food for _, foods in foods_in(sentence, names) for food in foods}
        if _IN_FAT.search(sentence):
            fried |= named
        elif _RUB.search(sentence):
            rubbed |= named
            rubbed |= spices if _SEVERAL_SPICES.search(sentence) else set()
    return frozenset(rubbed - fried)


def _titled(title: str, own: set[str], tables: Tables) -> frozenset[str]:
    """The foods that a title names; of the recipe's own by a last word (`dal`), or as the most of a dish too."""
    named = {food for _, foods in foods_in(title, names_of_all(tables)) for food in foods}
    words = set(words_of(title)) - _EVERYWHERE
    rows = [(food.name, food.id) for food in tables.foods] + [(row.name, row.food) for row in tables.names]
    heads = {food for name, food in rows if food in own and set(words_of(name)[-1:]) & words}
    heads |= {food for food in own if _is_made_of(food, words, tables)}  # coconut milk in a coconut curry
    mains = set()
    for dish in named:
        mixture = tables.composite_of(dish)
        if mixture is not None:
            main = max(mixture.parts, key=lambda part: part.grams).food
            mains |= {food for food in own if same_thing(main, food)}
    return frozenset(named | heads | mains)


def _is_made_of(food: str, words: set[str], tables: Tables) -> bool:
    """Whether a title names what a wet thing is made of and called by first."""
    row = tables.food_by_id[food]
    first = words_of(row.name)[:1]
    alone = any(words_of(one.name) == first for one in tables.foods)
    return (
        bool(first)
        and first[0] in words
        and alone
        and row.roles[0] in {"liquid", "sauce", "fat"}
        and (row.kind not in {"stock", "oil", "acid", "spice"})
    )
