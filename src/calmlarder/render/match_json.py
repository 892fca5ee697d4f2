"""What a line means, as one JSON object; apart from the dinners, so that matching loads no solver."""

from typing import Any

from calmlarder.larder.lot import Lot
from calmlarder.larder.meaning import Reading


def match_object(reading: Reading) -> dict[str, Any]:
    """The answer of `match --json` for one line: the first food at its top level, all of them in `lots`.

    Where one food of several is asked about, `outcome` tells that of it, and `lots` holds those that stand.
    """
    told = reading.lots or reading.standing
    lots = [_lot_object(lot, name) for lot, name in zip(told, reading.names, strict=not reading.gone)]
    first = lots[0] if reading.lots else dict.fromkeys(_LOT_KEYS)
    return {
        "text": reading.text,
        "outcome": reading.match.outcome,
        **first,
        "score": reading.match.score,
        "candidates": [candidate._asdict() for candidate in reading.candidates],
        "assumed": list(reading.assumed),
        "lots": lots,
        **({"question": reading.question} if reading.question else {}),
        **({"problem": str(reading.problem)} if reading.problem else {}),
    }


_LOT_KEYS = (
    "food", "name", "grams_low", "grams", "grams_high", "place", "date", "date_kind", "days_left", "days_estimated",
    "condition",
    "to_bin", "owner", "kept_for",
)  # fmt: skip


def _lot_object(lot: Lot, name: str) -> dict[str, Any]:
    told = lot.first_date
    values = (
        lot.food, name, lot.grams_low, lot.grams, lot.grams_high, lot.place,
        told.on.isoformat() if told and told.on else None, told.kind if told else None,
        lot.days_left, lot.days_estimated, lot.condition, lot.to_bin, lot.owner, lot.kept_for,
    )  # fmt: skip
    return dict(zip(_LOT_KEYS, values, strict=True))
