"""Read a recipe that somebody else wrote, whatever form it came in."""

import re
from collections.abc import Sequence
from itertools import takewhile
from typing import NoReturn

from calmlarder.clean import clean
from calmlarder.cookbook.behind import is_between, is_over
from calmlarder.cookbook.blocks import blocks_of
from calmlarder.cookbook.bounds import DEEPEST, MOST_SIGNS, fail
from calmlarder.cookbook.envelope import opened
from calmlarder.cookbook.guessed import guessed_object
from calmlarder.cookbook.jsonld import depth_of, names_ingredients, objects_in, recipe_of, with_address
from calmlarder.cookbook.line_kinds import section_of
from calmlarder.cookbook.microdata import hrecipe, microdata_recipe
from calmlarder.cookbook.own_notes import notes_of
from calmlarder.cookbook.page import address_of, ld_blocks, looks_like_html
from calmlarder.cookbook.page_headings import with_page_headings
from calmlarder.cookbook.plain_json import plain_objects, texts_in
from calmlarder.cookbook.recipe import Recipe
from calmlarder.cookbook.serves import pieces_named, serves_in_prose
from calmlarder.cookbook.told_needs import told_as_lists
from calmlarder.cookbook.words import is_a_recipe, recipe_in_words

_LONGEST_HEADING = 40  # signs: `Method`, `What to do`: ours
# A number that a page sets before each step: `1`, `Step 2`.
_LABEL = re.compile(r"(?:(?:step|stage|part)\s*)?\d{1,2}\s*[.):]?", re.IGNORECASE)

_NUMBERED = re.compile(r"^(?:(?:step\s*)?\d{1,2}\s?[.):]\s+|step\s*\d{1,2}\s?[-–—.:)]\s*)(?=\D)", re.IGNORECASE)
_COUNT = re.compile(r"(\d{1,2})\s+(?=[A-Z])")
# A writer's farewell is no step: `Enjoy, and tell me how it went!`
_FAREWELL = re.compile(
    r"(?:(?:now )?enjoy\b[\s!.,:)]*|bon app[eé]tit\b[\s!.,]*|happy \w+ing\b[\s!.,]*)?(?:(?:and|please|do|then) )*"
    r"(?:tell me|let me know|tag me|leave (?:a|me a) (?:comment|note|review)|share your|drop me)\b.{0,120}",
    re.IGNORECASE,
)


# Nor what a page has round its recipe: questions, ways to other pages, figures of nutrition, marks that readers gave.
_ROUND_IT = re.compile(
    r"(?:please )?(?:leave|write) (?:us |me )?a (?:comment|review|rating)\b.*"
    r"|nutrition(?:al)?(?: (?:info(?:rmation)?|facts|values?))?(?: \(?per .{1,20})?:.*"
    r"|(?:calories|kcal|energy)\b:? ?\d.*"
    r"|.{0,40}\b\d(?:[.,]\d)? (?:out of|/) ?5\b.*|(?:share|print|save|pin|rate) (?:this|it)\b.{0,60}"
    r"|(?:subscribe|sign up|join)\b.{0,60}\b(?:newsletter|mailing list|e-?mails?|inbox)\b.*"
    r"|(?:get|want) .{0,40}\b(?:by e-?mail|in your inbox)\b.*"
    r"|(?:next|previous|related|see also|more like this)\s?:[^.]*|[^|.!]{1,60}(?:\|[^|.!]{1,60}){2,}"
    r"|(?:allergens?|allergy (?:advice|information)|dietary(?: information)?)\s?:.*"
    # what becomes of the rest, and what else could be done
    r"|left[ -]?overs?(?: \w+){0,2}\s?[?:].*|any (?:left[ -]?overs?|that is left)\b.*"
    r"|(?:(?:recipe|serving) )?(?:swaps?|variations?)\s?:.*"
    r"|(?:notes?|tips?|n\.?b\.?)\s?:\s?you (?:can|could|may|might) (?:(?:also|easily|just) )?"
    r"(?:use|swap|replace|add|try)\b.*"
    # whose it is, and a way back
    r"|recipe(?: and \w+)?\s?:\s?(?-i:[A-Z][\w'’-]+(?: [A-Z][\w'’-]+){1,3})\b.{0,120}"
    r"|[~–—] ?(?-i:[A-Z][\w'’.-]*)(?: (?-i:[A-Z][\w'’.-]*)){0,3}"
    r"|back to (?:the|my|our) \w+\b.{0,80}"
    r"|recipe tips?:? (?:swap|replace|use .{1,40} instead)\b.*",
    re.IGNORECASE | re.DOTALL,
)
# A way to another of the page's dishes, at the end of a step: `Also try our beetroot dip and ...`.
_ELSEWHERE = re.compile(
    r"(?:(?<=[.!?)] )|^)(?:(?:also|or|why not|you (?:can|could|may) also|next time,?|(?:and )?do) )*"
    r"(?:try|see|visit|cook|check out) (?:also )?(?:our|my)\b[^.!?]*[.!?]?\s*$",
    re.IGNORECASE,
)
_ASIDE = re.compile(r"\[(?!No |In place )[^\[\]]{1,400}\]|\((?!No )[^()]{1,400}\)")


# `[14:02] Kit: ...` and `[ ] 200 g flour` begin with a bracket, too.
_IS_JSON = re.compile(r"\s*(?:\{|\[\s*(?:[\[{\"]|\]\s*$|$))")


def read_recipe(text: str) -> Recipe:
    """A recipe from plain text, Markdown, schema.org/Recipe JSON-LD, or a page of HTML.

    Of a page its JSON-LD is read, else its microdata, its hRecipe classes, and last its headings and lists, which
    the recipe then says (`guessed`).

    Nothing in it is run; all text that comes out is cleaned. Raises CannotGoOn, in words for a cook, when no
    recipe is found or the text is beyond any recipe.
    """
    found = _read(text)
    told = [_ELSEWHERE.sub("", step).strip() for step in found.steps]
    steps = _without_counts([_NUMBERED.sub("", step) for step in told if not _is_no_step(step)])
    found = found if steps == found.steps else found.model_copy(update={"steps": steps})
    return found.model_copy(update={"pieces": pieces_named(found.pieces, found.title)}) if found.pieces else found


def _without_counts(steps: Sequence[str]) -> tuple[str, ...]:
    """The steps without the number that each of them has in front, set apart by its look alone: `1 Warm the oil`."""
    counts = [_COUNT.match(step) for step in steps]
    run = [found for place, found in enumerate(counts, start=1) if found and int(found[1]) == place]
    counted = len(run) > 1 and len(run) == sum(found is not None for found in counts)
    return tuple(_COUNT.sub("", step) if counted else step for step in steps)


def _is_no_step(step: str) -> bool:
    # A writer's own remark in brackets is none either; what the program left out of a recipe stands in brackets, too.
    bare = step.strip()
    told = (_LABEL, _FAREWELL, _ASIDE, _ROUND_IT)
    heads = section_of(_NUMBERED.sub("", bare)) is not None and len(bare) <= _LONGEST_HEADING
    heads = heads and not bare.partition(":")[2].strip()
    return (
        heads
        or not re.search(r"\w", bare)
        or is_over(bare)
        or is_between(bare)
        or any(pattern.fullmatch(bare) for pattern in told)
    )


def _read(text: str) -> Recipe:
    if len(text) > MOST_SIGNS:
        fail("is larger than 5 MB", "give the recipe alone")
    text = text.removeprefix("\ufeff")
    if looks_like_html(text):
        return _of_page(text).model_copy(update={"page": True, "notes": notes_of(blocks_of(text))})
    if _IS_JSON.match(text):
        found = next(filter(names_ingredients, objects_in(text)), None)
        is_standard = found is not None
        found = found or next(filter(names_ingredients, plain_objects(text)), None)
        if found is None and is_a_recipe(told := clean(texts_in(text))):
            return recipe_in_words(told).model_copy(update={"guessed": True, "page": True})
        if found is None:
            _refuse([text], "the file holds no recipe of schema.org's kind, and none in plain words")
        return recipe_of(found).model_copy(update={"page": not is_standard})
    return recipe_in_words(opened(clean(text)))


def _of_page(page: str) -> Recipe:
    """What the page marks as a recipe; where it marks none with ingredients, what its headings and lists say."""
    blocks = ld_blocks(page)
    objects = [found for block in blocks for found in objects_in(block)]
    found = next(filter(names_ingredients, objects), None) or microdata_recipe(page) or hrecipe(page)
    if found is not None:
        return _fed(with_page_headings(recipe_of(with_address(found, address_of(page))), page), page)
    told = guessed_object(page)
    if told is None and (listed := told_as_lists("\n\n".join(_of_the_dish(page)))) is not None:
        return recipe_in_words(listed).model_copy(update={"guessed": True})
    if told is None:
        _refuse(blocks, "the page holds no recipe that it marks as one, and no list that reads like ingredients")
    # Of a recipe that is marked and names no ingredient the rest still counts.
    marked = {key: value for key, value in (objects[0] if objects else {}).items() if value}
    for key in ("recipeIngredient", "ingredients"):
        marked.pop(key, None)
    whole = {**told, **marked, "recipeIngredient": told["recipeIngredient"]}
    return _fed(recipe_of(with_address(whole, address_of(page))).model_copy(update={"guessed": True}), page)


def _of_the_dish(page: str) -> list[str]:
    """The lines of a page but for ways elsewhere and what else stands round a recipe."""
    texts = [one.text for one in blocks_of(page)]
    return [text for text in texts if not (is_over(text) or _ROUND_IT.fullmatch(text))]


def _fed(recipe: Recipe, page: str) -> Recipe:
    """The recipe that tells no people, for as many as the prose of its page says that it feeds."""
    if recipe.serves is not None:
        return recipe
    texts = [one.text for one in blocks_of(page)]
    first = next((place for place, text in enumerate(texts) if text in recipe.ingredients), 0)
    # above its list a page has its ways elsewhere, behind which it goes on
    texts = [*texts[:first], *takewhile(lambda text: not is_over(text), texts[first:])]
    told = serves_in_prose(texts)
    if told is None:
        return recipe
    low, high = told
    return recipe.model_copy(update={"serves": low, "serves_up_to": high if high > low else None})


def _refuse(blocks: Sequence[str], nothing: str) -> NoReturn:
    if any(depth_of(block) > DEEPEST for block in blocks):
        fail("is nested deeper than any recipe", "give the recipe's text instead")
    fail(nothing, "copy the recipe's text into a file and give that")
