"""Read a recipe that somebody else wrote, whatever form it came in."""

from calmlarder.clean import clean
from calmlarder.cookbook.bounds import DEEPEST, MOST_SIGNS, fail
from calmlarder.cookbook.jsonld import depth_of, object_in, recipe_of
from calmlarder.cookbook.microdata import microdata_recipe
from calmlarder.cookbook.page import ld_blocks, looks_like_html
from calmlarder.cookbook.recipe import Recipe
from calmlarder.cookbook.words import recipe_in_words


def read_recipe(text: str) -> Recipe:
    """A recipe from plain text, Markdown, schema.org/Recipe JSON-LD, or a page of HTML with JSON-LD or microdata.

    Nothing in it is run; all text that comes out is cleaned. Raises CannotGoOn, in words for a cook, when no
    recipe is found or the text is beyond any recipe.
    """
    if len(text) > MOST_SIGNS:
        fail("is larger than 5 MB", "give the recipe alone")
    text = text.removeprefix("\ufeff")
    if looks_like_html(text):
        return _from_json(ld_blocks(text), "the page holds no recipe that it marks as one", text)
    if text.lstrip()[:1] in ("{", "["):
        return _from_json([text], "the file holds no recipe of schema.org's kind")
    return recipe_in_words(clean(text))


def _from_json(blocks: list[str], nothing: str, page: str = "") -> Recipe:
    for block in blocks:
        found = object_in(block)
        if found is not None:
            return recipe_of(found)
    marked = microdata_recipe(page)
    if marked is not None:
        return recipe_of(marked)
    if any(depth_of(block) > DEEPEST for block in blocks):
        fail("is nested deeper than any recipe", "give the recipe's text instead")
    fail(nothing, "copy the recipe's text into a file and give that")
