"""A sheet as one page of HTML that needs nothing: no script, no font, no picture, no request.

A policy in the page forbids all of them besides its own style, so that nothing a name holds could ask for one.
Recipes carry schema.org microdata, for whoever reads pages by machine.
"""

import base64
import hashlib
from collections.abc import Iterator
from html import escape

from calmlarder.render.sheet import Level, Part, Recipe, Sheet
from calmlarder.render.style import BESIDE_LIMITS

BEGINS = '<!DOCTYPE html>\n<html lang="en" data-made-by="calmlarder">'
_BAR = 100  # units of a bar's drawing

# Body text of 1.05rem with line lengths under 70 characters: readable from the stove. One colour for bars.
_STYLE = """
:root { color-scheme: light dark; --ink: #1b1b1b; --paper: #fffdf8; --quiet: #595959; --line: #d9d4c7; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #eceae4; --paper: #191817; --quiet: #b3b0a8; --line: #45423c; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.2rem; max-width: 62rem; background: var(--paper); color: var(--ink);
  font: 1.05rem/1.45 system-ui, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 0 0 .2rem; }
h2 { font-size: 1.1rem; margin: 1rem 0 .3rem; }
p { margin: .3rem 0; }
ul, ol { margin: .2rem 0; padding-left: 1.4rem; }
li { margin: .25rem 0; }
.about, .cautions, caption { color: var(--quiet); }
.cautions { border-top: 1px solid var(--line); margin-top: 1rem; padding-top: .5rem; font-size: .9em; }
table { border-collapse: collapse; width: 100%; font-size: .92em; overflow-wrap: normal; }
caption { text-align: left; padding-top: .8em; }
th { text-align: left; font-weight: normal; padding-right: .5rem; }
td { text-align: right; padding: .1rem .3rem; font-variant-numeric: tabular-nums; white-space: nowrap; }
td:last-child { width: 30%; min-width: 4rem; }
svg { width: 100%; height: .7rem; display: block; }
.track { fill: var(--line); }
.fill { fill: var(--ink); }
details { border-top: 1px solid var(--line); padding: .5rem 0; }
summary { font-weight: bold; }
@media (min-width: 50rem) { .columns { columns: 2; column-gap: 2rem; } section { break-inside: avoid; } }
@page { size: A4; margin: 12mm; }
@media print {
  :root { --ink: #000; --paper: #fff; --quiet: #333; --line: #bbb; }
  body { padding: 0; max-width: none; font-size: 9.5pt; line-height: 1.3; }
  h1 { font-size: 15pt; } h2 { font-size: 11pt; margin-top: 6pt; } li { margin: 1pt 0; } .cautions { font-size: 8pt; }
  .columns { columns: 2; column-gap: 8mm; } section { break-inside: auto; } details { display: none; }
  svg { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
}
"""


def as_html(sheet: Sheet) -> str:
    """The whole page."""
    digest = base64.b64encode(hashlib.sha256(_STYLE.encode()).digest()).decode()
    policy = f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
    head = [
        BEGINS,
        "<head>",
        '<meta charset="utf-8">',
        f'<meta http-equiv="Content-Security-Policy" content="{policy}">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '<meta name="referrer" content="no-referrer">',
        f"<title>{escape(sheet.title)}</title>",
        f"<style>{_STYLE}</style>",
        "</head>",
        "<body>",
    ]
    return "\n".join([*head, *_main(sheet, "main"), "</body>", "</html>"]) + "\n"


def _main(sheet: Sheet, tag: str) -> Iterator[str]:
    of = ' itemscope itemtype="https://schema.org/Recipe"' if sheet.recipe is not None else ""
    yield f"<{tag}{of}>"
    if tag == "main":
        yield f"<h1{_prop(sheet, 'name')}>{escape(sheet.title)}</h1>"
    else:
        yield f"<summary{_prop(sheet, 'name')}>{escape(sheet.title)}</summary>"
    yield f'<p class="about">{escape(sheet.about)}</p>'
    if sheet.recipe is not None:
        yield from _about_recipe(sheet.recipe)
    yield '<div class="columns">'
    for part in sheet.parts:
        yield from _part(part)
    if sheet.levels:
        yield from _levels(sheet.levels)
    yield "</div>"
    for dish in sheet.dishes:
        yield from _main(dish, "details")
    if tag == "main" and sheet.cautions:
        yield '<div class="cautions">'
        yield from (f"<p>{escape(caution)}</p>" for caution in sheet.cautions)
        yield "</div>"
    yield f"</{tag}>"


def _prop(sheet: Sheet, name: str) -> str:
    return f' itemprop="{name}"' if sheet.recipe is not None else ""


def _about_recipe(recipe: Recipe) -> Iterator[str]:
    yield f'<meta itemprop="recipeYield" content="{recipe.serves}">'
    if recipe.minutes is not None:
        yield f'<meta itemprop="totalTime" content="PT{recipe.minutes}M">'


def _part(part: Part) -> Iterator[str]:
    yield f"<section><h2>{escape(part.heading)}</h2>"
    prop = {"ingredients": ' itemprop="recipeIngredient"', "steps": ' itemprop="recipeInstructions"'}.get(part.kind, "")
    if part.kind == "words":
        yield from (f"<p>{escape(line)}</p>" for line in part.lines)
    else:
        tag = "ol" if part.kind == "steps" else "ul"
        yield f"<{tag}>"
        yield from (f"<li{prop}>{escape(line)}</li>" for line in part.lines)
        yield f"</{tag}>"
    yield "</section>"


def _levels(levels: tuple[Level, ...]) -> Iterator[str]:
    yield f"<section><table><caption>{BESIDE_LIMITS}</caption><tbody>"
    for one in levels:
        percent = round(one.share * 100)
        full = max(0, min(_BAR, round(one.share * _BAR)))
        bar = (
            f'<svg viewBox="0 0 {_BAR} 8" preserveAspectRatio="none" role="img" aria-label="{percent} %">'
            f'<rect class="track" width="{_BAR}" height="8"/><rect class="fill" width="{full}" height="8"/></svg>'
        )
        cells = f"<td>{one.likely}</td><td>{one.at_most}</td>"
        yield f'<tr><th scope="row">{escape(one.name)}</th>{cells}<td>{percent} %</td><td>{bar}</td></tr>'
    yield "</tbody></table></section>"
