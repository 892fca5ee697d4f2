"""Which state of a food a recipe means, where its name stands for several or leaves it open."""

from calmlarder.matching.names.foods import Candidate, Match
from calmlarder.tables.book import Tables

# What takes up water in the pot: its weight in a recipe is of the packet unless `cooked` stands before its name.
FROM_THE_PACKET = frozenset({"pasta", "rice", "noodle", "grain"})
_COOKED = frozenset({"cooked", "boiled", "roasted"})
_TINNED = frozenset({"canned", "tinned", "tin", "can", "jar", "carton"})
_DRY = frozenset({"dry", "dried", "soaked", "uncooked"})
_TOLD_COOKED = frozenset({
    "cooked", "boiled", "leftover", "steamed", "roast", "roasted", "baked", "microwave", "microwaveable", "precooked",
    "ready", "prepared", "ready-made",
})  # fmt: skip
# Pulses that recipes take dry from the packet, without a word: common practice, no source.
_DRY_PULSES = frozenset({"lentil", "dal", "split", "mung", "moong", "masoor", "urad", "puy"})
_COB = "sweetcorn-cob"
_UNRIPE = frozenset({"plantain-green"})  # sold ripe as well, when its starch has turned to sugar
_FLOUR = "flour-wheat-white"  # what `flour` means in a recipe: common practice, no source
_ROASTED_AS_WELL = frozenset({"nut", "seed"})  # toasting makes no other food of them
_SPICE_MEASURES = frozenset({"tsp", "tbsp", "pinch", "dash", "ground", "taste", "freshly", "grind", "twist"})


def in_recipe(match: Match, name: str, told: frozenset[str], tables: Tables) -> Match:
    """The match with what goes without saying in a recipe; what does not stays a question.

    Dry and tinned pulses are never taken for one another: without a word about it the cook is asked.
    """
    foods = [tables.food_by_id[candidate.food] for candidate in match.candidates]
    if not foods or match.score < 100:
        return _asked(match.candidates) if match.food is not None else match  # a slip of spelling is asked about
    words = set(name.split()) | told
    if len(foods) == 1:
        match = _from_the_packet(match, told, tables)
    if any(food.kind == "allium" for food in foods) and len(foods) > 1:
        return _part_told(match, told, tables)
    if all(food.kind == "pulse" for food in foods):
        return _pulse(match, words, told, tables)
    if len(foods) > 1:
        if any(food.id == _FLOUR for food in foods):
            return _chosen([candidate for candidate in match.candidates if candidate.food == _FLOUR], match, tables)
        if {"pepper-red", "pepper-green"} <= {food.id for food in foods} and told & (_SPICE_MEASURES | {"salt"}):
            pepper = tables.food_by_id["pepper-black"]
            return Match("matched", pepper, pepper.name, 100.0, (Candidate(pepper.id, pepper.name, 100.0),))
        if "cob" in told and any(food.id == _COB for food in foods):
            return _chosen([candidate for candidate in match.candidates if candidate.food == _COB], match, tables)
        if not told & _TOLD_COOKED:
            kept = [
                candidate for candidate in match.candidates if tables.food_by_id[candidate.food].state not in _COOKED
            ]
            match = _chosen(kept, match, tables)
        match = _alike(match, words, tables)
    return _asked(match.candidates) if _other_state(match, told) else match


def _from_the_packet(match: Match, told: frozenset[str], tables: Tables) -> Match:
    """What takes up water in the pot is weighed dry, unless the line says that it is cooked (`200 g egg noodles`)."""
    food = match.food
    if food is None or food.state not in _COOKED or food.kind not in FROM_THE_PACKET or told & _TOLD_COOKED:
        return match
    dry = tables.food_by_id.get(food.id.removesuffix("-cooked") + "-dry")
    return (
        match
        if dry is None
        else Match("matched", dry, dry.name, match.score, (Candidate(dry.id, dry.name, match.score),))
    )


def _alike(match: Match, words: set[str], tables: Tables) -> Match:
    """A question of which no answer matters (breast or thigh of `chicken`), answered; any other as it is."""
    if match.food is not None or not match.candidates:
        return match
    foods = [tables.food_by_id[candidate.food] for candidate in match.candidates]
    first = foods[0]
    for food in foods:
        if (food.kind, food.state, food.diet, food.allergens) != (first.kind, first.state, first.diet, first.allergens):
            return match
        if tables.unknown_of(food.id) or any(
            row.g_per_100g or row.high for row in tables.fermentables_of(food.id).values()
        ):
            return match
    named = max(foods, key=lambda food: len(words & set(food.name.split())))
    return Match("matched", named, named.name, 100.0, match.candidates)


def cooked_twin(match: Match, told: frozenset[str], tables: Tables) -> Match | None:
    """What a line has cooked of a food that the name tells dry in full (`cooked elbow macaroni`); None for others."""
    food = match.food
    if food is None or match.score < 100 or food.state != "dry" or food.kind not in FROM_THE_PACKET:
        return None
    twin = tables.food_by_id.get(food.id.removesuffix("-dry") + "-cooked") if told & _TOLD_COOKED else None
    return None if twin is None else Match("matched", twin, twin.name, 100.0, (Candidate(twin.id, twin.name, 100.0),))


def toasted(match: Match, told: frozenset[str], tables: Tables) -> Match:
    """Nuts and seeds that a line has roasted, taken for what they are; any other match as it is."""
    foods = [tables.food_by_id[candidate.food] for candidate in match.candidates]
    if match.food is None and len(foods) == 1 and foods[0].kind in _ROASTED_AS_WELL and told & {"roasted", "roast"}:
        return Match("matched", foods[0], foods[0].name, 100.0, match.candidates)
    return match


def _other_state(match: Match, told: frozenset[str]) -> bool:
    """A tin of what the tables know only raw, dried of what they know only fresh, ripe of what they know green."""
    food = match.food
    if food is None:
        return False
    if told & {"tin", "can", "tinned", "canned"} and food.state in {"raw", "dry", "frozen", "boiled"}:
        return food.kind not in {"spice", "flour", "starch"} and (food.kind, food.state) != ("pulse", "boiled")
    if "ripe" in told and food.id in _UNRIPE:
        return True
    return ("dried" in told and food.state == "raw") or ("fresh" in told and food.state in {"pickled", "canned"})


def _pulse(match: Match, words: set[str], told: frozenset[str], tables: Tables) -> Match:
    tinned, cooked, dry = bool(told & _TINNED), bool(told & _TOLD_COOKED), bool(told & _DRY)
    drained = bool(told & {"drained", "rinsed"}) and not dry
    states: set[str] = set()
    if tinned:
        states = {"canned drained", "canned"}
    elif dry:
        states = {"dry"}
    elif cooked:
        states = {"boiled", "cooked"}
    elif any(word.rstrip("s") in _DRY_PULSES for word in words) and "drained" not in told:
        states = {"dry"}
    elif drained:
        states = {"canned drained", "canned"}
    elif match.food is not None and (match.food.state in {"dry", "canned"} or "frozen" in told):
        return match  # a name that says `frozen` in full has settled it
    kept = [candidate for candidate in match.candidates if tables.food_by_id[candidate.food].state in states]
    if tinned and not kept:  # boiled ones hold at least as much: the brine takes some of theirs
        kept = [candidate for candidate in match.candidates if tables.food_by_id[candidate.food].state == "boiled"]
    return _chosen(kept, match, tables) if kept else _asked(match.candidates)


def _part_told(match: Match, told: frozenset[str], tables: Tables) -> Match:
    """Whites or greens of spring onions and leeks, where the line says so and names but one."""
    white, green = "white part" in told, "green part" in told
    if white == green:
        return _asked(match.candidates)
    end = "-white" if white else "-green"
    return _chosen([candidate for candidate in match.candidates if candidate.food.endswith(end)], match, tables)


def _chosen(kept: list[Candidate], match: Match, tables: Tables) -> Match:
    if len(kept) != 1:
        return _asked(tuple(kept) or match.candidates)
    food = tables.food_by_id[kept[0].food]
    return Match("matched", food, food.name, match.score, tuple(kept))


def _asked(candidates: tuple[Candidate, ...]) -> Match:
    return Match("ask", None, None, 100.0, candidates)
