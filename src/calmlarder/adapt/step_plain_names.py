"""Names in a changed step that bear no bracket: milk by how it is, an amount behind `the`, ends that are gone."""

import re

# `the fishy milk [lactose-free milk]` is milk of whatever kind
_SAME_KIND = re.compile(
    r"\b(?P<how>[a-z]+) (?P<kind>milk|stock|broth|cream|yoghurt|flour|pasta|bread) "
    r"\[[a-z -]*\b(?P=kind)(?: without [a-z ]+)?\]"
)
_THE_MUCH = re.compile(r"\bthe (?=\d[\d/ ]* ?(?:tsp|tbsp|g|ml) of the\b)")
# `Drop the asparagus [green beans] ends into the stock and keep it barely simmering.`
_ENDS_IN = re.compile(
    r"\b(?P<verb>drop|put|add|throw|tip) the [a-z]+ \[(?P<now>[a-z ]+)\] "
    r"(?:ends|stalks|trimmings|peelings|skins|tops|cores|leaves) (?:in(?:to)?|to) (?:the )?(?P<what>[a-z]+) "
    r"and (?P<next>[a-z]+) it\b(?P<rest>[^.;]*[.;] ?)(?P<cut>(?:Slice|Cut|Chop) them\b)?",
    re.IGNORECASE,
)
_LEAVING_THEM = re.compile(r" \((?:leav|without)\w* the (?:ends|stalks|trimmings)[^()]*\)", re.IGNORECASE)
_AND_PASTE = re.compile(r"\b(?P<g>g)arlic \[garlic-infused oil\](?: and|,)? ginger paste\b", re.IGNORECASE)
# `so the rye [100 g of the gluten-free flour blend] softens`; `Peel the oyster mushrooms, snap out the stalks`
_PART_DOES = re.compile(
    r"\bthe [a-z]+ \[\d+ (?:g|ml) of the (?P<now>[a-z -]+)\](?= (?:softens|swells|thickens|absorbs|drinks|hydrates)\b)"
)
_CAPS = re.compile(
    r"\b(?P<verb>P|p|W|w|C|c|B|b)(?:eel|ipe|lean|rush) the oyster mushrooms(?:(?:,| and) (?:the )?(?P<other>[a-z]+))?"
    r"(?=,| and)[^.;]*?\b(?:stalks|stems|caps)\b[^.;]*"
)


def with_plain_names(step: str) -> str:
    """A changed step with these names as a cook says them."""
    step = _AND_PASTE.sub(lambda one: f"{one['g']}arlic-infused oil, ginger", _ENDS_IN.sub(_without_ends, step))
    step = _CAPS.sub(_torn, _PART_DOES.sub(r"the \g<now>", step))
    return _LEAVING_THEM.sub("", _THE_MUCH.sub("", _SAME_KIND.sub(r"\g<how> \g<kind>", step)))


def _without_ends(found: re.Match[str]) -> str:
    verb = found["next"].capitalize() if found["verb"][0].isupper() else found["next"]
    cut = f"{found['cut'].split()[0]} the {found['now']}" if found["cut"] else ""
    return f"{verb} the {found['what']}{found['rest']}{cut}"


def _torn(found: re.Match[str]) -> str:
    torn = f"{'Tear' if found['verb'].isupper() else 'tear'} the oyster mushrooms"
    others = found["other"] in {"aubergine", "courgette", "tofu"}
    return f"{torn} and slice the {found['other']}" if others else torn
