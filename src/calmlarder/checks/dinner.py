"""Recompute a dinner from the CSV rows in decimal arithmetic, sharing no code with the model.

Nothing of calmlarder is imported here but the second reading of the tables, which imports nothing itself: what
this file finds must not depend on what it checks.
"""

import tomllib
from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any, NamedTuple

from calmlarder.checks.lots import amount_faults, lot_faults
from calmlarder.checks.tables import DIETS, Row, figures_of, foods_of, load_of, mixtures, rows, taken_apart
from calmlarder.checks.told import told_faults

_SHOWN = Decimal("0.002")  # how far a shown number, rounded for reading, may be from the recomputed one


def verify(
    dinner: Mapping[str, Any],
    request: Mapping[str, Any],
    lots: Sequence[Mapping[str, Any]],
    table_folders: Sequence[Path],
    recipes: Path,
    gives: Sequence[Mapping[str, Any]] = (),
) -> tuple[str, ...]:
    """What is wrong with a dinner; nothing when it holds.

    `dinner` is the JSON object shown to the cook, `request` holds today, profile, people, protein_g, minutes, diet,
    avoid, without, use_shared, tolerance and equipment, and may hold `eaten` with `stacking`; `lots` is the larder as
    plain values. Of the nearest dinner `gives` says what of the request gives and by how much; the dinner must keep
    to what is left of it.
    """
    request, lots, wrong = _given(request, lots, gives)
    boxes = {lot["food"]: lot["box"] for lot in lots if lot.get("box")}
    plate = plate_of(dinner, request, boxes)
    used = {part.food for part in plate} | {use["food"] for use in dinner["uses"]}
    mixed = mixtures(table_folders)
    foods = foods_of(table_folders, mixed, used)
    figures = figures_of(table_folders, mixed, used)
    caps = rows(table_folders, "caps.csv", ("profile", "scope", "group", "applies_to"))
    return (
        *wrong,
        *_people(dinner, request),
        *amount_faults(dinner, lots),
        *lot_faults(dinner, lots, request, foods, rows(table_folders, "keeping.csv", ("food", "place", "state"))),
        *_eatable(plate, request, foods),
        *_slots(dinner, request, foods, boxes, recipes),
        *_timeline(dinner, request),
        *told_faults(dinner, foods),
        *_caps(dinner, apart(plate, mixed, figures), request, foods, figures, list(caps.values())),
        *_protein(dinner, plate, request, foods),
        *_lysine(dinner, plate, request, foods),
    )


class Part(NamedTuple):
    """G of one food in the whole dish, planned and at the most; a dish from a box is its parts."""

    food: str
    grams: Decimal
    most: Decimal


def plate_of(dinner: Mapping[str, Any], request: Mapping[str, Any], boxes: Mapping[str, Any]) -> list[Part]:
    """Every food of a dish, those of a boxed dish each by itself; `boxes` are the boxes of the larder by food."""
    by_eye = 1 + Decimal(request["tolerance"]["eye_percent"]) / 100
    by_scale = Decimal(request["tolerance"]["scale_grams"])
    found = []
    for use in dinner["uses"]:
        grams = Decimal(use["grams"])
        if use["food"] not in boxes:
            most = grams + by_scale if use["how"] == "weigh" else grams * by_eye
            found.append(Part(use["food"], grams, most))
            continue
        mixture = boxes[use["food"]]["mixture"]
        whole = mixture["shares"] * mixture["share_grams"]
        found += [
            Part(part["food"], part["grams"] * grams / whole, part["most_hundredths"] * grams / whole / 100)
            for part in mixture["parts"]
        ]
    return found


def apart(
    plate: Sequence[Part], mixed: Mapping[str, Mapping[str, Decimal]], figures: Mapping[tuple[str, ...], Row]
) -> list[Part]:
    """The same dish with mixtures that are nothing but a sum taken apart, so that each part counts in its class."""
    return [
        Part(food, planned * part.grams, most * part.most)
        for part in plate
        for food, planned, most in taken_apart(part.food, mixed, figures)
    ]


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
            request["protein_g"] = Decimal(str(request["protein_g"])) - by
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
    if sum(give["what"] == "buy" for give in gives) > 1:
        faults.append("more than one thing is to be bought")
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
        held = set(food["allergens"].split(";")) | ({"gluten"} if food["gluten"] != "no" else set())
        faults += [f"{food['id']} holds {allergen}" for allergen in request["avoid"] if allergen in held]
        if food["id"] in request["without"]:
            faults.append(f"{food['id']} was to be left out")
    return faults


def _slots(
    dinner: Mapping[str, Any],
    request: Mapping[str, Any],
    foods: Mapping[str, Row],
    boxes: Mapping[str, Any],
    recipes: Path,
) -> list[str]:
    pattern = tomllib.loads((recipes / f"{dinner['pattern']}.toml").read_text(encoding="utf-8"))
    needed = {word for thing in pattern["equipment"] for word in (thing, *thing.split())}
    faults = [f"needs a {thing}, there is none" for thing in request["equipment"]["missing"] if thing in needed]
    for name, slot in pattern["slots"].items():
        uses = [use for use in dinner["uses"] if use["slot"] == name]
        if not slot["items"][0] <= len(uses) <= slot["items"][1]:
            faults.append(f"slot {name} holds {len(uses)} things")
        portions = Decimal(0)
        for use in uses:
            if use["food"] in boxes:
                box = boxes[use["food"]]
                portions += Decimal(use["grams"]) / box["mixture"]["share_grams"] / dinner["people"]
                if slot["kinds"] != ["boxed"] or (box["heated"] and slot["method"] != "raw"):
                    faults.append(f"`{use['line']}` does not belong in slot {name}")
                continue
            food = foods[use["food"]]
            portions += Decimal(use["grams"]) / Decimal(food["portion_g"]) / dinner["people"]
            methods = dict(part.split(":") for part in food["minutes"].split(";") if part)
            if slot["method"] not in methods or slot["role"] not in food["roles"].split(";"):
                faults.append(f"{food['id']} does not belong in slot {name}")
        if portions > Decimal(str(slot["portions"][2])) * Decimal("1.01"):
            faults.append(f"slot {name} holds {portions:.2f} portions a person")
    filled = {use["slot"] for use in dinner["uses"]}
    faults += [f"nothing fills any of {', '.join(n)}" for n in pattern.get("one_of", []) if filled.isdisjoint(n)]
    return faults


def _timeline(dinner: Mapping[str, Any], request: Mapping[str, Any]) -> list[str]:
    """One cook does one thing at a time on the rings there are, in one oven at most; the length is the end."""
    faults = []
    moments, there = dinner["timeline"], request["equipment"]
    room = {place: int(place not in there["missing"]) for place in ("oven", "microwave")} | {"ring": there["rings"]}
    ends = [moment["start_min"] + moment["minutes"] for moment in moments]
    if max(ends) != dinner["minutes"]:
        faults.append(f"the timeline ends at {max(ends)}, not at {dinner['minutes']} minutes")
    if request["minutes"] is not None and dinner["minutes"] > request["minutes"]:
        faults.append(f"takes {dinner['minutes']} minutes")
    for minute in range(max(ends)):
        now = [m for m in moments if m["start_min"] <= minute < m["start_min"] + m["minutes"]]
        hands = sum(moment["hands_on"] for moment in now)
        places = [moment["equipment"] for moment in now]
        if hands > 1 or any(places.count(place) > most for place, most in room.items()):
            faults.append(f"too much at once at minute {minute}")
            break
    return faults


def _caps(
    dinner: Mapping[str, Any],
    plate: Sequence[Part],
    request: Mapping[str, Any],
    foods: Mapping[str, Row],
    figures: Mapping[tuple[str, ...], Row],
    caps: Sequence[Row],
) -> list[str]:
    faults = []
    shown = dinner["per_person"]
    before = _before(request)
    for cap in caps:
        if cap["profile"] != request["profile"]:
            continue
        classes = [part for part in cap["applies_to"].split(";") if part]
        plan: dict[str, Decimal] = {}
        worst: dict[str, Decimal] = {}
        for food, grams, most in plate:
            if classes and foods[food]["cutoff_class"] not in classes:
                continue
            shares = dinner["people"] * 100
            plan[food] = plan.get(food, Decimal(0)) + load_of(figures, food, cap["group"], False) * grams / shares
            worst[food] = worst.get(food, Decimal(0)) + load_of(figures, food, cap["group"], True) * most / shares
        key = f"{cap['group']}:{cap['applies_to']}" if classes else cap["group"]
        held = worst if cap["holds"] == "worst" else plan
        if cap["scope"] == "food":
            faults += [
                f"{food} brings {load:.3f} g of {key}, the cap is {cap['grams']} g"
                for food, load in held.items()
                if load > Decimal(cap["grams"])
            ]
            continue
        earlier = _earlier(before, cap["group"], classes, cap["holds"])
        if sum(held.values()) > max(Decimal(0), Decimal(cap["grams"]) - earlier):
            also = f" and {earlier:.3f} g eaten before" if earlier else ""
            faults.append(f"{sum(held.values()):.3f} g of {key} a person{also}, the cap is {cap['grams']} g")
        for name, loads in (("loads_g", plan), ("worst_g", worst)):
            if abs(Decimal(str(shown[name][key])) - sum(loads.values())) > _SHOWN:
                faults.append(f"{name} of {key} is shown as {shown[name][key]}, it is {sum(loads.values()):.4f}")
    return faults


def _before(request: Mapping[str, Any]) -> list[tuple[str, Decimal, Sequence[Mapping[str, Any]]]]:
    """For each person at the table: which share of an entry in their own window still counts, and its loads."""
    stacking = request.get("stacking")
    if not stacking:
        return []
    now = datetime.fromisoformat(stacking["at"])
    entries = request.get("eaten") or ()
    owns = {own["who"]: own for own in stacking.get("own") or ()}
    found = []
    for who in stacking["who"] or {"everyone", *owns, *(entry["who"] for entry in entries)}:
        own = owns.get(who, {})
        hours = stacking["window_hours"] if own.get("window_hours") is None else own["window_hours"]
        fade = stacking["fade"] if own.get("fade") is None else own["fade"]
        window = Decimal(str(hours)) * 3600
        for entry in entries:
            apart = (now - datetime.fromisoformat(entry["at"])) // timedelta(seconds=1)
            clocks = [60 * (a - b) for a in entry.get("offsets_min") or () for b in stacking.get("offsets_min") or ()]
            seconds = Decimal(min((apart + ahead for ahead in clocks or [0] if apart + ahead >= 0), default=-1))
            if entry["who"] in (who, "everyone") and 0 <= seconds < window:
                found.append((who, 1 - seconds / window if fade else Decimal(1), entry["loads"]))
    return found


def _earlier(
    before: Sequence[tuple[str, Decimal, Sequence[Mapping[str, Any]]]],
    group: str,
    classes: Sequence[str],
    holds: str,
) -> Decimal:
    """G of a group still counted, for whoever at the table has the most of it."""
    each: dict[str, Decimal] = {}
    for who, share, loads in before:
        grams = sum(
            (
                Decimal(load[f"{holds}_ug"]) / 1_000_000
                for load in loads
                if load["group"] == group and (not classes or load["cutoff_class"] in classes)
            ),
            Decimal(0),
        )
        each[who] = each.get(who, Decimal(0)) + share * grams
    return max(each.values(), default=Decimal(0))


def _protein(
    dinner: Mapping[str, Any], plate: Sequence[Part], request: Mapping[str, Any], foods: Mapping[str, Row]
) -> list[str]:
    total = sum((Decimal(foods[part.food]["protein_g"] or 0) * part.grams for part in plate), Decimal(0))
    each = total / 100 / dinner["people"]
    if each < Decimal(str(request["protein_g"])):
        return [f"{each:.1f} g of protein a person, the floor is {request['protein_g']} g"]
    return []


def _lysine(
    dinner: Mapping[str, Any], plate: Sequence[Part], request: Mapping[str, Any], foods: Mapping[str, Row]
) -> list[str]:
    floor = request.get("lysine_mg", 0)
    total = sum((Decimal(foods[part.food]["lysine_mg"] or 0) * part.grams for part in plate), Decimal(0))
    each = total / 100 / dinner["people"]
    return [f"{each:.0f} mg of lysine a person, the floor is {floor} mg"] if each < floor else []
