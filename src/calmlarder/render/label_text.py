"""A packet read, as text and as plain JSON values."""

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

from calmlarder.and_list import and_list
from calmlarder.labels.read import Label, Told
from calmlarder.render.caution import CAUTION
from calmlarder.render.style import Style

_HOLDS = {
    "fructans": "fructans", "gos": "GOS", "lactose": "lactose", "fructose": "fructose", "sorbitol": "sorbitol",
    "mannitol": "mannitol", "polyols": "polyols", "hidden": "onion or garlic unnamed",
}  # fmt: skip


def label_text(label: Label, style: Style, avoided: Sequence[str] = ()) -> str:
    """The answer and what to do, then why: what matters in the order of the list, and allergens.

    `avoided` are allergens that somebody at home does without.
    """
    answer = [*_avoided(label, avoided), _answer(label), *label.advice]
    parts = [[line for one in answer for line in textwrap.wrap(one, style.width)]]
    parts += [list(_matters(label, style)), list(_allergens(label, style)), textwrap.wrap(CAUTION, style.width)]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _answer(label: Label) -> str:
    """What the list holds and what it may hold, by group, each with its words: in one sentence."""
    said = [
        f"{verb} {named}" for verb, sure in (("holds", "yes"), ("may hold", "may")) if (named := _by_group(label, sure))
    ]
    return f"It {'; it '.join(said)}." if said else "It names nothing that is known to matter."


def _by_group(label: Label, sure: str) -> str:
    groups: dict[str, dict[str, None]] = {}
    for one in label.told:
        if one.word.sure == sure:
            groups.setdefault(_HOLDS[one.word.holds], {})[one.word.words] = None
    return and_list(
        [group if [*words] == [group] else f"{group} ({', '.join(words)})" for group, words in groups.items()]
    )


def _avoided(label: Label, avoided: Sequence[str]) -> Iterator[str]:
    for held, how in ((label.allergens, "names"), (label.traces, "may hold traces of")):
        named = [one for one in held if one in avoided]
        if named:
            yield f"It {how} {and_list(named)}, which somebody here avoids."


def _matters(label: Label, style: Style) -> Iterator[str]:
    count = "1 ingredient" if label.ingredients == 1 else f"{label.ingredients} ingredients"
    yield from style.headings(f"{count} read; what matters, in the order of the list (by weight)")
    if not label.told:
        yield "  nothing that is known to"
    for one in label.told:
        yield from style.hanging(_told(one))


def _told(one: Told) -> str:
    where = f"number {one.listed.place}" + (f" in {one.listed.inside}" if one.listed.inside else "")
    amount = f"{one.listed.most_percent:.3g} %"
    said = one.listed.said_percent is not None and not one.listed.inside
    much = f"{amount}, as the packet says" if said else f"at most {amount}"
    sure = "holds" if one.word.sure == "yes" else "may hold"
    note = f" ({one.word.note})" if one.word.note else ""
    return f"{one.listed.text}: {where}, {much}; {one.word.words} {sure} {_HOLDS[one.word.holds]}{note}"


def _allergens(label: Label, style: Style) -> Iterator[str]:
    yield style.strong("Allergens, of the fourteen of Regulation (EU) No 1169/2011")
    yield from style.hanging(", ".join(label.allergens) or "none by its words; the packet itself decides")
    if label.traces:
        yield from style.hanging(f"traces, it says: {', '.join(label.traces)}")


def label_object(label: Label) -> dict[str, Any]:
    """The answer of `label --json`. Percentages are of the whole packet by weight."""
    return {
        "ingredients": label.ingredients,
        "matters": [
            {
                "ingredient": one.listed.text,
                "inside": one.listed.inside or None,
                "place": one.listed.place,
                "at_most_percent": round(one.listed.most_percent, 2),
                "said_percent": one.listed.said_percent,
                "words": one.word.words,
                "holds": one.word.holds,
                "certain": one.word.sure == "yes",
                "note": one.word.note,
                "source": one.word.source,
            }
            for one in label.told
        ],
        "allergens": list(label.allergens),
        "traces": list(label.traces),
        "answer": _answer(label),
        "verdict": "not_known",
        "advice": list(label.advice),
    }
