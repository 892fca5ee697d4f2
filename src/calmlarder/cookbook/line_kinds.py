"""What a line of plain text is by itself: the heading of a part, an ingredient, a step."""

import re

from calmlarder.cookbook.bounds import LONGEST_STEP
from calmlarder.cookbook.run_together import has_name_first, is_a_list
from calmlarder.cookbook.serves import SERVES, pieces_in
from calmlarder.cookbook.text_lines import bare_line
from calmlarder.matching.amounts.numbers_and_fractions import NUMBER_ALONE
from calmlarder.matching.names.words import plain

LONGEST_INGREDIENT = 400
LONGEST_HEADING = 60
_INGREDIENTS = re.compile(
    r"(?:the )?(?:ingredients?|ingredient list|(?:(?:what|stuff|things|bits) )?you(?:'ll| will)? (?:need|want)"
    r"|shopping list"
    r"|(?:the )?(?:stuff|shopping|bits)|to (?:buy|get)|gather"
    r"|what goes in(?:to it)?|what's in it|the list)"
    r"(?: list)?(?: \(?(?:for|serves|serving|makes|feeds|enough for)\b.{0,40})?"
)
_METHOD = re.compile(
    r"(?:the )?(?:method|instructions?|directions?|preparation|steps?|how to (?:make|cook|do) .{0,40}|how to|"
    r"what (?:to|you) do|how to make it|do this|cooking|to (?:make|cook)|procedure|how it(?:'s| is) (?:done|made)"
    r"|what happens(?: next| then)?|(?:this is )?how|(?:how|what) (?:i|we) (?:do|make|cook)(?: it)?|make it"
    r"|(?:the|to) (?:do|doing)|the (?:how|work|job|graft|cooking)|to do list|doing it|putting it together"
    r"|here'?s how(?: to .{0,40})?"
    r"|let'?s (?:cook|go|bake|make it|get (?:cooking|baking|started))|off we go|get (?:cooking|baking))[!.]?"
)
# With a number before it or a stop behind it, it is a step.
_ONE_WORD = re.compile(r"\s*(?:#+ )?[*_]{0,2}(?:cook|then|next)[*_]{0,2}\s?:?\s*", re.IGNORECASE)
_OTHER = re.compile(
    r"(?:(?:(?:cook|chef|baker|author|recipe|kitchen|serving|make[- ]ahead)(?:'?s'?)? )?"
    r"(?:notes?|tips?|variations?)(?: (?:&|and) (?:tricks|tips|notes|variations|swaps))?"
    r"|nutrition.{0,30}|storage|stor(?:ing|age) .{0,30}|(?:how )?to (?:store|freeze)\b.{0,20}|video|equipment"
    r"|substitutions?|(?:easy |possible )?swaps|faqs?|frequently asked questions|you(?:'ll)? also need|comments?"
    # `about 12 sheets of lasagne` is an ingredient
    r"|about(?! (?:\d|[½¼¾⅓⅔⅛]|an? |half |one |two |three |four |five |six |ten |twelve |some )).{0,40})"
)
ABOUT = re.compile(r"(?:serves|servings?|makes|yields?|prep|cook|cooking|total|time|ready|source|by)\b")
# A stop behind what is cut short ends no sentence: `1 c. milk`.
_SHORT = re.compile(r"\b(c|tbsp?|tbl?s|tsp|oz|pkg|pkt|env|sm|lg|med|lbs?|pts?|qts?|gal|doz|ea|approx|abt|no)\.")
# `Filling: 1.5 kg chicken thighs; 4 leeks, sliced`
PART_IN_FRONT = re.compile(r"[ \t]*[-*+•]?[ \t]*[A-Za-z][\w ]{2,30}:[ \t]+(?=\d)")


def section_of(line: str) -> str | None:
    """`in` for the heading of ingredients, `on` for that of the method, `off` for notes and the like."""
    if len(line) > 2 * LONGEST_HEADING and ":" not in line[:LONGEST_HEADING]:
        return None
    if _ONE_WORD.fullmatch(line[:LONGEST_HEADING]):
        return "on"
    bare = plain(bare_line(line[:LONGEST_STEP].strip("= "))).rstrip(": ")
    head = bare.split(":")[0]
    for pattern, kind in ((_INGREDIENTS, "in"), (_METHOD, "on"), (_OTHER, "off")):
        if pattern.fullmatch(bare) or (kind != "off" and ":" in bare and pattern.fullmatch(head)):
            return kind
        if kind == "in" and head != bare and pattern.fullmatch(bare.rpartition(":")[2].strip()):
            return kind  # `Oat bars: the list`
    return None


def like_ingredient(line: str) -> bool:
    """Whether a line starts with an amount, or has it behind a name and a sign."""
    bare = plain(bare_line(line[: 2 * LONGEST_INGREDIENT]))
    if not bare or len(bare) > LONGEST_INGREDIENT // 2 or ABOUT.match(bare) or SERVES.match(bare) or pieces_in(bare):
        return False
    starts = NUMBER_ALONE.match(bare) or re.match(r"\d|an? (?:\w+ )?\w+ of\b", bare) or has_name_first(bare)
    return bool(starts) and not re.search(r"[.!?] [a-z]", _SHORT.sub(r"\1", bare))


def is_step(line: str) -> bool:
    """A line too long for an ingredient, or several sentences: somebody forgot the heading of the method."""
    return len(line) > LONGEST_INGREDIENT or (len(line) > 120 and len(re.findall(r"[.!?](?:\s|$)", line)) > 1)


def is_in_one_line(line: str) -> bool:
    """Whether a line is a whole list, with a sign between its foods: `2 tbsp oil; 1 onion, chopped; 2 courgettes`."""
    part = PART_IN_FRONT.match(line)
    line = line[part.end() :] if part else line
    return ";" in line and len(line) <= LONGEST_STEP and is_a_list(bare_line(line))
