"""Which foods a line names: one, or several, whatever stands between them."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.words import SMALL, singular, words_of
from calmlarder.matching.part import AS_LAST_TIME, WORD, Part, asked, name_part
from calmlarder.matching.several_foods.between_signs import foods_between_signs
from calmlarder.matching.several_foods.each_with_amount import each_with_its_amount, numbered_apart
from calmlarder.matching.several_foods.either_side import each_a_food, turned_back, two_foods
from calmlarder.matching.several_foods.headings import (
    bare_words,
    dishes_left_over,
    listed,
    names_both,
    of_one_heading,
    without_head_of_bracket,
)
from calmlarder.matching.several_foods.held_by_a_dish import dish_alone
from calmlarder.matching.several_foods.in_brackets import (
    before_bracket,
    explained,
    in_english,
    named_in_bracket,
    names_but_the_bracket,
    without_bracket,
)
from calmlarder.matching.several_foods.kinds import kinds_of_one
from calmlarder.matching.several_foods.of_it_again import of_it_again
from calmlarder.matching.several_foods.one_dish import by_two_flavours, in_one_pot, tastes_of_both, told_twice
from calmlarder.matching.several_foods.passed_over import passes_over
from calmlarder.matching.several_foods.pieces import COLON, ENDS, MOST_PARTS, SPLIT
from calmlarder.matching.several_foods.seasoned import is_seasoned_with
from calmlarder.matching.several_foods.unclear_piece import counted_apart, joined_to_strange, some_clear

_SAYS_MORE = LatePattern(r"\d|,|&|\+|^(?:and|plus|also|half)\b")
_SORTS_OF = LatePattern(r"(oil|vinegar|flour|milk|seed|nut|noodle)s?\s*(?::|\s-)\s*")
# `something orange, soup?`: who typed it does not know what it is.
_MIX_OF_TWO = LatePattern(r"((?:frozen |tinned )?[a-z]+ (?:and|&|n|\+) [a-z]+) (?:mix|medley)")
_RIDDLE = LatePattern(
    r"\b(?:something|mystery|unidentified|unlabell?ed|unknown|no idea what|god knows|dunno what)\b"
    r"|[a-z] ?\?+[ ,/]+(?:or )?[a-z ]+\?"
    r"|\b(?:could|might|may) be [a-z ]+?[, ]+(?:or )?(?:could|might|may|maybe)(?: be)? [a-z]"
    r"|\b(maybe|perhaps|possibly|probably) [a-z ]+?[, ]+(?:or )?(?:maybe|perhaps|possibly|probably) [a-z]"
    r"|\beither [a-z ]+ or [a-z]"
)
_HOLDS = LatePattern(r"\bwith (?:onions?|garlic)\b")
_HOLDS_TWO = LatePattern(r"^[^,;&+]*\bwith (?:[a-z]+ )?[a-z]+ (?:and|&|\+|n) [a-z]+\b")
_ALLIUM = LatePattern(r"\b(?:onions?|garlic|shallots?|leeks?)\b")
_WITH_ALLIUM = LatePattern(r",? ?\bwith (onions?|garlic)\b(?: (?:and|or|&) (onions?|garlic)\b)?(?=\s*(?:$|[,;.]))")
_TOLD = frozenset({"onion", "garlic"})
_ALLIUMS_ONLY = LatePattern(r"(?:onions?|garlic)(?:(?:,| and| &| \+) ?(?:onions?|garlic))?")
_NOT_IN_IT = LatePattern(
    r"\d|\b(?:no|non|not|without|minus|zero|free|for|smells?|beside|near|behind|next|from|spring|green|salad|leaves)\b"
)
_SAYS_MORE_OF_IT = LatePattern(r"\d|\b(?:half|also|plus)\b")
_COOKED_WITH = LatePattern(r"\b(?:boiled|cooked|stewed|simmered|braised|done|made) (?:up )?with\b")


def parts_of(text: str, hints: frozenset[str], brackets: tuple[str, ...], lexicon: Lexicon) -> list[Part]:
    """The foods of a line: one where the whole line names one, else one for each of its pieces.

    `brackets` are what stood in brackets; they are at the end of the text as well, behind commas. Where the line is
    not clear, a bracket is read as said of the last food before it: `cumin, chilli powder (has garlic)`.
    """
    found = dish_alone(_parts_of(text, hints, brackets, lexicon), text, brackets, lexicon)
    found = _with_alliums(found, text, brackets, lexicon)
    if len(brackets) > 1 or all(part.named.outcome == "matched" for part in found):
        return found
    if not brackets:
        return _mix_of_two(text, hints, lexicon) or _held_by_one(text, hints, lexicon) or found
    before = before_bracket(text, brackets[0])
    pieces = dishes_left_over([piece for piece in SPLIT.split(before) if piece.strip(ENDS)]) if before else []
    if not 2 <= len(pieces) <= MOST_PARTS:
        return found
    last = _parts_of(f"{pieces[-1]} , {brackets[0]}", hints, brackets, lexicon)
    apart = [*_parts_of(", ".join(pieces[:-1]), hints, (), lexicon), *last]
    clear = len(last) == 1 and all(part.named.outcome == "matched" for part in apart)
    return apart if clear else found


def _with_alliums(found: list[Part], whole: str, brackets: tuple[str, ...], lexicon: Lexicon) -> list[Part]:
    """The foods of a line whose bracket tells onion or garlic: those that hold it, or a question where none does.

    As in `kebab meat (onion, garlic)`; `cheese (garlic)`.
    """
    if len(brackets) != 1 or not _ALLIUM.search(brackets[0]) or _NOT_IN_IT.search(brackets[0]):
        return found
    told = {singular(word) for word in WORD.findall(brackets[0])} & {"onion", "garlic"}
    only_told = bool(told) and bool(_ALLIUMS_ONLY.fullmatch(brackets[0].strip(ENDS)))
    parts = [part for part in found if only_told and not part.named.takes <= told] or found
    foods = {food for part in parts for food in part.named.foods}
    names = lexicon.tables.food_by_id
    if not only_told and any(names[food].kind == "allium" for food in foods):
        return found  # `small onions (sambar onion)` tells but which
    held = all(
        any(word in words_of(names[food].name) or lexicon.is_made_with(food, word) for food in foods) for word in told
    )
    return parts if held or not foods else [asked(name_part(whole, frozenset(), lexicon))]


def _mix_of_two(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The two vegetables of a mix that has no name of its own: `frozen peas & sweetcorn mix`; or nothing."""
    found = _MIX_OF_TWO.fullmatch(text.strip(ENDS))
    parts = _parts_of(found[1], hints, (), lexicon) if found else []
    foods = [lexicon.tables.food_by_id[food] for part in parts for food in part.named.foods]
    clear = len(parts) == 2 and all(part.named.outcome == "matched" for part in parts)
    return parts if clear and all("vegetable" in food.roles for food in foods) else []


def _held_by_one(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The foods of a list by commas, of which one holds anyway what is said to be in it; or nothing."""
    pieces = [piece for piece in text.split(",") if piece.strip(ENDS)]
    holding = [piece for piece in pieces if _WITH_ALLIUM.search(piece)]
    if len(holding) != 1 or not 2 <= len(pieces) <= MOST_PARTS:
        return []
    held = _held_anyway(holding[0], hints, (), lexicon)
    others = _parts_of(", ".join(piece for piece in pieces if piece is not holding[0]), hints, (), lexicon)
    if held is None or any(part.named.outcome != "matched" or part.named.takes <= _TOLD for part in others):
        return []  # in `kebab with onion, garlic` both are in it
    return [*others, held]


def _parts_of(text: str, hints: frozenset[str], brackets: tuple[str, ...], lexicon: Lexicon) -> list[Part]:
    """The foods of a line, whose bracket is said of all of them."""
    text = numbered_apart(text, lexicon)
    text = text if brackets else turned_back(text, lexicon)
    kinds = kinds_of_one(text, hints, lexicon)
    if kinds:
        return kinds
    if flavoured := tastes_of_both(text, hints, lexicon):
        return [flavoured]
    if (headed := _SORTS_OF.match(text)) and (sorts := _of_one_sort(text, headed, hints, lexicon)):
        return sorts
    whole = name_part(text, hints, lexicon)
    if _RIDDLE.search(text):
        return [whole if AS_LAST_TIME in whole.named.assumed else asked(whole)]
    if held := _held_anyway(text, hints, brackets, lexicon):
        return [held]
    if not brackets and (each := each_with_its_amount(whole, text, hints, lexicon)):
        return each
    if not brackets and (lots := of_it_again(text, hints, lexicon)):
        return lots
    if len(brackets) == 1 and (told := _told_to_hold(whole, text, hints, brackets[0], lexicon)):
        return [told]
    if filled := _made_of_what_is_told(text, hints, brackets, lexicon):
        return [filled]
    if not brackets and (apart := counted_apart(text, hints, lexicon) or joined_to_strange(text, hints, lexicon)):
        return apart
    if glossed := in_english(whole, text, brackets, (hints, lexicon)):
        return [glossed]
    if brackets and whole.named.outcome == "matched":
        whole = named_in_bracket(whole, text, brackets, (hints, lexicon))
    if not brackets and whole.named.outcome == "matched" and (pieces := two_foods(text, lexicon)):
        both = [name_part(piece, hints, lexicon) for piece in pieces]
        if all(part.named.outcome == "matched" for part in both):
            return both
    if whole.named.outcome == "matched" and not (
        SPLIT.search(text)
        and (
            passes_over(whole, text, lexicon)
            or (not brackets and (names_both(text, lexicon) or each_a_food(whole, text, lexicon)))
        )
    ):
        return [whole]
    if whole.named.outcome == "ask" and not SPLIT.search(text) and " ".join(bare_words(text)) in lexicon.spelt:
        return [whole]  # `garlic chives` are one thing, whichever
    several = foods_between_signs(text, hints, lexicon)
    if pulses := _of_one_pot(several, text, lexicon):
        return pulses
    if filled := by_two_flavours(several, text, lexicon):
        return [filled]
    if in_one_pot(several, text, lexicon):
        return [asked(whole)]
    if len(several) > 1 and (_HOLDS.search(text) or _HOLDS_TWO.search(text)):
        return [asked(whole)]  # what is cooked with onion is nothing by itself any more
    if "/" in text and len(several) == 2 and several[0].named.foods == several[1].named.foods:
        several = [max(several, key=lambda part: part.amount.how != "none")]  # one thing by two names
    several = told_twice(several) if brackets else several
    several = without_head_of_bracket(several, brackets[0]) if brackets else several
    if whole.named.partly and several:
        return several  # `tomatoes and basil` are no sauce of them
    if whole.named.outcome == "matched":
        foods = {food for part in several for food in part.named.foods}
        return several if len(foods) > len(whole.named.foods) and len(foods) >= len(several) else [whole]
    if several:
        if (
            len(brackets) == 1
            and len(several) == 2
            and not _SAYS_MORE.search(brackets[0])
            and (text.rstrip(ENDS).endswith(brackets[0].strip(ENDS)))
        ):
            # Of `ham (opened), chocolate spread` the bracket names neither.
            before = text.rpartition(", ")[0]
            if len(foods_between_signs(before, hints, lexicon)) <= 1:
                return without_bracket(several, before, hints, lexicon)
        return several
    return _headed_or_explained(whole, text, hints, brackets, lexicon)


def _headed_or_explained(
    whole: Part, text: str, hints: frozenset[str], brackets: tuple[str, ...], lexicon: Lexicon
) -> list[Part]:
    """The foods below a heading, or the one that what stands behind it explains; else the line as a whole."""
    heading, *behind = COLON.split(text, 1)
    inside = of_one_heading(heading, behind, hints, lexicon) or listed((*brackets, *behind), hints, text, lexicon)
    if inside:
        return inside
    head, comma, tail = text.partition(",")
    if comma and not (_WITH_ALLIUM.search(tail) and _names_or_may(tail, hints, lexicon)):
        first = name_part(head, hints, lexicon)
        if first.named.outcome == "matched" and not whole.named.left:
            return [whole._replace(named=first.named, amount=whole.amount)]
    told = explained(text, brackets, hints, lexicon)
    if told is None and not brackets:
        return some_clear(text, hints, lexicon) or [whole]
    return [told or whole]


def _told_to_hold(whole: Part, text: str, hints: frozenset[str], bracket: str, lexicon: Lexicon) -> Part | None:
    """The food whose bracket tells onion or garlic alone: one that holds it anyway, or a question; else nothing."""
    if not _ALLIUMS_ONLY.fullmatch(bracket.strip(ENDS)):
        return None
    before = before_bracket(text, bracket)
    one = bool(before) and not SPLIT.search(before)  # `rice & peas (onion)` may be either
    if one and (held := _held_anyway(f"{before} with {bracket.strip(ENDS)}", hints, (), lexicon)):
        return held
    return asked(whole) if before and names_but_the_bracket(whole, before, bracket, lexicon) else None


def _names_or_may(text: str, hints: frozenset[str], lexicon: Lexicon) -> bool:
    """Whether words before `with onion` name some food, of whichever kind: `rice, dal with onion` is not rice alone."""
    found = _WITH_ALLIUM.search(text)
    named = name_part(text[: found.start()] if found else text, hints, lexicon).named
    return bool(named.takes or named.candidates)


def _of_one_pot(parts: list[Part], text: str, lexicon: Lexicon) -> list[Part]:
    """The pulses alone where others were cooked with them: what lay in their water counts as they do, and not as less.

    As in `black eyed beans, boiled with chard`.
    """
    if len(parts) < 2 or not _COOKED_WITH.search(text) or _ALLIUM.search(text):
        return []
    food = lexicon.tables.food_by_id
    cooked = foods_between_signs(text, frozenset({"cooked"}), lexicon)
    return [part for part in cooked if any(food[one].kind == "pulse" for one in part.named.foods)]


def _held_anyway(text: str, hints: frozenset[str], brackets: tuple[str, ...], lexicon: Lexicon) -> Part | None:
    """The one food of a line that holds anyway what is said to be in it: `shepherds pie, has onion in it`."""
    found = _WITH_ALLIUM.search(text)
    if not found:
        return None
    parts = _parts_of(f"{text[: found.start()]} {text[found.end() :]}", hints, brackets, lexicon)
    told = [singular(word) for word in found.groups() if word]
    if len(parts) != 1 or parts[0].named.outcome != "matched" or len(parts[0].named.foods) != 1:
        return None
    return parts[0] if all(lexicon.is_made_with(parts[0].named.foods[0], word) for word in told) else None


def _made_of_what_is_told(text: str, hints: frozenset[str], brackets: tuple[str, ...], lexicon: Lexicon) -> Part | None:
    """The made food before a bracket that tells but what is in it: `sausage rolls 6 (pork & onion)`."""
    before = (
        before_bracket(text, brackets[0]) if len(brackets) == 1 and not _SAYS_MORE_OF_IT.search(brackets[0]) else ""
    )
    told = [singular(word) for word in WORD.findall(brackets[0]) if word not in SMALL] if before else []
    if not told or SPLIT.search(before):
        return None
    part = name_part(before, hints, lexicon)
    if part.named.outcome != "matched" or len(part.named.foods) != 1:
        return None
    food = lexicon.tables.food_by_id[part.named.foods[0]]
    if all(lexicon.is_made_with(food.id, word) for word in told) or is_seasoned_with(food, told, lexicon):
        return part
    return None


def _of_one_sort(text: str, headed: re.Match[str], hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """Sorts of what a heading names: the sesame of `oils: olive, sesame` is no seed."""
    return of_one_heading(headed[1], [text[headed.end() :]], hints, lexicon)
