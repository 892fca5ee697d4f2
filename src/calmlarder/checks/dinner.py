"""Recompute a dinner from the CSV rows in exact arithmetic, sharing no code with the model.

Nothing of calmlarder is imported here but the other checks: what this file finds must not depend on what it checks.
"""

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

from calmlarder.checks.allergens import held_by
from calmlarder.checks.at_table import Read as Table
from calmlarder.checks.at_table import table_faults
from calmlarder.checks.dinner_read import Read
from calmlarder.checks.dish import dish_faults
from calmlarder.checks.dose import dose_faults, exempted
from calmlarder.checks.hidden import hidden_faults
from calmlarder.checks.limits import Limit
from calmlarder.checks.loads import Figures, Part, apart, plate_of
from calmlarder.checks.lots import amount_faults, keeping_of, lot_faults, opened_faults
from calmlarder.checks.minutes import minute_faults
from calmlarder.checks.own_limits import limits_for
from calmlarder.checks.patterns import pattern_of
from calmlarder.checks.shown import words_faults
from calmlarder.checks.shown_cautions import is_about
from calmlarder.checks.shown_loads import Recount, shown_faults
from calmlarder.checks.tables import DIETS, Row, figures_of, foods_of, mixtures, rows
from calmlarder.checks.within_limits import limit_faults, protein_faults

_PINCHES_IN_A_GRAM = 1  # of a spice of which a gram is more than a portion a gram is enough for everybody: ours
_FLESH = {"poultry", "meat", "fish", "shellfish"}
_MOST_IN_PIECES = Fraction("1.7")  # portions: two thighs each, of which none is left over; common practice, no source
_LATE_SHARE = 0.1  # of the minutes asked for, and only where it is told
_LAST_DAYS, _MOST_OF_A_LAST_PACK = {0, 1, 2}, Fraction("2.1")  # portions of fish, meat or tofu in its last days: ours
_SHOWN = Fraction("0.06")  # to what protein is shown and rounded, g


def verify(
    dinner: Mapping[str, Any],
    request: Mapping[str, Any],
    lots: Sequence[Mapping[str, Any]],
    table_folders: Sequence[Path],
    recipes: Path,
) -> tuple[str, ...]:
    """What is wrong with a dinner; nothing when it holds.

    `dinner` is the JSON object shown to the cook, `request` holds today, profile, sitting, people, protein_floor_g,
    minutes, diet, avoid, without, use_shared, tolerance and equipment, and may hold `eaten` with `stacking`; `lots`
    is the larder as plain values. Of the nearest dinner its `gives` say what of the request gives and by how much; the
    dinner must keep to what is left of it.
    """
    request, lots, wrong = _given(request, lots, request.get("gives", ()))
    boxes = {lot["food"]: lot["box"] for lot in lots if lot.get("box")}
    plate = plate_of(dinner, boxes)
    used = {part.food for part in plate} | {use["food"] for use in dinner["uses"]}
    used |= {part["food"] for part in dinner.get("apart", ())} | {dose["food"] for dose in request.get("doses") or ()}
    taken = {**dinner, "uses": [*dinner["uses"], *dinner.get("apart", ())]}
    used |= {more["food"] for more in dinner.get("more_protein") or ()}
    mixed = mixtures(table_folders, used)
    foods = foods_of(table_folders, mixed, used)
    limits = [] if request.get("table") else limits_for(table_folders, request, request["sitting"])  # of each plate
    whole: Figures = figures_of(table_folders, mixed, used)
    figures = exempted(whole, request)
    counted = apart(plate, mixed, figures)
    pattern = pattern_of(recipes, dinner["pattern"])
    day = date.fromisoformat(str(request["today"]))
    keeping = keeping_of(table_folders, foods)
    read = Read(dinner, {lot["id"]: lot for lot in lots}, foods, pattern, boxes, table_folders, day)
    return (
        *wrong,
        *_people(dinner, request),
        *dish_faults(dinner, request, pattern, recipes),
        *amount_faults(taken, lots),
        *lot_faults(taken, lots, request, foods, keeping),
        *opened_faults(dinner, lots, day, keeping, (foods, pattern)),
        *hidden_faults(taken, read.lots, request, foods, table_folders),
        *_eatable(plate, request, foods),
        *_slots(dinner, request, foods, boxes, pattern),
        *_timeline(dinner, request),
        *dose_faults(dinner, request, foods, whole),
        *told_faults(dinner, foods),
        *minute_faults(dinner, foods, pattern),
        *limit_faults(counted, limits, dinner["people"], request, (foods, figures)),
        *shown_faults(
            dinner["per_person"], Recount(counted, limits, dinner["people"], request["tolerance"], (foods, figures))
        ),
        *([] if request.get("table") else protein_faults(dinner, plate, request, foods)),
        *table_faults(dinner, request, Table(foods, figures, mixed, boxes, table_folders)),
        *_more_protein(dinner, plate, request, limits, (foods, figures, mixed)),
        *apart_faults(read, request),
        *words_faults(read, [(part.food, part.grams) for part in plate]),
    )


def _given(
    request: Mapping[str, Any], lots: Sequence[Mapping[str, Any]], gives: Sequence[Mapping[str, Any]]
) -> tuple[dict[str, Any], list[Mapping[str, Any]], list[str]]:
    """The request and the larder after what gives, and what may not give."""
    request, lots, faults = dict(request), list(lots), []
    for give in gives:
        what, by = give["what"], Decimal(str(give["by"]))
        if by <= 0:
            faults.append(f"{what} gives by {by}")
        if what == "protein":
            request["protein_floor_g"] = Decimal(str(request["protein_floor_g"])) - by
        elif what == "minutes" and request["minutes"] is not None:
            request["minutes"] += int(by)
        elif what == "people":
            request["people"] -= int(by)
        elif what == "buy":
            bought = {"id": give["lot"], "line": give["line"], "food": give["food"], "grams": by}
            faults += [f"`{lot['line']}` is there and need not be bought" for lot in lots if lot["id"] == give["lot"]]
            lots.append({**bought, "owner": None, "to_bin": False, "place": "cupboard", "dates": ()})
        elif what == "shared":
            lots = [{**lot, "owner_agrees": True} if lot["id"] == give["lot"] else lot for lot in lots]
        elif what != "amount":
            faults.append(f"{what} may not give")
    if sum(give["what"] == "buy" for give in gives) > 3:
        faults.append("more than three things are to be bought")
    return request, lots, faults


def _people(dinner: Mapping[str, Any], request: Mapping[str, Any]) -> list[str]:
    served, asked = dinner["people"], request["people"]
    return [] if served == asked else [f"serves {served} where {asked} eat"]


def _eatable(plate: Sequence[Part], request: Mapping[str, Any], foods: Mapping[str, Row]) -> list[str]:
    faults = []
    for part in plate:
        food = foods[part.food]
        if DIETS.index(food["diet"]) > DIETS.index(request["diet"]):
            faults.append(f"{food['id']} is not {request['diet']}")
        held = held_by([food])
        faults += [f"{food['id']} holds {allergen}" for allergen in request["avoid"] if allergen in held]
        if food["id"] in request["without"]:
            faults.append(f"{food['id']} was to be left out")
    return faults


def _more_protein(
    dinner: Mapping[str, Any],
    plate: Sequence[Part],
    request: Mapping[str, Any],
    limits: Sequence[Limit],
    read: tuple[Mapping[str, Row], Figures, Mapping[str, Mapping[str, Fraction]]],
) -> list[str]:
    """What is said to bring the protein that is aimed at brings it, and is within the limits and for these eaters."""
    foods, figures, mixed = read
    faults = []
    for more in dinner.get("more_protein") or ():
        food, people = more["food"], dinner["people"]
        extra = Part(food, food, Fraction(more["grams"]), more["weighed"], Fraction(1))
        whole = [*plate, extra]
        protein = sum((Fraction(foods[part.food]["protein_g"] or 0) * part.grams for part in whole), Fraction(0))
        if protein / 100 / people < Fraction(str(request["protein_g"])) - _SHOWN:
            faults.append(f"{more['grams']} g {food} more bring {float(protein / 100 / people):.2f} g of protein")
        with_it = limit_faults(apart(whole, mixed, figures), limits, people, request, (foods, figures))
        faults += [f"with {more['grams']} g {food} more: {fault}" for fault in with_it]
        faults += _eatable([extra], request, foods)
    return faults


def _slots(
    dinner: Mapping[str, Any],
    request: Mapping[str, Any],
    foods: Mapping[str, Row],
    boxes: Mapping[str, Any],
    pattern: Mapping[str, Any],
) -> list[str]:
    needed = {word for thing in pattern["equipment"] for word in (thing, *thing.split())}
    faults = [f"needs a {thing}, there is none" for thing in request["equipment"]["missing"] if thing in needed]
    for name, slot in pattern["slots"].items():
        uses = [use for use in dinner["uses"] if use["slot"] == name]
        if not slot["items"][0] <= len(uses) <= slot["items"][1]:
            faults.append(f"slot {name} holds {len(uses)} things")
        portions = Fraction(0)  # of all people; exact, as a portion is no round number of grams
        for use in uses:
            if use["food"] in boxes:
                box = boxes[use["food"]]
                portions += Fraction(use["grams"], box["mixture"]["share_grams"])
                if slot["kinds"] != ["boxed"] or (box["heated"] and slot["method"] != "raw"):
                    faults.append(f"`{use['line']}` does not belong in slot {name}")
                continue
            food = foods[use["food"]]
            each = 1 / Fraction(food["portion_g"])
            if food["kind"] == "spice" and each > _PINCHES_IN_A_GRAM:  # no less than a gram is reckoned with
                each = min(each, Fraction(dinner["people"]))
            portions += use["grams"] * each
            methods = dict(part.split(":") for part in food["minutes"].split(";") if part)
            if slot["method"] not in methods or slot["role"] not in food["roles"].split(";"):
                faults.append(f"{food['id']} does not belong in slot {name}")
        most = Fraction(str(slot["portions"][2]))
        if slot["role"] == "protein" and any(use["days_left"] in _LAST_DAYS for use in uses):
            most = max(most, _MOST_OF_A_LAST_PACK)
        if len(uses) == 1 and foods.get(uses[0]["food"], {}).get("kind") in _FLESH:
            most = max(most, _MOST_IN_PIECES)
        if portions > most * Fraction("1.01") * dinner["people"]:
            faults.append(f"slot {name} holds {float(portions) / dinner['people']:.2f} portions a person")
    filled = {use["slot"] for use in dinner["uses"]}
    faults += [f"nothing fills any of {', '.join(n)}" for n in pattern.get("one_of", []) if filled.isdisjoint(n)]
    return faults


def _timeline(dinner: Mapping[str, Any], request: Mapping[str, Any]) -> list[str]:
    """One cook does one thing at a time on the rings there are, in one oven at most; the length is the end."""
    faults = []
    moments, there = [*dinner["timeline"], *(part["moment"] for part in dinner.get("apart", ()))], request["equipment"]
    room = {place: int(place not in there["missing"]) for place in ("oven", "microwave")} | {"ring": there["rings"]}
    ends = [moment["start_min"] + moment["minutes"] for moment in moments]
    if max(ends) != dinner["minutes"]:
        faults.append(f"the timeline ends at {max(ends)}, not at {dinner['minutes']} minutes")
    late = 0 if request["minutes"] is None else dinner["minutes"] - request["minutes"]
    told = any(f"{late} more than you gave" in caution for caution in dinner["cautions"])
    if late > 0 and (not told or late > _LATE_SHARE * request["minutes"]):
        faults.append(f"takes {dinner['minutes']} minutes")
    for minute in range(max(ends)):
        now = [m for m in moments if m["start_min"] <= minute < m["start_min"] + m["minutes"]]
        hands = sum(moment["hands_on"] for moment in now)
        places = [moment["equipment"] for moment in now]
        if hands > 1 or any(places.count(place) > most for place, most in room.items()):
            faults.append(f"too much at once at minute {minute}")
            break
    return faults


def told_faults(dinner: Mapping[str, Any], foods: Mapping[str, Row]) -> list[str]:
    """What the steps or the timeline leave out, tell twice, or tell in another order. Amounts are in g of the dish."""
    moments = [moment["adds"] for moment in dinner["timeline"]]
    come_in = Counter(food for adds in moments for food in adds)
    used = Counter(food for _, food in {(use["slot"], use["food"]) for use in dinner["uses"]})
    faults = [
        f"{food} comes in {come_in[food]} times in the timeline, not {used[food]}"
        for food in sorted({*come_in, *used})
        if come_in[food] != used[food]
    ]
    grams: Counter[str] = Counter()
    for use in dinner["uses"]:
        grams[use["food"]] += use["grams"]
    places: dict[str, tuple[int, int]] = {}
    names = {use["food"]: use["name"] for use in dinner["uses"]}
    no_grams = {use["food"]: use["household"] for use in dinner["uses"] if use["household"] in {"a pinch", "a coat"}}
    for food in (food for food, times in used.items() if times == 1 and food in foods):
        words = f"{no_grams[food]} of {names[food]}" if food in no_grams else f"{grams[food]} g {names[food]}"
        one = re.escape(names[food].removesuffix("s"))  # 2 eggs (110 g), 1 egg (55 g)
        spoons = rf"\d*½? ?t(?:sp|bsp) {re.escape(names[food])}"  # 4 tsp olive oil (16 g)
        counted = rf"|(?<!\d)(?:\d+ {re.escape(names[food])}|1 {one}|{spoons}) \({grams[food]} g[,)]"
        there = [(n, re.search(re.escape(words) + counted, step)) for n, step in enumerate(dinner["steps"])]
        said = [(number, found.start()) for number, found in there if found]
        if len(said) != 1:
            faults.append(f"the steps say `{words}` {len(said)} times")
        elif not dinner["steps"][said[0][0]].startswith("Weigh "):
            places[food] = said[0]
    order = [number for number, adds in enumerate(moments) for food in adds if food in places]
    by_steps = sorted(places, key=lambda food: places[food])
    by_time = {food: number for number, adds in reversed(list(enumerate(moments))) for food in adds}
    if [by_time.get(food) for food in by_steps] != order:
        faults.append("the steps and the timeline have another order")
    return faults


_MINUTES = re.compile(r"\b(\d+) minutes?\b")
_WAYS = {"ring": {"stir-fry", "boil", "steam"}, "oven": {"roast"}, "microwave": {"microwave"}}
_BOARD = "Keep its board, knife and spoon apart."


def apart_faults(read: Read, request: Mapping[str, Any]) -> Iterator[str]:
    """All that is told wrongly of the parts served apart; `request` names the table."""
    cautions = rows(read.folders, "cautions.csv", ("applies_to", "states", "done_when", "caution")).values()
    for part in read.dinner.get("apart", ()):
        food, said, moment = read.foods[part["food"]], part["said"], part["moment"]
        if f"{part['grams']} g {food['name']}" not in said:
            yield f"it is not said that {part['grams']} g {food['name']} are served apart"
        if f"for {_listed(part['for'])} only" not in said:
            yield f"it is not said that {food['name']} is for {_listed(part['for'])} only"
        if any(int(number) != moment["minutes"] for number in _MINUTES.findall(said)):
            yield f"other minutes are said of {food['name']} than its {moment['minutes']}"
        if moment["equipment"]:
            yield from _heated(
                food, moment, said, [row["done_when"] for row in cautions if row["done_when"] and is_about(row, food)]
            )
        stricter = any(DIETS.index(food["diet"]) > DIETS.index(eater["diet"]) for eater in request.get("table") or ())
        if stricter and _BOARD not in said:
            yield f"it is not said to keep the board of {food['name']} apart"


def _heated(food: Row, moment: Mapping[str, Any], said: str, signs: list[str]) -> Iterator[str]:
    ways = dict(way.split(":") for way in food["minutes"].split(";") if way)
    wanted = [int(minutes) for way, minutes in ways.items() if way in _WAYS[moment["equipment"]]]
    if not wanted or moment["minutes"] < min(wanted):
        yield f"{food['name']} is on the heat for {moment['minutes']} minutes, it wants {wanted}"
    if signs and not any(sign in said for sign in signs):
        yield f"it is not said how to see that {food['name']} is cooked through: {signs[0]}"


def _listed(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
